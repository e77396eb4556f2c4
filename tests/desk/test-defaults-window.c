/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window of rates and defaults: every number is there; what is typed is stored in SI; what is
 * wrong is refused and not stored; and the default can be had back. */
#include "desk/sheet/assumption-row.h"
#include "desk/sheet/choice-row.h"
#include "desk/sheet/defaults-window.h"
#include "desk/sheet/table-row.h"
#include "desk/sheet/table-window.h"
#include "desk/sheet/visibility-row.h"
#include "find-widget.h"
#include "small-job.h"

#include <glib/gstdio.h>

typedef struct
{
  char *path;
  LbJob *job;
  LbDefaultsWindow *window;
  GPtrArray *rows; /* LbAssumptionRow or LbChoiceRow, in the order they stand */
} Fixture;

static void
find_rows (GtkWidget *widget, GPtrArray *rows)
{
  if (LB_IS_ASSUMPTION_ROW (widget) || LB_IS_CHOICE_ROW (widget))
    g_ptr_array_add (rows, widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    find_rows (child, rows);
}

static GtkWidget *
find_button (GtkWidget *widget)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
  {
    GtkWidget *found = find_button (child);

    if (GTK_IS_BUTTON (child) &&
        g_strcmp0 (gtk_button_get_icon_name (GTK_BUTTON (child)), "edit-undo-symbolic") == 0)
      return child;
    if (found != NULL)
      return found;
  }
  return NULL;
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->path = small_job_create ();
  fixture->job = small_job_open (fixture->path);
  fixture->window = lb_defaults_window_new (NULL, fixture->job);
  fixture->rows = g_ptr_array_new ();
  find_rows (GTK_WIDGET (fixture->window), fixture->rows);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_ptr_array_unref (fixture->rows);
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  g_assert_finalize_object (fixture->job);
  small_job_remove (fixture->path);
}

static const LbAssumptions *
present (Fixture *fixture)
{
  return &lb_job_get_fold (fixture->job)->assumptions;
}

static LbTableRow *
find_table_row (Fixture *fixture, const char *title)
{
  return LB_TABLE_ROW (find_widget (GTK_WIDGET (fixture->window), LB_TYPE_TABLE_ROW, title));
}

static LbCheckedRow *
type (Fixture *fixture, LbAssumptionId id, const char *text)
{
  LbCheckedRow *row = g_ptr_array_index (fixture->rows, (guint) id);

  gtk_editable_set_text (GTK_EDITABLE (row), text);
  return row;
}

static void
test_all_rows (Fixture *fixture, gconstpointer data)
{
  g_assert_cmpuint (fixture->rows->len, ==, LB_N_ASSUMPTIONS);
  for (guint id = 0; id < LB_N_ASSUMPTIONS; id++) {
    const char *title = adw_preferences_row_get_title (g_ptr_array_index (fixture->rows, id));

    g_assert_true (g_str_has_prefix (title, lb_assumption ((LbAssumptionId) id)->title));
  }
}

static void
test_stores (Fixture *fixture, gconstpointer data)
{
  g_assert_true (lb_checked_row_commit (type (fixture, LB_ASSUME_HOSE_LENGTH, "100 m")));
  g_assert_cmpfloat_with_epsilon (present (fixture)->value[LB_ASSUME_HOSE_LENGTH], 100, 1e-9);
  g_assert_true (present (fixture)->is_own[LB_ASSUME_HOSE_LENGTH]);
}

static void
test_refuses (Fixture *fixture, gconstpointer data)
{
  LbCheckedRow *row = type (fixture, LB_ASSUME_SLING_ANGLE, "20");

  g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (row), "error"));
  g_assert_false (lb_checked_row_commit (row));
  g_assert_false (present (fixture)->is_own[LB_ASSUME_SLING_ANGLE]);
  type (fixture, LB_ASSUME_SLING_ANGLE, "45");
  g_assert_false (gtk_widget_has_css_class (GTK_WIDGET (row), "error"));
}

static void
test_back_to_default (Fixture *fixture, gconstpointer data)
{
  LbCheckedRow *row = type (fixture, LB_ASSUME_SLING_LEGS, "4");
  GtkWidget *button = find_button (GTK_WIDGET (row));

  g_assert_nonnull (button);
  g_assert_false (gtk_widget_get_visible (button));
  g_assert_true (lb_checked_row_commit (row));
  g_assert_true (gtk_widget_get_visible (button));

  g_signal_emit_by_name (button, "clicked");
  g_assert_false (present (fixture)->is_own[LB_ASSUME_SLING_LEGS]);
  g_assert_cmpfloat (present (fixture)->value[LB_ASSUME_SLING_LEGS], ==, 2);
  g_assert_false (gtk_widget_get_visible (button));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (row)), ==, "2");
}

