/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The figures of a cut plan in words.
 *
 * A reason shows the numbers that the figure was really made of, in the reader's units, short
 * enough for two lines beside the figure: it is what lets a supervisor check the figure with a
 * pencil. It never says how far the figure can be trusted; that is the tag, which stands beside
 * it. Nothing is reckoned here but differences and quotients of what the plan already holds, so
 * that the words cannot drift from the figures. */
#include "draw/figure-why.h"
#include "draw/lift-words.h"
#include "draw/plan-words.h"
#include "draw/voice-text.h"
#include "trade/bottom-time.h"
#include "trade/lead-drop.h"
#include "trade/oxygen.h"
#include "trade/pile-taper.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static double
likely (const LbCutPlan *plan, LbFigureId id)
{
  return plan->figures[id].range.likely;
}

/* The bar by its number and when it comes. */
static char *
rig_before_text (const LbCutPlan *plan)
{
  const gsize place = plan->hold.rig_before;
  if (place == 0)
    return g_strdup (C_ ("rig before", "not needed"));
  g_autofree char *ordinal = lb_ordinal_text ((guint) place);
  /* Translators: number of a bar, and when it is burned: “bar 7, the 4th”. */
  return g_strdup_printf (_ ("bar %u, the %s"), plan->hold.steps[place - 1].bar + 1u, ordinal);
}

char *
lb_figure_text (const LbVoice *voice, const LbCutPlan *plan, LbFigureId id)
{
  const double value = likely (plan, id);
  if (id == LB_FIGURE_RIG_BEFORE && !isnan (value))
    return rig_before_text (plan);
  if (id == LB_FIGURE_CRITICAL)
    return lb_critical_text (plan);
  if (isinf (value))
    return g_strdup (C_ ("figure", "no limit"));
  return lb_voice_quantity (voice, lb_figure_quantity (id), value);
}

char *
lb_assumed_text (const LbVoice *voice, LbAssumptionId id, double si)
{
  const char *const word = lb_assumption_choice (id, si);
  return word != NULL ? g_strdup (g_dgettext (GETTEXT_PACKAGE, word))
                      : lb_voice_quantity (voice, lb_assumption (id)->quantity, si);
}

/* How late the hook could come if the steel, which nobody knows, were the strongest. */
static char *
rig_before_range_text (const LbRange *range)
{
  if (isnan (range->likely) || !(range->high > range->low))
    return NULL;
  g_autofree char *low = lb_ordinal_text ((guint) range->low);
  g_autofree char *high = lb_ordinal_text ((guint) range->high);
  /* Translators: a range of a figure, “18–37 min”. */
  return g_strdup_printf (C_ ("range", "%s–%s"), low, high);
}

char *
lb_figure_range_text (const LbVoice *voice, const LbCutPlan *plan, LbFigureId id)
{
  const LbQuantity quantity = lb_figure_quantity (id);
  const LbRange *const range = &plan->figures[id].range;
  if (id == LB_FIGURE_RIG_BEFORE)
    return rig_before_range_text (range);
  if (!isfinite (range->low) || !isfinite (range->high) || id == LB_FIGURE_CRITICAL)
    return NULL;
  g_autofree char *low = lb_voice_quantity_number (voice, quantity, range->low);
  g_autofree char *high = lb_voice_quantity_number (voice, quantity, range->high);
  if (g_str_equal (low, high))
    return NULL;
  g_autofree char *high_with_unit = lb_voice_quantity (voice, quantity, range->high);
  /* Translators: a range of a figure, “18–37 min”. */
  return g_strdup_printf (C_ ("range", "%s–%s"), low, high_with_unit);
}

char *
lb_why_say (const LbWhy *why, LbQuantity quantity, double si)
{
  return lb_voice_quantity (why->voice, quantity, si);
}

char *
lb_why_say_assumed (const LbWhy *why, LbAssumptionId id)
{
  return lb_assumed_text (why->voice, id, why->assumptions->value[id]);
}

