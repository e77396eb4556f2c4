/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/demo-file.h"

#include "book/demo-job.h"

#include <glib/gi18n-lib.h>

#define DEMO_NAME "tern-cove-demo"

/* So many spoilt demos in one folder have a cause that another one would not mend. */
#define MOST_TRIES 20

/* "tern-cove-demo.lastbent", then "tern-cove-demo-2.lastbent" and so on. */
static char *
nth_path (const char *folder, int n)
{
  g_autofree char *name = n == 1 ? g_strdup (DEMO_NAME LB_BOOK_SUFFIX)
                                 : g_strdup_printf (DEMO_NAME "-%d" LB_BOOK_SUFFIX, n);

  return g_build_filename (folder, name, NULL);
}

/* A demo that another program is writing to at this moment is a good one. */
static gboolean
can_be_opened (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbLedger) ledger = NULL;
  g_autoptr (LbBook) book = lb_book_open_and_read (path, LB_BOOK_READ, NULL, &ledger, &error);

  return book != NULL || g_error_matches (error, LB_BOOK_ERROR, LB_BOOK_ERROR_BUSY);
}

GFile *
lb_demo_file_ready (const char *folder, gboolean *out_is_second, GError **error)
{
  g_return_val_if_fail (folder != NULL, NULL);
  g_return_val_if_fail (out_is_second != NULL, NULL);

  /* A folder that cannot be made is told by the making of the file. */
  g_mkdir_with_parents (folder, 0700);
  for (int n = 1; n <= MOST_TRIES; n++) {
    g_autofree char *path = nth_path (folder, n);
    const gboolean is_there = g_file_test (path, G_FILE_TEST_EXISTS);

    if (!is_there) {
      g_autoptr (LbBook) book = lb_demo_job_create (path, error);

      if (book == NULL)
        return NULL;
    } else if (!can_be_opened (path)) {
      continue;
    }
    *out_is_second = !is_there && n > 1;
    return g_file_new_for_path (path);
  }
  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN,
               _ ("None of the %d demos in “%s” can be opened; move them away and try again"),
               MOST_TRIES, folder);
  return NULL;
}
