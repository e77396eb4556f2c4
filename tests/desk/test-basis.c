/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Figures opened to what they rest on, and the samples behind the burning rate. */
#include "desk/basis/burn-window.h"
#include "desk/basis/figure-window.h"
#include "desk/sheet/defaults-window.h"
#include "desk/sheet/fact-field.h"
#include "desk/sheet/pile-sheet.h"
#include "desk/shell/plain-table.h"
#include "find-widget.h"
#include "small-job.h"

#include <string.h>

typedef struct
{
  char *path;
  LbJob *job;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->path = small_job_create ();
  fixture->job = small_job_open (fixture->path);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  /* The focus may still be on its way, and an answered question is closed after its answer. */
  while (g_main_context_iteration (NULL, FALSE))
    ;
  g_assert_finalize_object (fixture->job);
  small_job_remove (fixture->path);
}

/* Bars burned at a pile with their time, in the present shift. */
static void
burn (Fixture *fixture, guint pile, double trigger_s)
{
  LbDraft drafts[2] = { LB_DRAFT_INIT (LB_ENTRY_BARS), LB_DRAFT_INIT (LB_ENTRY_BURN_TIME) };
  g_autoptr (GError) error = NULL;

  drafts[0].pile_id = drafts[1].pile_id = lb_job_get_fold (fixture->job)->piles[pile].id;
  drafts[0].bars = 0xff;
  drafts[1].amount = trigger_s;
  g_assert_true (lb_job_record (fixture->job, drafts, 2, &error));
  g_assert_no_error (error);
}

static const LbBurnModel *
model (Fixture *fixture)
{
  return lb_fold_basis (lb_job_get_fold (fixture->job))->burn;
}

/* The window of that type that was opened last; NULL for none. */
static GtkWidget *
find_window (GType type)
{
  g_autoptr (GList) windows = gtk_window_list_toplevels ();

  for (GList *at = windows; at != NULL; at = at->next) {
    if (G_TYPE_CHECK_INSTANCE_TYPE (at->data, type))
      return at->data;
  }
  return NULL;
}

/* --- Figures ------------------------------------------------------------------------------ */

static void
activate (LbFigureWindow *window, const char *title)
{
  GtkWidget *row = find_widget (GTK_WIDGET (window), ADW_TYPE_ACTION_ROW, title);

  g_assert_nonnull (row);
  adw_action_row_activate (ADW_ACTION_ROW (row));
}

/* What stands at the end of the row. */
static const char *
value_of (LbFigureWindow *window, const char *title)
{
  GtkWidget *row = find_widget (GTK_WIDGET (window), ADW_TYPE_ACTION_ROW, title);
  GtkWidget *box;

  g_assert_nonnull (row);
  box = gtk_widget_get_last_child (gtk_widget_get_first_child (row));
  return gtk_label_get_label (GTK_LABEL (gtk_widget_get_first_child (box)));
}

static void
test_every_figure (Fixture *fixture, gconstpointer data)
{
  burn (fixture, 0, 200);
  for (LbFigureId id = 0; id < LB_N_FIGURES; id++) {
    LbFigureWindow *window = lb_figure_window_new (NULL, fixture->job, 1, id);

    g_test_message ("%s", lb_figure_key (id));
    g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, lb_figure_title (id));
    g_assert_nonnull (find_widget (GTK_WIDGET (window), ADW_TYPE_ACTION_ROW, "Formula"));
    g_assert_nonnull (find_widget (GTK_WIDGET (window), ADW_TYPE_ACTION_ROW, "Source"));
    gtk_window_destroy (GTK_WINDOW (window));
  }
}

