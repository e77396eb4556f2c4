/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One pile's cut, put together from the rules of the other files; no formula of its own but the
 * sums that join them (docs/methods.md).
 *
 * The figures are described by a table: names, quantity, which facts of the pile each needs and
 * which assumptions it rests on. Facts say what is missing, assumptions give the tag; reckoning
 * itself lets NAN run through.
 *
 * Invariants:
 * 1. A figure is NAN whenever lb_figure_missing() has something to say about it.
 * 2. In each range low ≤ likely ≤ high, or all three are NAN.
 * 3. No memory is taken and nothing outside the arguments is read.
 */
#include "trade/cut-plan.h"

#include "trade/bottom-time.h"
#include "trade/cylinder.h"
#include "trade/hose.h"
#include "trade/lead-drop.h"
#include "trade/msgid.h"
#include "trade/oxygen.h"
#include "trade/pick.h"
#include "trade/pile-bars.h"
#include "trade/pile-hold.h"
#include "trade/plan-cautions.h"
#include "trade/sling.h"
#include "trade/weight.h"

#include <math.h>
#include <string.h>

/* Standard gravity, exact by definition: NIST SP 811. */
#define GRAVITY 9.80665
/* A circle of a thousandth of an inch across, by definition. */
#define CIRCULAR_MIL (G_PI_4 * 1e-6 * 0.0254 * 0.0254)
/* A count may exceed a whole number by this and still be that number: rounding of units. */
#define WHOLE_SLACK 1e-9

/* Facts that a figure needs. */
typedef enum {
  NEED_HEAD = 1 << 0,
  NEED_CUT = 1 << 1, /* the pile's own, or its mudline */
  NEED_MUDLINE = 1 << 2,
  NEED_WIDTH = 1 << 3,
  NEED_N_BARS = 1 << 4,
  NEED_BAR = 1 << 5,
} Need;

/* Sets of assumptions, one bit each. */
typedef guint64 AssumptionSet;

#define BIT(name) (G_GUINT64_CONSTANT (1) << LB_ASSUME_##name)

#define ON_DEPTH BIT (WATER_LEVEL)
#define ON_BURN  (BIT (BURN_RATE) | BIT (BURN_RATE_LOW) | BIT (BURN_RATE_HIGH))
#define ON_RODS \
  (ON_BURN | BIT (ROD_TIME) | BIT (ROD_WASTE) | BIT (ROD_WASTE_LOW) | BIT (ROD_WASTE_HIGH))
#define ON_WALL (ON_RODS | BIT (RESTRIKE) | BIT (RESTRIKE_LOW) | BIT (RESTRIKE_HIGH))
#define ON_OXYGEN                                                                               \
  (ON_BURN | BIT (ROD_WASTE) | BIT (ROD_WASTE_LOW) | BIT (ROD_WASTE_HIGH) | BIT (OXYGEN_FLOW) | \
   BIT (OVER_BOTTOM) | ON_DEPTH)
#define ON_AIR                                                                                     \
  (BIT (CONCRETE_DENSITY) | BIT (CONCRETE_LIGHT) | BIT (CONCRETE_HEAVY) | BIT (GROWTH_THICKNESS) | \
   BIT (GROWTH_DENSITY))
#define ON_HOOK (ON_AIR | BIT (WATER_DENSITY) | BIT (RIGGING_MASS))

#define ON_HOLD                                                                       \
  (ON_DEPTH | BIT (WATER_DENSITY) | BIT (CONCRETE_DENSITY) | BIT (GROWTH_THICKNESS) | \
   BIT (GROWTH_DENSITY) | BIT (CURRENT) | BIT (YEAR_BUILT) | BIT (STEEL_YIELD) |      \
   BIT (HOLD_FACTOR) | BIT (CUT_GAP) | BIT (BARE_LENGTH))
#define ON_HOSE                                                                           \
  (ON_DEPTH | BIT (OVER_BOTTOM) | BIT (HOSE_LENGTH) | BIT (HOSE_BORE) | BIT (HOSE_LOSS) | \
   BIT (OXYGEN_FLOW))
