/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/burn-left.h"

#include "trade/cut-plan.h"
#include "trade/cylinder.h"
#include "trade/oxygen.h"

#include <math.h>

void
lb_burn_left_add (LbBurnLeft *left, const LbPile *pile, guint n_left, const LbCutBasis *basis)
{
  g_return_if_fail (left);
  g_return_if_fail (pile);
  g_return_if_fail (basis && basis->burn);

  if (pile->n_bars == 0 || (n_left > 0 && pile->bar == NULL)) {
    left->n_unknown++;
    return;
  }
  if (n_left == 0)
    return;

  const double steel_m2 = n_left * pile->bar->area_m2;
  const double depth_m = lb_pile_cut_depth (pile, basis->assumptions);
  const double over_bottom_pa = basis->assumptions->value[LB_ASSUME_OVER_BOTTOM];

  lb_burn_sum_add (&left->sum, basis->burn, pile->bar, steel_m2, n_left, basis->visibility);
  left->n_piles++;
  if (isnan (depth_m)) {
    left->n_no_depth++;
    return;
  }
  left->steel_of_depth_m2 += steel_m2;
  left->scaled_steel_m2 += steel_m2 * lb_oxygen_flow_scale (over_bottom_pa, depth_m);
}

static LbRange
scaled (const LbRange *range, double by)
{
  return (
    LbRange){ .likely = range->likely * by, .low = range->low * by, .high = range->high * by };
}

void
lb_burn_left_predict (const LbBurnLeft *left, const LbCutBasis *basis, LbBurnNeed *out_need)
{
  g_return_if_fail (left);
  g_return_if_fail (basis && basis->burn);
  g_return_if_fail (out_need);

  /* Where no depth is known at all, that of the surface: what is said of it stands beside it. */
  const double scale = left->steel_of_depth_m2 > 0 ? left->scaled_steel_m2 / left->steel_of_depth_m2
                                                   : 1;
  const double cylinder = basis->cylinder_gas_m3;
  LbRange at_surface;

  lb_burn_sum_predict (&left->sum, basis->burn, &out_need->burn, &at_surface);
  out_need->oxygen_m3 = scaled (&at_surface, scale);
  out_need->cylinders = (LbRange){
    .likely = lb_cylinders_needed (out_need->oxygen_m3.likely, cylinder, cylinder),
    .low = lb_cylinders_needed (out_need->oxygen_m3.low, cylinder, cylinder),
    .high = lb_cylinders_needed (out_need->oxygen_m3.high, cylinder, cylinder),
  };
}
