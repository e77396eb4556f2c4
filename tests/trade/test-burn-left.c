/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The burning left at many piles: the sum of what the cut plans say of each, with the chances evened
 * out, and nothing counted that is not known. */
#include "trade/burn-left.h"

#include "trade/cut-plan.h"

#include <math.h>

#define FOOT 0.3048
#define INCH 0.0254

typedef struct
{
  LbAssumptions assumptions;
  LbBurnModel model;
  LbCutBasis basis;
  LbPile pile;
} Job;

/* With @n_samples piles burned at 30 s a square inch or a little off it. */
static void
set_up (Job *job, guint n_samples)
{
  LbBurnSample samples[40];

  lb_pile_init (&job->pile);
  job->pile.unsaid = 0;
  job->pile.outline.width_m = 16 * INCH;
  job->pile.bar = lb_bar_find ("#8");
  job->pile.n_bars = 8;
  job->pile.head_m = 2;
  job->pile.cut_m = -30 * FOOT;
  g_assert_cmpuint (n_samples, <=, G_N_ELEMENTS (samples));
  for (guint i = 0; i < n_samples; i++)
    samples[i] = (LbBurnSample){ .n_bars = 8,
                                 .steel_m2 = 8 * job->pile.bar->area_m2,
                                 .bar = job->pile.bar,
                                 .trigger_s = 30 * 8 * 0.79 * (0.85 + 0.1 * (i % 4)),
                                 .reason = "" };
  lb_assumptions_init (&job->assumptions);
  lb_burn_model_fit (samples, n_samples, NULL, 0, &job->assumptions, &job->model);
  job->basis = lb_cut_basis (&job->assumptions);
  job->basis.burn = &job->model;
}

static LbBurnNeed
need_of (const Job *job, const LbBurnLeft *left)
{
  LbBurnNeed need;

  lb_burn_left_predict (left, &job->basis, &need);
  return need;
}

static double
width (const LbRange *range)
{
  return range->high / range->low;
}

/* Nothing learned: as many times as much as the cut plan of one says, rods by the whole one. */
static void
test_stated (void)
{
  LbBurnLeft left = LB_BURN_LEFT_INIT;
  LbCutPlan plan;
  Job job;

  set_up (&job, 0);
  for (int i = 0; i < 50; i++)
    lb_burn_left_add (&left, &job.pile, 8, &job.basis);
  lb_cut_plan_reckon (&job.pile, 0, 0, 0, &job.basis, &plan);

  const LbBurnNeed need = need_of (&job, &left);
  const LbRange trigger = plan.figures[LB_FIGURE_TRIGGER].range;
  const LbRange oxygen = plan.figures[LB_FIGURE_OXYGEN].range;

  g_assert_cmpuint (left.n_piles, ==, 50);
  g_assert_cmpuint (left.sum.n_bars, ==, 400);
  g_assert_cmpfloat_with_epsilon (need.burn.trigger_s.likely, 50 * trigger.likely, 1e-6);
  g_assert_cmpfloat_with_epsilon (need.burn.trigger_s.high, 50 * trigger.high, 1e-6);
  g_assert_cmpfloat_with_epsilon (need.oxygen_m3.likely, 50 * oxygen.likely, 1e-9);
  g_assert_cmpfloat_with_epsilon (need.oxygen_m3.high, 50 * oxygen.high, 1e-9);
  g_assert_cmpfloat (need.cylinders.likely, ==,
                     ceil (need.oxygen_m3.likely / job.basis.cylinder_gas_m3));
}

/* Learned: the whole is known better, by its share, than one pile. */
static void
test_learned (void)
{
  LbBurnLeft one = LB_BURN_LEFT_INIT, many = LB_BURN_LEFT_INIT;
  Job job;

  set_up (&job, 40);
  lb_burn_left_add (&one, &job.pile, 8, &job.basis);
  for (int i = 0; i < 50; i++)
    lb_burn_left_add (&many, &job.pile, 8, &job.basis);

  const LbBurnNeed first = need_of (&job, &one), whole = need_of (&job, &many);

  g_assert_cmpfloat (width (&whole.burn.trigger_s), <, 0.8 * width (&first.burn.trigger_s));
  g_assert_cmpfloat (width (&whole.burn.trigger_s), >, 1);
  g_assert_cmpfloat_with_epsilon (whole.burn.trigger_s.likely / 50 / (30 * 8 * 0.79), 1, 0.1);
}

/* Deeper takes more oxygen; a pile of unknown depth is as deep as the others. */
static void
test_depth (void)
{
  LbBurnLeft shallow = LB_BURN_LEFT_INIT, deep = LB_BURN_LEFT_INIT, mixed = LB_BURN_LEFT_INIT;
  Job job;

  set_up (&job, 0);
  lb_burn_left_add (&shallow, &job.pile, 8, &job.basis);
  lb_burn_left_add (&mixed, &job.pile, 8, &job.basis);
  job.pile.cut_m = (double) NAN;
  lb_burn_left_add (&mixed, &job.pile, 8, &job.basis);
  job.pile.cut_m = -80 * FOOT;
  lb_burn_left_add (&deep, &job.pile, 8, &job.basis);

  g_assert_cmpuint (mixed.n_no_depth, ==, 1);
  g_assert_cmpuint (shallow.n_no_depth, ==, 0);
  g_assert_cmpfloat (need_of (&job, &deep).oxygen_m3.likely, >,
                     1.1 * need_of (&job, &shallow).oxygen_m3.likely);
  g_assert_cmpfloat_with_epsilon (need_of (&job, &mixed).oxygen_m3.likely,
                                  2 * need_of (&job, &shallow).oxygen_m3.likely, 1e-9);
}

/* What is not known is counted apart and adds nothing; neither does a pile without a bar left. */
static void
test_unknown (void)
{
  LbBurnLeft left = LB_BURN_LEFT_INIT;
  Job job;

  set_up (&job, 0);
  lb_burn_left_add (&left, &job.pile, 0, &job.basis);
  g_assert_cmpuint (left.n_piles + left.n_unknown, ==, 0);
  job.pile.bar = NULL;
  lb_burn_left_add (&left, &job.pile, 8, &job.basis);
  job.pile.n_bars = 0;
  lb_burn_left_add (&left, &job.pile, 0, &job.basis);

  g_assert_cmpuint (left.n_piles, ==, 0);
  g_assert_cmpuint (left.n_unknown, ==, 2);
  g_assert_cmpfloat (need_of (&job, &left).burn.wall_s.high, ==, 0);
  g_assert_cmpfloat (need_of (&job, &left).cylinders.high, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/burn-left/stated", test_stated);
  g_test_add_func ("/trade/burn-left/learned", test_learned);
  g_test_add_func ("/trade/burn-left/depth", test_depth);
  g_test_add_func ("/trade/burn-left/unknown", test_unknown);
  return g_test_run ();
}
