/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/outline.h"

#include <math.h>

/* Area and second moment about x of the polygon itself, by the shoelace sums. */
static void
measure (const LbPoint *corners, gsize n, double *area, double *perimeter, double *inertia)
{
  *area = *perimeter = *inertia = 0;
  for (gsize i = 0; i < n; i++) {
    const LbPoint a = corners[i], b = corners[(i + 1) % n];
    const double cross = a.x * b.y - b.x * a.y;

    *area += cross / 2;
    *perimeter += hypot (a.x - b.x, a.y - b.y);
    *inertia += cross * (a.y * a.y + a.y * b.y + b.y * b.y) / 12;
  }
}

static void
test_polygons_agree (void)
{
  for (int shape = LB_SHAPE_SQUARE; shape <= LB_SHAPE_OCTAGON; shape++) {
    const LbOutline outline = { .shape = (LbShape) shape, .width_m = 0.5 };
    LbPoint corners[LB_OUTLINE_CORNERS_MAX];
    double area, perimeter, inertia, top = 0;
    const gsize n = lb_outline_corners (&outline, corners);

    g_assert_cmpuint (n, ==, shape == LB_SHAPE_SQUARE ? 4 : 8);
    measure (corners, n, &area, &perimeter, &inertia);
    g_assert_cmpfloat_with_epsilon (lb_outline_area (&outline), area, 1e-12);
    g_assert_cmpfloat_with_epsilon (lb_outline_perimeter (&outline), perimeter, 1e-12);
    g_assert_cmpfloat_with_epsilon (lb_outline_inertia (&outline), inertia, 1e-14);
    for (gsize i = 0; i < n; i++)
      top = MAX (top, corners[i].y);
    g_assert_cmpfloat_with_epsilon (top, 0.25, 1e-12); /* a flat face toward +y */
  }
}

static void
test_round_lies_between (void)
{
  const LbOutline round = { .shape = LB_SHAPE_ROUND, .width_m = 0.5 };
  const LbOutline octagon = { .shape = LB_SHAPE_OCTAGON, .width_m = 0.5 };
  LbPoint corners[LB_OUTLINE_CORNERS_MAX];

  g_assert_cmpuint (lb_outline_corners (&round, corners), ==, 0);
  g_assert_cmpfloat (lb_outline_area (&round), <, lb_outline_area (&octagon));
  g_assert_cmpfloat_with_epsilon (lb_outline_perimeter (&round) * 0.5 / 4, lb_outline_area (&round),
                                  1e-12);
}

static void
test_void_is_taken_off (void)
{
  for (int shape = 0; shape < LB_N_SHAPES; shape++) {
    const LbOutline solid = { .shape = (LbShape) shape, .width_m = 0.5 };
    const LbOutline core = { .shape = LB_SHAPE_ROUND, .width_m = 0.3 };
    const LbOutline hollow = { .shape = (LbShape) shape, .width_m = 0.5, .void_m = 0.3 };

    g_assert_cmpfloat_with_epsilon (lb_outline_area (&hollow),
                                    lb_outline_area (&solid) - lb_outline_area (&core), 1e-15);
    g_assert_cmpfloat_with_epsilon (lb_outline_inertia (&hollow),
                                    lb_outline_inertia (&solid) - lb_outline_inertia (&core),
                                    1e-15);
  }
}

/* A void as wide as the pile is a slip of the pen: no area, not one of zero or less, from which a
 * weight would be made. */
static void
test_all_void (void)
{
  for (int shape = 0; shape < LB_N_SHAPES; shape++) {
    const LbOutline all = { .shape = (LbShape) shape, .width_m = 0.5, .void_m = 0.5 };
    const LbOutline more = { .shape = (LbShape) shape, .width_m = 0.5, .void_m = 5 };

    g_assert_true (isnan (lb_outline_area (&all)));
    g_assert_true (isnan (lb_outline_area (&more)));
    g_assert_true (isnan (lb_outline_inertia (&more)));
  }
}

static void
test_unknown_width (void)
{
  const LbOutline unknown = { .shape = LB_SHAPE_OCTAGON };

  g_assert_true (isnan (lb_outline_area (&unknown)));
  g_assert_true (isnan (lb_outline_perimeter (&unknown)));
  g_assert_true (isnan (lb_outline_inertia (&unknown)));
}

static void
test_names (void)
{
  LbShape shape = LB_SHAPE_ROUND;

  for (int i = 0; i < LB_N_SHAPES; i++) {
    g_assert_true (lb_shape_from_name (lb_shape_name ((LbShape) i), &shape));
    g_assert_cmpint (shape, ==, i);
  }
  g_assert_true (lb_shape_from_name ("OCT", &shape));
  g_assert_cmpint (shape, ==, LB_SHAPE_OCTAGON);
  g_assert_false (lb_shape_from_name ("", &shape));
  g_assert_false (lb_shape_from_name ("star", &shape));
  g_assert_cmpint (shape, ==, LB_SHAPE_OCTAGON);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/outline/polygons-agree", test_polygons_agree);
  g_test_add_func ("/trade/outline/round", test_round_lies_between);
  g_test_add_func ("/trade/outline/void", test_void_is_taken_off);
  g_test_add_func ("/trade/outline/all-void", test_all_void);
  g_test_add_func ("/trade/outline/unknown-width", test_unknown_width);
  g_test_add_func ("/trade/outline/names", test_names);
  return g_test_run ();
}
