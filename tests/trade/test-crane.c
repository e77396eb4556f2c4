/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/crane.h"

#include "trade/trade-error.h"

#include <math.h>

#define FOOT   0.3048
#define DEGREE (G_PI / 180)

static const LbCraneChart chart = {
  .n_rows = 4,
  .rows = { { 30 * FOOT, 400e3 }, { 40 * FOOT, 300e3 }, { 50 * FOOT, 300e3 }, { 60 * FOOT, 90e3 } },
};

static LbCraneStand
usual_stand (void)
{
  return (LbCraneStand){
    .radius_m = 38 * FOOT,
    .tip_height_m = 80 * FOOT,
    .list_rad = 2 * DEGREE,
    .most_rad = (double) NAN,
  };
}

/* Always the row at or beyond the radius, nothing between. */
static void
test_rows (void)
{
  static const struct
  {
    double radius_ft, capacity_n;
  } cases[] = {
    { 0, 400e3 },  { 29, 400e3 }, { 30, 400e3 },   { 30.1, 300e3 }, { 39.9, 300e3 },
    { 40, 300e3 }, { 50, 300e3 }, { 50.01, 90e3 }, { 59.99, 90e3 }, { 60, 90e3 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    LbCraneRow row;

    g_assert_true (lb_crane_capacity (&chart, cases[i].radius_ft * FOOT, &row, NULL));
    g_assert_cmpfloat (row.capacity_n, ==, cases[i].capacity_n);
    g_assert_cmpfloat (row.radius_m, >=, cases[i].radius_ft * FOOT - 1e-6);
  }
}

static void
test_beyond_the_chart (void)
{
  const double wrong[] = { 60.1 * FOOT, (double) INFINITY, -1, (double) NAN };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++) {
    g_autoptr (GError) error = NULL;
    LbCraneRow row = { .capacity_n = 7 };

    g_assert_false (lb_crane_capacity (&chart, wrong[i], &row, &error));
    g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_cmpfloat (row.capacity_n, ==, 7);
  }
}

static void
test_faults (void)
{
  guint row;
  LbCraneChart changed = chart;

  g_assert_cmpint (lb_crane_chart_fault (&changed, &row), ==, LB_CRANE_CHART_SOUND);
  changed.rows[2].radius_m = changed.rows[1].radius_m;
  g_assert_cmpint (lb_crane_chart_fault (&changed, &row), ==, LB_CRANE_CHART_RADIUS_ORDER);
  g_assert_cmpuint (row, ==, 2);
  changed = chart;
  changed.rows[3].capacity_n = 300001;
  g_assert_cmpint (lb_crane_chart_fault (&changed, &row), ==, LB_CRANE_CHART_CAPACITY_ORDER);
  g_assert_cmpuint (row, ==, 3);
  changed = chart;
  changed.rows[0].radius_m = 0;
  g_assert_cmpint (lb_crane_chart_fault (&changed, &row), ==, LB_CRANE_CHART_RADIUS);
  changed = chart;
  changed.rows[1].capacity_n = (double) NAN;
  g_assert_cmpint (lb_crane_chart_fault (&changed, &row), ==, LB_CRANE_CHART_CAPACITY);
  g_assert_cmpuint (row, ==, 1);
  changed.n_rows = 0;
  g_assert_cmpint (lb_crane_chart_fault (&changed, &row), ==, LB_CRANE_CHART_EMPTY);
}

/* The deck's steepest slope counts, whatever way the boom points, and a level deck changes nothing. */
static void
test_slope (void)
{
  LbCraneStand stand = usual_stand ();
  double level_m, list_m, trim_m, both_m;

  stand.list_rad = 0;
  g_assert_true (lb_crane_radius (&stand, &level_m, NULL));
  g_assert_cmpfloat (level_m, ==, 38 * FOOT);
  stand.list_rad = -3 * DEGREE;
  g_assert_true (lb_crane_radius (&stand, &list_m, NULL));
  stand.list_rad = 0;
  stand.trim_rad = 3 * DEGREE;
  g_assert_true (lb_crane_radius (&stand, &trim_m, NULL));
  g_assert_cmpfloat (list_m, ==, trim_m);
  stand.list_rad = 3 * DEGREE;
  g_assert_true (lb_crane_radius (&stand, &both_m, NULL));
  g_assert_cmpfloat_with_epsilon (both_m - level_m, (list_m - level_m) * sqrt (2), 1e-9);
}

static void
expect_no_lift (const LbCraneStand *stand, double load_n)
{
  g_autoptr (GError) error = NULL;
  LbCraneShare share = { .share = 7 };

  g_assert_false (lb_crane_share (&chart, stand, load_n, &share, &error));
  g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_assert_cmpfloat (share.share, ==, 7);
}

static void
test_stand_refused (void)
{
  LbCraneStand stand = usual_stand ();

  expect_no_lift (&stand, -1);
  expect_no_lift (&stand, (double) NAN);
  stand.list_rad = 5.01 * DEGREE;
  expect_no_lift (&stand, 1000);
  stand = usual_stand ();
  stand.trim_rad = -5.01 * DEGREE;
  expect_no_lift (&stand, 1000);
  stand = usual_stand ();
  stand.most_rad = 1 * DEGREE;
  expect_no_lift (&stand, 1000);
  stand.most_rad = -1;
  expect_no_lift (&stand, 1000);
  stand = usual_stand ();
  stand.list_rad = (double) NAN;
  expect_no_lift (&stand, 1000);
  stand = usual_stand ();
  stand.radius_m = (double) NAN;
  expect_no_lift (&stand, 1000);
  stand = usual_stand ();
  stand.tip_height_m = -1;
  expect_no_lift (&stand, 1000);
  stand = usual_stand ();
  stand.radius_m = 59 * FOOT; /* the list takes it off the chart */
  expect_no_lift (&stand, 1000);
  stand = usual_stand ();
  stand.list_rad = 5 * DEGREE;

  double radius_m;

  g_assert_true (lb_crane_radius (&stand, &radius_m, NULL));
}

/* The list moves the load from one row to the next. */
static void
test_share (void)
{
  LbCraneStand stand = usual_stand ();
  LbCraneShare share;

  g_assert_true (lb_crane_share (&chart, &stand, 150e3, &share, NULL));
  g_assert_cmpfloat_with_epsilon (share.radius_m / FOOT, 40.79, 0.01);
  g_assert_cmpfloat (share.row.radius_m, ==, 50 * FOOT);
  g_assert_cmpfloat_with_epsilon (share.share, 0.5, 1e-12);
  stand.list_rad = 0;
  g_assert_true (lb_crane_share (&chart, &stand, 330e3, &share, NULL));
  g_assert_cmpfloat (share.row.radius_m, ==, 40 * FOOT);
  g_assert_cmpfloat_with_epsilon (share.share, 1.1, 1e-12);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/crane/rows", test_rows);
  g_test_add_func ("/trade/crane/beyond-the-chart", test_beyond_the_chart);
  g_test_add_func ("/trade/crane/faults", test_faults);
  g_test_add_func ("/trade/crane/slope", test_slope);
  g_test_add_func ("/trade/crane/stand-refused", test_stand_refused);
  g_test_add_func ("/trade/crane/share", test_share);
  return g_test_run ();
}
