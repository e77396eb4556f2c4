/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/oxygen.h"

static void
check_bottom_pressure (LbTrial *trial)
{
  lb_trial_expect (trial, "pressure", lb_bottom_pressure (lb_trial_number (trial, "depth")));
}

static void
check_regulator (LbTrial *trial)
{
  lb_trial_expect (trial, "setting",
                   lb_regulator_setting (lb_trial_number (trial, "over bottom"),
                                         lb_trial_number (trial, "depth"),
                                         lb_trial_number (trial, "hose loss")));
}

static void
check_flow_scale (LbTrial *trial)
{
  lb_trial_expect (trial, "scale",
                   lb_oxygen_flow_scale (lb_trial_number (trial, "over bottom"),
                                         lb_trial_number (trial, "depth")));
}

static void
check_oxygen_mass (LbTrial *trial)
{
  lb_trial_expect (trial, "mass", lb_oxygen_mass (lb_trial_number (trial, "free gas")));
}

const LbCheck LB_CHECKS_GAS[] = {
  { "bottom pressure",
    check_bottom_pressure,
    { LB_GIVEN ("depth", "length"), LB_EXPECTED ("pressure", "pressure") } },
  { "regulator",
    check_regulator,
    { LB_GIVEN ("over bottom", "pressure"), LB_GIVEN ("depth", "length"),
      LB_GIVEN ("hose loss", "pressure"), LB_EXPECTED ("setting", "pressure") } },
  { "oxygen flow scale",
    check_flow_scale,
    { LB_GIVEN ("over bottom", "pressure"), LB_GIVEN ("depth", "length"),
      LB_EXPECTED ("scale", "number") } },
  { "oxygen mass",
    check_oxygen_mass,
    { LB_GIVEN ("free gas", "volume"), LB_EXPECTED ("mass", "mass") } },
  { NULL },
};
