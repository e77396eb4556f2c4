/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/hold.h"

#include <glib.h>

G_BEGIN_DECLS

/* In which order to burn the bars left, and from which bar on the hook must hold the stub. No
 * published rule exists: orders are compared by what the bars left carry, and the supervisor
 * decides (docs/methods.md, "Order of burning"). */

typedef struct
{
  const LbCut *cut;
  LbBarSet left;    /* not yet burned */
  LbBarSet pinned;  /* to be kept to the end whatever the figures say: burned last, on the hook */
  LbStubLoad slack; /* without the hook */
  LbStubLoad held;  /* with the hook holding the share it will */
  double side_rad;  /* where to begin, all else being equal: clockwise from +y, π the high side */
} LbBurnCase;

/* One state of the bars. NAN for a hinge. */
typedef struct
{
  double peak_pa;
  double utilisation;
} LbBurnStress;

/* What is left when a bar is through. */
typedef struct
{
  guint8 bar;
  guint8 n_left;
  gboolean is_hinge;
  LbBurnStress slack, held;
} LbBurnStep;

typedef struct
{
  LbBurnStep steps[LB_BARS_MAX];
  gsize n_steps;
  gboolean stands; /* whether the bars hold without the hook before the first is burned */
  LbBurnStress as_it_stands;
  gsize rig_before;         /* the hook must hold before this step, from 1; 0 when there is none */
  LbBarSet hold;            /* bars burned from there on */
  double slack_utilisation; /* greatest before that, as it stands included; NAN when a hinge */
  double held_utilisation;  /* greatest from when the hook takes hold; hinges left out */
  guint n_jumps; /* bars burned with neither neighbour gone; the first and pinned ones apart */
  gboolean is_lower_bound; /* see LbHold */
} LbBurnOrder;

/**
 * lb_burn_order_best:
 * @order: (out): all bars left
 *
 * Of all orders in which the bars gone form one arc round the ring of those left, the one that
 * lets most be burned before the hook must hold; among them, in this order, the least peak
 * utilisation on the way, the fewest changes of side, and the beginning nearest to @side_rad. From
 * there it goes on with the hook holding by fewest hinges, then least peak. Pinned bars are passed
 * over and come last. The bars need not be numbered round the ring. Round is by the bearing from the
 * middle of the pile; of bars at one bearing the outer is met first on the way clockwise and last on
 * the way back, or throughout the other way about: the better of the two is taken.
 *
 * Cost: n² states of at most n bars; some microseconds for eight bars.
 *
 * Returns: how many bars @order holds; 0 when lb_cut_check() refuses or no bar is left
 */
gsize lb_burn_order_best (const LbBurnCase *burn, guint8 order[LB_BARS_MAX]);

/* From the bars nearest to @side_rad, left and right in turn, pinned bars last: the order of
 * lb_bar_ring_order() when that is the high side. */
gsize lb_burn_order_from_side (const LbBurnCase *burn, guint8 order[LB_BARS_MAX]);

/**
 * lb_burn_order_weigh:
 * @order: any order of all the bars left, as typed too
 * @out_order: (out): untouched on failure
 *
 * Returns: %FALSE with the error of lb_cut_check(), or with %LB_TRADE_ERROR_DOMAIN naming the bar
 *   (from 1) that is not left, comes twice or is left out
 */
gboolean lb_burn_order_weigh (const LbBurnCase *burn,
                              const guint8 *order,
                              gsize n,
                              LbBurnOrder *out_order,
                              GError **error);

G_END_DECLS
