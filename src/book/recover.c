/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A new job file out of what is left of a damaged one.
 *
 *   1. The bytes are copied beside the new file, block by block, zeros where the disk gives none;
 *      a journal too, which SQLite rolls back into that copy if it still can. The damaged file is
 *      only ever read.
 *   2. Rows are taken from the pages of the copy, whatever the tree above them says (found-rows.c).
 *   3. They go into a new file and are numbered anew: piles, shifts, then the acts, each in a
 *      savepoint. An act is kept when its entries follow each other without a gap and what they
 *      refer to is there. Where the act that set a fact before is lost, the last kept one about
 *      that fact takes its place.
 *   4. The new file is opened and read as any other, and only then moved to its place.
 *
 * Ids, moments and texts stay as they are, seals among them, so that what is kept can still be
 * joined and proved. Cost: reading the file twice and writing it once. */
#include "book/recover.h"

#include "book/book-private.h"
#include "book/found-rows.h"
#include "book/raw-copy.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#define ROWS_BETWEEN_LOOKS 1024

/* The new file while it is filled. */
typedef struct
{
  LbBook *book;
  const LbFoundRows *found;
  LbRecovery *recovery;
  GCancellable *cancellable;
  sqlite3_stmt *insert_pile, *insert_shift, *insert_entry;
  GHashTable *pile_places, *shift_places, *act_places; /* old number → new number */
  gint64 last_pile, last_shift, last_entry;            /* old numbers of the last rows */
} Filling;

static void
set_place (GHashTable *places, gint64 old, gint64 new)
{
  gint64 *key = g_new (gint64, 1);
  gint64 *place = g_new (gint64, 1);

  *key = old;
  *place = new;
  g_hash_table_insert (places, key, place);
}

/* The new number; 0 when that row is not kept. */
static gint64
place_of (GHashTable *places, gint64 old)
{
  const gint64 *place = g_hash_table_lookup (places, &old);

  return place != NULL ? *place : 0;
}

static void
bind_cell (sqlite3_stmt *row, int at, const LbCell *cell)
{
  switch (cell->kind) {
  case LB_CELL_INTEGER:
    sqlite3_bind_int64 (row, at, cell->integer);
    break;
  case LB_CELL_REAL:
    sqlite3_bind_double (row, at, cell->real);
    break;
  case LB_CELL_TEXT:
    sqlite3_bind_text (row, at, cell->text, (int) cell->n_bytes, SQLITE_STATIC);
    break;
  case LB_CELL_BLOB:
    sqlite3_bind_blob (row, at, cell->text, (int) cell->n_bytes, SQLITE_STATIC);
    break;
  case LB_CELL_NULL:
  default:
    sqlite3_bind_null (row, at);
    break;
  }
}

static void
bind_place (sqlite3_stmt *row, int at, gint64 place)
{
  if (place != 0)
    sqlite3_bind_int64 (row, at, place);
  else
    sqlite3_bind_null (row, at);
}

static sqlite3_stmt *
make_insert (LbBook *book, const char *table, guint n_cells, GError **error)
{
  g_autoptr (GString) text = g_string_new (NULL);
  sqlite3_stmt *insert = NULL;

  g_string_append_printf (text, "INSERT INTO %s VALUES (?1", table);
  for (guint i = 2; i <= n_cells; i++)
    g_string_append_printf (text, ", ?%u", i);
  g_string_append_c (text, ')');

  const int rc = sqlite3_prepare_v2 (book->db, text->str, -1, &insert, NULL);
  if (rc != SQLITE_OK)
    lb_connection_fail (book->db, rc, book->name, error);
  return insert;
}

/* Whether the row went in; one that the table does not take is no error. */
static gboolean
insert (Filling *filling, sqlite3_stmt *row, gboolean *out_is_in, GError **error)
{
  const int rc = sqlite3_step (row);

  sqlite3_reset (row);
  *out_is_in = rc == SQLITE_DONE;
  if (rc == SQLITE_DONE || (rc & 0xff) == SQLITE_CONSTRAINT)
    return TRUE;
  lb_connection_fail (filling->book->db, rc, filling->book->name, error);
  return FALSE;
}

