/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A table that divers are sent down by is read whole or not at all. Each row is held against the one
 * before it: what a slip of the keyboard makes (a digit lost, a row out of order, metres for feet)
 * breaks the order in nearly every case and is refused with its place. */
#include "exchange/dive-table-list.h"

#include "exchange/exchange-error.h"
#include "exchange/text-table.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define FIRST_GROUP 2 /* the column */
/* No air dive without stops is this deep; 100 and more in a table of metres are feet. */
#define FSW_MOST     300.0
#define MSW_MOST     92.0
#define MINUTES_MOST 10000

/* What is being read and where. */
typedef struct
{
  const LbTextTable *cells;
  gsize n_columns;
  gsize row;
  LbDiveTable *table;
} Reading;

/* Takes @said, what is wrong in the cell. */
static gboolean
refuse (const Reading *reading, gsize column, char *said, GError **error)
{
  g_autofree char *reason = said;

  g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE, _ ("Line %u, column %u (%s): %s"),
               (guint) lb_text_table_line (reading->cells, reading->row), (guint) column + 1,
               lb_text_table_cell (reading->cells, 0, column), reason);
  return FALSE;
}

static gboolean
refuse_heading (GError **error)
{
  g_set_error_literal (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_COLUMN,
                       _ ("The first line must be “fsw,nostop” or “msw,nostop”, and after it the "
                          "groups if there are any, a capital letter each and in order"));
  return FALSE;
}

static gboolean
read_heading (Reading *reading, GError **error)
{
  const char *unit = lb_text_table_cell (reading->cells, 0, 0);
  LbDiveTable *table = reading->table;

  reading->n_columns = lb_text_table_row_cells (reading->cells, 0);
  table->is_metric = g_ascii_strcasecmp (unit, "msw") == 0;
  if ((!table->is_metric && g_ascii_strcasecmp (unit, "fsw") != 0) ||
      g_ascii_strcasecmp (lb_text_table_cell (reading->cells, 0, 1), "nostop") != 0 ||
      reading->n_columns > FIRST_GROUP + LB_DIVE_GROUPS_MAX)
    return refuse_heading (error);

  for (gsize column = FIRST_GROUP; column < reading->n_columns; column++) {
    const char *letter = lb_text_table_cell (reading->cells, 0, column);
    const gsize group = column - FIRST_GROUP;

    if (!g_ascii_isupper (letter[0]) || letter[1] != '\0' ||
        (group > 0 && letter[0] <= table->groups[group - 1]))
      return refuse_heading (error);
    table->groups[group] = letter[0];
  }
  return TRUE;
}

static gboolean
read_depth (const Reading *reading, LbDiveRow *row, GError **error)
{
  const LbDiveTable *table = reading->table;
  const char *text = lb_text_table_cell (reading->cells, reading->row, 0);
  const double most = table->is_metric ? MSW_MOST : FSW_MOST;
  char *end = NULL;

  /* strtod() alone would take "nan", "inf" and "0x1p4". */
  row->depth = g_ascii_strtod (text, &end);
  if (text[0] == '\0' || strspn (text, "0123456789.") != strlen (text) || *end != '\0')
    return refuse (
      reading, 0, g_strdup_printf (_ ("“%s” is no depth: write a number such as 40 or 12.5"), text),
      error);
  if (!(row->depth > 0 && row->depth <= most))
    return refuse (reading, 0,
                   g_strdup_printf (_ ("a depth of %s is outside 0 to %.0f: look whether the first "
                                       "line names the right unit"),
                                    text, most),
                   error);
  if (table->n_rows > 0 && !(row->depth > table->rows[table->n_rows - 1].depth))
    return refuse (reading, 0,
                   g_strdup_printf (_ ("a depth of %s does not come after the one on the line "
                                       "before: put the rows from shallow to deep, each once"),
                                    text),
                   error);
  return TRUE;
}

/* Whole minutes, more than none. */
static gboolean
read_minutes (const Reading *reading, gsize column, guint16 *out, GError **error)
{
  const char *text = lb_text_table_cell (reading->cells, reading->row, column);
  guint64 minutes;

  if (!g_ascii_string_to_unsigned (text, 10, 1, MINUTES_MOST, &minutes, NULL))
    return refuse (reading, column,
                   g_strdup_printf (_ ("“%s” is no number of minutes: write a whole one from 1 to "
                                       "%d"),
                                    text, MINUTES_MOST),
                   error);
  *out = (guint16) minutes;
  return TRUE;
}

