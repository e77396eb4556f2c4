/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The Production page: keys walk the chart's days, the table says the same as the fold, and what
 * is recorded leaves the rows that say the same where they are. */
#include "desk/production/daily-chart-view.h"
#include "desk/production/production-page.h"
#include "draw/plan-words.h"
#include "find-widget.h"
#include "small-job.h"

#include <adwaita.h>

#define FIRST_DAY 739775u /* any Julian day */
#define N_DAYS    3

typedef struct
{
  char *path;
  LbJob *job;
  GtkWidget *window;
  GtkWidget *page;
} Fixture;

/* On day i, i + 1 piles of bent i + 1 are severed. */
static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  fixture->path = small_job_create ();
  fixture->job = small_job_open (fixture->path);
  for (guint i = 0; i < N_DAYS; i++) {
    const guint piles[] = { 3 * i, 3 * i + 1, 3 * i + 2 };

    lb_job_open_shift (fixture->job, FIRST_DAY + i, "day", &error);
    g_assert_no_error (error);
    lb_job_mark_step (fixture->job, piles, i + 1, LB_STEP_SEVERED, &error);
    g_assert_no_error (error);
  }
  fixture->page = g_object_new (LB_TYPE_PRODUCTION_PAGE, NULL);
  g_object_set (fixture->page, "job", fixture->job, NULL);
  fixture->window = gtk_window_new ();
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->page);
  gtk_window_present (GTK_WINDOW (fixture->window));
  gtk_test_widget_wait_for_draw (fixture->window);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_object_add_weak_pointer (G_OBJECT (fixture->page), (gpointer *) &fixture->page);
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  while (fixture->page != NULL && g_main_context_iteration (NULL, FALSE))
    ;
  g_assert_null (fixture->page);
  g_assert_finalize_object (fixture->job);
  small_job_remove (fixture->path);
}

static void
press_key (GtkWidget *widget, guint key)
{
  g_autoptr (GtkShortcutTrigger) trigger = gtk_keyval_trigger_new (key, 0);
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (all); i++) {
    g_autoptr (GObject) one = g_list_model_get_item (all, i);

    if (!GTK_IS_SHORTCUT_CONTROLLER (one))
      continue;
    for (guint k = 0; k < g_list_model_get_n_items (G_LIST_MODEL (one)); k++) {
      g_autoptr (GtkShortcut) shortcut = g_list_model_get_item (G_LIST_MODEL (one), k);

      if (!gtk_shortcut_trigger_equal (gtk_shortcut_get_trigger (shortcut), trigger))
        continue;
      gtk_shortcut_action_activate (gtk_shortcut_get_action (shortcut), 0, widget,
                                    gtk_shortcut_get_arguments (shortcut));
      return;
    }
  }
  g_error ("the key %s is not bound", gdk_keyval_name (key));
}

static void
test_keys_walk_the_days (Fixture *fixture, gconstpointer data)
{
  GtkWidget *chart = find_widget (fixture->page, LB_TYPE_DAILY_CHART_VIEW, NULL);
  g_autofree char *last = lb_day_text (FIRST_DAY + N_DAYS - 1);
  g_autofree char *said = g_strdup_printf (
    "%s: 0 cleaned, 3 severed, 0 rigged, 0 pulled, 24 bars burned", last);

  press_key (chart, GDK_KEY_Home);
  g_assert_cmpuint (lb_daily_chart_view_get_day (LB_DAILY_CHART_VIEW (chart)), ==, FIRST_DAY);
  press_key (chart, GDK_KEY_Right);
  g_assert_cmpuint (lb_daily_chart_view_get_day (LB_DAILY_CHART_VIEW (chart)), ==, FIRST_DAY + 1);
  press_key (chart, GDK_KEY_End);
  gtk_test_accessible_assert_property (chart, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, said);
  press_key (chart, GDK_KEY_Right);
  g_assert_cmpuint (lb_daily_chart_view_get_day (LB_DAILY_CHART_VIEW (chart)), ==,
                    FIRST_DAY + N_DAYS - 1);
  lb_daily_chart_view_set_day (LB_DAILY_CHART_VIEW (chart), 0);
  press_key (chart, GDK_KEY_Left);
  g_assert_cmpuint (lb_daily_chart_view_get_day (LB_DAILY_CHART_VIEW (chart)), ==,
                    FIRST_DAY + N_DAYS - 1);
}

static GListModel *
rows_of (Fixture *fixture)
{
  GtkWidget *view = find_widget (fixture->page, GTK_TYPE_COLUMN_VIEW, NULL);

  return G_LIST_MODEL (gtk_column_view_get_model (GTK_COLUMN_VIEW (view)));
}

static char *
cell (Fixture *fixture, guint row, guint column)
{
  g_autoptr (GtkStringObject) item = g_list_model_get_item (rows_of (fixture), row);
  g_auto (GStrv) cells = g_strsplit (gtk_string_object_get_string (item), "\037", -1);

  return g_strdup (cells[column]);
}

static void
test_table_says_the_fold (Fixture *fixture, gconstpointer data)
{
  const LbFold *fold = lb_job_get_fold (fixture->job);

  g_assert_cmpuint (g_list_model_get_n_items (rows_of (fixture)), ==, N_DAYS);
  for (guint i = 0; i < N_DAYS; i++) {
    const LbDay *day = &fold->days[N_DAYS - 1 - i];
    g_autofree char *name = lb_day_text (day->day);
    g_autofree char *shown = cell (fixture, i, 0);
    g_autofree char *severed = cell (fixture, i, 2);
    g_autofree char *bars = cell (fixture, i, 5);

    g_assert_cmpstr (shown, ==, name);
    g_assert_cmpint (atoi (severed), ==, (int) day->totals.steps[LB_STEP_SEVERED]);
    g_assert_cmpint (atoi (bars), ==, (int) day->totals.bars);
  }
}

static void
test_unchanged_rows_stay (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GObject) old = g_list_model_get_item (rows_of (fixture), 1);
  g_autoptr (GError) error = NULL;
  const guint pile = 11;

  lb_job_mark_step (fixture->job, &pile, 1, LB_STEP_CLEANED, &error);
  g_assert_no_error (error);
  g_autoptr (GObject) now = g_list_model_get_item (rows_of (fixture), 1);
  g_autofree char *cleaned = cell (fixture, 0, 1);

  g_assert_true (old == now);
  g_assert_cmpstr (cleaned, ==, "1");
}

int
main (int argc, char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();

#define ADD(name, func) \
  g_test_add ("/production-page/" name, Fixture, NULL, set_up, func, tear_down)

  ADD ("keys-walk-the-days", test_keys_walk_the_days);
  ADD ("table-says-the-fold", test_table_says_the_fold);
  ADD ("unchanged-rows-stay", test_unchanged_rows_stay);

  return g_test_run ();
}
