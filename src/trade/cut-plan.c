/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One pile's cut, put together from the rules of the other files; no formula of its own but the
 * sums that join them (docs/methods.md). What each figure is called and rests on stands in
 * figure-basis.c; reckoning itself lets NAN run through.
 *
 * Invariants:
 * 1. A figure is NAN whenever lb_figure_missing() has something to say about it.
 * 2. In each range low ≤ likely ≤ high, or all three are NAN.
 * 3. No memory is taken and nothing outside the arguments is read.
 */
#include "trade/cut-plan.h"

#include "trade/bottom-time.h"
#include "trade/cylinder.h"
#include "trade/figure-basis.h"
#include "trade/hose.h"
#include "trade/lead-drop.h"
#include "trade/oxygen.h"
#include "trade/pile-bars.h"
#include "trade/pile-hold.h"
#include "trade/pile-taper.h"
#include "trade/plan-cautions.h"
#include "trade/plan-lift.h"

#include <math.h>
#include <string.h>

/* A circle of a thousandth of an inch across, by definition. */
#define CIRCULAR_MIL (G_PI_4 * 1e-6 * 0.0254 * 0.0254)
/* A count may exceed a whole number by this and still be that number: rounding of units. */
#define WHOLE_SLACK 1e-9

/* Plain figures, one value for all three. */
static LbRange
exactly (double value)
{
  return (LbRange){ .likely = value, .low = value, .high = value };
}

