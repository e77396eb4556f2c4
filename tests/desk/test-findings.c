/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What does not fit together, on the Shift page: under the line it is about, answered, and taken
 * back. */
#include "desk/shift/dive-group.h"
#include "desk/shift/finding-group.h"
#include "desk/shift/pile-lines.h"
#include "desk/shift/shift-page.h"
#include "find-widget.h"
#include "small-job.h"

#include <adwaita.h>
#include <math.h>

#define UNCUT "B2 was pulled, but neither severed nor drawn whole."

typedef struct
{
  char *path;
  LbJob *job;
  GtkWidget *window;
  GtkWidget *page;
  GtkWidget *lines, *group;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->path = small_job_create ();
  fixture->job = small_job_open (fixture->path);
  fixture->page = g_object_new (LB_TYPE_SHIFT_PAGE, NULL);
  g_object_set (fixture->page, "job", fixture->job, NULL);
  fixture->window = gtk_window_new ();
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->page);
  gtk_window_present (GTK_WINDOW (fixture->window));
  gtk_test_widget_wait_for_draw (fixture->window);
  fixture->lines = find_widget (fixture->page, LB_TYPE_PILE_LINES, NULL);
  fixture->group = find_widget (fixture->page, LB_TYPE_FINDING_GROUP, NULL);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  while (g_main_context_iteration (NULL, FALSE))
    ;
  g_assert_finalize_object (fixture->job);
  small_job_remove (fixture->path);
}

static void
record (Fixture *fixture, LbDraft draft)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (lb_job_record (fixture->job, &draft, 1, &error));
  g_assert_no_error (error);
}

static void
pull (Fixture *fixture)
{
  const LbFold *fold = lb_job_get_fold (fixture->job);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_STEP);

  draft.pile_id = fold->piles[lb_fold_find_mark (fold, "B2")].id;
  draft.what = "pulled";
  record (fixture, draft);
}

/* What is said under the title of the row, NULL where there is no such row. */
static const char *
subtitle_of (GtkWidget *parent, const char *title)
{
  GtkWidget *row = find_widget (parent, ADW_TYPE_ACTION_ROW, title);

  return row != NULL ? adw_action_row_get_subtitle (ADW_ACTION_ROW (row)) : NULL;
}

static void
press_in (GtkWidget *parent, const char *title, const char *label)
{
  GtkWidget *row = find_widget (parent, ADW_TYPE_ACTION_ROW, title);

  g_signal_emit_by_name (find_widget (row, GTK_TYPE_BUTTON, label), "clicked");
}

/* Types @reason into the dialog that is open, and presses its button. */
static void
answer (const char *reason)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++) {
    g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);

    if (!ADW_IS_MESSAGE_DIALOG (window))
      continue;
    gtk_editable_set_text (GTK_EDITABLE (find_widget (window, ADW_TYPE_ENTRY_ROW, NULL)), reason);
    adw_message_dialog_response (ADW_MESSAGE_DIALOG (window), "accept");
    gtk_window_destroy (GTK_WINDOW (window));
    return;
  }
  g_assert_not_reached ();
}

static guint
n_open (Fixture *fixture)
{
  return lb_findings_open (lb_job_get_findings (fixture->job), lb_job_get_shift (fixture->job));
}

