/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Side friction of a pile in the ground, by API RP 2GEO (2011).
 *
 * Clay: f = α su, with ψ = su / p'o, α = 0.5 ψ^−0.5 up to ψ = 1 and 0.5 ψ^−0.25 above, never more
 * than 1. Sand: f = β p'o up to a limit. p'o is the weight of the ground above, less the water it
 * displaces. Both were measured on piles that are pushed; for clay the standard takes the same in a
 * pull, for sand the caller says what share is left.
 *
 * Friction of clay bends with depth, so a thick layer is cut into slices; the friction of sand is a
 * straight line of depth, which the middle of a slice tells exactly. Cost is the number of slices.
 *
 * Invariants:
 * 1. The layers' shares add up to the likely total.
 * 2. A layer cut in two at a slice's end gives the same.
 */
#include "trade/grip.h"

#include "trade/msgid.h"
#include "trade/trade-error.h"

#include <math.h>

/* Standard gravity, exact by definition (NIST SP 811). */
#define GRAVITY 9.80665
/* 5 ft: as the layers of the usual sums by hand; common practice. */
#define SLICE_M 1.524
/* No pile goes deeper, no ground is heavier or stronger: a slip of the keyboard does. */
#define DEPTH_MOST    200.0
#define BUOYANT_MOST  2000.0
#define STRENGTH_MOST 2e6
/* Of a metre: feet made metres still meet. */
#define SLACK 1e-6
/* API RP 2GEO asks for care above this strength over overburden. */
#define PSI_WITH_CARE 3.0

/* API RP 2GEO (2011), table 1, as an open geotechnical library quotes it. */
static const struct
{
  const char *name; /* msgid */
  double beta, limit_pa;
} sands[LB_N_SANDS] = {
  [LB_SAND_SILT_MEDIUM] = { N_ ("medium dense sand-silt"), 0.29, 67e3 },
  [LB_SAND_MEDIUM] = { N_ ("medium dense sand"), 0.37, 81e3 },
  [LB_SAND_SILT_DENSE] = { N_ ("dense sand-silt"), 0.37, 81e3 },
  [LB_SAND_DENSE] = { N_ ("dense sand"), 0.46, 96e3 },
  [LB_SAND_SILT_VERY_DENSE] = { N_ ("very dense sand-silt"), 0.46, 96e3 },
  [LB_SAND_VERY_DENSE] = { N_ ("very dense sand"), 0.56, 115e3 },
};

const char *
lb_sand_name (LbSand sand)
{
  g_return_val_if_fail (sand < LB_N_SANDS, NULL);

  return sands[sand].name;
}

gboolean
lb_sand_from_name (const char *name, LbSand *out_sand)
{
  g_return_val_if_fail (out_sand, FALSE);

  for (guint i = 0; i < LB_N_SANDS; i++) {
    if (g_strcmp0 (sands[i].name, name) == 0) {
      *out_sand = (LbSand) i;
      return TRUE;
    }
  }
  return FALSE;
}

double
lb_clay_friction (double strength_pa, double overburden_pa)
{
  if (!(strength_pa >= 0 && overburden_pa > 0))
    return (double) NAN;
  if (strength_pa <= 0)
    return 0;

  const double psi = strength_pa / overburden_pa;
  const double alpha = 0.5 * pow (psi, psi <= 1 ? -0.5 : -0.25);

  return MIN (alpha, 1) * strength_pa;
}

double
lb_sand_friction (LbSand sand, double overburden_pa)
{
  g_return_val_if_fail (sand < LB_N_SANDS, (double) NAN);

  if (!(overburden_pa >= 0))
    return (double) NAN;
  return MIN (sands[sand].beta * overburden_pa, sands[sand].limit_pa);
}

const char *
lb_soil_layer_fault (const LbSoilLayer *layer, double above_m)
{
  g_return_val_if_fail (layer, NULL);

  if (!(fabs (layer->from_m - above_m) <= SLACK))
    return N_ ("does not begin where the one above ends: the first begins at 0");
  if (!(layer->to_m > layer->from_m + SLACK && layer->to_m <= DEPTH_MOST))
    return N_ ("does not end below its beginning, or is deeper than 200 m");
  if (layer->soil > LB_SOIL_OWN || (layer->soil == LB_SOIL_SAND && layer->sand >= LB_N_SANDS))
    return N_ ("is no clay, sand or friction that is known here");
  if (layer->soil != LB_SOIL_SAND &&
      !(layer->strength_pa >= 0 && layer->strength_pa <= STRENGTH_MOST))
    return N_ ("has no strength from 0 to 2 MPa (about 40,000 psf)");
  if (!(layer->buoyant_kg_per_m3 > 0 && layer->buoyant_kg_per_m3 <= BUOYANT_MOST))
    return N_ ("has no weight in water above 0 and up to 2000 kg/m³: it is what the wet ground "
               "weighs less the water");
  return NULL;
}

