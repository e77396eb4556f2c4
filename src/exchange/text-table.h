/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/* A delimited text (RFC 4180 and what is sold under that name): UTF-8 with or without BOM,
 * comma, semicolon or tab, quotes, line breaks in fields, CRLF, CR or LF. Parsed with libcsv.
 * Blanks around an unquoted cell are dropped; a text without any row is refused. */
#define LB_TEXT_TABLE_ROWS_MAX    100000
#define LB_TEXT_TABLE_COLUMNS_MAX 64
#define LB_TEXT_TABLE_BYTES_MAX   (64 * 1024 * 1024)

typedef struct
{
  char delimiter;
  gsize n_rows;    /* first row included, blank lines left out */
  gsize n_columns; /* of the widest row */
} LbTextTableShape;

typedef struct _LbTextTable LbTextTable;

LbTextTable *lb_text_table_load (GFile *file, GCancellable *cancellable, GError **error);
LbTextTable *lb_text_table_parse (GBytes *bytes, GCancellable *cancellable, GError **error);
void lb_text_table_free (LbTextTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbTextTable, lb_text_table_free)

LbTextTableShape lb_text_table_get_shape (const LbTextTable *table);
const char *lb_text_table_cell (const LbTextTable *table,
                                gsize row,
                                gsize column); /* "" past the end */
gsize lb_text_table_row_cells (const LbTextTable *table, gsize row);
gsize lb_text_table_line (const LbTextTable *table, gsize row); /* line in the file, from 1 */

G_END_DECLS