char *
lb_why_say_figure (const LbWhy *why, LbFigureId id)
{
  return lb_figure_text (why->voice, why->plan, id);
}

static double
cut_elevation (const LbWhy *why)
{
  return lb_pile_cut_elevation (why->pile, why->assumptions);
}

/* With what stands in where none is on record. */
static char *
say_cut (const LbWhy *why)
{
  g_autofree char *cut = lb_voice_elevation (why->voice, cut_elevation (why));
  if (!isnan (why->pile->cut_m))
    return g_steal_pointer (&cut);
  g_autofree char *over = lb_why_say_assumed (why, LB_ASSUME_CUT_ABOVE_MUDLINE);
  /* Translators: an elevation, and how far it was taken over the mudline: “-31 ft (1 ft over the
   * mudline)”. */
  return g_strdup_printf (_ ("%s (%s over the mudline)"), cut, over);
}

static char *
why_true_length (const LbWhy *why)
{
  g_autofree char *head = lb_voice_elevation (why->voice, why->pile->head_m);
  g_autofree char *cut = say_cut (why);
  if (!lb_pile_says (why->pile, LB_FACT_BATTER)) {
    g_autofree char *most = lb_batter_to_text (LB_BATTER_MOST);
    /* Translators: elevations, and the batter that the pile has at most. */
    return g_strdup_printf (_ ("head %s to cut %s; batter not known, plumb to %s"), head, cut,
                            most);
  }
  if (!(why->pile->batter > 0))
    return g_strdup_printf (_ ("head %s to cut %s, plumb"), head, cut);
  g_autofree char *batter = lb_batter_to_text (why->pile->batter);
  return g_strdup_printf (_ ("head %s to cut %s, along %s"), head, cut, batter);
}

static char *
why_lean (const LbWhy *why)
{
  if (!(why->pile->batter > 0))
    return g_strdup (_ ("plumb by the record"));
  g_autofree char *batter = lb_batter_to_text (why->pile->batter);
  if (!lb_pile_says (why->pile, LB_FACT_BEARING))
    return g_strdup_printf (_ ("batter %s, which way is not known"), batter);
  return g_strdup_printf (_ ("batter %s to the %s"), batter, lb_lean_side_text (why->pile));
}

static char *
why_offset (const LbWhy *why, LbFigureId id)
{
  if (!(why->pile->batter > 0))
    return g_strdup (_ ("plumb by the record"));
  g_autofree char *batter = lb_batter_to_text (why->pile->batter);
  if (id == LB_FIGURE_HEAD_OFFSET) {
    g_autofree char *rise = lb_why_say (why, LB_QUANTITY_LENGTH,
                                        why->pile->head_m - why->pile->mudline_m);
    return g_strdup_printf (_ ("%s over %s, mudline to head"), batter, rise);
  }
  g_autofree char *rise = lb_why_say (why, LB_QUANTITY_LENGTH,
                                      why->pile->head_m - cut_elevation (why));
  return g_strdup_printf (_ ("%s over %s, cut to head"), batter, rise);
}

static char *
why_cut_depth (const LbWhy *why)
{
  g_autofree char *water = lb_voice_elevation (why->voice,
                                               why->assumptions->value[LB_ASSUME_WATER_LEVEL]);
  g_autofree char *cut = say_cut (why);
  return g_strdup_printf (_ ("water at %s, cut at %s"), water, cut);
}

static char *
why_pneumo (const LbWhy *why)
{
  const double depth = likely (why->plan, LB_FIGURE_CUT_DEPTH);
  g_autofree char *read = lb_why_say (why, LB_QUANTITY_LENGTH, depth);
  g_autofree char *more = lb_why_say (why, LB_QUANTITY_LENGTH,
                                      likely (why->plan, LB_FIGURE_PNEUMO) - depth);
  return g_strdup_printf (_ ("%s + %s pneumo correction"), read, more);
}

