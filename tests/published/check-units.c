/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/quantity.h"

static const char *const QUANTITIES[LB_N_QUANTITIES] = {
  [LB_QUANTITY_COUNT] = "count",
  [LB_QUANTITY_LENGTH] = "length",
  [LB_QUANTITY_SIZE] = "size",
  [LB_QUANTITY_STEEL_AREA] = "steel area",
  [LB_QUANTITY_TIME] = "time",
  [LB_QUANTITY_SHORT_TIME] = "short time",
  [LB_QUANTITY_MASS] = "mass",
  [LB_QUANTITY_FORCE] = "force",
  [LB_QUANTITY_PRESSURE] = "pressure",
  [LB_QUANTITY_STRESS] = "stress",
  [LB_QUANTITY_GAS] = "gas",
  [LB_QUANTITY_GAS_FLOW] = "gas flow",
  [LB_QUANTITY_DENSITY] = "density",
  [LB_QUANTITY_ANGLE] = "angle",
  [LB_QUANTITY_SPEED] = "speed",
  [LB_QUANTITY_SHARE] = "share",
  [LB_QUANTITY_BURN_RATE] = "burn rate",
  [LB_QUANTITY_PRESSURE_PER_LENGTH] = "pressure per length",
  [LB_QUANTITY_RATIO] = "ratio",
  [LB_QUANTITY_CURRENT] = "current",
  [LB_QUANTITY_VOLTAGE] = "voltage",
  [LB_QUANTITY_CONDUCTOR] = "conductor",
};

static gboolean
find_quantity (const char *name, LbQuantity *out_quantity)
{
  for (guint i = 0; i < LB_N_QUANTITIES; i++)
    if (g_str_equal (QUANTITIES[i], name)) {
      *out_quantity = (LbQuantity) i;
      return TRUE;
    }
  return FALSE;
}

/* One of the unit in SI, by way of the program and back again. */
static void
check_unit (LbTrial *trial)
{
  const char *system = lb_trial_text (trial, "units");
  const LbUnits units = g_str_equal (system, "metric") ? LB_UNITS_METRIC : LB_UNITS_US;
  LbQuantity quantity;

  if (!find_quantity (lb_trial_text (trial, "quantity"), &quantity) ||
      (units == LB_UNITS_US && !g_str_equal (system, "US")))
  {
    lb_trial_fail (trial, "no such quantity or system of units");
    return;
  }
  const double si = lb_quantity_to_si (quantity, units, 1.0);

  lb_trial_expect_text (trial, "unit", lb_quantity_unit (quantity, units));
  lb_trial_expect (trial, "in SI", si);
  lb_trial_expect (trial, "and back", lb_quantity_from_si (quantity, units, si));
}

const LbCheck LB_CHECKS_UNITS[] = {
  { "unit",
    check_unit,
    { LB_GIVEN ("quantity", "text"), LB_GIVEN ("units", "text"), LB_EXPECTED ("unit", "text"),
      LB_EXPECTED ("in SI", "number"), LB_EXPECTED ("and back", "number") } },
  { NULL },
};
