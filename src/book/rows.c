/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/book-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
bind_row (sqlite3_stmt *statement, int at, gint64 row)
{
  if (row != 0)
    sqlite3_bind_int64 (statement, at, row);
  else
    sqlite3_bind_null (statement, at);
}

static gboolean
finish (LbBook *book, sqlite3_stmt *row, GError **error)
{
  const int rc = sqlite3_step (row);

  if (rc != SQLITE_DONE)
    lb_connection_fail (book->db, rc, book->name, error);
  sqlite3_reset (row);
  return rc == SQLITE_DONE;
}

gboolean
lb_book_insert_entry (LbBook *book, const LbEntry *entry, const LbEntryRows *rows, GError **error)
{
  sqlite3_stmt *row = lb_book_sql (book, LB_SQL_INSERT_ENTRY, error);

  if (row == NULL)
    return FALSE;
  sqlite3_bind_int64 (row, 1, entry->seq);
  lb_bind_text (row, 2, entry->id);
  sqlite3_bind_int64 (row, 3, rows->act);
  sqlite3_bind_int64 (row, 4, entry->at_us);
  lb_bind_text (row, 5, entry->who);
  bind_row (row, 6, rows->shift);
  lb_bind_text (row, 7, lb_entry_kind_name (entry->kind));
  bind_row (row, 8, rows->pile);
  lb_bind_text (row, 9, entry->what);
  sqlite3_bind_int64 (row, 10, (gint64) entry->bars);
  sqlite3_bind_int64 (row, 11, entry->count);
  if (isnan (entry->amount))
    sqlite3_bind_null (row, 12);
  else
    sqlite3_bind_double (row, 12, entry->amount);
  sqlite3_bind_int64 (row, 13, entry->start_us);
  sqlite3_bind_int64 (row, 14, entry->end_us);
  sqlite3_bind_int64 (row, 15, entry->up_us);
  lb_bind_text (row, 16, entry->note);
  bind_row (row, 17, rows->of);
  return finish (book, row, error);
}

gboolean
lb_book_insert_shift (LbBook *book, const LbShift *shift, GError **error)
{
  sqlite3_stmt *row = lb_book_sql (book, LB_SQL_INSERT_SHIFT, error);

  if (row == NULL)
    return FALSE;
  lb_bind_text (row, 1, shift->id);
  sqlite3_bind_int64 (row, 2, shift->day);
  lb_bind_text (row, 3, shift->watch);
  sqlite3_bind_int64 (row, 4, shift->opened_us);
  lb_bind_text (row, 5, shift->who);
  return finish (book, row, error);
}

/* The pile at @row of another file, word for word: a bar whose name this version does not know stays
 * what it is. */
gboolean
lb_book_copy_pile (LbBook *book, LbBook *from, gint64 row, GError **error)
{
  sqlite3_stmt *read = lb_book_sql (from, LB_SQL_PILE_ROW, error);
  sqlite3_stmt *write = read != NULL ? lb_book_sql (book, LB_SQL_INSERT_PILE, error) : NULL;

  if (write == NULL)
    return FALSE;
  sqlite3_bind_int64 (read, 1, row);

  const int rc = sqlite3_step (read);
  gboolean is_stored = FALSE;
  if (rc == SQLITE_ROW) {
    for (int column = 0; column < sqlite3_column_count (read); column++)
      sqlite3_bind_value (write, column + 1, sqlite3_column_value (read, column));
    is_stored = finish (book, write, error);
  } else if (rc == SQLITE_DONE) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED,
                 _ ("“%s” was changed while it was read; try again"), from->name);
  } else {
    lb_connection_fail (from->db, rc, from->name, error);
  }
  sqlite3_reset (read);
  return is_stored;
}
