/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The two ways piles come in by the window: a list and a grid. Nothing is in the job before it is
 * confirmed, and a window that is closed at any moment takes nothing with it. */
#include "desk/take/grid-window.h"
#include "desk/take/take-list-window.h"
#include "find-widget.h"
#include "small-job.h"

#include <adwaita.h>

#define N_BEFORE (SMALL_JOB_BENTS * SMALL_JOB_ROWS)

typedef struct
{
  char *path;
  LbJob *job;
  GFile *list;
  GtkWidget *window;
} Fixture;

/* Semicolons and decimal commas; lines 3, 5 and 6 are wrong: no number, a mark twice, one that the
 * job has. */
static const char LIST[] = "mark;x (m);y (m);width (mm)\n"
                           "N1;10,5;2;406\n"
                           "N2;abc;2;406\n"
                           "N3;12,5;2;406\n"
                           "N1;13;2;406\n"
                           "A1;14;2;406\n";

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = NULL;
  g_autofree char *path = NULL;

  fixture->path = small_job_create ();
  folder = g_path_get_dirname (fixture->path);
  path = g_build_filename (folder, "list.csv", NULL);
  g_file_set_contents (path, LIST, -1, &error);
  g_assert_no_error (error);
  fixture->list = g_file_new_for_path (path);
  fixture->job = small_job_open (fixture->path);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  if (fixture->window != NULL)
    gtk_window_destroy (GTK_WINDOW (fixture->window));
  /* What still runs for it keeps a window alive. */
  while (fixture->window != NULL)
    g_main_context_iteration (NULL, TRUE);
  while (g_main_context_iteration (NULL, FALSE))
    ;
  g_object_unref (fixture->list);
  g_assert_finalize_object (fixture->job);
  small_job_remove (fixture->path);
}

static void
watch (Fixture *fixture, GtkWidget *window)
{
  fixture->window = window;
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &fixture->window);
  gtk_window_present (GTK_WINDOW (window));
}

static guint
count_piles (Fixture *fixture)
{
  return lb_job_get_fold (fixture->job)->n_piles;
}

static gboolean
too_late_cb (gpointer what)
{
  g_error ("waited too long for “%s”", (const char *) what);
  return G_SOURCE_REMOVE;
}

static void
wait_for_text (Fixture *fixture, const char *text)
{
  const guint limit = g_timeout_add_seconds (20, too_late_cb, (gpointer) text);

  while (find_widget (fixture->window, GTK_TYPE_LABEL, text) == NULL)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (limit);
}

static void
wait_for_end (Fixture *fixture)
{
  const guint limit = g_timeout_add_seconds (20, too_late_cb, (gpointer) "the window’s end");

  while (fixture->window != NULL)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (limit);
}

static void
open_list (Fixture *fixture)
{
  watch (fixture, GTK_WIDGET (lb_take_list_window_new (NULL, fixture->job, fixture->list)));
}

static GtkWidget *
button (Fixture *fixture, const char *label)
{
  return find_widget (fixture->window, GTK_TYPE_BUTTON, label);
}

/* Whether a label begins with @start. */
static gboolean
names_line (GtkWidget *parent, const char *start)
{
  if (GTK_IS_LABEL (parent) && g_str_has_prefix (gtk_label_get_text (GTK_LABEL (parent)), start))
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (parent); child != NULL;
       child = gtk_widget_get_next_sibling (child))
  {
    if (names_line (child, start))
      return TRUE;
  }

  return FALSE;
}

static void
test_faults_are_named (Fixture *fixture, gconstpointer data)
{
  open_list (fixture);
  wait_for_text (fixture, "2 piles can be taken; 3 rows are wrong.");
  g_assert_true (names_line (fixture->window, "Line 3, x (m): "));
  g_assert_true (names_line (fixture->window, "Line 5, mark: "));
  g_assert_true (names_line (fixture->window, "Line 6, mark: "));
  g_assert_false (names_line (fixture->window, "Line 4"));
  g_assert_false (gtk_widget_is_sensitive (button (fixture, "_Take")));
  g_assert_cmpuint (count_piles (fixture), ==, N_BEFORE);

  gtk_check_button_set_active (
    GTK_CHECK_BUTTON (find_widget (fixture->window, GTK_TYPE_CHECK_BUTTON, NULL)), TRUE);
  g_assert_true (gtk_widget_is_sensitive (button (fixture, "_Take")));
  g_assert_cmpuint (count_piles (fixture), ==, N_BEFORE);

  g_signal_emit_by_name (button (fixture, "_Take"), "clicked");
  wait_for_end (fixture);
  g_assert_cmpuint (count_piles (fixture), ==, N_BEFORE + 2);
  g_assert_cmpint (lb_fold_find_mark (lb_job_get_fold (fixture->job), "N3"), >=, 0);
  g_assert_cmpint (lb_fold_find_mark (lb_job_get_fold (fixture->job), "N2"), ==, -1);
}

static void
test_columns_are_read_again (Fixture *fixture, gconstpointer data)
{
  GtkWidget *row;
  guint was;

  open_list (fixture);
  wait_for_text (fixture, "2 piles can be taken; 3 rows are wrong.");
  row = find_widget (fixture->window, ADW_TYPE_COMBO_ROW, "Mark");
  was = adw_combo_row_get_selected (ADW_COMBO_ROW (row));
  g_assert_cmpuint (was, ==, 1);
  adw_combo_row_set_selected (ADW_COMBO_ROW (row), 0);
  while (find_widget (fixture->window, GTK_TYPE_LABEL, "2 piles can be taken; 3 rows are wrong.") !=
         NULL)
    g_main_context_iteration (NULL, TRUE);
  g_assert_false (gtk_widget_is_sensitive (button (fixture, "_Take")));
  adw_combo_row_set_selected (ADW_COMBO_ROW (row), was);
  wait_for_text (fixture, "2 piles can be taken; 3 rows are wrong.");
}