static void
test_pile (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (subtitle_of (fixture->lines, UNCUT));
  pull (fixture);
  /* Right under the pile's line. */
  GtkWidget *below = find_widget (fixture->lines, ADW_TYPE_ACTION_ROW, UNCUT);
  g_assert_cmpint (gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (below)), ==, 1);
  g_assert_false (gtk_list_box_row_get_activatable (GTK_LIST_BOX_ROW (below)));
  g_assert_cmpstr (subtitle_of (fixture->lines, UNCUT), ==, "Record how it came out.");
  g_assert_false (gtk_widget_get_visible (fixture->group));
  g_assert_cmpuint (n_open (fixture), ==, 1);

  press_in (fixture->lines, UNCUT, "Answer…");
  answer (" it broke in the sling ");
  g_assert_cmpstr (subtitle_of (fixture->lines, UNCUT), ==, "Answered: it broke in the sling");
  g_assert_cmpuint (n_open (fixture), ==, 0);

  /* By its own button, and as the last act. */
  press_in (fixture->lines, UNCUT, NULL);
  g_assert_cmpstr (subtitle_of (fixture->lines, UNCUT), ==, "Record how it came out.");
  press_in (fixture->lines, UNCUT, "Answer…");
  answer ("once more");
  g_assert_true (lb_job_take_back (fixture->job, &error));
  g_assert_cmpuint (n_open (fixture), ==, 1);
  /* Put right, it is gone. */
  g_assert_true (lb_job_take_back (fixture->job, &error));
  g_assert_null (subtitle_of (fixture->lines, UNCUT));
  g_assert_cmpuint (lb_job_get_findings (fixture->job)->len, ==, 0);
}

static void
test_sheet (Fixture *fixture, gconstpointer data)
{
  static const char title[] = "30 min lost, and the shift’s hours are not said.";
  LbDraft delay = LB_DRAFT_INIT (LB_ENTRY_DELAY);

  g_assert_false (gtk_widget_get_visible (fixture->group));
  delay.what = "weather";
  delay.amount = 30 * 60;
  record (fixture, delay);
  g_assert_true (gtk_widget_get_visible (fixture->group));
  g_assert_cmpstr (subtitle_of (fixture->group, title), ==,
                   "Say when the shift began and when it ended.");
  press_in (fixture->group, title, "Answer…");
  answer ("nobody knows");
  g_assert_cmpstr (subtitle_of (fixture->group, title), ==, "Answered: nobody knows");
}

/* A dive's stands under the dive, and nowhere else. */
static void
test_dive (Fixture *fixture, gconstpointer data)
{
  const gint64 hour_us = G_GINT64_CONSTANT (3600) * G_USEC_PER_SEC;
  const gint64 start_us = g_get_real_time () / hour_us * hour_us - 12 * hour_us;
  GtkWidget *dives = find_widget (fixture->page, LB_TYPE_DIVE_GROUP, NULL);
  LbDraft dive = LB_DRAFT_INIT (LB_ENTRY_DIVE);
  guint n = 0;

  g_assert_null (find_widget (dives, GTK_TYPE_BUTTON, "Answer…"));
  dive.what = "diver 1";
  dive.amount = 12;
  dive.start_us = start_us;
  dive.end_us = start_us + 4 * hour_us;
  record (fixture, dive);

  const GArray *findings = lb_job_get_findings (fixture->job);
  for (guint i = 0; i < findings->len; i++)
    n += g_array_index (findings, LbFinding, i).kind == LB_FINDING_PAST_LIMIT ? 1 : 0;
  g_assert_cmpuint (n, ==, 1);
  /* Of the whole shift is what the dive's record must say besides. */
  g_assert_true (gtk_widget_get_visible (fixture->group));
  g_assert_nonnull (find_widget (dives, GTK_TYPE_BUTTON, "Answer…"));
}

/* In a signed shift it is answered too, and what was signed stays as it was. */
static void
test_signed (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  pull (fixture);
  g_assert_true (lb_job_sign (fixture->job, "superintendent", &error));
  press_in (fixture->lines, UNCUT, "Answer…");
  answer ("it broke in the sling");
  g_assert_cmpstr (subtitle_of (fixture->lines, UNCUT), ==, "Answered: it broke in the sling");
  g_assert_cmpuint (lb_job_get_signature (fixture->job)->n_since, ==, 0);
}

int
main (int argc, char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();

#define ADD(name, func) g_test_add ("/findings/" name, Fixture, NULL, set_up, func, tear_down)
  ADD ("pile", test_pile);
  ADD ("sheet", test_sheet);
  ADD ("dive", test_dive);
  ADD ("signed", test_signed);
  return g_test_run ();
}
