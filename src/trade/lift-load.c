/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/lift-load.h"

#include "trade/trade-error.h"
#include "trade/weight.h"

#include <math.h>

/* Standard gravity, exact by definition (NIST SP 811). */
#define GRAVITY 9.80665

static const double submerged[LB_N_LIFT_STAGES] = {
  [LB_LIFT_IN_WATER] = 1,
  [LB_LIFT_AWASH] = 0.5,
  [LB_LIFT_IN_AIR] = 0,
};

/* One end of every range. */
typedef struct
{
  double concrete_kg_per_m3, absorbed, growth_m, trapped;
} Case;

static gboolean
refuse (LbTradeError code, const char *fault, GError **error)
{
  g_set_error_literal (error, LB_TRADE_ERROR, (int) code, fault);
  return FALSE;
}

static gboolean
is_known (const LbRange *range)
{
  return !isnan (range->low) && !isnan (range->likely) && !isnan (range->high);
}

static gboolean
rises (const LbRange *range, double least, double most)
{
  return range->low >= least && range->likely >= range->low && range->high >= range->likely &&
         range->high <= most;
}

static gboolean
check (const LbLift *lift, GError **error)
{
  const LbTradeError missing = LB_TRADE_ERROR_INCOMPLETE, wrong = LB_TRADE_ERROR_DOMAIN;

  if (!lb_outline_is_known (&lift->outline) || isnan (lift->length_m))
    return refuse (missing, "The section or the length of the piece is not known", error);
  if (!is_known (&lift->concrete_kg_per_m3) || !is_known (&lift->absorbed) ||
      !is_known (&lift->growth_m) || !is_known (&lift->trapped) || isnan (lift->growth_kg_per_m3) ||
      isnan (lift->water_kg_per_m3) || isnan (lift->rigging_kg))
    return refuse (missing, "A number the load rests on is not known", error);
  if (!(lift->length_m >= 0 && isfinite (lift->length_m)) || lift->water_kg_per_m3 < 0 ||
      lift->rigging_kg < 0)
    return refuse (wrong, "The length, the water or the rigging is not a number of 0 or more",
                   error);
  /* Heavier than iron ore is no concrete; growth thicker than 2 m is a slip of the keyboard. */
  if (!rises (&lift->concrete_kg_per_m3, lift->water_kg_per_m3, 5000))
    return refuse (wrong,
                   "The density of the concrete must rise from low to high, be more than that of "
                   "water and at most 5000 kg/m³",
                   error);
  if (!rises (&lift->growth_m, 0, 2) ||
      (lift->growth_m.high > 0 && lift->growth_kg_per_m3 < lift->water_kg_per_m3))
    return refuse (wrong,
                   "The growth must rise from low to high, from 0 to 2 m, and be no lighter than "
                   "water",
                   error);
  if (!rises (&lift->absorbed, 0, 0.2))
    return refuse (wrong, "The water absorbed must rise from low to high, from 0 to 20 %", error);
  if (!rises (&lift->trapped, 0, 1))
    return refuse (wrong, "The water trapped must rise from low to high, from 0 to all", error);
  return TRUE;
}

static double
load_of (const LbLift *lift, Case taken, double submerged_share)
{
  const LbPiece piece = {
    .outline = lift->outline,
    .far_width_m = lift->far_width_m,
    .length_m = lift->length_m,
    /* Water in the pores weighs, and the concrete takes no more room for it. */
    .concrete_kg_per_m3 = taken.concrete_kg_per_m3 * (1 + taken.absorbed),
    .water_kg_per_m3 = lift->water_kg_per_m3,
    .growth_m = taken.growth_m,
    .growth_kg_per_m3 = lift->growth_kg_per_m3,
  };
  const double void_m3 = G_PI / 4 * lift->outline.void_m * lift->outline.void_m * lift->length_m;
  /* Water in the part that is under weighs nothing there. */
  const double trapped_kg = taken.trapped * void_m3 * (1 - submerged_share) * lift->water_kg_per_m3;

  return (lb_piece_mass_standing (&piece, submerged_share) + trapped_kg + lift->rigging_kg) *
         GRAVITY;
}

gboolean
lb_lift_load (const LbLift *lift, LbRange out_load_n[LB_N_LIFT_STAGES], GError **error)
{
  g_return_val_if_fail (lift && out_load_n, FALSE);

  if (!check (lift, error))
    return FALSE;

  const Case low = { lift->concrete_kg_per_m3.low, lift->absorbed.low, lift->growth_m.low,
                     lift->trapped.low };
  const Case likely = { lift->concrete_kg_per_m3.likely, lift->absorbed.likely,
                        lift->growth_m.likely, lift->trapped.likely };
  const Case high = { lift->concrete_kg_per_m3.high, lift->absorbed.high, lift->growth_m.high,
                      lift->trapped.high };

  for (gsize i = 0; i < LB_N_LIFT_STAGES; i++)
    out_load_n[i] = (LbRange){
      .low = load_of (lift, low, submerged[i]),
      .likely = load_of (lift, likely, submerged[i]),
      .high = load_of (lift, high, submerged[i]),
    };
  return TRUE;
}
