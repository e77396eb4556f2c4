/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Learning the burning rate from a record.
 *
 * The time T of n bars of area A together is gamma-distributed about θ A with the shape
 * k = 1 / (dive spread + bar spread / n). The rate is a product, θ = job × size × visibility; each
 * factor has an inverse-gamma prior, the job's from the stated range and the others about 1, as
 * alike as sizes and visibilities are taken to be. In u = log θ every term of the posterior has
 * the form -a u - b exp (-u), so there is one peak; scoring finds it, and the curvature there says
 * how well each product is known. With one size and one visibility and no factors this is the
 * conjugate posterior, exactly.
 *
 * The two spreads are found on a grid, by how likely they make the times once the rate is averaged
 * over; with few samples the usual spread stands. Rate and spreads are found in turn.
 *
 * Invariants:
 * 1. Only sums over samples are kept, so their order does not matter beyond rounding.
 * 2. All is on the stack; cost is a few passes over the samples.
 */
#include "trade/burn-rate-private.h"

#include "trade/bar-ring.h"
#include "trade/gamma-range.h"

#include <math.h>
#include <string.h>

/* How much a dive and a bar vary about the rate, as coefficients of variation: judgement, no
 * published figure. A fifth for diver, rod and tide of the day; three tenths for the bar. */
#define DIVE_SPREAD_USUAL (0.20 * 0.20)
#define BAR_SPREAD_USUAL  (0.30 * 0.30)

/* How alike sizes are, and visibilities: judgement. What crews say of #6, #8 and #11 (28, 25 and 25
 * s/in²) differs by an eighth; black water and clear by a third. */
#define SIZE_SHAPE       (1 / (0.15 * 0.15))
#define VISIBILITY_SHAPE (1 / (0.30 * 0.30))

/* A guess is worth no more and no less than these ranges say (P90 over P10), or a crew's firm
 * opinion would never hear the record. */
#define PRIOR_RATIO_LEAST 1.25
#define PRIOR_RATIO_MOST  20.0
/* Of what is stated as 0; SI, small beside any real value. */
#define PRIOR_LEAST 1e-9

/* Spread of the logarithm of a spread: about double or half. Judgement. */
#define SPREAD_LOG_DEVIATION G_LN2

#define N_ROUNDS     3
#define N_STEPS_MOST 100
#define STEP_MOST    1.0 /* of a logarithm */
#define STEP_ENOUGH  1e-12

/* However much the record contradicts itself; quantiles in closed form are for shapes from there
 * on. */
#define SHAPE_LEAST 1.0

#define ROWS   (LB_BURN_SIZES_MAX + 1)
#define UNSEEN LB_BURN_SIZES_MAX
/* The job, each row of sizes, each visibility. */
#define AT_SIZE(row)     (1 + (row))
#define AT_VISIBILITY(v) (1 + ROWS + (v))
#define N_FACTORS        (1 + ROWS + LB_N_VISIBILITIES)

typedef struct
{
  const LbBurnSample *samples;
  gsize n_samples;
  LbBurnModel *model;
  LbBurnRate priors[N_FACTORS];
  double shapes[ROWS][LB_N_VISIBILITIES]; /* Σ weight × shape */
  double sums[ROWS][LB_N_VISIBILITIES];   /* Σ weight × shape × rate seen */
  double logs[N_FACTORS];                 /* of the factors */
  double root[N_FACTORS][N_FACTORS];      /* Cholesky factor of the curvature */
} Fit;

/* --- What the other parts share ------------------------------------------------------------- */

LbBurnRate
lb_burn_prior (const LbRange *stated)
{
  const double likely = MAX (stated->likely, PRIOR_LEAST);
  const double ratio = MAX (stated->high, likely) / MAX (stated->low, PRIOR_LEAST);
  const double shape = lb_gamma_shape_of_ratio (CLAMP (ratio, PRIOR_RATIO_LEAST, PRIOR_RATIO_MOST));

  return (LbBurnRate){ .mean = likely * lb_gamma_quantile (0, shape), .shape = shape };
}