#define ON_CYLINDER (BIT (CYLINDER_CONTENT) | BIT (CYLINDER_PRESSURE) | BIT (CYLINDER_RESIDUAL))

#define NEED_STEEL (NEED_N_BARS | NEED_BAR)
#define NEED_PIECE (NEED_HEAD | NEED_CUT | NEED_WIDTH)

typedef struct
{
  const char *key;
  const char *title; /* msgid */
  LbQuantity quantity;
  guint needs; /* Need */
  AssumptionSet rests_on;
} Row;

static const Row table[LB_N_FIGURES] = {
  [LB_FIGURE_TRUE_LENGTH] = { "true-length", N_ ("True length of the piece"), LB_QUANTITY_LENGTH,
                              NEED_HEAD | NEED_CUT, 0 },
  [LB_FIGURE_LEAN] = { "lean", N_ ("Lean from the vertical"), LB_QUANTITY_ANGLE, 0, 0 },
  [LB_FIGURE_HEAD_OFFSET] = { "head-offset", N_ ("Head out of plumb from the mudline"),
                              LB_QUANTITY_LENGTH, NEED_HEAD | NEED_MUDLINE, 0 },
  [LB_FIGURE_CUT_OFFSET] = { "cut-offset", N_ ("Cut from the head, in plan"), LB_QUANTITY_LENGTH,
                             NEED_HEAD | NEED_CUT, 0 },
  [LB_FIGURE_CUT_DEPTH] = { "cut-depth", N_ ("Depth at the cut"), LB_QUANTITY_LENGTH, NEED_CUT,
                            ON_DEPTH },
  [LB_FIGURE_PNEUMO] = { "pneumo", N_ ("Corrected pneumo depth"), LB_QUANTITY_LENGTH, NEED_CUT,
                         ON_DEPTH },
  [LB_FIGURE_BARS_LEFT] = { "bars-left", N_ ("Bars left"), LB_QUANTITY_COUNT, NEED_N_BARS, 0 },
  [LB_FIGURE_STEEL] = { "steel", N_ ("Steel left to burn"), LB_QUANTITY_STEEL_AREA, NEED_STEEL, 0 },
  [LB_FIGURE_RIG_BEFORE] = { "rig-before", N_ ("Rig before"), LB_QUANTITY_COUNT,
                             NEED_STEEL | NEED_PIECE, ON_HOLD },
  [LB_FIGURE_HOLD_STRESS] = { "hold-stress", N_ ("Greatest stress before that"), LB_QUANTITY_STRESS,
                              NEED_STEEL | NEED_PIECE, ON_HOLD },
  [LB_FIGURE_TRIGGER] = { "trigger", N_ ("Trigger time"), LB_QUANTITY_TIME, NEED_STEEL, ON_BURN },
  [LB_FIGURE_BURN] = { "burn", N_ ("Burning time at the pile"), LB_QUANTITY_TIME, NEED_STEEL,
                       ON_WALL },
  [LB_FIGURE_RODS] = { "rods", N_ ("Rods"), LB_QUANTITY_COUNT, NEED_STEEL, ON_RODS },
  [LB_FIGURE_OXYGEN] = { "oxygen", N_ ("Oxygen"), LB_QUANTITY_GAS, NEED_STEEL | NEED_CUT,
                         ON_OXYGEN },
  [LB_FIGURE_CYLINDERS] = { "cylinders", N_ ("Oxygen cylinders"), LB_QUANTITY_COUNT,
                            NEED_STEEL | NEED_CUT, ON_OXYGEN | ON_CYLINDER },
  [LB_FIGURE_REGULATOR] = { "regulator", N_ ("Regulator setting"), LB_QUANTITY_PRESSURE, NEED_CUT,
                            ON_HOSE },
  [LB_FIGURE_HOSE_LOSS] = { "hose-loss", N_ ("Lost in the hose"), LB_QUANTITY_PRESSURE, NEED_CUT,
                            ON_HOSE },
  [LB_FIGURE_LEAD_DROP] = { "lead-drop", N_ ("Voltage lost in the leads"), LB_QUANTITY_VOLTAGE, 0,
                            BIT (LEAD_CURRENT) | BIT (LEAD_LENGTH) | BIT (LEAD_SIZE) },
  [LB_FIGURE_NO_STOP] = { "no-stop", N_ ("No-stop limit"), LB_QUANTITY_TIME, NEED_CUT, ON_DEPTH },
  [LB_FIGURE_DIVES] = { "dives", N_ ("Dives to burn it through"), LB_QUANTITY_COUNT,
                        NEED_STEEL | NEED_CUT,
                        ON_WALL | ON_DEPTH | BIT (DIVE_SETUP) | BIT (DIVE_LIMIT) },
  [LB_FIGURE_MASS_IN_WATER] = { "mass-in-water", N_ ("Weight in water"), LB_QUANTITY_MASS,
                                NEED_PIECE, ON_AIR | BIT (WATER_DENSITY) },
  [LB_FIGURE_MASS_IN_AIR] = { "mass-in-air", N_ ("Weight in air"), LB_QUANTITY_MASS, NEED_PIECE,
                              ON_AIR | BIT (WATER_DENSITY) },
  [LB_FIGURE_HOOK_LOAD] = { "hook-load", N_ ("Hook load"), LB_QUANTITY_FORCE, NEED_PIECE, ON_HOOK },
  [LB_FIGURE_SLING] = { "sling", N_ ("Sling tension, one leg"), LB_QUANTITY_FORCE, NEED_PIECE,
                        ON_HOOK | BIT (SLING_LEGS) | BIT (SLING_ANGLE) },
  [LB_FIGURE_CRANE_SHARE] = { "crane-share", N_ ("Of the crane’s capacity"), LB_QUANTITY_SHARE,
                              NEED_PIECE, ON_HOOK | BIT (CRANE_CAPACITY) },
  [LB_FIGURE_LENGTHS] = { "lengths", N_ ("Lengths to lift it in"), LB_QUANTITY_COUNT, NEED_PIECE,
                          ON_HOOK | BIT (CRANE_CAPACITY) },
};

