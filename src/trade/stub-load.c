/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/stub-load.h"

#include "trade/msgid.h"
#include "trade/trade-error.h"
#include "trade/weight.h"

#include <math.h>

/* Standard gravity, exact by definition: NIST SP 811. */
#define GRAVITY 9.80665
/* A submerged length may exceed the stub's by this share and still be all of it: rounding. */
#define LENGTH_SLACK 1e-9

/* On the high side for a pile in a steady current: bridge tables for solid piers go as low as 0.7
 * and 1.4 for a round and a square nose (AASHTO LRFD, stream pressure). */
static const LbDragCoefficient drag_coefficients[LB_N_SHAPES] = {
  [LB_SHAPE_SQUARE] = { .value = 2.0,
                        .tag = LB_TAG_MEMORY,
                        .source = N_ ("Sharp-cornered square, as UEG report UR8 is quoted; bridge "
                                      "practice takes 1.4") },
  [LB_SHAPE_OCTAGON] = { .value = 1.5,
                         .tag = LB_TAG_MEMORY,
                         .source = N_ ("Tow-tank tests of octagonal poles, report FHWA/TX-90-1207: "
                                       "a quarter above AASHTO’s 1.2") },
  [LB_SHAPE_ROUND] = { .value = 1.05,
                       .tag = LB_TAG_MEMORY,
                       .source = N_ ("Rough cylinder in a steady current, as API RP 2A is "
                                     "quoted") },
};

const LbDragCoefficient *
lb_drag_coefficient (LbShape shape)
{
  g_return_val_if_fail (shape < LB_N_SHAPES, NULL);

  return &drag_coefficients[shape];
}

/* How much wider it gets by each metre up from the cut. */
static double
widening (const LbStub *stub)
{
  if (stub->cut_width_m <= 0 || stub->length_m <= 0)
    return 0;
  return (stub->outline.width_m - stub->cut_width_m) / stub->length_m;
}

static double
cut_width (const LbStub *stub)
{
  return stub->cut_width_m <= 0 ? stub->outline.width_m : stub->cut_width_m;
}

/* A length of even width, weighed: N straight down. */
static double
weight_of (const LbStub *stub, double width_m, double length_m, gboolean is_submerged)
{
  const LbPiece piece = {
    .outline = { stub->outline.shape, width_m, stub->outline.void_m },
    .length_m = length_m,
    .concrete_kg_per_m3 = stub->concrete_kg_per_m3,
    .water_kg_per_m3 = stub->water_kg_per_m3,
    .growth_m = stub->growth_m,
    .growth_kg_per_m3 = stub->growth_kg_per_m3,
  };

  return GRAVITY * (is_submerged ? lb_piece_mass_in_water (&piece) : lb_piece_mass_in_air (&piece));
}

/* What a length of the stub weighs, and its moment along the axis about the cut. */
typedef struct
{
  double weight_n, along_nm;
} Part;

/* From @from_m to @to_m above the cut. Weight by the metre goes with the square of the width, so its
 * integral and that of its moment are of the third and fourth order: Simpson's rule is exact. */
static Part
part_of (const LbStub *stub, double from_m, double to_m, gboolean is_submerged)
{
  const double length_m = to_m - from_m, slope = widening (stub), width_m = cut_width (stub);

  if (!(fabs (slope) > 0)) {
    const double weight_n = weight_of (stub, width_m, length_m, is_submerged);

    return (Part){ weight_n, weight_n * (from_m + to_m) / 2 };
  }

  static const double shares[] = { 1.0 / 6, 4.0 / 6, 1.0 / 6 };
  Part part = { 0 };

  for (gsize i = 0; i < G_N_ELEMENTS (shares); i++) {
    const double at_m = from_m + length_m * (double) i / 2;
    const double weight_n = shares[i] *
                            weight_of (stub, width_m + slope * at_m, length_m, is_submerged);

    part.weight_n += weight_n;
    part.along_nm += weight_n * at_m;
  }
  return part;
}

