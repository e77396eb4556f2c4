/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The start of the program on a large job, against an empty window of the same kind.
 *
 * Each start is a process of its own: this program runs itself again, in turn with
 *   --empty       an AdwApplicationWindow with nothing in it
 *   --open FILE   the program's own window, opening that job
 * and the child says when it has painted: the empty window its first frame, the other the first
 * frame that shows the plan with its piles, and how much memory it holds then. Time is the
 * system's monotonic clock from before the child is made until after that frame and until the
 * display has done what it was sent. The file is in the system's cache. */
#include "big-job.h"
#include "desk/plan/plan-canvas.h"
#include "desk/shell/application.h"
#include "desk/shell/frame-memory.h"
#include "desk/shell/window.h"
#include "stopwatch.h"

#include <adwaita.h>
#include <glib/gstdio.h>
#include <locale.h>
#include <stdio.h>

#define WIDTH  1280
#define HEIGHT 800

/* Memory may be over the empty window's by this, MB of 1024 × 1024. */
#define MEMORY_WANTED 120.0

/* In the child. */

typedef struct
{
  GtkWidget *window;
  gboolean is_told;
} Start;

/* A figure of /proc/self/@file in kB, 0 where the system has none. */
static gint64
memory_kb (const char *file, const char *key)
{
  g_autofree char *path = g_build_filename ("/proc/self", file, NULL);
  g_autofree char *text = NULL;
  const char *found;

  if (!g_file_get_contents (path, &text, NULL, NULL))
    return 0;
  found = strstr (text, key);
  return found != NULL ? g_ascii_strtoll (found + strlen (key), NULL, 10) : 0;
}

static LbPlanCanvas *
find_canvas (GtkWidget *parent)
{
  if (LB_IS_PLAN_CANVAS (parent))
    return LB_PLAN_CANVAS (parent);
  for (GtkWidget *child = gtk_widget_get_first_child (parent); child != NULL;
       child = gtk_widget_get_next_sibling (child))
  {
    LbPlanCanvas *found = find_canvas (child);

    if (found != NULL)
      return found;
  }
  return NULL;
}

static gboolean
is_complete (Start *start)
{
  return !LB_IS_WINDOW (start->window) ||
         lb_plan_canvas_count_drawn (find_canvas (start->window)) > 0;
}

static void
after_paint_cb (Start *start)
{
  if (start->is_told || !is_complete (start))
    return;
  start->is_told = TRUE;
  gdk_display_sync (gtk_widget_get_display (start->window));
  g_print ("%" G_GINT64_FORMAT " %" G_GINT64_FORMAT " %" G_GINT64_FORMAT "\n",
           g_get_monotonic_time (), memory_kb ("status", "VmRSS:"),
           memory_kb ("smaps_rollup", "Pss:"));
  gtk_window_close (GTK_WINDOW (start->window));
}

static void
realized_cb (Start *start)
{
  g_signal_connect_swapped (gtk_widget_get_frame_clock (start->window), "after-paint",
                            G_CALLBACK (after_paint_cb), start);
}

static void
window_added_cb (GtkApplication *application, GtkWindow *window, Start *start)
{
  start->window = GTK_WIDGET (window);
  g_signal_connect_swapped (window, "realize", G_CALLBACK (realized_cb), start);
}

static void
show_empty_cb (GtkApplication *application)
{
  GtkWidget *window = adw_application_window_new (application);

  gtk_window_set_default_size (GTK_WINDOW (window), WIDTH, HEIGHT);
  gtk_window_present (GTK_WINDOW (window));
}

static int
start_empty (void)
{
  g_autoptr (AdwApplication) application = adw_application_new (LB_APP_ID, 0);
  Start start = { NULL };

  g_signal_connect (application, "window-added", G_CALLBACK (window_added_cb), &start);
  g_signal_connect (application, "activate", G_CALLBACK (show_empty_cb), NULL);
  return g_application_run (G_APPLICATION (application), 0, NULL);
}

static int
start_open (char *program, char *path)
{
  lb_frame_memory_keep (); /* as the program itself does */

  g_autoptr (LbApplication) application = lb_application_new ();
  char *arguments[] = { program, path, NULL };
  Start start = { NULL };

  g_signal_connect (application, "window-added", G_CALLBACK (window_added_cb), &start);
  return g_application_run (G_APPLICATION (application), 2, arguments);
}