/* Plain figures, one value for all three. */
static LbRange
exactly (double value)
{
  return (LbRange){ .likely = value, .low = value, .high = value };
}

static double
whole_up (double value)
{
  return ceil (value - WHOLE_SLACK);
}

double
lb_pile_cut_elevation (const LbPile *pile, const LbAssumptions *assumptions)
{
  g_return_val_if_fail (pile, (double) NAN);
  g_return_val_if_fail (assumptions, (double) NAN);

  return isnan (pile->cut_m) ? pile->mudline_m + assumptions->value[LB_ASSUME_CUT_ABOVE_MUDLINE]
                             : pile->cut_m;
}

/* --- Tags --------------------------------------------------------------------------------- */

/* How weak a tag is: what the job's own people set counts as what is reckoned. */
static LbTag
weaker (LbTag a, LbTag b)
{
  static const int weakness[LB_N_TAGS] = {
    [LB_TAG_STANDARD] = 0,        [LB_TAG_COMPUTED] = 1, [LB_TAG_JOB] = 1,
    [LB_TAG_COMMON_PRACTICE] = 2, [LB_TAG_MEMORY] = 3,
  };

  return weakness[b] > weakness[a] ? b : a;
}

/* The assumptions that the job's own record has taken the place of. */
static AssumptionSet
learned_of (const LbCutPlan *plan)
{
  AssumptionSet learned = 0;

  if (!plan->burn_basis.is_default)
    learned |= ON_BURN;
  if (plan->has_learned_rods)
    learned |= ON_RODS & ~ON_BURN;
  if (plan->has_learned_restrike)
    learned |= ON_WALL & ~ON_RODS;
  if (plan->has_learned_oxygen)
    learned |= BIT (OXYGEN_FLOW);
  return learned;
}

