/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/cylinder.h"

#include "trade/oxygen-state.h"
#include "trade/trade-error.h"

#include <math.h>

#define PSI        6894.757293168
#define CUBIC_FOOT (0.3048 * 0.3048 * 0.3048)

static const LbCylinder usual = { .content_m3 = 244 * CUBIC_FOOT,
                                  .full_pa = 2200 * PSI,
                                  .residual_pa = 200 * PSI };

static void
test_full_is_the_content (void)
{
  double content;

  g_assert_true (lb_cylinder_content (&usual, usual.full_pa, LB_FREE_GAS_K, &content, NULL));
  g_assert_cmpfloat_with_epsilon (content, usual.content_m3, 1e-9);
}

/* What it gives and what is left make the whole. */
static void
test_usable_and_left (void)
{
  double usable, left;

  g_assert_true (lb_cylinder_usable (&usual, LB_FREE_GAS_K, &usable, NULL));
  g_assert_true (lb_cylinder_content (&usual, usual.residual_pa, LB_FREE_GAS_K, &left, NULL));
  g_assert_cmpfloat_with_epsilon (usable + left, usual.content_m3, 1e-9);
}

/* Its gauge at another temperature, read there, tells the same content. */
static void
test_gauge_and_content (void)
{
  for (double temperature = 250; temperature <= 330; temperature += 10) {
    double gauge, content;

    g_assert_true (lb_cylinder_full_gauge (&usual, temperature, &gauge, NULL));
    g_assert_true (lb_cylinder_content (&usual, gauge, temperature, &content, NULL));
    g_assert_cmpfloat_with_epsilon (content, usual.content_m3, 1e-9);
  }
}

/* In the cold the gauge shows the residual while more gas is left. */
static void
test_cold_gives_less (void)
{
  const LbCylinder nearly_empty_when_cold = { .content_m3 = usual.content_m3,
                                              .full_pa = usual.full_pa,
                                              .residual_pa = 1700 * PSI };
  double cold, warm, none;

  g_assert_true (lb_cylinder_usable (&usual, 255, &cold, NULL));
  g_assert_true (lb_cylinder_usable (&usual, 305, &warm, NULL));
  g_assert_cmpfloat (cold, <, warm);
  g_assert_true (lb_cylinder_usable (&nearly_empty_when_cold, 230, &none, NULL));
  g_assert_cmpfloat (none, ==, 0);
}

static void
test_feeds (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (lb_cylinder_feeds (&usual, 127 * PSI, &error));
  g_assert_no_error (error);
  g_assert_false (lb_cylinder_feeds (&usual, 200 * PSI, &error));
  g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_assert_false (lb_cylinder_feeds (&usual, (double) NAN, NULL));
}

static void
test_needed (void)
{
  g_assert_cmpfloat (lb_cylinders_needed (0, 6, 6), ==, 0);
  g_assert_cmpfloat (lb_cylinders_needed (1, 6, 6), ==, 1);
  g_assert_cmpfloat (lb_cylinders_needed (6, 6, 6), ==, 1);
  g_assert_cmpfloat (lb_cylinders_needed (6.001, 6, 6), ==, 2);
  g_assert_cmpfloat (lb_cylinders_needed (6, 2, 6), ==, 2);
  /* What conversion leaves over. */
  g_assert_cmpfloat (lb_cylinders_needed (6 * (1 + 1e-12), 6, 6), ==, 1);
  g_assert_cmpfloat (lb_cylinders_needed (8.001, 2, 6), ==, 3);
  /* An empty one on line is changed at once. */
  g_assert_cmpfloat (lb_cylinders_needed (6, 0, 6), ==, 2);
  g_assert_true (isnan (lb_cylinders_needed ((double) NAN, 6, 6)));
  g_assert_true (isnan (lb_cylinders_needed (6, 6, 0)));
}

/* The last change before the end of the need is the one that brings the last cylinder. */
static void
test_changeovers (void)
{
  const double first = 2, usable = 6;

  g_assert_cmpfloat (lb_cylinder_changeover (0, first, usable), ==, 2);
  g_assert_cmpfloat (lb_cylinder_changeover (1, first, usable), ==, 8);
  for (double need = 0.5; need < 60; need += 0.5) {
    const guint n_changes = (guint) lb_cylinders_needed (need, first, usable) - 1;

    g_assert_cmpfloat (lb_cylinder_changeover (n_changes, first, usable), >=, need);
    if (n_changes > 0)
      g_assert_cmpfloat (lb_cylinder_changeover (n_changes - 1, first, usable), <, need);
  }
}

static void
test_refused (void)
{
  const LbCylinder wrong[] = {
    { .content_m3 = 0, .full_pa = 1e7, .residual_pa = 1e6 },
    { .content_m3 = (double) NAN, .full_pa = 1e7, .residual_pa = 1e6 },
    { .content_m3 = (double) INFINITY, .full_pa = 1e7, .residual_pa = 1e6 },
    { .content_m3 = 7, .full_pa = 1e6, .residual_pa = 1e6 },
    { .content_m3 = 7, .full_pa = 1e7, .residual_pa = 0 },
    { .content_m3 = 7, .full_pa = (double) NAN, .residual_pa = 1e6 },
    { .content_m3 = 7, .full_pa = 1e9, .residual_pa = 1e6 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++) {
    g_autoptr (GError) error = NULL;
    double out = 7;

    g_assert_false (lb_cylinder_water_volume (&wrong[i], &out, &error));
    g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_false (lb_cylinder_usable (&wrong[i], 290, &out, NULL));
    g_assert_false (lb_cylinder_content (&wrong[i], 1e6, 290, &out, NULL));
    g_assert_cmpfloat (out, ==, 7);
  }
}

static void
test_refused_readings (void)
{
  g_autoptr (GError) gauge = NULL;
  g_autoptr (GError) heat = NULL;
  double out = 7;

  g_assert_false (lb_cylinder_content (&usual, -1, 290, &out, &gauge));
  g_assert_error (gauge, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_assert_false (lb_cylinder_full_gauge (&usual, 400, &out, &heat));
  g_assert_error (heat, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_assert_cmpfloat (out, ==, 7);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/cylinder/full-is-the-content", test_full_is_the_content);
  g_test_add_func ("/trade/cylinder/usable-and-left", test_usable_and_left);
  g_test_add_func ("/trade/cylinder/gauge-and-content", test_gauge_and_content);
  g_test_add_func ("/trade/cylinder/cold-gives-less", test_cold_gives_less);
  g_test_add_func ("/trade/cylinder/feeds", test_feeds);
  g_test_add_func ("/trade/cylinder/needed", test_needed);
  g_test_add_func ("/trade/cylinder/changeovers", test_changeovers);
  g_test_add_func ("/trade/cylinder/refused", test_refused);
  g_test_add_func ("/trade/cylinder/refused-readings", test_refused_readings);
  return g_test_run ();
}
