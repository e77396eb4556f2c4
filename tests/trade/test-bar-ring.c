/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/bar-ring.h"

#include <math.h>

static void
test_sets (void)
{
  g_assert_cmpuint (lb_bar_set_count (lb_bar_set_all (0)), ==, 0);
  for (guint n = 1; n <= LB_BARS_MAX; n++) {
    g_assert_cmpuint (lb_bar_set_count (lb_bar_set_all (n)), ==, n);
    g_assert_true (lb_bar_set_all (n) & LB_BAR (n - 1));
    g_assert_false (lb_bar_set_all (n) & LB_BAR (n));
  }
}

/* Clockwise from +y, 0 to 2π. */
static double
clockwise (LbPoint place)
{
  const double angle = atan2 (place.x, place.y);

  return angle < -1e-9 ? angle + 2 * G_PI : MAX (angle, 0);
}

static void
test_clockwise_from_the_top_and_balanced (void)
{
  for (int shape = 0; shape < LB_N_SHAPES; shape++) {
    const LbOutline outline = { .shape = (LbShape) shape, .width_m = 0.5 };

    for (guint n = 2; n <= LB_BARS_MAX; n++) {
      LbPoint places[LB_BARS_MAX];
      LbPoint sum = { 0, 0 };

      lb_bar_ring_place (&outline, 0.08, n, places);
      g_assert_cmpfloat (places[0].x, >=, -1e-12);
      for (guint i = 0; i < n; i++) {
        sum.x += places[i].x;
        sum.y += places[i].y;
        if (i > 0)
          g_assert_cmpfloat (clockwise (places[i]), >, clockwise (places[i - 1]));
        g_assert_cmpfloat (MAX (fabs (places[i].x), fabs (places[i].y)), <=, 0.25 - 0.08 + 1e-12);
      }
      /* The centroid of evenly spread bars is the centre. */
      g_assert_cmpfloat_with_epsilon (sum.x, 0, 1e-9);
      g_assert_cmpfloat_with_epsilon (sum.y, 0, 1e-9);
    }
  }
}

static void
test_corners (void)
{
  const LbOutline square = { .shape = LB_SHAPE_SQUARE, .width_m = 0.4 };
  const LbOutline octagon = { .shape = LB_SHAPE_OCTAGON, .width_m = 0.4 };
  LbPoint places[LB_BARS_MAX], corners[LB_OUTLINE_CORNERS_MAX];

  lb_bar_ring_place (&square, 0.05, 4, places);
  g_assert_cmpfloat_with_epsilon (places[0].x, 0.15, 1e-12);
  g_assert_cmpfloat_with_epsilon (places[0].y, 0.15, 1e-12);

  lb_bar_ring_place (&square, 0.05, 8, places);
  g_assert_cmpfloat_with_epsilon (places[0].x, 0, 1e-12);
  g_assert_cmpfloat_with_epsilon (places[0].y, 0.15, 1e-12);

  /* With no inset the eight bars of an octagon are its corners. */
  lb_bar_ring_place (&octagon, 0, 8, places);
  lb_outline_corners (&octagon, corners);
  for (int i = 0; i < 8; i++) {
    double nearest = 1;

    for (int c = 0; c < 8; c++)
      nearest = MIN (nearest, hypot (places[i].x - corners[c].x, places[i].y - corners[c].y));
    g_assert_cmpfloat_with_epsilon (nearest, 0, 1e-12);
  }
}

static void
test_inset_past_the_middle (void)
{
  const LbOutline outline = { .shape = LB_SHAPE_ROUND, .width_m = 0.4 };
  LbPoint places[LB_BARS_MAX];

  lb_bar_ring_place (&outline, 0.3, 5, places);
  for (int i = 0; i < 5; i++)
    g_assert_cmpfloat_with_epsilon (hypot (places[i].x, places[i].y), 0, 1e-12);
}

static void
test_order_of_eight (void)
{
  const LbOutline square = { .shape = LB_SHAPE_SQUARE, .width_m = 0.4 };
  /* Numbered clockwise from the middle of the lean: 4 is the middle of the high side. */
  const guint8 expected[] = { 4, 5, 3, 6, 2, 7, 1, 0 };
  LbPoint places[LB_BARS_MAX];
  guint8 order[LB_BARS_MAX];

  lb_bar_ring_place (&square, 0.05, 8, places);
  g_assert_cmpuint (lb_bar_ring_order (places, 8, lb_bar_set_all (8), order), ==, 8);
  g_assert_cmpmem (order, 8, expected, 8);
}

/* Any set left keeps the order that all have, holds each bar once, and never climbs back. */
static void
test_order_of_any_set (void)
{
  for (int trial = 0; trial < 500; trial++) {
    const guint n = (guint) g_test_rand_int_range (1, LB_BARS_MAX + 1);
    const LbOutline outline = { .shape = (LbShape) g_test_rand_int_range (0, LB_N_SHAPES),
                                .width_m = 0.5 };
    const LbBarSet left = lb_bar_set_all (n) & (((guint64) (guint32) g_test_rand_int () << 32) |
                                                (guint32) g_test_rand_int ());
    LbPoint places[LB_BARS_MAX];
    guint8 all[LB_BARS_MAX], order[LB_BARS_MAX];
    gsize at = 0;

    lb_bar_ring_place (&outline, 0.08, n, places);
    g_assert_cmpuint (lb_bar_ring_order (places, n, lb_bar_set_all (n), all), ==, n);
    g_assert_cmpuint (lb_bar_ring_order (places, n, left, order), ==, lb_bar_set_count (left));
    for (guint i = 0; i < n; i++) {
      if (i > 0)
        g_assert_cmpfloat (places[all[i]].y, >=, places[all[i - 1]].y - 1e-6);
      if (left & LB_BAR (all[i]))
        g_assert_cmpuint (order[at++], ==, all[i]);
    }
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/bar-ring/sets", test_sets);
  g_test_add_func ("/trade/bar-ring/clockwise", test_clockwise_from_the_top_and_balanced);
  g_test_add_func ("/trade/bar-ring/corners", test_corners);
  g_test_add_func ("/trade/bar-ring/inset-past-the-middle", test_inset_past_the_middle);
  g_test_add_func ("/trade/bar-ring/order-of-eight", test_order_of_eight);
  g_test_add_func ("/trade/bar-ring/order-of-any-set", test_order_of_any_set);
  return g_test_run ();
}
