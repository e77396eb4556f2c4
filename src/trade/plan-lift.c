/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What hangs on the hook of one cut, on its slings and on the crane, put together from the rules of
 * lift-load, breakout, sling, pick, grip, crane-here and critical-lift (docs/methods.md).
 *
 * There is one arithmetic of the weight, that of lift-load; masses are its loads less the rigging.
 * What is read off the weight (suction, slings, crane) takes each end of its range.
 *
 * Invariants:
 * 1. In each range low ≤ likely ≤ high, or all three are NAN.
 * 2. No memory is taken. */
#include "trade/plan-lift.h"

#include "trade/breakout.h"
#include "trade/lift-load.h"
#include "trade/pile-taper.h"
#include "trade/sling.h"
#include "trade/weight.h"

#include <math.h>

/* Standard gravity, exact by definition: NIST SP 811. */
#define GRAVITY 9.80665

static const LbRange not_known = { .likely = (double) NAN,
                                   .low = (double) NAN,
                                   .high = (double) NAN };

static LbRange
exactly (double value)
{
  return (LbRange){ .likely = value, .low = value, .high = value };
}

static LbRange
scaled (LbRange range, double factor)
{
  return (LbRange){
    .likely = range.likely * factor,
    .low = range.low * factor,
    .high = range.high * factor,
  };
}

/* A crew may set its ends the wrong way round. */
static LbRange
about (double likely, double low, double high)
{
  return (LbRange){ .likely = likely, .low = MIN (low, likely), .high = MAX (high, likely) };
}

/* From the head down to @end_m above datum. */
static LbLift
lift_of (const LbPile *pile, const double *value, double end_m, double length_m)
{
  const double absorbed = value[LB_ASSUME_ABSORBED];

  return (LbLift){
    .outline = pile->outline,
    .far_width_m = lb_pile_end_width (pile, end_m),
    .length_m = length_m,
    .concrete_kg_per_m3 = about (value[LB_ASSUME_CONCRETE_DENSITY], value[LB_ASSUME_CONCRETE_LIGHT],
                                 value[LB_ASSUME_CONCRETE_HEAVY]),
    .absorbed = absorbed > 0 ? about (absorbed, LB_ABSORBED_LOW, LB_ABSORBED_HIGH) : exactly (0),
    .growth_m = about (value[LB_ASSUME_GROWTH_THICKNESS], 0, value[LB_ASSUME_GROWTH_HIGH]),
    .growth_kg_per_m3 = value[LB_ASSUME_GROWTH_DENSITY],
    .water_kg_per_m3 = value[LB_ASSUME_WATER_DENSITY],
    /* At worst a hollow piece is plugged below and comes up full. */
    .trapped = { .low = 0, .likely = 0, .high = 1 },
    .rigging_kg = value[LB_ASSUME_RIGGING_MASS],
  };
}

/* The weight of the piece alone. */
static LbRange
mass_of (LbRange load_n, double rigging_kg)
{
  return (LbRange){
    .likely = load_n.likely / GRAVITY - rigging_kg,
    .low = load_n.low / GRAVITY - rigging_kg,
    .high = load_n.high / GRAVITY - rigging_kg,
  };
}

/* A shape that nobody has said is taken as square, the heaviest, and may be round, the lightest; a batter
 * makes it longer. */
static void
widen_loads (const LbPile *pile,
             const LbLift *lift,
             const LbRange *length_m,
             LbRange load_n[LB_N_LIFT_STAGES])
{
  LbLift light = *lift, heavy = *lift;
  LbRange light_n[LB_N_LIFT_STAGES], heavy_n[LB_N_LIFT_STAGES];

  if (!lb_pile_says (pile, LB_FACT_SHAPE))
    light.outline.shape = LB_SHAPE_ROUND;
  light.length_m = length_m->low;
  heavy.length_m = length_m->high;
  if (!lb_lift_load (&light, light_n, NULL) || !lb_lift_load (&heavy, heavy_n, NULL))
    return;
  for (int stage = 0; stage < LB_N_LIFT_STAGES; stage++) {
    load_n[stage].low = MIN (load_n[stage].low, light_n[stage].low);
    load_n[stage].high = MAX (load_n[stage].high, heavy_n[stage].high);
  }
}

