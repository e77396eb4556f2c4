/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Tables of figures that come from outside, one line a case, written to be read beside their
 * source:
 *
 *     # A line that begins so is for people only.
 *     check: bar-size
 *     about: Deformed bars as printed
 *     source A615: ASTM A615/A615M-95c, table 1
 *
 *     | bar  | diameter =   | source |
 *     | text | in           | key    |
 *     | #3   | 0.375 ±0.001 | A615   |
 *
 * The first line of cells names the columns and the second their units; a name that ends in "="
 * is what is expected, the others are given. An expected number carries its tolerance, "±0.1" in
 * the column's unit or "±0.5%" of the figure; in its place may stand "refused" or "unlimited".
 * A column with the unit "own" has the unit in each cell ("9850 lb ±10"). The last column is
 * "source", a key that a source line declares.
 *
 * Reading is strict: whatever is not understood is an error that names the file and the line, so
 * that no case can be passed over in silence. */

#define LB_TABLE_FILE_ERROR       (lb_table_file_error_quark ())
#define LB_TABLE_FILE_COLUMNS_MAX 16

GQuark lb_table_file_error_quark (void);

typedef struct _LbTableFile LbTableFile;
typedef struct _LbTableRow LbTableRow;

/* A column that a check reads. */
typedef struct
{
  const char *name;
  const char *dimension; /* "text", "own", or one that a unit has: "length", "mass" … */
  gboolean is_expected;
} LbTableColumn;

/* One cell. Numbers are SI. */
typedef struct
{
  const char *text; /* as written */
  double value;     /* INFINITY for "unlimited" */
  double tolerance; /* half the width of what is accepted */
  gboolean is_refused;
  const char *unit;
  double unit_si; /* one of the unit, in SI */
} LbTableCell;

LbTableFile *lb_table_file_load (const char *path, GError **error);

/* @name stands in for the file's name in errors. */
LbTableFile *lb_table_file_parse (const char *name, const char *text, GError **error);

void lb_table_file_free (LbTableFile *table);

const char *lb_table_file_name (const LbTableFile *table);
const char *lb_table_file_check (const LbTableFile *table);
gsize lb_table_file_n_rows (const LbTableFile *table);
const LbTableRow *lb_table_file_row (const LbTableFile *table, gsize i);

/**
 * lb_table_file_has_columns:
 * @columns: those a check reads; the column "source" is understood
 *
 * Whether the table has just these columns, each of its dimension; a column that no check reads
 * would be a figure that nobody checks.
 */
gboolean lb_table_file_has_columns (const LbTableFile *table,
                                    const LbTableColumn *columns,
                                    gsize n_columns,
                                    GError **error);

/* "bars.tab:12" */
const char *lb_table_row_place (const LbTableRow *row);

/* The given cells in a few words, fit for a path of GLib's tests. */
char *lb_table_row_title (const LbTableRow *row);

/* The text of the row's source line. */
const char *lb_table_row_source (const LbTableRow *row);

/* The cell of a column; the program ends when there is none of that name. */
const LbTableCell *lb_table_row_cell (const LbTableRow *row, const char *column);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbTableFile, lb_table_file_free)

G_END_DECLS
