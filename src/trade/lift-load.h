/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/outline.h"
#include "trade/range.h"

#include <glib.h>

G_BEGIN_DECLS

/* How far the piece is out of the water. */
typedef enum {
  LB_LIFT_IN_WATER, /* all of it under */
  LB_LIFT_AWASH,    /* half out */
  LB_LIFT_IN_AIR,   /* clear: the most the hook sees */
} LbLiftStage;

#define LB_N_LIFT_STAGES (LB_LIFT_IN_AIR + 1)

/* What hangs on the hook. Each input has its likely value, one that it falls short of once in ten
 * times and one that it passes once in ten times: P10 and P90. */
typedef struct
{
  LbOutline outline;
  double far_width_m; /* across the other end of a tapered piece; 0 for the same */
  double length_m;
  LbRange concrete_kg_per_m3; /* reinforced */
  LbRange absorbed; /* share of the concrete's weight, see %LB_ABSORBED_LOW; 0 where the density is
                     * of wet concrete */
  LbRange growth_m; /* thickness all round */
  double growth_kg_per_m3;
  double water_kg_per_m3;
  LbRange trapped; /* share of the void that stays full of water out of the water, 0 to 1 */
  double rigging_kg;
} LbLift;

/* What old concrete takes up where the density is of air-dry concrete: from memory. */
#define LB_ABSORBED_LOW  0.03
#define LB_ABSORBED_HIGH 0.05

/**
 * lb_lift_load:
 * @out_load_n: (out): N at the hook, rigging counted whole; by %LbLiftStage; untouched on failure
 *
 * Likely, P10 and P90. The inputs are taken to err apart from each other: what each adds or takes alone
 * at its own end is put together as the root of the sum of squares (JCGM 100:2008, 5.1.2), light and
 * heavy end apart. Without suction (trade/breakout), jerks, waves, and mud on the piece.
 *
 * Returns: %FALSE with %LB_TRADE_ERROR_INCOMPLETE when a number is not known (NAN), with
 *   %LB_TRADE_ERROR_DOMAIN when one makes no sense or a range does not rise
 */
gboolean lb_lift_load (const LbLift *lift, LbRange out_load_n[LB_N_LIFT_STAGES], GError **error);

/* The same with such a share of the length under water, 0 to 1. */
gboolean lb_lift_load_at (const LbLift *lift,
                          double submerged_share,
                          LbRange *out_load_n,
                          GError **error);

G_END_DECLS