static void
reckon_loads (const LbPile *pile, const LbAssumptions *assumptions, LbCutPlan *plan)
{
  const LbRange *length_m = &plan->figures[LB_FIGURE_TRUE_LENGTH].range;
  const LbLift lift = lift_of (pile, assumptions->value, lb_pile_cut_elevation (pile, assumptions),
                               length_m->likely);
  LbRange load_n[LB_N_LIFT_STAGES] = { not_known, not_known, not_known };
  LbFigure *figures = plan->figures;

  lb_lift_load (&lift, load_n, NULL);
  if (pile->unsaid != 0)
    widen_loads (pile, &lift, length_m, load_n);
  figures[LB_FIGURE_MASS_IN_WATER].range = mass_of (load_n[LB_LIFT_IN_WATER], lift.rigging_kg);
  figures[LB_FIGURE_MASS_IN_AIR].range = mass_of (load_n[LB_LIFT_IN_AIR], lift.rigging_kg);
  figures[LB_FIGURE_AWASH].range = load_n[LB_LIFT_AWASH];
  figures[LB_FIGURE_HOOK_LOAD].range = load_n[LB_LIFT_IN_AIR];
}

/* The suction on a light piece at its least, on a heavy one at its most. */
static void
reckon_suction (const double *value, LbCutPlan *plan)
{
  const LbRange weight_n = scaled (plan->figures[LB_FIGURE_MASS_IN_WATER].range, GRAVITY);
  const LbBed bed = value[LB_ASSUME_BED] > LB_ASSUME_BED_MUD ? LB_BED_SOFT_CLAY : LB_BED_MUD;
  LbRange likely = not_known, light = not_known, heavy = not_known;

  plan->lies_on_mud = value[LB_ASSUME_BED] > LB_ASSUME_BED_NONE;
  lb_breakout_suction (bed, weight_n.likely, &likely, NULL);
  lb_breakout_suction (bed, weight_n.low, &light, NULL);
  lb_breakout_suction (bed, weight_n.high, &heavy, NULL);
  plan->figures[LB_FIGURE_SUCTION].range = !plan->lies_on_mud ? not_known
                                                              : (LbRange){
                                                                  .likely = likely.likely,
                                                                  .low = light.low,
                                                                  .high = heavy.high,
                                                                };
}

static void
reckon_slings (const double *value, LbCutPlan *plan)
{
  const guint n_legs = (guint) value[LB_ASSUME_SLING_LEGS];
  const LbRange hook_n = plan->figures[LB_FIGURE_HOOK_LOAD].range;
  const double rating_n = value[LB_ASSUME_SLING_RATING] * GRAVITY *
                          lb_choker_share (value[LB_ASSUME_CHOKE_ANGLE]);
  double each = (double) NAN;

  /* Of a load of 1 N. */
  lb_sling_tension (1, n_legs, value[LB_ASSUME_SLING_ANGLE], &each, NULL);
  plan->figures[LB_FIGURE_SLING].range = scaled (hook_n, each);
  plan->figures[LB_FIGURE_SLING_SHARE].range = rating_n > 0 ? scaled (hook_n, each / rating_n)
                                                            : not_known;
}

/* Fewest equal lengths of a piece of that mass that the crane may lift, rigging on each. */
static double
count_lengths (const double *value, double mass_kg, double length_m, double capacity_n)
{
  LbLengths lengths;

  if (!lb_pick_lengths (mass_kg * GRAVITY / length_m, length_m,
                        value[LB_ASSUME_RIGGING_MASS] * GRAVITY, capacity_n, &lengths, NULL))
    return (double) NAN;
  return lengths.n;
}

/* The mass of a metre where a tapered piece is widest, beside that of the mean one: no length of it is
 * heavier than that. */
static double
heaviest_metre (const LbPile *pile, const LbAssumptions *assumptions, const LbCutPlan *plan)
{
  const double *value = assumptions->value;
  LbPiece even = {
    .outline = pile->outline,
    .length_m = plan->figures[LB_FIGURE_TRUE_LENGTH].range.likely,
    .concrete_kg_per_m3 = value[LB_ASSUME_CONCRETE_DENSITY] * (1 + value[LB_ASSUME_ABSORBED]),
    .growth_m = value[LB_ASSUME_GROWTH_THICKNESS],
    .growth_kg_per_m3 = value[LB_ASSUME_GROWTH_DENSITY],
  };

  if (!lb_pile_is_tapered (pile))
    return 1;
  even.outline.width_m = MAX (even.outline.width_m, plan->outline.width_m);
  return lb_piece_mass_in_air (&even) / plan->figures[LB_FIGURE_MASS_IN_AIR].range.likely;
}

