/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/burn-order.h"
#include "trade/cut-basis.h"
#include "trade/pile.h"

#include <glib.h>

G_BEGIN_DECLS

/**
 * lb_pile_hold_reckon:
 * @places: of the pile's bars, see lb_bar_ring_place()
 * @burned: bars gone
 * @n_burned_unplaced: bars gone of which only the count is known
 * @out_order: (out): untouched when this returns a reason
 *
 * The order in which one pile's bars are to be burned, by its own choice or by the figures, and what
 * those left carry after each (docs/methods.md, "Hold").
 *
 * Returns: (nullable): why nothing can be said, a msgid of a sentence; %NULL when it can
 */
const char *lb_pile_hold_reckon (const LbPile *pile,
                                 const LbPoint *places,
                                 LbBarSet burned,
                                 guint n_burned_unplaced,
                                 const LbCutBasis *basis,
                                 LbBurnOrder *out_order);

G_END_DECLS
