/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A table that is only read, of few enough rows to be held as text. */

typedef struct
{
  const char *title;
  gboolean is_number; /* to the right */
  int min_chars;
  gboolean is_wide; /* takes what width is left */
} LbPlainColumn;

/* The text of one cell, to be freed; rows and columns from 0. */
typedef char *(*LbPlainCellFunc) (guint row, guint column, gpointer data);

/* Replaces the columns of @view when they are others; the rows go with them. */
void lb_plain_table_set_columns (GtkColumnView *view,
                                 const LbPlainColumn *columns,
                                 guint n_columns);

/* Shows @n_rows rows; @cell is asked for all of them at once. Rows that say the same as before
 * stay, and with them the reader's place. */
void lb_plain_table_set_rows (GtkColumnView *view,
                              guint n_rows,
                              LbPlainCellFunc cell,
                              gpointer data);

/* Lets one row be picked, or none; to be called whenever the columns may have been replaced. */
void lb_plain_table_let_pick (GtkColumnView *view);

/* The picked row, or %GTK_INVALID_LIST_POSITION. */
guint lb_plain_table_get_picked (GtkColumnView *view);
void lb_plain_table_pick (GtkColumnView *view, guint row);

G_END_DECLS
