/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/bar-layout.h"

#include "trade/trade-error.h"

#include <math.h>

#define INCH 0.0254

static LbBarLayout
read (const char *text, LbUnits units)
{
  g_autoptr (GError) error = NULL;
  LbBarLayout layout;

  lb_bar_layout_from_text (text, units, &layout, &error);
  g_assert_no_error (error);
  return layout;
}

static void
test_reads (void)
{
  LbBarLayout layout = read ("  ", LB_UNITS_US);

  g_assert_cmpint (layout.kind, ==, LB_BAR_LAYOUT_USUAL);
  layout = read ("3 On each FACE", LB_UNITS_US);
  g_assert_cmpint (layout.kind, ==, LB_BAR_LAYOUT_ON_FACES);
  g_assert_cmpuint (layout.n_on_face, ==, 3);
  layout = read ("1 between corners ", LB_UNITS_US);
  g_assert_cmpint (layout.kind, ==, LB_BAR_LAYOUT_BETWEEN_CORNERS);
  layout = read ("8 outer 4 inner at 7", LB_UNITS_US);
  g_assert_cmpint (layout.kind, ==, LB_BAR_LAYOUT_TWO_RINGS);
  g_assert_cmpuint (layout.n_outer, ==, 8);
  g_assert_cmpuint (layout.n_inner, ==, 4);
  g_assert_cmpfloat_with_epsilon (layout.inner_inset_m, 7 * INCH, 1e-12);
  layout = read ("8 outer, 4 inner at 180 mm", LB_UNITS_US);
  g_assert_cmpfloat_with_epsilon (layout.inner_inset_m, 0.18, 1e-12);
  /* A comma after a number, decimal commas, units of their own. */
  layout = read ("at 3.5, -3.5;-88,9 88,9mm ; 4in 0", LB_UNITS_METRIC);
  g_assert_cmpint (layout.kind, ==, LB_BAR_LAYOUT_GIVEN);
  g_assert_cmpuint (layout.n_given, ==, 3);
  g_assert_cmpfloat_with_epsilon (layout.given[0].y, -0.0035, 1e-12);
  g_assert_cmpfloat_with_epsilon (layout.given[1].x, -0.0889, 1e-12);
  g_assert_cmpfloat_with_epsilon (layout.given[2].x, 4 * INCH, 1e-12);
}

/* Whatever the units it is shown in, it comes back the same to the last digit. */
static void
test_round_trip (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1938);

  for (int trial = 0; trial < 300; trial++) {
    g_autoptr (GString) typed = g_string_new ("at ");
    const LbUnits units = trial % 2 == 0 ? LB_UNITS_US : LB_UNITS_METRIC;

    for (int i = 0; i < 1 + trial % LB_BARS_MAX; i++)
      g_string_append_printf (typed, "%s%.2f %.2f", i > 0 ? "; " : "",
                              g_rand_double_range (rand, -20, 20),
                              g_rand_double_range (rand, -20, 20));

    const LbBarLayout layout = read (typed->str, units);
    g_autofree char *kept = lb_bar_layout_to_text (&layout, LB_UNITS_METRIC);
    const LbBarLayout known = read (kept, LB_UNITS_METRIC);

    for (int other = LB_UNITS_US; other <= LB_UNITS_METRIC; other++) {
      g_autofree char *shown = lb_bar_layout_to_text (&known, (LbUnits) other);
      const LbBarLayout again = read (shown, (LbUnits) other);
      g_autofree char *kept_again = lb_bar_layout_to_text (&again, LB_UNITS_METRIC);

      g_assert_cmpstr (kept_again, ==, kept);
    }

    /* What was typed in inches is shown as it was typed. */
    g_autofree char *shown = lb_bar_layout_to_text (&known, units);
    const LbBarLayout typed_again = read (shown, units);

    for (guint i = 0; i < layout.n_given; i++) {
      g_assert_cmpfloat_with_epsilon (typed_again.given[i].x, layout.given[i].x, 1e-9);
      g_assert_cmpfloat_with_epsilon (typed_again.given[i].y, layout.given[i].y, 1e-9);
    }
  }
}

static void
test_words_round_trip (void)
{
  const char *const texts[] = { "", "3 on each face", "2 between corners",
                                "8 outer, 4 inner at 177.8", "at 88.9 88.9; 0 -88.9" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++) {
    const LbBarLayout layout = read (texts[i], LB_UNITS_METRIC);
    g_autofree char *text = lb_bar_layout_to_text (&layout, LB_UNITS_METRIC);

    g_assert_cmpstr (text, ==, texts[i]);
  }
}

static void
test_refused (void)
{
  const char *const texts[] = {
    "8",
    "eight outer, 4 inner at 7",
    "0 on each face",
    "1 on each face",
    "61 between corners",
    "99999999999999999999 between corners",
    "3 on each face or so",
    "8 outer, 4 inner",
    "8 outer, 0 inner at 7",
    "40 outer, 21 inner at 7",
    "8 outer, 4 inner at 0.1",
    "8 outer, 4 inner at 7 lb",
    "at",
    "at 3",
    "at 3 4 5",
    "at 3 4; 5",
    "at 3 x",
    "at 1e9 4",
    "at nan 4",
    "at 3 4 ;; 5 6",
  };
  LbBarLayout layout = { .n_on_face = 7 };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (GError) error = NULL;

    if (lb_bar_layout_from_text (texts[i], LB_UNITS_US, &layout, &error))
      g_error ("“%s” was read", texts[i]);
    g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_cmpuint (layout.n_on_face, ==, 7);
  }

  /* One bar more than there can be. */
  g_autoptr (GString) many = g_string_new ("at 1 1");

  for (int i = 1; i < LB_BARS_MAX; i++)
    g_string_append_printf (many, "; %d 0", i);
  g_assert_true (lb_bar_layout_from_text (many->str, LB_UNITS_METRIC, &layout, NULL));
  g_string_append (many, "; 99 0");
  g_assert_false (lb_bar_layout_from_text (many->str, LB_UNITS_METRIC, &layout, NULL));
}

