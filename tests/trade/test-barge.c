/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/barge.h"

#include "trade/trade-error.h"

#include <math.h>

#define DEGREE (G_PI / 180)

static LbBarge
usual_barge (void)
{
  return (LbBarge){
    .length_m = 27.4,
    .beam_m = 9.1,
    .draft_m = 0.9,
    .freeboard_m = 0.9,
    .gravity_m = 2,
    .water_kg_per_m3 = 1025,
  };
}

/* The moment turns back as much as it heels: Δ g GM sin φ = W r cos φ. */
static void
test_balance (void)
{
  const LbBarge barge = usual_barge ();
  LbBargeHeel heel;

  g_assert_true (lb_barge_heel (&barge, 80e3, 12, &heel, NULL));
  g_assert_cmpfloat_with_epsilon (heel.displacement_kg * 9.80665 * heel.metacentric_m *
                                    sin (heel.heel_rad),
                                  80e3 * 12 * cos (heel.heel_rad), 1e-3);
  g_assert_true (lb_barge_heel (&barge, 0, 12, &heel, NULL));
  g_assert_cmpfloat (heel.heel_rad, ==, 0);
  g_assert_false (heel.is_over_heel);
  g_assert_false (heel.is_under_rule);
}

/* What comes first: the deck edge in, the bilge out, or 5°. */
static void
test_most (void)
{
  LbBarge barge = usual_barge ();
  LbBargeHeel heel;

  g_assert_true (lb_barge_heel (&barge, 1000, 10, &heel, NULL));
  g_assert_cmpfloat_with_epsilon (heel.heel_most_rad, 5 * DEGREE, 1e-12);
  barge.freeboard_m = 0.3;
  g_assert_true (lb_barge_heel (&barge, 1000, 10, &heel, NULL));
  g_assert_cmpfloat_with_epsilon (tan (heel.heel_most_rad) * 9.1 / 2, 0.3, 1e-12);
  barge = usual_barge ();
  barge.draft_m = 0.2;
  g_assert_true (lb_barge_heel (&barge, 1000, 10, &heel, NULL));
  g_assert_cmpfloat_with_epsilon (tan (heel.heel_most_rad) * 9.1 / 2, 0.2, 1e-12);
}

static void
test_flags (void)
{
  const LbBarge barge = usual_barge ();
  LbBargeHeel heel;

  g_assert_true (lb_barge_heel (&barge, 1, 1, &heel, NULL));

  const double rule_nm = heel.rule_moment_nm;
  const double most_nm = heel.displacement_kg * 9.80665 * heel.metacentric_m *
                         tan (heel.heel_most_rad);

  g_assert_true (lb_barge_heel (&barge, rule_nm * 1.001, 1, &heel, NULL));
  g_assert_true (heel.is_under_rule);
  g_assert_true (lb_barge_heel (&barge, rule_nm * 0.999, 1, &heel, NULL));
  g_assert_false (heel.is_under_rule);
  g_assert_true (lb_barge_heel (&barge, most_nm * 1.001, 1, &heel, NULL));
  g_assert_true (heel.is_over_heel);
  g_assert_true (lb_barge_heel (&barge, most_nm * 0.999, 1, &heel, NULL));
  g_assert_false (heel.is_over_heel);
}

static void
expect_refusal (const LbBarge *barge, double hook_n, double arm_m)
{
  g_autoptr (GError) error = NULL;
  LbBargeHeel heel = { .heel_rad = 7 };

  g_assert_false (lb_barge_heel (barge, hook_n, arm_m, &heel, &error));
  g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_assert_cmpfloat (heel.heel_rad, ==, 7);
}

static void
test_refused (void)
{
  LbBarge barge = usual_barge ();

  expect_refusal (&barge, -1, 10);
  expect_refusal (&barge, 1000, (double) NAN);
  barge.gravity_m = 9; /* over the metacentre */
  expect_refusal (&barge, 1000, 10);
  barge.gravity_m = (double) NAN;
  expect_refusal (&barge, 1000, 10);
  barge = usual_barge ();
  barge.draft_m = 0;
  expect_refusal (&barge, 1000, 10);
  barge = usual_barge ();
  barge.beam_m = (double) NAN;
  expect_refusal (&barge, 1000, 10);
  barge = usual_barge ();
  barge.freeboard_m = 0;
  expect_refusal (&barge, 1000, 10);
  barge = usual_barge ();
  barge.water_kg_per_m3 = 0;
  expect_refusal (&barge, 1000, 10);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/barge/balance", test_balance);
  g_test_add_func ("/trade/barge/most", test_most);
  g_test_add_func ("/trade/barge/flags", test_flags);
  g_test_add_func ("/trade/barge/refused", test_refused);
  return g_test_run ();
}
