/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/hold.h"
#include "trade/steel.h"

#include <math.h>

#define INCH  0.0254
#define FOOT  0.3048
#define POUND 0.45359237
#define PCF   (POUND / (FOOT * FOOT * FOOT))

static void
check_year (LbTrial *trial)
{
  const int year = (int) lb_trial_number (trial, "year");

  lb_trial_expect (trial, "yield", lb_steel_for_year (year)->grade->yield_pa);
}

static void
check_grade (LbTrial *trial)
{
  const char *name = lb_trial_text (trial, "grade");
  gsize n;
  const LbSteelGrade *grades = lb_steel_grades (&n);

  for (gsize i = 0; i < n; i++) {
    if (g_str_equal (grades[i].name, name)) {
      lb_trial_expect (trial, "yield", grades[i].yield_pa);
      return;
    }
  }
  lb_trial_fail (trial, "there is no grade “%s”", name);
}

static void
check_drag (LbTrial *trial)
{
  LbShape shape;

  if (!lb_shape_from_name (lb_trial_text (trial, "shape"), &shape)) {
    lb_trial_fail (trial, "there is no such shape");
    return;
  }

  const double value = lb_drag_coefficient (shape)->value;

  if (value < lb_trial_number (trial, "least"))
    lb_trial_fail (trial, "%g is less than the lowest source", value);
  lb_trial_expect (trial, "value", value);
}

/* --- Bars on rings ------------------------------------------------------------------------- */

static void
check_ring (LbTrial *trial)
{
  const double radius = lb_trial_number (trial, "radius");
  const LbOutline outline = { .shape = LB_SHAPE_ROUND, .width_m = 2 * radius };
  const LbBarSection section = { .area_m2 = lb_trial_number (trial, "area") };
  const guint n = lb_trial_count (trial, "bars");
  const LbStubLoad load = { 0 };
  LbPoint places[LB_BARS_MAX];
  LbBarSums sums = { 0 };
  LbBarField field;

  lb_bar_ring_place (&outline, 0, n, places);
  for (guint i = 0; i < n; i++)
    sums = lb_bar_sums_add (sums, places[i]);
  lb_bar_field_reckon (&section, &sums, &load, &field);
  if (fabs (field.inertia_xx_m4 - field.inertia_yy_m4) > 1e-9 * field.inertia_yy_m4)
    lb_trial_fail (trial, "the ring is stiffer one way than the other");
  lb_trial_expect (trial, "inertia", field.inertia_yy_m4);
  lb_trial_expect (trial, "polar", field.inertia_xx_m4 + field.inertia_yy_m4);
}

static void
check_bolt_circles (LbTrial *trial)
{
  const double bolt = lb_trial_number (trial, "bolt");
  const double circles[] = { lb_trial_number (trial, "circle"),
                             lb_trial_number (trial, "inner circle") };
  const guint counts[] = { lb_trial_count (trial, "outer"), lb_trial_count (trial, "inner") };
  const LbBarSection section = { .area_m2 = G_PI_4 * bolt * bolt };
  const LbStubLoad load = { 0 };
  LbBarSums sums = { 0 };
  LbBarField field;

  for (int circle = 0; circle < 2; circle++) {
    const LbOutline outline = { .shape = LB_SHAPE_ROUND, .width_m = circles[circle] };
    LbPoint places[LB_BARS_MAX];

    lb_bar_ring_place (&outline, 0, counts[circle], places);
    for (guint i = 0; i < counts[circle]; i++)
      sums = lb_bar_sums_add (sums, places[i]);
  }
  lb_bar_field_reckon (&section, &sums, &load, &field);

  const double polar = field.inertia_xx_m4 + field.inertia_yy_m4;

  lb_trial_expect (trial, "polar", polar);
  lb_trial_expect (trial, "torque", lb_trial_number (trial, "stress") * polar / (circles[0] / 2));
}

/* --- The worked stub ----------------------------------------------------------------------- */

