/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/batter.h"

#include "trade/trade-error.h"

#include <math.h>

#define DEGREE (G_PI / 180)

static void
test_geometry (void)
{
  g_assert_cmpfloat (lb_batter_angle (0), ==, 0);
  g_assert_cmpfloat (lb_batter_true_length (0, 7), ==, 7);

  for (int k = 1; k <= 24; k++) {
    const double batter = 1.0 / k;
    const double bearing = 0.7 * k;
    const LbPoint offset = lb_batter_offset (batter, bearing, 12);

    /* Pythagoras: rise, run and the length along the axis. */
    g_assert_cmpfloat_with_epsilon (hypot (12, hypot (offset.x, offset.y)),
                                    lb_batter_true_length (batter, 12), 1e-12);
    g_assert_cmpfloat_with_epsilon (
      lb_batter_true_length (batter, 12) * cos (lb_batter_angle (batter)), 12, 1e-12);
  }

  const LbPoint east = lb_batter_offset (0.25, G_PI_2, 8);

  g_assert_cmpfloat_with_epsilon (east.x, 2, 1e-12);
  g_assert_cmpfloat_with_epsilon (east.y, 0, 1e-12);
}

static void
test_batter_texts (void)
{
  const struct
  {
    const char *text;
    double batter;
  } cases[] = {
    { "1:6", 1.0 / 6 },
    { "6", 1.0 / 6 },
    { " 1 : 4,5 ", 1 / 4.5 },
    { "2:12", 1.0 / 6 },
    { "plumb", 0 },
    { "Vertical", 0 },
    { "", 0 },
    { "0", 0 },
    { "45°", 1 },
    { "45 deg", 1 },
    { "1:1", 1 },
    { "0:1", 0 },
    { "9.5°", 0.16734261 },
    { "9,5 DEG", 0.16734261 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    double batter = 7;

    g_assert_true (lb_batter_from_text (cases[i].text, &batter, NULL));
    g_assert_cmpfloat_with_epsilon (batter, cases[i].batter, 1e-8);
  }
}

static void
test_batter_refused (void)
{
  const char *const texts[] = { "1",  "1.5",  "-6",   "2:1",   "46°", "-3°",  "1:0",  "1:",
                                ":6", "lean", "6 ft", "1:6:2", "90°", "120°", "1:-6", "nan" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (GError) error = NULL;
    double batter = 7;

    g_assert_false (lb_batter_from_text (texts[i], &batter, &error));
    g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_cmpfloat (batter, ==, 7);
  }
}

static void
test_batter_comes_back (void)
{
  for (double k = 1; k < 60; k += 0.5) {
    g_autofree char *text = lb_batter_to_text (1 / k);
    double batter;

    g_assert_true (lb_batter_from_text (text, &batter, NULL));
    g_assert_cmpfloat_with_epsilon (batter, 1 / k, 1e-12);
  }

  g_autofree char *plumb = lb_batter_to_text (0);

  g_assert_cmpstr (plumb, ==, "plumb");
}

static void
test_bearings (void)
{
  const struct
  {
    const char *text;
    double degrees;
  } cases[] = {
    { "45", 45 },          { "45.5°", 45.5 },     { "360", 0 },     { "0", 0 },
    { "N45E", 45 },        { "S 12.5 W", 192.5 }, { "s10e", 170 },  { "N 30° W", 330 },
    { "NE", 45 },          { "south", 180 },      { "SSW", 202.5 }, { "north-east", 45 },
    { "North West", 315 }, { "N0E", 0 },          { "N90W", 270 },  { "n 7,5 e", 7.5 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    double bearing = 7;

    g_assert_true (lb_bearing_from_text (cases[i].text, &bearing, NULL));
    g_assert_cmpfloat_with_epsilon (bearing, cases[i].degrees * DEGREE, 1e-12);
  }
}

static void
test_bearings_refused (void)
{
  const char *const texts[] = {
    "", "-1", "361", "N91E", "NE45", "E45N", "up", "45 ft", "N45", "NEE"
  };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (GError) error = NULL;
    double bearing = 7;

    g_assert_false (lb_bearing_from_text (texts[i], &bearing, &error));
    g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_cmpfloat (bearing, ==, 7);
  }
}

static void
test_compass (void)
{
  for (int i = 0; i < 8; i++) {
    double bearing;

    /* Each name read back as a bearing is the point it names, from either side. */
    g_assert_true (lb_bearing_from_text (lb_compass_name ((LbCompass) i), &bearing, NULL));
    g_assert_cmpint (lb_compass_nearest (bearing), ==, i);
    g_assert_cmpint (lb_compass_nearest (bearing + 22 * DEGREE), ==, i);
    g_assert_cmpint (lb_compass_nearest (bearing - 22 * DEGREE), ==, i);
    g_assert_cmpint (lb_compass_nearest (bearing + 4 * G_PI), ==, i);
  }
  g_assert_cmpint (lb_compass_nearest ((double) NAN), ==, LB_COMPASS_N);
}

static void
test_any_text_is_survived (void)
{
  const char pieces[] = "0123456789.,:-+NnSsEeWw dg\xc2\xb0";

  for (int i = 0; i < 20000; i++) {
    char text[16];
    const int length = g_test_rand_int_range (0, (int) sizeof text - 1);
    double batter, bearing;

    for (int c = 0; c < length; c++)
      text[c] = pieces[g_test_rand_int_range (0, (int) sizeof pieces - 1)];
    text[length] = '\0';

    if (lb_batter_from_text (text, &batter, NULL))
      g_assert_true (batter >= 0 && batter <= 1 + 1e-9);
    if (lb_bearing_from_text (text, &bearing, NULL))
      g_assert_true (bearing >= 0 && bearing < 2 * G_PI);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/batter/geometry", test_geometry);
  g_test_add_func ("/trade/batter/texts", test_batter_texts);
  g_test_add_func ("/trade/batter/refused", test_batter_refused);
  g_test_add_func ("/trade/batter/comes-back", test_batter_comes_back);
  g_test_add_func ("/trade/batter/bearings", test_bearings);
  g_test_add_func ("/trade/batter/bearings-refused", test_bearings_refused);
  g_test_add_func ("/trade/batter/compass", test_compass);
  g_test_add_func ("/trade/batter/any-text", test_any_text_is_survived);
  return g_test_run ();
}
