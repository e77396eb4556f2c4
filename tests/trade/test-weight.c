/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/weight.h"

#include <math.h>

static const LbPiece piece = {
  .outline = { .shape = LB_SHAPE_SQUARE, .width_m = 0.4, .void_m = 0.2 },
  .length_m = 6,
  .concrete_kg_per_m3 = 2400,
  .water_kg_per_m3 = 1025,
  .growth_m = 0.05,
  .growth_kg_per_m3 = 1360,
};

/* By hand: a 0.4 m square with a 0.2 m hole and 0.05 m of growth round it. */
static void
test_by_hand (void)
{
  const double concrete = (0.16 - G_PI * 0.01) * 6, growth = (0.25 - 0.16) * 6;

  g_assert_cmpfloat_with_epsilon (lb_piece_mass_in_air (&piece), concrete * 2400 + growth * 1360,
                                  1e-9);
}

/* What water takes off is what the solid displaces, no more and no less. */
static void
test_archimedes (void)
{
  const double displaced = (0.25 - G_PI * 0.01) * 6 * 1025;

  g_assert_cmpfloat_with_epsilon (lb_piece_mass_in_air (&piece) - lb_piece_mass_in_water (&piece),
                                  displaced, 1e-9);
  g_assert_cmpfloat_with_epsilon (
    lb_piece_mass_standing (&piece, 0.5),
    (lb_piece_mass_in_air (&piece) + lb_piece_mass_in_water (&piece)) / 2, 1e-9);
}

static void
test_limits (void)
{
  LbPiece changed = piece;

  changed.length_m = 0;
  g_assert_cmpfloat (lb_piece_mass_in_air (&changed), ==, 0);
  changed = piece;
  changed.outline.width_m = 0;
  g_assert_true (isnan (lb_piece_mass_in_air (&changed)));
  changed = piece;
  changed.length_m = (double) NAN;
  g_assert_true (isnan (lb_piece_mass_in_water (&changed)));
}

static void
test_frustum (void)
{
  /* A prism, a pyramid, and one cut in two at half height. */
  g_assert_cmpfloat_with_epsilon (lb_frustum_volume (2, 2, 5), 10, 1e-12);
  g_assert_cmpfloat_with_epsilon (lb_frustum_volume (3, 0, 5), 5, 1e-12);
  g_assert_cmpfloat_with_epsilon (lb_frustum_volume (4, 2.25, 1) + lb_frustum_volume (2.25, 1, 1),
                                  lb_frustum_volume (4, 1, 2), 1e-12);
}

/* Cut in two anywhere, a tapered hollow piece weighs as much, growth and all; with hardly any taper it
 * weighs what an even one does. */
static void
test_taper (void)
{
  LbPiece whole = piece, top, bottom;

  whole.far_width_m = 0.3;
  top = bottom = whole;
  top.length_m = 2;
  top.far_width_m = bottom.outline.width_m = 0.4 - 0.1 * 2 / 6;
  bottom.length_m = 4;
  g_assert_cmpfloat_with_epsilon (lb_piece_mass_in_air (&top) + lb_piece_mass_in_air (&bottom),
                                  lb_piece_mass_in_air (&whole), 1e-9);
  g_assert_cmpfloat_with_epsilon (lb_piece_mass_in_water (&top) + lb_piece_mass_in_water (&bottom),
                                  lb_piece_mass_in_water (&whole), 1e-9);
  g_assert_cmpfloat (lb_piece_mass_in_air (&whole), <, lb_piece_mass_in_air (&piece));

  whole.far_width_m = 0.4 + 1e-12;
  g_assert_cmpfloat_with_epsilon (lb_piece_mass_in_air (&whole), lb_piece_mass_in_air (&piece),
                                  1e-6);

  /* As narrow as its hole, or of a width that is not known. */
  whole.far_width_m = 0.2;
  g_assert_true (isnan (lb_piece_mass_in_air (&whole)));
  whole.far_width_m = (double) NAN;
  g_assert_true (isnan (lb_piece_mass_in_air (&whole)));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/weight/by-hand", test_by_hand);
  g_test_add_func ("/trade/weight/archimedes", test_archimedes);
  g_test_add_func ("/trade/weight/limits", test_limits);
  g_test_add_func ("/trade/weight/frustum", test_frustum);
  g_test_add_func ("/trade/weight/taper", test_taper);
  return g_test_run ();
}
