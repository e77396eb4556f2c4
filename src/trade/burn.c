/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/burn.h"

#include <math.h>

/* What a rod count may exceed a whole number by and still be that number: rounding of units. */
#define WHOLE_SLACK 1e-9

typedef struct
{
  double rate, restrike, waste;
} Pace;

static void
reckon_one (const LbAssumptions *assumptions,
            const Pace *pace,
            double steel_m2,
            guint n_bars,
            double *out_trigger_s,
            double *out_wall_s,
            double *out_rods)
{
  const double rod_s = assumptions->value[LB_ASSUME_ROD_TIME] * (1 - pace->waste);

  *out_trigger_s = pace->rate * steel_m2;
  *out_rods = ceil (*out_trigger_s / rod_s - WHOLE_SLACK);
  *out_wall_s = *out_trigger_s + pace->restrike * (n_bars + *out_rods);
}

void
lb_burn_reckon (const LbAssumptions *assumptions, double steel_m2, guint n_bars, LbBurn *out_burn)
{
  g_return_if_fail (assumptions);
  g_return_if_fail (out_burn);

  if (n_bars == 0) {
    *out_burn = (LbBurn){ 0 };
    return;
  }

  const double *value = assumptions->value;
  const Pace likely = { value[LB_ASSUME_BURN_RATE], value[LB_ASSUME_RESTRIKE],
                        value[LB_ASSUME_ROD_WASTE] };
  /* A crew may have set its own likely values and left the ends: these then give way. */
  const Pace low = { MIN (likely.rate, value[LB_ASSUME_BURN_RATE_LOW]),
                     MIN (likely.restrike, value[LB_ASSUME_RESTRIKE_LOW]),
                     MIN (likely.waste, value[LB_ASSUME_ROD_WASTE_LOW]) };
  const Pace high = { MAX (likely.rate, value[LB_ASSUME_BURN_RATE_HIGH]),
                      MAX (likely.restrike, value[LB_ASSUME_RESTRIKE_HIGH]),
                      MAX (likely.waste, value[LB_ASSUME_ROD_WASTE_HIGH]) };

  reckon_one (assumptions, &likely, steel_m2, n_bars, &out_burn->trigger_s.likely,
              &out_burn->wall_s.likely, &out_burn->rods.likely);
  reckon_one (assumptions, &low, steel_m2, n_bars, &out_burn->trigger_s.low, &out_burn->wall_s.low,
              &out_burn->rods.low);
  reckon_one (assumptions, &high, steel_m2, n_bars, &out_burn->trigger_s.high,
              &out_burn->wall_s.high, &out_burn->rods.high);
}

LbRange
lb_burn_stated_oxygen (const LbAssumptions *assumptions, const LbRange *trigger_s)
{
  g_return_val_if_fail (assumptions, (LbRange){ 0 });
  g_return_val_if_fail (trigger_s, (LbRange){ 0 });

  const double *value = assumptions->value;
  const double flow = value[LB_ASSUME_OXYGEN_FLOW];
  const double waste = value[LB_ASSUME_ROD_WASTE];

  return (LbRange){
    .likely = trigger_s->likely * flow / (1 - waste),
    .low = trigger_s->low * flow / (1 - MIN (waste, value[LB_ASSUME_ROD_WASTE_LOW])),
    .high = trigger_s->high * flow / (1 - MAX (waste, value[LB_ASSUME_ROD_WASTE_HIGH])),
  };
}
