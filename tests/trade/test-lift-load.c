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

/* By hand: what each input alone adds at its heavy end, put together as squares. */
static void
test_by_hand (void)
{
  const LbLift lift = usual_lift ();
  const double hole = G_PI / 4 * 0.09 * 10, concrete = 3.6 - hole;
  const double likely_growth = (0.64 * 0.64 - 0.36) * 10, thick_growth = (0.49 - 0.36) * 10;
  const double likely = concrete * 2480 * 1.03 + likely_growth * 1360 + 180;
  const double denser = concrete * 80 * 1.03, wetter = concrete * 2480 * 0.02;
  const double thicker = (thick_growth - likely_growth) * 1360, full = hole * 1025;
  const double drier = concrete * 2480 * 0.03, bare = likely_growth * 1360;
  LbRange load[LB_N_LIFT_STAGES];

  g_assert_true (lb_lift_load (&lift, load, NULL));
  g_assert_cmpfloat_with_epsilon (load[LB_LIFT_IN_AIR].likely, likely * G, 1e-6);
  g_assert_cmpfloat_with_epsilon (
    load[LB_LIFT_IN_AIR].high,
    (likely + sqrt (denser * denser + wetter * wetter + thicker * thicker + full * full)) * G,
    1e-6);
  g_assert_cmpfloat_with_epsilon (
    load[LB_LIFT_IN_AIR].low, (likely - sqrt (denser * denser + drier * drier + bare * bare)) * G,
    1e-6);
  /* Under water nothing is trapped, and the water bears what is solid. */
  g_assert_cmpfloat_with_epsilon (load[LB_LIFT_IN_WATER].likely,
                                  (likely - (concrete + likely_growth) * 1025) * G, 1e-6);
}

/* One input alone passes its whole range on; several never more than all of it together. */
static void
test_range (void)
{
  LbLift lift = usual_lift ();
  LbRange all[LB_N_LIFT_STAGES], one[LB_N_LIFT_STAGES];
  double sum = 0;

  g_assert_true (lb_lift_load (&lift, all, NULL));
  for (guint i = 0; i < 4; i++) {
    LbLift only = lift;
    LbRange *const inputs[] = { &only.concrete_kg_per_m3, &only.absorbed, &only.growth_m,
                                &only.trapped };

    for (guint other = 0; other < 4; other++)
      if (other != i)
        inputs[other]->low = inputs[other]->high = inputs[other]->likely;
    g_assert_true (lb_lift_load (&only, one, NULL));
    g_assert_cmpfloat_with_epsilon (one[LB_LIFT_IN_AIR].likely, all[LB_LIFT_IN_AIR].likely, 1e-6);
    g_assert_cmpfloat (one[LB_LIFT_IN_AIR].high, <, all[LB_LIFT_IN_AIR].high);
    sum += one[LB_LIFT_IN_AIR].high - one[LB_LIFT_IN_AIR].likely;
  }
  g_assert_cmpfloat (sum, >, all[LB_LIFT_IN_AIR].high - all[LB_LIFT_IN_AIR].likely);
}

/* Growth lighter than water makes the piece light where it is thick. */
static void
test_light_growth (void)
{
  LbLift lift = usual_lift ();
  LbRange load[LB_N_LIFT_STAGES];

  lift.growth_kg_per_m3 = 900;
  g_assert_true (lb_lift_load (&lift, load, NULL));
  g_assert_cmpfloat (load[LB_LIFT_IN_WATER].low, <, load[LB_LIFT_IN_WATER].likely);
  g_assert_cmpfloat (load[LB_LIFT_IN_WATER].high, >, load[LB_LIFT_IN_WATER].likely);
}

/* On the way out the load grows, and half out it is half way. */
static void
test_stages (void)
{
  const LbLift lift = usual_lift ();
  LbRange load[LB_N_LIFT_STAGES], quarter;

  g_assert_true (lb_lift_load (&lift, load, NULL));
  for (guint i = 0; i < LB_N_LIFT_STAGES; i++) {
    g_assert_cmpfloat (load[i].low, <, load[i].likely);
    g_assert_cmpfloat (load[i].likely, <, load[i].high);
  }
  g_assert_cmpfloat (load[LB_LIFT_IN_WATER].low, <, load[LB_LIFT_AWASH].low);
  g_assert_cmpfloat_with_epsilon (load[LB_LIFT_AWASH].likely,
                                  (load[LB_LIFT_IN_WATER].likely + load[LB_LIFT_IN_AIR].likely) / 2,
                                  1e-6);
  g_assert_true (lb_lift_load_at (&lift, 0.25, &quarter, NULL));
  g_assert_cmpfloat_with_epsilon (
    quarter.likely, (load[LB_LIFT_AWASH].likely + load[LB_LIFT_IN_AIR].likely) / 2, 1e-6);
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
  lift.growth_kg_per_m3 = -1;
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
  g_test_add_func ("/trade/lift-load/range", test_range);
  g_test_add_func ("/trade/lift-load/light-growth", test_light_growth);
  g_test_add_func ("/trade/lift-load/stages", test_stages);
  g_test_add_func ("/trade/lift-load/plain", test_plain);
  g_test_add_func ("/trade/lift-load/refused", test_refused);
  return g_test_run ();
}