static LbStub
worked_stub (void)
{
  return (LbStub){
    .outline = { .shape = LB_SHAPE_SQUARE, .width_m = 16 * INCH },
    .length_m = 20 * FOOT,
    .lean_rad = atan (1.0 / 6.0),
    .submerged_m = 20 * FOOT,
    .concrete_kg_per_m3 = 150 * PCF,
    .water_kg_per_m3 = 64 * PCF,
    .drag_coefficient = lb_drag_coefficient (LB_SHAPE_SQUARE)->value,
  };
}

static void
check_stub_load (LbTrial *trial)
{
  LbStub stub = worked_stub ();
  LbStubLoad load;
  g_autoptr (GError) error = NULL;

  stub.submerged_m = lb_trial_number (trial, "submerged");
  stub.current_m_s = lb_trial_number (trial, "current");
  stub.hook_share = lb_trial_number (trial, "hook");
  if (!lb_stub_load_reckon (&stub, &load, &error)) {
    lb_trial_fail (trial, "%s", error->message);
    return;
  }
  lb_trial_expect (trial, "weight", lb_stub_apparent_mass (&stub) * 9.80665);
  lb_trial_expect (trial, "axial", load.axial_n);
  lb_trial_expect (trial, "moment", load.moment_nm);
  lb_trial_expect (trial, "drag", load.drag_n);
  lb_trial_expect (trial, "drag moment", load.drag_nm);
}

/* The bars left when those named, from 1, are gone. */
static LbBarSet
bars_left (LbTrial *trial)
{
  LbBarSet left = lb_bar_set_all (8);
  const char *gone = lb_trial_text (trial, "gone");

  if (g_str_equal (gone, "none"))
    return left;

  g_auto (GStrv) bars = g_strsplit (gone, " ", -1);

  for (guint i = 0; bars[i] != NULL; i++) {
    guint64 bar;

    if (g_ascii_string_to_unsigned (bars[i], 10, 1, 8, &bar, NULL))
      left &= ~LB_BAR (bar - 1);
    else
      lb_trial_fail (trial, "“%s” is no bar", bars[i]);
  }
  return left;
}

static void
hold_worked_stub (const LbStub *stub, const LbBar *bar, LbBarSet left, LbHold *out_hold)
{
  LbPoint places[LB_BARS_MAX];
  const LbCut cut = {
    .places = places,
    .n_bars = 8,
    .bar = bar,
    .gap_m = 6 * INCH,
    .yield_pa = lb_steel_for_year (0)->grade->yield_pa,
    .factor = 3,
    .effective_length = 1,
  };
  g_autoptr (GError) error = NULL;
  LbStubLoad load;

  lb_bar_ring_place (&stub->outline, 3 * INCH, 8, places);
  lb_stub_load_reckon (stub, &load, &error);
  g_assert_no_error (error);
  lb_hold_reckon (&cut, left, &load, out_hold, &error);
  g_assert_no_error (error);
}

/* A #8 bar as the tables take it: all its area in one point. */
static LbBar
thin_bar (void)
{
  LbBar bar = *lb_bar_find ("#8");

  bar.diameter_m = 0;
  return bar;
}

static void
check_stub_bars (LbTrial *trial)
{
  const LbStub stub = worked_stub ();
  const LbBar bar = thin_bar ();
  const LbBarSet left = bars_left (trial);
  const double y = lb_trial_number (trial, "y");
  LbHold hold;

  hold_worked_stub (&stub, &bar, left, &hold);
  lb_trial_expect (trial, "area", hold.n_left * bar.area_m2);
  lb_trial_expect (trial, "centroid", hold.field.centroid.y);
  lb_trial_expect (trial, "inertia", hold.field.inertia_yy_m4);
  lb_trial_expect (trial, "moment", hold.field.slope_pa_m.y * hold.field.inertia_yy_m4);
  lb_trial_expect (trial, "stress", lb_bar_field_base (&hold.field, (LbPoint){ .y = y }));
}

