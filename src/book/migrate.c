/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An older job file taken along into the present format.
 *
 * The rows stay as they are, with their numbers; only the tables are made anew, so that their text
 * is the present one. All of it is one transaction: a crash leaves the old file, and so does every
 * failure. A copy of the old file is put beside it first and stays, for an older program. */
#include "book/book-private.h"

/* Format 1 told marks apart by an index and listed its kinds in the table. */
static const char from_1[] = "CREATE TEMP TABLE old_entry AS SELECT * FROM main.entry;"
                             "CREATE TEMP TABLE old_job AS SELECT * FROM main.job;"
                             "CREATE TEMP TABLE old_pile AS SELECT * FROM main.pile;"
                             "CREATE TEMP TABLE old_shift AS SELECT * FROM main.shift;"
                             "DROP TABLE main.entry;"
                             "DROP TABLE main.job;"
                             "DROP TABLE main.pile;"
                             "DROP TABLE main.shift;";

static const char into_present[] = "INSERT INTO main.job SELECT * FROM old_job;"
                                   "INSERT INTO main.pile SELECT * FROM old_pile ORDER BY seq;"
                                   "INSERT INTO main.shift SELECT * FROM old_shift ORDER BY seq;"
                                   "INSERT INTO main.entry SELECT * FROM old_entry ORDER BY seq;"
                                   "DROP TABLE old_entry;"
                                   "DROP TABLE old_job;"
                                   "DROP TABLE old_pile;"
                                   "DROP TABLE old_shift;";

/* Nor did a fact name the one it replaced: one program wrote after the other, so it was the last one
 * of the same field. */
static const char name_replaced[] =
  "UPDATE main.entry SET of = (SELECT before.act FROM main.entry AS before "
  "WHERE before.what = entry.what AND before.pile IS entry.pile "
  "AND before.kind IN ('fact', 'setting') AND before.act < entry.act "
  "ORDER BY before.seq DESC LIMIT 1) WHERE kind IN ('fact', 'setting')";

static gboolean
run (sqlite3 *db, const char *text, const char *name, GError **error)
{
  if (sqlite3_exec (db, text, NULL, NULL, NULL) == SQLITE_OK)
    return TRUE;
  lb_connection_fail (db, sqlite3_extended_errcode (db), name, error);
  return FALSE;
}

static gboolean
rebuild (sqlite3 *db, const char *name, GError **error)
{
  if (!run (db, from_1, name, error))
    return FALSE;
  if (!lb_schema_create (db, LB_BOOK_APPLICATION_ID)) {
    lb_connection_fail (db, sqlite3_extended_errcode (db), name, error);
    return FALSE;
  }
  return run (db, into_present, name, error) && run (db, name_replaced, name, error) &&
         lb_schema_check (db, name, error);
}

/* "JOB (format 1).lastbent", or with a number when that is taken. */
static char *
name_copy (const char *path)
{
  g_autofree char *stem = g_str_has_suffix (path, LB_BOOK_SUFFIX)
                            ? g_strndup (path, strlen (path) - strlen (LB_BOOK_SUFFIX))
                            : g_strdup (path);

  for (guint i = 1;; i++) {
    char *copy = i == 1 ? g_strdup_printf ("%s (format 1)" LB_BOOK_SUFFIX, stem)
                        : g_strdup_printf ("%s (format 1, %u)" LB_BOOK_SUFFIX, stem, i);

    if (!g_file_test (copy, G_FILE_TEST_EXISTS))
      return copy;
    g_free (copy);
  }
}

/* A file that could not be read afterwards either stays as it is. */
static gboolean
keep_copy (const char *path, const char *name, GError **error)
{
  sqlite3 *db = lb_connection_open (path, SQLITE_OPEN_READWRITE, name, error);

  if (db == NULL)
    return FALSE;

  g_autoptr (LbBook) book = lb_book_new_for (db, path, FALSE);
  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, error);
  if (ledger == NULL)
    return FALSE;

  g_autofree char *copy = name_copy (path);
  return lb_book_copy_to (book, copy, error);
}

/* In the transaction, so that nobody changes the file between the look at it and the work. */
static gboolean
take_along (sqlite3 *db, const char *name, GError **error)
{
  int format;

  if (!lb_schema_check (db, name, error) || !lb_schema_find_format (db, name, &format, error))
    return FALSE;
  /* Another program may have been faster. */
  return format == LB_BOOK_FORMAT || rebuild (db, name, error);
}

gboolean
lb_migrate (const char *path, const char *name, GError **error)
{
  if (!keep_copy (path, name, error))
    return FALSE;

  g_autoptr (sqlite3) db = lb_connection_open (path, SQLITE_OPEN_READWRITE, name, error);
  if (db == NULL || !run (db, "PRAGMA foreign_keys=OFF; BEGIN IMMEDIATE", name, error))
    return FALSE;
  if (take_along (db, name, error) && run (db, "COMMIT", name, error))
    return TRUE;
  if (!sqlite3_get_autocommit (db))
    sqlite3_exec (db, "ROLLBACK", NULL, NULL, NULL);
  return FALSE;
}
