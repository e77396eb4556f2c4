/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading the file into a ledger, whole or what came since.
 *
 * Opening has seen to it that the tables are ours and that each value has its column's type, and
 * nothing more of what the file says is believed (another program may have written it with the
 * CHECKs off): each text must be UTF-8 of a sane length, each number finite and in range, each
 * reference must lead somewhere. The rows of each table are numbered 1, 2, 3 … without a gap,
 * since nothing is ever deleted: a gap is damage, and pile row n is ledger index n - 1.
 *
 * All tables are read in one read transaction, so the ledger is the file at one moment.
 *
 * Cost: some 0.5 µs an entry, half of it within SQLite; columns are taken by number, texts that repeat (who, what) are
 * kept once, and ids are copied into the string pool without being looked up. */
#include "book/book-private.h"
#include "book/large-room.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define ROWS_BETWEEN_LOOKS 4096
#define ROWS_RESERVED_MOST 1000000 /* the file's word for how many come is not trusted further */

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
  g_autofree char *row = g_strdup_printf ("%" G_GINT64_FORMAT, reader->seq);

  g_set_error (reader->error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED,
               /* Translators: names of the file, a table, a row by number, a column. */
               _ ("“%s” is damaged: table %s, row %s, %s is not what a job file holds; go back to "
                  "a copy"),
               reader->book->name, reader->table, row, column);
  return FALSE;
}

/* A text column where SQLite has it, on its page: no NUL ends it. */
typedef struct
{
  const char *at;
  gsize n;
} Text;

/* Whether it is text that we could have stored. Most texts are short and ASCII. */
static gboolean
is_text (Text text)
{
  for (gsize i = 0; i < text.n; i++) {
    if (!g_ascii_isprint (text.at[i])) {
      g_autofree char *copy = g_strndup (text.at, text.n);

      return strlen (copy) == text.n && g_utf8_validate (copy, -1, NULL) && lb_text_is_plain (copy);
    }
  }
  return TRUE;
}

/* FALSE with the error set when it is no text we could have written. */
static gboolean
take_text (Reader *reader, int column, gsize most_bytes, Text *out)
{
  const char *at = sqlite3_column_blob (reader->row, column);

  out->n = (gsize) sqlite3_column_bytes (reader->row, column);
  out->at = out->n > 0 ? at : "";
  return (out->at != NULL && out->n <= most_bytes && is_text (*out)) ||
         fail_row (reader, sqlite3_column_name (reader->row, column));
}

/* A text that is kept once however often it comes; @last is the one of the row before. NULL with
 * the error set. */
static const char *
take_repeated (Reader *reader, int column, const char *last)
{
  char whole[LB_SHORT_MAX * 4 + 1];
  Text text;

  if (!take_text (reader, column, sizeof whole - 1, &text))
    return NULL;
  if (last != NULL && strlen (last) == text.n && memcmp (last, text.at, text.n) == 0)
    return last;
  memcpy (whole, text.at, text.n);
  whole[text.n] = '\0';
  return lb_ledger_keep (reader->ledger, whole);
}

static const char *
take_own (Reader *reader, int column, gsize most_characters)
{
  Text text;

  if (!take_text (reader, column, most_characters * 4, &text))
    return NULL;
  return lb_ledger_keep_bytes (reader->ledger, text.at, text.n);
}

/* A whole number within a range; NULL reads as 0. */
static gboolean
take_integer (Reader *reader, int column, gint64 least, gint64 most, gint64 *out_value)
{
  *out_value = sqlite3_column_int64 (reader->row, column);
  return (*out_value >= least && *out_value <= most) ||
         fail_row (reader, sqlite3_column_name (reader->row, column));
}

static gboolean
take_time (Reader *reader, int column, gint64 *out_us)
{
  return take_integer (reader, column, LB_TIME_LEAST, LB_TIME_MOST, out_us);
}

static gboolean
is_null (Reader *reader, int column)
{
  return sqlite3_column_type (reader->row, column) == SQLITE_NULL;
}