double
lb_burn_ratios_chance (const LbBurnRatios *ratios, double shape)
{
  return ratios->n * (shape * log (shape) - lgamma (shape)) + shape * ratios->sum_log;
}

double
lb_burn_mean_chance (const LbBurnRate *prior, double shape, double sum)
{
  const double all = prior->shape + shape;

  return lgamma (all) - all * log (prior->shape * prior->mean + sum);
}

double
lb_burn_spread (double usual, int i)
{
  return ldexp (usual, i - LB_BURN_SPREADS / 2);
}

double
lb_burn_spread_chance (int i)
{
  const double off = G_LN2 * (i - LB_BURN_SPREADS / 2) / SPREAD_LOG_DEVIATION;

  return -off * off / 2;
}

double
lb_burn_shape (const LbBurnModel *model, guint n_bars)
{
  return 1 / (model->dive_spread + model->bar_spread / MAX (n_bars, 1));
}

guint
lb_burn_size_row (const LbBurnModel *model, const LbBar *bar)
{
  for (guint row = 0; row < model->n_sizes; row++) {
    if (model->sizes[row] == bar)
      return row;
  }
  return UNSEEN;
}

/* --- Samples -------------------------------------------------------------------------------- */

gboolean
lb_burn_sample_is_used (const LbBurnSample *sample)
{
  return !sample->is_set_aside && sample->n_bars > 0 && isfinite (sample->steel_m2) &&
         sample->steel_m2 > 0 && isfinite (sample->trigger_s) && sample->trigger_s > 0 &&
         (guint) sample->visibility < LB_N_VISIBILITIES;
}

static double
weight_of (const LbBurnSample *sample)
{
  return sample->has_fault ? LB_BURN_FAULT_WEIGHT : 1;
}

static void
count_samples (Fit *fit)
{
  LbBurnModel *model = fit->model;

  for (gsize i = 0; i < fit->n_samples; i++) {
    const LbBurnSample *sample = &fit->samples[i];

    if (!lb_burn_sample_is_used (sample)) {
      model->n_set_aside += sample->is_set_aside ? 1 : 0;
      model->n_unusable += sample->is_set_aside ? 0 : 1;
      continue;
    }

    guint row = lb_burn_size_row (model, sample->bar);

    if (row == UNSEEN && model->n_sizes < LB_BURN_SIZES_MAX) {
      row = model->n_sizes++;
      model->sizes[row] = sample->bar;
    }
    model->size_bars[row] += sample->n_bars;
    model->visibility_bars[sample->visibility] += sample->n_bars;
    model->n_bars += sample->n_bars;
    model->n_faults += sample->has_fault ? 1 : 0;
    model->n_samples++;
  }
}

static void
sum_samples (Fit *fit)
{
  memset (fit->shapes, 0, sizeof fit->shapes);
  memset (fit->sums, 0, sizeof fit->sums);
  for (gsize i = 0; i < fit->n_samples; i++) {
    const LbBurnSample *sample = &fit->samples[i];

    if (!lb_burn_sample_is_used (sample))
      continue;

    const guint row = lb_burn_size_row (fit->model, sample->bar);
    const double shape = weight_of (sample) * lb_burn_shape (fit->model, sample->n_bars);

    fit->shapes[row][sample->visibility] += shape;
    fit->sums[row][sample->visibility] += shape * sample->trigger_s / sample->steel_m2;
  }
}

/* --- Factors -------------------------------------------------------------------------------- */

/* The curvature at the peak in each direction: the sum of the shapes that bear on it. */
static void
find_curvature (Fit *fit, double curvature[N_FACTORS][N_FACTORS])
{
  memset (curvature, 0, sizeof (double[N_FACTORS][N_FACTORS]));
  for (guint i = 0; i < N_FACTORS; i++)
    curvature[i][i] = fit->priors[i].shape;
  for (guint row = 0; row < ROWS; row++) {
    for (guint v = 0; v < LB_N_VISIBILITIES; v++) {
      const guint at[] = { 0, AT_SIZE (row), AT_VISIBILITY (v) };

      for (guint i = 0; i < G_N_ELEMENTS (at); i++) {
        for (guint j = 0; j < G_N_ELEMENTS (at); j++)
          curvature[at[i]][at[j]] += fit->shapes[row][v];
      }
    }
  }
}