static gboolean
check_layer (const LbRoot *root, gsize i, GError **error)
{
  const char *fault = lb_soil_layer_fault (&root->layers[i], i > 0 ? root->layers[i - 1].to_m : 0);

  if (fault == NULL)
    return TRUE;
  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, "Layer %u of the ground %s",
               (guint) i + 1, fault);
  return FALSE;
}

static gboolean
check (const LbRoot *root, GError **error)
{
  const char *fault = NULL;

  if (!(root->perimeter_m > 0 && isfinite (root->perimeter_m)))
    fault = "The pile has no perimeter: enter its shape and width";
  else if (!(root->depth_m >= 0 && root->depth_m <= DEPTH_MOST))
    fault = "The toe is not from 0 to 200 m below the mudline";
  else if (!(root->lean_rad >= 0 && root->lean_rad <= G_PI / 4))
    fault = "The pile does not lean from 0 to 45°";
  else if (root->n_layers > LB_SOIL_LAYERS_MAX)
    fault = "The ground has more than 16 layers: put like ones together";
  else if (!(root->sand_pull >= 0 && root->sand_pull <= 1))
    fault = "The share of friction left in a pull is not from 0 to 1";
  else if (!(root->low_factor >= 0 && root->low_factor <= 1 && root->high_factor >= 1 &&
             isfinite (root->high_factor)))
    fault = "The range of the ground’s grip must have a low factor of at most 1 and a high one of "
            "at least 1";
  if (fault != NULL) {
    g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, fault);
    return FALSE;
  }

  for (gsize i = 0; i < root->n_layers; i++)
    if (!check_layer (root, i, error))
      return FALSE;

  const double known_m = root->n_layers > 0 ? root->layers[root->n_layers - 1].to_m : 0;

  if (known_m < root->depth_m - SLACK) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE,
                 "The ground is known to %.1f m (%.0f ft) and the toe is at %.1f m (%.0f ft): add "
                 "what lies below",
                 known_m, known_m / 0.3048, root->depth_m, root->depth_m / 0.3048);
    return FALSE;
  }
  return TRUE;
}

static double
friction_at (const LbRoot *root, const LbSoilLayer *layer, double overburden_pa)
{
  switch (layer->soil) {
  case LB_SOIL_CLAY:
    return lb_clay_friction (layer->strength_pa, overburden_pa);
  case LB_SOIL_SAND:
    return root->sand_pull * lb_sand_friction (layer->sand, overburden_pa);
  case LB_SOIL_OWN:
    return layer->strength_pa;
  }
  g_assert_not_reached ();
}

/* N of one layer down to @to_m; @overburden_pa is that of its top and becomes that of its end. */
static double
layer_grip (const LbRoot *root,
            const LbSoilLayer *layer,
            double to_m,
            LbGrip *grip,
            double *overburden_pa)
{
  const double thickness_m = to_m - layer->from_m;
  const guint n_slices = (guint) ceil (thickness_m / SLICE_M - SLACK);
  const double slice_m = thickness_m / n_slices;
  const double slice_pa = layer->buoyant_kg_per_m3 * GRAVITY * slice_m;
  /* Along the axis a leaning pile has more side than the depth it goes. */
  const double side_m2 = root->perimeter_m * slice_m / cos (root->lean_rad);
  double held_n = 0;

  for (guint i = 0; i < n_slices; i++) {
    const double middle_pa = *overburden_pa + slice_pa / 2;

    held_n += friction_at (root, layer, middle_pa) * side_m2;
    if (layer->soil == LB_SOIL_CLAY && layer->strength_pa > PSI_WITH_CARE * middle_pa)
      grip->is_clay_stiff = TRUE;
    *overburden_pa += slice_pa;
  }
  return held_n;
}

gboolean
lb_grip_reckon (const LbRoot *root, LbGrip *out_grip, GError **error)
{
  g_return_val_if_fail (root && out_grip, FALSE);
  g_return_val_if_fail (root->layers || root->n_layers == 0, FALSE);

  if (!check (root, error))
    return FALSE;

  LbGrip grip = { 0 };
  double overburden_pa = 0;

  for (gsize i = 0; i < root->n_layers; i++) {
    const LbSoilLayer *layer = &root->layers[i];
    const double to_m = MIN (layer->to_m, root->depth_m);

    if (to_m <= layer->from_m + SLACK)
      break;
    grip.layer_n[i] = layer_grip (root, layer, to_m, &grip, &overburden_pa);
    grip.total_n.likely += grip.layer_n[i];
  }
  grip.total_n.low = root->low_factor * grip.total_n.likely;
  grip.total_n.high = root->high_factor * grip.total_n.likely;
  *out_grip = grip;
  return TRUE;
}
