/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A table as a setting of the job holds it: UTF-8, lines parted by line feeds, cells by commas, the
 * first line says what stands in the columns. Empty lines and blanks about a cell don't count. */

/* Where the reading is. */
typedef struct
{
  char **heading; /* cells of the first line */
  guint n_columns;
  guint line;   /* from 1 */
  char **cells; /* of this line, as many as the first has */
} LbTableLine;

/* What stands in a table. Both refuse with lb_table_line_refuse() or a sentence of their own. */
typedef struct
{
  guint rows_most;
  gboolean (*read_heading) (const LbTableLine *at, gpointer data, GError **error);
  gboolean (*read_row) (const LbTableLine *at, gpointer data, GError **error);
} LbTableForm;

/**
 * lb_table_text_read:
 *
 * Hands each line to @form, until one is refused. Refuses itself a table without a row or with more
 * than it may have, and a line of fewer or more cells than the first.
 *
 * Returns: %FALSE with %LB_BOOK_ERROR_REFUSED
 */
gboolean lb_table_text_read (const char *text,
                             const LbTableForm *form,
                             gpointer data,
                             GError **error);

/* "Line 3, column 2 (nostop): …"; takes @said, what is wrong in that cell. Returns %FALSE. */
gboolean lb_table_line_refuse (const LbTableLine *at, guint column, char *said, GError **error);

/* The same, "Line 3: …", of what is no one cell's fault. */
gboolean lb_table_line_refuse_all (const LbTableLine *at, const char *said, GError **error);

/* A number of 0 or more in digits with a point; refuses anything else. */
gboolean lb_table_line_number (const LbTableLine *at, guint column, double *out, GError **error);

/* A unit that a heading may name, and what one of it is in SI; the last of a list has no word. */
typedef struct
{
  const char *word; /* lower case, without blanks */
  double si;
} LbTableUnit;

/* The unit of "Radius (ft)", "radius_ft" or "RADIUS ft" where @name is "radius"; %NULL when it is not
 * that column or names no unit of @units. */
const LbTableUnit *lb_table_heading_unit (const char *heading,
                                          const char *name,
                                          const LbTableUnit *units);

G_END_DECLS
