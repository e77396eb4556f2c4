/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Learning from invented records whose truth is known. Chance comes from a fixed seed, so that a
 * test says the same each time. */
#include "trade/burn-rate.h"

#include "trade/gamma-range.h"

#include <math.h>

#define IN2   0.00064516
#define SEED  20260608u
#define RATE  (25 / IN2)
#define BAR8  0.79
#define BAR11 1.56

/* --- Records -------------------------------------------------------------------------------- */

static double
chance_normal (GRand *chance)
{
  return sqrt (-2 * log (1 - g_rand_double (chance))) * cos (2 * G_PI * g_rand_double (chance));
}

/* A gamma variable of mean 1, shape of 1 or more: Marsaglia and Tsang, “A simple method for
 * generating gamma variables”, ACM Trans. Math. Softw. 26 (2000). */
static double
chance_gamma (GRand *chance, double shape)
{
  const double d = shape - 1.0 / 3, c = 1 / sqrt (9 * d);

  for (;;) {
    const double x = chance_normal (chance), v = 1 + c * x;
    const double cube = v * v * v;

    if (v > 0 && log (1 - g_rand_double (chance)) < x * x / 2 + d - d * cube + d * log (cube))
      return d * cube / shape;
  }
}

static LbBurnSample
sample_of (const char *size, guint n_bars, double trigger_s)
{
  const LbBar *bar = lb_bar_find (size);

  return (LbBurnSample){ .n_bars = n_bars,
                         .steel_m2 = n_bars * bar->area_m2,
                         .bar = bar,
                         .visibility = LB_VISIBILITY_FAIR,
                         .trigger_s = trigger_s,
                         .reason = "",
                         .pile = -1,
                         .shift = -1 };
}

static void
fit (const LbBurnSample *samples, gsize n, LbBurnModel *out_model)
{
  LbAssumptions assumptions;

  lb_assumptions_init (&assumptions);
  lb_burn_model_fit (samples, n, NULL, 0, &assumptions, out_model);
}

/* @n piles of 8 bars, at a rate of 40 s/in² but for chance. */
static GArray *
record_of (guint n, double rate)
{
  g_autoptr (GRand) chance = g_rand_new_with_seed (SEED);
  GArray *samples = g_array_new (FALSE, FALSE, sizeof (LbBurnSample));

  for (guint i = 0; i < n; i++) {
    LbBurnSample sample = sample_of (i % 3 == 0 ? "#11" : "#8", 8, 0);

    sample.trigger_s = sample.steel_m2 * rate * chance_gamma (chance, 16);
    g_array_append_val (samples, sample);
  }
  return samples;
}

static void
predict (const LbBurnModel *model, const char *size, guint n_bars, LbBurn *out_burn)
{
  const LbBar *bar = lb_bar_find (size);
  LbRange oxygen;

  lb_burn_model_predict (model, bar, n_bars * bar->area_m2, n_bars, LB_VISIBILITY_FAIR, out_burn,
                         &oxygen);
}

static double
width (const LbRange *range)
{
  return log (range->high / range->low);
}

/* --- Nothing learned ------------------------------------------------------------------------ */

static void
test_no_samples (void)
{
  LbAssumptions assumptions;
  LbBurnModel model;
  LbBurnBasis basis;
  LbBurn stated, burn;
  LbRange oxygen;

  lb_assumptions_init (&assumptions);
  fit (NULL, 0, &model);
  lb_burn_model_basis (&model, NULL, LB_VISIBILITY_UNKNOWN, &basis);
  g_assert_true (basis.is_default);
  for (guint n = 1; n <= 60; n++) {
    lb_burn_reckon (&assumptions, n * BAR8 * IN2, n, &stated);
    lb_burn_model_predict (&model, lb_bar_find ("#8"), n * BAR8 * IN2, n, LB_VISIBILITY_NONE, &burn,
                           &oxygen);
    g_assert_cmpfloat (burn.trigger_s.likely, ==, stated.trigger_s.likely);
    g_assert_cmpfloat (burn.trigger_s.low, ==, stated.trigger_s.low);
    g_assert_cmpfloat (burn.trigger_s.high, ==, stated.trigger_s.high);
    g_assert_cmpfloat (burn.rods.likely, ==, stated.rods.likely);
    g_assert_cmpfloat (burn.wall_s.low, ==, stated.wall_s.low);
    g_assert_cmpfloat (burn.wall_s.high, ==, stated.wall_s.high);
    /* 24 cu ft a minute, and 15 % of each rod wasted burns too: 10 at the low end, 25 at the
     * high. */
    g_assert_cmpfloat_with_epsilon (oxygen.likely,
                                    burn.trigger_s.likely / 0.85 * 24 / 60 * pow (0.3048, 3), 1e-9);
    g_assert_cmpfloat (oxygen.low / burn.trigger_s.low, <, oxygen.likely / burn.trigger_s.likely);
    g_assert_cmpfloat (oxygen.high / burn.trigger_s.high, >, oxygen.likely / burn.trigger_s.likely);
  }

  const LbRange rate = lb_burn_model_rate (&model, NULL, LB_VISIBILITY_UNKNOWN);

  g_assert_cmpfloat (rate.likely, ==, assumptions.value[LB_ASSUME_BURN_RATE]);
}

