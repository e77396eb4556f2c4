/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/lift-load.h"

#include "trade/trade-error.h"
#include "trade/weight.h"

#include <math.h>

#define G 9.80665

static LbLift
usual_lift (void)
{
  return (LbLift){
    .outline = { .shape = LB_SHAPE_SQUARE, .width_m = 0.6, .void_m = 0.3 },
    .length_m = 10,
    .concrete_kg_per_m3 = { .low = 2400, .likely = 2480, .high = 2560 },
    .absorbed = { .low = 0, .likely = LB_ABSORBED_LOW, .high = LB_ABSORBED_HIGH },
    .growth_m = { .low = 0, .likely = 0.02, .high = 0.05 },
    .growth_kg_per_m3 = 1360,
    .water_kg_per_m3 = 1025,
    .trapped = { .low = 0, .likely = 0, .high = 1 },
    .rigging_kg = 180,
  };
}

/* By hand, the heavy end: wet concrete, thick growth, the void full. */
static void
test_by_hand (void)
{
  const LbLift lift = usual_lift ();
  const double hole = G_PI / 4 * 0.09 * 10, concrete = 3.6 - hole, growth = (0.49 - 0.36) * 10;
  LbRange load[LB_N_LIFT_STAGES];

  g_assert_true (lb_lift_load (&lift, load, NULL));
  g_assert_cmpfloat_with_epsilon (load[LB_LIFT_IN_AIR].high,
                                  (concrete * 2560 * 1.05 + growth * 1360 + hole * 1025 + 180) * G,
                                  1e-6);
  g_assert_cmpfloat_with_epsilon (
    load[LB_LIFT_IN_WATER].high,
    (concrete * (2560 * 1.05 - 1025) + growth * (1360 - 1025) + 180) * G, 1e-6);
  g_assert_cmpfloat_with_epsilon (load[LB_LIFT_IN_AIR].low, (concrete * 2400 + 180) * G, 1e-6);
}

/* On the way out the load grows, and half out it is half way. */
static void
test_stages (void)
{
  const LbLift lift = usual_lift ();
  LbRange load[LB_N_LIFT_STAGES];

  g_assert_true (lb_lift_load (&lift, load, NULL));
  for (guint i = 0; i < LB_N_LIFT_STAGES; i++) {
    g_assert_cmpfloat (load[i].low, <, load[i].likely);
    g_assert_cmpfloat (load[i].likely, <, load[i].high);
  }
  g_assert_cmpfloat (load[LB_LIFT_IN_WATER].low, <, load[LB_LIFT_AWASH].low);
  g_assert_cmpfloat_with_epsilon (
    load[LB_LIFT_AWASH].high, (load[LB_LIFT_IN_WATER].high + load[LB_LIFT_IN_AIR].high) / 2, 1e-6);
}

/* Bare, dry and drained it is the weight of the piece. */
static void
test_plain (void)
{
  const LbPiece piece = {
    .outline = { .shape = LB_SHAPE_OCTAGON, .width_m = 0.4 },
    .length_m = 9,
    .concrete_kg_per_m3 = 2480,
    .water_kg_per_m3 = 1025,
  };
  const LbLift lift = {
    .outline = piece.outline,
    .length_m = 9,
    .concrete_kg_per_m3 = { 2480, 2480, 2480 },
    .water_kg_per_m3 = 1025,
  };
  LbRange load[LB_N_LIFT_STAGES];

  g_assert_true (lb_lift_load (&lift, load, NULL));
  g_assert_cmpfloat_with_epsilon (load[LB_LIFT_IN_WATER].likely,
                                  lb_piece_mass_in_water (&piece) * G, 1e-6);
  g_assert_cmpfloat_with_epsilon (load[LB_LIFT_IN_AIR].high, lb_piece_mass_in_air (&piece) * G,
                                  1e-6);
}

static void
expect_refusal (const LbLift *lift, LbTradeError code)
{
  g_autoptr (GError) error = NULL;
  LbRange load[LB_N_LIFT_STAGES] = { { .likely = 7 } };

  g_assert_false (lb_lift_load (lift, load, &error));
  g_assert_error (error, LB_TRADE_ERROR, (int) code);
  g_assert_cmpfloat (load[0].likely, ==, 7);
}

static void
test_refused (void)
{
  LbLift lift = usual_lift ();

  lift.outline.width_m = 0;
  expect_refusal (&lift, LB_TRADE_ERROR_INCOMPLETE);
  lift = usual_lift ();
  lift.length_m = (double) NAN;
  expect_refusal (&lift, LB_TRADE_ERROR_INCOMPLETE);
  lift = usual_lift ();
  lift.absorbed.likely = (double) NAN;
  expect_refusal (&lift, LB_TRADE_ERROR_INCOMPLETE);
  lift = usual_lift ();
  lift.rigging_kg = (double) NAN;
  expect_refusal (&lift, LB_TRADE_ERROR_INCOMPLETE);
  lift = usual_lift ();
  lift.length_m = -1;
  expect_refusal (&lift, LB_TRADE_ERROR_DOMAIN);
  lift = usual_lift ();
  lift.rigging_kg = -1;
  expect_refusal (&lift, LB_TRADE_ERROR_DOMAIN);
  lift = usual_lift ();
  lift.concrete_kg_per_m3.low = 2500;
  expect_refusal (&lift, LB_TRADE_ERROR_DOMAIN);
  lift = usual_lift ();
  lift.concrete_kg_per_m3.high = 9000;
  expect_refusal (&lift, LB_TRADE_ERROR_DOMAIN);
  lift = usual_lift ();
  lift.growth_kg_per_m3 = 900;
  expect_refusal (&lift, LB_TRADE_ERROR_DOMAIN);
  lift = usual_lift ();
  lift.growth_m.low = -0.01;
  expect_refusal (&lift, LB_TRADE_ERROR_DOMAIN);
  lift = usual_lift ();
  lift.absorbed.high = 0.5;
  expect_refusal (&lift, LB_TRADE_ERROR_DOMAIN);
  lift = usual_lift ();
  lift.trapped.high = 1.01;
  expect_refusal (&lift, LB_TRADE_ERROR_DOMAIN);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/lift-load/by-hand", test_by_hand);
  g_test_add_func ("/trade/lift-load/stages", test_stages);
  g_test_add_func ("/trade/lift-load/plain", test_plain);
  g_test_add_func ("/trade/lift-load/refused", test_refused);
  return g_test_run ();
}