/* Cholesky's lower factor; the priors on the diagonal keep every pivot positive. */
static void
find_root (Fit *fit)
{
  double curvature[N_FACTORS][N_FACTORS];

  find_curvature (fit, curvature);
  for (guint i = 0; i < N_FACTORS; i++) {
    for (guint j = 0; j <= i; j++) {
      double rest = curvature[i][j];

      for (guint k = 0; k < j; k++)
        rest -= fit->root[i][k] * fit->root[j][k];
      fit->root[i][j] = i == j ? sqrt (rest) : rest / fit->root[j][j];
    }
  }
}

/* Solves root × y = x in place; the length of y, squared, is the variance in direction x. */
static void
solve_down (const Fit *fit, double x[N_FACTORS])
{
  for (guint i = 0; i < N_FACTORS; i++) {
    for (guint k = 0; k < i; k++)
      x[i] -= fit->root[i][k] * x[k];
    x[i] /= fit->root[i][i];
  }
}

static void
solve_up (const Fit *fit, double x[N_FACTORS])
{
  for (guint i = N_FACTORS; i-- > 0;) {
    for (guint k = i + 1; k < N_FACTORS; k++)
      x[i] -= fit->root[k][i] * x[k];
    x[i] /= fit->root[i][i];
  }
}

/* Which way the posterior rises. */
static void
find_slope (const Fit *fit, double slope[N_FACTORS])
{
  for (guint i = 0; i < N_FACTORS; i++) {
    const LbBurnRate *prior = &fit->priors[i];

    slope[i] = prior->shape * (prior->mean * exp (-fit->logs[i]) - 1);
  }
  for (guint row = 0; row < ROWS; row++) {
    for (guint v = 0; v < LB_N_VISIBILITIES; v++) {
      const guint at[] = { 0, AT_SIZE (row), AT_VISIBILITY (v) };
      const double rate = exp (fit->logs[at[0]] + fit->logs[at[1]] + fit->logs[at[2]]);
      const double pull = fit->sums[row][v] / rate - fit->shapes[row][v];

      for (guint i = 0; i < G_N_ELEMENTS (at); i++)
        slope[at[i]] += pull;
    }
  }
}

/* Where all samples together put the job's rate: close enough for the steps to be small. */
static void
begin_at_mean (Fit *fit)
{
  const LbBurnRate *prior = &fit->priors[0];
  double shape = prior->shape, sum = prior->shape * prior->mean;

  for (guint row = 0; row < ROWS; row++) {
    for (guint v = 0; v < LB_N_VISIBILITIES; v++) {
      shape += fit->shapes[row][v];
      sum += fit->sums[row][v];
    }
  }
  memset (fit->logs, 0, sizeof fit->logs);
  fit->logs[0] = log (sum / shape);
}

static void
find_factors (Fit *fit)
{
  double largest = INFINITY;

  sum_samples (fit);
  find_root (fit);
  begin_at_mean (fit);
  for (int n = 0; n < N_STEPS_MOST && largest > STEP_ENOUGH; n++) {
    double step[N_FACTORS];

    find_slope (fit, step);
    solve_down (fit, step);
    solve_up (fit, step);
    largest = 0;
    for (guint i = 0; i < N_FACTORS; i++) {
      fit->logs[i] += CLAMP (step[i], -STEP_MOST, STEP_MOST);
      largest = MAX (largest, fabs (step[i]));
    }
  }
}

/* --- Spreads -------------------------------------------------------------------------------- */