static void
test_no_bars (void)
{
  g_autoptr (GArray) record = record_of (5, RATE);
  LbBurnModel model;
  LbBurn burn;
  LbBurnSum sum = LB_BURN_SUM_INIT;
  LbRange oxygen;

  fit ((const LbBurnSample *) record->data, record->len, &model);
  lb_burn_model_predict (&model, NULL, (double) NAN, 0, LB_VISIBILITY_UNKNOWN, &burn, &oxygen);
  g_assert_cmpfloat (burn.wall_s.high, ==, 0);
  lb_burn_sum_predict (&sum, &model, &burn, &oxygen);
  g_assert_cmpfloat (burn.wall_s.high, ==, 0);
  g_assert_cmpfloat (oxygen.high, ==, 0);
  /* Bars of an unknown steel stay unknown. */
  lb_burn_model_predict (&model, NULL, (double) NAN, 4, LB_VISIBILITY_UNKNOWN, &burn, &oxygen);
  g_assert_true (isnan (burn.trigger_s.likely));
  g_assert_true (isnan (burn.wall_s.high));
  g_assert_true (isnan (oxygen.low));
}

/* --- The arithmetic ------------------------------------------------------------------------- */

/* With the sizes and visibilities averaged over, the job's rate is the posterior that its own
 * bars alone would give: shape and sum of what was stated, and of each sample, added up. The
 * factors can only leave it less sure, never more. */
static void
test_posterior (void)
{
  const LbBurnSample samples[] = { sample_of ("#8", 8, 200), sample_of ("#8", 4, 90),
                                   sample_of ("#8", 2, 70) };
  LbBurnModel model;

  fit (samples, G_N_ELEMENTS (samples), &model);

  const double prior_shape = lb_gamma_shape_of_ratio (4);
  double shape = prior_shape;
  double sum = prior_shape * RATE * lb_gamma_quantile (0, prior_shape);

  for (guint i = 0; i < G_N_ELEMENTS (samples); i++) {
    const double k = 1 / (model.dive_spread + model.bar_spread / samples[i].n_bars);

    shape += k;
    sum += k * samples[i].trigger_s / samples[i].steel_m2;
  }
  g_test_message ("conjugate %.3f s/in², shape %.1f; fitted %.3f, %.1f", sum / shape * IN2, shape,
                  model.job.mean * IN2, model.job.shape);
  g_assert_cmpfloat_with_epsilon (model.job.mean, sum / shape, 0.01 * sum / shape);
  g_assert_cmpfloat (model.job.shape, <=, shape * 1.0001);
  g_assert_cmpfloat (model.job.shape, >, 0.9 * shape);
}

static void
test_more_samples_narrow (void)
{
  double last_rate = log (4), last_pile = NAN;

  for (guint n = 1; n <= 1024; n *= 4) {
    g_autoptr (GArray) record = record_of (n, 40 / IN2);
    LbBurnModel model;
    LbBurn burn;

    fit ((const LbBurnSample *) record->data, record->len, &model);
    predict (&model, "#8", 8, &burn);

    const LbRange rate = lb_burn_model_rate (&model, lb_bar_find ("#8"), LB_VISIBILITY_FAIR);

    g_test_message ("%u piles: %.1f (%.1f to %.1f) s/in², a pile %.0f (%.0f to %.0f) s", n,
                    rate.likely * IN2, rate.low * IN2, rate.high * IN2, burn.trigger_s.likely,
                    burn.trigger_s.low, burn.trigger_s.high);
    g_assert_cmpfloat (width (&rate), <, last_rate);
    g_assert_cmpfloat (width (&burn.trigger_s), <, log (4));
    last_rate = width (&rate);
    last_pile = width (&burn.trigger_s);
  }
  /* A thousand piles leave nearly nothing to be known of the rate, and of the next pile its own
   * chance: shape 16, so a deviation of a quarter. */
  g_assert_cmpfloat (last_rate, <, 0.06);
  g_assert_cmpfloat_with_epsilon (last_pile, 2 * LB_Z_90 / 4, 0.05);
}