/* Input figures open in turn, and the way leads back. */
static void
test_way (Fixture *fixture, gconstpointer data)
{
  LbFigureWindow *window = lb_figure_window_new (NULL, fixture->job, 0, LB_FIGURE_CRANE_SHARE);
  GtkWidget *back = find_widget (GTK_WIDGET (window), GTK_TYPE_BUTTON, NULL);

  g_assert_false (gtk_widget_get_visible (back));
  activate (window, "Hook load");
  activate (window, "Weight in air");
  activate (window, "True length of the piece");
  g_assert_cmpint (lb_figure_window_get_figure (window), ==, LB_FIGURE_TRUE_LENGTH);
  g_assert_true (gtk_widget_get_visible (back));
  for (int i = 0; i < 5; i++)
    gtk_widget_activate_action (GTK_WIDGET (window), "figure.back", NULL);
  g_assert_cmpint (lb_figure_window_get_figure (window), ==, LB_FIGURE_CRANE_SHARE);
  g_assert_false (gtk_widget_get_visible (back));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* An assumption leads to its row, and what is set there is seen at once. */
static void
test_assumption (Fixture *fixture, gconstpointer data)
{
  LbFigureWindow *window = lb_figure_window_new (NULL, fixture->job, 0, LB_FIGURE_HOOK_LOAD);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);
  GtkWidget *defaults;

  g_assert_cmpstr (value_of (window, "Rigging weight"), ==, "400 lb");
  activate (window, "Rigging weight");
  defaults = find_window (LB_TYPE_DEFAULTS_WINDOW);
  g_assert_nonnull (defaults);
  g_assert_true (gtk_window_get_transient_for (GTK_WINDOW (defaults)) == GTK_WINDOW (window));

  draft.what = "assume.rigging-mass";
  draft.note = "453.59237";
  g_assert_true (lb_job_record (fixture->job, &draft, 1, NULL));
  g_assert_cmpstr (value_of (window, "Rigging weight"), ==, "1000 lb");
  gtk_window_destroy (GTK_WINDOW (defaults));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A missing fact is asked for in the sheet that the figure was opened from. */
static void
test_fact (Fixture *fixture, gconstpointer data)
{
  GtkWidget *frame = gtk_window_new ();
  LbSelection *selection = lb_selection_new ();
  GtkWidget *sheet = g_object_new (LB_TYPE_PILE_SHEET, "job", fixture->job, "selection", selection,
                                   NULL);
  LbFigureWindow *window;

  lb_selection_set_current (selection, 0);
  gtk_window_set_child (GTK_WINDOW (frame), sheet);
  gtk_window_present (GTK_WINDOW (frame));
  window = lb_figure_window_new (sheet, fixture->job, 0, LB_FIGURE_TRUE_LENGTH);
  activate (window, "Head elevation");
  g_assert_null (find_window (LB_TYPE_FIGURE_WINDOW));
  while (g_main_context_iteration (NULL, FALSE))
    ;

  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (frame));
  GtkWidget *field = focus != NULL ? gtk_widget_get_ancestor (focus, LB_TYPE_FACT_FIELD) : NULL;

  g_assert_nonnull (field);
  g_assert_true (g_str_has_prefix (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (field)),
                                   "Head elevation"));
  gtk_window_destroy (GTK_WINDOW (frame));
  g_object_unref (selection);
}

/* What the pile lacks is asked for over its figures, and the button leads there. */
static void
test_lacks (Fixture *fixture, gconstpointer data)
{
  GtkWidget *frame = gtk_window_new ();
  LbSelection *selection = lb_selection_new ();
  GtkWidget *sheet = g_object_new (LB_TYPE_PILE_SHEET, "job", fixture->job, "selection", selection,
                                   NULL);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_FACT);
  GtkWidget *give;

  lb_selection_set_current (selection, 0);
  gtk_window_set_child (GTK_WINDOW (frame), sheet);
  gtk_window_present (GTK_WINDOW (frame));
  give = find_widget (sheet, GTK_TYPE_BUTTON, "Give Them");
  g_assert_false (gtk_widget_is_visible (give));

  draft.pile_id = lb_job_get_fold (fixture->job)->piles[0].id;
  draft.what = lb_fact_name (LB_FACT_HEAD);
  draft.note = "";
  g_assert_true (lb_job_record (fixture->job, &draft, 1, NULL));
  g_assert_true (gtk_widget_is_visible (give));
  g_assert_nonnull (find_widget (sheet, GTK_TYPE_LABEL, "To be found out: Head elevation"));
  g_signal_emit_by_name (give, "clicked");
  while (g_main_context_iteration (NULL, FALSE))
    ;
  g_assert_nonnull (
    gtk_widget_get_ancestor (gtk_root_get_focus (GTK_ROOT (frame)), LB_TYPE_FACT_FIELD));
  gtk_window_destroy (GTK_WINDOW (frame));
  g_object_unref (selection);
}

/* --- Samples ------------------------------------------------------------------------------ */

static GtkWidget *
button (LbBurnWindow *window, const char *label)
{
  GtkWidget *found = find_widget (GTK_WIDGET (window), GTK_TYPE_BUTTON, label);

  g_assert_nonnull (found);
  return found;
}

static GtkColumnView *
samples (LbBurnWindow *window)
{
  return GTK_COLUMN_VIEW (find_widget (GTK_WIDGET (window), GTK_TYPE_COLUMN_VIEW, NULL));
}

static char *
row_text (LbBurnWindow *window, guint row)
{
  GListModel *rows = G_LIST_MODEL (gtk_column_view_get_model (samples (window)));
  g_autoptr (GtkStringObject) item = g_list_model_get_item (rows, row);

  return g_strdup (gtk_string_object_get_string (item));
}

