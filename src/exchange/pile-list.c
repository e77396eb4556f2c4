/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A pile list's way from cells to piles.
 *
 * Guessing gives each fact the column whose heading names it best; without headings the order of
 * the columns is taken as surveyors write it. Reading goes through the rows once: each mapped cell is
 * made plain (unit from the heading, decimal sign of the list) and set by lb_pile_set(), which is
 * the only judge of a fact; the pile as a whole is judged by lb_pile_check().
 *
 * Invariants:
 * 1. A row gives one pile or one fault, in the order of the list; a row without any text gives
 *    neither.
 * 2. Marks of @piles differ from each other and from those taken, by lb_mark_key().
 * 3. Strings of the piles live in @strings; nothing points into the table or the defaults.
 */
#include "exchange/pile-list.h"

#include "book/ledger.h"
#include "exchange/angle-form.h"
#include "exchange/decimal-sign.h"
#include "exchange/exchange-error.h"
#include "exchange/heading.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Rows between two looks at the cancellable. */
#define STRIDE 1024

typedef struct
{
  const LbTextTable *table;
  const LbPileListMap *map;
  gsize first_row;
  gsize n_rows;
  char *columns[LB_N_FACTS];    /* what a fact's column is called in a fault */
  const char *unit[LB_N_FACTS]; /* word to put behind a bare number, "" for none */
  LbDecimalSign sign;
  GHashTable *marks; /* keys of this list's marks so far */
  GHashTable *taken;
  LbPileListRows *rows;
} Reading;

static void
fault_free (LbPileListFault *fault)
{
  g_free (fault->column);
  g_free (fault->reason);
  g_free (fault);
}

void
lb_pile_list_rows_free (LbPileListRows *rows)
{
  if (rows == NULL)
    return;

  g_clear_pointer (&rows->piles, g_array_unref);
  g_clear_pointer (&rows->faults, g_ptr_array_unref);
  g_clear_pointer (&rows->strings, g_string_chunk_free);
  g_free (rows);
}

/* --- Guessing ----------------------------------------------------------------------------- */

static gboolean
is_number (const char *text)
{
  double value;

  return lb_quantity_from_text (LB_QUANTITY_LENGTH, LB_UNITS_METRIC, text, &value, NULL);
}

/* The first cell under the heading with anything in it. */
static const char *
first_value (const LbTextTable *table, gsize column)
{
  const gsize n_rows = lb_text_table_get_shape (table).n_rows;

  for (gsize row = 1; row < n_rows; row++) {
    const char *cell = lb_text_table_cell (table, row, column);

    if (*cell != '\0')
      return cell;
  }

  return "";
}

/* "bars" may head a count or sizes, "type" a shape or anything: the values tell. */
static gboolean
fits_values (const LbTextTable *table, gsize column, LbHeading *heading)
{
  const char *value = first_value (table, column);
  LbShape shape;

  if (heading->fact == LB_FACT_BAR && strspn (value, "0123456789") == strlen (value) &&
      *value != '\0' && heading->rank > 0)
    heading->fact = LB_FACT_N_BARS;
  if (heading->fact == LB_FACT_SHAPE && heading->rank > 0 && *value != '\0')
    return lb_shape_from_name (value, &shape);

  return TRUE;
}

static guint
map_headings (const LbTextTable *table, LbPileListMap *map)
{
  guint ranks[LB_N_FACTS];
  guint n_mapped = 0;

  for (gsize column = 0; column < lb_text_table_row_cells (table, 0); column++) {
    LbHeading heading;

    if (!lb_heading_read (lb_text_table_cell (table, 0, column), &heading) ||
        !fits_values (table, column, &heading))
      continue;

    const LbFact fact = heading.fact;

    if (map->column_of[fact] != LB_COLUMN_NONE && ranks[fact] <= heading.rank)
      continue;
    n_mapped += map->column_of[fact] == LB_COLUMN_NONE ? 1 : 0;
    map->column_of[fact] = (int) column;
    ranks[fact] = heading.rank;
    if (*heading.unit != '\0')
      map->units[fact] = heading.units;
  }

  return n_mapped;
}

