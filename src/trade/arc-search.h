/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/hold.h"

#include <glib.h>

G_BEGIN_DECLS

/* The search under burn-order.h: which bar of a ring to take next, when those gone must always
 * form one arc. */

/* Bars in their order round the pile, clockwise; positions count from 0 to @n - 1 and wrap. */
typedef struct
{
  guint n;
  LbPoint places[2 * LB_BARS_MAX];       /* twice round: an arc, or what it leaves, is one run */
  LbBarSums before[2 * LB_BARS_MAX + 1]; /* of that many of @places */
  LbPoint kept[LB_BARS_MAX];             /* bars that hold throughout and are never taken */
  guint n_kept;
  LbBarSums all;            /* ring and kept */
  guint8 rank[LB_BARS_MAX]; /* by position: 0 for where it is best to begin */
} LbArcRing;

/* All but @rank, which is the caller's to set. */
void lb_arc_ring_init (LbArcRing *ring,
                       const LbPoint *places,
                       guint n,
                       const LbPoint *kept,
                       guint n_kept);

/* Bars gone: so many clockwise from @start. */
typedef struct
{
  guint start, n_gone;
  gboolean is_clockwise; /* whether the last of them went at the clockwise end */
} LbArc;

typedef struct
{
  LbBarSection section;
  LbHoldMeasure measure;
  LbStubLoad load;
  double limit; /* no step may leave the bars used beyond this; INFINITY lets a hinge pass too */
} LbArcRule;

/**
 * lb_arc_search:
 * @from: where to go on from; @n_gone 0 to begin anywhere
 * @positions: (out): the positions to take, in order
 *
 * Takes as many bars as @rule lets. Among such ways the one with fewest hinges, then the least
 * peak utilisation, then the fewest changes of end, then the best rank to begin at, then clockwise.
 *
 * Returns: the arc reached; its @n_gone less that of @from is the length of @positions
 */
LbArc lb_arc_search (const LbArcRing *ring,
                     const LbArcRule *rule,
                     LbArc from,
                     guint8 positions[LB_BARS_MAX]);

G_END_DECLS
