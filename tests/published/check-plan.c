/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/burn.h"
#include "trade/cut-plan.h"

#include <math.h>

static void
reckon (const LbPile *pile,
        LbBarSet burned,
        guint n_unplaced,
        const LbAssumptions *assumptions,
        const LbGround *ground,
        LbCutPlan *out_plan)
{
  LbCutBasis basis = lb_cut_basis (assumptions);

  basis.ground = ground;
  lb_cut_plan_reckon (pile, burned, 0, n_unplaced, &basis, out_plan);
}

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

/* The piles and the numbers of docs/methods.md, "The worked piles"; set one by one, so that the
 * examples stand whatever the defaults become. */
static LbAssumptions
worked_assumptions (void)
{
  return (LbAssumptions){
    .value = {
      [LB_ASSUME_WATER_LEVEL] = 2 * FOOT,
      [LB_ASSUME_WATER_DENSITY] = 64 * PCF,
      [LB_ASSUME_CONCRETE_DENSITY] = 155 * PCF,
      [LB_ASSUME_CONCRETE_LIGHT] = 150 * PCF,
      [LB_ASSUME_CONCRETE_HEAVY] = 160 * PCF,
      [LB_ASSUME_GROWTH_THICKNESS] = 0,
      [LB_ASSUME_GROWTH_DENSITY] = 85 * PCF,
      [LB_ASSUME_CUT_ABOVE_MUDLINE] = 2 * FOOT,
      [LB_ASSUME_BURN_RATE] = 25 / (INCH * INCH),
      [LB_ASSUME_BURN_RATE_LOW] = 12.5 / (INCH * INCH),
      [LB_ASSUME_BURN_RATE_HIGH] = 50 / (INCH * INCH),
      [LB_ASSUME_RESTRIKE] = 75,
      [LB_ASSUME_RESTRIKE_LOW] = 45,
      [LB_ASSUME_RESTRIKE_HIGH] = 180,
      [LB_ASSUME_ROD_TIME] = 50,
      [LB_ASSUME_ROD_WASTE] = 0.15,
      [LB_ASSUME_ROD_WASTE_LOW] = 0.10,
      [LB_ASSUME_ROD_WASTE_HIGH] = 0.30,
      [LB_ASSUME_OXYGEN_FLOW] = 24 * FOOT * FOOT * FOOT / 60,
      [LB_ASSUME_CYLINDER_CONTENT] = 244 * FOOT * FOOT * FOOT,
      [LB_ASSUME_CYLINDER_PRESSURE] = 2200 * PSI,
      [LB_ASSUME_CYLINDER_RESIDUAL] = 200 * PSI,
      [LB_ASSUME_OVER_BOTTOM] = 90 * PSI,
      [LB_ASSUME_HOSE_LENGTH] = 200 * FOOT,
      [LB_ASSUME_HOSE_BORE] = 0.375 * INCH,
      [LB_ASSUME_HOSE_LOSS] = 10 * PSI / (100 * FOOT),
      [LB_ASSUME_LEAD_CURRENT] = 150,
      [LB_ASSUME_LEAD_LENGTH] = 400 * FOOT,
      [LB_ASSUME_LEAD_SIZE] = 105600 * G_PI_4 * 1e-6 * INCH * INCH,
      [LB_ASSUME_HOLD_FACTOR] = 3,
      [LB_ASSUME_CUT_GAP] = 6 * INCH,
      [LB_ASSUME_BARE_LENGTH] = 1,
      [LB_ASSUME_HOOK_SHARE] = 0.5,
      [LB_ASSUME_DIVE_SETUP] = 10 * 60,
      [LB_ASSUME_DIVE_LIMIT] = 120 * 60,
      [LB_ASSUME_RIGGING_MASS] = 400 * POUND,
      [LB_ASSUME_CRANE_CAPACITY] = 20000 * POUND,
      [LB_ASSUME_PICKS] = 2,
      [LB_ASSUME_SLING_LEGS] = 2,
      [LB_ASSUME_SLING_ANGLE] = G_PI / 3.0,
      [LB_ASSUME_CRANES] = 1,
    },
  };
}

/* Octagonal, battered, in 38 ft of water, on mud, its slings choked at 100°, 20 ft of it in clay. */
static void
reckon_leaning_pile (LbCutPlan *out_plan)
{
  static const LbGround ground = {
    .n_layers = 1,
    .layers = { { .to_m = 25 * FOOT,
                  .soil = LB_SOIL_CLAY,
                  .strength_pa = 400 * POUND * 9.80665 / (FOOT * FOOT),
                  .buoyant_kg_per_m3 = 38 * PCF } },
  };
  LbAssumptions assumptions = worked_assumptions ();
  LbPile pile;

  assumptions.value[LB_ASSUME_BED] = LB_ASSUME_BED_MUD;
  assumptions.value[LB_ASSUME_SLING_RATING] = 10000 * POUND;
  assumptions.value[LB_ASSUME_CHOKE_ANGLE] = 100 * G_PI / 180;

  lb_pile_init (&pile);
  pile.unsaid = 0;
  pile.outline = (LbOutline){ .shape = LB_SHAPE_OCTAGON, .width_m = 16 * INCH };
  pile.bar = lb_bar_find ("#8");
  pile.n_bars = 8;
  pile.batter = 1.0 / 6.0;
  pile.bearing_rad = G_PI / 4.0;
  pile.head_m = 10 * FOOT;
  pile.cut_m = -36 * FOOT;
  pile.mudline_m = -38 * FOOT;
  pile.toe_m = -58 * FOOT;
  pile.is_to_be_drawn = TRUE;
  reckon (&pile, 0, 0, &assumptions, &ground, out_plan);
}

/* Square, plumb, hollow, grown over, in 80 ft of water: several dives, four legs, and the cut
 * taken from the mudline. Four of its twenty bars are gone, of which one is only counted. */
static void
reckon_hollow_pile (LbCutPlan *out_plan)
{
  LbAssumptions assumptions = worked_assumptions ();
  LbPile pile;

  assumptions.value[LB_ASSUME_WATER_LEVEL] = 0;
  assumptions.value[LB_ASSUME_GROWTH_THICKNESS] = 2 * INCH;
  assumptions.value[LB_ASSUME_SLING_LEGS] = 4;

  lb_pile_init (&pile);
  pile.unsaid = 0;
  pile.outline = (LbOutline){ .shape = LB_SHAPE_SQUARE, .width_m = 24 * INCH, .void_m = 12 * INCH };
  pile.bar = lb_bar_find ("#11");
  pile.n_bars = 20;
  pile.head_m = 8 * FOOT;
  pile.mudline_m = -82 * FOOT;
  reckon (&pile, LB_BAR (0) | LB_BAR (7) | LB_BAR (19), 1, &assumptions, NULL, out_plan);
}

static void
check_worked_pile (LbTrial *trial)
{
  const char *pile = lb_trial_text (trial, "pile");
  const char *key = lb_trial_text (trial, "figure");
  LbCutPlan plan;

  if (g_str_equal (pile, "leaning")) {
    reckon_leaning_pile (&plan);
  } else if (g_str_equal (pile, "hollow")) {
    reckon_hollow_pile (&plan);
  } else {
    lb_trial_fail (trial, "there is no worked pile “%s”", pile);
    return;
  }
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
  { "worked piles",
    check_worked_pile,
    { LB_GIVEN ("pile", "text"), LB_GIVEN ("figure", "text"), LB_EXPECTED ("low", "own"),
      LB_EXPECTED ("likely", "own"), LB_EXPECTED ("high", "own") } },
  { NULL },
};