static gboolean
read_limit (const Reading *reading, LbDiveRow *row, GError **error)
{
  const LbDiveTable *table = reading->table;
  const guint16 before = table->n_rows > 0 ? table->rows[table->n_rows - 1].limit
                                           : LB_DIVE_NO_LIMIT;

  if (g_str_equal (lb_text_table_cell (reading->cells, reading->row, 1), "unlimited"))
    row->limit = LB_DIVE_NO_LIMIT;
  else if (!read_minutes (reading, 1, &row->limit, error))
    return FALSE;

  if (before != LB_DIVE_NO_LIMIT && (row->limit == LB_DIVE_NO_LIMIT || row->limit > before))
    return refuse (reading, 1,
                   g_strdup (_ ("the limit is longer than that of the shallower line before: "
                                "compare both with the printed table")),
                   error);
  return TRUE;
}

/* Nothing may stand after a gap or an end, and each time is longer than the one before. */
static gboolean
read_groups (const Reading *reading, LbDiveRow *row, GError **error)
{
  guint16 before = 0;
  gboolean is_ended = FALSE;

  for (gsize column = FIRST_GROUP; column < reading->n_columns; column++) {
    const char *text = lb_text_table_cell (reading->cells, reading->row, column);
    guint16 *minutes = &row->group[column - FIRST_GROUP];

    if (text[0] == '\0') {
      *minutes = LB_DIVE_NOT_PRINTED;
      is_ended = is_ended || before > 0;
      continue;
    }
    if (is_ended)
      return refuse (
        reading, column,
        g_strdup (_ ("a time stands after an empty cell or “*”: leave cells empty only "
                     "before the first time and after the last")),
        error);
    if (g_str_equal (text, "*") && row->limit == LB_DIVE_NO_LIMIT) {
      *minutes = before = LB_DIVE_ANY_LONGER;
      is_ended = TRUE;
      continue;
    }
    if (!read_minutes (reading, column, minutes, error))
      return FALSE;
    if (*minutes <= before || (row->limit != LB_DIVE_NO_LIMIT && *minutes > row->limit))
      return refuse (reading, column,
                     g_strdup_printf (_ ("%s min is not longer than the group before, or longer "
                                         "than the limit: compare it with the printed table"),
                                      text),
                     error);
    before = *minutes;
  }
  return TRUE;
}

static gboolean
read_row (const Reading *reading, GError **error)
{
  const gsize n_cells = lb_text_table_row_cells (reading->cells, reading->row);
  LbDiveRow row = { 0 };

  if (n_cells != reading->n_columns) {
    g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE,
                 _ ("Line %u has %u cells and the first line %u: give each line as many"),
                 (guint) lb_text_table_line (reading->cells, reading->row), (guint) n_cells,
                 (guint) reading->n_columns);
    return FALSE;
  }
  if (!read_depth (reading, &row, error) || !read_limit (reading, &row, error) ||
      !read_groups (reading, &row, error))
    return FALSE;

  reading->table->rows[reading->table->n_rows++] = row;
  return TRUE;
}

gboolean
lb_dive_table_from_csv (const char *text, gsize length, LbDiveTable *out, GError **error)
{
  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (out != NULL, FALSE);

  g_autoptr (GBytes) bytes = g_bytes_new_static (text, length);
  g_autoptr (LbTextTable) cells = lb_text_table_parse (bytes, NULL, error);

  if (cells == NULL)
    return FALSE;

  g_autofree LbDiveTable *table = g_new0 (LbDiveTable, 1);
  Reading reading = { .cells = cells, .table = table };
  const gsize n_rows = lb_text_table_get_shape (cells).n_rows;

  if (!read_heading (&reading, error))
    return FALSE;
  if (n_rows < 2 || n_rows - 1 > LB_DIVE_ROWS_MAX) {
    g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_LARGE,
                 _ ("The table has %u lines of depths: it must have 1 to %d"), (guint) n_rows - 1,
                 LB_DIVE_ROWS_MAX);
    return FALSE;
  }
  for (reading.row = 1; reading.row < n_rows; reading.row++)
    if (!read_row (&reading, error))
      return FALSE;

  *out = *table;
  return TRUE;
}
