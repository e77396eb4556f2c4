/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/outline.h"

#include <glib.h>

G_BEGIN_DECLS

/* At most so many bars in a pile: one bit each in a 64-bit set that SQLite can keep. */
#define LB_BARS_MAX 60

/* A set of bars of one pile: bit i is bar i. */
typedef guint64 LbBarSet;

#define LB_BAR(i) (G_GUINT64_CONSTANT (1) << (i))

LbBarSet lb_bar_set_all (guint n_bars);
guint lb_bar_set_count (LbBarSet set);

/**
 * lb_bar_ring_place:
 * @inset_m: from the face to the centre of the bars
 * @n_bars: 1 to %LB_BARS_MAX
 * @places: (out): where each bar stands in the section seen from above: +y is the way the pile
 *   leans (north for a plumb pile), +x is to the right of it
 *
 * Bars are numbered clockwise seen from above, bar 0 being the first at or right of +y.
 * A square pile has them spread along the faces with one in each corner when @n_bars is a
 * multiple of four; otherwise, and in octagonal and round piles, they stand evenly on a ring,
 * octagons with eight bars having one behind each corner.
 */
void lb_bar_ring_place (const LbOutline *outline,
                        double inset_m,
                        guint n_bars,
                        LbPoint places[LB_BARS_MAX]);

/**
 * lb_bar_faces_place:
 * @outline: of a shape that has faces
 * @n_a_face: so many bars along each face, a corner's counted with the face that it begins
 *
 * Evenly along the faces, with one in each corner or none, numbered as above.
 */
void lb_bar_faces_place (const LbOutline *outline,
                         double inset_m,
                         guint n_a_face,
                         gboolean has_corners,
                         LbPoint places[LB_BARS_MAX]);

/**
 * lb_bar_ring_order:
 * @left: the bars not yet burned
 * @order: (out): the bars of @left in the order to burn them
 *
 * From the high side round to the lean, left and right in turn, so that the burner never works
 * under bars already gone and the last ones hold on the low side. No published rule exists; the
 * supervisor decides (docs/methods.md, "Order of burning").
 *
 * Returns: how many bars @order holds
 */
gsize lb_bar_ring_order (const LbPoint *places,
                         guint n_bars,
                         LbBarSet left,
                         guint8 order[LB_BARS_MAX]);

G_END_DECLS