static LbTag
tag_of (const Row *row, const LbPile *pile, const LbAssumptions *assumptions, AssumptionSet learned)
{
  /* Every figure is reckoned from the pile's facts, so none is better than computed. */
  LbTag tag = LB_TAG_COMPUTED;
  AssumptionSet rests_on = row->rests_on;

  if ((row->needs & NEED_CUT) && isnan (pile->cut_m))
    rests_on |= BIT (CUT_ABOVE_MUDLINE);
  /* What is multiplied by nothing is not rested on. */
  if (!(assumptions->value[LB_ASSUME_GROWTH_THICKNESS] > 0))
    rests_on &= ~BIT (GROWTH_DENSITY);
  if (row != &table[LB_FIGURE_MASS_IN_WATER] && !(pile->outline.void_m > 0))
    rests_on &= ~BIT (WATER_DENSITY);
  for (int id = 0; id < LB_N_ASSUMPTIONS; id++) {
    if ((rests_on >> id) & 1)
      tag = weaker (tag, (learned >> id) & 1
                           ? LB_TAG_JOB
                           : lb_assumptions_tag (assumptions, (LbAssumptionId) id));
  }
  return (row->needs & NEED_BAR) && pile->bar ? weaker (tag, pile->bar->tag) : tag;
}

/* --- Figures ------------------------------------------------------------------------------ */

static void
reckon_shape (const LbPile *pile, const LbAssumptions *assumptions, LbCutPlan *plan)
{
  const double cut_m = lb_pile_cut_elevation (pile, assumptions);
  const double rise_m = pile->head_m < cut_m ? (double) NAN : pile->head_m - cut_m;
  LbFigure *figures = plan->figures;

  figures[LB_FIGURE_TRUE_LENGTH].range = exactly (lb_batter_true_length (pile->batter, rise_m));
  figures[LB_FIGURE_LEAN].range = exactly (lb_batter_angle (pile->batter));
  figures[LB_FIGURE_HEAD_OFFSET].range = exactly (pile->batter * (pile->head_m - pile->mudline_m));
  figures[LB_FIGURE_CUT_OFFSET].range = exactly (pile->batter * rise_m);

  plan->is_battered = pile->batter > 0;
  plan->slag_side = lb_compass_nearest (pile->bearing_rad);
  plan->lead_side = lb_compass_nearest (pile->bearing_rad + G_PI);
}

static void
reckon_depth (const LbPile *pile, const LbCutBasis *basis, LbCutPlan *plan)
{
  const LbAssumptions *assumptions = basis->assumptions;
  const double *value = assumptions->value;
  const double under_m = value[LB_ASSUME_WATER_LEVEL] - lb_pile_cut_elevation (pile, assumptions);
  const double depth_m = under_m < 0 ? 0 : under_m;
  double pneumo_m = (double) NAN;
  LbNoStop no_stop = { .table_depth_m = (double) NAN, .limit_s = (double) NAN };
  LbFigure *figures = plan->figures;

  if (lb_pneumo_corrected (depth_m, &pneumo_m, NULL))
    lb_dive_table_limit (basis->table, pneumo_m, &no_stop, NULL);

  figures[LB_FIGURE_CUT_DEPTH].range = exactly (depth_m);
  figures[LB_FIGURE_PNEUMO].range = exactly (pneumo_m);
  figures[LB_FIGURE_NO_STOP].range = exactly (no_stop.limit_s);
  plan->table_depth_m = no_stop.table_depth_m;
  plan->is_own_table = basis->table != NULL;
}

/* Free gas that flows with the trigger down, at the cut. */
static double
oxygen_flow (const LbAssumptions *assumptions, double depth_m)
{
  const double *value = assumptions->value;

  return value[LB_ASSUME_OXYGEN_FLOW] *
         lb_oxygen_flow_scale (value[LB_ASSUME_OVER_BOTTOM], depth_m);
}

