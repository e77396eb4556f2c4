/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/burn.h"
#include "trade/cut-plan.h"

#include <math.h>

#define FOOT  0.3048
#define INCH  0.0254
#define POUND 0.45359237
#define PSI   (POUND * 9.80665 / (INCH * INCH))
#define PCF   (POUND / (FOOT * FOOT * FOOT))

static void
check_burn (LbTrial *trial)
{
  const double rate = lb_trial_number (trial, "rate");
  const double waste = lb_trial_number (trial, "waste");
  const double restrike_s = lb_trial_number (trial, "restrike");
  const LbAssumptions assumptions = {
    .value = {
      [LB_ASSUME_BURN_RATE] = rate,
      [LB_ASSUME_BURN_RATE_LOW] = rate,
      [LB_ASSUME_BURN_RATE_HIGH] = rate,
      [LB_ASSUME_RESTRIKE] = restrike_s,
      [LB_ASSUME_RESTRIKE_LOW] = restrike_s,
      [LB_ASSUME_RESTRIKE_HIGH] = restrike_s,
      [LB_ASSUME_ROD_TIME] = lb_trial_number (trial, "rod"),
      [LB_ASSUME_ROD_WASTE] = waste,
      [LB_ASSUME_ROD_WASTE_LOW] = waste,
      [LB_ASSUME_ROD_WASTE_HIGH] = waste,
    },
  };
  LbBurn burn;

  lb_burn_reckon (&assumptions, lb_trial_number (trial, "steel"), lb_trial_count (trial, "bars"),
                  &burn);
  lb_trial_expect (trial, "trigger", burn.trigger_s.likely);
  lb_trial_expect (trial, "rods", burn.rods.likely);
  lb_trial_expect (trial, "at the pile", burn.wall_s.likely);
}

/* The pile and the numbers of docs/methods.md, "The worked pile"; set one by one, so that the
 * example stands whatever the defaults become. */
static void
reckon_worked_pile (LbCutPlan *out_plan)
{
  LbPile pile;
  LbAssumptions assumptions;
  double *value = assumptions.value;

  lb_pile_init (&pile);
  pile.outline = (LbOutline){ .shape = LB_SHAPE_OCTAGON, .width_m = 16 * INCH };
  pile.bar = lb_bar_find ("#8");
  pile.n_bars = 8;
  pile.batter = 1.0 / 6.0;
  pile.bearing_rad = G_PI / 4.0;
  pile.head_m = 10 * FOOT;
  pile.cut_m = -36 * FOOT;
  pile.mudline_m = -38 * FOOT;

  lb_assumptions_init (&assumptions);
  value[LB_ASSUME_WATER_LEVEL] = 2 * FOOT;
  value[LB_ASSUME_WATER_DENSITY] = 64 * PCF;
  value[LB_ASSUME_CONCRETE_DENSITY] = 155 * PCF;
  value[LB_ASSUME_CONCRETE_LIGHT] = 150 * PCF;
  value[LB_ASSUME_CONCRETE_HEAVY] = 160 * PCF;
  value[LB_ASSUME_GROWTH_THICKNESS] = 0;
  value[LB_ASSUME_BURN_RATE] = 25 / (INCH * INCH);
  value[LB_ASSUME_BURN_RATE_LOW] = 12.5 / (INCH * INCH);
  value[LB_ASSUME_BURN_RATE_HIGH] = 50 / (INCH * INCH);
  value[LB_ASSUME_RESTRIKE] = 75;
  value[LB_ASSUME_RESTRIKE_LOW] = 45;
  value[LB_ASSUME_RESTRIKE_HIGH] = 180;
  value[LB_ASSUME_ROD_TIME] = 50;
  value[LB_ASSUME_ROD_WASTE] = 0.15;
  value[LB_ASSUME_ROD_WASTE_LOW] = 0.10;
  value[LB_ASSUME_ROD_WASTE_HIGH] = 0.30;
  value[LB_ASSUME_OXYGEN_FLOW] = 24 * FOOT * FOOT * FOOT / 60;
  value[LB_ASSUME_CYLINDER_GAS] = 221.6 * FOOT * FOOT * FOOT;
  value[LB_ASSUME_OVER_BOTTOM] = 90 * PSI;
  value[LB_ASSUME_HOSE_LENGTH] = 200 * FOOT;
  value[LB_ASSUME_HOSE_LOSS] = 10 * PSI / (100 * FOOT);
  value[LB_ASSUME_DIVE_SETUP] = 10 * 60;
  value[LB_ASSUME_DIVE_LIMIT] = 120 * 60;
  value[LB_ASSUME_RIGGING_MASS] = 400 * POUND;
  value[LB_ASSUME_SLING_LEGS] = 2;
  value[LB_ASSUME_SLING_ANGLE] = G_PI / 3.0;

  lb_cut_plan_reckon (&pile, 0, 0, &assumptions, out_plan);
}

static void
check_worked_pile (LbTrial *trial)
{
  const char *key = lb_trial_text (trial, "figure");
  LbCutPlan plan;

  reckon_worked_pile (&plan);
  for (guint id = 0; id < LB_N_FIGURES; id++) {
    if (!g_str_equal (lb_figure_key ((LbFigureId) id), key))
      continue;
    lb_trial_expect (trial, "low", plan.figures[id].range.low);
    lb_trial_expect (trial, "likely", plan.figures[id].range.likely);
    lb_trial_expect (trial, "high", plan.figures[id].range.high);
    return;
  }
  lb_trial_fail (trial, "there is no figure “%s”", key);
}

const LbCheck LB_CHECKS_PLAN[] = {
  { "burn",
    check_burn,
    { LB_GIVEN ("rate", "burn rate"), LB_GIVEN ("steel", "area"), LB_GIVEN ("bars", "number"),
      LB_GIVEN ("rod", "time"), LB_GIVEN ("waste", "number"), LB_GIVEN ("restrike", "time"),
      LB_EXPECTED ("trigger", "time"), LB_EXPECTED ("rods", "number"),
      LB_EXPECTED ("at the pile", "time") } },
  { "worked pile",
    check_worked_pile,
    { LB_GIVEN ("figure", "text"), LB_EXPECTED ("low", "own"), LB_EXPECTED ("likely", "own"),
      LB_EXPECTED ("high", "own") } },
  { NULL },
};