static char *
why_bars_left (const LbWhy *why)
{
  const guint n = why->pile->n_bars, n_gone = lb_bar_set_count (why->plan->gone);
  g_autofree char *all = g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE, "of %u bar on record", "of %u bars on record", n), n);
  if (n_gone == 0)
    return g_steal_pointer (&all);
  /* Translators: “of 8 bars on record, 2 found gone” */
  return g_strdup_printf (_ ("%s, %u found gone"), all, n_gone);
}

char *
lb_bar_span_text (const LbCutPlan *plan)
{
  /* Translators: the least and the largest bar that those of a size not known may be. */
  return g_strdup_printf (C_ ("bars", "%s to %s"), plan->least_bar->name, plan->most_bar->name);
}

static char *
why_steel (const LbWhy *why)
{
  g_autofree char *left = lb_why_say_figure (why, LB_FIGURE_BARS_LEFT);
  if (why->pile->bar == NULL) {
    g_autofree char *span = lb_bar_span_text (why->plan);
    if (why->plan->are_bars_own)
      /* Translators: bars left, sizes: “8 bars of a size not known, #8 to #11 as others here”. */
      return g_strdup_printf (_ ("%s bars of a size not known: %s, as others of this job"), left,
                              span);
    return g_strdup_printf (_ ("%s bars of a size not known: %s, common practice"), left, span);
  }
  g_autofree char *area = lb_why_say (why, LB_QUANTITY_STEEL_AREA, why->pile->bar->area_m2);
  /* Translators: bars left × area of one, size of bar: “5 × 0.79 in², #8”. */
  return g_strdup_printf (_ ("%s × %s, %s"), left, area, why->pile->bar->name);
}

/* "25 s/in² × 6.32 in²" */
static char *
rate_times_steel (const LbWhy *why)
{
  const double steel_m2 = likely (why->plan, LB_FIGURE_STEEL);
  const double rate = steel_m2 > 0 ? likely (why->plan, LB_FIGURE_TRIGGER) / steel_m2
                                   : why->assumptions->value[LB_ASSUME_BURN_RATE];
  g_autofree char *each = lb_why_say (why, LB_QUANTITY_BURN_RATE, rate);
  g_autofree char *steel = lb_why_say_figure (why, LB_FIGURE_STEEL);
  return g_strdup_printf ("%s × %s", each, steel);
}

static char *
why_trigger (const LbWhy *why)
{
  const LbBurnBasis *const basis = &why->plan->burn_basis;
  g_autofree char *product = rate_times_steel (why);
  if (basis->is_default)
    return g_strdup_printf (_ ("%s; the stated default"), product);
  if (why->plan->visibility == LB_VISIBILITY_UNKNOWN)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s; this job’s rate, from %u bar",
                                         "%s; this job’s rate, from %u bars", basis->n_bars),
                            product, basis->n_bars);
  return g_strdup_printf (
    /* Translators: rate × steel, bars, a visibility (“poor visibility”), how many of them in it. */
    g_dngettext (GETTEXT_PACKAGE, "%s; this job’s rate, from %u bar, for %s (%u of them)",
                 "%s; this job’s rate, from %u bars, for %s (%u of them)", basis->n_bars),
    product, basis->n_bars,
    g_dgettext (GETTEXT_PACKAGE, lb_visibility_name (why->plan->visibility)),
    basis->n_bars_in_visibility);
}

static char *
why_burn (const LbWhy *why)
{
  g_autofree char *trigger = lb_why_say (why, LB_QUANTITY_SHORT_TIME,
                                         likely (why->plan, LB_FIGURE_TRIGGER));
  const gulong n_bars = (gulong) likely (why->plan, LB_FIGURE_BARS_LEFT);
  const gulong n_rods = (gulong) likely (why->plan, LB_FIGURE_RODS);
  const double lost_s = likely (why->plan, LB_FIGURE_BURN) - likely (why->plan, LB_FIGURE_TRIGGER);
  g_autofree char *restrike = lb_why_say (
    why, LB_QUANTITY_SHORT_TIME, n_bars + n_rods > 0 ? lost_s / (double) (n_bars + n_rods) : 0);
  g_autofree char *strikes = g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE, "%lu strike", "%lu strikes", n_bars), n_bars);
  g_autofree char *rods = g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE, "%lu rod", "%lu rods", n_rods), n_rods);
  /* Translators: “158 s of trigger + 75 s at each of 8 strikes and 4 rods”. */
  return g_strdup_printf (_ ("%s of trigger + %s at each of %s and %s"), trigger, restrike, strikes,
                          rods);
}

