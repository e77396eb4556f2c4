/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/breakout.h"

#include "trade/trade-error.h"

#include <math.h>

/* Of the weight in water: common practice. The likely one lies in the middle of the common range;
 * soft clay shares the low end, its likely one is the high end of mud. */
static const LbRange shares[LB_N_BEDS] = {
  [LB_BED_MUD] = { .low = 0.25, .likely = 0.375, .high = 0.5 },
  [LB_BED_SOFT_CLAY] = { .low = 0.25, .likely = 0.5, .high = 1.0 },
};

/* NCEL R-635 (August 1969), abstract: factor, exponent, and the ratios of times it holds for. */
#define FACTOR      1.5
#define EXPONENT    (-0.07)
#define RATIO_LEAST 1e-3
#define RATIO_MOST  10.0
/* NCEL R-755, abstract: how closely a force of breakout can be told. */
#define DOUBT 0.5

static gboolean
refuse (const char *fault, GError **error)
{
  g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, fault);
  return FALSE;
}

static LbRange
times (LbRange range, double factor)
{
  return (LbRange){
    .low = range.low * factor,
    .likely = range.likely * factor,
    .high = range.high * factor,
  };
}

gboolean
lb_breakout_suction (LbBed bed, double submerged_n, LbRange *out_suction_n, GError **error)
{
  g_return_val_if_fail (bed < LB_N_BEDS && out_suction_n, FALSE);

  if (!(submerged_n >= 0 && isfinite (submerged_n)))
    return refuse ("The weight in water is not a number of 0 or more", error);
  *out_suction_n = times (shares[bed], submerged_n);
  return TRUE;
}

gboolean
lb_breakout_hold (double static_n,
                  double pull_s,
                  double embedded_s,
                  LbRange *out_hold_n,
                  GError **error)
{
  g_return_val_if_fail (out_hold_n, FALSE);

  if (!(static_n >= 0 && isfinite (static_n)))
    return refuse ("The hold of the ground is not a number of 0 or more", error);
  if (!(pull_s > 0 && embedded_s > 0))
    return refuse ("The time of the pull and the time in the ground must be more than 0", error);

  const double ratio = pull_s / embedded_s;

  if (!(ratio > RATIO_LEAST && ratio < RATIO_MOST))
    return refuse ("The pull takes less than 1/1000 or more than 10 times as long as the piece has "
                   "lain there: no test tells what it needs",
                   error);

  const LbRange doubt = { .low = 1 - DOUBT, .likely = 1, .high = 1 + DOUBT };

  *out_hold_n = times (doubt, static_n * FACTOR * pow (ratio, EXPONENT));
  return TRUE;
}
