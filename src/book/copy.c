/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/book-private.h"

#include <glib/gi18n-lib.h>

/* All pages in one step: one moment of the file, whoever else writes. */
#define ALL_PAGES (-1)

static gboolean
copy_pages (LbBook *book, const char *partner, GError **error)
{
  g_autoptr (sqlite3) to = lb_connection_open (partner, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE,
                                               book->name, error);

  if (to == NULL)
    return FALSE;

  /* The partner is synced when it is published. Until the last page is in it nobody can write to
   * the job, which must not wait for the disk twice. */
  const int quick = sqlite3_exec (to, "PRAGMA synchronous=OFF", NULL, NULL, NULL);
  if (quick != SQLITE_OK) {
    lb_connection_fail (to, quick, book->name, error);
    return FALSE;
  }

  sqlite3_backup *backup = sqlite3_backup_init (to, "main", book->db, "main");
  if (backup == NULL) {
    lb_connection_fail (to, sqlite3_extended_errcode (to), book->name, error);
    return FALSE;
  }
  const int stepped = sqlite3_backup_step (backup, ALL_PAGES);
  const int finished = sqlite3_backup_finish (backup);
  if (stepped == SQLITE_DONE && finished == SQLITE_OK)
    return TRUE;

  /* What a step could not do for a lock, finish does not repeat. */
  const int rc = finished != SQLITE_OK ? finished : stepped;
  lb_connection_fail (NULL, rc, book->name, error);
  return FALSE;
}

gboolean
lb_book_copy_to (LbBook *book, const char *path, GError **error)
{
  g_return_val_if_fail (book != NULL, FALSE);
  g_return_val_if_fail (path != NULL, FALSE);
  g_return_val_if_fail (!book->is_in_many, FALSE);

  g_autofree char *full = g_canonicalize_filename (path, NULL);
  g_autofree char *partner = lb_file_partner (full);

  if (!lb_file_must_not_exist (full, error))
    return FALSE;
  if (!copy_pages (book, partner, error)) {
    lb_file_discard (partner);
    return FALSE;
  }
  return lb_file_publish (partner, full, error);
}
