/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/burn.h"

#include <math.h>

#define IN2 0.00064516

static void
test_by_hand (void)
{
  LbAssumptions assumptions;
  LbBurn burn;

  lb_assumptions_init (&assumptions);
  lb_burn_reckon (&assumptions, 6.32 * IN2, 8, &burn);
  /* 25 s/in2 of 6.32 in2; 42.5 s of use in a rod: 3.72, so 4 rods; 75 s for 8 bars and 4 rods. */
  g_assert_cmpfloat_with_epsilon (burn.trigger_s.likely, 158, 1e-9);
  g_assert_cmpfloat (burn.rods.likely, ==, 4);
  g_assert_cmpfloat_with_epsilon (burn.wall_s.likely, 158 + 12 * 75, 1e-9);
}

static void
test_no_bars (void)
{
  LbAssumptions assumptions;
  LbBurn burn;

  lb_assumptions_init (&assumptions);
  lb_burn_reckon (&assumptions, (double) NAN, 0, &burn);
  g_assert_cmpfloat (burn.trigger_s.high, ==, 0);
  g_assert_cmpfloat (burn.wall_s.high, ==, 0);
  g_assert_cmpfloat (burn.rods.high, ==, 0);
}

static void
test_unknown_steel (void)
{
  LbAssumptions assumptions;
  LbBurn burn;

  lb_assumptions_init (&assumptions);
  lb_burn_reckon (&assumptions, (double) NAN, 8, &burn);
  g_assert_true (isnan (burn.trigger_s.likely));
  g_assert_true (isnan (burn.rods.low));
  g_assert_true (isnan (burn.wall_s.high));
}

/* A steel that fills its rods to the last second takes no rod more. */
static void
test_whole_rods (void)
{
  LbAssumptions assumptions;
  LbBurn burn;

  lb_assumptions_init (&assumptions);
  lb_burn_reckon (&assumptions, 1.7 * 3 * IN2, 3, &burn);
  g_assert_cmpfloat (burn.rods.likely, ==, 3);
}

static void
check_rises (const LbRange *range)
{
  g_assert_cmpfloat (range->low, <=, range->likely);
  g_assert_cmpfloat (range->likely, <=, range->high);
}

/* Whatever a crew sets as its own likely values, the range still holds them. */
static void
test_range_holds_own_values (void)
{
  for (int i = 0; i < 200; i++) {
    LbAssumptions assumptions;
    LbBurn burn;

    lb_assumptions_init (&assumptions);
    g_assert_true (lb_assumptions_set (&assumptions, LB_ASSUME_BURN_RATE,
                                       g_test_rand_double_range (1, 500) / IN2, NULL));
    g_assert_true (lb_assumptions_set (&assumptions, LB_ASSUME_RESTRIKE,
                                       g_test_rand_double_range (0, 1800), NULL));
    g_assert_true (lb_assumptions_set (&assumptions, LB_ASSUME_ROD_WASTE,
                                       g_test_rand_double_range (0, 0.9), NULL));
    lb_burn_reckon (&assumptions, g_test_rand_double_range (0.1, 60) * IN2, 8, &burn);
    check_rises (&burn.trigger_s);
    check_rises (&burn.wall_s);
    check_rises (&burn.rods);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/burn/by-hand", test_by_hand);
  g_test_add_func ("/trade/burn/no-bars", test_no_bars);
  g_test_add_func ("/trade/burn/unknown-steel", test_unknown_steel);
  g_test_add_func ("/trade/burn/whole-rods", test_whole_rods);
  g_test_add_func ("/trade/burn/range-holds-own-values", test_range_holds_own_values);
  return g_test_run ();
}
