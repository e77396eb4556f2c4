/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A shift is signed on the Shift page, takes nothing more, and is corrected with a reason. */
#include "book/seal.h"
#include "desk/shell/job-private.h"
#include "desk/shift/shift-page.h"
#include "desk/shift/sign-bar.h"
#include "find-widget.h"
#include "small-job.h"

#include <adwaita.h>
#include <sqlite3.h>

typedef struct
{
  char *path;
  LbJob *job;
  GtkWidget *window;
  GtkWidget *page;
  GtkWidget *bar;
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
  fixture->bar = find_widget (fixture->page, LB_TYPE_SIGN_BAR, NULL);
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

static gboolean
burn (Fixture *fixture, LbBarSet bars, GError **error)
{
  const int pile = lb_fold_find_mark (lb_job_get_fold (fixture->job), "B2");

  return lb_job_burn_bars (fixture->job, (guint) pile, bars, error);
}

/* The dialog that is open, with @word typed into it and one of its buttons pressed. */
static void
answer (const char *word, const char *response)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++) {
    g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);

    if (!ADW_IS_MESSAGE_DIALOG (window))
      continue;

    GtkWidget *row = find_widget (window, ADW_TYPE_ENTRY_ROW, NULL);
    gtk_editable_set_text (GTK_EDITABLE (row), "  ");
    g_assert_false (
      adw_message_dialog_get_response_enabled (ADW_MESSAGE_DIALOG (window), response));
    gtk_editable_set_text (GTK_EDITABLE (row), word);
    g_assert_true (adw_message_dialog_get_response_enabled (ADW_MESSAGE_DIALOG (window), response));
    adw_message_dialog_response (ADW_MESSAGE_DIALOG (window), response);
    gtk_window_destroy (GTK_WINDOW (window));
    return;
  }
  g_assert_not_reached ();
}

static void
press (Fixture *fixture, const char *label)
{
  g_signal_emit_by_name (find_widget (fixture->page, GTK_TYPE_BUTTON, label), "clicked");
}

static const char *
said (Fixture *fixture)
{
  return gtk_label_get_text (GTK_LABEL (find_widget (fixture->bar, GTK_TYPE_LABEL, NULL)));
}

static void
test_sign (Fixture *fixture, gconstpointer data)
{
  GtkWidget *button = find_widget (fixture->page, GTK_TYPE_BUTTON, "Sign…");
  g_autoptr (GError) error = NULL;

  g_assert_false (gtk_widget_is_sensitive (button)); /* no shift yet */
  g_assert_true (burn (fixture, LB_BAR (0), &error));
  g_assert_true (gtk_widget_is_sensitive (button));
  g_assert_false (gtk_widget_get_visible (fixture->bar));

  press (fixture, "Sign…");
  answer ("superintendent", "accept");
  g_assert_true (gtk_widget_get_visible (fixture->bar));
  g_assert_false (gtk_widget_get_visible (button));
  g_assert_nonnull (strstr (said (fixture), "Signed by superintendent"));
  g_assert_nonnull (strstr (said (fixture), "seal "));

  /* Nothing more goes in, and nothing is taken back. */
  g_assert_false (lb_job_can_take_back (fixture->job));
  g_assert_false (burn (fixture, LB_BAR (1), &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_SIGNED);
}

static void
test_correct (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (burn (fixture, LB_BAR (0), &error));
  g_assert_true (lb_job_sign (fixture->job, "superintendent", &error));
  press (fixture, "Correct…");
  answer ("bar 2 as well", "accept");
  g_assert_cmpstr (said (fixture), ==, "Correcting a signed shift: bar 2 as well");
  g_assert_true (burn (fixture, LB_BAR (1), &error));
  g_assert_no_error (error);

  /* The correction is one act with what it corrects, and can itself be taken back as another. */
  const LbLedger *ledger = lb_job_get_ledger (fixture->job);
  const LbEntry *last = lb_ledger_entry (ledger, ledger->entries->len - 1);
  const LbEntry *reason = lb_ledger_entry (ledger, ledger->entries->len - 2);
  g_assert_cmpint (reason->kind, ==, LB_ENTRY_CORRECTION);
  g_assert_cmpstr (reason->note, ==, "bar 2 as well");
  g_assert_cmpstr (reason->act, ==, last->act);
  g_assert_true (lb_job_take_back (fixture->job, &error));
  g_assert_no_error (error);

  press (fixture, "Done");
  g_assert_nonnull (strstr (said (fixture), "4 entries since"));
  g_assert_false (burn (fixture, LB_BAR (2), NULL));

  /* What was signed still holds. */
  g_auto (LbSealReport) report;
  lb_seals_check (lb_job_get_ledger (fixture->job), &report);
  g_assert_cmpuint (report.faults->len, ==, 0);
}

/* A file that was changed behind the program's back says so when it is opened. */
static void
test_broken (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  sqlite3 *db = NULL;

  g_assert_true (burn (fixture, LB_BAR (0), &error));
  g_assert_true (lb_job_sign (fixture->job, "superintendent", &error));
  lb_job_prove_signatures (fixture->job);
  for (int i = 0; i < 100 && lb_job_get_trouble (fixture->job) == NULL; i++) {
    g_main_context_iteration (NULL, FALSE);
    g_usleep (1000);
  }
  g_assert_null (lb_job_get_trouble (fixture->job));

  g_assert_cmpint (sqlite3_open (fixture->path, &db), ==, SQLITE_OK);
  sqlite3_exec (db, "UPDATE entry SET bars = 3 WHERE kind = 'bars'", NULL, NULL, NULL);
  sqlite3_close (db);
  lb_job_prove_signatures (fixture->job);
  while (lb_job_get_trouble (fixture->job) == NULL)
    g_main_context_iteration (NULL, TRUE);
  g_assert_nonnull (strstr (lb_job_get_trouble (fixture->job), "was changed after it was signed"));
}

int
main (int argc, char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();

#define ADD(name, func) g_test_add ("/signing/" name, Fixture, NULL, set_up, func, tear_down)

  ADD ("sign", test_sign);
  ADD ("correct", test_correct);
  ADD ("broken", test_broken);

  return g_test_run ();
}
