/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/breakout.h"

#include "trade/trade-error.h"

#include <math.h>

static void
test_suction (void)
{
  LbRange mud, clay;

  g_assert_true (lb_breakout_suction (LB_BED_MUD, 1000, &mud, NULL));
  g_assert_true (lb_breakout_suction (LB_BED_SOFT_CLAY, 1000, &clay, NULL));
  g_assert_cmpfloat (mud.low, ==, 250);
  g_assert_cmpfloat (mud.high, ==, 500);
  g_assert_cmpfloat (clay.high, ==, 1000);
  g_assert_cmpfloat (mud.low, <, mud.likely);
  g_assert_cmpfloat (mud.likely, <, mud.high);
  g_assert_cmpfloat (clay.low, <, clay.likely);
  g_assert_cmpfloat (clay.likely, <, clay.high);
  g_assert_true (lb_breakout_suction (LB_BED_MUD, 0, &mud, NULL));
  g_assert_cmpfloat (mud.high, ==, 0);
}

/* A longer pull needs less, and the range is ± half. */
static void
test_slower_needs_less (void)
{
  double before = (double) INFINITY;

  for (double pull_s = 60; pull_s < 30000; pull_s *= 2) {
    LbRange hold;

    g_assert_true (lb_breakout_hold (1000, pull_s, 36000, &hold, NULL));
    g_assert_cmpfloat (hold.likely, <, before);
    g_assert_cmpfloat_with_epsilon (hold.low, hold.likely / 2, 1e-9);
    g_assert_cmpfloat_with_epsilon (hold.high, hold.likely * 1.5, 1e-9);
    before = hold.likely;
  }
}

static void
test_refused (void)
{
  static const struct
  {
    double static_n, pull_s, embedded_s;
  } wrong[] = {
    { -1, 60, 600 },     { (double) NAN, 60, 600 }, { 1000, 0, 600 }, { 1000, 60, (double) NAN },
    { 1000, 60, 61000 }, { 1000, 600, 60 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++) {
    g_autoptr (GError) error = NULL;
    LbRange hold = { .likely = 7 };

    g_assert_false (
      lb_breakout_hold (wrong[i].static_n, wrong[i].pull_s, wrong[i].embedded_s, &hold, &error));
    g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_cmpfloat (hold.likely, ==, 7);
  }

  g_autoptr (GError) error = NULL;
  LbRange suction = { .likely = 7 };

  g_assert_false (lb_breakout_suction (LB_BED_MUD, (double) NAN, &suction, &error));
  g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_assert_cmpfloat (suction.likely, ==, 7);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/breakout/suction", test_suction);
  g_test_add_func ("/trade/breakout/slower-needs-less", test_slower_needs_less);
  g_test_add_func ("/trade/breakout/refused", test_refused);
  return g_test_run ();
}
