/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading the file into a ledger, whole or what came since.
 *
 * Nothing that the file says is believed: the tables' CHECKs stop little (another program may
 * have written the file with checks off), so each text must be UTF-8 of a sane length, each
 * number finite and in range, each reference must lead somewhere. The rows of each table are
 * numbered 1, 2, 3 … without a gap, since nothing is ever deleted: a gap is damage, and pile
 * row n is ledger index n - 1.
 *
 * All tables are read in one read transaction, so the ledger is the file at one moment.
 *
 * Cost: some 0.2 µs an entry; columns are taken by number, texts that repeat (who, what) are
 * kept once, and ids are copied into the string pool without being looked up. */
#include "book/book-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define ROWS_BETWEEN_LOOKS 4096

typedef struct
{
  LbBook *book;
  LbLedger *ledger;
  GCancellable *cancellable;
  GError **error;
  sqlite3_stmt *row;
  const char *table;
  gint64 seq;
  GHashTable *bars; /* name, kept → LbBar */
  GArray *shift_of; /* int: ledger index of shift row n at n - 1 */
  const char *who;  /* the last ones, which mostly come again */
  const char *what;
} Reader;

/* Says which row is bad, and where. */
static gboolean
fail_row (Reader *reader, const char *column)
{
  g_set_error (reader->error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED,
               _ ("“%s” is damaged: table %s, row %" G_GINT64_FORMAT
                  ", %s is not what a job file holds; go back to a copy"),
               reader->book->name, reader->table, reader->seq, column);
  return FALSE;
}

/* A text column: NULL with the error set when it is no text we could have written. */
static const char *
take_text (Reader *reader, int column, gsize most_bytes)
{
  const char *text = (const char *) sqlite3_column_text (reader->row, column);
  const gsize n = (gsize) sqlite3_column_bytes (reader->row, column);

  if (text == NULL || n > most_bytes || strlen (text) != n ||
      !g_utf8_validate (text, (gssize) n, NULL))
  {
    fail_row (reader, sqlite3_column_name (reader->row, column));
    return NULL;
  }
  return text;
}

/* A text that is kept once however often it comes; @last is the one of the row before. */
static const char *
take_repeated (Reader *reader, int column, const char *last)
{
  const char *text = take_text (reader, column, LB_SHORT_MAX * 4);

  if (text == NULL || (last != NULL && strcmp (text, last) == 0))
    return text == NULL ? NULL : last;
  return lb_ledger_keep (reader->ledger, text);
}

static const char *
take_own (Reader *reader, int column, gsize most_characters)
{
  const char *text = take_text (reader, column, most_characters * 4);

  return text != NULL ? lb_ledger_keep_new (reader->ledger, text) : NULL;
}

static gboolean
take_time (Reader *reader, int column, gint64 *out_us)
{
  *out_us = sqlite3_column_int64 (reader->row, column);
  return (*out_us >= LB_TIME_LEAST && *out_us <= LB_TIME_MOST) ||
         fail_row (reader, sqlite3_column_name (reader->row, column));
}

static double
take_number (Reader *reader, int column)
{
  return sqlite3_column_type (reader->row, column) == SQLITE_NULL
           ? (double) NAN
           : sqlite3_column_double (reader->row, column);
}

/* 0 where the number is not known, as LbOutline has it. */
static double
take_size (Reader *reader, int column)
{
  const double value = take_number (reader, column);

  return isnan (value) ? 0 : value;
}

/* Bars by name. A name that this version does not know reads as not known; lb_book_check() says
 * so. */
static const LbBar *
take_bar (Reader *reader, int column, gboolean *is_good)
{
  if (sqlite3_column_type (reader->row, column) == SQLITE_NULL)
    return NULL;

  const char *name = take_text (reader, column, LB_SHORT_MAX);
  gpointer bar = NULL;
  if (name == NULL) {
    *is_good = FALSE;
    return NULL;
  }
  name = lb_ledger_keep (reader->ledger, name);
  if (!g_hash_table_lookup_extended (reader->bars, name, NULL, &bar)) {
    bar = (gpointer) lb_bar_find (name);
    g_hash_table_insert (reader->bars, (gpointer) name, bar);
  }
  return bar;
}

