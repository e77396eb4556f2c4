/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/quantity.h"

#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

static const LbNumberStyle american = { .decimal_point = ".", .thousands = "," };
static const LbNumberStyle european = { .decimal_point = ",", .thousands = "\xe2\x80\xaf" };

static void
test_there_and_back (void)
{
  for (int q = 0; q < LB_N_QUANTITIES; q++) {
    for (int u = LB_UNITS_US; u <= LB_UNITS_METRIC; u++) {
      const LbQuantity quantity = (LbQuantity) q;
      const LbUnits units = (LbUnits) u;
      g_autofree char *text = g_strdup_printf ("12.5 %s", lb_quantity_unit (quantity, units));
      double named, bare;

      g_assert_cmpfloat_with_epsilon (
        lb_quantity_from_si (quantity, units, lb_quantity_to_si (quantity, units, 12.5)), 12.5,
        1e-12);
      /* The unit that is printed is understood, in either system's text. */
      g_assert_true (lb_quantity_from_text (quantity, units, text, &named, NULL));
      g_assert_true (lb_quantity_from_text (quantity, units, "12,5", &bare, NULL));
      g_assert_cmpfloat (named, ==, bare);
      g_assert_true (lb_quantity_from_text (quantity,
                                            u == LB_UNITS_US ? LB_UNITS_METRIC : LB_UNITS_US, text,
                                            &bare, NULL) ||
                     quantity == LB_QUANTITY_COUNT);
      g_assert_cmpint (lb_quantity_decimals (quantity, units), >=, 0);
    }
  }
}

static void
test_written (void)
{
  const struct
  {
    LbQuantity quantity;
    LbUnits units;
    double shown;
    const LbNumberStyle *style;
    const char *text;
  } cases[] = {
    { LB_QUANTITY_MASS, LB_UNITS_US, 9850.4, &american, "9,850 lb" },
    { LB_QUANTITY_MASS, LB_UNITS_US, 9850.4, &LB_NUMBER_PLAIN, "9850 lb" },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, 3.14, &american, "3.1 ft" },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, -1234.5, &european,
      "\xe2\x88\x92"
      "1\xe2\x80\xaf"
      "234,5 m" },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, -0.001, &LB_NUMBER_PLAIN, "0 m" },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, -7.5, &LB_NUMBER_PLAIN, "-7.5 m" },
    { LB_QUANTITY_ANGLE, LB_UNITS_US, 60, &american, "60°" },
    { LB_QUANTITY_SHARE, LB_UNITS_US, 15, &american, "15%" },
    { LB_QUANTITY_COUNT, LB_UNITS_US, 1234567, &american, "1,234,567" },
    { LB_QUANTITY_COUNT, LB_UNITS_US, 100, &american, "100" },
    { LB_QUANTITY_MASS, LB_UNITS_US, (double) NAN, &american, "–" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    const double si = lb_quantity_to_si (cases[i].quantity, cases[i].units, cases[i].shown);
    g_autofree char *text = lb_quantity_to_text (cases[i].quantity, cases[i].units, si,
                                                 cases[i].style);

    g_assert_cmpstr (text, ==, cases[i].text);
  }
}

static void
test_read (void)
{
  const struct
  {
    LbQuantity quantity;
    LbUnits units;
    const char *text;
    double si;
  } cases[] = {
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "24", 7.3152 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "24 ft", 7.3152 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "24'", 7.3152 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "7,3 m", 7.3 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "24'6\"", 7.4676 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "24' - 6 1/2 in", 7.4803 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "5 ft 6 in", 1.6764 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "-5 ft. 6", -1.6764 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US,
      "\xe2\x88\x92"
      "10",
      -3.048 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "12,345", 12.345 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "1.234.567,5", 1234567.5 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC, "1,234,567", 1234567 },
    { LB_QUANTITY_LENGTH, LB_UNITS_US, "0,125 m", 0.125 },
    { LB_QUANTITY_LENGTH, LB_UNITS_METRIC,
      "1\xe2\x80\xaf"
      "234,5",
      1234.5 },
    { LB_QUANTITY_SIZE, LB_UNITS_US, "16", 0.4064 },
    { LB_QUANTITY_SIZE, LB_UNITS_US, "16 1/2", 0.4191 },
    { LB_QUANTITY_SIZE, LB_UNITS_US, "1-1/4 in", 0.03175 },
    { LB_QUANTITY_SIZE, LB_UNITS_US, "400 mm", 0.4 },
    { LB_QUANTITY_SIZE, LB_UNITS_US, "1 ft 4 in", 0.4064 },
    { LB_QUANTITY_TIME, LB_UNITS_US, "1.5 h", 5400 },
    { LB_QUANTITY_SHORT_TIME, LB_UNITS_US, "2 min", 120 },
    { LB_QUANTITY_MASS, LB_UNITS_US, "12,345.5 kg", 12345.5 },
    { LB_QUANTITY_FORCE, LB_UNITS_US, "2 kN", 2000 },
    { LB_QUANTITY_SHARE, LB_UNITS_US, "15 %", 0.15 },
    { LB_QUANTITY_SPEED, LB_UNITS_METRIC, "1 kn", 1852.0 / 3600 },
    { LB_QUANTITY_COUNT, LB_UNITS_US, " +8 ", 8 },
    { LB_QUANTITY_COUNT, LB_UNITS_US, ".5", 0.5 },
    { LB_QUANTITY_COUNT, LB_UNITS_US, "2e-7", 2e-7 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    double si = 0;

    g_assert_true (
      lb_quantity_from_text (cases[i].quantity, cases[i].units, cases[i].text, &si, NULL));
    g_assert_cmpfloat_with_epsilon (si, cases[i].si, 1e-9 * MAX (1, fabs (cases[i].si)));
  }
}

