/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The rows that the pages of an SQLite file hold, read page by page from the bytes themselves:
 * whatever became of the first page, of the schema and of the tree above them. */

typedef enum {
  LB_CELL_NULL,
  LB_CELL_INTEGER,
  LB_CELL_REAL,
  LB_CELL_TEXT, /* bytes; whether they are UTF-8 is for the reader to see */
  LB_CELL_BLOB,
} LbCellKind;

typedef struct
{
  LbCellKind kind;
  gint64 integer;
  double real;
  const char *text; /* not ended by a NUL */
  gsize n_bytes;
} LbCell;

/* More columns than any table of a job file has. */
#define LB_LEAF_CELLS_MOST 24

/* Gets each row in the order of the pages; the cells are gone when it returns. */
typedef void (*LbLeafRowFunc) (gint64 rowid, const LbCell *cells, guint n_cells, gpointer data);

/**
 * lb_leaf_rows_page_size:
 *
 * The size of a page as the file's first bytes say it, @fallback where they cannot be believed.
 */
gsize lb_leaf_rows_page_size (const guint8 *file, gsize n, gsize fallback);

/**
 * lb_leaf_rows_scan:
 * @page_size: a power of two from 512 to 65536
 *
 * Believes nothing: any bytes will do. Each page and each overflow chain is looked at once a row,
 * and a row is no longer than %LB_LEAF_BYTES_MOST.
 *
 * Returns: how many cells of leaf pages could not be read as rows
 */
guint64 lb_leaf_rows_scan (const guint8 *file,
                           gsize n,
                           gsize page_size,
                           LbLeafRowFunc func,
                           gpointer data);

/* Longer than the longest row that can be recorded: a table of 100,000 characters. */
#define LB_LEAF_BYTES_MOST 500000

G_END_DECLS
