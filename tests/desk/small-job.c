/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "small-job.h"

#include <glib/gstdio.h>
#include <unistd.h>

#define WAIT_MOST_S 10

char *
small_job_create (void)
{
  static const char *const BARS = "#8";
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("lastbent-XXXXXX", &error);
  char *path;
  g_autoptr (LbBook) book = NULL;
  g_autoptr (GStringChunk) strings = g_string_chunk_new (64);
  LbPile piles[SMALL_JOB_BENTS * SMALL_JOB_ROWS];

  g_assert_no_error (error);
  path = g_build_filename (folder, "small.lastbent", NULL);
  book = lb_book_create (path, "Small & Sons", &error);
  g_assert_no_error (error);
  for (int i = 0; i < SMALL_JOB_BENTS * SMALL_JOB_ROWS; i++) {
    const int bent = i / SMALL_JOB_ROWS, row = i % SMALL_JOB_ROWS;
    const char row_name[] = { (char) ('A' + row), '\0' };
    g_autofree char *bent_name = g_strdup_printf ("%d", bent + 1);
    g_autofree char *mark = g_strconcat (row_name, bent_name, NULL);

    lb_pile_init (&piles[i]);
    piles[i].unsaid = 0;
    piles[i].mark = g_string_chunk_insert (strings, mark);
    piles[i].bent = g_string_chunk_insert (strings, bent_name);
    piles[i].row = g_string_chunk_insert (strings, row_name);
    piles[i].x_m = 3.0 * bent;
    piles[i].y_m = -2.0 * row;
    piles[i].outline = (LbOutline){ .shape = LB_SHAPE_OCTAGON, .width_m = 0.4 };
    piles[i].bar = lb_bar_find (BARS);
    piles[i].n_bars = 8;
    piles[i].head_m = 2;
    piles[i].mudline_m = -8;
    piles[i].toe_m = -16;
  }
  lb_book_add_piles (book, piles, G_N_ELEMENTS (piles), NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  return path;
}

void
small_job_remove (char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *full = g_build_filename (folder, name, NULL);

    g_remove (full);
  }
  g_rmdir (folder);
  g_free (path);
}

static gboolean
too_late_cb (gpointer data)
{
  g_error ("what was waited for did not happen within %d s", WAIT_MOST_S);
  return G_SOURCE_REMOVE;
}

void
small_job_wait (const gboolean *flag)
{
  const guint limit = g_timeout_add_seconds (WAIT_MOST_S, too_late_cb, NULL);

  while (!*flag)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (limit);
}

typedef struct
{
  LbJob *job;
  gboolean is_done;
} Opening;

static void
opened_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Opening *opening = data;
  g_autoptr (GError) error = NULL;

  opening->job = lb_job_open_finish (result, &error);
  g_assert_no_error (error);
  opening->is_done = TRUE;
}

LbJob *
small_job_open (const char *path)
{
  Opening opening = { .job = NULL };
  g_autoptr (GFile) file = g_file_new_for_path (path);

  lb_job_open_async (file, NULL, opened_cb, &opening);
  small_job_wait (&opening.is_done);
  return opening.job;
}

LbJob *
small_job_open_read_only (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  const uid_t owner = geteuid ();
  /* Root may write everywhere, and opens it as somebody else. 65534 is nobody. */
  const uid_t stranger = owner == 0 ? 65534 : owner;
  LbJob *job;

  g_assert_cmpint (g_chmod (path, 0444), ==, 0);
  g_assert_cmpint (g_chmod (folder, 0755), ==, 0);
  g_assert_cmpint (seteuid (stranger), ==, 0);
  job = small_job_open (path);
  g_assert_cmpint (seteuid (owner), ==, 0);
  g_assert_true (lb_job_is_read_only (job));
  return job;
}
