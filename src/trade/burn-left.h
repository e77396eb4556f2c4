/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/cut-basis.h"
#include "trade/pile.h"

#include <glib.h>

G_BEGIN_DECLS

/* The burning that is left at many piles together: what it will take, with its P10, P50 and P90.
 * The chances of the piles even out, what is not known of the rates does not (docs/methods.md,
 * "Burning, learned"). Begin with LB_BURN_LEFT_INIT. */
typedef struct
{
  LbBurnSum sum;
  guint n_piles;    /* counted */
  guint n_unknown;  /* not counted: how many bars, or of which size, is not known */
  guint n_no_depth; /* counted, and taken to be as deep as the others */
  double steel_of_depth_m2, scaled_steel_m2; /* of piles whose depth is known */
} LbBurnLeft;

#define LB_BURN_LEFT_INIT   \
  {                         \
    .sum = LB_BURN_SUM_INIT \
  }

typedef struct
{
  LbBurn burn;
  LbRange oxygen_m3; /* free gas, at the depths of the cuts */
  LbRange cylinders; /* NAN when the numbers of a cylinder make no sense */
} LbBurnNeed;

/* @n_left: bars left of the pile; none adds nothing. @basis: with what the dives teach */
void lb_burn_left_add (LbBurnLeft *left, const LbPile *pile, guint n_left, const LbCutBasis *basis);

void lb_burn_left_predict (const LbBurnLeft *left, const LbCutBasis *basis, LbBurnNeed *out_need);

G_END_DECLS
