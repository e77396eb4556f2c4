/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/hold.h"

#include "trade/msgid.h"
#include "trade/steel.h"
#include "trade/trade-error.h"

static const char *const concrete_names[LB_N_CONCRETE_LEFT] = {
  [LB_CONCRETE_NONE] = NC_ ("concrete left", "none"),
  [LB_CONCRETE_CORE] = NC_ ("concrete left", "core"),
  [LB_CONCRETE_ONE_SIDE] = NC_ ("concrete left", "one side"),
};

const char *
lb_concrete_left_name (LbConcreteLeft left)
{
  g_return_val_if_fail (left < LB_N_CONCRETE_LEFT, NULL);

  return concrete_names[left];
}

gboolean
lb_concrete_left_from_name (const char *name, LbConcreteLeft *out_left)
{
  g_return_val_if_fail (name, FALSE);
  g_return_val_if_fail (out_left, FALSE);

  for (int left = 0; left < LB_N_CONCRETE_LEFT; left++) {
    if (g_ascii_strcasecmp (concrete_names[left], name) == 0) {
      *out_left = (LbConcreteLeft) left;
      return TRUE;
    }
  }
  return FALSE;
}

gboolean
lb_hold_applies (const LbBar *bar)
{
  return bar && bar->kind != LB_BAR_STRAND;
}

gboolean
lb_cut_check (const LbCut *cut, GError **error)
{
  g_return_val_if_fail (cut, FALSE);
  g_return_val_if_fail (cut->places || cut->n_bars == 0, FALSE);
  g_return_val_if_fail (cut->n_bars <= LB_BARS_MAX, FALSE);

  if (!cut->bar || cut->n_bars == 0) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE,
                 "The size or the number of the bars is not known");
    return FALSE;
  }
  if (!lb_hold_applies (cut->bar)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "%s is stressed: a licensed engineer says what it holds and how it is cut",
                 cut->bar->name);
    return FALSE;
  }

  const struct
  {
    const char *name, *unit;
    double value, least, most;
  } numbers[] = {
    { "gap in the concrete", " m", cut->gap_m, 0, 10 },
    { "yield point of the steel", " Pa", cut->yield_pa, 1e6, 2e9 },
    { "factor on the steel", "", cut->factor, 1, 100 },
    { "effective length factor", "", cut->effective_length, 0.5, 2.5 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++) {
    if (isnan (numbers[i].value)) {
      g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE, "The %s is not known",
                   numbers[i].name);
      return FALSE;
    }
    if (!(numbers[i].value >= numbers[i].least && numbers[i].value <= numbers[i].most)) {
      g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                   "The %s is %g%s, and must be from %g to %g%s", numbers[i].name, numbers[i].value,
                   numbers[i].unit, numbers[i].least, numbers[i].most, numbers[i].unit);
      return FALSE;
    }
  }
  return TRUE;
}

double
lb_bar_euler_load (const LbBar *bar, double gap_m, double effective_length)
{
  g_return_val_if_fail (bar, (double) NAN);

  const double inertia_m4 = lb_bar_section (bar, gap_m).inertia_m4;
  const double length_m = effective_length * gap_m;

  return G_PI * G_PI * LB_STEEL_ELASTIC_PA * inertia_m4 / (length_m * length_m);
}

LbHoldMeasure
lb_hold_measure (const LbCut *cut)
{
  g_return_val_if_fail (cut, (LbHoldMeasure){ 0 });

  const double euler_n = lb_bar_euler_load (cut->bar, cut->gap_m, cut->effective_length);

  return (LbHoldMeasure){
    .per_stress = cut->factor / cut->yield_pa,
    .per_compression = cut->factor * cut->bar->area_m2 / euler_n,
  };
}

gboolean
lb_hold_reckon (const LbCut *cut,
                LbBarSet left,
                const LbStubLoad *load,
                LbHold *out_hold,
                GError **error)
{
  g_return_val_if_fail (load, FALSE);
  g_return_val_if_fail (out_hold, FALSE);

  if (!lb_cut_check (cut, error))
    return FALSE;

  const LbBarSection section = lb_bar_section (cut->bar, cut->gap_m);
  const LbHoldMeasure measure = lb_hold_measure (cut);
  LbBarSums sums = { 0 };

  left &= lb_bar_set_all (cut->n_bars);
  for (guint bar = 0; bar < cut->n_bars; bar++) {
    if (left & LB_BAR (bar))
      sums = lb_bar_sums_add (sums, cut->places[bar]);
  }

  /* Under any size a stress can have, so that one bar governs even where all are at rest. */
  LbHold hold = {
    .greatest_pa = -1,
    .n_left = lb_bar_set_count (left),
    .is_lower_bound = cut->concrete != LB_CONCRETE_NONE,
  };

  lb_bar_field_reckon (&section, &sums, load, &hold.field);
  hold.is_hinge = hold.field.is_hinge;

  double compression_pa = 0;

  for (guint bar = 0; bar < LB_BARS_MAX; bar++) {
    if (bar >= cut->n_bars || (left & LB_BAR (bar)) == 0 || hold.is_hinge) {
      hold.base_pa[bar] = hold.peak_pa[bar] = (double) NAN;
      continue;
    }

    const double base_pa = lb_bar_field_base (&hold.field, cut->places[bar]);
    const double drag_pa = lb_bar_field_drag (&hold.field, cut->places[bar]);

    hold.base_pa[bar] = base_pa;
    hold.peak_pa[bar] = fabs (base_pa) + drag_pa + hold.field.bending_pa;
    compression_pa = MAX (compression_pa, base_pa + drag_pa);
    if (hold.peak_pa[bar] > hold.greatest_pa) {
      hold.greatest_pa = hold.peak_pa[bar];
      hold.governing = (guint8) bar;
    }
  }

  if (hold.is_hinge) {
    hold.greatest_pa = hold.buckling_share = hold.utilisation = (double) NAN;
  } else {
    const LbBarPeak peak = { hold.greatest_pa, compression_pa };

    hold.buckling_share = compression_pa * measure.per_compression / cut->factor;
    hold.utilisation = lb_hold_utilisation (&measure, peak);
  }
  *out_hold = hold;
  return TRUE;
}