static void
reckon_supply (const LbAssumptions *assumptions, LbCutPlan *plan)
{
  const double *value = assumptions->value;
  const double depth_m = plan->figures[LB_FIGURE_CUT_DEPTH].range.likely;
  const LbHose hose = {
    .length_m = value[LB_ASSUME_HOSE_LENGTH],
    .bore_m = value[LB_ASSUME_HOSE_BORE],
    .flat_pa_per_m = value[LB_ASSUME_HOSE_LOSS] > 0 ? value[LB_ASSUME_HOSE_LOSS] : (double) NAN,
  };
  const LbLeadSize leads = { .name = "", .cmil = value[LB_ASSUME_LEAD_SIZE] / CIRCULAR_MIL };
  double loss_pa = (double) NAN;

  if (!isnan (depth_m))
    lb_hose_loss (&hose, oxygen_flow (assumptions, depth_m),
                  value[LB_ASSUME_OVER_BOTTOM] + lb_bottom_pressure (depth_m), &loss_pa, NULL);
  plan->figures[LB_FIGURE_HOSE_LOSS].range = exactly (loss_pa);
  plan->figures[LB_FIGURE_REGULATOR].range = exactly (
    isnan (loss_pa) ? loss_pa
                    : lb_regulator_setting (value[LB_ASSUME_OVER_BOTTOM], depth_m, loss_pa));
  plan->figures[LB_FIGURE_LEAD_DROP].range = exactly (
    lb_lead_drop (&leads, value[LB_ASSUME_LEAD_LENGTH], value[LB_ASSUME_LEAD_CURRENT]));
}

/* Greatest of as it stands and each step that needs no hook; NAN where that is a hinge. */
static double
stress_before_rigging (const LbBurnOrder *hold)
{
  const gsize n_free = hold->rig_before > 0 ? hold->rig_before - 1 : hold->n_steps;
  double peak_pa = hold->as_it_stands.peak_pa;

  for (gsize i = 0; i < n_free; i++)
    if (!hold->steps[i].is_hinge)
      peak_pa = MAX (peak_pa, hold->steps[i].slack.peak_pa);
  return peak_pa;
}

/* What the bars left carry, and the order it comes from; without it, high side first. */
static void
reckon_hold (const LbPile *pile,
             LbBarSet burned,
             guint n_burned_unplaced,
             const LbCutBasis *basis,
             LbCutPlan *plan)
{
  const LbBarSet left = lb_bar_set_all (pile->n_bars) & ~burned;
  LbFigure *figures = plan->figures;

  figures[LB_FIGURE_RIG_BEFORE].range = exactly ((double) NAN);
  figures[LB_FIGURE_HOLD_STRESS].range = exactly ((double) NAN);
  plan->yield_pa = basis->yield_pa;
  if (pile->n_bars == 0)
    return;

  plan->hold_missing = lb_pile_bars_place (pile, &pile->outline, plan->places);
  plan->n_order = lb_bar_ring_order (plan->places, pile->n_bars, left, plan->order);
  if (plan->hold_missing == NULL)
    plan->hold_missing = lb_pile_hold_reckon (pile, plan->places, burned, n_burned_unplaced, basis,
                                              &plan->hold);
  if (plan->hold_missing != NULL)
    return;

  plan->n_order = plan->hold.n_steps;
  for (gsize i = 0; i < plan->n_order; i++)
    plan->order[i] = plan->hold.steps[i].bar;
  figures[LB_FIGURE_RIG_BEFORE].range = exactly ((double) plan->hold.rig_before);
  figures[LB_FIGURE_HOLD_STRESS].range = exactly (stress_before_rigging (&plan->hold));
}

/* Which figures the job's own record stands behind. */
static void
note_learned (const LbPile *pile, const LbCutBasis *basis, LbCutPlan *plan)
{
  plan->burn_basis = (LbBurnBasis){ .is_default = TRUE };
  plan->visibility = basis->visibility;
  if (!basis->burn)
    return;
  lb_burn_model_basis (basis->burn, pile->bar, basis->visibility, &plan->burn_basis);
  plan->has_learned_rods = basis->burn->rods.n_shifts > 0;
  plan->has_learned_oxygen = basis->burn->oxygen.n_shifts > 0;
  plan->has_learned_restrike = basis->burn->restrike.n_shifts > 0;
}

