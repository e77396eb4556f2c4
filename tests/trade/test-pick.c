/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/pick.h"

#include "trade/trade-error.h"

#include <math.h>

/* Mirror images but for a single pick, and the printed ones are the theory's, rounded. */
static void
test_points (void)
{
  for (guint n = 1; n <= LB_PICKS_MAX; n++) {
    double theory[LB_PICKS_MAX], printed[LB_PICKS_MAX];

    g_assert_true (lb_pick_points (LB_PICK_THEORY, n, 20, theory, NULL));
    g_assert_true (lb_pick_points (LB_PICK_PRINTED, n, 20, printed, NULL));
    for (guint i = 0; i < n; i++) {
      g_assert_cmpfloat_with_epsilon (theory[i] / 20, printed[i] / 20, 0.0075);
      if (n > 1)
        g_assert_cmpfloat_with_epsilon (theory[i] + theory[n - 1 - i], 20, 1e-9);
    }
  }
}

/* No other place bends the piece less than the theory's. */
static void
test_least_bending (void)
{
  for (guint n = 1; n <= 2; n++) {
    double at_m[LB_PICKS_MAX], best;

    g_assert_true (lb_pick_points (LB_PICK_THEORY, n, 10, at_m, NULL));
    g_assert_true (lb_pick_moment (500, 10, n, at_m[0], &best, NULL));
    for (double overhang_m = 0; overhang_m <= 5; overhang_m += 0.01) {
      double moment;

      g_assert_true (lb_pick_moment (500, 10, n, overhang_m, &moment, NULL));
      g_assert_cmpfloat (moment, >=, best - 1e-9);
    }
  }
}

/* Picked at the ends it is a beam on two supports, in the middle two arms. */
static void
test_moment_limits (void)
{
  double moment;

  g_assert_true (lb_pick_moment (8, 10, 2, 0, &moment, NULL));
  g_assert_cmpfloat_with_epsilon (moment, 100, 1e-12);
  g_assert_true (lb_pick_moment (8, 10, 1, 0, &moment, NULL));
  g_assert_cmpfloat_with_epsilon (moment, 100, 1e-12);
  g_assert_true (lb_pick_moment (8, 10, 2, 5, &moment, NULL));
  g_assert_cmpfloat_with_epsilon (moment, 100, 1e-12);
  g_assert_true (lb_pick_moment (8, 10, 1, 5, &moment, NULL));
  g_assert_cmpfloat_with_epsilon (moment, 100, 1e-12);
  g_assert_true (lb_pick_moment (0, 10, 1, 3, &moment, NULL));
  g_assert_cmpfloat (moment, ==, 0);
}

static void
test_lengths (void)
{
  LbLengths lengths;

  /* At the limit it stays whole; a little over and it is two. */
  g_assert_true (lb_pick_lengths (1000, 10, 500, 10500, &lengths, NULL));
  g_assert_cmpuint (lengths.n, ==, 1);
  g_assert_cmpfloat_with_epsilon (lengths.load_n, 10500, 1e-9);
  g_assert_true (lb_pick_lengths (1000, 10, 500, 10499, &lengths, NULL));
  g_assert_cmpuint (lengths.n, ==, 2);
  g_assert_cmpfloat_with_epsilon (lengths.length_m, 5, 1e-12);
  g_assert_cmpfloat_with_epsilon (lengths.load_n, 5500, 1e-9);
  g_assert_true (lb_pick_lengths (0, 10, 500, 501, &lengths, NULL));
  g_assert_cmpuint (lengths.n, ==, 1);
}

/* None is over the limit, and one cut less would be. */
static void
test_fewest_lengths (void)
{
  for (double limit_n = 1500; limit_n < 20000; limit_n += 137) {
    LbLengths lengths;

    g_assert_true (lb_pick_lengths (1000, 20, 400, limit_n, &lengths, NULL));
    g_assert_cmpfloat (lengths.load_n, <=, limit_n + 1e-6);
    g_assert_cmpfloat_with_epsilon (lengths.n * lengths.length_m, 20, 1e-9);
    if (lengths.n > 1)
      g_assert_cmpfloat (1000 * 20.0 / (lengths.n - 1) + 400, >, limit_n);
  }
}

static void
test_refused (void)
{
  static const double nan = (double) NAN;
  double at_m[LB_PICKS_MAX] = { 7 }, moment = 7;
  LbLengths lengths = { .n = 7 };

  g_assert_false (lb_pick_points (LB_PICK_PRINTED, 0, 10, at_m, NULL));
  g_assert_false (lb_pick_points (LB_PICK_PRINTED, 5, 10, at_m, NULL));
  g_assert_false (lb_pick_points (LB_PICK_PRINTED, 2, nan, at_m, NULL));
  g_assert_cmpfloat (at_m[0], ==, 7);
  g_assert_false (lb_pick_moment (8, 10, 3, 1, &moment, NULL));
  g_assert_false (lb_pick_moment (8, 10, 2, 5.1, &moment, NULL));
  g_assert_false (lb_pick_moment (8, 10, 2, nan, &moment, NULL));
  g_assert_false (lb_pick_moment (nan, 10, 2, 1, &moment, NULL));
  g_assert_false (lb_pick_moment (8, 0, 2, 0, &moment, NULL));
  g_assert_cmpfloat (moment, ==, 7);
  g_assert_false (lb_pick_lengths (1000, 10, 500, 500, &lengths, NULL));
  g_assert_false (lb_pick_lengths (1000, 10, 500, 600, &lengths, NULL)); /* a hundred cuts */
  g_assert_false (lb_pick_lengths (1000, 10, 500, nan, &lengths, NULL));
  g_assert_cmpuint (lengths.n, ==, 7);

  g_autoptr (GError) error = NULL;

  g_assert_false (lb_pick_lengths (1000, nan, 500, 5000, &lengths, &error));
  g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/pick/points", test_points);
  g_test_add_func ("/trade/pick/least-bending", test_least_bending);
  g_test_add_func ("/trade/pick/moment-limits", test_moment_limits);
  g_test_add_func ("/trade/pick/lengths", test_lengths);
  g_test_add_func ("/trade/pick/fewest-lengths", test_fewest_lengths);
  g_test_add_func ("/trade/pick/refused", test_refused);
  return g_test_run ();
}
