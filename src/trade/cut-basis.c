/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/cut-basis.h"

#include "trade/cylinder.h"
#include "trade/oxygen-state.h"

#include <math.h>

/* The usual bars of old bearing piles: common practice. */
#define USUAL_LEAST "#8"
#define USUAL_MOST  "#11"

LbCutBasis
lb_cut_basis (const LbAssumptions *assumptions)
{
  g_assert (assumptions);

  const double *value = assumptions->value;
  const LbCylinder cylinder = {
    .content_m3 = value[LB_ASSUME_CYLINDER_CONTENT],
    .full_pa = value[LB_ASSUME_CYLINDER_PRESSURE],
    .residual_pa = value[LB_ASSUME_CYLINDER_RESIDUAL],
  };
  const LbSteelPeriod *period = lb_steel_for_year ((int) value[LB_ASSUME_YEAR_BUILT]);
  LbCutBasis basis = {
    .assumptions = assumptions,
    .crane = lb_crane_here (assumptions, NULL),
    .cylinder_gas_m3 = (double) NAN,
    .yield_pa = period->grade->yield_pa,
    .yield_most_pa = period->grade->yield_pa,
    .yield_tag = period->tag,
    .least_bar = lb_bar_find (USUAL_LEAST),
    .most_bar = lb_bar_find (USUAL_MOST),
  };

  lb_cylinder_usable (&cylinder, LB_FREE_GAS_K, &basis.cylinder_gas_m3, NULL);
  if (value[LB_ASSUME_STEEL_YIELD] > 0) {
    basis.yield_pa = basis.yield_most_pa = value[LB_ASSUME_STEEL_YIELD];
    basis.yield_tag = lb_assumptions_tag (assumptions, LB_ASSUME_STEEL_YIELD);
  } else if (!(value[LB_ASSUME_YEAR_BUILT] > 0)) {
    basis.yield_most_pa = lb_steel_for_year (G_MAXINT)->grade->yield_pa;
  }
  return basis;
}

void
lb_cut_basis_take_bars (LbCutBasis *basis, const LbBar *least, const LbBar *most)
{
  g_return_if_fail (basis);
  g_return_if_fail ((least == NULL) == (most == NULL));

  if (least == NULL)
    return;
  basis->are_bars_own = most->area_m2 > least->area_m2;
  if (basis->are_bars_own || least->area_m2 < basis->least_bar->area_m2)
    basis->least_bar = least;
  if (basis->are_bars_own || most->area_m2 > basis->most_bar->area_m2)
    basis->most_bar = most;
}