static double
take_number (Reader *reader, int column)
{
  return is_null (reader, column) ? (double) NAN : sqlite3_column_double (reader->row, column);
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
  if (is_null (reader, column))
    return NULL;

  const char *name = take_repeated (reader, column, NULL);
  gpointer bar = NULL;
  if (name == NULL) {
    *is_good = FALSE;
    return NULL;
  }
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

  const char *shape = take_repeated (reader, 8, NULL);
  if (pile.id == NULL || pile.mark == NULL || pile.bent == NULL || pile.row == NULL ||
      pile.note == NULL || shape == NULL)
    return FALSE;
  if (!lb_shape_from_name (shape, &pile.outline.shape))
    return fail_row (reader, "shape");
  pile.outline.width_m = take_size (reader, 9);
  pile.outline.void_m = take_size (reader, 10);
  pile.bar = take_bar (reader, 11, &is_good);

  gint64 n_bars;
  if (!take_integer (reader, 12, 0, LB_BARS_MAX, &n_bars))
    return FALSE;
  pile.n_bars = (guint) n_bars;
  pile.bar_inset_m = take_number (reader, 13);
  pile.batter = take_size (reader, 14);
  pile.bearing_rad = take_size (reader, 15);
  pile.unsaid = (is_null (reader, 14) ? 1u << LB_FACT_BATTER : 0) |
                (is_null (reader, 15) ? 1u << LB_FACT_BEARING : 0);
  pile.head_m = take_number (reader, 16);
  pile.cut_m = take_number (reader, 17);
  pile.mudline_m = take_number (reader, 18);
  pile.toe_m = take_number (reader, 19);
  if (!is_good)
    return FALSE;
  if (*pile.mark == '\0' || !lb_pile_check_ranges (&pile, NULL))
    return fail_row (reader, *pile.mark != '\0' ? pile.mark : "mark");
  g_array_append_val (ledger->piles, pile);
  return TRUE;
}