/* A square of n bars on each face is what a ring of 4 (n − 1) bars is. */
static void
test_faces_of_a_square (void)
{
  const LbOutline square = { .shape = LB_SHAPE_SQUARE, .width_m = 0.4 };

  for (guint n = 2; n <= 16; n++) {
    const LbBarLayout layout = { .kind = LB_BAR_LAYOUT_ON_FACES, .n_on_face = n };
    LbPoint faces[LB_BARS_MAX], ring[LB_BARS_MAX];
    const guint n_bars = lb_bar_layout_count (&layout, square.shape);

    g_assert_cmpuint (n_bars, ==, 4 * (n - 1));
    lb_bar_layout_place (&layout, &square, 0.08, n_bars, faces);
    lb_bar_ring_place (&square, 0.08, n_bars, ring);
    g_assert_cmpmem (faces, n_bars * sizeof *faces, ring, n_bars * sizeof *ring);
  }
}

/* Each face has what it should, at one distance, in the corners or in none; numbers go clockwise. */
static void
test_faces (void)
{
  for (int shape = LB_SHAPE_SQUARE; shape <= LB_SHAPE_OCTAGON; shape++) {
    const LbOutline outline = { .shape = (LbShape) shape, .width_m = 0.5 };
    const guint n_faces = lb_shape_faces (outline.shape);

    for (guint n = 1; n * n_faces <= LB_BARS_MAX; n++) {
      for (int has_corners = 0; has_corners < 2; has_corners++) {
        const LbBarLayout layout = {
          .kind = has_corners ? LB_BAR_LAYOUT_ON_FACES : LB_BAR_LAYOUT_BETWEEN_CORNERS,
          .n_on_face = n + (guint) has_corners,
        };
        LbPoint places[LB_BARS_MAX];
        double last = -1;
        guint n_on_lean_face = 0, n_on_corner = 0;

        lb_bar_layout_place (&layout, &outline, 0.08, n * n_faces, places);
        for (guint i = 0; i < n * n_faces; i++) {
          const double angle = atan2 (places[i].x, places[i].y);
          const double round = angle < -1e-9 ? angle + 2 * G_PI : angle;
          const double corner = hypot (places[i].x, places[i].y) * cos (G_PI / n_faces);

          g_assert_cmpfloat (round, >, last);
          last = round;
          n_on_lean_face += fabs (places[i].y - 0.17) < 1e-9;
          n_on_corner += fabs (corner - 0.17) < 1e-9;
        }
        g_assert_cmpuint (n_on_lean_face, ==, layout.n_on_face);
        g_assert_cmpuint (n_on_corner, ==, has_corners ? n_faces : 0);
        g_assert_cmpfloat (places[0].x, >=, -1e-9);
      }
    }
  }
}

static void
test_rings_and_given (void)
{
  const LbOutline round = { .shape = LB_SHAPE_ROUND, .width_m = 0.6 };
  const LbBarLayout rings = read ("8 outer, 4 inner at 200", LB_UNITS_METRIC);
  const LbBarLayout given = read ("at 10 20; -30 40", LB_UNITS_METRIC);
  LbPoint places[LB_BARS_MAX];

  g_assert_cmpuint (lb_bar_layout_count (&rings, LB_SHAPE_ROUND), ==, 12);
  lb_bar_layout_place (&rings, &round, 0.1, 12, places);
  for (guint i = 0; i < 12; i++)
    g_assert_cmpfloat_with_epsilon (hypot (places[i].x, places[i].y), i < 8 ? 0.2 : 0.1, 1e-12);
  /* The first of each ring stands on the lean. */
  g_assert_cmpfloat_with_epsilon (places[8].x, 0, 1e-12);

  g_assert_cmpuint (lb_bar_layout_count (&given, LB_SHAPE_ROUND), ==, 2);
  lb_bar_layout_place (&given, &round, 0.1, 2, places);
  g_assert_cmpfloat_with_epsilon (places[1].x, -0.03, 1e-12);
  g_assert_cmpfloat_with_epsilon (places[1].y, 0.04, 1e-12);

  /* No faces, no number of bars that is right. */
  const LbBarLayout faces = read ("3 on each face", LB_UNITS_METRIC);

  g_assert_cmpuint (lb_bar_layout_count (&faces, LB_SHAPE_ROUND), >, LB_BARS_MAX);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/bar-layout/reads", test_reads);
  g_test_add_func ("/trade/bar-layout/round-trip", test_round_trip);
  g_test_add_func ("/trade/bar-layout/words-round-trip", test_words_round_trip);
  g_test_add_func ("/trade/bar-layout/refused", test_refused);
  g_test_add_func ("/trade/bar-layout/faces-of-a-square", test_faces_of_a_square);
  g_test_add_func ("/trade/bar-layout/faces", test_faces);
  g_test_add_func ("/trade/bar-layout/rings-and-given", test_rings_and_given);
  return g_test_run ();
}