/* Closed at once: the reading goes on for a moment and finds no window. */
static void
test_closed_while_reading (Fixture *fixture, gconstpointer data)
{
  open_list (fixture);
  g_signal_emit_by_name (button (fixture, "_Cancel"), "clicked");
  wait_for_end (fixture);
  g_assert_cmpuint (count_piles (fixture), ==, N_BEFORE);
}

/* Cancelled while taking: all or none is in the file, and the file says what the job says. */
static void
test_cancelled_while_taking (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) list = g_string_new ("mark;x (m);y (m)\n");
  g_autofree char *path = g_file_get_path (fixture->list);
  LbJob *again;

  for (int i = 0; i < 20000; i++)
    g_string_append_printf (list, "Z%d;%d,5;%d\n", i, i % 200, i / 200);
  g_file_set_contents (path, list->str, -1, &error);
  g_assert_no_error (error);
  open_list (fixture);
  wait_for_text (fixture, "20000 piles can be taken.");
  g_signal_emit_by_name (button (fixture, "_Take"), "clicked");
  g_signal_emit_by_name (button (fixture, "_Cancel"), "clicked");
  /* The first press only stops the taking. */
  g_assert_nonnull (fixture->window);
  wait_for_text (fixture, "20000 piles can be taken.");
  while (!gtk_widget_is_sensitive (button (fixture, "_Take")))
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpuint (count_piles (fixture), ==, N_BEFORE);
  again = small_job_open (fixture->path);
  g_assert_cmpuint (lb_job_get_fold (again)->n_piles, ==, N_BEFORE);
  g_assert_finalize_object (again);
}

/* The window goes away with the program's while piles are being taken. */
static void
test_destroyed_while_taking (Fixture *fixture, gconstpointer data)
{
  open_list (fixture);
  wait_for_text (fixture, "2 piles can be taken; 3 rows are wrong.");
  gtk_check_button_set_active (
    GTK_CHECK_BUTTON (find_widget (fixture->window, GTK_TYPE_CHECK_BUTTON, NULL)), TRUE);
  g_signal_emit_by_name (button (fixture, "_Take"), "clicked");
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  wait_for_end (fixture);
}

static void
open_grid (Fixture *fixture)
{
  watch (fixture, GTK_WIDGET (lb_grid_window_new (NULL, fixture->job)));
}

static GtkWidget *
grid_row (Fixture *fixture, const char *title)
{
  return find_widget (fixture->window, ADW_TYPE_ENTRY_ROW, title);
}

static void
test_grid_is_laid (Fixture *fixture, gconstpointer data)
{
  open_grid (fixture);
  gtk_editable_set_text (GTK_EDITABLE (grid_row (fixture, "Bents")), "two");
  g_assert_nonnull (
    find_widget (fixture->window, GTK_TYPE_LABEL, "Bents: “two” is not a whole number"));
  g_assert_true (gtk_widget_has_css_class (grid_row (fixture, "Bents"), "error"));
  g_assert_false (gtk_widget_is_sensitive (button (fixture, "_Lay Out")));

  gtk_editable_set_text (GTK_EDITABLE (grid_row (fixture, "Bents")), "2");
  gtk_editable_set_text (GTK_EDITABLE (grid_row (fixture, "Rows")), "3");
  gtk_editable_set_text (GTK_EDITABLE (grid_row (fixture, "Number of the first bent")), "20");
  g_assert_nonnull (find_widget (fixture->window, GTK_TYPE_LABEL, "6 piles, A20 to C21"));
  g_assert_false (gtk_widget_has_css_class (grid_row (fixture, "Bents"), "error"));
  g_signal_emit_by_name (button (fixture, "_Lay Out"), "clicked");
  wait_for_end (fixture);
  g_assert_cmpuint (count_piles (fixture), ==, N_BEFORE + 6);
}

/* A grid over marks that the job has is refused as a whole, and the window stays. */
static void
test_grid_is_refused (Fixture *fixture, gconstpointer data)
{
  open_grid (fixture);
  g_signal_emit_by_name (button (fixture, "_Lay Out"), "clicked");
  while (!gtk_widget_is_sensitive (button (fixture, "_Lay Out")))
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpuint (count_piles (fixture), ==, N_BEFORE);
}

static void
test_grid_closed_while_laying (Fixture *fixture, gconstpointer data)
{
  open_grid (fixture);
  gtk_editable_set_text (GTK_EDITABLE (grid_row (fixture, "Number of the first bent")), "20");
  g_signal_emit_by_name (button (fixture, "_Lay Out"), "clicked");
  g_signal_emit_by_name (button (fixture, "_Cancel"), "clicked");
  wait_for_end (fixture);
}

int
main (int argc, char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();

#define ADD(name, func) g_test_add ("/take-windows/" name, Fixture, NULL, set_up, func, tear_down)

  ADD ("faults-are-named", test_faults_are_named);
  ADD ("columns-are-read-again", test_columns_are_read_again);
  ADD ("closed-while-reading", test_closed_while_reading);
  ADD ("cancelled-while-taking", test_cancelled_while_taking);
  ADD ("destroyed-while-taking", test_destroyed_while_taking);
  ADD ("grid-is-laid", test_grid_is_laid);
  ADD ("grid-is-refused", test_grid_is_refused);
  ADD ("grid-closed-while-laying", test_grid_closed_while_laying);

  return g_test_run ();
}
