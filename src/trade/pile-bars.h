/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/pile.h"

#include <glib.h>

G_BEGIN_DECLS

/* The inset to draw and reckon with: the pile's own, or 3 in to the bar's centre (usual cover). */
double lb_pile_bar_inset (const LbPile *pile);

/**
 * lb_pile_bars_place:
 * @pile: with at least one bar
 * @outline: the section they stand in
 * @places: (out): where each bar stands, by its own number: +y is the way the pile leans (north for
 *   a plumb pile), +x to the right of it, seen from above
 *
 * The one way from a pile's facts to the places of its bars. When those on record cannot be taken,
 * @places are those of the usual ring.
 *
 * Returns: (nullable): why they cannot, a msgid of a sentence; %NULL when they can
 */
const char *lb_pile_bars_place (const LbPile *pile,
                                const LbOutline *outline,
                                LbPoint places[LB_BARS_MAX]);

/* What is wrong with where bars stand: the faults, and of which bars. */
typedef enum {
  LB_BARS_FIT,
  LB_BARS_OUT_OF_FACE,
  LB_BARS_IN_VOID,
  LB_BARS_TOO_CLOSE,
} LbBarsFit;

/**
 * lb_bars_fit:
 * @bar_m: their diameter
 * @out_bars: (out) (nullable): the bar it is about, and for %LB_BARS_TOO_CLOSE the other; numbers
 *   from 0; undefined for %LB_BARS_FIT
 *
 * The first fault there is. Bars may touch a face, the void and each other.
 */
LbBarsFit lb_bars_fit (const LbOutline *outline,
                       const LbPoint *places,
                       guint n_bars,
                       double bar_m,
                       guint out_bars[2]);

G_END_DECLS