static gboolean
fill_job (Filling *filling, GError **error)
{
  const LbFoundRows *found = filling->found;
  sqlite3_stmt *row = make_insert (filling->book, "job", LB_FOUND_JOB, error);
  char id[LB_ID_MAX];
  gboolean is_in = FALSE;

  if (row == NULL)
    return FALSE;
  lb_book_next_id (filling->book, id);
  filling->recovery->is_other_job = found->job_id == NULL;
  lb_bind_text (row, 1, "id");
  lb_bind_text (row, 2, found->job_id != NULL ? found->job_id : id);
  gboolean is_filled = insert (filling, row, &is_in, error);
  if (is_filled && found->made != NULL) {
    lb_bind_text (row, 1, "made");
    lb_bind_text (row, 2, found->made);
    is_filled = insert (filling, row, &is_in, error);
  }
  sqlite3_finalize (row);
  return is_filled;
}

/* Piles or shifts, which refer to nothing. */
static gboolean
fill_plain (Filling *filling,
            GArray *rows,
            sqlite3_stmt *row,
            LbFoundKind kind,
            GHashTable *places,
            gint64 *out_last,
            guint *out_n,
            GError **error)
{
  for (guint i = 0; i < rows->len; i++) {
    const LbFoundRow *found = &g_array_index (rows, LbFoundRow, i);
    g_autofree char *key = kind == LB_FOUND_PILE ? lb_mark_key (found->cells[2].text) : NULL;
    gboolean is_in = FALSE;

    for (guint at = 1; at < (guint) kind; at++)
      bind_cell (row, (int) at + 1, &found->cells[at]);
    sqlite3_bind_int64 (row, 1, *out_n + 1);
    if (key != NULL)
      sqlite3_bind_text (row, 4, key, -1, SQLITE_STATIC);
    if (!insert (filling, row, &is_in, error))
      return FALSE;
    if (!is_in)
      continue;
    set_place (places, found->seq, ++*out_n);
    *out_last = found->seq;
  }
  return TRUE;
}

/* What an entry refers to, by its new numbers. */
typedef struct
{
  gint64 shift, pile, of;
} Places;

static gboolean
find_places (Filling *filling,
             const LbFoundRow *row,
             Places *out,
             gboolean *out_is_there,
             GError **error)
{
  const gint64 shift = lb_found_row_number (row, LB_FOUND_ENTRY_SHIFT);
  const gint64 pile = lb_found_row_number (row, LB_FOUND_ENTRY_PILE);
  const gint64 of = lb_found_row_number (row, LB_FOUND_ENTRY_OF);

  *out = (Places){ .shift = place_of (filling->shift_places, shift),
                   .pile = place_of (filling->pile_places, pile),
                   .of = place_of (filling->act_places, of) };
  const gboolean is_take_back = g_str_equal (row->cells[LB_FOUND_ENTRY_KIND].text,
                                             lb_entry_kind_name (LB_ENTRY_TAKE_BACK));
  *out_is_there = (shift == 0 || out->shift != 0) && (pile == 0 || out->pile != 0) &&
                  (!is_take_back || out->of != 0);
  if (!*out_is_there || of == 0 || out->of != 0)
    return TRUE;
  return lb_book_find_field (filling->book, row->cells[LB_FOUND_ENTRY_WHAT].text, out->pile,
                             &out->of, error);
}

/* The entries of one act, in their order, as the next rows of the new file. */
static gboolean
insert_act (Filling *filling, const LbFoundRow *rows, guint n, gboolean *out_is_in, GError **error)
{
  const gint64 first = filling->recovery->n_entries + 1;
  sqlite3_stmt *row = filling->insert_entry;

  *out_is_in = TRUE;
  for (guint i = 0; i < n && *out_is_in; i++) {
    Places places;

    if (!find_places (filling, &rows[i], &places, out_is_in, error))
      return FALSE;
    if (!*out_is_in)
      return TRUE;
    for (guint at = 1; at < LB_FOUND_ENTRY; at++)
      bind_cell (row, (int) at + 1, &rows[i].cells[at]);
    sqlite3_bind_int64 (row, 1, first + i);
    sqlite3_bind_int64 (row, LB_FOUND_ENTRY_ACT + 1, first);
    bind_place (row, LB_FOUND_ENTRY_SHIFT + 1, places.shift);
    bind_place (row, LB_FOUND_ENTRY_PILE + 1, places.pile);
    bind_place (row, LB_FOUND_ENTRY_OF + 1, places.of);
    if (!insert (filling, row, out_is_in, error))
      return FALSE;
  }
  return TRUE;
}

static guint
count_seals (const LbFoundRow *rows, guint n)
{
  guint n_seals = 0;

  for (guint i = 0; i < n; i++)
    n_seals += g_str_equal (rows[i].cells[LB_FOUND_ENTRY_KIND].text,
                            lb_entry_kind_name (LB_ENTRY_SEAL));
  return n_seals;
}

