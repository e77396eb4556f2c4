/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/grip.h"

#include "trade/trade-error.h"

#include <math.h>

static const LbSoilLayer layers[] = {
  { .from_m = 0, .to_m = 3, .soil = LB_SOIL_CLAY, .strength_pa = 15e3, .buoyant_kg_per_m3 = 600 },
  { .from_m = 3, .to_m = 8, .soil = LB_SOIL_SAND, .sand = LB_SAND_DENSE, .buoyant_kg_per_m3 = 950 },
  { .from_m = 8, .to_m = 12, .soil = LB_SOIL_OWN, .strength_pa = 30e3, .buoyant_kg_per_m3 = 900 },
};

static LbRoot
usual_root (void)
{
  return (LbRoot){
    .perimeter_m = 1.6,
    .depth_m = 11,
    .layers = layers,
    .n_layers = G_N_ELEMENTS (layers),
    .sand_pull = LB_SAND_PULL_USUAL,
    .low_factor = LB_GRIP_LOW_FACTOR,
    .high_factor = LB_GRIP_HIGH_FACTOR,
  };
}

static void
test_layers_add_up (void)
{
  const LbRoot root = usual_root ();
  LbGrip grip;
  double sum = 0;

  g_assert_true (lb_grip_reckon (&root, &grip, NULL));
  for (gsize i = 0; i < LB_SOIL_LAYERS_MAX; i++)
    sum += grip.layer_n[i];
  g_assert_cmpfloat_with_epsilon (grip.total_n.likely, sum, 1e-6);
  /* Friction given, by hand: 3 m of it down to the toe. */
  g_assert_cmpfloat_with_epsilon (grip.layer_n[2], 30e3 * 1.6 * 3, 1e-6);
  /* Sand is a straight line of depth: β p'o at its middle. */
  g_assert_cmpfloat_with_epsilon (grip.layer_n[1], 0.46 * 9.80665 * (3 * 600 + 2.5 * 950) * 1.6 * 5,
                                  1e-6);
  g_assert_cmpfloat_with_epsilon (grip.total_n.low, 0.5 * sum, 1e-6);
  g_assert_cmpfloat_with_epsilon (grip.total_n.high, 1.5 * sum, 1e-6);
  g_assert_true (grip.is_clay_stiff);
}

/* The middle of a slice is close to what the many thin slices of the clay give. */
static void
test_slices (void)
{
  LbSoilLayer thin[10];
  LbSoilLayer thick = layers[0];
  LbRoot root = usual_root ();
  LbGrip coarse, fine;

  thick.to_m = 6.096; /* 20 ft */
  root.depth_m = 6.096;
  for (guint i = 0; i < G_N_ELEMENTS (thin); i++) {
    thin[i] = thick;
    thin[i].from_m = i * 0.6096;
    thin[i].to_m = (i + 1) * 0.6096;
  }
  root.layers = &thick;
  root.n_layers = 1;
  g_assert_true (lb_grip_reckon (&root, &coarse, NULL));
  root.layers = thin;
  root.n_layers = G_N_ELEMENTS (thin);
  g_assert_true (lb_grip_reckon (&root, &fine, NULL));
  g_assert_cmpfloat_with_epsilon (coarse.total_n.likely / fine.total_n.likely, 1, 0.02);
  g_assert_cmpfloat (coarse.total_n.likely, !=, fine.total_n.likely);
}

static void
test_nothing_in_the_ground (void)
{
  LbRoot root = usual_root ();
  LbGrip grip;

  root.depth_m = 0;
  root.n_layers = 0;
  g_assert_true (lb_grip_reckon (&root, &grip, NULL));
  g_assert_cmpfloat (grip.total_n.likely, ==, 0);
  g_assert_false (grip.is_clay_stiff);
}

static void
test_pull_and_lean (void)
{
  LbRoot root = usual_root ();
  LbGrip whole, less, leaning;

  g_assert_true (lb_grip_reckon (&root, &whole, NULL));
  root.sand_pull = 0.7;
  g_assert_true (lb_grip_reckon (&root, &less, NULL));
  g_assert_cmpfloat_with_epsilon (less.layer_n[1], 0.7 * whole.layer_n[1], 1e-6);
  g_assert_cmpfloat (less.layer_n[0], ==, whole.layer_n[0]);
  g_assert_cmpfloat (less.layer_n[2], ==, whole.layer_n[2]);
  root = usual_root ();
  root.lean_rad = atan (1.0 / 4);
  g_assert_true (lb_grip_reckon (&root, &leaning, NULL));
  g_assert_cmpfloat_with_epsilon (leaning.total_n.likely / whole.total_n.likely, 1.03078, 1e-5);
}