static void
reckon_burn (const LbPile *pile, guint n_left, const LbCutBasis *basis, LbCutPlan *plan)
{
  const LbAssumptions *assumptions = basis->assumptions;
  const double *value = assumptions->value;
  LbFigure *figures = plan->figures;
  const gboolean is_done = pile->n_bars > 0 && n_left == 0;
  const double unknown = (double) NAN;
  const double area_m2 = pile->bar ? pile->bar->area_m2 : unknown;
  const double steel_m2 = pile->n_bars == 0 ? unknown : is_done ? 0 : n_left * area_m2;
  const double depth_m = figures[LB_FIGURE_CUT_DEPTH].range.likely;
  LbBurn burn;

  LbRange oxygen = exactly (unknown);

  if (isnan (steel_m2)) {
    burn = (LbBurn){ exactly (unknown), exactly (unknown), exactly (unknown) };
  } else if (basis->burn) {
    lb_burn_model_predict (basis->burn, pile->bar, steel_m2, n_left, basis->visibility, &burn,
                           &oxygen);
  } else {
    lb_burn_reckon (assumptions, steel_m2, n_left, &burn);
    oxygen = lb_burn_stated_oxygen (assumptions, &burn.trigger_s);
  }

  figures[LB_FIGURE_BARS_LEFT].range = exactly (pile->n_bars == 0 ? unknown : n_left);
  figures[LB_FIGURE_STEEL].range = exactly (steel_m2);
  figures[LB_FIGURE_TRIGGER].range = burn.trigger_s;
  figures[LB_FIGURE_BURN].range = burn.wall_s;
  figures[LB_FIGURE_RODS].range = burn.rods;

  const double scale = lb_oxygen_flow_scale (value[LB_ASSUME_OVER_BOTTOM], depth_m);
  oxygen = (LbRange){
    .likely = oxygen.likely * scale,
    .low = oxygen.low * scale,
    .high = oxygen.high * scale,
  };
  const double cylinder = basis->cylinder_gas_m3;

  figures[LB_FIGURE_OXYGEN].range = oxygen;
  figures[LB_FIGURE_CYLINDERS].range = (LbRange){
    .likely = lb_cylinders_needed (oxygen.likely, cylinder, cylinder),
    .low = lb_cylinders_needed (oxygen.low, cylinder, cylinder),
    .high = lb_cylinders_needed (oxygen.high, cylinder, cylinder),
  };
}

double
lb_cut_plan_burning_time (const LbCutPlan *plan, const LbAssumptions *assumptions)
{
  g_return_val_if_fail (plan, (double) NAN);
  g_return_val_if_fail (assumptions, (double) NAN);

  const double burning_s = lb_plan_longest_dive (plan, assumptions) -
                           assumptions->value[LB_ASSUME_DIVE_SETUP];

  if (plan->figures[LB_FIGURE_CUT_DEPTH].range.likely <= 0)
    return (double) INFINITY; /* the cut is dry */
  return burning_s > 0 ? burning_s : (double) NAN;
}

static void
reckon_dives (const LbAssumptions *assumptions, LbCutPlan *plan)
{
  const LbRange wall_s = plan->figures[LB_FIGURE_BURN].range;
  const double burning_s = lb_cut_plan_burning_time (plan, assumptions);

  if (isnan (wall_s.likely) || isnan (burning_s))
    plan->figures[LB_FIGURE_DIVES].range = exactly ((double) NAN);
  else if (isinf (burning_s))
    plan->figures[LB_FIGURE_DIVES].range = exactly (0);
  else
    plan->figures[LB_FIGURE_DIVES].range = (LbRange){
      .likely = whole_up (wall_s.likely / burning_s),
      .low = whole_up (wall_s.low / burning_s),
      .high = whole_up (wall_s.high / burning_s),
    };
}