static LbRange
scaled (LbRange range, double by)
{
  return (LbRange){ .likely = range.likely * by, .low = range.low * by, .high = range.high * by };
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

double
lb_pile_cut_depth (const LbPile *pile, const LbAssumptions *assumptions)
{
  g_return_val_if_fail (pile, (double) NAN);
  g_return_val_if_fail (assumptions, (double) NAN);

  const double under_m = assumptions->value[LB_ASSUME_WATER_LEVEL] -
                         lb_pile_cut_elevation (pile, assumptions);

  return under_m < 0 ? 0 : under_m;
}

/* --- Figures ------------------------------------------------------------------------------ */

static void
reckon_shape (const LbPile *pile, const LbAssumptions *assumptions, LbCutPlan *plan)
{
  const double cut_m = lb_pile_cut_elevation (pile, assumptions);
  const double rise_m = pile->head_m < cut_m ? (double) NAN : pile->head_m - cut_m;
  LbFigure *figures = plan->figures;

  const gboolean is_known = lb_pile_says (pile, LB_FACT_BATTER);
  const double batter = is_known ? pile->batter : (double) NAN;

  figures[LB_FIGURE_TRUE_LENGTH].range = exactly (lb_batter_true_length (pile->batter, rise_m));
  if (!is_known)
    figures[LB_FIGURE_TRUE_LENGTH].range.high = lb_batter_true_length (LB_BATTER_MOST, rise_m);
  figures[LB_FIGURE_LEAN].range = exactly (lb_batter_angle (batter));
  figures[LB_FIGURE_HEAD_OFFSET].range = exactly (batter * (pile->head_m - pile->mudline_m));
  figures[LB_FIGURE_CUT_OFFSET].range = exactly (batter * rise_m);

  plan->is_lean_known = is_known && lb_pile_says (pile, LB_FACT_BEARING);
  plan->is_battered = plan->is_lean_known && pile->batter > 0;
  plan->slag_side = lb_compass_nearest (pile->bearing_rad);
  plan->lead_side = lb_compass_nearest (pile->bearing_rad + G_PI);
}

static void
reckon_depth (const LbPile *pile, const LbCutBasis *basis, LbCutPlan *plan)
{
  const LbAssumptions *assumptions = basis->assumptions;
  const double depth_m = lb_pile_cut_depth (pile, assumptions);
  double pneumo_m = (double) NAN, helmet_pa = (double) NAN;
  LbNoStop no_stop = { .table_depth_m = (double) NAN, .limit_s = (double) NAN };
  LbFigure *figures = plan->figures;

  if (lb_pneumo_corrected (depth_m, &pneumo_m, NULL))
    lb_dive_table_limit (basis->table, pneumo_m, &no_stop, NULL);

  figures[LB_FIGURE_CUT_DEPTH].range = exactly (depth_m);
  figures[LB_FIGURE_PNEUMO].range = exactly (pneumo_m);
  figures[LB_FIGURE_NO_STOP].range = exactly (no_stop.limit_s);
  lb_helmet_supply_pressure (depth_m, &helmet_pa, NULL);
  figures[LB_FIGURE_HELMET].range = exactly (helmet_pa);
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

static gsize
count_before_hook (const LbBurnOrder *order)
{
  return order->rig_before > 0 ? order->rig_before - 1 : order->n_steps;
}

/* The order on record beside the one that would be taken if there were none. */
static void
weigh_choice (const LbPile *pile,
              LbBarSet burned,
              LbBarSet gone,
              const LbCutBasis *basis,
              LbCutPlan *plan)
{
  LbPile unbound = *pile;
  LbBurnOrder favoured;

  unbound.order = LB_ORDER_BEST;
  if (lb_pile_hold_reckon (&unbound, plan->places, burned, gone, 0, basis, &favoured) != NULL)
    return;

  const gsize n_favoured = count_before_hook (&favoured);
  const gsize n_chosen = count_before_hook (&plan->hold);
  plan->price = (LbOrderPrice){
    .is_known = TRUE,
    .fewer = n_favoured > n_chosen ? (guint) (n_favoured - n_chosen) : 0,
    .chosen = plan->hold.slack_utilisation,
    .favoured = favoured.slack_utilisation,
  };
}

/* Nobody knows of what steel the bars are: what is done goes by the weakest, and how late the hook could
 * come, were they the strongest that they may well be, is the other end. */
static void
widen_by_steel (const LbPile *pile, LbBarSet burned, const LbCutBasis *basis, LbCutPlan *plan)
{
  LbCutBasis strongest = *basis;
  LbRange *rig_before = &plan->figures[LB_FIGURE_RIG_BEFORE].range;
  LbRange *stress = &plan->figures[LB_FIGURE_HOLD_STRESS].range;
  LbBurnOrder hold;

  strongest.yield_pa = basis->yield_most_pa;
  if (!(basis->yield_most_pa > basis->yield_pa) ||
      !lb_pile_hold_weigh (pile, plan->places, burned, plan->order, plan->n_order, &strongest,
                           &hold))
    return;
  rig_before->high = MAX (rig_before->high, (double) hold.rig_before);
  stress->high = MAX (stress->high, stress_before_rigging (&hold));
}

/* What the bars left carry, and the order it comes from; without it, high side first. */
static void
reckon_hold (const LbPile *pile,
             LbBarSet burned,
             LbBarSet gone,
             guint n_burned_unplaced,
             const LbCutBasis *basis,
             LbCutPlan *plan)
{
  const LbBarSet left = lb_bar_set_all (pile->n_bars) & ~burned;
  LbFigure *figures = plan->figures;

  figures[LB_FIGURE_RIG_BEFORE].range = exactly ((double) NAN);
  figures[LB_FIGURE_HOLD_STRESS].range = exactly ((double) NAN);
  plan->yield_pa = basis->yield_pa;
  plan->yield_most_pa = basis->yield_most_pa;
  if (pile->n_bars == 0)
    return;

  plan->hold_missing = lb_pile_bars_place (pile, &plan->outline, plan->places);
  plan->n_order = lb_bar_ring_order (plan->places, pile->n_bars, left, plan->order);
  if (plan->hold_missing == NULL)
    plan->hold_missing = lb_pile_hold_reckon (pile, plan->places, burned, gone, n_burned_unplaced,
                                              basis, &plan->hold);
  if (plan->hold_missing != NULL)
    return;

  plan->n_order = plan->hold.n_steps;
  for (gsize i = 0; i < plan->n_order; i++)
    plan->order[i] = plan->hold.steps[i].bar;
  figures[LB_FIGURE_RIG_BEFORE].range = exactly ((double) plan->hold.rig_before);
  figures[LB_FIGURE_HOLD_STRESS].range = exactly (stress_before_rigging (&plan->hold));
  widen_by_steel (pile, burned, basis, plan);
  if (*pile->order != '\0')
    weigh_choice (pile, burned, gone, basis, plan);
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

/* What burning so much steel takes: of one size of bars, or of none where that is not known. */
static void
predict (const LbCutBasis *basis,
         const LbBar *bar,
         double steel_m2,
         guint n_left,
         LbBurn *out_burn,
         LbRange *out_oxygen_m3)
{
  const LbRange unknown = exactly ((double) NAN);

  if (isnan (steel_m2)) {
    *out_burn = (LbBurn){ unknown, unknown, unknown };
    *out_oxygen_m3 = unknown;
  } else if (basis->burn) {
    lb_burn_model_predict (basis->burn, bar, steel_m2, n_left, basis->visibility, out_burn,
                           out_oxygen_m3);
  } else {
    lb_burn_reckon (basis->assumptions, steel_m2, n_left, out_burn);
    *out_oxygen_m3 = lb_burn_stated_oxygen (basis->assumptions, &out_burn->trigger_s);
  }
}

static void
widen (LbRange *range, const LbRange *low, const LbRange *high)
{
  range->low = MIN (range->low, low->low);
  range->high = MAX (range->high, high->high);
}

/* Bars of a size that nobody has said: at the light end they are the least, at the heavy end the largest
 * that they may well be. */
static void
widen_by_bars (const LbCutBasis *basis,
               const LbRange *steel_m2,
               guint n_left,
               LbBurn *burn,
               LbRange *oxygen_m3)
{
  LbBurn least, most;
  LbRange least_m3, most_m3;

  predict (basis, basis->least_bar, steel_m2->low, n_left, &least, &least_m3);
  predict (basis, basis->most_bar, steel_m2->high, n_left, &most, &most_m3);
  widen (&burn->trigger_s, &least.trigger_s, &most.trigger_s);
  widen (&burn->wall_s, &least.wall_s, &most.wall_s);
  widen (&burn->rods, &least.rods, &most.rods);
  widen (oxygen_m3, &least_m3, &most_m3);
}

/* Of one bar; half way where only a span is known. */
static LbRange
bar_area (const LbBar *bar, const LbCutBasis *basis)
{
  if (bar != NULL)
    return exactly (bar->area_m2);
  return (LbRange){
    .likely = (basis->least_bar->area_m2 + basis->most_bar->area_m2) / 2,
    .low = basis->least_bar->area_m2,
    .high = basis->most_bar->area_m2,
  };
}

static void
reckon_burn (const LbPile *pile, guint n_left, const LbCutBasis *basis, LbCutPlan *plan)
{
  const double *value = basis->assumptions->value;
  LbFigure *figures = plan->figures;
  const double n_bars = pile->n_bars == 0 ? (double) NAN : n_left;
  const LbRange steel_m2 = scaled (bar_area (pile->bar, basis), n_bars);
  const double depth_m = figures[LB_FIGURE_CUT_DEPTH].range.likely;
  const double cylinder = basis->cylinder_gas_m3;
  LbBurn burn;
  LbRange oxygen;

  predict (basis, pile->bar, steel_m2.likely, n_left, &burn, &oxygen);
  if (pile->bar == NULL && n_left > 0)
    widen_by_bars (basis, &steel_m2, n_left, &burn, &oxygen);
  plan->least_bar = basis->least_bar;
  plan->most_bar = basis->most_bar;
  plan->are_bars_own = basis->are_bars_own;
  figures[LB_FIGURE_BARS_LEFT].range = exactly (n_bars);
  figures[LB_FIGURE_STEEL].range = steel_m2;
  figures[LB_FIGURE_TRIGGER].range = burn.trigger_s;
  figures[LB_FIGURE_BURN].range = burn.wall_s;
  figures[LB_FIGURE_RODS].range = burn.rods;

  oxygen = scaled (oxygen, lb_oxygen_flow_scale (value[LB_ASSUME_OVER_BOTTOM], depth_m));
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

void
lb_cut_plan_reckon (const LbPile *pile,
                    LbBarSet burned,
                    LbBarSet gone,
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
  out_plan->gone = gone & burned & lb_bar_set_all (pile->n_bars);
  out_plan->outline = lb_pile_outline_at (pile, lb_pile_cut_elevation (pile, assumptions));
  reckon_hold (pile, burned, gone, n_burned_unplaced, basis, out_plan);
  reckon_shape (pile, assumptions, out_plan);
  reckon_depth (pile, basis, out_plan);
  reckon_supply (assumptions, out_plan);
  note_learned (pile, basis, out_plan);
  reckon_burn (pile, n_left, basis, out_plan);
  reckon_dives (assumptions, out_plan);
  lb_plan_lift_reckon (pile, basis, out_plan);
  lb_figure_tags (pile, assumptions, out_plan);
  lb_plan_cautions_gather (pile, basis, out_plan);
}

gboolean
lb_cut_plan_tells (const LbCutPlan *plan, LbFigureId id)
{
  g_return_val_if_fail (plan, FALSE);

  return !(id == LB_FIGURE_SUCTION && !plan->lies_on_mud) &&
         !(id == LB_FIGURE_HEEL && plan->heel_from == LB_HEEL_NONE) &&
         !(id == LB_FIGURE_WHOLE_PULL && !plan->is_to_be_drawn);
}
