/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The entries stand in a list of their own under the rows to type in, newest first; a row is made
 * again only when it says something else, so that focus and a reader's place survive what is
 * recorded. What was put to a pile stands on that pile's line and is not listed twice. */
#include "desk/shift/shift-group.h"

#include "book/clock-text.h"
#include "desk/shell/say.h"
#include "desk/shell/take-back-button.h"
#include "desk/shift/finding-rows.h"
#include "draw/plan-words.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  LbJob *job;
  GSignalGroup *job_signals;
  GtkListBox *list; /* of the entries; NULL in a group that lists none */
  GPtrArray *shown; /* what its rows say */
} LbShiftGroupPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (LbShiftGroup, lb_shift_group, ADW_TYPE_PREFERENCES_GROUP)

static LbShiftGroupPrivate *
get_private (LbShiftGroup *self)
{
  return lb_shift_group_get_instance_private (self);
}

/* What was said together with a dive stands on the dive's row. */
static gboolean
is_said_with_dive (const LbLedger *ledger, const LbEntry *entry)
{
  const LbEntry *first = entry;

  while (first->seq > 1 && !g_str_equal (first->id, first->act))
    first = lb_ledger_entry_of_seq (ledger, first->seq - 1);
  return first != entry && first->kind == LB_ENTRY_DIVE;
}

static gboolean
is_listed (const LbLedger *ledger, const LbEntry *entry, guint kinds)
{
  return (kinds & LB_ENTRY_KIND_BIT (entry->kind)) != 0 &&
         (entry->pile < 0 || entry->kind == LB_ENTRY_DIVE) && !is_said_with_dive (ledger, entry);
}

/* The entries to list, newest first. */
static GPtrArray *
find_entries (LbShiftGroup *self)
{
  LbShiftGroupPrivate *priv = get_private (self);
  const guint kinds = LB_SHIFT_GROUP_GET_CLASS (self)->kinds;
  const LbLedger *ledger = lb_job_get_ledger (priv->job);
  const LbFold *fold = lb_job_get_fold (priv->job);
  const int shift = lb_job_get_shift (priv->job);
  GPtrArray *found = g_ptr_array_new ();

  for (guint i = (guint) fold->n_entries; i-- > 0 && shift >= 0;) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (fold->is_alive[i] && entry->shift == shift && is_listed (ledger, entry, kinds))
      g_ptr_array_add (found, (gpointer) entry);
  }

  return found;
}

static char *
title_of (LbShiftGroupPrivate *priv, const LbEntry *entry)
{
  return lb_entry_text (lb_job_get_voice (priv->job), lb_job_get_ledger (priv->job),
                        lb_job_get_fold (priv->job), entry);
}

typedef struct
{
  LbShiftGroup *group;
  const GPtrArray *entries;
} Listing;

static const LbEntry *
find_entry (LbShiftGroupPrivate *priv, gint64 seq)
{
  const LbLedger *ledger = lb_job_get_ledger (priv->job);

  return lb_ledger_entry_of_seq (ledger, seq);
}

/* Rows outlive a ledger; an entry is found again by its number. */
static void
activated_cb (AdwActionRow *row, LbShiftGroup *self)
{
  const gint64 *seq = g_object_get_data (G_OBJECT (row), "seq");

  LB_SHIFT_GROUP_GET_CLASS (self)->activate (self, find_entry (get_private (self), *seq));
}

/* The detail under the entry's own words, and a way to what it is about. */
static void
add_detail (LbShiftGroup *self, AdwActionRow *row, const LbEntry *entry, const char *said)
{
  LbShiftGroupClass *klass = LB_SHIFT_GROUP_GET_CLASS (self);
  g_autofree char *detail = klass->detail != NULL ? klass->detail (self, entry) : NULL;
  g_autofree char *both = NULL;

  if (detail == NULL)
    return;
  both = g_strdup_printf ("%s\n%s", detail, said);
  adw_action_row_set_subtitle (row, both);
  adw_action_row_set_subtitle_lines (row, 0);
  if (klass->activate == NULL || entry->pile < 0)
    return;
  g_object_set_data_full (G_OBJECT (row), "seq", g_memdup2 (&entry->seq, sizeof entry->seq),
                          g_free);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  g_signal_connect_object (row, "activated", G_CALLBACK (activated_cb), self, 0);
}

