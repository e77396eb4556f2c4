/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/sling.h"

#include "trade/trade-error.h"

#include <math.h>

#define DEGREE (G_PI / 180)

static void
test_factor (void)
{
  double factor;

  g_assert_true (lb_sling_factor (90 * DEGREE, &factor, NULL));
  g_assert_cmpfloat_with_epsilon (factor, 1, 1e-12);
  g_assert_true (lb_sling_factor (30 * DEGREE, &factor, NULL));
  g_assert_cmpfloat_with_epsilon (factor, 2, 1e-12);
}

static void
test_factor_refused (void)
{
  const double angles[] = { 29.9 * DEGREE, 90.1 * DEGREE, 0, -1, (double) NAN };

  for (gsize i = 0; i < G_N_ELEMENTS (angles); i++) {
    g_autoptr (GError) error = NULL;
    double factor = 7;

    g_assert_false (lb_sling_factor (angles[i], &factor, &error));
    g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_cmpfloat (factor, ==, 7);
  }
}

/* The vertical parts of the legs that carry add up to the load. */
static void
test_legs_hold_the_load (void)
{
  for (guint n_legs = 1; n_legs <= 4; n_legs++) {
    for (int angle = 30; angle <= 90; angle += 5) {
      double tension;

      g_assert_true (lb_sling_tension (10000, n_legs, angle * DEGREE, &tension, NULL));
      g_assert_cmpfloat_with_epsilon (MIN (n_legs, 2) * tension * sin (angle * DEGREE), 10000,
                                      1e-6);
    }
  }
}

static void
test_tension_refused (void)
{
  const struct
  {
    guint n_legs;
    double angle;
  } cases[] = { { 0, 60 }, { 5, 60 }, { 2, 20 } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (GError) error = NULL;
    double tension = 7;

    g_assert_false (
      lb_sling_tension (1000, cases[i].n_legs, cases[i].angle * DEGREE, &tension, &error));
    g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_cmpfloat (tension, ==, 7);
  }
}

static void
test_choker (void)
{
  double before = 0;

  for (int angle = 0; angle <= 180; angle++) {
    const double share = lb_choker_share (angle * DEGREE);

    g_assert_cmpfloat (share, >=, before);
    before = share;
  }
  g_assert_cmpfloat (lb_choker_share (0), ==, 0.49);
  g_assert_cmpfloat (lb_choker_share (90 * DEGREE), ==, 0.87);
  g_assert_cmpfloat (lb_choker_share (120 * DEGREE), ==, 0.87);
  g_assert_cmpfloat (lb_choker_share (121 * DEGREE), ==, 1);
  g_assert_true (isnan (lb_choker_share ((double) NAN)));
}

/* A leg loaded with all that it may carry is at its whole rating, choked or not. */
static void
test_capacity_is_whole_share (void)
{
  for (guint n_legs = 1; n_legs <= 4; n_legs++) {
    for (int angle = 30; angle <= 90; angle += 10) {
      double load, choked, share;

      g_assert_true (lb_sling_capacity (50e3, n_legs, angle * DEGREE, &load, NULL));
      g_assert_true (lb_sling_share (50e3, load, n_legs, angle * DEGREE, &share, NULL));
      g_assert_cmpfloat_with_epsilon (share, 1, 1e-12);
      g_assert_true (lb_sling_share (50e3, load / 2, n_legs, angle * DEGREE, &share, NULL));
      g_assert_cmpfloat_with_epsilon (share, 0.5, 1e-12);
      g_assert_true (
        lb_choker_capacity (50e3, 100 * DEGREE, n_legs, angle * DEGREE, &choked, NULL));
      g_assert_cmpfloat_with_epsilon (choked, 0.87 * load, 1e-6);
    }
  }
}

static void
test_capacity_refused (void)
{
  g_autoptr (GError) flat = NULL;
  g_autoptr (GError) choke = NULL;
  g_autoptr (GError) rating = NULL;
  double out = 7;

  g_assert_false (lb_sling_capacity (50e3, 2, 29 * DEGREE, &out, &flat));
  g_assert_error (flat, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_assert_false (lb_choker_capacity (50e3, 181 * DEGREE, 2, 60 * DEGREE, &out, &choke));
  g_assert_error (choke, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_assert_false (lb_choker_capacity (50e3, (double) NAN, 2, 60 * DEGREE, &out, NULL));
  g_assert_false (lb_choker_capacity (50e3, 90 * DEGREE, 5, 60 * DEGREE, &out, NULL));
  g_assert_false (lb_sling_share (0, 1000, 2, 60 * DEGREE, &out, &rating));
  g_assert_error (rating, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_assert_false (lb_sling_share ((double) NAN, 1000, 2, 60 * DEGREE, &out, NULL));
  g_assert_false (lb_sling_share (50e3, 1000, 2, 20 * DEGREE, &out, NULL));
  g_assert_cmpfloat (out, ==, 7);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/sling/factor", test_factor);
  g_test_add_func ("/trade/sling/factor-refused", test_factor_refused);
  g_test_add_func ("/trade/sling/legs-hold-the-load", test_legs_hold_the_load);
  g_test_add_func ("/trade/sling/tension-refused", test_tension_refused);
  g_test_add_func ("/trade/sling/choker", test_choker);
  g_test_add_func ("/trade/sling/capacity-is-whole-share", test_capacity_is_whole_share);
  g_test_add_func ("/trade/sling/capacity-refused", test_capacity_refused);
  return g_test_run ();
}
