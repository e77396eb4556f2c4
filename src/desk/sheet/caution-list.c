/* SPDX-License-Identifier: GPL-3.0-or-later */
/* As many rows as there are kinds of caution are made once; a cut uses the first few of them. */
#include "desk/sheet/caution-list.h"

#include "desk/sheet/sheet-pile.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  GtkWidget *box;
  GtkImage *icon;
  GtkLabel *severity;
  GtkLabel *text;
} CautionRow;

struct _LbCautionList
{
  GtkBox parent_instance;

  CautionRow rows[LB_N_CAUTIONS];
};

G_DEFINE_FINAL_TYPE (LbCautionList, lb_caution_list, GTK_TYPE_BOX)

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
add_row (LbCautionList *self, CautionRow *row)
{
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  row->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);
  row->icon = GTK_IMAGE (gtk_image_new ());
  row->severity = GTK_LABEL (gtk_label_new (NULL));
  row->text = GTK_LABEL (gtk_label_new (NULL));
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
  gtk_box_append (GTK_BOX (row->box), GTK_WIDGET (row->icon));
  gtk_box_append (GTK_BOX (row->box), words);
  gtk_widget_add_css_class (row->box, "caution");
  gtk_box_append (GTK_BOX (self), row->box);
}

static void
lb_caution_list_class_init (LbCautionListClass *klass)
{
}

static void
lb_caution_list_init (LbCautionList *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  for (gsize i = 0; i < LB_N_CAUTIONS; i++)
    add_row (self, &self->rows[i]);
}

static void
show_caution (const CautionRow *row, const LbSheetPile *shown, LbCaution caution)
{
  const LbSeverity severity = lb_caution_severity (caution);
  g_autofree char *text = lb_caution_text (shown->voice, shown->pile, &shown->plan, caution);

  for (gsize i = 0; i < G_N_ELEMENTS (looks); i++)
    gtk_widget_remove_css_class (row->box, looks[i].css_class);
  gtk_widget_add_css_class (row->box, looks[severity].css_class);
  gtk_image_set_from_icon_name (row->icon, looks[severity].icon);
  gtk_label_set_label (row->severity,
                       g_dpgettext2 (GETTEXT_PACKAGE, "severity", looks[severity].word));
  gtk_label_set_label (row->text, text);
  gtk_widget_set_tooltip_text (row->box, g_dgettext (GETTEXT_PACKAGE, lb_caution_source (caution)));
}

void
lb_caution_list_show (LbCautionList *self, LbJob *job, guint pile)
{
  LbSheetPile shown;

  g_return_if_fail (LB_IS_CAUTION_LIST (self));

  if (job == NULL)
    return;
  lb_sheet_pile_load (&shown, job, pile);
  for (gsize i = 0; i < LB_N_CAUTIONS; i++) {
    if (i < shown.plan.n_cautions)
      show_caution (&self->rows[i], &shown, shown.plan.cautions[i]);
    gtk_widget_set_visible (self->rows[i].box, i < shown.plan.n_cautions);
  }
}
