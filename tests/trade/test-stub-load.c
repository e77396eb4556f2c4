/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/stub-load.h"

#include "trade/trade-error.h"
#include "trade/weight.h"

#include <math.h>

#define GRAVITY 9.80665

static const LbStub leaning = {
  .outline = { .shape = LB_SHAPE_SQUARE, .width_m = 0.4, .void_m = 0.2 },
  .length_m = 8,
  .lean_rad = 0.2,
  .submerged_m = 5,
  .concrete_kg_per_m3 = 2400,
  .water_kg_per_m3 = 1025,
  .growth_m = 0.05,
  .growth_kg_per_m3 = 1360,
  .current_m_s = 0.7,
  .drag_coefficient = 2,
};

static LbStubLoad
reckon (const LbStub *stub)
{
  g_autoptr (GError) error = NULL;
  LbStubLoad load;

  g_assert_true (lb_stub_load_reckon (stub, &load, &error));
  g_assert_no_error (error);
  return load;
}

/* 5 m in water and 3 m in air, by hand: concrete 0.12858 m² and growth 0.09 m² of section. */
static void
test_by_hand (void)
{
  const LbStubLoad load = reckon (&leaning);
  const double concrete = 0.16 - G_PI * 0.01, growth = 0.09;
  const double wet = 5 * (concrete * (2400 - 1025) + growth * (1360 - 1025)) * GRAVITY;
  const double dry = 3 * (concrete * 2400 + growth * 1360) * GRAVITY;
  const double drag = 0.5 * 1025 * 2 * 0.5 * 5 * 0.49;

  g_assert_cmpfloat_with_epsilon (load.axial_n, (wet + dry) * cos (0.2), 1e-8);
  g_assert_cmpfloat_with_epsilon (load.shear_n, (wet + dry) * sin (0.2), 1e-8);
  g_assert_cmpfloat_with_epsilon (load.moment_nm, (wet * 2.5 + dry * 6.5) * sin (0.2), 1e-8);
  g_assert_cmpfloat_with_epsilon (load.drag_n, drag, 1e-9);
  g_assert_cmpfloat_with_epsilon (load.drag_nm, drag * 2.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (lb_stub_apparent_mass (&leaning) * GRAVITY, wet + dry, 1e-8);
}

/* The water line goes through what is weighed and changes nothing at its ends. */
static void
test_water_line (void)
{
  LbStub stub = leaning;
  double last = G_MAXDOUBLE;

  for (stub.submerged_m = 0; stub.submerged_m <= 8; stub.submerged_m += 0.5) {
    const LbStubLoad load = reckon (&stub);

    g_assert_cmpfloat (load.axial_n, <, last);
    last = load.axial_n;
  }

  stub.submerged_m = 8;
  const LbStubLoad wet = reckon (&stub);
  g_assert_cmpfloat_with_epsilon (wet.moment_nm, wet.shear_n * 4, 1e-8);

  stub.submerged_m = 0;
  const LbStubLoad dry = reckon (&stub);
  g_assert_cmpfloat_with_epsilon (dry.moment_nm, dry.shear_n * 4, 1e-8);
  g_assert_cmpfloat (dry.drag_n, ==, 0);
}

/* At the head a hook with half the weight of an even stub leaves no moment, and one with all of it
 * leaves the couple: the weight at the middle, the hook at the head. */
static void
test_hook (void)
{
  LbStub stub = leaning;

  stub.submerged_m = stub.length_m;
  const LbStubLoad slack = reckon (&stub);

  stub.hook_share = 0.5;
  const LbStubLoad half = reckon (&stub);
  g_assert_cmpfloat_with_epsilon (half.moment_nm, 0, 1e-8);
  g_assert_cmpfloat_with_epsilon (half.axial_n, slack.axial_n / 2, 1e-8);

  stub.hook_share = 1;
  const LbStubLoad all = reckon (&stub);
  g_assert_cmpfloat_with_epsilon (all.axial_n, 0, 1e-8);
  g_assert_cmpfloat_with_epsilon (all.shear_n, 0, 1e-8);
  g_assert_cmpfloat_with_epsilon (all.moment_nm, -slack.moment_nm, 1e-8);
}

/* Nothing pulls at a stub of no length, and none leans that stands plumb. */
static void
test_limits (void)
{
  LbStub stub = leaning;

  stub.lean_rad = 0;
  const LbStubLoad plumb = reckon (&stub);
  g_assert_cmpfloat (plumb.moment_nm, ==, 0);
  g_assert_cmpfloat (plumb.shear_n, ==, 0);
  g_assert_cmpfloat (plumb.axial_n, >, 0);

  stub = leaning;
  stub.length_m = stub.submerged_m = 0;
  const LbStubLoad none = reckon (&stub);
  g_assert_cmpfloat (none.axial_n, ==, 0);
  g_assert_cmpfloat (none.moment_nm, ==, 0);
  g_assert_cmpfloat (none.drag_nm, ==, 0);
}

/* v|v|: the current's push does not know which way it is counted. */
static void
test_current (void)
{
  LbStub stub = leaning;
  const double once = reckon (&stub).drag_nm;

  stub.current_m_s = -stub.current_m_s;
  g_assert_cmpfloat (reckon (&stub).drag_nm, ==, once);
  stub.current_m_s *= 2;
  g_assert_cmpfloat_with_epsilon (reckon (&stub).drag_nm, 4 * once, 1e-9);
}

/* A tapered stub is many short even ones on top of each other. */
static void
test_taper (void)
{
  enum {
    N_SLICES = 4000
  };
  LbStub stub = leaning;

  stub.cut_width_m = 0.3;
  stub.hook_share = 0.25;

  const LbStubLoad load = reckon (&stub);
  LbStubLoad sum = { 0 };
  double hook_n = 0;

  for (int i = 0; i < N_SLICES; i++) {
    const double at_m = stub.length_m * (i + 0.5) / N_SLICES;
    LbStub slice = leaning;

    slice.outline.width_m = 0.3 + (0.4 - 0.3) * at_m / stub.length_m;
    slice.length_m = stub.length_m / N_SLICES;
    slice.submerged_m = at_m < stub.submerged_m ? slice.length_m : 0;

    const LbStubLoad part = reckon (&slice);

    sum.axial_n += part.axial_n * 0.75;
    sum.shear_n += part.shear_n * 0.75;
    sum.moment_nm += part.shear_n * at_m;
    sum.drag_n += part.drag_n;
    sum.drag_nm += part.drag_n * at_m;
    hook_n += 0.25 * part.shear_n;
  }
  sum.moment_nm -= hook_n * stub.length_m;
  g_assert_cmpfloat_with_epsilon (load.axial_n, sum.axial_n, 1e-6 * load.axial_n);
  g_assert_cmpfloat_with_epsilon (load.shear_n, sum.shear_n, 1e-6 * load.shear_n);
  g_assert_cmpfloat_with_epsilon (load.moment_nm, sum.moment_nm, 1e-6 * load.moment_nm);
  g_assert_cmpfloat_with_epsilon (load.drag_n, sum.drag_n, 1e-6 * load.drag_n);
  g_assert_cmpfloat_with_epsilon (load.drag_nm, sum.drag_nm, 1e-6 * load.drag_nm);

  /* What it weighs is what its two frustums weigh. */
  LbPiece wet = { .outline = { LB_SHAPE_SQUARE, 0.3, 0.2 },
                  .far_width_m = 0.3 + 0.1 * 5 / 8,
                  .length_m = 5,
                  .concrete_kg_per_m3 = 2400,
                  .water_kg_per_m3 = 1025,
                  .growth_m = 0.05,
                  .growth_kg_per_m3 = 1360 };
  LbPiece dry = wet;

  dry.outline.width_m = wet.far_width_m;
  dry.far_width_m = 0.4;
  dry.length_m = 3;
  g_assert_cmpfloat_with_epsilon (lb_stub_apparent_mass (&stub),
                                  lb_piece_mass_in_water (&wet) + lb_piece_mass_in_air (&dry),
                                  1e-8);
}

static void
test_drag_coefficients (void)
{
  for (int shape = 0; shape < LB_N_SHAPES; shape++) {
    const LbDragCoefficient *drag = lb_drag_coefficient ((LbShape) shape);

    g_assert_nonnull (drag->source);
    g_assert_cmpfloat (drag->value, >, 0.5);
    g_assert_cmpfloat (drag->value, <, 2.5);
  }
  g_assert_cmpfloat (lb_drag_coefficient (LB_SHAPE_ROUND)->value, <,
                     lb_drag_coefficient (LB_SHAPE_OCTAGON)->value);
  g_assert_cmpfloat (lb_drag_coefficient (LB_SHAPE_OCTAGON)->value, <,
                     lb_drag_coefficient (LB_SHAPE_SQUARE)->value);
}

static void
test_refused (void)
{
  const struct
  {
    gsize at;
    double value;
    int code;
  } cases[] = {
    { offsetof (LbStub, length_m), (double) NAN, LB_TRADE_ERROR_INCOMPLETE },
    { offsetof (LbStub, outline.width_m), 0, LB_TRADE_ERROR_INCOMPLETE },
    { offsetof (LbStub, current_m_s), (double) NAN, LB_TRADE_ERROR_INCOMPLETE },
    { offsetof (LbStub, cut_width_m), (double) NAN, LB_TRADE_ERROR_INCOMPLETE },
    { offsetof (LbStub, length_m), -1, LB_TRADE_ERROR_DOMAIN },
    { offsetof (LbStub, lean_rad), 0.8, LB_TRADE_ERROR_DOMAIN },
    { offsetof (LbStub, lean_rad), -0.1, LB_TRADE_ERROR_DOMAIN },
    { offsetof (LbStub, submerged_m), 8.1, LB_TRADE_ERROR_DOMAIN },
    { offsetof (LbStub, hook_share), 1.01, LB_TRADE_ERROR_DOMAIN },
    { offsetof (LbStub, drag_coefficient), (double) INFINITY, LB_TRADE_ERROR_DOMAIN },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (GError) error = NULL;
    LbStub stub = leaning;
    LbStubLoad load = { .axial_n = 7 };

    G_STRUCT_MEMBER (double, &stub, cases[i].at) = cases[i].value;
    g_assert_false (lb_stub_load_reckon (&stub, &load, &error));
    g_assert_error (error, LB_TRADE_ERROR, cases[i].code);
    g_assert_cmpfloat (load.axial_n, ==, 7);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/stub-load/by-hand", test_by_hand);
  g_test_add_func ("/trade/stub-load/water-line", test_water_line);
  g_test_add_func ("/trade/stub-load/hook", test_hook);
  g_test_add_func ("/trade/stub-load/limits", test_limits);
  g_test_add_func ("/trade/stub-load/current", test_current);
  g_test_add_func ("/trade/stub-load/taper", test_taper);
  g_test_add_func ("/trade/stub-load/drag-coefficients", test_drag_coefficients);
  g_test_add_func ("/trade/stub-load/refused", test_refused);
  return g_test_run ();
}