/* The rates seen, with what size and visibility do taken out, by number of bars. */
static void
sum_by_number (const Fit *fit, LbBurnRatios by_number[LB_BARS_MAX + 1])
{
  memset (by_number, 0, sizeof (LbBurnRatios[LB_BARS_MAX + 1]));
  for (gsize i = 0; i < fit->n_samples; i++) {
    const LbBurnSample *sample = &fit->samples[i];

    if (!lb_burn_sample_is_used (sample))
      continue;

    const guint row = lb_burn_size_row (fit->model, sample->bar);
    const double factor = fit->logs[AT_SIZE (row)] + fit->logs[AT_VISIBILITY (sample->visibility)];
    const double log_rate = log (sample->trigger_s / sample->steel_m2) - factor;
    LbBurnRatios *ratios = &by_number[MIN (sample->n_bars, LB_BARS_MAX)];

    ratios->n += weight_of (sample);
    ratios->sum_log += weight_of (sample) * log_rate;
    ratios->sum += weight_of (sample) * exp (log_rate);
  }
}

static double
chance_of_spreads (const Fit *fit,
                   const LbBurnRatios by_number[LB_BARS_MAX + 1],
                   double dive_spread,
                   double bar_spread)
{
  double chance = 0, shapes = 0, sum = 0;

  for (guint n = 1; n <= LB_BARS_MAX; n++) {
    const double shape = 1 / (dive_spread + bar_spread / n);

    if (by_number[n].n <= 0)
      continue;
    chance += lb_burn_ratios_chance (&by_number[n], shape);
    shapes += by_number[n].n * shape;
    sum += shape * by_number[n].sum;
  }
  return chance + lb_burn_mean_chance (&fit->priors[0], shapes, sum);
}

/* Their mean over the grid, by how likely each pair is. */
static void
find_spreads (Fit *fit)
{
  LbBurnRatios by_number[LB_BARS_MAX + 1];
  double chances[LB_BURN_SPREADS][LB_BURN_SPREADS];
  double best = -INFINITY, total = 0, dive = 0, bar = 0;

  sum_by_number (fit, by_number);
  for (int i = 0; i < LB_BURN_SPREADS; i++) {
    for (int j = 0; j < LB_BURN_SPREADS; j++) {
      chances[i][j] = lb_burn_spread_chance (i) + lb_burn_spread_chance (j) +
                      chance_of_spreads (fit, by_number, lb_burn_spread (DIVE_SPREAD_USUAL, i),
                                         lb_burn_spread (BAR_SPREAD_USUAL, j));
      best = MAX (best, chances[i][j]);
    }
  }
  for (int i = 0; i < LB_BURN_SPREADS; i++) {
    for (int j = 0; j < LB_BURN_SPREADS; j++) {
      const double weight = exp (chances[i][j] - best);

      total += weight;
      dive += weight * lb_burn_spread (DIVE_SPREAD_USUAL, i);
      bar += weight * lb_burn_spread (BAR_SPREAD_USUAL, j);
    }
  }
  fit->model->dive_spread = dive / total;
  fit->model->bar_spread = bar / total;
}

/* --- Rates ---------------------------------------------------------------------------------- */

/* The rate in a direction of the factors, each by its share, and how well it is known. */
static LbBurnRate
rate_in (const Fit *fit, const double direction[N_FACTORS], double mixed)
{
  double solved[N_FACTORS], log_rate = 0, variance = mixed;

  memcpy (solved, direction, sizeof solved);
  solve_down (fit, solved);
  for (guint i = 0; i < N_FACTORS; i++) {
    log_rate += direction[i] * fit->logs[i];
    variance += solved[i] * solved[i];
  }
  return (LbBurnRate){ .mean = exp (log_rate), .shape = MAX (1 / variance, SHAPE_LEAST) };
}

/* A visibility that is not known is taken as the job's have been, by bars; what they differ by is
 * added to what is not known. */
