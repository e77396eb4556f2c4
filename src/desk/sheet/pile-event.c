/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/pile-event.h"

#include "desk/shell/say.h"
#include "draw/plan-words.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

/* A question with one row to answer it in; lives as long as its dialog. */
typedef struct
{
  GtkWidget *from;
  GtkWidget *dialog;
  AdwEntryRow *row;
  LbJob *job;
  guint pile;
  gboolean is_note;
} Question;

static void
question_free (gpointer data, GClosure *closure)
{
  Question *question = data;

  g_object_unref (question->from);
  g_object_unref (question->job);
  g_free (question);
}

static void
record (GtkWidget *from, LbJob *job, guint pile, LbDraft *draft)
{
  const LbFold *fold = lb_job_get_fold (job);
  g_autofree char *words = NULL;
  GError *error = NULL;

  draft->pile_id = fold->piles[pile].id;
  if (!lb_job_record (job, draft, 1, &error)) {
    lb_say_error (from, _ ("That was not recorded"), error);
    return;
  }
  fold = lb_job_get_fold (job);
  words = draft->kind == LB_ENTRY_NOTE
            ? g_strdup_printf (_ ("%s: the note is recorded"), fold->piles[pile].mark)
            : NULL;
  if (words == NULL) {
    g_autofree char *state = lb_pile_state_text (&fold->piles[pile], &fold->states[pile]);

    words = g_strdup_printf (_ ("%s: %s"), fold->piles[pile].mark, state);
  }
  lb_say (from, words, TRUE);
}

void
lb_pile_event_drawn (GtkWidget *from, LbJob *job, guint pile)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_DRAWN);

  record (from, job, pile, &draft);
}

/* Whether the row's text can be recorded, and as what. An unknown head is an answer too. */
static gboolean
read_answer (const Question *question, double *out_amount, GError **error)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (question->row));

  *out_amount = (double) NAN;
  if (question->is_note)
    return *text != '\0';
  return *text == '\0' ||
         lb_quantity_from_text (LB_QUANTITY_LENGTH, lb_job_get_voice (question->job)->units, text,
                                out_amount, error);
}

static void
answer_changed_cb (Question *question)
{
  g_autoptr (GError) error = NULL;
  double amount;
  const gboolean is_right = read_answer (question, &amount, &error);

  adw_message_dialog_set_response_enabled (ADW_MESSAGE_DIALOG (question->dialog), "record",
                                           is_right);
  if (error != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (question->row), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (question->row), "error");
  gtk_widget_set_tooltip_text (GTK_WIDGET (question->row), error != NULL ? error->message : NULL);
}

static void
activated_cb (Question *question)
{
  GtkWidget *dialog = question->dialog;
  double amount;

  if (!read_answer (question, &amount, NULL))
    return;
  adw_message_dialog_response (ADW_MESSAGE_DIALOG (dialog), "record");
  /* Unlike a button, that does not close it: Enter once more would record once more. */
  gtk_window_destroy (GTK_WINDOW (dialog));
}

static void
answered_cb (Question *question, const char *response)
{
  LbDraft draft = LB_DRAFT_INIT (question->is_note ? LB_ENTRY_NOTE : LB_ENTRY_BROKEN);
  g_autofree char *note = g_strdup (gtk_editable_get_text (GTK_EDITABLE (question->row)));
  double amount;

  if (!g_str_equal (response, "record") || !read_answer (question, &amount, NULL))
    return;
  if (question->is_note)
    draft.note = note;
  else
    draft.amount = amount;
  record (question->from, question->job, question->pile, &draft);
}

static void
ask (GtkWidget *from,
     LbJob *job,
     guint pile,
     gboolean is_note,
     const char *heading,
     const char *body,
     const char *title)
{
  GtkRoot *root = gtk_widget_get_root (from);
  Question *question = g_new0 (Question, 1);
  GtkWidget *list = gtk_list_box_new ();
  GtkWidget *row = adw_entry_row_new ();
  AdwMessageDialog *dialog = ADW_MESSAGE_DIALOG (
    adw_message_dialog_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, heading, body));

  *question = (Question){
    .from = g_object_ref (from),
    .dialog = GTK_WIDGET (dialog),
    .row = ADW_ENTRY_ROW (row),
    .job = g_object_ref (job),
    .pile = pile,
    .is_note = is_note,
  };
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  gtk_widget_add_css_class (list, "boxed-list");
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_list_box_append (GTK_LIST_BOX (list), row);
  adw_message_dialog_set_extra_child (dialog, list);
  adw_message_dialog_add_responses (dialog, "cancel", _ ("_Cancel"), "record", _ ("_Record"), NULL);
  adw_message_dialog_set_response_appearance (dialog, "record", ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (dialog, "record");
  adw_message_dialog_set_close_response (dialog, "cancel");

  g_signal_connect_data (dialog, "response", G_CALLBACK (answered_cb), question, question_free,
                         G_CONNECT_SWAPPED);
  g_signal_connect_swapped (row, "changed", G_CALLBACK (answer_changed_cb), question);
  g_signal_connect_swapped (row, "entry-activated", G_CALLBACK (activated_cb), question);
  answer_changed_cb (question);
  gtk_window_present (GTK_WINDOW (dialog));
  gtk_widget_grab_focus (row);
}

void
lb_pile_event_broke (GtkWidget *from, LbJob *job, guint pile)
{
  const char *unit = lb_quantity_unit (LB_QUANTITY_LENGTH, lb_job_get_voice (job)->units);
  g_autofree char *heading = g_strdup_printf (_ ("%s Broke"),
                                              lb_job_get_fold (job)->piles[pile].mark);
  g_autofree char *title = g_strdup_printf (_ ("Elevation of the stub’s head (%s)"), unit);

  ask (from, job, pile, FALSE, heading,
       _ ("The stub comes back on the list until it is out. Leave the elevation empty when it is "
          "not known."),
       title);
}

void
lb_pile_event_note (GtkWidget *from, LbJob *job, guint pile)
{
  g_autofree char *heading = g_strdup_printf (_ ("Note on %s"),
                                              lb_job_get_fold (job)->piles[pile].mark);

  ask (from, job, pile, TRUE, heading, NULL, _ ("What the next shift should know"));
}
