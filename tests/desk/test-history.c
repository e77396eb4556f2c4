/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pier as it stood, day by day. */
#include "book/demo-job.h"
#include "desk/history/pier-window.h"
#include "find-widget.h"
#include "small-job.h"

#include <adwaita.h>
#include <glib/gstdio.h>

typedef struct
{
  char *path;
  LbJob *job;
  LbPierWindow *window;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  fixture->path = small_job_create ();
  g_unlink (fixture->path);
  lb_book_close (lb_demo_job_create (fixture->path, &error));
  g_assert_no_error (error);
  fixture->job = small_job_open (fixture->path);
  fixture->window = lb_pier_window_new (NULL, fixture->job);
  gtk_window_present (GTK_WINDOW (fixture->window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (fixture->window));
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

static const char *
said (Fixture *fixture)
{
  GtkWidget *area = find_widget (GTK_WIDGET (fixture->window), GTK_TYPE_DRAWING_AREA, NULL);

  return gtk_label_get_text (GTK_LABEL (gtk_widget_get_next_sibling (area)));
}

/* The end of the last day is now; before the first there was a pier. */
static void
test_days (Fixture *fixture, gconstpointer data)
{
  const LbFold *now = lb_job_get_fold (fixture->job);
  g_autofree char *out = g_strdup_printf ("%u of %u piles are out", now->n_by_step[LB_STEP_PULLED],
                                          now->n_piles);

  g_assert_cmpuint (lb_pier_window_get_day (fixture->window), ==, now->n_days);
  g_assert_nonnull (strstr (said (fixture), out));
  lb_pier_window_set_day (fixture->window, 0);
  g_assert_cmpstr (said (fixture), ==, "Before the first shift");
  lb_pier_window_set_day (fixture->window, 1);
  g_assert_nonnull (strstr (said (fixture), "That day: "));
}

/* What each day's fold says is what the days of the job add up to. */
static void
test_folds (Fixture *fixture, gconstpointer data)
{
  const LbLedger *ledger = lb_job_get_ledger (fixture->job);
  const LbFold *now = lb_job_get_fold (fixture->job);
  g_autoptr (LbFold) before = lb_fold_new_of_day (ledger, 0);

  g_assert_cmpuint (before->n_by_step[LB_STEP_STANDING], ==, now->n_piles);
  for (gsize day = 0; day < now->n_days; day++) {
    g_autoptr (LbFold) past = lb_fold_new_of_day (ledger, now->days[day].day);

    g_assert_cmpuint (past->n_by_step[LB_STEP_PULLED], ==, now->days[day].pulled_so_far);
  }
}

static void
test_plays (Fixture *fixture, gconstpointer data)
{
  GtkWidget *button = find_widget (GTK_WIDGET (fixture->window), GTK_TYPE_TOGGLE_BUTTON, NULL);
  const guint n_days = (guint) lb_job_get_fold (fixture->job)->n_days;

  lb_pier_window_set_day (fixture->window, n_days - 2);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), TRUE);
  while (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (button)))
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpuint (lb_pier_window_get_day (fixture->window), ==, n_days);

  /* At the end it begins again. */
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), TRUE);
  g_assert_cmpuint (lb_pier_window_get_day (fixture->window), ==, 0);
}

int
main (int argc, char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();

#define ADD(name, func) g_test_add ("/history/" name, Fixture, NULL, set_up, func, tear_down)

  ADD ("days", test_days);
  ADD ("folds", test_folds);
  ADD ("plays", test_plays);

  return g_test_run ();
}