static gboolean
fill_act (Filling *filling, const LbFoundRow *rows, guint n, gboolean is_open, GError **error)
{
  LbRecovery *recovery = filling->recovery;
  gboolean is_in = FALSE;

  if (!lb_book_run (filling->book, LB_SQL_SAVEPOINT, error) ||
      !insert_act (filling, rows, n, &is_in, error) ||
      (!is_in && !lb_book_run (filling->book, LB_SQL_ROLL_BACK_TO, error)) ||
      !lb_book_run (filling->book, LB_SQL_RELEASE, error))
    return FALSE;
  if (!is_in) {
    recovery->n_orphans += n;
    return TRUE;
  }
  set_place (filling->act_places, rows[0].seq, recovery->n_entries + 1);
  recovery->n_entries += n;
  recovery->n_open_acts += is_open;
  recovery->n_seals += count_seals (rows, n);
  return TRUE;
}

/* How many rows from @first on follow each other in one act; 0 when the act's first is not there. */
static guint
act_length (const GArray *rows, guint first)
{
  const LbFoundRow *row = &g_array_index (rows, LbFoundRow, first);
  const gint64 act = row->seq;
  guint n = 0;

  while (first + n < rows->len && row[n].seq == act + n &&
         lb_found_row_number (&row[n], LB_FOUND_ENTRY_ACT) == act)
    n++;
  return n;
}

static gboolean
fill_entries (Filling *filling, GError **error)
{
  GArray *rows = filling->found->entries;
  guint n_since_look = 0;

  for (guint i = 0; i < rows->len;) {
    const LbFoundRow *row = &g_array_index (rows, LbFoundRow, i);
    const guint n = act_length (rows, i);
    const LbFoundRow *next = i + n < rows->len ? &row[n] : NULL;

    if (n == 0) {
      filling->recovery->n_torn++;
      i++;
      continue;
    }
    filling->last_entry = row[n - 1].seq;
    /* A later row of this act, beyond a gap: the act is not whole. */
    if (next != NULL && lb_found_row_number (next, LB_FOUND_ENTRY_ACT) == row->seq) {
      filling->recovery->n_torn += n;
    } else {
      const gboolean is_open = next != NULL && next->seq != row[n - 1].seq + 1;

      if (!fill_act (filling, row, n, is_open, error))
        return FALSE;
    }
    i += n;
    n_since_look += n;
    if (n_since_look >= ROWS_BETWEEN_LOOKS) {
      n_since_look = 0;
      if (g_cancellable_is_cancelled (filling->cancellable)) {
        g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_CANCELLED,
                     _ ("Recovering was cancelled; no file was made"));
        return FALSE;
      }
    }
  }
  return TRUE;
}

static gboolean
fill_tables (Filling *filling, GError **error)
{
  LbBook *book = filling->book;
  LbRecovery *recovery = filling->recovery;

  filling->insert_pile = make_insert (book, "pile", LB_FOUND_PILE, error);
  if (filling->insert_pile == NULL)
    return FALSE;
  filling->insert_shift = make_insert (book, "shift", LB_FOUND_SHIFT, error);
  if (filling->insert_shift == NULL)
    return FALSE;
  filling->insert_entry = make_insert (book, "entry", LB_FOUND_ENTRY, error);
  if (filling->insert_entry == NULL)
    return FALSE;
  return fill_job (filling, error) &&
         fill_plain (filling, filling->found->piles, filling->insert_pile, LB_FOUND_PILE,
                     filling->pile_places, &filling->last_pile, &recovery->n_piles, error) &&
         fill_plain (filling, filling->found->shifts, filling->insert_shift, LB_FOUND_SHIFT,
                     filling->shift_places, &filling->last_shift, &recovery->n_shifts, error) &&
         fill_entries (filling, error);
}

static gboolean
fill (Filling *filling, GError **error)
{
  LbBook *book = filling->book;

  if (!lb_schema_begin_file (book->db, LB_BOOK_APPLICATION_ID)) {
    lb_connection_fail (book->db, sqlite3_extended_errcode (book->db), book->name, error);
    return FALSE;
  }

  const gboolean is_filled = fill_tables (filling, error);
  sqlite3_finalize (filling->insert_pile);
  sqlite3_finalize (filling->insert_shift);
  sqlite3_finalize (filling->insert_entry);
  return is_filled && lb_book_run (book, LB_SQL_COMMIT, error);
}