/* In the parent. */

typedef struct
{
  Stopwatch time;
  Stopwatch resident, proportional; /* kB where others have µs */
} Starts;

static void
starts_init (Starts *starts)
{
  stopwatch_init (&starts->time);
  stopwatch_init (&starts->resident);
  stopwatch_init (&starts->proportional);
}

static void
starts_clear (Starts *starts)
{
  stopwatch_clear (&starts->time);
  stopwatch_clear (&starts->resident);
  stopwatch_clear (&starts->proportional);
}

static void
start_once (const char *const *arguments, Starts *starts)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocess) child = NULL;
  g_autofree char *said = NULL;
  gint64 began_us, painted_us, resident_kb, proportional_kb;

  began_us = g_get_monotonic_time ();
  child = g_subprocess_newv (arguments, G_SUBPROCESS_FLAGS_STDOUT_PIPE, &error);
  g_assert_no_error (error);
  g_subprocess_communicate_utf8 (child, NULL, NULL, &said, NULL, &error);
  g_assert_no_error (error);
  if (!g_subprocess_get_successful (child) ||
      sscanf (said, "%" G_GINT64_FORMAT " %" G_GINT64_FORMAT " %" G_GINT64_FORMAT, &painted_us,
              &resident_kb, &proportional_kb) != 3)
    g_error ("a start failed: %s", said);
  stopwatch_add (&starts->time, painted_us - began_us);
  stopwatch_add (&starts->resident, resident_kb);
  stopwatch_add (&starts->proportional, proportional_kb);
}

static void
print_memory (const char *name, Stopwatch *empty, Stopwatch *open)
{
  const double over = (stopwatch_median (open) - stopwatch_median (empty)) / 1024;

  g_print ("# %s: %.1f MB, empty %.1f MB: %.1f MB over it (at most %.0f wanted)%s\n", name,
           stopwatch_median (open) / 1024, stopwatch_median (empty) / 1024, over, MEMORY_WANTED,
           over > MEMORY_WANTED ? "  <-- MORE THAN WANTED" : "");
}

static void
measure (const char *program, const char *path, guint n_rounds)
{
  const char *const show_empty[] = { program, "--empty", NULL };
  const char *const open_job[] = { program, "--open", path, NULL };
  Starts empty, open;

  starts_init (&empty);
  starts_init (&open);
  for (guint round = 0; round < n_rounds; round++) {
    start_once (show_empty, &empty);
    start_once (open_job, &open);
  }
  stopwatch_print (&empty.time, "an empty window");
  stopwatch_print (&open.time, "the window with the job");
  stopwatch_print_ratio ("the start with the job against an empty window",
                         stopwatch_median (&open.time) / stopwatch_median (&empty.time), 2);
  print_memory ("resident memory", &empty.resident, &open.resident);
  print_memory ("memory by share", &empty.proportional, &open.proportional);
  starts_clear (&empty);
  starts_clear (&open);
}

static int
run_all (const char *program, gboolean is_long)
{
  const guint n_piles = is_long ? 10000 : 1000;
  const guint n_entries = is_long ? 200000 : 10000;
  g_autofree char *folder = g_dir_make_tmp ("lastbent-speed-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "start.lastbent", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = big_job_create (path, n_piles, n_entries, &error);

  g_assert_no_error (error);
  g_clear_pointer (&book, lb_book_close);
  g_print ("# %u piles, %u entries\n", n_piles, n_entries);
  measure (program, path, is_long ? 20 : 2);
  g_unlink (path);
  g_rmdir (folder);
  g_print ("1..1\nok 1 - the start was measured\n");
  return 0;
}

int
main (int argc, char *argv[])
{
  setlocale (LC_ALL, "");
  gtk_disable_setlocale ();
  if (argc > 1 && g_str_equal (argv[1], "--empty"))
    return start_empty ();
  if (argc > 2 && g_str_equal (argv[1], "--open"))
    return start_open (argv[0], argv[2]);
  return run_all (argv[0], argc > 1 && g_str_equal (argv[1], "--long"));
}