static char *
why_rods (const LbWhy *why)
{
  g_autofree char *trigger = lb_why_say (why, LB_QUANTITY_SHORT_TIME,
                                         likely (why->plan, LB_FIGURE_TRIGGER));
  if (why->plan->has_learned_rods)
    return g_strdup_printf (_ ("%s of trigger, at this job’s use of rods"), trigger);
  g_autofree char *each = lb_why_say_assumed (why, LB_ASSUME_ROD_TIME);
  g_autofree char *waste = lb_why_say_assumed (why, LB_ASSUME_ROD_WASTE);
  /* Translators: trigger time ÷ time of one rod, share lost: “158 s ÷ 50 s a rod, 15% lost”. */
  return g_strdup_printf (_ ("%s ÷ %s a rod, %s lost"), trigger, each, waste);
}

static char *
why_oxygen (const LbWhy *why)
{
  if (why->plan->has_learned_oxygen) {
    g_autofree char *trigger = lb_why_say (why, LB_QUANTITY_SHORT_TIME,
                                           likely (why->plan, LB_FIGURE_TRIGGER));
    g_autofree char *depth = lb_why_say_figure (why, LB_FIGURE_CUT_DEPTH);
    return g_strdup_printf (_ ("%s of trigger, at this job’s use of oxygen, for %s"), trigger,
                            depth);
  }
  const double *const value = why->assumptions->value;
  /* What is wasted of a rod burns oxygen too. */
  const double rods_s = likely (why->plan, LB_FIGURE_TRIGGER) / (1 - value[LB_ASSUME_ROD_WASTE]);
  const double at_surface = value[LB_ASSUME_OXYGEN_FLOW] * rods_s;
  g_autofree char *flow = lb_why_say_assumed (why, LB_ASSUME_OXYGEN_FLOW);
  g_autofree char *rods = lb_why_say (why, LB_QUANTITY_SHORT_TIME, rods_s);
  if (!(at_surface > 0))
    return g_strdup_printf (_ ("%s × %s of rods burning"), flow, rods);
  g_autofree char *scale = lb_voice_number (why->voice,
                                            likely (why->plan, LB_FIGURE_OXYGEN) / at_surface, 2);
  return g_strdup_printf (_ ("%s × %s of rods burning, × %s at depth"), flow, rods, scale);
}

static char *
why_cylinders (const LbWhy *why)
{
  g_autofree char *oxygen = lb_why_say_figure (why, LB_FIGURE_OXYGEN);
  g_autofree char *full = lb_why_say_assumed (why, LB_ASSUME_CYLINDER_CONTENT);
  g_autofree char *residual = lb_why_say_assumed (why, LB_ASSUME_CYLINDER_RESIDUAL);
  return g_strdup_printf (_ ("%s from cylinders of %s, changed at %s"), oxygen, full, residual);
}

static char *
why_regulator (const LbWhy *why)
{
  const double depth = likely (why->plan, LB_FIGURE_CUT_DEPTH);
  g_autofree char *over = lb_why_say_assumed (why, LB_ASSUME_OVER_BOTTOM);
  g_autofree char *bottom = lb_why_say (why, LB_QUANTITY_PRESSURE, lb_bottom_pressure (depth));
  g_autofree char *deep = lb_why_say (why, LB_QUANTITY_LENGTH, depth);
  g_autofree char *hose = lb_why_say_figure (why, LB_FIGURE_HOSE_LOSS);
  return g_strdup_printf (_ ("%s over bottom + %s for %s + %s hose"), over, bottom, deep, hose);
}

