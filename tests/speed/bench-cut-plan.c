/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All cut plans of a job, with the search for the order of burning and the ranges of a learned rate
 * in them: time a pile at 1,000, at 10,000 and at 100,000 piles, which must be alike. */
#include "big-job.h"
#include "stopwatch.h"
#include "trade/cut-plan.h"

#define N_SIZES   3
#define N_SAMPLES 200

static const guint sizes[N_SIZES] = { 1000, 10000, 100000 };

/* What a job's dives may have taught: some 40 s a square inch, not always the same. */
static void
learn (const LbAssumptions *assumptions, LbBurnModel *out_model)
{
  LbBurnSample samples[N_SAMPLES];

  for (guint i = 0; i < N_SAMPLES; i++) {
    const LbBar *bar = lb_bar_find (i % 2 == 0 ? "#8" : "#9");

    samples[i] = (LbBurnSample){
      .n_bars = 8,
      .steel_m2 = 8 * bar->area_m2,
      .bar = bar,
      .visibility = i % 3 == 0 ? LB_VISIBILITY_POOR : LB_VISIBILITY_FAIR,
      .trigger_s = 8 * bar->area_m2 * (50000 + 700 * (i % 40)),
      .reason = "",
      .pile = (int) i,
    };
  }
  lb_burn_model_fit (samples, N_SAMPLES, NULL, 0, assumptions, out_model);
}

static void
reckon (const LbPile *piles, guint n, const LbCutBasis *basis)
{
  double sum = 0;

  for (guint i = 0; i < n; i++) {
    LbCutPlan plan;

    lb_cut_plan_reckon (&piles[i], LB_BAR (i % 8), 0, 0, basis, &plan);
    sum += plan.figures[LB_FIGURE_HOOK_LOAD].range.likely;
  }
  g_assert_cmpfloat (sum, >, 0);
}

int
main (int argc, char *argv[])
{
  const guint n_rounds = argc > 1 && g_str_equal (argv[1], "--long") ? 20 : 2;
  const guint n_most = sizes[N_SIZES - 1];
  g_autofree LbPile *piles = g_new (LbPile, n_most);
  g_autofree char *marks = g_malloc ((gsize) n_most * 16);
  LbAssumptions assumptions;
  LbBurnModel burn;
  Stopwatch times[N_SIZES];

  lb_assumptions_init (&assumptions);
  learn (&assumptions, &burn);
  for (guint i = 0; i < n_most; i++)
    big_job_pile (i, &piles[i], marks + (gsize) i * 16);

  LbCutBasis basis = lb_cut_basis (&assumptions);
  basis.burn = &burn;
  for (guint size = 0; size < N_SIZES; size++)
    stopwatch_init_own (&times[size]);
  for (guint round = 0; round < n_rounds; round++) {
    for (guint size = 0; size < N_SIZES; size++) {
      stopwatch_begin (&times[size]);
      reckon (piles, sizes[size], &basis);
      stopwatch_end (&times[size]);
    }
  }
  for (guint size = 0; size < N_SIZES; size++) {
    g_autofree char *name = g_strdup_printf ("cut plans of %u piles", sizes[size]);

    stopwatch_print (&times[size], name);
  }
  for (guint size = 1; size < N_SIZES; size++) {
    g_autofree char *name = g_strdup_printf ("time a pile at %u against %u", sizes[size], sizes[0]);

    stopwatch_print_ratio (
      name, stopwatch_median (&times[size]) / stopwatch_median (&times[0]) * sizes[0] / sizes[size],
      1.2);
  }
  for (guint size = 0; size < N_SIZES; size++)
    stopwatch_clear (&times[size]);
  g_print ("1..1\nok 1 - the cut plans were measured\n");

  return 0;
}
