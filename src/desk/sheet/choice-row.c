/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/choice-row.h"

#include "desk/sheet/assumption-row.h"
#include "desk/shell/say.h"
#include "draw/input-words.h"

#include <glib/gi18n-lib.h>

struct _LbChoiceRow
{
  AdwComboRow parent_instance;

  LbAssumptionId id;
  LbJob *job;
  gboolean is_filling; /* a choice that changes is not a person's */
};

G_DEFINE_FINAL_TYPE (LbChoiceRow, lb_choice_row, ADW_TYPE_COMBO_ROW)

/* Back to the default is one more choice of the same word: what is usual is not kept as the job's. */
static void
chosen_cb (LbChoiceRow *self)
{
  const guint chosen = adw_combo_row_get_selected (ADW_COMBO_ROW (self));
  const LbAssumption *assumption = lb_assumption (self->id);
  const char *const word = lb_assumption_choice (self->id, chosen);
  const char value[] = { (char) ('0' + chosen), '\0' };
  GError *error = NULL;

  if (self->is_filling || self->job == NULL || word == NULL)
    return;
  if (!lb_assumption_record (
        self->job, self->id,
        word == lb_assumption_choice (self->id, assumption->value) ? "" : value, &error))
    lb_say_error (GTK_WIDGET (self), _ ("That was not stored"), error);
}

static void
lb_choice_row_dispose (GObject *object)
{
  g_clear_object (&LB_CHOICE_ROW (object)->job);
  G_OBJECT_CLASS (lb_choice_row_parent_class)->dispose (object);
}

static void
lb_choice_row_class_init (LbChoiceRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_choice_row_dispose;
}

static void
lb_choice_row_init (LbChoiceRow *self)
{
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (self), FALSE);
  adw_action_row_set_title_lines (ADW_ACTION_ROW (self), 0);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (self), 0);
}

LbChoiceRow *
lb_choice_row_new (LbAssumptionId id)
{
  const LbAssumption *assumption = lb_assumption (id);
  g_autoptr (GtkStringList) words = gtk_string_list_new (NULL);
  LbChoiceRow *self = g_object_new (LB_TYPE_CHOICE_ROW, "title",
                                    g_dgettext (GETTEXT_PACKAGE, assumption->title), NULL);

  self->id = id;
  for (guint i = 0; assumption->choices[i] != NULL; i++)
    gtk_string_list_append (words, g_dgettext (GETTEXT_PACKAGE, assumption->choices[i]));
  adw_combo_row_set_model (ADW_COMBO_ROW (self), G_LIST_MODEL (words));
  g_signal_connect (self, "notify::selected", G_CALLBACK (chosen_cb), NULL);
  return self;
}

void
lb_choice_row_show (LbChoiceRow *self, LbJob *job)
{
  g_autofree char *note = NULL;

  g_return_if_fail (LB_IS_CHOICE_ROW (self));

  g_set_object (&self->job, job);
  if (job == NULL)
    return;
  note = lb_assumption_note_text (lb_job_get_voice (job), &lb_job_get_fold (job)->assumptions,
                                  self->id);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (self), note);
  self->is_filling = TRUE;
  adw_combo_row_set_selected (ADW_COMBO_ROW (self),
                              (guint) lb_job_get_fold (job)->assumptions.value[self->id]);
  self->is_filling = FALSE;
  gtk_widget_set_sensitive (GTK_WIDGET (self), !lb_job_is_read_only (job));
}
