/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All cut plans of a job: time a pile at 1,000 and at 10,000 piles, which must be alike. */
#include "big-job.h"
#include "stopwatch.h"
#include "trade/cut-plan.h"

#define N_FEW  1000
#define N_MANY 10000

static void
reckon (const LbPile *piles, guint n, const LbAssumptions *assumptions)
{
  const LbCutBasis basis = lb_cut_basis (assumptions);
  double sum = 0;

  for (guint i = 0; i < n; i++) {
    LbCutPlan plan;

    lb_cut_plan_reckon (&piles[i], LB_BAR (i % 8), 0, 0, &basis, &plan);
    sum += plan.figures[LB_FIGURE_HOOK_LOAD].range.likely;
  }
  g_assert_cmpfloat (sum, >, 0);
}

int
main (int argc, char *argv[])
{
  const guint n_rounds = argc > 1 && g_str_equal (argv[1], "--long") ? 50 : 3;
  g_autofree LbPile *piles = g_new (LbPile, N_MANY);
  g_autofree char *marks = g_malloc (N_MANY * 16);
  LbAssumptions assumptions;
  Stopwatch few, many;

  lb_assumptions_init (&assumptions);
  for (guint i = 0; i < N_MANY; i++)
    big_job_pile (i, &piles[i], marks + (gsize) i * 16);

  stopwatch_init_own (&few);
  stopwatch_init_own (&many);
  for (guint round = 0; round < n_rounds; round++) {
    stopwatch_begin (&few);
    reckon (piles, N_FEW, &assumptions);
    stopwatch_end (&few);
    stopwatch_begin (&many);
    reckon (piles, N_MANY, &assumptions);
    stopwatch_end (&many);
  }
  stopwatch_print (&few, "cut plans of 1,000 piles");
  stopwatch_print (&many, "cut plans of 10,000 piles");
  stopwatch_print_ratio ("time a pile at 10,000 against 1,000",
                         stopwatch_median (&many) / stopwatch_median (&few) * N_FEW / N_MANY, 1.2);
  stopwatch_clear (&few);
  stopwatch_clear (&many);
  g_print ("1..1\nok 1 - the cut plans were measured\n");

  return 0;
}