/* Another unit of time is no other record: stated rates and times k times as long give all
 * quantiles k times as long. */
static void
test_scaling (void)
{
  for (double k = 0.5; k <= 2; k *= 2) {
    g_autoptr (GArray) record = record_of (12, 30 / IN2);
    LbAssumptions assumptions;
    LbBurnModel plain, scaled;
    LbBurn one, other;

    lb_assumptions_init (&assumptions);
    fit ((const LbBurnSample *) record->data, record->len, &plain);
    for (guint i = 0; i < record->len; i++)
      g_array_index (record, LbBurnSample, i).trigger_s *= k;
    assumptions.value[LB_ASSUME_BURN_RATE] *= k;
    assumptions.value[LB_ASSUME_BURN_RATE_LOW] *= k;
    assumptions.value[LB_ASSUME_BURN_RATE_HIGH] *= k;
    lb_burn_model_fit ((const LbBurnSample *) record->data, record->len, NULL, 0, &assumptions,
                       &scaled);
    predict (&plain, "#11", 5, &one);
    predict (&scaled, "#11", 5, &other);
    g_assert_cmpfloat_with_epsilon (other.trigger_s.low, k * one.trigger_s.low, 1e-6);
    g_assert_cmpfloat_with_epsilon (other.trigger_s.likely, k * one.trigger_s.likely, 1e-6);
    g_assert_cmpfloat_with_epsilon (other.trigger_s.high, k * one.trigger_s.high, 1e-6);
  }
}

static void
test_order_does_not_matter (void)
{
  g_autoptr (GArray) record = record_of (40, 30 / IN2);
  LbBurnModel forward, backward;
  LbBurn one, other;

  fit ((const LbBurnSample *) record->data, record->len, &forward);
  for (guint i = 0; i < record->len / 2; i++) {
    LbBurnSample *a = &g_array_index (record, LbBurnSample, i);
    LbBurnSample *b = &g_array_index (record, LbBurnSample, record->len - 1 - i);
    const LbBurnSample kept = *a;

    *a = *b;
    *b = kept;
  }
  fit ((const LbBurnSample *) record->data, record->len, &backward);
  predict (&forward, "#11", 7, &one);
  predict (&backward, "#11", 7, &other);
  g_assert_cmpfloat_with_epsilon (one.trigger_s.high, other.trigger_s.high, 1e-6);
}

/* --- Sizes and visibilities ----------------------------------------------------------------- */

static void
test_sizes_shrink_toward_the_job (void)
{
  LbBurnSample samples[21];
  LbBurnModel model;

  for (int i = 0; i < 20; i++)
    samples[i] = sample_of ("#8", 8, 8 * BAR8 * (i % 2 == 0 ? 20 : 30));
  samples[20] = sample_of ("#11", 8, 8 * BAR11 * 50);
  fit (samples, 21, &model);

  const LbRange eight = lb_burn_model_rate (&model, lb_bar_find ("#8"), LB_VISIBILITY_FAIR);
  const LbRange eleven = lb_burn_model_rate (&model, lb_bar_find ("#11"), LB_VISIBILITY_FAIR);
  const LbRange unseen = lb_burn_model_rate (&model, lb_bar_find ("#6"), LB_VISIBILITY_FAIR);
  LbBurnBasis basis;

  g_test_message ("#8 %.1f, #11 %.1f, #6 %.1f s/in²", eight.likely * IN2, eleven.likely * IN2,
                  unseen.likely * IN2);
  g_assert_cmpfloat (eleven.likely, >, 1.05 * eight.likely);
  g_assert_cmpfloat (eleven.likely, <, 45 / IN2);
  g_assert_cmpfloat (width (&eleven), >, width (&eight));
  g_assert_cmpfloat (width (&unseen), >, width (&eleven));
  lb_burn_model_basis (&model, lb_bar_find ("#11"), LB_VISIBILITY_FAIR, &basis);
  g_assert_cmpuint (basis.n_bars, ==, 168);
  g_assert_cmpuint (basis.n_bars_of_size, ==, 8);
  g_assert_cmpuint (basis.n_bars_in_visibility, ==, 168);
  lb_burn_model_basis (&model, lb_bar_find ("#6"), LB_VISIBILITY_NONE, &basis);
  g_assert_cmpuint (basis.n_bars_of_size, ==, 0);
  g_assert_cmpuint (basis.n_bars_in_visibility, ==, 0);

  /* With as many of its own, a size has its own rate. */
  for (int i = 10; i < 21; i++)
    samples[i] = sample_of ("#11", 8, 8 * BAR11 * (i % 2 == 0 ? 40 : 60));
  fit (samples, 21, &model);
  g_assert_cmpfloat (lb_burn_model_rate (&model, lb_bar_find ("#11"), LB_VISIBILITY_FAIR).likely, >,
                     45 / IN2);
}

