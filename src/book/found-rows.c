/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which of the rows in a file's pages are those of a job.
 *
 * A table is told by how many columns its rows have. A row counts when each of its values is one
 * that reading accepts (read.c), and when neither its number nor its id is taken: of two rows with
 * one number, as pages that SQLite put away can still hold them, the first that is good counts.
 * Types that the tables' own CHECKs see to are left to them. */
#include "book/found-rows.h"

#include "book/book-private.h"

#include <math.h>
#include <string.h>

/* The shortest row takes more; a number that so many rows would not reach is none. */
#define ROW_BYTES_LEAST 24

typedef struct
{
  LbFoundRows *found;
  gint64 seq_most;
  GHashTable *ids; /* borrowed texts */
} Finder;

gint64
lb_found_row_number (const LbFoundRow *row, guint column)
{
  const LbCell *cell = &row->cells[column];

  return cell->kind == LB_CELL_INTEGER ? cell->integer : 0;
}

static gboolean
is_text (const LbCell *cell, glong most_characters)
{
  return cell->kind == LB_CELL_TEXT && strlen (cell->text) == cell->n_bytes &&
         lb_text_check (cell->text, most_characters, "", NULL);
}

static gboolean
is_said (const LbCell *cell, glong most_characters)
{
  return is_text (cell, most_characters) && cell->n_bytes > 0;
}

static gboolean
is_integer (const LbCell *cell, gint64 least, gint64 most)
{
  return cell->kind == LB_CELL_INTEGER && cell->integer >= least && cell->integer <= most;
}

static gboolean
is_time (const LbCell *cell)
{
  return is_integer (cell, LB_TIME_LEAST, LB_TIME_MOST);
}

/* A row's number in another table, or none. */
static gboolean
is_reference (const LbCell *cell)
{
  return cell->kind == LB_CELL_NULL || is_integer (cell, 1, G_MAXINT64);
}

/* SQLite stores a real that is whole as an integer. */
static double
number_of (const LbCell *cell)
{
  return cell->kind == LB_CELL_REAL      ? cell->real
         : cell->kind == LB_CELL_INTEGER ? (double) cell->integer
                                         : (double) NAN;
}

static gboolean
is_number (const LbCell *cell, gboolean may_be_null)
{
  return (cell->kind == LB_CELL_NULL && may_be_null) ||
         ((cell->kind == LB_CELL_REAL || cell->kind == LB_CELL_INTEGER) &&
          isfinite (number_of (cell)));
}

static double
size_of (const LbCell *cell)
{
  return cell->kind == LB_CELL_NULL ? 0 : number_of (cell);
}

static gboolean
is_pile (const LbCell *cells)
{
  LbPile pile;

  if (!is_said (&cells[1], LB_ID_MAX) || !is_said (&cells[2], LB_SHORT_MAX) ||
      !is_text (&cells[4], LB_SHORT_MAX) || !is_text (&cells[5], LB_SHORT_MAX) ||
      !is_text (&cells[6], LB_NOTE_MAX) || !is_text (&cells[9], LB_SHORT_MAX) ||
      (cells[12].kind != LB_CELL_NULL && !is_text (&cells[12], LB_SHORT_MAX / 4)) ||
      (cells[13].kind != LB_CELL_NULL && !is_integer (&cells[13], 1, LB_BARS_MAX)))
    return FALSE;
  for (guint i = 7; i < LB_FOUND_PILE; i++) {
    const gboolean may_be_null = i != 7 && i != 8 && i != 11;

    if (i != 9 && i != 12 && !is_number (&cells[i], may_be_null))
      return FALSE;
  }

  lb_pile_init (&pile);
  pile.mark = cells[2].text;
  if (!lb_shape_from_name (cells[9].text, &pile.outline.shape))
    return FALSE;
  pile.x_m = number_of (&cells[7]);
  pile.y_m = number_of (&cells[8]);
  pile.outline.width_m = size_of (&cells[10]);
  pile.outline.void_m = number_of (&cells[11]);
  pile.bar_inset_m = number_of (&cells[14]);
  pile.batter = size_of (&cells[15]);
  pile.bearing_rad = size_of (&cells[16]);
  pile.head_m = number_of (&cells[17]);
  pile.cut_m = number_of (&cells[18]);
  pile.mudline_m = number_of (&cells[19]);
  pile.toe_m = number_of (&cells[20]);
  return lb_pile_check_ranges (&pile, NULL);
}

static gboolean
is_shift (const LbCell *cells)
{
  return is_said (&cells[1], LB_ID_MAX) && is_integer (&cells[2], LB_DAY_LEAST, LB_DAY_MOST) &&
         is_text (&cells[3], LB_SHORT_MAX) && is_time (&cells[4]) &&
         is_text (&cells[5], LB_SHORT_MAX);
}

