/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/pile-grid.h"
#include "trade/trade-error.h"

#include <math.h>

static LbPileGrid
plain_grid (void)
{
  return (LbPileGrid){ .n_bents = 3,
                       .n_rows = 4,
                       .bent_spacing_m = 5,
                       .row_spacing_m = 3,
                       .x_m = 100,
                       .y_m = 200,
                       .bearing_rad = G_PI_2,
                       .first_bent = 7 };
}

static GArray *
lay (const LbPileGrid *grid, GStringChunk *strings, GError **error)
{
  LbPile like;

  lb_pile_init (&like);
  like.n_bars = 8;
  return lb_pile_grid_lay (grid, &like, strings, error);
}

static const LbPile *
pile (GArray *piles, guint i)
{
  return &g_array_index (piles, LbPile, i);
}

/* Bents run east, so the rows go south. */
static void
test_places (void)
{
  const LbPileGrid grid = plain_grid ();
  g_autoptr (GStringChunk) strings = g_string_chunk_new (64);
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) piles = lay (&grid, strings, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (piles->len, ==, 12);
  g_assert_cmpstr (pile (piles, 0)->mark, ==, "A7");
  g_assert_cmpfloat_with_epsilon (pile (piles, 0)->x_m, 100, 1e-9);
  g_assert_cmpfloat_with_epsilon (pile (piles, 0)->y_m, 200, 1e-9);
  g_assert_cmpstr (pile (piles, 11)->mark, ==, "D9");
  g_assert_cmpstr (pile (piles, 11)->bent, ==, "9");
  g_assert_cmpstr (pile (piles, 11)->row, ==, "D");
  g_assert_cmpfloat_with_epsilon (pile (piles, 11)->x_m, 110, 1e-9);
  g_assert_cmpfloat_with_epsilon (pile (piles, 11)->y_m, 191, 1e-9);
  g_assert_cmpuint (pile (piles, 11)->n_bars, ==, 8);
}

/* Turned any way, neighbours stay as far apart. */
static void
test_turned (void)
{
  LbPileGrid grid = plain_grid ();
  g_autoptr (GStringChunk) strings = g_string_chunk_new (64);

  for (int degrees = 0; degrees < 360; degrees += 17) {
    grid.bearing_rad = degrees * G_PI / 180;
    g_autoptr (GArray) piles = lay (&grid, strings, NULL);
    const LbPile *first = pile (piles, 0), *along = pile (piles, 4), *across = pile (piles, 1);

    g_assert_cmpfloat_with_epsilon (hypot (along->x_m - first->x_m, along->y_m - first->y_m), 5,
                                    1e-9);
    g_assert_cmpfloat_with_epsilon (hypot (across->x_m - first->x_m, across->y_m - first->y_m), 3,
                                    1e-9);
  }
}

static void
test_letters (void)
{
  LbPileGrid grid = plain_grid ();
  g_autoptr (GStringChunk) strings = g_string_chunk_new (64);

  grid.n_bents = 1;
  grid.n_rows = 100;
  grid.bent_spacing_m = (double) NAN;
  g_autoptr (GArray) piles = lay (&grid, strings, NULL);

  g_assert_cmpstr (pile (piles, 25)->row, ==, "Z");
  g_assert_cmpstr (pile (piles, 26)->row, ==, "AA");
  g_assert_cmpstr (pile (piles, 51)->row, ==, "AZ");
  g_assert_cmpstr (pile (piles, 52)->row, ==, "BA");
  g_assert_cmpstr (pile (piles, 99)->mark, ==, "CV7");
  g_assert_true (isfinite (pile (piles, 99)->x_m));
}

static void
assert_refused (const LbPileGrid *grid)
{
  g_autoptr (GStringChunk) strings = g_string_chunk_new (64);
  g_autoptr (GError) error = NULL;

  g_assert_null (lay (grid, strings, &error));
  g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
}

static void
test_refusals (void)
{
  LbPileGrid grid = plain_grid ();

  grid.n_bents = 0;
  assert_refused (&grid);
  grid.n_bents = 501;
  assert_refused (&grid);
  grid = plain_grid ();
  grid.n_rows = 101;
  assert_refused (&grid);
  grid = plain_grid ();
  grid.bent_spacing_m = 0;
  assert_refused (&grid);
  grid.bent_spacing_m = (double) NAN;
  assert_refused (&grid);
  grid = plain_grid ();
  grid.row_spacing_m = 1000;
  assert_refused (&grid);
  grid = plain_grid ();
  grid.x_m = (double) INFINITY;
  assert_refused (&grid);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/pile-grid/places", test_places);
  g_test_add_func ("/pile-grid/turned", test_turned);
  g_test_add_func ("/pile-grid/letters", test_letters);
  g_test_add_func ("/pile-grid/refusals", test_refusals);

  return g_test_run ();
}
