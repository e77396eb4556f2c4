/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a learned model says of burning that is still to come.
 *
 * Trigger time is a ratio of two gamma variables, the chance of the dive over what is not known of
 * the rate, and has its quantiles in closed form. Rods and oxygen are products of trigger time and
 * a rate that is learned apart from it; the distances of their ends from the middle add as squares,
 * on the scale of logarithms. Time at the pile is a sum, and there they add so in seconds.
 *
 * Invariants:
 * 1. What was not learned has its stated range, and with nothing learned at all the stated ends go
 *    together as lb_burn_reckon() has them.
 * 2. Nothing is allocated and nothing iterates.
 */
#include "trade/burn-rate-private.h"

#include "trade/gamma-range.h"

#include <math.h>

/* What a rod count may exceed a whole number by and still be that number: rounding of units. */
#define WHOLE_SLACK 1e-9

static const LbBurnRate *
rate_of (const LbBurnModel *model, const LbBar *bar, LbVisibility visibility)
{
  return &model->rates[lb_burn_size_row (model, bar)][visibility];
}

/* What will be seen: @shape is of the chance in it. */
static LbRange
range_seen (const LbBurnRate *rate, double shape)
{
  return (LbRange){ .likely = rate->mean * lb_gamma_ratio_quantile (0, shape, rate->shape),
                    .low = rate->mean * lb_gamma_ratio_quantile (-LB_Z_90, shape, rate->shape),
                    .high = rate->mean * lb_gamma_ratio_quantile (LB_Z_90, shape, rate->shape) };
}

/* The rate itself, which is its mean over a gamma variable. */
static LbRange
range_of_rate (const LbBurnRate *rate)
{
  return (LbRange){ .likely = rate->mean / lb_gamma_quantile (0, rate->shape),
                    .low = rate->mean / lb_gamma_quantile (LB_Z_90, rate->shape),
                    .high = rate->mean / lb_gamma_quantile (-LB_Z_90, rate->shape) };
}

static LbRange
scaled (const LbRange *range, double by)
{
  return (
    LbRange){ .likely = range->likely * by, .low = range->low * by, .high = range->high * by };
}

/* --- Putting together ----------------------------------------------------------------------- */

static double
end_of_product (double a, double a_end, double b, double b_end)
{
  return hypot (log (a_end / a), log (b_end / b));
}

/* Of independent factors. */
static LbRange
product (const LbRange *a, const LbRange *b)
{
  const double likely = a->likely * b->likely;

  if (likely <= 0)
    return (LbRange){ 0 };
  return (LbRange){ .likely = likely,
                    .low = likely * exp (-end_of_product (a->likely, a->low, b->likely, b->low)),
                    .high = likely *
                            exp (end_of_product (a->likely, a->high, b->likely, b->high)) };
}

static double
whole_rods (double rods)
{
  return ceil (rods - WHOLE_SLACK);
}

/* How far an end of the time at the pile is from the middle: more trigger time also takes more
 * rods; more rods a second, and longer strikes, come on top by themselves. */
static double
end_of_wall (const LbRange *restrike,
             double restrike_end,
             double trigger_s,
             double trigger_end_s,
             double rods,
             double rods_a_second,
             double rods_a_second_end,
             guint n_bars)
{
  const double of_trigger = (trigger_end_s - trigger_s) * (1 + restrike->likely * rods_a_second);
  const double of_rods = restrike->likely * trigger_s * (rods_a_second_end - rods_a_second);
  const double of_restrike = (restrike_end - restrike->likely) * (n_bars + rods);

  return hypot (hypot (of_trigger, of_rods), of_restrike);
}

/* The range of one of the rates that go with the trigger: for one shift, or over many. */
static LbRange
range_of_use (const LbBurnUse *use, gboolean is_over_many)
{
  if (use->n_shifts == 0)
    return use->stated;
  return is_over_many ? range_of_rate (&use->rate) : range_seen (&use->rate, 1 / use->spread);
}

static gboolean
has_learned (const LbBurnModel *model)
{
  return model->n_samples > 0 || model->rods.n_shifts > 0 || model->restrike.n_shifts > 0;
}

static void
put_together (const LbBurnModel *model,
              const LbRange *trigger_s,
              double steel_m2,
              guint n_bars,
              gboolean is_over_many,
              LbBurn *out_burn,
              LbRange *out_oxygen_m3)
{
  const LbRange flow = range_of_use (&model->oxygen, is_over_many);

  if (!has_learned (model)) {
    lb_burn_reckon (&model->assumptions, steel_m2, n_bars, out_burn);
    *out_oxygen_m3 = model->oxygen.n_shifts == 0
                       ? lb_burn_stated_oxygen (&model->assumptions, trigger_s)
                       : product (trigger_s, &flow);
    return;
  }
  *out_oxygen_m3 = product (trigger_s, &flow);

  const LbRange rate = range_of_use (&model->rods, is_over_many);
  const LbRange restrike = range_of_use (&model->restrike, is_over_many);
  const LbRange rods = product (trigger_s, &rate);

  out_burn->trigger_s = *trigger_s;
  out_burn->rods = (LbRange){ .likely = whole_rods (rods.likely),
                              .low = whole_rods (rods.low),
                              .high = whole_rods (rods.high) };

  const double likely = trigger_s->likely + restrike.likely * (n_bars + out_burn->rods.likely);
  const double below = end_of_wall (&restrike, restrike.low, trigger_s->likely, trigger_s->low,
                                    out_burn->rods.likely, rate.likely, rate.low, n_bars);
  const double above = end_of_wall (&restrike, restrike.high, trigger_s->likely, trigger_s->high,
                                    out_burn->rods.likely, rate.likely, rate.high, n_bars);

  /* No time at the pile is shorter than its trigger time. */
  out_burn->wall_s = (LbRange){ .likely = likely,
                                .low = MAX (likely - below, trigger_s->low),
                                .high = likely + above };
}

