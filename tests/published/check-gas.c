/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/cylinder.h"
#include "trade/hose.h"
#include "trade/lead-drop.h"
#include "trade/oxygen-state.h"
#include "trade/oxygen.h"

#include <math.h>

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

/* Tables print °F, which no factor turns into K. */
static double
kelvin (const LbTrial *trial)
{
  return (lb_trial_number (trial, "Fahrenheit") + 459.67) / 1.8;
}

static void
check_compressibility (LbTrial *trial)
{
  GError *error = NULL;
  double density = 1;
  const double pressure_pa = lb_trial_number (trial, "pressure") + LB_FREE_GAS_PA;
  const gboolean is_accepted = lb_oxygen_density (pressure_pa, kelvin (trial), &density, &error);

  lb_trial_expect_if (trial, "Z", is_accepted,
                      pressure_pa * LB_OXYGEN_KG_PER_MOLE /
                        (density * LB_OXYGEN_GAS_CONSTANT * kelvin (trial)),
                      error);
}

static void
check_free_ratio (LbTrial *trial)
{
  GError *error = NULL;
  double ratio = 0;
  const gboolean is_accepted = lb_oxygen_free_ratio (lb_trial_number (trial, "pressure"),
                                                     kelvin (trial), &ratio, &error);

  lb_trial_expect_if (trial, "ratio", is_accepted, ratio, error);
}

static void
check_cylinder_room (LbTrial *trial)
{
  GError *error = NULL;
  double room_m3 = 0;
  const LbCylinder cylinder = { .content_m3 = lb_trial_number (trial, "content"),
                                .full_pa = lb_trial_number (trial, "full"),
                                .residual_pa = 200 * 6894.757 };
  const gboolean is_accepted = lb_cylinder_water_volume (&cylinder, &room_m3, &error);

  lb_trial_expect_if (trial, "room", is_accepted, room_m3, error);
}

static void
check_cylinder_usable (LbTrial *trial)
{
  GError *error = NULL;
  double usable_m3 = 0;
  const LbCylinder cylinder = { .content_m3 = lb_trial_number (trial, "content"),
                                .full_pa = lb_trial_number (trial, "full"),
                                .residual_pa = lb_trial_number (trial, "residual") };
  const gboolean is_accepted = lb_cylinder_usable (&cylinder, kelvin (trial), &usable_m3, &error);

  lb_trial_expect_if (trial, "usable", is_accepted, usable_m3, error);
}

static void
check_cylinder_gauge (LbTrial *trial)
{
  GError *error = NULL;
  double gauge_pa = 0;
  const LbCylinder cylinder = { .full_pa = lb_trial_number (trial, "full") };
  const gboolean is_accepted = lb_cylinder_full_gauge (&cylinder, kelvin (trial), &gauge_pa,
                                                       &error);

  lb_trial_expect_if (trial, "gauge", is_accepted, gauge_pa, error);
}

/* The tables give the inlet: the outlet that leads back to it is sought between no loss and all of it. */
static void
check_hose_loss (LbTrial *trial)
{
  g_autoptr (GError) error = NULL;
  const double flow_m3_s = lb_trial_number (trial, "flow");
  const double inlet_pa = lb_trial_number (trial, "inlet");
  const LbHose hose = { .length_m = lb_trial_number (trial, "length"),
                        .bore_m = lb_trial_number (trial, "bore"),
                        .flat_pa_per_m = (double) NAN };
  double low_pa = 0, high_pa = inlet_pa, loss_pa = 0;

  for (int halving = 0; halving < 60; halving++) {
    const double outlet_pa = (low_pa + high_pa) / 2;

    if (!lb_hose_loss (&hose, flow_m3_s, outlet_pa, &loss_pa, NULL) ||
        outlet_pa + loss_pa < inlet_pa)
      low_pa = outlet_pa;
    else
      high_pa = outlet_pa;
  }

  const gboolean is_accepted = lb_hose_loss (&hose, flow_m3_s, high_pa, &loss_pa, NULL) &&
                               fabs (high_pa + loss_pa - inlet_pa) <= 1e-6 * inlet_pa;

  /* Just under the least outlet that could be driven the flow does not pass. */
  if (!is_accepted)
    lb_hose_loss (&hose, flow_m3_s, low_pa, &loss_pa, &error);
  lb_trial_expect_if (trial, "loss", is_accepted, inlet_pa - high_pa, g_steal_pointer (&error));
}

static void
check_lead_drop (LbTrial *trial)
{
  const LbLeadSize *size = lb_lead_size_find (lb_trial_text (trial, "size"));

  g_assert_nonnull (size);
  lb_trial_expect (
    trial, "drop",
    lb_lead_drop (size, lb_trial_number (trial, "circuit"), lb_trial_number (trial, "current")));
}

static void
check_lead_size (LbTrial *trial)
{
  const LbLeadSize *size = lb_lead_size_least (lb_trial_number (trial, "circuit"),
                                               lb_trial_number (trial, "current"));

  lb_trial_expect_text (trial, "size", size != NULL ? size->name : "none");
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
  { "oxygen compressibility",
    check_compressibility,
    { LB_GIVEN ("pressure", "pressure"), LB_GIVEN ("Fahrenheit", "number"),
      LB_EXPECTED ("Z", "number") } },
  { "oxygen free ratio",
    check_free_ratio,
    { LB_GIVEN ("pressure", "pressure"), LB_GIVEN ("Fahrenheit", "number"),
      LB_EXPECTED ("ratio", "number") } },
  { "cylinder room",
    check_cylinder_room,
    { LB_GIVEN ("content", "volume"), LB_GIVEN ("full", "pressure"),
      LB_EXPECTED ("room", "volume") } },
  { "cylinder usable",
    check_cylinder_usable,
    { LB_GIVEN ("content", "volume"), LB_GIVEN ("full", "pressure"),
      LB_GIVEN ("residual", "pressure"), LB_GIVEN ("Fahrenheit", "number"),
      LB_EXPECTED ("usable", "volume") } },
  { "cylinder gauge",
    check_cylinder_gauge,
    { LB_GIVEN ("full", "pressure"), LB_GIVEN ("Fahrenheit", "number"),
      LB_EXPECTED ("gauge", "pressure") } },
  { "hose loss",
    check_hose_loss,
    { LB_GIVEN ("bore", "length"), LB_GIVEN ("flow", "gas flow"), LB_GIVEN ("length", "length"),
      LB_GIVEN ("inlet", "pressure"), LB_EXPECTED ("loss", "pressure") } },
  { "lead drop",
    check_lead_drop,
    { LB_GIVEN ("size", "text"), LB_GIVEN ("current", "current"), LB_GIVEN ("circuit", "length"),
      LB_EXPECTED ("drop", "voltage") } },
  { "lead size",
    check_lead_size,
    { LB_GIVEN ("current", "current"), LB_GIVEN ("circuit", "length"),
      LB_EXPECTED ("size", "text") } },
  { NULL },
};
