/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/pile.h"

#include <glib.h>

G_BEGIN_DECLS

/* Bents and rows laid out on a grid, where there is no survey. Row letters skip none: A to Z,
 * then AA. The mark is row and bent: "C7". */
typedef struct
{
  guint n_bents, n_rows; /* 1 to 500 and 1 to 100 */
  double bent_spacing_m, row_spacing_m;
  double x_m, y_m;    /* place of the first pile, A1 */
  double bearing_rad; /* the way from bent 1 to bent 2, clockwise from north; the rows go to its
                       * right */
  guint first_bent;
} LbPileGrid;

/**
 * lb_pile_grid_lay:
 * @like: every other fact
 *
 * Returns: (element-type LbPile): with strings from @strings, or %NULL with
 *   LB_TRADE_ERROR_DOMAIN for a grid out of range
 */
GArray *lb_pile_grid_lay (const LbPileGrid *grid,
                          const LbPile *like,
                          GStringChunk *strings,
                          GError **error);

G_END_DECLS