static double
sling_tension (const LbAssumptions *assumptions, double load_n)
{
  double tension_n = (double) NAN;

  lb_sling_tension (load_n, (guint) assumptions->value[LB_ASSUME_SLING_LEGS],
                    assumptions->value[LB_ASSUME_SLING_ANGLE], &tension_n, NULL);
  return tension_n;
}

/* Fewest equal lengths of a piece of that mass that the crane may lift, rigging on each. */
static double
count_lengths (const LbAssumptions *assumptions, double mass_kg, double length_m)
{
  const double *value = assumptions->value;
  LbLengths lengths;

  if (!lb_pick_lengths (mass_kg * GRAVITY / length_m, length_m,
                        value[LB_ASSUME_RIGGING_MASS] * GRAVITY,
                        value[LB_ASSUME_CRANE_CAPACITY] * GRAVITY, &lengths, NULL))
    return (double) NAN;
  return lengths.n;
}

static void
reckon_crane (const LbAssumptions *assumptions, LbCutPlan *plan)
{
  const double capacity_n = assumptions->value[LB_ASSUME_CRANE_CAPACITY] * GRAVITY;
  LbFigure *figures = plan->figures;
  const LbRange *hook = &figures[LB_FIGURE_HOOK_LOAD].range;
  const LbRange *mass = &figures[LB_FIGURE_MASS_IN_AIR].range;
  const double length_m = figures[LB_FIGURE_TRUE_LENGTH].range.likely;
  LbRange lengths = exactly ((double) NAN);

  if (capacity_n > 0)
    lengths = (LbRange){
      .likely = count_lengths (assumptions, mass->likely, length_m),
      .low = count_lengths (assumptions, mass->low, length_m),
      .high = count_lengths (assumptions, mass->high, length_m),
    };
  /* One that cannot be lifted in any number of lengths leaves none of the three. */
  figures[LB_FIGURE_LENGTHS].range = isnan (lengths.high) ? exactly ((double) NAN) : lengths;
  figures[LB_FIGURE_CRANE_SHARE].range = capacity_n > 0 ? (LbRange){
    .likely = hook->likely / capacity_n,
    .low = hook->low / capacity_n,
    .high = hook->high / capacity_n,
  } : exactly ((double) NAN);
}

static void
reckon_lift (const LbPile *pile, const LbAssumptions *assumptions, LbCutPlan *plan)
{
  const double *value = assumptions->value;
  LbFigure *figures = plan->figures;
  const double length_m = figures[LB_FIGURE_TRUE_LENGTH].range.likely;
  const LbPiece likely = {
    .outline = pile->outline,
    .length_m = length_m,
    .concrete_kg_per_m3 = value[LB_ASSUME_CONCRETE_DENSITY],
    .water_kg_per_m3 = value[LB_ASSUME_WATER_DENSITY],
    .growth_m = value[LB_ASSUME_GROWTH_THICKNESS],
    .growth_kg_per_m3 = value[LB_ASSUME_GROWTH_DENSITY],
  };
  LbPiece light = likely, heavy = likely;

  light.concrete_kg_per_m3 = MIN (value[LB_ASSUME_CONCRETE_DENSITY],
                                  value[LB_ASSUME_CONCRETE_LIGHT]);
  heavy.concrete_kg_per_m3 = MAX (value[LB_ASSUME_CONCRETE_DENSITY],
                                  value[LB_ASSUME_CONCRETE_HEAVY]);

  /* At worst a hollow piece is plugged below and comes up full. */
  const double trapped_kg = G_PI_4 * pile->outline.void_m * pile->outline.void_m * length_m *
                            value[LB_ASSUME_WATER_DENSITY];
  const LbRange in_air = {
    .likely = lb_piece_mass_in_air (&likely),
    .low = lb_piece_mass_in_air (&light),
    .high = lb_piece_mass_in_air (&heavy) + trapped_kg,
  };
  const double rigging_kg = value[LB_ASSUME_RIGGING_MASS];
  const LbRange hook = {
    .likely = (in_air.likely + rigging_kg) * GRAVITY,
    .low = (in_air.low + rigging_kg) * GRAVITY,
    .high = (in_air.high + rigging_kg) * GRAVITY,
  };

  figures[LB_FIGURE_MASS_IN_WATER].range = (LbRange){
    .likely = lb_piece_mass_in_water (&likely),
    .low = lb_piece_mass_in_water (&light),
    .high = lb_piece_mass_in_water (&heavy),
  };
  figures[LB_FIGURE_MASS_IN_AIR].range = in_air;
  figures[LB_FIGURE_HOOK_LOAD].range = hook;
  figures[LB_FIGURE_SLING].range = (LbRange){
    .likely = sling_tension (assumptions, hook.likely),
    .low = sling_tension (assumptions, hook.low),
    .high = sling_tension (assumptions, hook.high),
  };
  reckon_crane (assumptions, plan);
}

