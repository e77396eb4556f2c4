/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/bottom-time.h"

#include "trade/trade-error.h"

#include <math.h>

#define FOOT   0.3048
#define MINUTE 60.0

static void
test_pneumo (void)
{
  double depth;

  g_assert_true (lb_pneumo_corrected (0, &depth, NULL));
  g_assert_cmpfloat_with_epsilon (depth, 1 * FOOT, 1e-12);
  g_assert_true (lb_pneumo_corrected (100 * FOOT, &depth, NULL));
  g_assert_cmpfloat_with_epsilon (depth, 101 * FOOT, 1e-9);
  g_assert_true (lb_pneumo_corrected (101 * FOOT, &depth, NULL));
  g_assert_cmpfloat_with_epsilon (depth, 103 * FOOT, 1e-9);
}

static void
test_limit_falls_with_depth (void)
{
  double before = (double) INFINITY;

  for (int feet = 0; feet <= 190; feet++) {
    LbNoStop limit;

    g_assert_true (lb_no_stop_limit (feet * FOOT, &limit, NULL));
    g_assert_cmpfloat (limit.limit_s, <=, before);
    g_assert_cmpfloat (limit.table_depth_m, >=, feet * FOOT - 1e-9);
    before = limit.limit_s;
  }
}

static void
test_next_deeper (void)
{
  LbNoStop exact, over;

  g_assert_true (lb_no_stop_limit (40 * FOOT, &exact, NULL));
  g_assert_cmpfloat_with_epsilon (exact.table_depth_m, 40 * FOOT, 1e-12);
  g_assert_true (lb_no_stop_limit (40.1 * FOOT, &over, NULL));
  g_assert_cmpfloat_with_epsilon (over.table_depth_m, 45 * FOOT, 1e-12);
  g_assert_true (lb_no_stop_limit (20 * FOOT, &exact, NULL));
  g_assert_true (isinf (exact.limit_s));
}

static void
test_refused (void)
{
  const double depths[] = { -1, 210 * FOOT, (double) NAN, (double) INFINITY };

  for (gsize i = 0; i < G_N_ELEMENTS (depths); i++) {
    g_autoptr (GError) pneumo = NULL;
    g_autoptr (GError) table = NULL;
    g_autoptr (GError) helmet = NULL;
    LbNoStop limit = { 7, 7 };
    double out = 7;

    g_assert_false (lb_pneumo_corrected (depths[i], &out, &pneumo));
    g_assert_error (pneumo, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_false (lb_helmet_supply_pressure (depths[i], &out, &helmet));
    g_assert_error (helmet, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_cmpfloat (out, ==, 7);
    g_assert_false (lb_no_stop_limit (depths[i], &limit, &table));
    g_assert_error (table, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_cmpfloat (limit.limit_s, ==, 7);
    g_assert_cmpfloat (limit.table_depth_m, ==, 7);
    g_assert_cmpint (lb_repetitive_group (depths[i], 60), ==, 0);
  }
}

/* From 25 ft down, the last group of each row ends where the no-stop limit does. */
static void
test_groups_end_at_the_limit (void)
{
  for (int feet = 21; feet <= 190; feet++) {
    LbNoStop limit;

    g_assert_true (lb_no_stop_limit (feet * FOOT, &limit, NULL));
    g_assert_cmpint (lb_repetitive_group (feet * FOOT, limit.limit_s), !=, 0);
    g_assert_cmpint (lb_repetitive_group (feet * FOOT, limit.limit_s + 1), ==, 0);
  }
}

static void
test_groups_rise_with_time (void)
{
  for (int feet = 1; feet <= 190; feet++) {
    char before = 'A';

    for (int minutes = 0; minutes <= 1200; minutes++) {
      const char group = lb_repetitive_group (feet * FOOT, minutes * MINUTE);

      if (group == 0)
        break;
      g_assert_cmpint (group, >=, before);
      before = group;
    }
  }
  g_assert_cmpint (lb_repetitive_group (10 * FOOT, 5000 * MINUTE), ==, 'F');
  g_assert_cmpint (lb_repetitive_group (40 * FOOT, -1), ==, 0);
}

static void
test_ascent_and_supply (void)
{
  double at_60, past_60;

  g_assert_cmpfloat_with_epsilon (lb_ascent_time (30 * FOOT), MINUTE, 1e-9);
  g_assert_cmpfloat (lb_ascent_time (0), ==, 0);
  g_assert_true (lb_helmet_supply_pressure (60 * FOOT, &at_60, NULL));
  g_assert_true (lb_helmet_supply_pressure (60.5 * FOOT, &past_60, NULL));
  /* Between the printed bands the deeper one holds: 45 psi more, and the depth's own. */
  g_assert_cmpfloat_with_epsilon ((past_60 - at_60) / 6894.757293168, 45 + 0.5 * 0.445, 1e-6);
}

static void
test_whole_minutes (void)
{
  const gint64 at = G_GINT64_CONSTANT (1700000000) * G_USEC_PER_SEC;

  g_assert_cmpfloat (lb_bottom_time (at, at + 41 * 60 * G_TIME_SPAN_SECOND), ==, 41 * MINUTE);
  g_assert_cmpfloat (lb_bottom_time (at, at + (41 * 60 + 10) * G_TIME_SPAN_SECOND), ==,
                     42 * MINUTE);
  g_assert_cmpfloat (lb_bottom_time (at, at + 1), ==, MINUTE);
  g_assert_cmpfloat (lb_bottom_time (at, at + G_TIME_SPAN_MINUTE + 1), ==, 2 * MINUTE);
  g_assert_true (isnan (lb_bottom_time (at, at)));
  g_assert_true (isnan (lb_bottom_time (at, at - 1)));
  g_assert_true (isnan (lb_bottom_time (0, at)));
  g_assert_cmpfloat (lb_bottom_time (G_MININT64, G_MAXINT64), >, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/bottom-time/pneumo", test_pneumo);
  g_test_add_func ("/trade/bottom-time/falls-with-depth", test_limit_falls_with_depth);
  g_test_add_func ("/trade/bottom-time/next-deeper", test_next_deeper);
  g_test_add_func ("/trade/bottom-time/refused", test_refused);
  g_test_add_func ("/trade/bottom-time/groups-end-at-the-limit", test_groups_end_at_the_limit);
  g_test_add_func ("/trade/bottom-time/groups-rise", test_groups_rise_with_time);
  g_test_add_func ("/trade/bottom-time/whole-minutes", test_whole_minutes);
  g_test_add_func ("/trade/bottom-time/ascent-and-supply", test_ascent_and_supply);
  return g_test_run ();
}
