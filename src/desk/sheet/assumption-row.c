/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/assumption-row.h"

#include "desk/shell/say.h"
#include "draw/input-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>

struct _LbAssumptionRow
{
  LbCheckedRow parent_instance;

  GtkWidget *default_button;
  LbAssumptionId id;
  LbJob *job;
};

G_DEFINE_FINAL_TYPE (LbAssumptionRow, lb_assumption_row, LB_TYPE_CHECKED_ROW)

static gboolean
read_value (LbAssumptionRow *self, const char *text, double *out_si, GError **error)
{
  LbAssumptions tried = lb_job_get_fold (self->job)->assumptions;

  return lb_quantity_from_text (lb_assumption (self->id)->quantity,
                                lb_job_get_voice (self->job)->units, text, out_si, error) &&
         lb_assumptions_set (&tried, self->id, *out_si, error);
}

gboolean
lb_assumption_record (LbJob *job, LbAssumptionId id, const char *value, GError **error)
{
  g_autofree char *key = g_strconcat ("assume.", lb_assumption (id)->key, NULL);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);

  draft.what = key;
  draft.note = value;
  return lb_job_record (job, &draft, 1, error);
}

static gboolean
lb_assumption_row_check (LbCheckedRow *row, const char *text, char **out_doubt, GError **error)
{
  LbAssumptionRow *self = LB_ASSUMPTION_ROW (row);
  double si;

  return self->job == NULL || read_value (self, text, &si, error);
}

static gboolean
lb_assumption_row_store (LbCheckedRow *row, const char *text, GError **error)
{
  LbAssumptionRow *self = LB_ASSUMPTION_ROW (row);
  g_autofree char *value = NULL;
  double si = 0;

  if (!read_value (self, text, &si, error))
    return FALSE;
  value = lb_number_to_text (si, -1, &LB_NUMBER_PLAIN);
  return lb_assumption_record (self->job, self->id, value, error);
}

static void
default_clicked_cb (LbAssumptionRow *self)
{
  GError *error = NULL;

  lb_checked_row_revert (LB_CHECKED_ROW (self));
  if (!lb_assumption_record (self->job, self->id, "", &error))
    lb_say_error (GTK_WIDGET (self), _ ("The default was not brought back"), error);
}

static void
lb_assumption_row_dispose (GObject *object)
{
  g_clear_object (&LB_ASSUMPTION_ROW (object)->job);
  G_OBJECT_CLASS (lb_assumption_row_parent_class)->dispose (object);
}

static void
lb_assumption_row_class_init (LbAssumptionRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_assumption_row_dispose;
  LB_CHECKED_ROW_CLASS (klass)->check = lb_assumption_row_check;
  LB_CHECKED_ROW_CLASS (klass)->store = lb_assumption_row_store;
}

static void
lb_assumption_row_init (LbAssumptionRow *self)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("edit-undo-symbolic");

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (button, _ ("Back to the default"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Back to the default"), -1);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (default_clicked_cb), self);
  adw_entry_row_add_suffix (ADW_ENTRY_ROW (self), button);
  self->default_button = button;
}

LbAssumptionRow *
lb_assumption_row_new (LbAssumptionId id)
{
  LbAssumptionRow *self = g_object_new (LB_TYPE_ASSUMPTION_ROW, NULL);

  self->id = id;
  return self;
}

/* Without grouping signs, which could be taken for a decimal sign when it is read again. */
static char *
value_text (LbAssumptionRow *self)
{
  const LbQuantity quantity = lb_assumption (self->id)->quantity;
  const LbFold *fold = lb_job_get_fold (self->job);
  LbNumberStyle style = lb_job_get_voice (self->job)->numbers;

  style.thousands = "";
  return lb_number_to_text (
    lb_quantity_from_si (quantity, fold->units, fold->assumptions.value[self->id]),
    lb_quantity_decimals (quantity, fold->units), &style);
}

void
lb_assumption_row_show (LbAssumptionRow *self, LbJob *job)
{
  const LbAssumption *assumption = lb_assumption (self->id);
  const char *unit;
  const LbFold *fold;
  g_autofree char *note = NULL;
  g_autofree char *title = NULL;
  g_autofree char *value = NULL;

  g_return_if_fail (LB_IS_ASSUMPTION_ROW (self));

  g_set_object (&self->job, job);
  if (job == NULL)
    return;
  fold = lb_job_get_fold (job);
  unit = lb_quantity_unit (assumption->quantity, fold->units);
  title = *unit == '\0' ? g_strdup (g_dgettext (GETTEXT_PACKAGE, assumption->title))
                        /* Translators: what is typed, and its unit. */
                        : g_strdup_printf (_ ("%s (%s)"),
                                           g_dgettext (GETTEXT_PACKAGE, assumption->title), unit);
  note = lb_assumption_note_text (lb_job_get_voice (job), &fold->assumptions, self->id);
  value = value_text (self);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), title);
  gtk_editable_set_editable (GTK_EDITABLE (self), !lb_job_is_read_only (job));
  lb_checked_row_set_note (LB_CHECKED_ROW (self), note);
  lb_checked_row_show (LB_CHECKED_ROW (self), value);
  gtk_widget_set_visible (self->default_button, fold->assumptions.is_own[self->id]);
  gtk_widget_set_sensitive (self->default_button, !lb_job_is_read_only (job));
}
