/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A table that divers are sent down by is read whole or not at all. Each row is held against the one
 * before it: what a slip of the keyboard makes (a digit lost, a row out of order, metres for feet)
 * breaks the order in nearly every case and is refused with its place. */
#include "book/dive-table-text.h"

#include "book/book-error.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define FEET   "fsw"
#define METRES "msw"
#define LIMIT  "nostop"

#define FIRST_GROUP 2 /* the column */
/* No air dive without stops is this deep; 100 and more in a table of metres are feet. */
#define FSW_MOST     300.0
#define MSW_MOST     92.0
#define MINUTES_MOST 10000

/* What is being read and where. */
typedef struct
{
  LbDiveTable *table;
  guint n_columns; /* of the first line */
  guint line;
  char **cells; /* of the line, without blanks about them */
} Reading;

static const char *
unit_name (const LbDiveTable *table)
{
  return table->is_metric ? METRES : FEET;
}

/* Takes @said, what is wrong in the cell. */
static gboolean
refuse (const Reading *reading, guint column, char *said, GError **error)
{
  const char letter[] = { column < FIRST_GROUP ? '\0'
                                               : reading->table->groups[column - FIRST_GROUP],
                          '\0' };
  const char *heading = column == 0 ? unit_name (reading->table) : column == 1 ? LIMIT : letter;
  g_autofree char *reason = said;

  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, _ ("Line %u, column %u (%s): %s"),
               reading->line, column + 1, heading, reason);
  return FALSE;
}

static gboolean
refuse_heading (GError **error)
{
  g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                       _ ("The first line must be “fsw,nostop” or “msw,nostop”, and after it the "
                          "groups if there are any, a capital letter each and in order"));
  return FALSE;
}

static gboolean
read_heading (Reading *reading, GError **error)
{
  LbDiveTable *table = reading->table;

  reading->n_columns = g_strv_length (reading->cells);
  if (reading->n_columns < FIRST_GROUP || reading->n_columns > FIRST_GROUP + LB_DIVE_GROUPS_MAX ||
      g_ascii_strcasecmp (reading->cells[1], LIMIT) != 0)
    return refuse_heading (error);
  table->is_metric = g_ascii_strcasecmp (reading->cells[0], METRES) == 0;
  if (!table->is_metric && g_ascii_strcasecmp (reading->cells[0], FEET) != 0)
    return refuse_heading (error);

  for (guint column = FIRST_GROUP; column < reading->n_columns; column++) {
    const char *letter = reading->cells[column];
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
  const char *text = reading->cells[0];
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
read_minutes (const Reading *reading, guint column, guint16 *out, GError **error)
{
  const char *text = reading->cells[column];
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

  if (g_str_equal (reading->cells[1], "unlimited"))
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

  for (guint column = FIRST_GROUP; column < reading->n_columns; column++) {
    const char *text = reading->cells[column];
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
  const guint n_cells = g_strv_length (reading->cells);
  LbDiveRow row = { 0 };

  if (n_cells != reading->n_columns) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("Line %u has %u cells and the first line %u: give each line as many"),
                 reading->line, n_cells, reading->n_columns);
    return FALSE;
  }
  if (!read_depth (reading, &row, error) || !read_limit (reading, &row, error) ||
      !read_groups (reading, &row, error))
    return FALSE;

  reading->table->rows[reading->table->n_rows++] = row;
  return TRUE;
}

/* How many lines hold something; blanks about them are taken away. */
static guint
count_lines (char **lines)
{
  guint n = 0;

  for (; *lines != NULL; lines++)
    n += *g_strstrip (*lines) != '\0' ? 1 : 0;
  return n;
}

gboolean
lb_dive_table_from_text (const char *text, LbDiveTable *out, GError **error)
{
  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (out != NULL, FALSE);

  g_autofree LbDiveTable *table = g_new0 (LbDiveTable, 1);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  const guint n_lines = count_lines (lines);
  Reading reading = { .table = table };

  for (guint i = 0; lines[i] != NULL; i++) {
    if (*lines[i] == '\0')
      continue;

    g_auto (GStrv) cells = g_strsplit (lines[i], ",", -1);

    for (char **cell = cells; *cell != NULL; cell++)
      g_strstrip (*cell);
    reading.cells = cells;
    reading.line = i + 1;
    if (reading.n_columns > 0 ? !read_row (&reading, error) : !read_heading (&reading, error))
      return FALSE;
    if (n_lines < 2 || n_lines - 1 > LB_DIVE_ROWS_MAX) {
      g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                   _ ("The table has %u lines of depths: it must have 1 to %d"), n_lines - 1,
                   LB_DIVE_ROWS_MAX);
      return FALSE;
    }
  }
  if (n_lines == 0)
    return refuse_heading (error);

  *out = *table;
  return TRUE;
}