static gboolean
read_pile (Reader *reader)
{
  LbLedger *ledger = reader->ledger;
  LbPile pile;
  gboolean is_good = TRUE;

  if (reader->seq != (gint64) ledger->piles->len + 1)
    return fail_row (reader, "seq");
  lb_pile_init (&pile);
  pile.id = take_own (reader, 1, LB_ID_MAX);
  pile.mark = take_own (reader, 2, LB_SHORT_MAX);
  pile.bent = take_repeated (reader, 3, NULL);
  pile.row = take_repeated (reader, 4, NULL);
  pile.note = take_own (reader, 5, LB_NOTE_MAX);
  pile.x_m = take_number (reader, 6);
  pile.y_m = take_number (reader, 7);

  const char *shape = take_text (reader, 8, LB_SHORT_MAX);
  if (pile.id == NULL || pile.mark == NULL || pile.bent == NULL || pile.row == NULL ||
      pile.note == NULL || shape == NULL)
    return FALSE;
  if (!lb_shape_from_name (shape, &pile.outline.shape))
    return fail_row (reader, "shape");
  pile.outline.width_m = take_size (reader, 9);
  pile.outline.void_m = take_size (reader, 10);
  pile.bar = take_bar (reader, 11, &is_good);
  pile.n_bars = (guint) CLAMP (sqlite3_column_int64 (reader->row, 12), 0, LB_BARS_MAX);
  pile.bar_inset_m = take_number (reader, 13);
  pile.batter = take_size (reader, 14);
  pile.bearing_rad = take_size (reader, 15);
  pile.head_m = take_number (reader, 16);
  pile.cut_m = take_number (reader, 17);
  pile.mudline_m = take_number (reader, 18);
  pile.toe_m = take_number (reader, 19);
  if (!is_good)
    return FALSE;
  if (*pile.mark == '\0' || !lb_pile_check_ranges (&pile, NULL))
    return fail_row (reader, *pile.mark != '\0' ? pile.mark : "mark");
  lb_ledger_add_pile (ledger, &pile);
  return TRUE;
}

static gboolean
read_shift (Reader *reader)
{
  LbShift shift = { .seq = reader->seq };

  if (reader->seq != (gint64) reader->ledger->shifts->len + 1)
    return fail_row (reader, "seq");

  const gint64 day = sqlite3_column_int64 (reader->row, 2);
  if (day < LB_DAY_LEAST || day > LB_DAY_MOST)
    return fail_row (reader, "day");
  shift.day = (guint32) day;
  shift.id = take_own (reader, 1, LB_ID_MAX);
  shift.watch = take_repeated (reader, 3, NULL);
  shift.who = take_repeated (reader, 5, NULL);
  if (shift.id == NULL || shift.watch == NULL || shift.who == NULL ||
      !take_time (reader, 4, &shift.opened_us))
    return FALSE;
  g_array_append_val (reader->ledger->shifts, shift);
  return TRUE;
}

/* Row n of a table that an entry refers to; -1 for none, -2 for one that is not there. */
static int
take_reference (Reader *reader, int column, guint n_rows)
{
  if (sqlite3_column_type (reader->row, column) == SQLITE_NULL)
    return -1;

  const gint64 seq = sqlite3_column_int64 (reader->row, column);
  return seq >= 1 && seq <= (gint64) n_rows ? (int) (seq - 1) : -2;
}

static const char *
take_act (Reader *reader, const char *id)
{
  const GArray *entries = reader->ledger->entries;
  const char *act = take_text (reader, 2, LB_ID_MAX);

  if (act == NULL || strcmp (act, id) == 0)
    return act != NULL ? id : NULL;
  if (entries->len > 0) {
    const char *last = g_array_index (entries, LbEntry, entries->len - 1).act;

    if (strcmp (act, last) == 0)
      return last;
  }
  fail_row (reader, "act");
  return NULL;
}