/* Lists without headings, by their width: which facts stand in which order. Common practice of
 * survey data collectors; northing stands before easting. */
static void
map_order (const LbTextTable *table, LbPileListMap *map)
{
  static const LbFact point_first[] = { LB_FACT_MARK, LB_FACT_Y, LB_FACT_X, LB_FACT_HEAD,
                                        LB_FACT_NOTE };
  static const LbFact mark_last[] = { LB_FACT_Y, LB_FACT_X, LB_FACT_HEAD, LB_FACT_MARK };
  const gsize n = lb_text_table_row_cells (table, 0);
  const gboolean is_mark_last = n == 4 && is_number (lb_text_table_cell (table, 0, 0)) &&
                                !is_number (lb_text_table_cell (table, 0, 3));

  if (n < 3 || n > G_N_ELEMENTS (point_first))
    return;
  for (gsize i = 0; i < n; i++)
    map->column_of[is_mark_last ? mark_last[i] : point_first[i]] = (int) i;
}

static gboolean
row_has_number (const LbTextTable *table, gsize row)
{
  for (gsize column = 0; column < lb_text_table_row_cells (table, row); column++) {
    if (is_number (lb_text_table_cell (table, row, column)))
      return TRUE;
  }

  return FALSE;
}

void
lb_pile_list_guess (const LbTextTable *table, LbUnits units, LbPileListMap *out_map)
{
  g_return_if_fail (table != NULL);
  g_return_if_fail (out_map != NULL);

  *out_map = (LbPileListMap){ .has_heading = !row_has_number (table, 0) };
  for (gsize fact = 0; fact < LB_N_FACTS; fact++) {
    out_map->column_of[fact] = LB_COLUMN_NONE;
    out_map->units[fact] = units;
  }

  if (out_map->has_heading)
    map_headings (table, out_map);
  else
    map_order (table, out_map);
}

/* --- Reading ------------------------------------------------------------------------------ */

static const char *
cell_of (const Reading *reading, gsize row, LbFact fact)
{
  const int column = reading->map->column_of[fact];

  return column == LB_COLUMN_NONE ? "" : lb_text_table_cell (reading->table, row, (gsize) column);
}

static gboolean
is_measured (LbFact fact)
{
  const LbQuantity quantity = lb_fact_quantity (fact);

  return quantity == LB_QUANTITY_LENGTH || quantity == LB_QUANTITY_SIZE;
}

static gboolean
is_text (LbFact fact)
{
  return fact == LB_FACT_MARK || fact == LB_FACT_BENT || fact == LB_FACT_ROW ||
         fact == LB_FACT_NOTE;
}

static const char *
pool_dup (gpointer pool, const char *text)
{
  return g_string_chunk_insert_const (pool, text);
}

/* A sheet that wants text kept from being taken for a formula is written with an apostrophe before
 * it; our own lists are too. */
static const char *
without_formula_guard (const char *text)
{
  return text[0] == '\'' && text[1] != '\0' && strchr ("=+-@\t\r", text[1]) ? text + 1 : text;
}

/* Line breaks inside a cell are those of the list's system; the job keeps LF alone. */
static char *
with_plain_breaks (const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\r\n", -1);
  char *plain = g_strjoinv ("\n", lines);

  return g_strdelimit (plain, "\r", '\n');
}

/* "8 #8", "8-#8", "(8) x #8": how many and which in one cell. */
static gboolean
split_bars (const char *text, char **out_count, const char **out_bar)
{
  const char *at = text + strspn (text, "( ");
  const gsize n = strspn (at, "0123456789");
  const char *mark = strchr (at, '#');

  if (n == 0 || mark == NULL || strspn (at + n, ") xX-") != (gsize) (mark - at) - n)
    return FALSE;

  *out_count = g_strndup (at, n);
  *out_bar = mark;
  return TRUE;
}