static void
test_black_water (void)
{
  g_autoptr (GArray) record = record_of (60, 25 / IN2);
  LbBurnModel model;

  for (guint i = 0; i < record->len; i += 2) {
    LbBurnSample *sample = &g_array_index (record, LbBurnSample, i);

    sample->visibility = LB_VISIBILITY_NONE;
    sample->trigger_s *= 2;
  }
  fit ((const LbBurnSample *) record->data, record->len, &model);

  const LbBar *bar = lb_bar_find ("#8");
  const LbRange black = lb_burn_model_rate (&model, bar, LB_VISIBILITY_NONE);
  const LbRange fair = lb_burn_model_rate (&model, bar, LB_VISIBILITY_FAIR);
  const LbRange any = lb_burn_model_rate (&model, bar, LB_VISIBILITY_UNKNOWN);

  g_assert_cmpfloat (black.likely / fair.likely, >, 1.6);
  g_assert_cmpfloat (black.likely / fair.likely, <, 2.4);
  /* Not knowing which, it is between them and less sure than either. */
  g_assert_cmpfloat (any.likely, >, fair.likely);
  g_assert_cmpfloat (any.likely, <, black.likely);
  g_assert_cmpfloat (width (&any), >, width (&black));
}

/* More sizes than are told apart do no harm. */
static void
test_every_size (void)
{
  gsize n_bars;
  const LbBar *bars = lb_bar_table (&n_bars);
  g_autoptr (GArray) record = g_array_new (FALSE, FALSE, sizeof (LbBurnSample));
  LbBurnModel model;

  for (gsize i = 0; i < n_bars; i++) {
    const LbBurnSample sample = sample_of (bars[i].name, 6, 6 * bars[i].area_m2 * RATE);

    g_array_append_val (record, sample);
  }
  fit ((const LbBurnSample *) record->data, record->len, &model);
  g_assert_cmpuint (n_bars, >, LB_BURN_SIZES_MAX);
  g_assert_cmpuint (model.n_sizes, ==, LB_BURN_SIZES_MAX);
  g_assert_cmpuint (model.n_bars, ==, 6 * n_bars);
  for (gsize i = 0; i < n_bars; i++)
    g_assert_cmpfloat_with_epsilon (
      lb_burn_model_rate (&model, &bars[i], LB_VISIBILITY_FAIR).likely, RATE, 0.05 * RATE);
}

/* --- Samples that are not like the rest ----------------------------------------------------- */

static void
test_outlier_is_flagged_and_kept (void)
{
  g_autoptr (GArray) record = record_of (30, 25 / IN2);
  LbBurnModel without, with, aside;
  LbBurnSample odd = sample_of ("#8", 8, 8 * BAR8 * 300);

  fit ((const LbBurnSample *) record->data, record->len, &without);
  g_assert_cmpuint (without.n_outliers, ==, 0);
  g_array_append_val (record, odd);
  fit ((const LbBurnSample *) record->data, record->len, &with);
  g_assert_cmpuint (with.n_outliers, ==, 1);
  g_assert_true (lb_burn_model_is_outlier (&with, &odd));
  g_assert_cmpuint (with.n_samples, ==, 31);
  g_assert_cmpfloat (with.job.mean, >, 1.1 * without.job.mean);

  g_array_index (record, LbBurnSample, 30).is_set_aside = TRUE;
  fit ((const LbBurnSample *) record->data, record->len, &aside);
  g_assert_cmpuint (aside.n_set_aside, ==, 1);
  g_assert_cmpuint (aside.n_outliers, ==, 0);
  g_assert_cmpfloat (aside.job.mean, ==, without.job.mean);
}