static gboolean
read_entry_texts (Reader *reader, LbEntry *entry)
{
  entry->id = take_own (reader, 1, LB_ID_MAX);
  if (entry->id == NULL)
    return FALSE;
  entry->act = take_act (reader, entry->id);
  entry->who = take_repeated (reader, 4, reader->who);
  entry->what = take_repeated (reader, 8, reader->what);
  entry->note = take_own (reader, 15, LB_NOTE_MAX);
  entry->of = take_own (reader, 16, LB_ID_MAX);
  reader->who = entry->who;
  reader->what = entry->what;
  return entry->act != NULL && entry->who != NULL && entry->what != NULL && entry->note != NULL &&
         entry->of != NULL;
}

static gboolean
read_entry (Reader *reader)
{
  LbLedger *ledger = reader->ledger;
  LbEntry entry = { .seq = reader->seq };

  if (reader->seq != ledger->last_seq + 1)
    return fail_row (reader, "seq");
  if (!read_entry_texts (reader, &entry) || !take_time (reader, 3, &entry.at_us) ||
      !take_time (reader, 12, &entry.start_us) || !take_time (reader, 13, &entry.end_us) ||
      !take_time (reader, 14, &entry.up_us))
    return FALSE;

  const char *kind = (const char *) sqlite3_column_text (reader->row, 6);
  if (kind == NULL || !lb_entry_kind_from_name (kind, &entry.kind))
    return fail_row (reader, "kind");
  const int shift = take_reference (reader, 5, reader->shift_of->len);
  if (shift == -2)
    return fail_row (reader, "shift");
  entry.shift = shift >= 0 ? g_array_index (reader->shift_of, int, shift) : -1;
  entry.pile = take_reference (reader, 7, ledger->piles->len);
  if (entry.pile == -2)
    return fail_row (reader, "pile");
  entry.bars = (LbBarSet) sqlite3_column_int64 (reader->row, 9);
  if (entry.bars >> LB_BARS_MAX != 0)
    return fail_row (reader, "bars");
  entry.count = (guint) CLAMP (sqlite3_column_int64 (reader->row, 10), 0, LB_BARS_MAX);
  entry.amount = take_number (reader, 11);
  if (isinf (entry.amount))
    return fail_row (reader, "amount");
  g_array_append_val (ledger->entries, entry);
  ledger->last_seq = entry.seq;
  return TRUE;
}

/* All rows of one table after number @after, each through @read_row. */
static gboolean
read_table (Reader *reader,
            const char *table,
            const char *columns,
            gint64 after,
            gboolean (*read_row) (Reader *reader))
{
  g_autoptr (sqlite3_stmt) rows = NULL;
  g_autofree char *text = g_strdup_printf ("SELECT %s FROM %s WHERE seq > ?1 ORDER BY seq", columns,
                                           table);
  sqlite3 *db = reader->book->db;
  int rc = sqlite3_prepare_v2 (db, text, -1, &rows, NULL);

  if (rc == SQLITE_OK) {
    sqlite3_bind_int64 (rows, 1, after);
    reader->row = rows;
    reader->table = table;
    while ((rc = sqlite3_step (rows)) == SQLITE_ROW) {
      reader->seq = sqlite3_column_int64 (rows, 0);
      if (!read_row (reader))
        return FALSE;
      if (reader->seq % ROWS_BETWEEN_LOOKS == 0 && g_cancellable_is_cancelled (reader->cancellable))
      {
        g_set_error (reader->error, LB_BOOK_ERROR, LB_BOOK_ERROR_CANCELLED,
                     _ ("Reading “%s” was cancelled"), reader->book->name);
        return FALSE;
      }
    }
  }
  if (rc != SQLITE_DONE) {
    lb_connection_fail (db, rc, reader->book->name, reader->error);
    return FALSE;
  }
  return TRUE;
}

static gboolean
read_job_id (Reader *reader)
{
  g_autoptr (sqlite3_stmt) rows = NULL;
  sqlite3 *db = reader->book->db;
  int rc = sqlite3_prepare_v2 (db, "SELECT 1, value FROM job WHERE key = 'id'", -1, &rows, NULL);

  if (rc == SQLITE_OK)
    rc = sqlite3_step (rows);
  reader->row = rows;
  reader->table = "job";
  reader->seq = 1;
  if (rc == SQLITE_DONE)
    return fail_row (reader, "id");
  if (rc != SQLITE_ROW) {
    lb_connection_fail (db, rc, reader->book->name, reader->error);
    return FALSE;
  }

  const char *id = take_own (reader, 1, LB_ID_MAX);
  if (id == NULL)
    return FALSE;
  reader->ledger->job_id = id;
  return TRUE;
}

