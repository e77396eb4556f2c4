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

/* What has a range. */
typedef enum {
  CONCRETE, /* kg/m3 */
  ABSORBED,
  GROWTH, /* m */
  TRAPPED,
  N_INPUTS,
} Input;

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

  if (!lb_outline_is_known (&lift->outline) || isnan (lift->far_width_m) || isnan (lift->length_m))
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
  if (!rises (&lift->growth_m, 0, 2) || lift->growth_kg_per_m3 < 0)
    return refuse (
      wrong, "The growth must rise from low to high, from 0 to 2 m, and weigh 0 or more", error);
  if (!rises (&lift->absorbed, 0, 0.2))
    return refuse (wrong, "The water absorbed must rise from low to high, from 0 to 20 %", error);
  if (!rises (&lift->trapped, 0, 1))
    return refuse (wrong, "The water trapped must rise from low to high, from 0 to all", error);
  return TRUE;
}

static double
load_of (const LbLift *lift, const double taken[N_INPUTS], double submerged_share)
{
  const LbPiece piece = {
    .outline = lift->outline,
    .far_width_m = lift->far_width_m,
    .length_m = lift->length_m,
    /* Water in the pores weighs, and the concrete takes no more room for it. */
    .concrete_kg_per_m3 = taken[CONCRETE] * (1 + taken[ABSORBED]),
    .water_kg_per_m3 = lift->water_kg_per_m3,
    .growth_m = taken[GROWTH],
    .growth_kg_per_m3 = lift->growth_kg_per_m3,
  };
  const double void_m3 = G_PI / 4 * lift->outline.void_m * lift->outline.void_m * lift->length_m;
  /* Water in the part that is under weighs nothing there. */
  const double trapped_kg = taken[TRAPPED] * void_m3 * (1 - submerged_share) *
                            lift->water_kg_per_m3;

  return (lb_piece_mass_standing (&piece, submerged_share) + trapped_kg + lift->rigging_kg) *
         GRAVITY;
}

static LbRange
range_of (const LbLift *lift, double submerged_share)
{
  const LbRange *const inputs[N_INPUTS] = {
    [CONCRETE] = &lift->concrete_kg_per_m3,
    [ABSORBED] = &lift->absorbed,
    [GROWTH] = &lift->growth_m,
    [TRAPPED] = &lift->trapped,
  };
  double taken[N_INPUTS];
  double lighter = 0, heavier = 0; /* squares */

  for (guint i = 0; i < N_INPUTS; i++)
    taken[i] = inputs[i]->likely;

  const double likely_n = load_of (lift, taken, submerged_share);

  for (guint i = 0; i < N_INPUTS; i++) {
    const double ends[] = { inputs[i]->low, inputs[i]->high };
    double least_n = 0, most_n = 0;

    for (guint end = 0; end < G_N_ELEMENTS (ends); end++) {
      if (!(fabs (ends[end] - inputs[i]->likely) > 0))
        continue;
      taken[i] = ends[end];

      const double more_n = load_of (lift, taken, submerged_share) - likely_n;

      least_n = MIN (least_n, more_n);
      most_n = MAX (most_n, more_n);
    }
    taken[i] = inputs[i]->likely;
    lighter += least_n * least_n;
    heavier += most_n * most_n;
  }
  return (LbRange){
    .likely = likely_n,
    .low = likely_n - sqrt (lighter),
    .high = likely_n + sqrt (heavier),
  };
}

gboolean
lb_lift_load_at (const LbLift *lift, double submerged_share, LbRange *out_load_n, GError **error)
{
  g_return_val_if_fail (lift && out_load_n, FALSE);
  g_return_val_if_fail (submerged_share >= 0 && submerged_share <= 1, FALSE);

  if (!check (lift, error))
    return FALSE;
  *out_load_n = range_of (lift, submerged_share);
  return TRUE;
}

gboolean
lb_lift_load (const LbLift *lift, LbRange out_load_n[LB_N_LIFT_STAGES], GError **error)
{
  g_return_val_if_fail (lift && out_load_n, FALSE);

  if (!check (lift, error))
    return FALSE;
  for (guint i = 0; i < LB_N_LIFT_STAGES; i++)
    out_load_n[i] = range_of (lift, submerged[i]);
  return TRUE;
}