static void
check_hinge (LbTrial *trial)
{
  const LbStub stub = worked_stub ();
  LbHold hold;

  hold_worked_stub (&stub, lb_bar_find ("#8"), bars_left (trial), &hold);
  lb_trial_expect_text (trial, "holds", hold.is_hinge ? "hinge" : "yes");
}

static void
check_worked_hold (LbTrial *trial)
{
  enum {
    LEAN_CORNER = 1 /* bar 2 of those seen */
  };
  LbStub stub = worked_stub ();
  LbHold hold;

  stub.current_m_s = lb_trial_number (trial, "current");
  hold_worked_stub (&stub, lb_bar_find ("#8"), lb_bar_set_all (8), &hold);
  lb_trial_expect (trial, "base", hold.base_pa[LEAN_CORNER]);
  lb_trial_expect (trial, "peak", hold.peak_pa[LEAN_CORNER]);
  lb_trial_expect (trial, "utilisation", hold.utilisation);
}

static void
check_euler (LbTrial *trial)
{
  const LbBar *bar = lb_bar_find (lb_trial_text (trial, "bar"));

  if (bar == NULL) {
    lb_trial_fail (trial, "there is no such bar");
    return;
  }
  lb_trial_expect (
    trial, "load",
    lb_bar_euler_load (bar, lb_trial_number (trial, "gap"), lb_trial_number (trial, "K")));
}

const LbCheck LB_CHECKS_HOLD[] = {
  { "steel of a year",
    check_year,
    { LB_GIVEN ("year", "number"), LB_EXPECTED ("yield", "pressure") } },
  { "steel grade", check_grade, { LB_GIVEN ("grade", "text"), LB_EXPECTED ("yield", "pressure") } },
  { "drag coefficient",
    check_drag,
    { LB_GIVEN ("shape", "text"), LB_GIVEN ("least", "number"), LB_EXPECTED ("value", "number") } },
  { "ring of bars",
    check_ring,
    { LB_GIVEN ("bars", "number"), LB_GIVEN ("area", "area"), LB_GIVEN ("radius", "length"),
      LB_EXPECTED ("inertia", "inertia"), LB_EXPECTED ("polar", "inertia") } },
  { "bolt circles",
    check_bolt_circles,
    { LB_GIVEN ("outer", "number"), LB_GIVEN ("circle", "length"), LB_GIVEN ("inner", "number"),
      LB_GIVEN ("inner circle", "length"), LB_GIVEN ("bolt", "length"),
      LB_GIVEN ("stress", "pressure"), LB_EXPECTED ("polar", "inertia"),
      LB_EXPECTED ("torque", "moment") } },
  { "stub load",
    check_stub_load,
    { LB_GIVEN ("submerged", "length"), LB_GIVEN ("current", "speed"), LB_GIVEN ("hook", "number"),
      LB_EXPECTED ("weight", "force"), LB_EXPECTED ("axial", "force"),
      LB_EXPECTED ("moment", "moment"), LB_EXPECTED ("drag", "force"),
      LB_EXPECTED ("drag moment", "moment") } },
  { "stub on its bars",
    check_stub_bars,
    { LB_GIVEN ("gone", "text"), LB_GIVEN ("y", "length"), LB_EXPECTED ("area", "area"),
      LB_EXPECTED ("centroid", "length"), LB_EXPECTED ("inertia", "inertia"),
      LB_EXPECTED ("moment", "moment"), LB_EXPECTED ("stress", "pressure") } },
  { "stub on a hinge", check_hinge, { LB_GIVEN ("gone", "text"), LB_EXPECTED ("holds", "text") } },
  { "worked hold",
    check_worked_hold,
    { LB_GIVEN ("current", "speed"), LB_EXPECTED ("base", "pressure"),
      LB_EXPECTED ("peak", "pressure"), LB_EXPECTED ("utilisation", "number") } },
  { "Euler load",
    check_euler,
    { LB_GIVEN ("bar", "text"), LB_GIVEN ("gap", "length"), LB_GIVEN ("K", "number"),
      LB_EXPECTED ("load", "force") } },
  { NULL },
};
