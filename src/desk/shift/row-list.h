/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Makes the row at @index; floating. */
typedef GtkWidget *(*LbRowMake) (guint index, gpointer data);

/**
 * lb_row_list_show:
 * @shown: (inout): texts that tell apart the rows now in @list; replaced by @keys
 * @keys: (transfer full): the same of the rows to be, all that they show
 *
 * Makes only the rows that say something else, so that the others keep the reader's place. The
 * focus goes from a row that is gone to the one in its place.
 *
 * Returns: %FALSE when the focus was in a row and none is left to have it
 */
gboolean lb_row_list_show (GtkListBox *list,
                           GPtrArray **shown,
                           GPtrArray *keys,
                           LbRowMake make,
                           gpointer data);

G_END_DECLS