/* Answers the question that is asked. */
static void
answer (const char *reason, gboolean is_shift)
{
  GtkWidget *dialog = find_window (ADW_TYPE_MESSAGE_DIALOG);

  g_assert_nonnull (dialog);
  g_assert_false (
    adw_message_dialog_get_response_enabled (ADW_MESSAGE_DIALOG (dialog), "set-aside"));
  gtk_editable_set_text (GTK_EDITABLE (find_widget (dialog, ADW_TYPE_ENTRY_ROW, NULL)), reason);
  g_assert_true (
    adw_message_dialog_get_response_enabled (ADW_MESSAGE_DIALOG (dialog), "set-aside"));
  gtk_switch_set_active (GTK_SWITCH (find_widget (dialog, GTK_TYPE_SWITCH, NULL)), is_shift);
  /* As Enter does it. */
  g_signal_emit_by_name (find_widget (dialog, ADW_TYPE_ENTRY_ROW, NULL), "entry-activated");
  g_assert_null (find_window (ADW_TYPE_MESSAGE_DIALOG));
}

static void
test_set_aside (Fixture *fixture, gconstpointer data)
{
  LbBurnWindow *window;

  burn (fixture, 0, 200);
  burn (fixture, 1, 180);
  window = lb_burn_window_new (NULL, fixture->job);
  g_assert_cmpuint (
    g_list_model_get_n_items (G_LIST_MODEL (gtk_column_view_get_model (samples (window)))), ==, 2);
  g_assert_false (gtk_widget_get_sensitive (button (window, "_Set Aside…")));

  /* The last first: row 1 is the first pile burned. */
  lb_plain_table_pick (samples (window), 1);
  g_assert_true (gtk_widget_get_sensitive (button (window, "_Set Aside…")));
  g_assert_false (gtk_widget_get_sensitive (button (window, "_Take In Again")));
  g_signal_emit_by_name (button (window, "_Set Aside…"), "clicked");
  answer (" jacketed ", FALSE);
  g_assert_cmpuint (model (fixture)->n_samples, ==, 1);
  g_assert_cmpuint (model (fixture)->n_set_aside, ==, 1);
  {
    g_autofree char *row = row_text (window, 1);

    g_assert_nonnull (strstr (row, "A1"));
    g_assert_nonnull (strstr (row, "set aside: jacketed"));
  }
  /* It stays picked, and can be taken in at once. */
  g_assert_cmpuint (lb_plain_table_get_picked (samples (window)), ==, 1);
  g_assert_false (gtk_widget_get_sensitive (button (window, "_Set Aside…")));
  g_signal_emit_by_name (button (window, "_Take In Again"), "clicked");
  g_assert_cmpuint (model (fixture)->n_samples, ==, 2);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_set_shift_aside (Fixture *fixture, gconstpointer data)
{
  LbBurnWindow *window;

  burn (fixture, 0, 200);
  burn (fixture, 1, 180);
  window = lb_burn_window_new (NULL, fixture->job);
  lb_plain_table_pick (samples (window), 0);
  g_signal_emit_by_name (button (window, "_Set Aside…"), "clicked");
  answer ("the clock stood still", TRUE);
  g_assert_cmpuint (model (fixture)->n_samples, ==, 0);
  lb_plain_table_pick (samples (window), 1);
  g_signal_emit_by_name (button (window, "Take the _Shift In Again"), "clicked");
  g_assert_cmpuint (model (fixture)->n_samples, ==, 2);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* From a figure's window to the shift: both windows close, and the shift is picked. */
static void
test_open_shift (Fixture *fixture, gconstpointer data)
{
  LbFigureWindow *figure;
  LbBurnWindow *window;
  GtkWidget *frame = gtk_window_new ();

  burn (fixture, 0, 200);
  g_assert_true (lb_job_open_shift (fixture->job, 739677, "day", NULL));
  lb_job_pick_shift (fixture->job, 0);
  figure = lb_figure_window_new (NULL, fixture->job, 1, LB_FIGURE_TRIGGER);
  gtk_window_set_transient_for (GTK_WINDOW (figure), GTK_WINDOW (frame));
  activate (figure, "Burning rate, this job’s");
  window = LB_BURN_WINDOW (find_window (LB_TYPE_BURN_WINDOW));
  lb_plain_table_pick (samples (window), 0);
  g_signal_emit_by_name (button (window, "_Open the Shift"), "clicked");
  g_assert_null (find_window (LB_TYPE_BURN_WINDOW));
  g_assert_null (find_window (LB_TYPE_FIGURE_WINDOW));
  g_assert_cmpint (lb_job_get_shift (fixture->job), ==, 1);
  gtk_window_destroy (GTK_WINDOW (frame));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();

#define ADD(name, function) g_test_add ("/basis/" name, Fixture, NULL, set_up, function, tear_down)
  ADD ("every-figure", test_every_figure);
  ADD ("way", test_way);
  ADD ("assumption", test_assumption);
  ADD ("fact", test_fact);
  ADD ("lacks", test_lacks);
  ADD ("set-aside", test_set_aside);
  ADD ("set-shift-aside", test_set_shift_aside);
  ADD ("open-shift", test_open_shift);

  return g_test_run ();
}