/* --- One pile ------------------------------------------------------------------------------- */

static gboolean
is_a_visibility (LbVisibility visibility)
{
  return (guint) visibility < LB_N_VISIBILITIES;
}

void
lb_burn_model_predict (const LbBurnModel *model,
                       const LbBar *bar,
                       double steel_m2,
                       guint n_bars,
                       LbVisibility visibility,
                       LbBurn *out_burn,
                       LbRange *out_oxygen_m3)
{
  g_return_if_fail (model);
  g_return_if_fail (is_a_visibility (visibility));
  g_return_if_fail (out_burn);
  g_return_if_fail (out_oxygen_m3);

  if (n_bars == 0) {
    *out_burn = (LbBurn){ 0 };
    *out_oxygen_m3 = (LbRange){ 0 };
    return;
  }

  const LbRange rate = model->n_samples == 0 ? model->stated
                                             : range_seen (rate_of (model, bar, visibility),
                                                           lb_burn_shape (model, n_bars));
  const LbRange trigger_s = scaled (&rate, steel_m2);

  put_together (model, &trigger_s, steel_m2, n_bars, FALSE, out_burn, out_oxygen_m3);
}

LbRange
lb_burn_model_rate (const LbBurnModel *model, const LbBar *bar, LbVisibility visibility)
{
  g_return_val_if_fail (model, (LbRange){ 0 });
  g_return_val_if_fail (is_a_visibility (visibility), (LbRange){ 0 });

  if (model->n_samples == 0)
    return model->stated;
  if (bar == NULL && visibility == LB_VISIBILITY_UNKNOWN)
    return range_of_rate (&model->job);
  return range_of_rate (rate_of (model, bar, visibility));
}

void
lb_burn_model_basis (const LbBurnModel *model,
                     const LbBar *bar,
                     LbVisibility visibility,
                     LbBurnBasis *out_basis)
{
  g_return_if_fail (model);
  g_return_if_fail (is_a_visibility (visibility));
  g_return_if_fail (out_basis);

  *out_basis = (LbBurnBasis){
    .n_bars = model->n_bars,
    .n_samples = model->n_samples,
    .n_bars_of_size = model->size_bars[lb_burn_size_row (model, bar)],
    .n_bars_in_visibility = model->visibility_bars[visibility],
    .n_set_aside = model->n_set_aside,
    .n_unusable = model->n_unusable,
    .n_faults = model->n_faults,
    .n_outliers = model->n_outliers,
    .is_default = model->n_samples == 0,
  };
}

/* --- Many piles ----------------------------------------------------------------------------- */

void
lb_burn_sum_add (LbBurnSum *sum,
                 const LbBurnModel *model,
                 const LbBar *bar,
                 double steel_m2,
                 guint n_bars,
                 LbVisibility visibility)
{
  g_return_if_fail (sum);
  g_return_if_fail (model);
  g_return_if_fail (is_a_visibility (visibility));

  if (n_bars == 0)
    return;
  sum->n_bars += n_bars;
  sum->steel_m2 += steel_m2;
  if (model->n_samples == 0)
    return;

  const LbBurnRate *rate = rate_of (model, bar, visibility);
  const double mean_s = rate->mean * steel_m2;

  sum->mean_s += mean_s;
  sum->noise_s2 += mean_s * mean_s / lb_burn_shape (model, n_bars);
  sum->unsure_s += mean_s / sqrt (rate->shape);
}

void
lb_burn_sum_predict (const LbBurnSum *sum,
                     const LbBurnModel *model,
                     LbBurn *out_burn,
                     LbRange *out_oxygen_m3)
{
  g_return_if_fail (sum);
  g_return_if_fail (model);
  g_return_if_fail (out_burn);
  g_return_if_fail (out_oxygen_m3);

  if (sum->n_bars == 0) {
    *out_burn = (LbBurn){ 0 };
    *out_oxygen_m3 = (LbRange){ 0 };
    return;
  }

  const double mean_s2 = sum->mean_s * sum->mean_s;
  const LbBurnRate whole = { .mean = sum->mean_s,
                             .shape = mean_s2 / (sum->unsure_s * sum->unsure_s) };
  const LbRange trigger_s = model->n_samples == 0 ? scaled (&model->stated, sum->steel_m2)
                                                  : range_seen (&whole, mean_s2 / sum->noise_s2);

  put_together (model, &trigger_s, sum->steel_m2, sum->n_bars, TRUE, out_burn, out_oxygen_m3);
}
