/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/weight.h"

#include <math.h>

static double
concrete_volume (const LbPiece *piece)
{
  return lb_outline_area (&piece->outline) * piece->length_m;
}

/* The jacket of growth round the outside: the same shape, wider by the thickness on each side,
 * less the pile. None grows in the hole. */
static double
growth_volume (const LbPiece *piece)
{
  const LbOutline inner = { .shape = piece->outline.shape, .width_m = piece->outline.width_m };
  LbOutline outer = inner;

  outer.width_m += 2 * piece->growth_m;
  return (lb_outline_area (&outer) - lb_outline_area (&inner)) * piece->length_m;
}

double
lb_piece_mass_in_air (const LbPiece *piece)
{
  return lb_piece_mass_standing (piece, 0);
}

double
lb_piece_mass_in_water (const LbPiece *piece)
{
  return lb_piece_mass_standing (piece, 1);
}

double
lb_piece_mass_standing (const LbPiece *piece, double submerged_share)
{
  g_return_val_if_fail (piece, (double) NAN);
  g_return_val_if_fail (!(submerged_share < 0 || submerged_share > 1), (double) NAN);

  const double buoyancy = submerged_share * piece->water_kg_per_m3;

  /* The hole is flooded: only what is solid displaces water. */
  return concrete_volume (piece) * (piece->concrete_kg_per_m3 - buoyancy) +
         growth_volume (piece) * (piece->growth_kg_per_m3 - buoyancy);
}

double
lb_frustum_volume (double area1_m2, double area2_m2, double length_m)
{
  return length_m / 3 * (area1_m2 + area2_m2 + sqrt (area1_m2 * area2_m2));
}