static GtkWidget *
make_row (guint index, gpointer data)
{
  const Listing *listing = data;
  const LbEntry *entry = g_ptr_array_index (listing->entries, index);
  LbShiftGroupPrivate *priv = get_private (listing->group);
  LbShiftGroupClass *klass = LB_SHIFT_GROUP_GET_CLASS (listing->group);
  AdwActionRow *row = ADW_ACTION_ROW (adw_action_row_new ());
  g_autofree char *title = title_of (priv, entry);
  g_autofree char *at = lb_clock_to_text (entry->at_us);
  g_autofree char *said = *entry->who == '\0' ? g_strdup (at)
                                              : g_strdup_printf ("%s · %s", at, entry->who);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_set_subtitle (row, said);
  add_detail (listing->group, row, entry, said);
  if (klass->suffix != NULL)
    adw_action_row_add_suffix (row, klass->suffix (listing->group, entry));
  adw_action_row_add_suffix (row, lb_take_back_button_new (priv->job, entry->act, title));

  return GTK_WIDGET (row);
}

static gboolean
is_of_row (const LbFinding *finding, guint index, gpointer data)
{
  const Listing *listing = data;

  return lb_finding_stands_at (finding) == LB_FINDING_AT_DIVE &&
         lb_finding_last_entry (finding) == g_ptr_array_index (listing->entries, index);
}

static void
show_entries (LbShiftGroup *self)
{
  LbShiftGroupPrivate *priv = get_private (self);
  LbShiftGroupClass *klass = LB_SHIFT_GROUP_GET_CLASS (self);
  g_autoptr (GPtrArray) found = find_entries (self);
  GPtrArray *keys = g_ptr_array_new_with_free_func (g_free);
  Listing listing = { .group = self, .entries = found };

  /* An entry never changes, but the words for it do, with the units. */
  for (guint i = 0; i < found->len; i++) {
    const LbEntry *entry = g_ptr_array_index (found, i);
    g_autofree char *title = title_of (priv, entry);
    g_autofree char *suffix = klass->suffix_text != NULL ? klass->suffix_text (self, entry) : NULL;

    g_autofree char *detail = klass->detail != NULL ? klass->detail (self, entry) : NULL;

    g_ptr_array_add (keys,
                     g_strdup_printf ("%" G_GINT64_FORMAT " %s %s %s", entry->seq, title,
                                      suffix != NULL ? suffix : "", detail != NULL ? detail : ""));
  }
  if (!lb_finding_rows_show (priv->job, priv->list, &priv->shown, keys, make_row, is_of_row,
                             &listing))
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
  gtk_widget_set_visible (GTK_WIDGET (priv->list), found->len > 0);
}

