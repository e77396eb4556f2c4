/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/quantity.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Shows the first @most of @piles (element-type LbPile) as they will be stored: mark, place,
 * section, bars, batter and elevations, in @units. */
void lb_list_columns_show (GtkColumnView *view, GArray *piles, LbUnits units, guint most);

G_END_DECLS
