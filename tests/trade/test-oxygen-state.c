/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/oxygen-state.h"

#include "trade/trade-error.h"

#include <math.h>

/* Density from pressure, and pressure from that density again, over the whole range. */
static void
test_round_trip (void)
{
  for (double temperature = LB_OXYGEN_K_LEAST; temperature <= LB_OXYGEN_K_MOST; temperature += 5) {
    double before = -1;

    for (double pressure = 0; pressure <= LB_OXYGEN_PA_MOST; pressure += 0.25e6) {
      double density;

      g_assert_true (lb_oxygen_density (pressure, temperature, &density, NULL));
      g_assert_cmpfloat_with_epsilon (lb_oxygen_pressure (density, temperature), pressure,
                                      1e-9 * (pressure + 1));
      g_assert_cmpfloat (density, >, before);
      before = density;
    }
  }
}

/* A thin gas is an ideal one. */
static void
test_thin (void)
{
  double density;

  g_assert_true (lb_oxygen_density (100, 290, &density, NULL));
  g_assert_cmpfloat_with_epsilon (density * LB_OXYGEN_GAS_CONSTANT * 290 / LB_OXYGEN_KG_PER_MOLE,
                                  100, 1e-4);
}

static void
test_warmer_is_thinner (void)
{
  double cold, warm;

  g_assert_true (lb_oxygen_density (15e6, 280, &cold, NULL));
  g_assert_true (lb_oxygen_density (15e6, 300, &warm, NULL));
  g_assert_cmpfloat (warm, <, cold);
}

/* Free gas is what the other figures of the trade take it to be. */
static void
test_free_gas (void)
{
  double density, ratio;

  g_assert_true (lb_oxygen_density (LB_FREE_GAS_PA, LB_FREE_GAS_K, &density, NULL));
  g_assert_cmpfloat_with_epsilon (density, 1.3261, 0.00005);
  g_assert_true (lb_oxygen_free_ratio (0, LB_FREE_GAS_K, &ratio, NULL));
  g_assert_cmpfloat_with_epsilon (ratio, 1, 1e-12);
}

static void
test_refused (void)
{
  const double states[][2] = {
    { -1, 290 },
    { LB_OXYGEN_PA_MOST + 1, 290 },
    { (double) NAN, 290 },
    { (double) INFINITY, 290 },
    { 1e6, LB_OXYGEN_K_LEAST - 0.01 },
    { 1e6, LB_OXYGEN_K_MOST + 0.01 },
    { 1e6, (double) NAN },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (states); i++) {
    g_autoptr (GError) density_error = NULL;
    g_autoptr (GError) ratio_error = NULL;
    double out = 7;

    g_assert_false (lb_oxygen_density (states[i][0], states[i][1], &out, &density_error));
    g_assert_error (density_error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_false (
      lb_oxygen_free_ratio (states[i][0] - LB_FREE_GAS_PA, states[i][1], &out, &ratio_error));
    g_assert_error (ratio_error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_cmpfloat (out, ==, 7);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/oxygen-state/round-trip", test_round_trip);
  g_test_add_func ("/trade/oxygen-state/thin", test_thin);
  g_test_add_func ("/trade/oxygen-state/warmer-is-thinner", test_warmer_is_thinner);
  g_test_add_func ("/trade/oxygen-state/free-gas", test_free_gas);
  g_test_add_func ("/trade/oxygen-state/refused", test_refused);
  return g_test_run ();
}