static void
add_list (LbShiftGroup *self)
{
  LbShiftGroupPrivate *priv = get_private (self);

  priv->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (priv->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (priv->list), "boxed-list");
  gtk_widget_set_margin_top (GTK_WIDGET (priv->list), 12);
  gtk_accessible_update_property (GTK_ACCESSIBLE (priv->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Recorded in this shift"), -1);
  adw_preferences_group_add (ADW_PREFERENCES_GROUP (self), GTK_WIDGET (priv->list));
}

static void
update (LbShiftGroup *self)
{
  LbShiftGroupPrivate *priv = get_private (self);
  LbShiftGroupClass *klass = LB_SHIFT_GROUP_GET_CLASS (self);

  if (priv->job == NULL)
    return;
  gtk_widget_set_sensitive (GTK_WIDGET (self), !lb_job_is_read_only (priv->job));
  if (klass->kinds != 0 && priv->list == NULL)
    add_list (self);
  if (klass->update != NULL)
    klass->update (self);
  if (klass->kinds != 0)
    show_entries (self);
}

static void
lb_shift_group_dispose (GObject *object)
{
  LbShiftGroupPrivate *priv = get_private (LB_SHIFT_GROUP (object));

  g_clear_object (&priv->job_signals);
  g_clear_object (&priv->job);

  G_OBJECT_CLASS (lb_shift_group_parent_class)->dispose (object);
}

static void
lb_shift_group_finalize (GObject *object)
{
  LbShiftGroupPrivate *priv = get_private (LB_SHIFT_GROUP (object));

  g_ptr_array_unref (priv->shown);

  G_OBJECT_CLASS (lb_shift_group_parent_class)->finalize (object);
}

/* The title is known once the subclass has read its template. */
static void
lb_shift_group_constructed (GObject *object)
{
  G_OBJECT_CLASS (lb_shift_group_parent_class)->constructed (object);
  gtk_accessible_update_property (GTK_ACCESSIBLE (object), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  adw_preferences_group_get_title (ADW_PREFERENCES_GROUP (object)),
                                  -1);
}

static void
lb_shift_group_class_init (LbShiftGroupClass *klass)
{
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
  G_OBJECT_CLASS (klass)->constructed = lb_shift_group_constructed;
  G_OBJECT_CLASS (klass)->dispose = lb_shift_group_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_shift_group_finalize;
}

static void
lb_shift_group_init (LbShiftGroup *self)
{
  LbShiftGroupPrivate *priv = get_private (self);

  priv->shown = g_ptr_array_new_with_free_func (g_free);
  priv->job_signals = g_signal_group_new (LB_TYPE_JOB);
  g_signal_group_connect_swapped (priv->job_signals, "changed", G_CALLBACK (update), self);
}

void
lb_shift_group_set_job (LbShiftGroup *self, LbJob *job)
{
  LbShiftGroupPrivate *priv = get_private (self);

  g_return_if_fail (LB_IS_SHIFT_GROUP (self));
  g_return_if_fail (job == NULL || LB_IS_JOB (job));

  if (!g_set_object (&priv->job, job))
    return;
  g_signal_group_set_target (priv->job_signals, job);
  update (self);
}

LbJob *
lb_shift_group_get_job (LbShiftGroup *self)
{
  g_return_val_if_fail (LB_IS_SHIFT_GROUP (self), NULL);

  return get_private (self)->job;
}

const LbShift *
lb_shift_group_get_shift (LbShiftGroup *self)
{
  LbJob *job = lb_shift_group_get_job (self);
  const int shift = job != NULL ? lb_job_get_shift (job) : -1;

  return shift >= 0 ? lb_ledger_shift (lb_job_get_ledger (job), (guint) shift) : NULL;
}

LbShift
lb_shift_group_shift_of_times (LbShiftGroup *self)
{
  const LbShift *shift = lb_shift_group_get_shift (self);
  LbShift coming = { .seq = 0 };

  if (shift != NULL)
    return *shift;
  coming.day = lb_job_present_day (&coming.watch);

  return coming;
}

gboolean
lb_shift_group_record (LbShiftGroup *self, const LbDraft *draft)
{
  return lb_shift_group_record_all (self, draft, 1);
}

gboolean
lb_shift_group_record_all (LbShiftGroup *self, const LbDraft *drafts, gsize n_drafts)
{
  GError *error = NULL;

  g_return_val_if_fail (LB_IS_SHIFT_GROUP (self), FALSE);

  if (lb_job_record (lb_shift_group_get_job (self), drafts, n_drafts, &error))
    return TRUE;
  lb_say_error (GTK_WIDGET (self), _ ("That was not recorded"), error);

  return FALSE;
}

void
lb_shift_group_caption (LbShiftGroup *self, LbField *field, const char *title, LbQuantity quantity)
{
  LbJob *job = lb_shift_group_get_job (self);
  /* Translators: what is typed, and its unit. */
  g_autofree char *whole = g_strdup_printf (
    _ ("%s (%s)"), title, lb_quantity_unit (quantity, lb_job_get_voice (job)->units));

  lb_field_set_caption (field, whole);
}

gboolean
lb_shift_group_read_amount (LbShiftGroup *self, LbField *field, LbQuantity quantity, double *out_si)
{
  LbJob *job = lb_shift_group_get_job (self);
  const char *text = lb_field_get_text (field);
  g_autoptr (GError) error = NULL;
  double si = 0;

  if (!lb_quantity_from_text (quantity, lb_job_get_voice (job)->units, text, &si, NULL))
    /* Translators: a field's title, and what was typed there. */
    g_set_error (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 _ ("%s: “%s” is not a number; type it as 12 or 12.5"),
                 lb_field_get_caption (field), text);
  else if (!(si > 0))
    g_set_error (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 _ ("%s: “%s” must be more than nothing"), lb_field_get_caption (field), text);
  lb_field_mark (field, error);
  if (error != NULL)
    return FALSE;
  *out_si = si;

  return TRUE;
}

gboolean
lb_shift_group_read_if_said (LbShiftGroup *self,
                             LbField *field,
                             LbQuantity quantity,
                             double *out_si)
{
  if (*lb_field_get_text (field) != '\0')
    return lb_shift_group_read_amount (self, field, quantity, out_si);
  lb_field_mark (field, NULL);
  return TRUE;
}
