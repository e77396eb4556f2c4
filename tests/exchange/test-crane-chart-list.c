/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A crane's own chart: as it should be, and as it must not be taken. */
#include "book/book-error.h"
#include "book/crane-chart-text.h"
#include "exchange/exchange-error.h"
#include "exchange/setting-list.h"

#include <math.h>
#include <string.h>

#define FOOT  0.3048
#define POUND (0.45359237 * 9.80665)
#define TONNE (1000 * 9.80665)

/* As taken, and read again from what the job would hold. */
static gboolean
take (const char *text, gsize length, LbCraneChart *out, GError **error)
{
  g_autofree char *plain = lb_setting_list_from_csv (LB_TABLE_CRANE, text, length, error);

  return plain != NULL && lb_crane_chart_from_text (plain, out, error);
}

static LbCraneChart
read_chart (const char *text)
{
  g_autoptr (GError) error = NULL;
  LbCraneChart chart;

  g_assert_true (take (text, strlen (text), &chart, &error));
  g_assert_no_error (error);
  return chart;
}

static void
test_whole (void)
{
  const LbCraneChart chart = read_chart ("radius (ft),capacity (lb)\r\n"
                                         "30,42000\r\n"
                                         "40.5,28500\r\n"
                                         "50,28500\r\n");
  LbCraneRow row;

  g_assert_cmpuint (chart.n_rows, ==, 3);
  g_assert_true (lb_crane_capacity (&chart, 35 * FOOT, &row, NULL));
  g_assert_cmpfloat_with_epsilon (row.radius_m, 40.5 * FOOT, 1e-9);
  g_assert_cmpfloat_with_epsilon (row.capacity_n, 28500 * POUND, 1e-6);
  g_assert_false (lb_crane_capacity (&chart, 51 * FOOT, &row, NULL));
}