static gboolean
is_bare_number (const char *text)
{
  return *text != '\0' && strspn (text, "0123456789.,+- ") == strlen (text);
}

static gboolean
set_bars (Reading *reading, LbPile *pile, const char *text, GError **error)
{
  const char *bar = text;
  g_autofree char *count = NULL;

  if (reading->map->column_of[LB_FACT_N_BARS] == LB_COLUMN_NONE &&
      split_bars (text, &count, &bar) &&
      !lb_pile_set (pile, LB_FACT_N_BARS, count, LB_UNITS_METRIC, pool_dup, reading->rows->strings,
                    error))
    return FALSE;

  return lb_pile_set (pile, LB_FACT_BAR, bar, reading->map->units[LB_FACT_BAR], pool_dup,
                      reading->rows->strings, error);
}

static gboolean
set_fact (Reading *reading, LbPile *pile, LbFact fact, const char *text, GError **error)
{
  g_autofree char *plain = NULL;
  g_autofree char *with_unit = NULL;

  if (fact == LB_FACT_BAR)
    return set_bars (reading, pile, text, error);

  if (is_text (fact)) {
    plain = with_plain_breaks (without_formula_guard (text));
    text = plain;
  } else if (fact == LB_FACT_BEARING) {
    plain = lb_angle_form_plain (text);
    text = plain;
  } else if (is_measured (fact)) {
    plain = lb_decimal_sign_plain (reading->sign, text);
    if (plain == NULL) {
      g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE,
                   _ ("“%s” can be read two ways, because the list has decimal points and decimal "
                      "commas: write it without grouping"),
                   text);
      return FALSE;
    }
    text = plain;
  }
  if (*reading->unit[fact] != '\0' && is_bare_number (text)) {
    with_unit = g_strconcat (text, " ", reading->unit[fact], NULL);
    text = with_unit;
  }

  return lb_pile_set (pile, fact, text, reading->map->units[fact], pool_dup, reading->rows->strings,
                      error);
}

static void
add_fault (Reading *reading, gsize row, const char *column, char *reason)
{
  LbPileListFault *fault = g_new (LbPileListFault, 1);

  *fault = (LbPileListFault){ .line = lb_text_table_line (reading->table, row),
                              .column = g_strdup (column),
                              .reason = reason };
  g_ptr_array_add (reading->rows->faults, fault);
}

/* Makes a mark of the row and the bent where the list has none: "G7". */
static gboolean
find_mark (Reading *reading, gsize row, LbPile *pile, GError **error)
{
  const char *mark = cell_of (reading, row, LB_FACT_MARK);

  if (*mark != '\0')
    return set_fact (reading, pile, LB_FACT_MARK, mark, error);

  const char *bent = cell_of (reading, row, LB_FACT_BENT);
  const char *letter = cell_of (reading, row, LB_FACT_ROW);

  if (*bent == '\0' || *letter == '\0') {
    g_set_error_literal (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE,
                         _ ("the mark is empty: give the pile a mark, or a row and a bent"));
    return FALSE;
  }

  g_autofree char *made = g_strconcat (letter, bent, NULL);

  return set_fact (reading, pile, LB_FACT_MARK, made, error);
}

static gboolean
check_mark_is_new (Reading *reading, const LbPile *pile, gsize row, GError **error)
{
  g_autofree char *key = lb_mark_key (pile->mark);
  gpointer earlier;

  if (reading->taken != NULL && g_hash_table_contains (reading->taken, key)) {
    g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE,
                 _ ("“%s” is already in the job: leave the row out or give another mark"),
                 pile->mark);
    return FALSE;
  }
  if (g_hash_table_lookup_extended (reading->marks, key, NULL, &earlier)) {
    g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE,
                 _ ("“%s” is already on line %u: each pile needs a mark of its own"), pile->mark,
                 GPOINTER_TO_UINT (earlier));
    return FALSE;
  }

  g_hash_table_insert (reading->marks, g_steal_pointer (&key),
                       GUINT_TO_POINTER ((guint) lb_text_table_line (reading->table, row)));
  return TRUE;
}