/* Shifts come by row and go by day; entries name them by row. */
static void
map_shifts (Reader *reader)
{
  const LbLedger *ledger = reader->ledger;

  g_array_set_size (reader->shift_of, ledger->shifts->len);
  for (guint i = 0; i < ledger->shifts->len; i++)
    g_array_index (reader->shift_of, int, lb_ledger_shift (ledger, i)->seq - 1) = (int) i;
}

static gboolean
read_tables (Reader *reader)
{
  LbLedger *ledger = reader->ledger;
  const guint n_shifts = ledger->shifts->len;

  if (!read_table (reader, "pile",
                   "seq, id, mark, bent, row, note, x_m, y_m, shape, width_m, void_m, bar, n_bars, "
                   "bar_inset_m, batter, bearing_rad, head_m, cut_m, mudline_m, toe_m",
                   ledger->piles->len, read_pile) ||
      !read_table (reader, "shift", "seq, id, day, watch, opened_us, who", n_shifts, read_shift))
    return FALSE;
  if (ledger->shifts->len > n_shifts)
    lb_ledger_place_shifts (ledger);
  map_shifts (reader);
  return read_table (reader, "entry",
                     "seq, id, act, at_us, who, shift, kind, pile, what, bars, count, amount, "
                     "start_us, end_us, up_us, note, of",
                     ledger->last_seq, read_entry);
}

/* One moment of the file: a read transaction, unless we are already inside one of our own. */
static gboolean
read_since (LbBook *book, LbLedger *ledger, GCancellable *cancellable, GError **error)
{
  const gboolean is_own = sqlite3_get_autocommit (book->db) != 0;
  Reader reader = {
    .book = book,
    .ledger = ledger,
    .cancellable = cancellable,
    .error = error,
    .bars = g_hash_table_new (g_str_hash, g_str_equal),
    .shift_of = g_array_new (FALSE, FALSE, sizeof (int)),
  };

  if (is_own)
    sqlite3_exec (book->db, "BEGIN", NULL, NULL, NULL);

  const gboolean is_read = read_job_id (&reader) && read_tables (&reader);

  if (is_own && !sqlite3_get_autocommit (book->db))
    sqlite3_exec (book->db, "COMMIT", NULL, NULL, NULL);
  g_hash_table_unref (reader.bars);
  g_array_unref (reader.shift_of);
  return is_read;
}

LbLedger *
lb_book_read (LbBook *book, GCancellable *cancellable, GError **error)
{
  g_return_val_if_fail (book != NULL, NULL);

  g_autoptr (LbLedger) ledger = lb_ledger_new ();
  if (!read_since (book, ledger, cancellable, error))
    return NULL;
  return g_steal_pointer (&ledger);
}

gboolean
lb_book_read_on (LbBook *book, LbLedger *ledger, gboolean *out_changed, GError **error)
{
  g_return_val_if_fail (book != NULL, FALSE);
  g_return_val_if_fail (ledger != NULL, FALSE);

  sqlite3_stmt *last = lb_book_sql (book, LB_SQL_LAST_SEQS, error);
  if (last == NULL)
    return FALSE;

  const int rc = sqlite3_step (last);
  if (rc != SQLITE_ROW) {
    lb_connection_fail (book->db, rc, book->name, error);
    sqlite3_reset (last);
    return FALSE;
  }
  const gboolean has_more = sqlite3_column_int64 (last, 0) > (gint64) ledger->piles->len ||
                            sqlite3_column_int64 (last, 1) > (gint64) ledger->shifts->len ||
                            sqlite3_column_int64 (last, 2) > ledger->last_seq;
  sqlite3_reset (last);

  if (has_more && !read_since (book, ledger, NULL, error))
    return FALSE;
  if (out_changed != NULL)
    *out_changed = has_more;
  return TRUE;
}