static char *
why_hose_loss (const LbWhy *why)
{
  g_autofree char *length = lb_why_say_assumed (why, LB_ASSUME_HOSE_LENGTH);
  if (why->assumptions->value[LB_ASSUME_HOSE_LOSS] > 0) {
    g_autofree char *allowance = lb_why_say_assumed (why, LB_ASSUME_HOSE_LOSS);
    return g_strdup_printf (_ ("%s allowed over %s"), allowance, length);
  }
  const double depth = likely (why->plan, LB_FIGURE_CUT_DEPTH);
  const double flow_m3_s = why->assumptions->value[LB_ASSUME_OXYGEN_FLOW] *
                           lb_oxygen_flow_scale (why->assumptions->value[LB_ASSUME_OVER_BOTTOM],
                                                 depth);
  g_autofree char *flow = lb_why_say (why, LB_QUANTITY_GAS_FLOW, flow_m3_s);
  g_autofree char *bore = lb_why_say_assumed (why, LB_ASSUME_HOSE_BORE);
  return g_strdup_printf (_ ("%s through %s of %s hose"), flow, length, bore);
}

static char *
why_lead_drop (const LbWhy *why)
{
  g_autofree char *current = lb_why_say_assumed (why, LB_ASSUME_LEAD_CURRENT);
  g_autofree char *length = lb_why_say_assumed (why, LB_ASSUME_LEAD_LENGTH);
  g_autofree char *size = lb_why_say_assumed (why, LB_ASSUME_LEAD_SIZE);
  g_autofree char *most = lb_why_say (why, LB_QUANTITY_VOLTAGE, LB_LEAD_DROP_MOST);
  return g_strdup_printf (_ ("%s through %s of %s; %s is the most to lose"), current, length, size,
                          most);
}

static gboolean
is_steel_known (const LbCutPlan *plan)
{
  return !(plan->yield_most_pa > plan->yield_pa);
}

/* "33 ksi", or "33 to 60 ksi (not known: the least counts)". */
static char *
say_yield (const LbWhy *why)
{
  const LbCutPlan *const plan = why->plan;
  if (is_steel_known (plan))
    return lb_why_say (why, LB_QUANTITY_STRESS, plan->yield_pa);
  g_autofree char *least = lb_voice_quantity_number (why->voice, LB_QUANTITY_STRESS,
                                                     plan->yield_pa);
  g_autofree char *most = lb_why_say (why, LB_QUANTITY_STRESS, plan->yield_most_pa);
  /* Translators: yield points of the weakest and the strongest steel that the bars may be of. */
  return g_strdup_printf (_ ("%s to %s (year and steel not known: the least counts)"), least, most);
}

static char *
why_hold_stress (const LbWhy *why)
{
  const double factor = why->assumptions->value[LB_ASSUME_HOLD_FACTOR];
  g_autofree char *allowed = lb_why_say (why, LB_QUANTITY_STRESS, why->plan->yield_pa / factor);
  g_autofree char *yield = say_yield (why);
  g_autofree char *over = lb_why_say_assumed (why, LB_ASSUME_HOLD_FACTOR);
  /* Translators: what a bar may bear, its yield point, the factor on it. */
  return g_strdup_printf (_ ("they may bear %s: %s yield over %s"), allowed, yield, over);
}

/* What the order on record costs, appended to @line, which is taken. */
static char *
add_price (const LbWhy *why, char *line)
{
  const LbOrderPrice *price = &why->plan->price;
  g_autofree char *own = line;

  if (!price->is_known)
    return g_steal_pointer (&own);
  if (price->fewer > 0)
    return g_strdup_printf (
      /* Translators: the reason before, a count of bars. */
      g_dngettext (GETTEXT_PACKAGE,
                   "%s; in the order that the figures favour %u more bar could be burned first",
                   "%s; in the order that the figures favour %u more bars could be burned first",
                   price->fewer),
      own, price->fewer);
  if (price->chosen > price->favoured) {
    g_autofree char *chosen = lb_why_say (why, LB_QUANTITY_SHARE, price->chosen);
    g_autofree char *favoured = lb_why_say (why, LB_QUANTITY_SHARE, price->favoured);

    return g_strdup_printf (
      /* Translators: the reason before, two shares. */
      _ ("%s; until then the bars carry %s of what they may, in the order that the figures favour "
         "%s"),
      own, chosen, favoured);
  }
  return g_strdup_printf (_ ("%s; no order lets more be burned first"), own);
}