static gboolean
is_needed (LbFact fact)
{
  return fact == LB_FACT_X || fact == LB_FACT_Y;
}

static gboolean
read_cell (Reading *reading, gsize row, LbFact fact, LbPile *pile, GError **error)
{
  const char *cell = cell_of (reading, row, fact);

  if (fact == LB_FACT_MARK)
    return find_mark (reading, row, pile, error);
  if (*cell != '\0')
    return set_fact (reading, pile, fact, cell, error);
  if (!is_needed (fact))
    return TRUE;

  g_set_error_literal (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE,
                       _ ("the cell is empty: a pile needs its place on the grid"));
  return FALSE;
}

static gboolean
row_is_blank (const LbTextTable *table, gsize row)
{
  for (gsize column = 0; column < lb_text_table_row_cells (table, row); column++) {
    if (*lb_text_table_cell (table, row, column) != '\0')
      return FALSE;
  }

  return TRUE;
}

static void
read_row (Reading *reading, gsize row, const LbPile *defaults)
{
  g_autoptr (GError) error = NULL;
  LbPile pile = *defaults;

  for (LbFact fact = 0; fact < LB_N_FACTS; fact++) {
    if (!read_cell (reading, row, fact, &pile, &error)) {
      add_fault (reading, row, reading->columns[fact], g_strdup (error->message));
      return;
    }
  }
  if (!lb_pile_check (&pile, &error))
    add_fault (reading, row, _ ("whole row"), g_strdup (error->message));
  else if (!check_mark_is_new (reading, &pile, row, &error))
    add_fault (reading, row, reading->columns[LB_FACT_MARK], g_strdup (error->message));
  else
    g_array_append_val (reading->rows->piles, pile);
}

/* Whether the list says what cannot be done without. */
static gboolean
check_map (const LbTextTable *table, const LbPileListMap *map, GError **error)
{
  const gsize n_columns = lb_text_table_get_shape (table).n_columns;

  for (gsize fact = 0; fact < LB_N_FACTS; fact++) {
    const int column = map->column_of[fact];

    if (column < LB_COLUMN_NONE || column >= (int) n_columns) {
      g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_COLUMN,
                   _ ("The list has no column %d, taken for “%s”"), column + 1,
                   g_dgettext (GETTEXT_PACKAGE, lb_fact_title ((LbFact) fact)));
      return FALSE;
    }
  }

  const gboolean has_mark = map->column_of[LB_FACT_MARK] != LB_COLUMN_NONE ||
                            (map->column_of[LB_FACT_BENT] != LB_COLUMN_NONE &&
                             map->column_of[LB_FACT_ROW] != LB_COLUMN_NONE);
  const LbFact missing = !has_mark                                     ? LB_FACT_MARK
                         : map->column_of[LB_FACT_X] == LB_COLUMN_NONE ? LB_FACT_X
                                                                       : LB_FACT_Y;

  if (has_mark && map->column_of[LB_FACT_X] != LB_COLUMN_NONE &&
      map->column_of[LB_FACT_Y] != LB_COLUMN_NONE)
    return TRUE;

  g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_COLUMN,
               _ ("No column is taken for “%s”: say which column it is"),
               g_dgettext (GETTEXT_PACKAGE, lb_fact_title (missing)));
  return FALSE;
}

