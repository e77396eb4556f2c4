/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A part makes as many rows as the cut with the most cautions so far needed; another cut uses the first
 * few of them. */
#include "desk/sheet/caution-list.h"

#include "book/dive-account.h"
#include "desk/sheet/sheet-pile.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  GtkWidget *box;
  GtkCheckButton *check;
  GtkImage *icon;
  GtkLabel *severity;
  GtkLabel *text;
} CautionRow;

/* The pile's own cautions, or those of every cut. */
typedef struct
{
  GtkBox *box;
  GArray *rows; /* CautionRow */
} Part;

struct _LbCautionList
{
  GtkBox parent_instance;

  Part own, ordinary;
  GtkWidget *heading;  /* over the ordinary ones */
  gboolean is_showing; /* boxes are set by us, not by a person */
};

G_DEFINE_FINAL_TYPE (LbCautionList, lb_caution_list, GTK_TYPE_BOX)

enum {
  TOGGLED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* By LbSeverity. */
static const struct
{
  const char *icon;
  const char *css_class;
  const char *word; /* msgid */
} looks[] = {
  [LB_SEVERITY_NOTE] = { "dialog-information-symbolic", "severity-note", NC_ ("severity", "Note") },
  [LB_SEVERITY_CAUTION] = { "dialog-warning-symbolic", "severity-caution",
                            NC_ ("severity", "Caution") },
  [LB_SEVERITY_DANGER] = { "dialog-error-symbolic", "severity-danger", NC_ ("severity", "Danger") },
};

static void
toggled_cb (GtkCheckButton *check, LbCautionList *self)
{
  const char *key = g_object_get_data (G_OBJECT (check), "key");

  if (!self->is_showing)
    g_signal_emit (self, signals[TOGGLED], 0, key, gtk_check_button_get_active (check));
}

static void
add_row (LbCautionList *self, Part *part)
{
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  const CautionRow made = {
    .box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9),
    .check = GTK_CHECK_BUTTON (gtk_check_button_new ()),
    .icon = GTK_IMAGE (gtk_image_new ()),
    .severity = GTK_LABEL (gtk_label_new (NULL)),
    .text = GTK_LABEL (gtk_label_new (NULL)),
  };
  const CautionRow *row = &made;

  gtk_widget_set_valign (GTK_WIDGET (row->icon), GTK_ALIGN_START);
  gtk_accessible_update_state (GTK_ACCESSIBLE (row->icon), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  gtk_label_set_xalign (row->severity, 0);
  gtk_widget_add_css_class (GTK_WIDGET (row->severity), "small-strong");
  gtk_label_set_wrap (row->text, TRUE);
  gtk_label_set_wrap_mode (row->text, PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign (row->text, 0);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (words), GTK_WIDGET (row->severity));
  gtk_box_append (GTK_BOX (words), GTK_WIDGET (row->text));
  gtk_widget_set_valign (GTK_WIDGET (row->check), GTK_ALIGN_START);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (row->check), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  row->text, NULL, -1);
  g_signal_connect_object (row->check, "toggled", G_CALLBACK (toggled_cb), self, 0);
  gtk_box_append (GTK_BOX (row->box), GTK_WIDGET (row->check));
  gtk_box_append (GTK_BOX (row->box), GTK_WIDGET (row->icon));
  gtk_box_append (GTK_BOX (row->box), words);
  gtk_widget_add_css_class (row->box, "caution");
  gtk_box_append (part->box, row->box);
  g_array_append_val (part->rows, made);
}

static void
init_part (LbCautionList *self, Part *part)
{
  part->box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 6));
  part->rows = g_array_new (FALSE, FALSE, sizeof (CautionRow));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (part->box));
}

static void
lb_caution_list_finalize (GObject *object)
{
  LbCautionList *self = LB_CAUTION_LIST (object);

  g_array_unref (self->own.rows);
  g_array_unref (self->ordinary.rows);

  G_OBJECT_CLASS (lb_caution_list_parent_class)->finalize (object);
}

static void
lb_caution_list_class_init (LbCautionListClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = lb_caution_list_finalize;

  /* A person ticked a box or took the tick away: the caution's key, whether it is ticked. */
  signals[TOGGLED] = g_signal_new ("toggled", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 2, G_TYPE_STRING, G_TYPE_BOOLEAN);
}

static void
lb_caution_list_init (LbCautionList *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  init_part (self, &self->own);
  self->heading = gtk_label_new (_ ("At every cut"));
  gtk_label_set_xalign (GTK_LABEL (self->heading), 0);
  gtk_widget_add_css_class (self->heading, "small-strong");
  gtk_widget_set_margin_top (self->heading, 6);
  gtk_box_append (GTK_BOX (self), self->heading);
  init_part (self, &self->ordinary);
}

static void
show_caution (const CautionRow *row, const LbSheetPile *shown, const GArray *checks, gsize i)
{
  const LbCautionRow *caution = shown->plan.cautions[i];
  const LbCheck *check = lb_check_find (checks, caution->key);
  const LbSeverity severity = caution->severity;
  g_autofree char *text = lb_caution_text (shown->voice, shown->pile, &shown->fold->assumptions,
                                           &shown->plan, i);

  for (gsize look = 0; look < G_N_ELEMENTS (looks); look++)
    gtk_widget_remove_css_class (row->box, looks[look].css_class);
  gtk_widget_add_css_class (row->box, looks[severity].css_class);
  gtk_image_set_from_icon_name (row->icon, looks[severity].icon);
  gtk_label_set_label (row->severity,
                       g_dpgettext2 (GETTEXT_PACKAGE, "severity", looks[severity].word));
  gtk_label_set_label (row->text, text);
  g_object_set_data_full (G_OBJECT (row->check), "key", g_strdup (caution->key), g_free);
  gtk_check_button_set_active (row->check, check != NULL && check->is_ticked);
  gtk_widget_set_tooltip_text (row->box, lb_caution_source_text (&shown->plan, i));
}

/* The cautions from @first, @n of them. */
static void
show_part (LbCautionList *self,
           Part *part,
           const LbSheetPile *shown,
           const GArray *checks,
           gsize first,
           gsize n)
{
  while (part->rows->len < n)
    add_row (self, part);
  for (gsize i = 0; i < part->rows->len; i++) {
    const CautionRow *row = &g_array_index (part->rows, CautionRow, i);

    if (i < n)
      show_caution (row, shown, checks, first + i);
    gtk_widget_set_visible (row->box, i < n);
  }
}

void
lb_caution_list_show (LbCautionList *self, LbJob *job, guint pile, const GArray *checks)
{
  LbSheetPile shown;

  g_return_if_fail (LB_IS_CAUTION_LIST (self));

  if (job == NULL)
    return;
  lb_sheet_pile_load (&shown, job, pile);

  const gsize n_own = shown.plan.n_own_cautions;

  self->is_showing = TRUE;
  show_part (self, &self->own, &shown, checks, 0, n_own);
  show_part (self, &self->ordinary, &shown, checks, n_own, shown.plan.n_cautions - n_own);
  self->is_showing = FALSE;
}