/* Makes the new file at @partner of what was found. */
static gboolean
make_file (const char *partner,
           const char *path,
           const LbFoundRows *found,
           LbRecovery *recovery,
           GCancellable *cancellable,
           GError **error)
{
  g_autofree char *name = g_filename_display_basename (path);
  sqlite3 *db = lb_connection_open (partner, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, name,
                                    error);
  if (db == NULL)
    return FALSE;

  g_autoptr (LbBook) book = lb_book_new_for (db, partner, FALSE);
  Filling filling = {
    .book = book,
    .found = found,
    .recovery = recovery,
    .cancellable = cancellable,
    .pile_places = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free),
    .shift_places = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free),
    .act_places = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free),
  };
  const gboolean is_made = fill (&filling, error);

  recovery->n_lost_piles = (guint) filling.last_pile - recovery->n_piles;
  recovery->n_lost_shifts = (guint) filling.last_shift - recovery->n_shifts;
  recovery->n_lost_entries = (guint) filling.last_entry - recovery->n_entries;
  g_hash_table_unref (filling.pile_places);
  g_hash_table_unref (filling.shift_places);
  g_hash_table_unref (filling.act_places);
  return is_made;
}

/* That the new file is a job file as any other. */
static gboolean
look_through (const char *partner, GError **error)
{
  g_autoptr (LbBook) book = lb_book_open (partner, LB_BOOK_READ, error);
  g_autoptr (LbLedger) ledger = book != NULL ? lb_book_read (book, NULL, error) : NULL;

  return ledger != NULL;
}

/* Bytes that the first page says there are, beyond the end. */
static guint64
missing_bytes (const guint8 *file, gsize n, gsize page_size)
{
  const gsize n_pages_at = 28; /* SQLite file format, section 1.3 */

  if (n < 100)
    return 0;
  const guint64 n_pages = (guint64) file[n_pages_at] << 24 | (guint64) file[n_pages_at + 1] << 16 |
                          (guint64) file[n_pages_at + 2] << 8 | file[n_pages_at + 3];
  return n_pages * page_size > n ? n_pages * page_size - n : 0;
}

static gboolean
look_at_bytes (const char *copy,
               const char *name,
               LbFoundRows **out,
               guint64 *out_n,
               GError **error)
{
  g_autoptr (GError) reason = NULL;
  g_autoptr (GMappedFile) mapped = g_mapped_file_new (copy, FALSE, &reason);

  if (mapped == NULL) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK, "%s", reason->message);
    return FALSE;
  }

  const guint8 *bytes = (const guint8 *) g_mapped_file_get_contents (mapped);
  const gsize n = g_mapped_file_get_length (mapped);
  const gsize page_size = lb_leaf_rows_page_size (bytes, n, LB_BOOK_PAGE_SIZE);
  g_autoptr (LbFoundRows) found = lb_found_rows_new (bytes, n, page_size);
  if (found->piles->len == 0 && found->entries->len == 0) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED,
                 _ ("Nothing of a job can be read in “%s”; go back to a copy"), name);
    return FALSE;
  }
  *out_n += missing_bytes (bytes, n, page_size);
  *out = g_steal_pointer (&found);
  return TRUE;
}

static LbFoundRows *
find_rows (const char *damaged,
           const char *copy,
           const char *name,
           guint64 *out_n_unread,
           GError **error)
{
  LbFoundRows *found = NULL;

  if (!lb_raw_copy (damaged, copy, name, out_n_unread, error))
    return NULL;
  lb_raw_copy_roll_back (damaged, copy, name);
  return look_at_bytes (copy, name, &found, out_n_unread, error) ? found : NULL;
}

gboolean
lb_book_recover (const char *damaged,
                 const char *path,
                 LbRecovery *out_recovery,
                 GCancellable *cancellable,
                 GError **error)
{
  g_return_val_if_fail (damaged != NULL, FALSE);
  g_return_val_if_fail (path != NULL, FALSE);
  g_return_val_if_fail (out_recovery != NULL, FALSE);

  g_autofree char *full = g_canonicalize_filename (path, NULL);
  g_autofree char *name = g_filename_display_basename (damaged);
  g_autofree char *copy = lb_file_partner (full);
  g_autofree char *partner = lb_file_partner (full);
  LbRecovery recovery = { 0 };

  if (!lb_file_must_not_exist (full, error))
    return FALSE;

  g_autoptr (LbFoundRows) found = find_rows (damaged, copy, name, &recovery.n_unread_bytes, error);
  lb_file_discard (copy);
  if (found == NULL)
    return FALSE;
  if (!make_file (partner, full, found, &recovery, cancellable, error) ||
      !look_through (partner, error))
  {
    lb_file_discard (partner);
    return FALSE;
  }
  if (!lb_file_publish (partner, full, error))
    return FALSE;
  *out_recovery = recovery;
  return TRUE;
}