/* What the crane may lift with the barge heeled by the heavy end of the load. */
static LbCraneHere
crane_on_barge (const LbCutBasis *basis, LbCutPlan *plan)
{
  const LbAssumptions *assumptions = basis->assumptions;
  const LbRange *hook_n = &plan->figures[LB_FIGURE_HOOK_LOAD].range;
  LbRange *list_rad = &plan->figures[LB_FIGURE_HEEL].range;
  LbBargeHeel light, likely;
  LbAssumptions heeled;

  lb_crane_heel (assumptions, hook_n->low, &light);
  lb_crane_heel (assumptions, hook_n->likely, &likely);
  plan->heel_from = lb_crane_heel (assumptions, hook_n->high, &plan->heel);
  *list_rad = not_known;
  if (plan->heel_from != LB_HEEL_OVER)
    *list_rad = (LbRange){
      .likely = likely.heel_rad,
      .low = light.heel_rad,
      .high = plan->heel.heel_rad,
    };
  if (plan->heel_from == LB_HEEL_OVER || plan->heel.is_over_heel)
    return (LbCraneHere){ .from = LB_CAPACITY_LIST_OVER, .capacity_n = (double) NAN };
  if (plan->heel_from != LB_HEEL_AFLOAT || isnan (list_rad->high))
    return basis->crane;
  heeled = *assumptions;
  heeled.value[LB_ASSUME_LIST] = list_rad->high;
  return lb_crane_here (&heeled, basis->chart);
}

static void
reckon_crane (const LbCutBasis *basis, double heaviest, LbCutPlan *plan)
{
  const double *value = basis->assumptions->value;
  LbFigure *figures = plan->figures;
  const LbRange *mass = &figures[LB_FIGURE_MASS_IN_AIR].range;
  const double length_m = figures[LB_FIGURE_TRUE_LENGTH].range.likely;
  LbRange lengths = not_known;

  plan->crane = crane_on_barge (basis, plan);

  const double capacity_n = plan->crane.capacity_n;

  figures[LB_FIGURE_CRANE_SHARE].range = scaled (figures[LB_FIGURE_HOOK_LOAD].range,
                                                 1 / capacity_n);
  if (capacity_n > 0)
    lengths = (LbRange){
      .likely = count_lengths (value, mass->likely * heaviest, length_m, capacity_n),
      .low = count_lengths (value, mass->low * heaviest, length_m, capacity_n),
      .high = count_lengths (value, mass->high * heaviest, length_m, capacity_n),
    };
  /* One that cannot be lifted in any number of lengths leaves none of the three. */
  figures[LB_FIGURE_LENGTHS].range = isnan (lengths.high) ? not_known : lengths;
}

/* Into how many lengths it goes is as little known as its weight; where no number of lengths is known,
 * the piece is picked up whole. */
static double
first_pick (const LbCutPlan *plan, double length_m, double n_lengths, double at_m[LB_PICKS_MAX])
{
  at_m[0] = (double) NAN;
  if (!isnan (plan->figures[LB_FIGURE_MASS_IN_AIR].range.likely))
    lb_pick_points (LB_PICK_PRINTED, plan->n_picks, length_m / (n_lengths > 1 ? n_lengths : 1),
                    at_m, NULL);
  return at_m[0];
}

static void
reckon_picks (const double *value, LbCutPlan *plan)
{
  const LbRange n = plan->figures[LB_FIGURE_LENGTHS].range;
  const LbRange length_m = plan->figures[LB_FIGURE_TRUE_LENGTH].range;
  double at_m[LB_PICKS_MAX];

  plan->n_picks = (guint) value[LB_ASSUME_PICKS];
  plan->n_lengths = n.likely > 1 ? (guint) n.likely : 1;
  plan->figures[LB_FIGURE_PICK].range = (LbRange){
    .likely = first_pick (plan, length_m.likely, n.likely, plan->pick_at_m),
    .low = first_pick (plan, length_m.low, n.high, at_m),
    .high = first_pick (plan, length_m.high, n.low, at_m),
  };
}

/* --- Drawn whole -------------------------------------------------------------------------- */

/* At first the ground holds and the water bears; clear of both it is the weight in air. */
static LbRange
heavier_of (LbRange first, LbRange clear)
{
  return (LbRange){
    .likely = MAX (first.likely, clear.likely),
    .low = MAX (first.low, clear.low),
    .high = MAX (first.high, clear.high),
  };
}

static gboolean
reckon_grip (const LbPile *pile, const LbGround *ground, LbWholePull *whole)
{
  /* The sides of an even taper are those of its middle. */
  const LbOutline middle = lb_pile_outline_at (pile, (pile->mudline_m + pile->toe_m) / 2);
  const LbRoot root = {
    .perimeter_m = lb_outline_perimeter (&middle),
    .depth_m = whole->depth_m,
    .lean_rad = lb_batter_angle (pile->batter),
    .layers = ground->layers,
    .n_layers = ground->n_layers,
    .sand_pull = LB_SAND_PULL_USUAL,
    .low_factor = LB_GRIP_LOW_FACTOR,
    .high_factor = LB_GRIP_HIGH_FACTOR,
  };
  LbGrip grip;

  whole->known_m = ground->n_layers > 0 ? ground->layers[ground->n_layers - 1].to_m : 0;
  if (!lb_grip_reckon (&root, &grip, NULL))
    return FALSE;
  whole->grip_n = grip.total_n;
  return TRUE;
}