static gboolean
is_entry (const LbCell *cells)
{
  LbEntryKind kind;

  if (!is_said (&cells[LB_FOUND_ID], LB_ID_MAX) ||
      !is_integer (&cells[LB_FOUND_ENTRY_ACT], 1, G_MAXINT64) || !is_time (&cells[3]) ||
      !is_text (&cells[4], LB_SHORT_MAX) || !is_reference (&cells[LB_FOUND_ENTRY_SHIFT]) ||
      !is_text (&cells[LB_FOUND_ENTRY_KIND], LB_SHORT_MAX) ||
      !is_reference (&cells[LB_FOUND_ENTRY_PILE]) ||
      !is_text (&cells[LB_FOUND_ENTRY_WHAT], LB_SHORT_MAX) ||
      !is_integer (&cells[9], 0, (G_GINT64_CONSTANT (1) << LB_BARS_MAX) - 1) ||
      !is_integer (&cells[10], 0, LB_BARS_MAX) || !is_number (&cells[11], TRUE) ||
      !is_time (&cells[12]) || !is_time (&cells[13]) || !is_time (&cells[14]) ||
      !is_text (&cells[15], LB_TABLE_MAX) || !is_reference (&cells[LB_FOUND_ENTRY_OF]) ||
      !lb_entry_kind_from_name (cells[LB_FOUND_ENTRY_KIND].text,
                                strlen (cells[LB_FOUND_ENTRY_KIND].text), &kind))
    return FALSE;

  /* As take_of() of read.c has it. */
  const gboolean names_act = cells[LB_FOUND_ENTRY_OF].kind == LB_CELL_INTEGER;
  return names_act ? kind == LB_ENTRY_TAKE_BACK || kind == LB_ENTRY_FACT || kind == LB_ENTRY_SETTING
                   : kind != LB_ENTRY_TAKE_BACK;
}

static void
find_job_value (LbFoundRows *found, const LbCell *cells)
{
  if (!is_said (&cells[0], LB_SHORT_MAX) || !is_said (&cells[1], LB_ID_MAX))
    return;
  if (g_str_equal (cells[0].text, "id") && found->job_id == NULL)
    found->job_id = g_strdup (cells[1].text);
  else if (g_str_equal (cells[0].text, "made") && found->made == NULL)
    found->made = g_strdup (cells[1].text);
}

/* The cells with texts of their own, each ended by a NUL. */
static LbCell *
keep_cells (LbFoundRows *found, const LbCell *cells, guint n_cells)
{
  LbCell *kept = g_memdup2 (cells, n_cells * sizeof *cells);

  for (guint i = 0; i < n_cells; i++) {
    if (kept[i].kind == LB_CELL_TEXT)
      kept[i].text = g_string_chunk_insert_len (found->texts, kept[i].text,
                                                (gssize) kept[i].n_bytes);
  }
  g_ptr_array_add (found->cells, kept);
  return kept;
}

static void
found_row_cb (gint64 rowid, const LbCell *cells, guint n_cells, gpointer data)
{
  Finder *finder = data;
  LbFoundRows *found = finder->found;

  if (n_cells != LB_FOUND_JOB && n_cells != LB_FOUND_SHIFT && n_cells != LB_FOUND_ENTRY &&
      n_cells != LB_FOUND_PILE)
    return;

  const LbFoundRow row = { .seq = rowid, .cells = keep_cells (found, cells, n_cells) };
  if (n_cells == LB_FOUND_JOB) {
    find_job_value (found, row.cells);
    return;
  }

  const gboolean is_good = n_cells == LB_FOUND_PILE    ? is_pile (row.cells)
                           : n_cells == LB_FOUND_SHIFT ? is_shift (row.cells)
                                                       : is_entry (row.cells);
  if (!is_good || row.seq < 1 || row.seq > finder->seq_most) {
    found->n_spoilt++;
    return;
  }
  g_array_append_val (n_cells == LB_FOUND_PILE    ? found->piles
                      : n_cells == LB_FOUND_SHIFT ? found->shifts
                                                  : found->entries,
                      row);
}

static int
compare_rows (gconstpointer a, gconstpointer b)
{
  const LbFoundRow *one = a;
  const LbFoundRow *other = b;

  return one->seq == other->seq ? 0 : one->seq < other->seq ? -1 : 1;
}

/* By number, of each number the first that was found, without ids that are taken. */
static void
settle (GArray *rows, GHashTable *ids)
{
  guint n_kept = 0;

  g_array_sort (rows, compare_rows);
  for (guint i = 0; i < rows->len; i++) {
    const LbFoundRow row = g_array_index (rows, LbFoundRow, i);
    char *id = (char *) row.cells[LB_FOUND_ID].text;

    if (n_kept > 0 && g_array_index (rows, LbFoundRow, n_kept - 1).seq == row.seq)
      continue;
    if (!g_hash_table_add (ids, id))
      continue;
    g_array_index (rows, LbFoundRow, n_kept++) = row;
  }
  g_array_set_size (rows, n_kept);
}

LbFoundRows *
lb_found_rows_new (const guint8 *file, gsize n, gsize page_size)
{
  LbFoundRows *found = g_new0 (LbFoundRows, 1);
  Finder finder = { .found = found, .seq_most = (gint64) (n / ROW_BYTES_LEAST) };
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);

  found->piles = g_array_new (FALSE, FALSE, sizeof (LbFoundRow));
  found->shifts = g_array_new (FALSE, FALSE, sizeof (LbFoundRow));
  found->entries = g_array_new (FALSE, FALSE, sizeof (LbFoundRow));
  found->texts = g_string_chunk_new (1 << 16);
  found->cells = g_ptr_array_new_with_free_func (g_free);
  lb_leaf_rows_scan (file, n, page_size, found_row_cb, &finder);
  settle (found->piles, ids);
  settle (found->shifts, ids);
  settle (found->entries, ids);
  return found;
}

void
lb_found_rows_free (LbFoundRows *found)
{
  if (found == NULL)
    return;
  g_array_unref (found->piles);
  g_array_unref (found->shifts);
  g_array_unref (found->entries);
  g_free (found->job_id);
  g_free (found->made);
  g_string_chunk_free (found->texts);
  g_ptr_array_unref (found->cells);
  g_free (found);
}
