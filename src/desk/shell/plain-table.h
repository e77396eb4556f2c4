/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct
{
  const char *title;
  gboolean is_number; /* to the right */
  int min_chars;
} LbPlainColumn;

/* The text of one cell, to be freed; rows and columns from 0. */
typedef char *(*LbPlainCellFunc) (guint row, guint column, gpointer data);

/**
 * lb_plain_table_show:
 * @view: its columns and model are replaced
 * @data: (transfer full): given to @cell, freed by @free_data with the last cell
 *
 * A table that is only read: cells are asked for as they come into view.
 */
void lb_plain_table_show (GtkColumnView *view,
                          const LbPlainColumn *columns,
                          guint n_columns,
                          guint n_rows,
                          LbPlainCellFunc cell,
                          gpointer data,
                          GDestroyNotify free_data);

G_END_DECLS
