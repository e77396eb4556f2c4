/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The list's model is changed only where the history differs from what is shown, so that a bar
 * burned adds one row and leaves the others, and the focus, alone.
 */
#include "desk/sheet/history-list.h"

#include "desk/sheet/history-entry.h"
#include "desk/shell/take-back-button.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

/* A pile worked on through years of notes is still read from the top. */
#define ENTRIES_MOST 200

struct _LbHistoryList
{
  GtkBox parent_instance;

  GtkWidget *list;
  GtkWidget *empty_label;
  GListStore *entries;
  LbJob *job;
};

G_DEFINE_FINAL_TYPE (LbHistoryList, lb_history_list, GTK_TYPE_BOX)

static void
strike (GtkLabel *label)
{
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_strikethrough_new (TRUE));
  gtk_label_set_attributes (label, attributes);
  gtk_widget_add_css_class (GTK_WIDGET (label), "dim-label");
}

static GtkLabel *
add_label (GtkWidget *box, const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static GtkWidget *
make_row (gpointer item, gpointer data)
{
  LbHistoryList *self = LB_HISTORY_LIST (data);
  LbHistoryEntry *entry = LB_HISTORY_ENTRY (item);
  const gboolean is_alive = lb_history_entry_get_is_alive (entry);
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkLabel *text = add_label (words, lb_history_entry_get_text (entry));
  g_autofree char *when = is_alive ? g_strdup (lb_history_entry_get_when (entry))
                                   : g_strdup_printf (_ ("taken back · %s"),
                                                      lb_history_entry_get_when (entry));
  GtkLabel *foot = add_label (words, when);

  gtk_widget_add_css_class (GTK_WIDGET (foot), "small");
  gtk_widget_add_css_class (GTK_WIDGET (foot), "dim-label");
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (box), words);
  if (!is_alive)
    strike (text);
  else if (!lb_job_is_read_only (self->job))
    gtk_box_append (GTK_BOX (box),
                    lb_take_back_button_new (self->job, lb_history_entry_get_act (entry),
                                             lb_history_entry_get_text (entry)));
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  gtk_widget_add_css_class (row, "history");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  return row;
}

static void
lb_history_list_dispose (GObject *object)
{
  LbHistoryList *self = LB_HISTORY_LIST (object);

  g_clear_object (&self->entries);
  g_clear_object (&self->job);
  G_OBJECT_CLASS (lb_history_list_parent_class)->dispose (object);
}

static void
lb_history_list_class_init (LbHistoryListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_history_list_dispose;
}

static void
lb_history_list_init (LbHistoryList *self)
{
  self->entries = g_list_store_new (LB_TYPE_HISTORY_ENTRY);
  self->list = gtk_list_box_new ();
  self->empty_label = gtk_label_new (_ ("Nothing was recorded yet."));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_label_set_xalign (GTK_LABEL (self->empty_label), 0);
  gtk_widget_add_css_class (self->empty_label, "dim-label");
  gtk_widget_add_css_class (self->list, "boxed-list");
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("History"), -1);
  gtk_list_box_bind_model (GTK_LIST_BOX (self->list), G_LIST_MODEL (self->entries), make_row, self,
                           NULL);
  gtk_box_append (GTK_BOX (self), self->empty_label);
  gtk_box_append (GTK_BOX (self), self->list);
}

/* Newest first. */
static GPtrArray *
find_entries (LbJob *job, guint pile)
{
  const LbLedger *ledger = lb_job_get_ledger (job);
  GPtrArray *found = g_ptr_array_new_with_free_func (g_object_unref);

  for (gsize i = lb_job_get_fold (job)->n_entries; i-- > 0 && found->len < ENTRIES_MOST;) {
    const LbEntry *entry = lb_ledger_entry (ledger, (guint) i);

    if (entry->pile == (int) pile && !lb_entry_is_told_before (entry))
      g_ptr_array_add (found, lb_history_entry_new (job, (guint) i));
  }
  return found;
}

static gboolean
is_same (GListModel *shown, guint i, const GPtrArray *found, guint j)
{
  g_autoptr (LbHistoryEntry) entry = g_list_model_get_item (shown, i);

  return lb_history_entry_equal (entry, g_ptr_array_index (found, j));
}

void
lb_history_list_show (LbHistoryList *self, LbJob *job, guint pile)
{
  GListModel *shown = G_LIST_MODEL (self->entries);
  const guint n_shown = g_list_model_get_n_items (shown);
  g_autoptr (GPtrArray) found = NULL;
  guint head = 0, tail = 0, least;

  g_return_if_fail (LB_IS_HISTORY_LIST (self));

  g_set_object (&self->job, job);
  found = job != NULL ? find_entries (job, pile) : g_ptr_array_new ();
  least = MIN (n_shown, found->len);
  while (head < least && is_same (shown, head, found, head))
    head++;
  while (tail < least - head && is_same (shown, n_shown - 1 - tail, found, found->len - 1 - tail))
    tail++;
  if (n_shown != found->len || head < n_shown)
    g_list_store_splice (self->entries, head, n_shown - head - tail, found->pdata + head,
                         found->len - head - tail);
  gtk_widget_set_visible (self->empty_label, found->len == 0);
  gtk_widget_set_visible (self->list, found->len > 0);
}

GListModel *
lb_history_list_get_model (LbHistoryList *self)
{
  g_return_val_if_fail (LB_IS_HISTORY_LIST (self), NULL);

  return G_LIST_MODEL (self->entries);
}
