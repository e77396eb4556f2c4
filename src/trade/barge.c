/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/barge.h"

#include "trade/crane.h"
#include "trade/trade-error.h"

#include <math.h>

/* Standard gravity, exact by definition (NIST SP 811). */
#define GRAVITY 9.80665
/* 46 CFR 173.005: heeling moment at or over 0.67 W GM F / B. */
#define RULE_FACTOR 0.67
/* No barge of this trade is larger, in m. */
#define SIZE_MOST 500.0

static gboolean
is_size (double value)
{
  return value > 0 && value <= SIZE_MOST;
}

static gboolean
refuse (const char *fault, GError **error)
{
  g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, fault);
  return FALSE;
}

static gboolean
check (const LbBarge *barge, double hook_n, double arm_m, GError **error)
{
  if (!is_size (barge->length_m) || !is_size (barge->beam_m) || !is_size (barge->draft_m))
    return refuse ("Length, beam and draft of the barge must be above 0 and at most 500 m", error);
  if (!is_size (barge->freeboard_m))
    return refuse ("The barge has no freeboard: no lift", error);
  if (!(barge->gravity_m >= 0 && barge->gravity_m <= SIZE_MOST))
    return refuse ("The centre of gravity of the barge is not known", error);
  if (!(barge->water_kg_per_m3 > 0 && isfinite (barge->water_kg_per_m3)))
    return refuse ("The density of the water is not above 0", error);
  if (!(hook_n >= 0 && isfinite (hook_n) && arm_m >= 0 && isfinite (arm_m)))
    return refuse ("The load on the hook or its arm is not a number of 0 or more", error);
  return TRUE;
}

gboolean
lb_barge_heel (const LbBarge *barge,
               double hook_n,
               double arm_m,
               LbBargeHeel *out_heel,
               GError **error)
{
  g_return_val_if_fail (barge && out_heel, FALSE);

  if (!check (barge, hook_n, arm_m, error))
    return FALSE;

  const double beam_m = barge->beam_m, draft_m = barge->draft_m;
  const double metacentric_m = draft_m / 2 + beam_m * beam_m / (12 * draft_m) - barge->gravity_m;

  if (!(metacentric_m > 0))
    return refuse ("By these sizes the barge would not float upright (GM is not above 0): no lift",
                   error);

  const double displacement_kg = barge->length_m * beam_m * draft_m * barge->water_kg_per_m3;
  const double righting_nm = displacement_kg * GRAVITY * metacentric_m;
  /* One edge of the deck dips, or the other of the bottom rises, by half the beam times the slope. */
  const double edge_m = MIN (barge->freeboard_m, draft_m);
  const double heel_most_rad = MIN (LB_CRANE_LIST_MOST, atan (2 * edge_m / beam_m));
  const double heel_rad = atan (hook_n * arm_m / righting_nm);
  const double rule_moment_nm = RULE_FACTOR * righting_nm * barge->freeboard_m / beam_m;

  *out_heel = (LbBargeHeel){
    .displacement_kg = displacement_kg,
    .metacentric_m = metacentric_m,
    .heel_rad = heel_rad,
    .heel_most_rad = heel_most_rad,
    .rule_moment_nm = rule_moment_nm,
    .is_over_heel = heel_rad > heel_most_rad,
    .is_under_rule = hook_n * arm_m >= rule_moment_nm,
  };
  return TRUE;
}
