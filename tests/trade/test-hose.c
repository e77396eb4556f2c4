/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/hose.h"

#include "trade/trade-error.h"

#include <math.h>

#define PSI 6894.757293168
#define CFM (0.3048 * 0.3048 * 0.3048 / 60)

static LbHose
usual_hose (void)
{
  return (LbHose){ .length_m = 60.96, .bore_m = 0.009525, .flat_pa_per_m = (double) NAN };
}

static void
test_nothing_lost (void)
{
  LbHose hose = usual_hose ();
  double loss;

  g_assert_true (lb_hose_loss (&hose, 0, 108 * PSI, &loss, NULL));
  g_assert_cmpfloat (loss, ==, 0);
  hose.length_m = 0;
  g_assert_true (lb_hose_loss (&hose, 24 * CFM, 108 * PSI, &loss, NULL));
  g_assert_cmpfloat_with_epsilon (loss, 0, 1e-6);
}

/* A slow flow loses what Hagen and Poiseuille say: 128 μ L Q / (π D⁴), Q at the pressure inside. */
static void
test_slow (void)
{
  const LbHose hose = usual_hose ();
  const double flow = 0.2 * CFM, outlet = 100 * PSI;
  const double inside = flow * 101325 / (101325 + outlet);
  double loss;

  g_assert_true (lb_hose_loss (&hose, flow, outlet, &loss, NULL));
  g_assert_cmpfloat_with_epsilon (
    128 * 2.06e-5 * hose.length_m * inside / (G_PI * pow (hose.bore_m, 4)) / loss, 1, 0.005);
}

static void
test_grows (void)
{
  const LbHose hose = usual_hose ();
  double before = -1;

  for (double flow = 0; flow <= 30; flow += 0.5) {
    double loss;

    g_assert_true (lb_hose_loss (&hose, flow * CFM, 108 * PSI, &loss, NULL));
    g_assert_cmpfloat (loss, >, before);
    before = loss;
  }
}

/* More pressure makes the gas denser and the same free flow slower. */
static void
test_deeper_loses_less (void)
{
  const LbHose hose = usual_hose ();
  double shallow, deep;

  g_assert_true (lb_hose_loss (&hose, 24 * CFM, 95 * PSI, &shallow, NULL));
  g_assert_true (lb_hose_loss (&hose, 24 * CFM, 135 * PSI, &deep, NULL));
  g_assert_cmpfloat (deep, <, shallow);
}

static void
test_flat (void)
{
  LbHose hose = usual_hose ();
  double loss;

  hose.flat_pa_per_m = 1000;
  g_assert_true (lb_hose_loss (&hose, 24 * CFM, 108 * PSI, &loss, NULL));
  g_assert_cmpfloat_with_epsilon (loss, 60960, 1e-6);
  /* The bore isn't asked for. */
  hose.bore_m = (double) NAN;
  g_assert_true (lb_hose_loss (&hose, 24 * CFM, 108 * PSI, &loss, NULL));
}

static void
test_choked (void)
{
  g_autoptr (GError) outlet = NULL;
  const LbHose hose = usual_hose ();
  double out = 7;

  g_assert_false (lb_hose_loss (&hose, 500 * CFM, 50 * PSI, &out, &outlet));
  g_assert_error (outlet, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_assert_cmpfloat (out, ==, 7);
}

static void
test_refused (void)
{
  const struct
  {
    LbHose hose;
    double flow, pressure;
  } wrong[] = {
    { { -1, 0.01, (double) NAN }, 0.01, 5e5 },
    { { (double) NAN, 0.01, (double) NAN }, 0.01, 5e5 },
    { { 60, 0, (double) NAN }, 0.01, 5e5 },
    { { 60, (double) NAN, (double) NAN }, 0.01, 5e5 },
    { { 60, 0.01, -1 }, 0.01, 5e5 },
    { { 60, 0.01, (double) INFINITY }, 0.01, 5e5 },
    { { 60, 0.01, (double) NAN }, -0.01, 5e5 },
    { { 60, 0.01, (double) NAN }, (double) INFINITY, 5e5 },
    { { 60, 0.01, (double) NAN }, 0.01, -1 },
    { { 60, 0.01, (double) NAN }, 0.01, (double) NAN },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++) {
    g_autoptr (GError) loss_error = NULL;
    double out = 7;

    g_assert_false (
      lb_hose_loss (&wrong[i].hose, wrong[i].flow, wrong[i].pressure, &out, &loss_error));
    g_assert_error (loss_error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_cmpfloat (out, ==, 7);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/hose/nothing-lost", test_nothing_lost);
  g_test_add_func ("/trade/hose/slow", test_slow);
  g_test_add_func ("/trade/hose/grows", test_grows);
  g_test_add_func ("/trade/hose/deeper-loses-less", test_deeper_loses_less);
  g_test_add_func ("/trade/hose/flat", test_flat);
  g_test_add_func ("/trade/hose/choked", test_choked);
  g_test_add_func ("/trade/hose/refused", test_refused);
  return g_test_run ();
}
