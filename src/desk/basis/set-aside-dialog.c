/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/basis/set-aside-dialog.h"

#include "book/burn-history.h"
#include "desk/shell/say.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  GtkWidget *from;
  AdwMessageDialog *dialog;
  GtkEditable *reason_row;
  GtkSwitch *shift_switch;
  LbJob *job;
  int pile, shift;
} Question;

static void
question_free (gpointer data, GClosure *closure)
{
  Question *question = data;

  g_object_unref (question->from);
  g_object_unref (question->job);
  g_free (question);
}

/* @reason NULL to take in again. */
static void
record (GtkWidget *from, LbJob *job, int pile, int shift, const char *reason)
{
  const LbLedger *ledger = lb_job_get_ledger (job);
  const LbFold *fold = lb_job_get_fold (job);
  g_autoptr (LbBurnHistory) history = lb_burn_history_new (ledger, fold);
  GError *error = NULL;
  LbDraft draft;

  if (!lb_burn_history_set_aside (history, ledger, fold, pile, shift, reason, &draft, &error) ||
      !lb_job_record (job, &draft, 1, &error))
    lb_say_error (from, _ ("That was not stored"), error);
}

/* Without surrounding blanks; "" when nothing is said. */
static char *
reason_of (const Question *question)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (question->reason_row)));
}

static void
reason_changed_cb (Question *question)
{
  g_autofree char *reason = reason_of (question);

  adw_message_dialog_set_response_enabled (question->dialog, "set-aside", *reason != '\0');
}

static void
reason_entered_cb (Question *question)
{
  g_autofree char *reason = reason_of (question);

  if (*reason == '\0')
    return;
  /* Unlike a button, this does not close the dialog. */
  GtkWindow *dialog = GTK_WINDOW (question->dialog);

  adw_message_dialog_response (question->dialog, "set-aside");
  gtk_window_destroy (dialog);
}

static void
answered_cb (Question *question, const char *response)
{
  g_autofree char *reason = reason_of (question);
  const gboolean is_shift = gtk_switch_get_active (question->shift_switch);

  if (g_str_equal (response, "set-aside") && *reason != '\0')
    record (question->from, question->job, is_shift ? -1 : question->pile, question->shift, reason);
}

static GtkWidget *
make_rows (Question *question)
{
  GtkWidget *list = gtk_list_box_new ();
  GtkWidget *reason = adw_entry_row_new ();
  GtkWidget *whole = adw_action_row_new ();
  GtkWidget *control = gtk_switch_new ();

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (reason), _ ("Why"));
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (whole), _ ("The whole shift"));
  adw_action_row_set_subtitle (ADW_ACTION_ROW (whole), _ ("With its rods, oxygen and strikes"));
  gtk_widget_set_valign (control, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The whole shift"), -1);
  adw_action_row_add_suffix (ADW_ACTION_ROW (whole), control);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (whole), control);
  gtk_widget_add_css_class (list, "boxed-list");
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_list_box_append (GTK_LIST_BOX (list), reason);
  gtk_list_box_append (GTK_LIST_BOX (list), whole);
  question->reason_row = GTK_EDITABLE (reason);
  question->shift_switch = GTK_SWITCH (control);
  return list;
}

void
lb_set_aside_ask (GtkWidget *from, LbJob *job, int pile, int shift)
{
  g_return_if_fail (GTK_IS_WIDGET (from));
  g_return_if_fail (LB_IS_JOB (job));

  GtkRoot *root = gtk_widget_get_root (from);
  const char *mark = lb_job_get_fold (job)->piles[pile].mark;
  g_autofree char *day = lb_day_text (
    lb_ledger_shift (lb_job_get_ledger (job), (guint) shift)->day);
  /* Translators: a pile and a day. */
  g_autofree char *heading = g_strdup_printf (_ ("Set %s of %s Aside?"), mark, day);
  Question *question = g_new0 (Question, 1);
  AdwMessageDialog *dialog = ADW_MESSAGE_DIALOG (
    adw_message_dialog_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, heading,
                            _ ("It stays on record and in the list, and teaches the burning rate "
                               "nothing until it is taken in again.")));

  *question = (Question){
    .from = g_object_ref (from),
    .dialog = dialog,
    .job = g_object_ref (job),
    .pile = pile,
    .shift = shift,
  };
  adw_message_dialog_set_extra_child (dialog, make_rows (question));
  adw_message_dialog_add_responses (dialog, "cancel", _ ("_Cancel"), "set-aside", _ ("_Set Aside"),
                                    NULL);
  adw_message_dialog_set_response_appearance (dialog, "set-aside", ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (dialog, "set-aside");
  adw_message_dialog_set_close_response (dialog, "cancel");
  g_signal_connect_data (dialog, "response", G_CALLBACK (answered_cb), question, question_free,
                         G_CONNECT_SWAPPED);
  g_signal_connect_swapped (question->reason_row, "changed", G_CALLBACK (reason_changed_cb),
                            question);
  g_signal_connect_swapped (question->reason_row, "entry-activated", G_CALLBACK (reason_entered_cb),
                            question);
  reason_changed_cb (question);
  gtk_window_present (GTK_WINDOW (dialog));
  gtk_widget_grab_focus (GTK_WIDGET (question->reason_row));
}

void
lb_set_aside_undo (GtkWidget *from, LbJob *job, int pile, int shift)
{
  g_return_if_fail (GTK_IS_WIDGET (from));
  g_return_if_fail (LB_IS_JOB (job));

  record (from, job, pile, shift, NULL);
}