static double
mix (const Fit *fit, const guint *bars, guint first, guint n, double direction[N_FACTORS])
{
  const double all = fit->model->n_bars;
  double mean = 0, variance = 0;

  for (guint i = 0; i < n; i++) {
    direction[first + i] = bars[i] / all;
    mean += bars[i] / all * fit->logs[first + i];
  }
  for (guint i = 0; i < n; i++)
    variance += bars[i] / all * (fit->logs[first + i] - mean) * (fit->logs[first + i] - mean);
  return variance;
}

static double
direct_to_visibility (const Fit *fit, guint visibility, double direction[N_FACTORS])
{
  if (visibility != LB_VISIBILITY_UNKNOWN) {
    direction[AT_VISIBILITY (visibility)] = 1;
    return 0;
  }
  return mix (fit, fit->model->visibility_bars, AT_VISIBILITY (0), LB_N_VISIBILITIES, direction);
}

static void
find_rates (Fit *fit)
{
  LbBurnModel *model = fit->model;
  double direction[N_FACTORS] = { 1 };
  double mixed = mix (fit, model->size_bars, AT_SIZE (0), ROWS, direction);

  mixed += direct_to_visibility (fit, LB_VISIBILITY_UNKNOWN, direction);
  model->job = rate_in (fit, direction, mixed);
  for (guint row = 0; row < ROWS; row++) {
    if (row >= model->n_sizes && row != UNSEEN)
      continue;
    for (guint v = 0; v < LB_N_VISIBILITIES; v++) {
      memset (direction, 0, sizeof direction);
      direction[0] = 1;
      direction[AT_SIZE (row)] = 1;
      mixed = direct_to_visibility (fit, v, direction);
      model->rates[row][v] = rate_in (fit, direction, mixed);
    }
  }
}

/* --- The model ------------------------------------------------------------------------------ */

static void
set_priors (Fit *fit)
{
  fit->priors[0] = lb_burn_prior (&fit->model->stated);
  for (guint row = 0; row < ROWS; row++)
    fit->priors[AT_SIZE (row)] = (LbBurnRate){ .mean = 1, .shape = SIZE_SHAPE };
  for (guint v = 0; v < LB_N_VISIBILITIES; v++)
    fit->priors[AT_VISIBILITY (v)] = (LbBurnRate){ .mean = 1, .shape = VISIBILITY_SHAPE };
}

static LbRange
stated_rate (const LbAssumptions *assumptions)
{
  const double *value = assumptions->value;
  const double likely = value[LB_ASSUME_BURN_RATE];

  return (LbRange){ .likely = likely,
                    .low = MIN (likely, value[LB_ASSUME_BURN_RATE_LOW]),
                    .high = MAX (likely, value[LB_ASSUME_BURN_RATE_HIGH]) };
}

void
lb_burn_model_fit (const LbBurnSample *samples,
                   gsize n_samples,
                   const LbBurnShift *shifts,
                   gsize n_shifts,
                   const LbAssumptions *assumptions,
                   LbBurnModel *out_model)
{
  g_return_if_fail (samples != NULL || n_samples == 0);
  g_return_if_fail (shifts != NULL || n_shifts == 0);
  g_return_if_fail (assumptions);
  g_return_if_fail (out_model);

  *out_model = (LbBurnModel){ .assumptions = *assumptions,
                              .stated = stated_rate (assumptions),
                              .dive_spread = DIVE_SPREAD_USUAL,
                              .bar_spread = BAR_SPREAD_USUAL };

  Fit fit = { .samples = samples, .n_samples = n_samples, .model = out_model };

  lb_burn_use_fit (shifts, n_shifts, out_model);
  set_priors (&fit);
  count_samples (&fit);
  if (out_model->n_samples == 0) {
    out_model->job = fit.priors[0];
    return;
  }

  find_factors (&fit);
  for (int round = 1; round < N_ROUNDS; round++) {
    find_spreads (&fit);
    find_factors (&fit);
  }
  find_rates (&fit);
  lb_burn_find_middle (samples, n_samples, out_model);
  for (gsize i = 0; i < n_samples; i++)
    out_model->n_outliers += lb_burn_model_is_outlier (out_model, &samples[i]) ? 1 : 0;
}