void
lb_cut_plan_reckon (const LbPile *pile,
                    LbBarSet burned,
                    guint n_burned_unplaced,
                    const LbCutBasis *basis,
                    LbCutPlan *out_plan)
{
  g_return_if_fail (pile);
  g_return_if_fail (basis);
  g_return_if_fail (out_plan);
  g_return_if_fail (pile->n_bars <= LB_BARS_MAX);

  const LbAssumptions *assumptions = basis->assumptions;
  const guint n_placed = lb_bar_set_count (lb_bar_set_all (pile->n_bars) & ~burned);
  const guint n_left = n_placed - MIN (n_placed, n_burned_unplaced);

  memset (out_plan, 0, sizeof *out_plan);
  reckon_hold (pile, burned, n_burned_unplaced, basis, out_plan);
  reckon_shape (pile, assumptions, out_plan);
  reckon_depth (pile, basis, out_plan);
  reckon_supply (assumptions, out_plan);
  note_learned (pile, basis, out_plan);
  reckon_burn (pile, n_left, basis, out_plan);
  reckon_dives (assumptions, out_plan);
  reckon_lift (pile, assumptions, out_plan);
  const AssumptionSet learned = learned_of (out_plan);
  for (int id = 0; id < LB_N_FIGURES; id++)
    out_plan->figures[id].tag = tag_of (&table[id], pile, assumptions, learned);
  lb_plan_cautions_gather (pile, basis, out_plan);
}

/* --- Names -------------------------------------------------------------------------------- */

const char *
lb_figure_key (LbFigureId id)
{
  g_return_val_if_fail (id < LB_N_FIGURES, NULL);

  return table[id].key;
}

const char *
lb_figure_title (LbFigureId id)
{
  g_return_val_if_fail (id < LB_N_FIGURES, NULL);

  return table[id].title;
}

LbQuantity
lb_figure_quantity (LbFigureId id)
{
  g_return_val_if_fail (id < LB_N_FIGURES, LB_QUANTITY_COUNT);

  return table[id].quantity;
}

const char *
lb_figure_missing (LbFigureId id, const LbPile *pile)
{
  g_return_val_if_fail (id < LB_N_FIGURES, NULL);
  g_return_val_if_fail (pile, NULL);

  const guint needs = table[id].needs;

  if ((needs & NEED_HEAD) && isnan (pile->head_m))
    return N_ ("The head elevation is not known.");
  if ((needs & NEED_CUT) && isnan (pile->cut_m) && isnan (pile->mudline_m))
    return N_ ("Neither the cut elevation nor the mudline is known.");
  if ((needs & NEED_MUDLINE) && isnan (pile->mudline_m))
    return N_ ("The mudline is not known.");
  if ((needs & NEED_WIDTH) && !(pile->outline.width_m > 0))
    return N_ ("The width of the pile is not known.");
  if ((needs & NEED_WIDTH) && !lb_outline_is_known (&pile->outline))
    return N_ ("The void on record is as wide as the pile: correct one of them.");
  if ((needs & NEED_N_BARS) && pile->n_bars == 0)
    return N_ ("The number of bars is not known.");
  if ((needs & NEED_BAR) && !pile->bar)
    return N_ ("The bar size is not known.");
  return NULL;
}