static char *
why_rig_before (const LbWhy *why)
{
  g_autofree char *length = lb_why_say_figure (why, LB_FIGURE_TRUE_LENGTH);
  g_autofree char *yield = say_yield (why);
  g_autofree char *factor = lb_why_say_assumed (why, LB_ASSUME_HOLD_FACTOR);
  g_autofree char *current = lb_why_say_assumed (why, LB_ASSUME_CURRENT);
  g_autofree char *line = g_strdup_printf (
    /* Translators: length of the stub, current, yield point, factor. */
    _ ("%s of stub and %s of current on bars of %s yield over %s"), length, current, yield, factor);

  if (!why->plan->hold.is_lower_bound)
    return add_price (why, g_steal_pointer (&line));
  return add_price (
    why, g_strdup_printf (_ ("%s; concrete left holds too, by how much nobody knows"), line));
}

static char *
why_no_stop (const LbWhy *why)
{
  const double depth_m = likely (why->plan, LB_FIGURE_CUT_DEPTH);
  g_autofree char *row = lb_why_say (why, LB_QUANTITY_LENGTH, why->plan->table_depth_m);
  g_autofree char *up = lb_why_say (why, LB_QUANTITY_SHORT_TIME, lb_ascent_time (depth_m));
  /* Translators: depth of the row, time of the ascent. */
  if (why->plan->is_own_table)
    return g_strdup_printf (_ ("the supervisor’s own table, %s row; the way up takes %s"), row, up);
  return g_strdup_printf (_ ("U.S. Navy air table, %s row; the way up takes %s"), row, up);
}

static char *
why_helmet (const LbWhy *why)
{
  const double depth_m = likely (why->plan, LB_FIGURE_CUT_DEPTH);
  const double bottom_pa = lb_bottom_pressure (depth_m);
  g_autofree char *over = lb_why_say (why, LB_QUANTITY_PRESSURE,
                                      likely (why->plan, LB_FIGURE_HELMET) - bottom_pa);
  g_autofree char *bottom = lb_why_say (why, LB_QUANTITY_PRESSURE, bottom_pa);
  g_autofree char *deep = lb_why_say (why, LB_QUANTITY_LENGTH, depth_m);
  return g_strdup_printf (_ ("%s over bottom + %s for %s; what its maker says stands above it"),
                          over, bottom, deep);
}

static char *
why_dives (const LbWhy *why)
{
  if (likely (why->plan, LB_FIGURE_CUT_DEPTH) <= 0)
    return g_strdup (_ ("the cut is above the water"));
  g_autofree char *burn = lb_why_say_figure (why, LB_FIGURE_BURN);
  const double limit = fmin (likely (why->plan, LB_FIGURE_NO_STOP),
                             why->assumptions->value[LB_ASSUME_DIVE_LIMIT]);
  g_autofree char *longest = lb_why_say (why, LB_QUANTITY_TIME, limit);
  g_autofree char *setup = lb_why_say_assumed (why, LB_ASSUME_DIVE_SETUP);
  return g_strdup_printf (_ ("%s at the pile; dives of %s at most, %s of it setting up; no "
                             "earlier dive of the diver counted"),
                          burn, longest, setup);
}