static void
test_units (void)
{
  static const struct
  {
    const char *text;
    double radius_m, capacity_n;
  } cases[] = {
    { "radius_m,capacity_kg\n9.5,12500\n", 9.5, 12500 * 9.80665 },
    { "RADIUS m;Capacity [t]\n9,5;12,5\n", 9.5, 12.5 * TONNE },
    { "radius ft\tcapacity kip\n30\t42.5\n", 30 * FOOT, 42500 * POUND },
    { "\xef\xbb\xbfradius(ft),capacity(lb)\n30,42000\n", 30 * FOOT, 42000 * POUND },
    /* The radius tells that the comma groups. */
    { "radius ft,capacity lb\n30.5,\"42,000\"\n", 30.5 * FOOT, 42000 * POUND },
    { "radius m;capacity kg\n9,5;12.500\n", 9.5, 12500 * 9.80665 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    const LbCraneChart chart = read_chart (cases[i].text);

    g_test_message ("%s", cases[i].text);
    g_assert_cmpuint (chart.n_rows, ==, 1);
    g_assert_cmpfloat_with_epsilon (chart.rows[0].radius_m, cases[i].radius_m, 1e-9);
    g_assert_cmpfloat_with_epsilon (chart.rows[0].capacity_n, cases[i].capacity_n, 1e-6);
  }
}

static void
expect_refusal (const char *text, const char *words)
{
  g_autoptr (GError) error = NULL;
  LbCraneChart chart = { .n_rows = 7 };

  g_assert_false (take (text, strlen (text), &chart, &error));
  g_test_message ("%s", error->message);
  g_assert_true (error->domain == LB_EXCHANGE_ERROR || error->domain == LB_BOOK_ERROR);
  g_assert_nonnull (strstr (error->message, words));
  g_assert_cmpuint (chart.n_rows, ==, 7);
}

#define HEAD "radius ft,capacity lb\n"

static void
test_heading_refused (void)
{
  static const char *const wrong[] = {
    "30,42000\n40,28500\n",
    "radius,capacity\n30,42000\n",
    "radius ft,capacity\n30,42000\n",
    "radius ft,capacity ton\n30,21\n",
    "radius in,capacity lb\n360,42000\n",
    "capacity lb,radius ft\n42000,30\n",
    "radius ft,capacity lb,boom\n30,42000,80\n",
    "radius ft\n30\n",
    "radius of the load ft,capacity lb\n30,42000\n",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    expect_refusal (wrong[i], "radius (ft),capacity (lb)");
}

static void
test_cells_refused (void)
{
  static const struct
  {
    const char *text, *words;
  } wrong[] = {
    { HEAD "30,42000\n\n40,x\n", "Line 4, column 2 (capacity lb)" },
    { HEAD "30 ft,42000\n", "Line 2, column 1" },
    { HEAD ",42000\n", "Line 2, column 1" },
    { HEAD "30,nan\n", "Line 2, column 2" },
    { HEAD "30,inf\n", "Line 2, column 2" },
    { HEAD "30,\"42,000\"\n", "without grouping" },
    { HEAD "30,\"42,000\"\n31.5,30000\n\"32,5\",20000\n", "two ways" },
    { HEAD "30,42000\n40\n", "Line 3 has 1 cells" },
    { HEAD "30,42000,5\n", "Line 2 has 3 cells" },
    { HEAD "0,42000\n", "more than 0" },
    { HEAD "-30,42000\n", "“-30”" },
    { HEAD "30,0\n", "Line 2, column 2" },
    { HEAD "40,42000\n30,43000\n", "Line 3, column 1" },
    { HEAD "30,42000\n30,42000\n", "each once" },
    { HEAD "30,4200\n40,28500\n", "Line 3, column 2" },
    { HEAD "3000,42000\n", "right unit" },
    { "radius ft,capacity t\n30,42000\n", "right unit" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    expect_refusal (wrong[i].text, wrong[i].words);
}

static void
test_sizes_refused (void)
{
  g_autoptr (GString) text = g_string_new (HEAD);

  expect_refusal (text->str, "must have 1 to 200");
  for (guint i = 1; i <= LB_CRANE_ROWS_MAX; i++)
    g_string_append_printf (text, "%u,%u\n", i, 5000 - i);
  g_assert_cmpuint (read_chart (text->str).n_rows, ==, LB_CRANE_ROWS_MAX);
  g_string_append (text, "300,1\n");
  expect_refusal (text->str, "201 lines");
  expect_refusal ("", "empty");
}

/* Whatever a file holds, it is taken as a sound chart or refused with a reason. */
static void
test_any_bytes (void)
{
  static const char alphabet[] = "radius ft,capacity lb\n30,42\";.-\xff\t";
  g_autoptr (GRand) rand = g_rand_new_with_seed (20);

  for (guint i = 0; i < 4000; i++) {
    char text[64];
    const gint32 length = g_rand_int_range (rand, 0, sizeof text);
    const gboolean has_head = g_rand_boolean (rand);
    g_autoptr (GString) whole = g_string_new (has_head ? HEAD : "");
    g_autoptr (GError) error = NULL;
    LbCraneChart chart;
    guint row;

    for (gint32 at = 0; at < length; at++)
      text[at] = alphabet[g_rand_int_range (rand, 0, sizeof alphabet)];
    g_string_append_len (whole, text, length);
    if (take (whole->str, whole->len, &chart, &error))
      g_assert_cmpint (lb_crane_chart_fault (&chart, &row), ==, LB_CRANE_CHART_SOUND);
    else
      g_assert_nonnull (error);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/crane-chart-list/whole", test_whole);
  g_test_add_func ("/exchange/crane-chart-list/units", test_units);
  g_test_add_func ("/exchange/crane-chart-list/heading-refused", test_heading_refused);
  g_test_add_func ("/exchange/crane-chart-list/cells-refused", test_cells_refused);
  g_test_add_func ("/exchange/crane-chart-list/sizes-refused", test_sizes_refused);
  g_test_add_func ("/exchange/crane-chart-list/any-bytes", test_any_bytes);
  return g_test_run ();
}