static gboolean
read_shift (Reader *reader)
{
  LbShift shift = { .seq = reader->seq };

  if (reader->seq != (gint64) reader->ledger->shifts->len + 1)
    return fail_row (reader, "seq");

  gint64 day;
  if (!take_integer (reader, 2, LB_DAY_LEAST, LB_DAY_MOST, &day))
    return FALSE;
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

/* Row n of a table that an entry refers to, as n - 1; -1 for none, which is NULL and reads as 0. */
static gboolean
take_reference (Reader *reader, int column, guint n_rows, int *out_index)
{
  gint64 seq;

  if (!take_integer (reader, column, 0, n_rows, &seq))
    return FALSE;
  *out_index = (int) seq - 1;
  return TRUE;
}

/* The act an entry belongs to: its own, when it is the first of it, or that of the row before. */
static gboolean
take_act (Reader *reader, LbEntry *entry)
{
  const GArray *entries = reader->ledger->entries;
  gint64 act;

  if (!take_integer (reader, 2, 1, entry->seq, &act))
    return FALSE;
  if (act == entry->seq) {
    entry->act = entry->id;
    return TRUE;
  }
  entry->act = g_array_index (entries, LbEntry, entries->len - 1).act;
  return entry->act == g_array_index (entries, LbEntry, act - 1).id || fail_row (reader, "act");
}

/* The act a take-back takes back, or that set a fact before; like all acts of the ledger, it is the very string that is the
 * id of the act's first entry. */
static gboolean
take_of (Reader *reader, LbEntry *entry)
{
  const GArray *entries = reader->ledger->entries;
  int of;

  if (!take_reference (reader, 16, entries->len, &of))
    return FALSE;
  entry->of = of >= 0 ? g_array_index (entries, LbEntry, of).act : "";

  const gboolean may_name = entry->kind == LB_ENTRY_TAKE_BACK || entry->kind == LB_ENTRY_FACT ||
                            entry->kind == LB_ENTRY_SETTING;
  return (of >= 0 ? may_name : entry->kind != LB_ENTRY_TAKE_BACK) || fail_row (reader, "of");
}

static gboolean
read_entry_texts (Reader *reader, LbEntry *entry)
{
  entry->id = take_own (reader, 1, LB_ID_MAX);
  entry->who = reader->who = take_repeated (reader, 4, reader->who);
  entry->what = reader->what = take_repeated (reader, 8, reader->what);
  entry->note = take_own (reader, 15,
                          entry->kind == LB_ENTRY_SEAL ? LB_SEAL_MAX / 4 : LB_TABLE_MAX);
  return entry->id != NULL && entry->who != NULL && entry->what != NULL && entry->note != NULL;
}

static gboolean
read_entry_numbers (Reader *reader, LbEntry *entry)
{
  gint64 bars, count;

  if (!take_integer (reader, 9, 0, (G_GINT64_CONSTANT (1) << LB_BARS_MAX) - 1, &bars) ||
      !take_integer (reader, 10, 0, LB_BARS_MAX, &count))
    return FALSE;
  entry->bars = (LbBarSet) bars;
  entry->count = (guint) count;
  entry->amount = take_number (reader, 11);
  if (isinf (entry->amount))
    return fail_row (reader, "amount");
  return take_time (reader, 3, &entry->at_us) && take_time (reader, 12, &entry->start_us) &&
         take_time (reader, 13, &entry->end_us) && take_time (reader, 14, &entry->up_us);
}

static gboolean
read_entry (Reader *reader)
{
  LbLedger *ledger = reader->ledger;
  LbEntry entry = { .seq = reader->seq };

  if (reader->seq != (gint64) ledger->entries->len + 1)
    return fail_row (reader, "seq");

  Text kind;
  if (!take_text (reader, 6, LB_SHORT_MAX, &kind))
    return FALSE;
  if (!lb_entry_kind_from_name (kind.at, kind.n, &entry.kind))
    return fail_row (reader, "kind");
  if (!read_entry_texts (reader, &entry) || !read_entry_numbers (reader, &entry) ||
      !take_act (reader, &entry) || !take_of (reader, &entry) ||
      !take_reference (reader, 5, reader->shift_of->len, &entry.shift) ||
      !take_reference (reader, 7, ledger->piles->len, &entry.pile))
    return FALSE;
  if (entry.shift >= 0)
    entry.shift = g_array_index (reader->shift_of, int, entry.shift);
  g_array_append_val (ledger->entries, entry);
  ledger->last_seq = entry.seq;
  return TRUE;
}

/* Room for rows up to @last_seq at once: growing step by step would copy everything again and
 * again. Large rooms are asked for in large pages where the kernel has them, since touching
 * 27 MB of 200,000 entries page by page costs more than reading them. */
static void
reserve (GArray *rows, gint64 last_seq)
{
  const guint n = rows->len;

  if (last_seq <= n)
    return;
  g_array_set_size (rows, (guint) MIN (last_seq, n + ROWS_RESERVED_MOST));
  lb_large_room_advise (rows->data, (gsize) rows->len * g_array_get_element_size (rows));
  g_array_set_size (rows, n);
}

/* All rows of one table after number @after, each through @read_row. */
static gboolean
read_table (Reader *reader,
            const char *table,
            const char *columns,
            GArray *into,
            gboolean (*read_row) (Reader *reader))
{
  g_autoptr (sqlite3_stmt) rows = NULL;
  g_autofree char *text = g_strdup_printf ("SELECT %s FROM %s WHERE seq > ?1 ORDER BY seq", columns,
                                           table);
  sqlite3 *db = reader->book->db;
  int rc = sqlite3_prepare_v2 (db, text, -1, &rows, NULL);

  if (rc == SQLITE_OK) {
    sqlite3_bind_int64 (rows, 1, into->len);
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

/* One line of the job's own, "" when there is none. */
static gboolean
read_job_line (Reader *reader, const char *key, const char **out_value)
{
  g_autoptr (sqlite3_stmt) rows = NULL;
  sqlite3 *db = reader->book->db;
  int rc = sqlite3_prepare_v2 (db, "SELECT 1, value FROM job WHERE key = ?1", -1, &rows, NULL);

  if (rc == SQLITE_OK) {
    sqlite3_bind_text (rows, 1, key, -1, SQLITE_STATIC);
    rc = sqlite3_step (rows);
  }
  reader->row = rows;
  reader->table = "job";
  reader->seq = 1;
  if (rc != SQLITE_ROW && rc != SQLITE_DONE) {
    lb_connection_fail (db, rc, reader->book->name, reader->error);
    return FALSE;
  }
  *out_value = rc == SQLITE_ROW ? take_own (reader, 1, LB_ID_MAX) : "";
  return *out_value != NULL;
}

static gboolean
read_job (Reader *reader)
{
  LbLedger *ledger = reader->ledger;
  const char *n_seals;

  if (!read_job_line (reader, "id", &ledger->job_id) ||
      !read_job_line (reader, "made", &ledger->job_made) ||
      !read_job_line (reader, "seals", &n_seals))
    return FALSE;
  ledger->n_seals_noted = (guint) g_ascii_strtoull (n_seals, NULL, 10);
  return *ledger->job_id != '\0' || fail_row (reader, "id");
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

/* The last row of each table, or 0. */
typedef struct
{
  gint64 pile, shift, entry;
} LastRows;

static gboolean
look_at_last_rows (LbBook *book, LastRows *out_last, GError **error)
{
  sqlite3_stmt *row = lb_book_sql (book, LB_SQL_LAST_SEQS, error);

  if (row == NULL)
    return FALSE;

  const int rc = sqlite3_step (row);
  if (rc != SQLITE_ROW)
    lb_connection_fail (book->db, rc, book->name, error);
  else
    *out_last = (LastRows){
      .pile = sqlite3_column_int64 (row, 0),
      .shift = sqlite3_column_int64 (row, 1),
      .entry = sqlite3_column_int64 (row, 2),
    };
  sqlite3_reset (row);
  return rc == SQLITE_ROW;
}

static gboolean
read_tables (Reader *reader)
{
  LbLedger *ledger = reader->ledger;
  const guint n_shifts = ledger->shifts->len;
  const guint n_entries = ledger->entries->len;
  LastRows last;

  if (!look_at_last_rows (reader->book, &last, reader->error))
    return FALSE;
  reserve (ledger->piles, last.pile);
  reserve (ledger->entries, last.entry);
  if (!read_table (reader, "pile",
                   "seq, id, mark, bent, row, note, x_m, y_m, shape, width_m, void_m, bar, n_bars, "
                   "bar_inset_m, batter, bearing_rad, head_m, cut_m, mudline_m, toe_m",
                   ledger->piles, read_pile) ||
      !read_table (reader, "shift", "seq, id, day, watch, opened_us, who", ledger->shifts,
                   read_shift))
    return FALSE;
  if (ledger->shifts->len > n_shifts)
    lb_ledger_place_shifts (ledger);
  map_shifts (reader);
  if (!read_table (reader, "entry",
                   "seq, id, act, at_us, who, shift, kind, pile, what, bars, count, amount, "
                   "start_us, end_us, up_us, note, of",
                   ledger->entries, read_entry))
    return FALSE;
  lb_ledger_place_entries (ledger, n_entries);
  return TRUE;
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

  const gboolean is_read = read_job (&reader) && read_tables (&reader);

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

/* The id of an entry by its number, "" when there is none; %NULL when it cannot be read. */
static char *
find_entry_id (LbBook *book, gint64 seq, GError **error)
{
  sqlite3_stmt *row = lb_book_sql (book, LB_SQL_ENTRY_ID, error);
  char *id = NULL;

  if (row == NULL)
    return NULL;
  sqlite3_bind_int64 (row, 1, seq);

  const int rc = sqlite3_step (row);
  if (rc == SQLITE_ROW)
    id = g_strdup ((const char *) sqlite3_column_text (row, 0));
  else if (rc != SQLITE_DONE)
    lb_connection_fail (book->db, rc, book->name, error);
  sqlite3_reset (row);
  return rc == SQLITE_DONE || (rc == SQLITE_ROW && id == NULL) ? g_strdup ("") : id;
}

gboolean
lb_book_is_as_far (LbBook *book, LbBook *other)
{
  LastRows here, there;

  if (!look_at_last_rows (book, &here, NULL) || !look_at_last_rows (other, &there, NULL) ||
      here.pile != there.pile || here.shift != there.shift || here.entry != there.entry)
    return FALSE;

  g_autofree char *id = find_entry_id (book, here.entry, NULL);
  g_autofree char *other_id = find_entry_id (other, there.entry, NULL);
  return id != NULL && g_strcmp0 (id, other_id) == 0;
}

/* Whether the file still begins with what was read of it. A copy put back over an open file makes
 * it another one at the same place; a ledger that went on with that would be true of neither. */
static gboolean
check_same_past (LbBook *book, const LbLedger *ledger, const LastRows *last, GError **error)
{
  const guint n_entries = ledger->entries->len;
  gboolean is_same = last->pile >= ledger->piles->len && last->shift >= ledger->shifts->len &&
                     last->entry >= n_entries;

  if (is_same && n_entries > 0) {
    g_autofree char *id = find_entry_id (book, n_entries, error);

    if (id == NULL)
      return FALSE;
    is_same = g_str_equal (id, lb_ledger_entry_of_seq (ledger, n_entries)->id);
  }
  if (!is_same)
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK,
                 _ ("“%s” was put back to another state while it was open; close it and open it "
                    "again to see what is in it now"),
                 book->name);
  return is_same;
}

gboolean
lb_book_read_on (LbBook *book, LbLedger *ledger, gboolean *out_changed, GError **error)
{
  g_return_val_if_fail (book != NULL, FALSE);
  g_return_val_if_fail (ledger != NULL, FALSE);

  LastRows last;
  if (!look_at_last_rows (book, &last, error) || !check_same_past (book, ledger, &last, error))
    return FALSE;

  const gboolean has_more = last.pile > ledger->piles->len || last.shift > ledger->shifts->len ||
                            last.entry > ledger->entries->len;
  if (has_more && !read_since (book, ledger, NULL, error))
    return FALSE;
  if (out_changed != NULL)
    *out_changed = has_more;
  return TRUE;
}
