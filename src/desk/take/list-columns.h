/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "exchange/pile-list.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Sets the columns of a table of piles: mark, place, section, bars, batter and elevations as they
 * will be stored, in @units. The rows are GtkStringObject holding an index into @piles. */
void lb_list_columns_show (GtkColumnView *view, GArray *piles, LbUnits units, guint most);

G_END_DECLS