/* Minutes noted for seconds, or a tenth: found in a record of any length, though one such makes all
 * rates look as if they varied. */
static void
test_slip_of_the_pen (void)
{
  static const double wrong[] = { 60, 1.0 / 60, 10 };

  for (guint n = 0; n <= 64; n = 2 * n + 1) {
    for (guint i = 0; i < G_N_ELEMENTS (wrong); i++) {
      g_autoptr (GArray) record = record_of (n, 25 / IN2);
      LbBurnSample slip = sample_of ("#8", 8, 8 * BAR8 * 25 * wrong[i]);
      LbBurnModel model;

      g_array_append_val (record, slip);
      fit ((const LbBurnSample *) record->data, record->len, &model);
      g_assert_true (lb_burn_model_is_outlier (&model, &slip));
      g_assert_cmpuint (model.n_outliers, ==, 1);
    }
  }
}

static void
test_faults_count_for_half (void)
{
  LbBurnSample samples[] = { sample_of ("#8", 8, 160), sample_of ("#8", 8, 160),
                             sample_of ("#8", 8, 400) };
  LbBurnModel whole, half;

  fit (samples, 3, &whole);
  samples[2].has_fault = TRUE;
  fit (samples, 3, &half);
  g_assert_cmpuint (half.n_faults, ==, 1);
  g_assert_cmpuint (half.n_samples, ==, 3);
  g_assert_cmpfloat (half.job.mean, <, whole.job.mean);
}

static void
test_unusable (void)
{
  LbBurnSample samples[] = {
    sample_of ("#8", 8, (double) NAN), sample_of ("#8", 0, 100),      sample_of ("#8", 8, 0),
    sample_of ("#8", 8, -5),           sample_of ("#8", 8, INFINITY), sample_of ("#8", 8, 158)
  };
  LbBurnModel model;

  samples[5].steel_m2 = (double) NAN;
  fit (samples, G_N_ELEMENTS (samples), &model);
  g_assert_cmpuint (model.n_unusable, ==, G_N_ELEMENTS (samples));
  g_assert_cmpuint (model.n_samples, ==, 0);
}

/* --- Whether the range holds what it says --------------------------------------------------- */

/* A job drawn from what the model takes for granted: its rate, then piles in two sizes, and then
 * the pile to be foretold. */
static gboolean
is_foretold (GRand *chance, guint n_piles, gboolean *out_is_sum_foretold)
{
  const double shape = lb_gamma_shape_of_ratio (4);
  const double rate = RATE * lb_gamma_quantile (0, shape) / chance_gamma (chance, shape);
  const double of_size[] = { 1 / chance_gamma (chance, 44), 1 / chance_gamma (chance, 44) };
  const double dive = 0.04 * exp (G_LN2 * chance_normal (chance));
  const double bar = 0.09 * exp (G_LN2 * chance_normal (chance));
  LbBurnSample samples[64];
  LbBurnModel model;
  LbBurnSum sum = LB_BURN_SUM_INIT;
  LbBurn burn;
  LbRange oxygen;
  double all_s = 0;

  for (guint i = 0; i < n_piles; i++) {
    const guint n_bars = (guint) g_rand_int_range (chance, 1, 13);
    const int size = g_rand_int_range (chance, 0, 2);

    samples[i] = sample_of (size == 0 ? "#8" : "#11", n_bars, 0);
    samples[i].trigger_s = samples[i].steel_m2 * rate * of_size[size] *
                           chance_gamma (chance, MAX (1 / (dive + bar / n_bars), 1.01));
  }
  fit (samples, n_piles, &model);

  for (guint i = 0; i < 20; i++) {
    all_s += 8 * BAR11 * IN2 * rate * of_size[1] *
             chance_gamma (chance, MAX (1 / (dive + bar / 8), 1.01));
    lb_burn_sum_add (&sum, &model, lb_bar_find ("#11"), 8 * BAR11 * IN2, 8, LB_VISIBILITY_FAIR);
  }
  lb_burn_sum_predict (&sum, &model, &burn, &oxygen);
  *out_is_sum_foretold = all_s >= burn.trigger_s.low && all_s <= burn.trigger_s.high;

  const double one_s = 6 * BAR8 * IN2 * rate * of_size[0] *
                       chance_gamma (chance, MAX (1 / (dive + bar / 6), 1.01));

  predict (&model, "#8", 6, &burn);
  return one_s >= burn.trigger_s.low && one_s <= burn.trigger_s.high;
}

