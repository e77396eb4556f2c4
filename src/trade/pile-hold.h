/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/burn-order.h"
#include "trade/cut-basis.h"
#include "trade/pile.h"

#include <glib.h>

G_BEGIN_DECLS

/**
 * lb_pile_hold_reckon:
 * @places: of the pile's bars, see lb_pile_bars_place()
 * @burned: bars burned or gone
 * @gone: those of them that were gone before anybody burned here
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
                                 LbBarSet gone,
                                 guint n_burned_unplaced,
                                 const LbCutBasis *basis,
                                 LbBurnOrder *out_order);

/* The same order as lb_pile_hold_reckon() found on another basis, weighed on @basis. %FALSE when nothing
 * can be said; @out_order is untouched then. */
gboolean lb_pile_hold_weigh (const LbPile *pile,
                             const LbPoint *places,
                             LbBarSet burned,
                             const guint8 *order,
                             gsize n,
                             const LbCutBasis *basis,
                             LbBurnOrder *out_order);

/* What each bar left carries of what it may bear: of yield or of its Euler load over the factor, the
 * greater. 1 is all of it. */
typedef struct
{
  LbBarSet left;
  gboolean is_held;          /* the hook holds the share it will */
  gboolean is_hinge;         /* nothing can be said in numbers; also when no bar is left */
  double share[LB_BARS_MAX]; /* NAN for a bar gone, and all of a hinge */
  double greatest;           /* of them; NAN for a hinge */
  guint8 governing;          /* the bar that has it; undefined for a hinge */
} LbBarShares;

/**
 * lb_pile_hold_shares:
 * @burned: bars gone before the first of @order
 * @order: as lb_pile_hold_reckon() gave it for the same arguments
 * @n_done: how many of its steps are burned; at most all. From the one on that the hook must hold
 *   before, it does.
 *
 * Returns: %FALSE when nothing can be said; @out_shares is untouched then
 */
gboolean lb_pile_hold_shares (const LbPile *pile,
                              const LbPoint *places,
                              LbBarSet burned,
                              const LbCutBasis *basis,
                              const LbBurnOrder *order,
                              gsize n_done,
                              LbBarShares *out_shares);

G_END_DECLS
