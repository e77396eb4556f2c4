/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where a job's capacity comes from, and why there is none. */
#include "trade/crane-here.h"

#include <math.h>

#define DEGREE (G_PI / 180)

static const LbCraneChart chart = { .n_rows = 2, .rows = { { 10, 2e5 }, { 14, 1e5 } } };

static void
begin (LbAssumptions *assumptions)
{
  lb_assumptions_init (assumptions);
  assumptions->value[LB_ASSUME_CRANE_RADIUS] = 9;
  assumptions->value[LB_ASSUME_TIP_HEIGHT] = 24;
}

static LbCraneHere
expect (const LbAssumptions *assumptions, const LbCraneChart *by, LbCapacityFrom from)
{
  const LbCraneHere here = lb_crane_here (assumptions, by);

  g_assert_cmpint (here.from, ==, from);
  g_assert_true (isnan (here.capacity_n) == (from != LB_CAPACITY_SET && from != LB_CAPACITY_CHART));
  return here;
}

static void
test_number (void)
{
  static const LbCraneChart empty = { .n_rows = 0 };
  LbAssumptions assumptions;

  begin (&assumptions);
  expect (&assumptions, NULL, LB_CAPACITY_UNKNOWN);
  expect (&assumptions, &empty, LB_CAPACITY_UNKNOWN);
  assumptions.value[LB_ASSUME_CRANE_CAPACITY] = 1000;
  g_assert_cmpfloat_with_epsilon (expect (&assumptions, NULL, LB_CAPACITY_SET).capacity_n, 9806.65,
                                  1e-9);
}

/* The chart counts as soon as the radius is said; until then the number does. */
static void
test_chart (void)
{
  LbAssumptions assumptions;
  LbCraneHere here;

  begin (&assumptions);
  assumptions.value[LB_ASSUME_CRANE_CAPACITY] = 1000;
  here = expect (&assumptions, &chart, LB_CAPACITY_CHART);
  g_assert_cmpfloat (here.capacity_n, ==, 2e5);
  g_assert_cmpfloat (here.radius_m, ==, 9);
  assumptions.value[LB_ASSUME_CRANE_RADIUS] = 0;
  expect (&assumptions, &chart, LB_CAPACITY_SET);
  assumptions.value[LB_ASSUME_CRANE_CAPACITY] = 0;
  expect (&assumptions, &chart, LB_CAPACITY_NO_RADIUS);
  assumptions.value[LB_ASSUME_CRANE_RADIUS] = 14.1;
  expect (&assumptions, &chart, LB_CAPACITY_BEYOND);
}

static void
test_barge (void)
{
  LbAssumptions assumptions;
  LbCraneHere here;
  double slope_rad;

  begin (&assumptions);
  assumptions.value[LB_ASSUME_LIST] = 3 * DEGREE;
  assumptions.value[LB_ASSUME_TRIM] = 1 * DEGREE;
  here = expect (&assumptions, &chart, LB_CAPACITY_CHART);
  /* 24 m × √(tan² 3° + tan² 1°) = 1.326 m out. */
  g_assert_cmpfloat_with_epsilon (here.radius_m, 10.326, 1e-3);
  g_assert_cmpfloat (here.row_m, ==, 14);
  assumptions.value[LB_ASSUME_TIP_HEIGHT] = 0;
  expect (&assumptions, &chart, LB_CAPACITY_NO_HEIGHT);

  /* Over the limit neither a chart nor a number helps; at it they do. */
  begin (&assumptions);
  assumptions.value[LB_ASSUME_CRANE_CAPACITY] = 1000;
  assumptions.value[LB_ASSUME_TRIM] = 5 * DEGREE;
  expect (&assumptions, &chart, LB_CAPACITY_CHART);
  assumptions.value[LB_ASSUME_LIST_LIMIT] = 4 * DEGREE;
  expect (&assumptions, &chart, LB_CAPACITY_LIST_OVER);
  expect (&assumptions, NULL, LB_CAPACITY_LIST_OVER);
  g_assert_true (lb_crane_lists_over (&assumptions, &slope_rad));
  g_assert_cmpfloat (slope_rad, ==, 5 * DEGREE);

  /* A crane on land has no list. */
  assumptions.value[LB_ASSUME_ON_BARGE] = LB_ASSUME_NO;
  g_assert_false (lb_crane_lists_over (&assumptions, &slope_rad));
  here = expect (&assumptions, &chart, LB_CAPACITY_CHART);
  g_assert_cmpfloat (here.radius_m, ==, 9);
}

/* Where the list of the barge comes from; a list that was read counts whatever the sizes say. */
static void
test_heel (void)
{
  LbAssumptions assumptions;
  LbBargeHeel heel;

  begin (&assumptions);
  g_assert_cmpint (lb_crane_heel (&assumptions, 1e5, &heel), ==, LB_HEEL_UNKNOWN);
  g_assert_true (isnan (heel.heel_rad));
  assumptions.value[LB_ASSUME_BARGE_LENGTH] = 27;
  assumptions.value[LB_ASSUME_BARGE_BEAM] = 9;
  assumptions.value[LB_ASSUME_BARGE_DRAFT] = 0.9;
  assumptions.value[LB_ASSUME_BARGE_FREEBOARD] = 0.9;
  g_assert_cmpint (lb_crane_heel (&assumptions, 1e5, &heel), ==, LB_HEEL_UNKNOWN);
  assumptions.value[LB_ASSUME_BARGE_GRAVITY] = 2;
  g_assert_cmpint (lb_crane_heel (&assumptions, 1e5, &heel), ==, LB_HEEL_AFLOAT);
  /* GM = 0.45 + 81 / 10.8 - 2 = 5.95 m. */
  g_assert_cmpfloat_with_epsilon (
    tan (heel.heel_rad),
    1e5 * 9 / (27 * 9 * 0.9 * assumptions.value[LB_ASSUME_WATER_DENSITY] * 9.80665 * 5.95), 1e-12);
  g_assert_cmpint (lb_crane_heel (&assumptions, (double) NAN, &heel), ==, LB_HEEL_AFLOAT);
  g_assert_true (isnan (heel.heel_rad));
  assumptions.value[LB_ASSUME_CRANE_RADIUS] = 0;
  g_assert_cmpint (lb_crane_heel (&assumptions, 1e5, &heel), ==, LB_HEEL_NO_RADIUS);
  assumptions.value[LB_ASSUME_CRANE_RADIUS] = 9;
  assumptions.value[LB_ASSUME_BARGE_GRAVITY] = 9;
  g_assert_cmpint (lb_crane_heel (&assumptions, 1e5, &heel), ==, LB_HEEL_OVER);
  g_assert_true (lb_assumptions_set (&assumptions, LB_ASSUME_LIST, 0, NULL));
  g_assert_cmpint (lb_crane_heel (&assumptions, 1e5, &heel), ==, LB_HEEL_SET);
  g_assert_cmpfloat (heel.heel_rad, ==, 0);
  assumptions.value[LB_ASSUME_ON_BARGE] = LB_ASSUME_NO;
  g_assert_cmpint (lb_crane_heel (&assumptions, 1e5, &heel), ==, LB_HEEL_NONE);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/crane-here/number", test_number);
  g_test_add_func ("/trade/crane-here/chart", test_chart);
  g_test_add_func ("/trade/crane-here/barge", test_barge);
  g_test_add_func ("/trade/crane-here/heel", test_heel);
  return g_test_run ();
}