static void
test_coverage (void)
{
  static const guint n_piles[] = { 2, 8, 40 };
  const guint n_draws = 2500;

  for (guint i = 0; i < G_N_ELEMENTS (n_piles); i++) {
    g_autoptr (GRand) chance = g_rand_new_with_seed (SEED);
    guint n_inside = 0, n_sums_inside = 0;

    for (guint n = 0; n < n_draws; n++) {
      gboolean is_sum_inside;

      n_inside += is_foretold (chance, n_piles[i], &is_sum_inside) ? 1 : 0;
      n_sums_inside += is_sum_inside ? 1 : 0;
    }
    g_test_message ("after %u piles: the next is within P10 and P90 in %.1f %% of %u, "
                    "twenty more together in %.1f %%",
                    n_piles[i], 100.0 * n_inside / n_draws, n_draws,
                    100.0 * n_sums_inside / n_draws);
    g_assert_cmpfloat (n_inside, >=, 0.74 * n_draws);
    g_assert_cmpfloat (n_inside, <=, 0.86 * n_draws);
    g_assert_cmpfloat (n_sums_inside, >=, 0.74 * n_draws);
    g_assert_cmpfloat (n_sums_inside, <=, 0.90 * n_draws);
  }
}

/* --- Many piles ----------------------------------------------------------------------------- */

static void
test_sum_of_one_is_that_one (void)
{
  g_autoptr (GArray) record = record_of (12, 30 / IN2);
  LbBurnModel model;
  LbBurnSum sum = LB_BURN_SUM_INIT;
  LbBurn one, together;
  LbRange oxygen;

  fit ((const LbBurnSample *) record->data, record->len, &model);
  predict (&model, "#8", 8, &one);
  lb_burn_sum_add (&sum, &model, lb_bar_find ("#8"), 8 * BAR8 * IN2, 8, LB_VISIBILITY_FAIR);
  lb_burn_sum_predict (&sum, &model, &together, &oxygen);
  g_assert_cmpfloat_with_epsilon (together.trigger_s.low, one.trigger_s.low, 0.1);
  g_assert_cmpfloat_with_epsilon (together.trigger_s.high, one.trigger_s.high, 0.1);

  for (int i = 1; i < 50; i++)
    lb_burn_sum_add (&sum, &model, lb_bar_find ("#8"), 8 * BAR8 * IN2, 8, LB_VISIBILITY_FAIR);
  lb_burn_sum_predict (&sum, &model, &together, &oxygen);
  g_assert_cmpfloat (width (&together.trigger_s), <, width (&one.trigger_s));
  g_assert_cmpfloat_with_epsilon (together.trigger_s.likely, 50 * one.trigger_s.likely,
                                  0.03 * together.trigger_s.likely);
}

static void
test_sum_of_stated (void)
{
  LbAssumptions assumptions;
  LbBurnModel model;
  LbBurnSum sum = LB_BURN_SUM_INIT;
  LbBurn stated, together;
  LbRange oxygen;

  lb_assumptions_init (&assumptions);
  fit (NULL, 0, &model);
  for (int i = 0; i < 10; i++)
    lb_burn_sum_add (&sum, &model, NULL, 6.32 * IN2, 8, LB_VISIBILITY_UNKNOWN);
  lb_burn_sum_predict (&sum, &model, &together, &oxygen);
  lb_burn_reckon (&assumptions, 63.2 * IN2, 80, &stated);
  g_assert_cmpfloat_with_epsilon (together.trigger_s.high, stated.trigger_s.high, 1e-6);
  g_assert_cmpfloat_with_epsilon (together.wall_s.likely, stated.wall_s.likely, 1e-6);
  g_assert_cmpfloat (together.rods.low, ==, stated.rods.low);
}

/* --- Rods, oxygen and restrikes ------------------------------------------------------------- */