/* What stands in the heading of a fact's column, for faults and for its unit. */
static void
read_headings (Reading *reading)
{
  for (gsize fact = 0; fact < LB_N_FACTS; fact++) {
    const int column = reading->map->column_of[fact];
    const char *text = reading->map->has_heading && column != LB_COLUMN_NONE
                         ? lb_text_table_cell (reading->table, 0, (gsize) column)
                         : "";
    LbHeading heading;

    reading->unit[fact] = "";
    if (*text != '\0')
      reading->columns[fact] = g_strdup (text);
    else if (column != LB_COLUMN_NONE)
      reading->columns[fact] = g_strdup_printf (_ ("column %d"), column + 1);
    else
      reading->columns[fact] = g_strdup (
        g_dgettext (GETTEXT_PACKAGE, lb_fact_title ((LbFact) fact)));

    /* The map's units stand above the heading's, for a person may have changed them. */
    if (lb_heading_read (text, &heading) && heading.units == reading->map->units[fact] &&
        (is_measured ((LbFact) fact) || g_str_equal (heading.unit, "deg")))
      reading->unit[fact] = heading.unit;
  }
}

static void
find_decimal_sign (Reading *reading)
{
  for (LbFact fact = 0; fact < LB_N_FACTS; fact++) {
    if (!is_measured (fact) || reading->map->column_of[fact] == LB_COLUMN_NONE)
      continue;
    for (gsize row = reading->first_row; row < reading->n_rows; row++)
      reading->sign = lb_decimal_sign_look (reading->sign, cell_of (reading, row, fact));
  }
}

static gboolean
read_rows (Reading *reading,
           const LbPile *defaults,
           void (*progress) (gsize done, gsize total, gpointer data),
           gpointer data,
           GCancellable *cancellable,
           GError **error)
{
  const gsize total = reading->n_rows - reading->first_row;

  for (gsize row = reading->first_row; row < reading->n_rows; row++) {
    const gsize done = row - reading->first_row;

    if (done % STRIDE == 0) {
      if (g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;
      if (progress != NULL)
        progress (done, total, data);
    }
    if (!row_is_blank (reading->table, row))
      read_row (reading, row, defaults);
  }
  if (progress != NULL)
    progress (total, total, data);

  return TRUE;
}

static LbPile
keep_defaults (const LbPile *defaults, GStringChunk *strings)
{
  LbPile kept = *defaults;

  kept.id = "";
  kept.mark = pool_dup (strings, defaults->mark != NULL ? defaults->mark : "");
  kept.bent = pool_dup (strings, defaults->bent != NULL ? defaults->bent : "");
  kept.row = pool_dup (strings, defaults->row != NULL ? defaults->row : "");
  kept.note = pool_dup (strings, defaults->note != NULL ? defaults->note : "");
  kept.bar_places = pool_dup (strings, defaults->bar_places);
  kept.order = pool_dup (strings, defaults->order);

  return kept;
}

LbPileListRows *
lb_pile_list_read (const LbTextTable *table,
                   const LbPileListMap *map,
                   const LbPile *defaults,
                   GHashTable *taken,
                   void (*progress) (gsize done, gsize total, gpointer data),
                   gpointer data,
                   GCancellable *cancellable,
                   GError **error)
{
  g_return_val_if_fail (table != NULL, NULL);
  g_return_val_if_fail (map != NULL, NULL);
  g_return_val_if_fail (defaults != NULL, NULL);

  if (!check_map (table, map, error))
    return NULL;

  g_autoptr (LbPileListRows) rows = g_new0 (LbPileListRows, 1);
  Reading reading = { .table = table,
                      .map = map,
                      .first_row = map->has_heading ? 1 : 0,
                      .n_rows = lb_text_table_get_shape (table).n_rows,
                      .taken = taken,
                      .rows = rows };

  rows->piles = g_array_new (FALSE, FALSE, sizeof (LbPile));
  rows->faults = g_ptr_array_new_with_free_func ((GDestroyNotify) fault_free);
  rows->strings = g_string_chunk_new (4096);
  reading.marks = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  read_headings (&reading);
  find_decimal_sign (&reading);

  const LbPile kept = keep_defaults (defaults, rows->strings);
  const gboolean is_whole = read_rows (&reading, &kept, progress, data, cancellable, error);

  g_hash_table_unref (reading.marks);
  for (gsize fact = 0; fact < LB_N_FACTS; fact++)
    g_free (reading.columns[fact]);

  return is_whole ? g_steal_pointer (&rows) : NULL;
}