double
lb_stub_apparent_mass (const LbStub *stub)
{
  g_return_val_if_fail (stub, (double) NAN);

  return (part_of (stub, 0, stub->submerged_m, TRUE).weight_n +
          part_of (stub, stub->submerged_m, stub->length_m, FALSE).weight_n) /
         GRAVITY;
}

static gboolean
check_stub (const LbStub *stub, GError **error)
{
  /* What must be known, and the least and the most that makes sense. */
  const struct
  {
    const char *name, *unit;
    double value, least, most;
  } numbers[] = {
    { "width at the cut", " m", stub->cut_width_m, 0, 100 },
    { "length above the cut", " m", stub->length_m, 0, 1000 },
    { "lean", " rad", stub->lean_rad, 0, G_PI_4 },
    { "length under water", " m", stub->submerged_m, 0, stub->length_m * (1 + LENGTH_SLACK) },
    { "density of the concrete", " kg/m³", stub->concrete_kg_per_m3, 0, 10000 },
    { "density of the water", " kg/m³", stub->water_kg_per_m3, 0, 10000 },
    { "thickness of the growth", " m", stub->growth_m, 0, 10 },
    { "density of the growth", " kg/m³", stub->growth_kg_per_m3, 0, 10000 },
    { "current", " m/s", stub->current_m_s, -20, 20 },
    { "drag coefficient", "", stub->drag_coefficient, 0, 10 },
    { "share on the hook", "", stub->hook_share, 0, 1 },
  };

  if (!lb_outline_is_known (&stub->outline)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE,
                 "The section of the stub is not known");
    return FALSE;
  }
  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++) {
    if (isnan (numbers[i].value)) {
      g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE,
                   "The %s of the stub is not known", numbers[i].name);
      return FALSE;
    }
    if (!(numbers[i].value >= numbers[i].least && numbers[i].value <= numbers[i].most)) {
      g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                   "The %s of the stub is %g%s, and must be from %g to %g%s", numbers[i].name,
                   numbers[i].value, numbers[i].unit, numbers[i].least, numbers[i].most,
                   numbers[i].unit);
      return FALSE;
    }
  }
  return TRUE;
}

gboolean
lb_stub_load_reckon (const LbStub *stub, LbStubLoad *out_load, GError **error)
{
  g_return_val_if_fail (stub, FALSE);
  g_return_val_if_fail (out_load, FALSE);

  if (!check_stub (stub, error))
    return FALSE;

  const double length_m = stub->length_m;
  const double wet_m = MIN (stub->submerged_m, length_m);
  const Part wet = part_of (stub, 0, wet_m, TRUE);
  const Part dry = part_of (stub, wet_m, length_m, FALSE);
  const double hook_n = stub->hook_share * (wet.weight_n + dry.weight_n);
  const double down_n = wet.weight_n + dry.weight_n - hook_n;
  /* First moment along the axis, about the cut, of all that acts straight up or down. */
  const double along_nm = wet.along_nm + dry.along_nm - hook_n * length_m;
  /* The current is taken square to the axis whatever its bearing; v|v| of a worst bearing is a
   * size without a sign. */
  const double drag_n_per_m2 = 0.5 * stub->water_kg_per_m3 * stub->drag_coefficient *
                               stub->current_m_s * stub->current_m_s;
  const double width_m = cut_width (stub) + 2 * stub->growth_m;
  const double wider_m = widening (stub) * wet_m;

  *out_load = (LbStubLoad){
    .axial_n = down_n * cos (stub->lean_rad),
    .shear_n = down_n * sin (stub->lean_rad),
    .moment_nm = along_nm * sin (stub->lean_rad),
    .drag_n = drag_n_per_m2 * wet_m * (width_m + wider_m / 2),
    .drag_nm = drag_n_per_m2 * wet_m * wet_m * (width_m / 2 + wider_m / 3),
  };
  return TRUE;
}