static void
test_refused (void)
{
  const struct
  {
    LbQuantity quantity;
    const char *text;
  } cases[] = {
    { LB_QUANTITY_LENGTH, "" },         { LB_QUANTITY_LENGTH, "ft" },
    { LB_QUANTITY_LENGTH, "12,5x" },    { LB_QUANTITY_LENGTH, "--5" },
    { LB_QUANTITY_LENGTH, "1.2.3" },    { LB_QUANTITY_LENGTH, "1,2,3" },
    { LB_QUANTITY_LENGTH, "5 lb" },     { LB_QUANTITY_LENGTH, "5 ft 13 in" },
    { LB_QUANTITY_LENGTH, "5 m 6 in" }, { LB_QUANTITY_LENGTH, "5 ft 6 ft" },
    { LB_QUANTITY_LENGTH, "9,850" },    { LB_QUANTITY_MASS, "9,850 lb" },
    { LB_QUANTITY_COUNT, "8 ft" },      { LB_QUANTITY_COUNT, "nan" },
    { LB_QUANTITY_COUNT, "inf" },       { LB_QUANTITY_COUNT, "1e999" },
    { LB_QUANTITY_COUNT, "0x10" },      { LB_QUANTITY_SIZE, "1/0" },
    { LB_QUANTITY_COUNT, "5 %" },       { LB_QUANTITY_MASS, "." },
    { LB_QUANTITY_LENGTH, "1 234" },    { LB_QUANTITY_LENGTH, "\xff" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (GError) error = NULL;
    double si = 7;

    g_assert_false (
      lb_quantity_from_text (cases[i].quantity, LB_UNITS_US, cases[i].text, &si, &error));
    g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_true (strstr (error->message, cases[i].text));
    g_assert_cmpfloat (si, ==, 7);
  }
}

static void
test_shortest_text_reads_back (void)
{
  for (int i = 0; i < 5000; i++) {
    const double value = g_test_rand_double_range (-1, 1) *
                         pow (10, g_test_rand_int_range (-20, 12));
    g_autofree char *text = lb_number_to_text (value, -1, &LB_NUMBER_PLAIN);
    double back;

    g_assert_true (lb_quantity_from_text (LB_QUANTITY_COUNT, LB_UNITS_METRIC, text, &back, NULL));
    g_assert_cmpfloat (back, ==, value);
  }

  g_autofree char *tenth = lb_number_to_text (0.1, -1, &LB_NUMBER_PLAIN);

  g_assert_cmpstr (tenth, ==, "0.1");
}

static void
test_any_text_is_survived (void)
{
  const char pieces[] = "0123456789.,'\"/- +eftinms\xc2\xa0\xe2\x80\xaf\xe2\x88\x92";

  for (int i = 0; i < 50000; i++) {
    char text[20];
    const int length = g_test_rand_int_range (0, (int) sizeof text - 1);
    double si = 0;

    for (int c = 0; c < length; c++)
      text[c] = pieces[g_test_rand_int_range (0, (int) sizeof pieces - 1)];
    text[length] = '\0';

    const LbQuantity quantity = (LbQuantity) g_test_rand_int_range (0, LB_N_QUANTITIES);
    const LbUnits units = (LbUnits) g_test_rand_int_range (0, 2);

    if (lb_quantity_from_text (quantity, units, text, &si, NULL))
      g_assert_true (isfinite (si));
    else
      g_assert_cmpfloat (si, ==, 0);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/quantity/there-and-back", test_there_and_back);
  g_test_add_func ("/trade/quantity/written", test_written);
  g_test_add_func ("/trade/quantity/read", test_read);
  g_test_add_func ("/trade/quantity/refused", test_refused);
  g_test_add_func ("/trade/quantity/shortest-reads-back", test_shortest_text_reads_back);
  g_test_add_func ("/trade/quantity/any-text", test_any_text_is_survived);
  return g_test_run ();
}
