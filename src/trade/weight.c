/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/weight.h"

#include <math.h>

/* As if without a hole, and wider by @grown_m. */
static double
solid_volume (const LbPiece *piece, double grown_m)
{
  const LbOutline near = { .shape = piece->outline.shape,
                           .width_m = piece->outline.width_m + grown_m };
  const LbOutline far = { .shape = near.shape, .width_m = piece->far_width_m + grown_m };

  if (piece->far_width_m <= 0)
    return lb_outline_area (&near) * piece->length_m;
  return lb_frustum_volume (lb_outline_area (&near), lb_outline_area (&far), piece->length_m);
}

static double
concrete_volume (const LbPiece *piece)
{
  const double d = piece->outline.void_m;

  if (!lb_outline_is_known (&piece->outline) || (piece->far_width_m > 0 && piece->far_width_m <= d))
    return (double) NAN;
  return solid_volume (piece, 0) - G_PI_4 * d * d * piece->length_m;
}

/* The jacket of growth round the outside: the same shape, wider by the thickness on each side,
 * less the pile. None grows in the hole. */
static double
growth_volume (const LbPiece *piece)
{
  return solid_volume (piece, 2 * piece->growth_m) - solid_volume (piece, 0);
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