/* The supervisor's own table is read from a list, named in its row, and put away again. */
static void
test_own_table (Fixture *fixture, gconstpointer data)
{
  LbTableRow *row = find_table_row (fixture, "No-stop table");
  GtkWidget *back = find_widget (GTK_WIDGET (row), GTK_TYPE_BUTTON, "Back to the Navy’s");
  g_autofree char *folder = g_path_get_dirname (fixture->path);
  g_autofree char *path = g_build_filename (folder, "own.csv", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);

  g_assert_false (gtk_widget_get_visible (back));
  g_assert_true (g_file_set_contents (path, "fsw;nostop\n30;200\n40;100\n", -1, NULL));
  lb_table_row_take (row, file);
  g_assert_true (lb_job_get_fold (fixture->job)->has_own_table);
  g_assert_cmpuint (lb_job_get_fold (fixture->job)->own_table.rows[1].limit, ==, 100);
  g_assert_cmpstr (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)), ==,
                   "The supervisor’s own, 2 rows, 30 to 40 fsw");
  g_assert_true (gtk_widget_get_visible (back));

  g_signal_emit_by_name (back, "clicked");
  g_assert_false (lb_job_get_fold (fixture->job)->has_own_table);
  g_assert_false (gtk_widget_get_visible (back));
  g_assert_nonnull (strstr (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)), "U.S. Navy"));
}

/* Chosen by hand, and back to what the last shift says. */
static void
test_visibility (Fixture *fixture, gconstpointer data)
{
  AdwComboRow *row = ADW_COMBO_ROW (
    find_widget (GTK_WIDGET (fixture->window), LB_TYPE_VISIBILITY_ROW, NULL));
  const guint n_before = lb_job_get_ledger (fixture->job)->entries->len;

  g_assert_cmpuint (adw_combo_row_get_selected (row), ==, 0);
  adw_combo_row_set_selected (row, 1 + LB_VISIBILITY_POOR);
  g_assert_true (lb_job_get_fold (fixture->job)->has_own_visibility);
  g_assert_cmpint (lb_fold_basis (lb_job_get_fold (fixture->job))->visibility, ==,
                   LB_VISIBILITY_POOR);
  adw_combo_row_set_selected (row, 0);
  g_assert_false (lb_job_get_fold (fixture->job)->has_own_visibility);
  g_assert_cmpint (lb_fold_basis (lb_job_get_fold (fixture->job))->visibility, ==,
                   LB_VISIBILITY_UNKNOWN);
  g_assert_cmpuint (lb_job_get_ledger (fixture->job)->entries->len, ==, n_before + 2);
}

/* A choice is stored by its number, and the usual one is the default again. */
static void
test_choice (Fixture *fixture, gconstpointer data)
{
  AdwComboRow *row = g_ptr_array_index (fixture->rows, LB_ASSUME_BED);

  g_assert_cmpuint (adw_combo_row_get_selected (row), ==, LB_ASSUME_BED_NONE);
  adw_combo_row_set_selected (row, LB_ASSUME_BED_SOFT_CLAY);
  g_assert_cmpfloat (present (fixture)->value[LB_ASSUME_BED], ==, LB_ASSUME_BED_SOFT_CLAY);
  g_assert_true (present (fixture)->is_own[LB_ASSUME_BED]);
  adw_combo_row_set_selected (row, LB_ASSUME_BED_NONE);
  g_assert_false (present (fixture)->is_own[LB_ASSUME_BED]);
}

static GtkWidget *
nth_entry (GtkWidget *parent, guint *n)
{
  for (GtkWidget *child = gtk_widget_get_first_child (parent); child != NULL;
       child = gtk_widget_get_next_sibling (child))
  {
    GtkWidget *found = GTK_IS_ENTRY (child) ? ((*n)-- == 0 ? child : NULL) : nth_entry (child, n);

    if (found != NULL)
      return found;
  }
  return NULL;
}

static void
type_cell (LbTableWindow *window, guint n, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (nth_entry (GTK_WIDGET (window), &n)), text);
}