/* Why there is no figure: a fact is missing, or what is known leads nowhere. */
static char *
why_not (const LbWhy *why, LbFigureId id)
{
  const gboolean is_hold = id == LB_FIGURE_RIG_BEFORE || id == LB_FIGURE_HOLD_STRESS;
  const char *missing = lb_figure_missing (id, why->pile);
  if (missing == NULL && is_hold)
    missing = why->plan->hold_missing;
  if (missing != NULL)
    return g_strdup (g_dgettext (GETTEXT_PACKAGE, missing));
  char *const of_lift = lb_lift_why_not (why, id);
  if (of_lift != NULL)
    return of_lift;
  if (id == LB_FIGURE_HOLD_STRESS)
    return g_strdup (_ ("The bars left are a hinge: they hold nothing that can be reckoned."));
  if (id == LB_FIGURE_REGULATOR || id == LB_FIGURE_HOSE_LOSS)
    return g_strdup (_ ("The hose cannot pass so much oxygen: take a larger bore."));
  if (why->pile->head_m < cut_elevation (why))
    return g_strdup (_ ("The head on record is below the cut."));
  if (id == LB_FIGURE_NO_STOP || id == LB_FIGURE_PNEUMO || id == LB_FIGURE_HELMET ||
      (id == LB_FIGURE_DIVES && isnan (likely (why->plan, LB_FIGURE_NO_STOP))))
    return g_strdup (_ ("Deeper than the no-stop table goes."));
  if (id == LB_FIGURE_DIVES)
    return g_strdup (_ ("The no-stop limit leaves no time to burn."));
  return g_strdup (_ ("Cannot be reckoned from what is on record."));
}

char *
lb_figure_reason_text (const LbVoice *voice,
                       const LbPile *pile,
                       const LbAssumptions *assumptions,
                       const LbCutPlan *plan,
                       LbFigureId id)
{
  const LbWhy why = {
    .voice = voice,
    .pile = pile,
    .assumptions = assumptions,
    .plan = plan,
  };

  if (isnan (likely (plan, id)))
    return why_not (&why, id);
  switch (id) {
  case LB_FIGURE_TRUE_LENGTH:
    return why_true_length (&why);
  case LB_FIGURE_LEAN:
    return why_lean (&why);
  case LB_FIGURE_HEAD_OFFSET:
  case LB_FIGURE_CUT_OFFSET:
    return why_offset (&why, id);
  case LB_FIGURE_CUT_DEPTH:
    return why_cut_depth (&why);
  case LB_FIGURE_PNEUMO:
    return why_pneumo (&why);
  case LB_FIGURE_BARS_LEFT:
    return why_bars_left (&why);
  case LB_FIGURE_STEEL:
    return why_steel (&why);
  case LB_FIGURE_RIG_BEFORE:
    return why_rig_before (&why);
  case LB_FIGURE_HOLD_STRESS:
    return why_hold_stress (&why);
  case LB_FIGURE_TRIGGER:
    return why_trigger (&why);
  case LB_FIGURE_BURN:
    return why_burn (&why);
  case LB_FIGURE_RODS:
    return why_rods (&why);
  case LB_FIGURE_OXYGEN:
    return why_oxygen (&why);
  case LB_FIGURE_CYLINDERS:
    return why_cylinders (&why);
  case LB_FIGURE_REGULATOR:
    return why_regulator (&why);
  case LB_FIGURE_HOSE_LOSS:
    return why_hose_loss (&why);
  case LB_FIGURE_LEAD_DROP:
    return why_lead_drop (&why);
  case LB_FIGURE_NO_STOP:
    return why_no_stop (&why);
  case LB_FIGURE_HELMET:
    return why_helmet (&why);
  case LB_FIGURE_DIVES:
    return why_dives (&why);
  case LB_FIGURE_MASS_IN_WATER:
  case LB_FIGURE_MASS_IN_AIR:
  case LB_FIGURE_SUCTION:
  case LB_FIGURE_AWASH:
  case LB_FIGURE_HOOK_LOAD:
  case LB_FIGURE_SLING:
  case LB_FIGURE_SLING_SHARE:
  case LB_FIGURE_HEEL:
  case LB_FIGURE_CRANE_SHARE:
  case LB_FIGURE_LENGTHS:
  case LB_FIGURE_PICK:
  case LB_FIGURE_WHOLE_PULL:
  case LB_FIGURE_CRITICAL:
    return lb_lift_why (&why, id);
  }
  g_assert_not_reached ();
}
