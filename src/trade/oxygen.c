/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/oxygen.h"

#include <math.h>

/* Exact factors: NIST SP 811, appendix B. */
#define FOOT 0.3048
#define PSI  (0.45359237 * 9.80665 / (0.0254 * 0.0254))

/* U.S. Navy Diving Manual, chapter 8: 0.445 psi for each foot of seawater. */
#define BOTTOM_PA_PER_M (0.445 * PSI / FOOT)
/* One atmosphere as the same manual rounds it. */
#define ATMOSPHERE (14.7 * PSI)
/* kg/m3 of oxygen at 70 °F and 1 atm, from its equation of state (Stewart, Jacobsen and Wagner,
 * J. Phys. Chem. Ref. Data, 1991). */
#define OXYGEN_DENSITY 1.3261
/* Of a psi: what conversion leaves over must not lift a setting by a whole one. */
#define PSI_SLACK 1e-6

double
lb_bottom_pressure (double depth_m)
{
  /* Above the water there is none. */
  return depth_m < 0 ? 0 : depth_m * BOTTOM_PA_PER_M;
}

double
lb_regulator_setting (double over_bottom_pa, double depth_m, double hose_loss_pa)
{
  const double exact = over_bottom_pa + lb_bottom_pressure (depth_m) + hose_loss_pa;

  return ceil (exact / PSI - PSI_SLACK) * PSI;
}

double
lb_oxygen_flow_scale (double over_bottom_pa, double depth_m)
{
  const double surface = ATMOSPHERE + over_bottom_pa;

  return (surface + lb_bottom_pressure (depth_m)) / surface;
}

double
lb_oxygen_mass (double free_gas_m3)
{
  return free_gas_m3 * OXYGEN_DENSITY;
}