/* A chart is typed, checked as it grows, and handed to the job whole. */
static void
test_typed_chart (Fixture *fixture, gconstpointer data)
{
  LbTableWindow *window = lb_table_window_new (GTK_WINDOW (fixture->window), fixture->job,
                                               LB_TABLE_CRANE);
  GtkWidget *use = find_widget (GTK_WIDGET (window), GTK_TYPE_BUTTON, "_Use");
  LbTableRow *row = find_table_row (fixture, "The crane’s chart");

  g_assert_false (gtk_widget_get_sensitive (use));
  type_cell (window, 0, "30");
  type_cell (window, 1, "42,000");
  g_assert_false (gtk_widget_get_sensitive (use)); /* a comma that could be either */
  type_cell (window, 1, "42000");
  g_assert_true (gtk_widget_get_sensitive (use));
  type_cell (window, 4, "20");
  type_cell (window, 5, "50000");
  g_assert_false (gtk_widget_get_sensitive (use));
  g_assert_nonnull (find_widget (GTK_WIDGET (window), GTK_TYPE_LABEL,
                                 "Line 4, column 1 (radius (ft)): the radius is not larger than on "
                                 "the line before: put the rows from the shortest to the longest, "
                                 "each once"));
  type_cell (window, 4, "40");
  type_cell (window, 5, "28500");
  g_assert_true (gtk_widget_get_sensitive (use));
  g_assert_cmpuint (lb_job_get_fold (fixture->job)->chart.n_rows, ==, 0);
  g_signal_emit_by_name (use, "clicked");
  g_assert_cmpuint (lb_job_get_fold (fixture->job)->chart.n_rows, ==, 2);
  g_assert_nonnull (strstr (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)), "2 rows"));

  /* Opened again it stands there as it was typed. */
  window = lb_table_window_new (GTK_WINDOW (fixture->window), fixture->job, LB_TABLE_CRANE);
  guint third = 2;
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (nth_entry (GTK_WIDGET (window), &third))),
                   ==, "40");
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The list begins with what is built in, takes a cause of the job's own, and goes again. */
static void
test_delay_causes (Fixture *fixture, gconstpointer data)
{
  LbTableWindow *window = lb_table_window_new (GTK_WINDOW (fixture->window), fixture->job,
                                               LB_TABLE_DELAYS);
  LbTableRow *row = find_table_row (fixture, "Causes of delay");

  g_assert_cmpstr (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)), ==, "Those built in");
  type_cell (window, 1, "current");
  g_assert_false (
    gtk_widget_get_sensitive (find_widget (GTK_WIDGET (window), GTK_TYPE_BUTTON, "_Use")));
  type_cell (window, 1, "ice");
  g_signal_emit_by_name (find_widget (GTK_WIDGET (window), GTK_TYPE_BUTTON, "_Use"), "clicked");
  g_assert_true (g_str_has_prefix (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)),
                                   "The job’s own: current, ice, visibility"));
  g_signal_emit_by_name (find_widget (GTK_WIDGET (row), GTK_TYPE_BUTTON, "Take Out"), "clicked");
  g_assert_cmpstr (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)), ==, "Those built in");
}

/* The crew's own cautions are counted on their row, raised by plans, and taken out again. */
static void
test_cautions (Fixture *fixture, gconstpointer data)
{
  const char list[] = "key,severity,when,words,source\n"
                      "our-gate,danger,always,Gate B is locked: call first.,site rule 4\n";
  LbTableRow *row = find_table_row (fixture, "The crew’s own cautions");
  g_autofree char *path = g_strconcat (fixture->path, ".csv", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;

  g_file_set_contents (path, list, -1, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)), ==,
                   "None beside those built in");
  lb_table_row_take (row, file);
  g_assert_cmpstr (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)), ==,
                   "1 beside those built in");
  g_assert_cmpuint (lb_fold_basis (lb_job_get_fold (fixture->job))->n_crew_rows, ==, 1);
  g_signal_emit_by_name (find_widget (GTK_WIDGET (row), GTK_TYPE_BUTTON, "Take Out"), "clicked");
  g_assert_cmpuint (lb_fold_basis (lb_job_get_fold (fixture->job))->n_crew_rows, ==, 0);
}

/* A soil is chosen from the list; a sand has no strength. */
static void
test_typed_ground (Fixture *fixture, gconstpointer data)
{
  LbTableWindow *window = lb_table_window_new (GTK_WINDOW (fixture->window), fixture->job,
                                               LB_TABLE_GROUND);
  GtkWidget *use = find_widget (GTK_WIDGET (window), GTK_TYPE_BUTTON, "_Use");
  GtkWidget *soil = find_widget (GTK_WIDGET (window), GTK_TYPE_DROP_DOWN, NULL);

  type_cell (window, 0, "20");
  type_cell (window, 1, "400");
  type_cell (window, 2, "38");
  g_assert_false (gtk_widget_get_sensitive (use));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (soil), 2);
  g_assert_false (gtk_widget_get_sensitive (use));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (soil), 1);
  g_assert_true (gtk_widget_get_sensitive (use));
  g_signal_emit_by_name (use, "clicked");
  g_assert_cmpuint (lb_job_get_fold (fixture->job)->ground.n_layers, ==, 1);
  g_assert_cmpint (lb_job_get_fold (fixture->job)->ground.layers[0].soil, ==, LB_SOIL_CLAY);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();

#define ADD(name, function) \
  g_test_add ("/defaults-window/" name, Fixture, NULL, set_up, function, tear_down)
  ADD ("all-rows", test_all_rows);
  ADD ("stores", test_stores);
  ADD ("refuses", test_refuses);
  ADD ("back-to-default", test_back_to_default);
  ADD ("own-table", test_own_table);
  ADD ("choice", test_choice);
  ADD ("typed-chart", test_typed_chart);
  ADD ("delay-causes", test_delay_causes);
  ADD ("cautions", test_cautions);
  ADD ("typed-ground", test_typed_ground);
  ADD ("visibility", test_visibility);

  return g_test_run ();
}
