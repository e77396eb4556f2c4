/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/steel.h"

#include <limits.h>

#define KSI (1000 * 0.45359237 * 9.80665 / (0.0254 * 0.0254))

static void
test_grades_rise (void)
{
  gsize n;
  const LbSteelGrade *grades = lb_steel_grades (&n);

  g_assert_cmpuint (n, ==, 5);
  for (gsize i = 1; i < n; i++)
    g_assert_cmpfloat (grades[i].yield_pa, >, grades[i - 1].yield_pa);
}

/* Each side of each border. */
static void
test_periods (void)
{
  const struct
  {
    int year;
    double ksi;
  } cases[] = {
    { INT_MIN, 33 }, { -5, 33 },   { 0, 33 },    { 1911, 33 }, { 1949, 33 },
    { 1950, 40 },    { 1967, 40 }, { 1968, 60 }, { 2024, 60 }, { INT_MAX, 60 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    const LbSteelPeriod *period = lb_steel_for_year (cases[i].year);

    g_assert_cmpfloat_with_epsilon (period->grade->yield_pa, cases[i].ksi * KSI, 1);
    g_assert_cmpint (period->first_year, <=, cases[i].year);
    g_assert_nonnull (period->source);
  }
}

/* The rule is practice, and never tagged better than that. */
static void
test_tags (void)
{
  gsize n;
  const LbSteelGrade *grades = lb_steel_grades (&n);

  for (gsize i = 0; i < n; i++) {
    g_assert_cmpint (grades[i].tag, ==, LB_TAG_STANDARD);
    g_assert_nonnull (grades[i].source);
  }
  g_assert_cmpint (lb_steel_for_year (1938)->tag, ==, LB_TAG_COMMON_PRACTICE);
}

static void
test_elastic (void)
{
  g_assert_cmpfloat_with_epsilon (LB_STEEL_ELASTIC_PA / (1000 * KSI), 29, 1e-12);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/steel/grades-rise", test_grades_rise);
  g_test_add_func ("/trade/steel/periods", test_periods);
  g_test_add_func ("/trade/steel/tags", test_tags);
  g_test_add_func ("/trade/steel/elastic", test_elastic);
  return g_test_run ();
}
