/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A table that divers are sent down by is read whole or not at all. Each row is held against the one
 * before it: what a slip of the keyboard makes (a digit lost, a row out of order, metres for feet)
 * breaks the order in nearly every case and is refused with its place. */
#include "book/dive-table-text.h"

#include "book/book-error.h"
#include "book/table-text.h"

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

static gboolean
refuse_heading (GError **error)
{
  g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                       _ ("The first line must be “fsw,nostop” or “msw,nostop”, and after it the "
                          "groups if there are any, a capital letter each and in order"));
  return FALSE;
}

static gboolean
read_heading (const LbTableLine *at, gpointer data, GError **error)
{
  LbDiveTable *table = data;

  if (at->n_columns < FIRST_GROUP || at->n_columns > FIRST_GROUP + LB_DIVE_GROUPS_MAX ||
      g_ascii_strcasecmp (at->cells[1], LIMIT) != 0)
    return refuse_heading (error);
  table->is_metric = g_ascii_strcasecmp (at->cells[0], METRES) == 0;
  if (!table->is_metric && g_ascii_strcasecmp (at->cells[0], FEET) != 0)
    return refuse_heading (error);

  for (guint column = FIRST_GROUP; column < at->n_columns; column++) {
    const char *letter = at->cells[column];
    const gsize group = column - FIRST_GROUP;

    if (!g_ascii_isupper (letter[0]) || letter[1] != '\0' ||
        (group > 0 && letter[0] <= table->groups[group - 1]))
      return refuse_heading (error);
    table->groups[group] = letter[0];
  }
  return TRUE;
}

static gboolean
read_depth (const LbTableLine *at, const LbDiveTable *table, LbDiveRow *row, GError **error)
{
  const char *text = at->cells[0];
  const double most = table->is_metric ? MSW_MOST : FSW_MOST;

  if (!lb_table_line_number (at, 0, &row->depth, error))
    return FALSE;
  if (!(row->depth > 0 && row->depth <= most))
    return lb_table_line_refuse (
      at, 0,
      g_strdup_printf (_ ("a depth of %s is outside 0 to %.0f: look whether the first line names "
                          "the right unit"),
                       text, most),
      error);
  if (table->n_rows > 0 && !(row->depth > table->rows[table->n_rows - 1].depth))
    return lb_table_line_refuse (
      at, 0,
      g_strdup_printf (_ ("a depth of %s does not come after the one on the line before: put the "
                          "rows from shallow to deep, each once"),
                       text),
      error);
  return TRUE;
}

/* Whole minutes, more than none. */
static gboolean
read_minutes (const LbTableLine *at, guint column, guint16 *out, GError **error)
{
  const char *text = at->cells[column];
  guint64 minutes;

  if (!g_ascii_string_to_unsigned (text, 10, 1, MINUTES_MOST, &minutes, NULL))
    return lb_table_line_refuse (
      at, column,
      g_strdup_printf (_ ("“%s” is no number of minutes: write a whole one from 1 to "
                          "%d"),
                       text, MINUTES_MOST),
      error);
  *out = (guint16) minutes;
  return TRUE;
}

static gboolean
read_limit (const LbTableLine *at, const LbDiveTable *table, LbDiveRow *row, GError **error)
{
  const guint16 before = table->n_rows > 0 ? table->rows[table->n_rows - 1].limit
                                           : LB_DIVE_NO_LIMIT;

  if (g_str_equal (at->cells[1], "unlimited"))
    row->limit = LB_DIVE_NO_LIMIT;
  else if (!read_minutes (at, 1, &row->limit, error))
    return FALSE;

  if (before != LB_DIVE_NO_LIMIT && (row->limit == LB_DIVE_NO_LIMIT || row->limit > before))
    return lb_table_line_refuse (
      at, 1,
      g_strdup (_ ("the limit is longer than that of the shallower line before: "
                   "compare both with the printed table")),
      error);
  return TRUE;
}

/* Nothing may stand after a gap or an end, and each time is longer than the one before. */
static gboolean
read_groups (const LbTableLine *at, LbDiveRow *row, GError **error)
{
  guint16 before = 0;
  gboolean is_ended = FALSE;

  for (guint column = FIRST_GROUP; column < at->n_columns; column++) {
    const char *text = at->cells[column];
    guint16 *minutes = &row->group[column - FIRST_GROUP];

    if (text[0] == '\0') {
      *minutes = LB_DIVE_NOT_PRINTED;
      is_ended = is_ended || before > 0;
      continue;
    }
    if (is_ended)
      return lb_table_line_refuse (
        at, column,
        g_strdup (_ ("a time stands after an empty cell or “*”: leave cells empty only "
                     "before the first time and after the last")),
        error);
    if (g_str_equal (text, "*") && row->limit == LB_DIVE_NO_LIMIT) {
      *minutes = before = LB_DIVE_ANY_LONGER;
      is_ended = TRUE;
      continue;
    }
    if (!read_minutes (at, column, minutes, error))
      return FALSE;
    if (*minutes <= before || (row->limit != LB_DIVE_NO_LIMIT && *minutes > row->limit))
      return lb_table_line_refuse (
        at, column,
        g_strdup_printf (_ ("%s min is not longer than the group before, or longer "
                            "than the limit: compare it with the printed table"),
                         text),
        error);
    before = *minutes;
  }
  return TRUE;
}

static gboolean
read_row (const LbTableLine *at, gpointer data, GError **error)
{
  LbDiveTable *table = data;
  LbDiveRow row = { 0 };

  if (!read_depth (at, table, &row, error) || !read_limit (at, table, &row, error) ||
      !read_groups (at, &row, error))
    return FALSE;

  table->rows[table->n_rows++] = row;
  return TRUE;
}

gboolean
lb_dive_table_from_text (const char *text, LbDiveTable *out, GError **error)
{
  static const LbTableForm form = {
    .rows_most = LB_DIVE_ROWS_MAX,
    .read_heading = read_heading,
    .read_row = read_row,
  };

  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (out != NULL, FALSE);

  g_autofree LbDiveTable *table = g_new0 (LbDiveTable, 1);

  if (!lb_table_text_read (text, &form, table, error))
    return FALSE;
  *out = *table;
  return TRUE;
}