static void
test_uses (void)
{
  LbBurnShift shifts[30];
  LbAssumptions assumptions;
  LbBurnModel model;
  LbBurn burn;
  LbRange oxygen;

  lb_assumptions_init (&assumptions);
  for (guint i = 0; i < G_N_ELEMENTS (shifts); i++) {
    const double wobble = i % 2 == 0 ? 0.9 : 1.1;

    /* 600 s took 20 rods, 6 m3 at a scale of 1.2, and 100 s at each of 10 bars and 20 rods. */
    shifts[i] = (LbBurnShift){ .n_bars = 10,
                               .trigger_s = 600,
                               .rods = 20 * wobble,
                               .oxygen_m3 = 6 * wobble,
                               .flow_scale = 1.2,
                               .wall_s = 600 + (10 + 20 * wobble) * 100,
                               .reason = "",
                               .shift = (int) i };
  }
  lb_burn_model_fit (NULL, 0, shifts, G_N_ELEMENTS (shifts), &assumptions, &model);
  g_assert_cmpuint (model.rods.n_shifts, ==, 30);
  g_assert_cmpuint (model.rods.n_bars, ==, 300);
  /* The stated waste is a narrow range, so the record has to overcome it. */
  g_assert_cmpfloat_with_epsilon (model.rods.rate.mean, 20.0 / 600, 0.002);
  g_assert_cmpfloat_with_epsilon (model.oxygen.rate.mean, 6.0 / 720, 0.0001);
  g_assert_cmpfloat_with_epsilon (model.restrike.rate.mean, 100, 1);

  lb_burn_model_predict (&model, lb_bar_find ("#8"), 8 * BAR8 * IN2, 8, LB_VISIBILITY_UNKNOWN,
                         &burn, &oxygen);
  g_assert_cmpfloat (burn.trigger_s.likely, ==, 8 * BAR8 * IN2 * model.stated.likely);
  g_assert_cmpfloat (burn.rods.likely, >=, 5);
  g_assert_cmpfloat (burn.rods.likely, <=, 6);
  g_assert_cmpfloat_with_epsilon (burn.wall_s.likely,
                                  burn.trigger_s.likely + 100 * (8 + burn.rods.likely), 20);
  g_assert_cmpfloat (burn.wall_s.low, <, burn.wall_s.likely);
  g_assert_cmpfloat (burn.wall_s.low, >=, burn.trigger_s.low);
  /* Its end is further out than trigger time and the rods of it alone would put it. */
  g_assert_cmpfloat (burn.wall_s.high - burn.wall_s.likely, >,
                     1.001 * (burn.trigger_s.high - burn.trigger_s.likely) *
                       (1 + 100 * model.rods.rate.mean));

  /* Over many piles the shifts' chances are gone. */
  LbBurnSum sum = LB_BURN_SUM_INIT;
  LbRange oxygen_of_all;

  lb_burn_sum_add (&sum, &model, lb_bar_find ("#8"), 8 * BAR8 * IN2, 8, LB_VISIBILITY_UNKNOWN);
  lb_burn_sum_predict (&sum, &model, &burn, &oxygen_of_all);
  g_assert_cmpfloat (width (&oxygen_of_all), <, 0.995 * width (&oxygen));

  /* Nothing known, nothing learned. */
  for (guint i = 0; i < G_N_ELEMENTS (shifts); i++) {
    shifts[i].trigger_s = (double) NAN;
    shifts[i].is_set_aside = i < 3;
  }
  lb_burn_model_fit (NULL, 0, shifts, G_N_ELEMENTS (shifts), &assumptions, &model);
  g_assert_cmpuint (model.rods.n_shifts + model.oxygen.n_shifts + model.restrike.n_shifts, ==, 0);
  lb_burn_model_predict (&model, lb_bar_find ("#8"), 8 * BAR8 * IN2, 8, LB_VISIBILITY_UNKNOWN,
                         &burn, &oxygen);
  g_assert_cmpfloat_with_epsilon (burn.wall_s.likely, 1058, 1e-6);
}

/* --- Whatever a job is ---------------------------------------------------------------------- */

static void
check_rises (const LbRange *range)
{
  g_assert_true (isfinite (range->low) && isfinite (range->likely) && isfinite (range->high));
  g_assert_cmpfloat (range->low, >=, 0);
  g_assert_cmpfloat (range->low, <=, range->likely);
  g_assert_cmpfloat (range->likely, <=, range->high);
}

static double
any_between (double least, double most)
{
  return least > 0 ? least * pow (most / least, g_test_rand_double ())
                   : g_test_rand_double_range (least, most);
}

/* Assumptions anywhere in their ranges, and records that no crew would believe: every range is a
 * range. */