/* Grip and weight err apart from each other, as the inputs of the weight do. */
static LbRange
sum_of (LbRange a, LbRange b)
{
  return (LbRange){
    .likely = a.likely + b.likely,
    .low = a.likely + b.likely - hypot (a.likely - a.low, b.likely - b.low),
    .high = a.likely + b.likely + hypot (a.high - a.likely, b.high - b.likely),
  };
}

static void
reckon_whole (const LbPile *pile, const LbCutBasis *basis, LbCutPlan *plan)
{
  const double *value = basis->assumptions->value;
  const double rise_m = pile->head_m - pile->toe_m;
  const double under_m = value[LB_ASSUME_WATER_LEVEL] - pile->toe_m;
  LbWholePull whole = { .depth_m = pile->mudline_m - pile->toe_m };
  LbRange clear_n;

  /* One that is partly burned through would break at the cut. */
  plan->is_to_be_drawn = pile->is_to_be_drawn;
  plan->may_come_whole = basis->ground != NULL && pile->is_to_be_drawn &&
                         lb_figure_missing (LB_FIGURE_WHOLE_PULL, pile) == NULL &&
                         !(plan->figures[LB_FIGURE_BARS_LEFT].range.likely < pile->n_bars);
  plan->figures[LB_FIGURE_WHOLE_PULL].range = not_known;
  whole.grip_n = whole.weight_n = not_known;
  if (plan->may_come_whole && rise_m > 0 && reckon_grip (pile, basis->ground, &whole)) {
    const LbLift lift = lift_of (pile, value, pile->toe_m,
                                 lb_batter_true_length (pile->batter, rise_m));

    if (lb_lift_load_at (&lift, CLAMP (under_m / rise_m, 0, 1), &whole.weight_n, NULL) &&
        lb_lift_load_at (&lift, 0, &clear_n, NULL))
      plan->figures[LB_FIGURE_WHOLE_PULL].range = heavier_of (sum_of (whole.grip_n, whole.weight_n),
                                                              clear_n);
  }
  plan->whole = whole;
}

static guint
count_triggers (LbCriticalSet set)
{
  guint n = 0;

  for (int i = 0; i < LB_N_CRITICAL_TRIGGERS; i++)
    n += lb_critical_set_has (set, (LbCriticalTrigger) i) ? 1 : 0;
  return n;
}

/* A battered pile swings plumb, as one may that nobody has said to be plumb; water runs out of a void. What counts is the heavy end of the load:
 * once in ten times it is as much. */
static void
reckon_critical (const LbPile *pile, const double *value, LbCutPlan *plan)
{
  const LbRange share = plan->figures[LB_FIGURE_CRANE_SHARE].range;
  LbLiftFacts facts = {
    .is_submerged = plan->figures[LB_FIGURE_CUT_DEPTH].range.likely > 0,
    .share = share.low,
    .n_cranes = (guint) value[LB_ASSUME_CRANES],
    .is_centre_changing = pile->batter > 0 || pile->outline.void_m > 0,
    .is_out_of_view = value[LB_ASSUME_OUT_OF_VIEW] > 0,
  };
  const guint n_light = count_triggers (lb_critical_lift (&facts));

  facts.share = share.high;
  facts.is_centre_changing |= !lb_pile_says (pile, LB_FACT_BATTER);
  plan->critical = lb_critical_lift (&facts);
  plan->figures[LB_FIGURE_CRITICAL].range = exactly (count_triggers (plan->critical));
  plan->figures[LB_FIGURE_CRITICAL].range.low = n_light;
}

void
lb_plan_lift_reckon (const LbPile *pile, const LbCutBasis *basis, LbCutPlan *plan)
{
  g_return_if_fail (pile && basis && plan);

  const double *value = basis->assumptions->value;

  reckon_loads (pile, basis->assumptions, plan);
  reckon_suction (value, plan);
  reckon_slings (value, plan);
  reckon_crane (basis, heaviest_metre (pile, basis->assumptions, plan), plan);
  reckon_picks (value, plan);
  reckon_whole (pile, basis, plan);
  reckon_critical (pile, value, plan);
}