static void
test_friction_limits (void)
{
  g_assert_cmpfloat (lb_clay_friction (0, 1), ==, 0);
  g_assert_cmpfloat_with_epsilon (lb_clay_friction (99.999, 100), lb_clay_friction (100.001, 100),
                                  0.01);
  g_assert_true (isnan (lb_clay_friction (-1, 100)));
  g_assert_true (isnan (lb_clay_friction (100, 0)));
  g_assert_true (isnan (lb_clay_friction ((double) NAN, 100)));
  g_assert_cmpfloat (lb_sand_friction (LB_SAND_MEDIUM, 0), ==, 0);
  g_assert_true (isnan (lb_sand_friction (LB_SAND_MEDIUM, -1)));
}

static void
test_sand_names (void)
{
  for (guint i = 0; i < LB_N_SANDS; i++) {
    LbSand sand;

    g_assert_true (lb_sand_from_name (lb_sand_name ((LbSand) i), &sand));
    g_assert_cmpuint (sand, ==, i);
  }

  LbSand sand = LB_SAND_DENSE;

  g_assert_false (lb_sand_from_name ("gravel", &sand));
  g_assert_false (lb_sand_from_name (NULL, &sand));
  g_assert_cmpint (sand, ==, LB_SAND_DENSE);
}

static void
test_ground_not_known (void)
{
  g_autoptr (GError) error = NULL;
  LbRoot root = usual_root ();
  LbGrip grip = { .total_n.likely = 7 };

  root.depth_m = 12.1;
  g_assert_false (lb_grip_reckon (&root, &grip, &error));
  g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE);
  g_assert_cmpfloat (grip.total_n.likely, ==, 7);
}

static void
expect_refusal (const LbRoot *root, const char *word)
{
  g_autoptr (GError) error = NULL;
  LbGrip grip = { .total_n.likely = 7 };

  g_assert_false (lb_grip_reckon (root, &grip, &error));
  g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  g_test_message ("%s", error->message);
  g_assert_nonnull (g_strstr_len (error->message, -1, word));
  g_assert_cmpfloat (grip.total_n.likely, ==, 7);
}

static void
test_root_refused (void)
{
  LbRoot root = usual_root ();

  root.perimeter_m = (double) NAN;
  expect_refusal (&root, "perimeter");
  root = usual_root ();
  root.depth_m = -1;
  expect_refusal (&root, "toe");
  root = usual_root ();
  root.depth_m = (double) NAN;
  expect_refusal (&root, "toe");
  root = usual_root ();
  root.lean_rad = 1;
  expect_refusal (&root, "lean");
  root = usual_root ();
  root.n_layers = LB_SOIL_LAYERS_MAX + 1;
  expect_refusal (&root, "layers");
  root = usual_root ();
  root.sand_pull = 1.1;
  expect_refusal (&root, "pull");
  root = usual_root ();
  root.low_factor = 1.1;
  expect_refusal (&root, "low factor");
  root = usual_root ();
  root.high_factor = (double) NAN;
  expect_refusal (&root, "low factor");
}

static void
test_layer_refused (void)
{
  static const struct
  {
    LbSoilLayer layer; /* in place of the second */
    const char *word;
  } wrong[] = {
    { { 4, 8, LB_SOIL_OWN, 0, 1, 900 }, "Layer 2" },
    { { 2, 8, LB_SOIL_OWN, 0, 1, 900 }, "begin" },
    { { 3, 3, LB_SOIL_OWN, 0, 1, 900 }, "end below" },
    { { 3, 900, LB_SOIL_OWN, 0, 1, 900 }, "deeper" },
    { { 3, 8, (LbSoil) 9, 0, 1, 900 }, "known here" },
    { { 3, 8, LB_SOIL_SAND, (LbSand) 9, 1, 900 }, "known here" },
    { { 3, 8, LB_SOIL_CLAY, 0, -1, 900 }, "strength" },
    { { 3, 8, LB_SOIL_CLAY, 0, 4e6, 900 }, "strength" },
    { { 3, 8, LB_SOIL_OWN, 0, (double) NAN, 900 }, "strength" },
    { { 3, 8, LB_SOIL_SAND, 0, 0, 0 }, "weight" },
    { { 3, 8, LB_SOIL_SAND, 0, 0, (double) INFINITY }, "weight" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++) {
    const LbSoilLayer changed[] = { layers[0], wrong[i].layer, layers[2] };
    LbRoot root = usual_root ();

    root.layers = changed;
    expect_refusal (&root, wrong[i].word);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/grip/layers-add-up", test_layers_add_up);
  g_test_add_func ("/trade/grip/slices", test_slices);
  g_test_add_func ("/trade/grip/nothing-in-the-ground", test_nothing_in_the_ground);
  g_test_add_func ("/trade/grip/pull-and-lean", test_pull_and_lean);
  g_test_add_func ("/trade/grip/friction-limits", test_friction_limits);
  g_test_add_func ("/trade/grip/sand-names", test_sand_names);
  g_test_add_func ("/trade/grip/ground-not-known", test_ground_not_known);
  g_test_add_func ("/trade/grip/root-refused", test_root_refused);
  g_test_add_func ("/trade/grip/layer-refused", test_layer_refused);
  return g_test_run ();
}