static void
test_any_job (void)
{
  gsize n_sizes;
  const LbBar *bars = lb_bar_table (&n_sizes);

  for (int job = 0; job < 2000; job++) {
    LbBurnSample samples[12];
    LbBurnShift shifts[6];
    const guint n_samples = (guint) g_test_rand_int_range (0, G_N_ELEMENTS (samples) + 1);
    const guint n_shifts = (guint) g_test_rand_int_range (0, G_N_ELEMENTS (shifts) + 1);
    LbAssumptions assumptions;
    LbBurnModel model;
    LbBurnSum sum = LB_BURN_SUM_INIT;
    LbBurn burn;
    LbRange oxygen;

    lb_assumptions_init (&assumptions);
    for (LbAssumptionId id = LB_ASSUME_BURN_RATE; id <= LB_ASSUME_OXYGEN_FLOW; id++)
      assumptions.value[id] = any_between (lb_assumption (id)->least, lb_assumption (id)->most);
    for (guint i = 0; i < n_samples; i++) {
      const LbBar *bar = &bars[g_test_rand_int_range (0, (int) n_sizes)];

      samples[i] = sample_of (bar->name, (guint) any_between (1, 100), any_between (0.01, 86400));
      samples[i].visibility = (LbVisibility) g_test_rand_int_range (0, LB_N_VISIBILITIES);
      samples[i].has_fault = g_test_rand_bit ();
    }
    for (guint i = 0; i < n_shifts; i++)
      shifts[i] = (LbBurnShift){ .n_bars = (guint) any_between (1, 100),
                                 .trigger_s = any_between (1, 86400),
                                 .wall_s = any_between (1, 86400),
                                 .rods = any_between (1, 100000),
                                 .oxygen_m3 = any_between (0.001, 100000),
                                 .flow_scale = any_between (1, 10),
                                 .has_fault = g_test_rand_bit (),
                                 .reason = "" };
    lb_burn_model_fit (samples, n_samples, shifts, n_shifts, &assumptions, &model);

    for (guint n = 1; n <= 60; n += 7) {
      const LbBar *bar = &bars[g_test_rand_int_range (0, (int) n_sizes)];
      const LbVisibility visibility = (LbVisibility) g_test_rand_int_range (0, LB_N_VISIBILITIES);

      lb_burn_model_predict (&model, bar, n * bar->area_m2, n, visibility, &burn, &oxygen);
      check_rises (&burn.trigger_s);
      check_rises (&burn.rods);
      check_rises (&burn.wall_s);
      check_rises (&oxygen);
      lb_burn_sum_add (&sum, &model, bar, n * bar->area_m2, n, visibility);
    }
    lb_burn_sum_predict (&sum, &model, &burn, &oxygen);
    check_rises (&burn.trigger_s);
    check_rises (&burn.rods);
    check_rises (&burn.wall_s);
    check_rises (&oxygen);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/burn-rate/no-samples", test_no_samples);
  g_test_add_func ("/burn-rate/no-bars", test_no_bars);
  g_test_add_func ("/burn-rate/posterior", test_posterior);
  g_test_add_func ("/burn-rate/more-samples-narrow", test_more_samples_narrow);
  g_test_add_func ("/burn-rate/scaling", test_scaling);
  g_test_add_func ("/burn-rate/order-does-not-matter", test_order_does_not_matter);
  g_test_add_func ("/burn-rate/sizes-shrink-toward-the-job", test_sizes_shrink_toward_the_job);
  g_test_add_func ("/burn-rate/black-water", test_black_water);
  g_test_add_func ("/burn-rate/every-size", test_every_size);
  g_test_add_func ("/burn-rate/outlier-is-flagged-and-kept", test_outlier_is_flagged_and_kept);
  g_test_add_func ("/burn-rate/slip-of-the-pen", test_slip_of_the_pen);
  g_test_add_func ("/burn-rate/faults-count-for-half", test_faults_count_for_half);
  g_test_add_func ("/burn-rate/unusable", test_unusable);
  g_test_add_func ("/burn-rate/coverage", test_coverage);
  g_test_add_func ("/burn-rate/sum-of-one-is-that-one", test_sum_of_one_is_that_one);
  g_test_add_func ("/burn-rate/sum-of-stated", test_sum_of_stated);
  g_test_add_func ("/burn-rate/uses", test_uses);
  g_test_add_func ("/burn-rate/any-job", test_any_job);
  return g_test_run ();
}
