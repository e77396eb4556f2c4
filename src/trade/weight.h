/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/outline.h"

#include <glib.h>

G_BEGIN_DECLS

/* The weight of a straight piece of pile (docs/methods.md, "Weights"). */
typedef struct
{
  LbOutline outline;
  double far_width_m;        /* across the other end of a tapered one; 0 for the same */
  double length_m;           /* along the axis */
  double concrete_kg_per_m3; /* reinforced */
  double water_kg_per_m3;
  double growth_m; /* thickness of growth all round, 0 for none */
  double growth_kg_per_m3;
} LbPiece;

double lb_piece_mass_in_air (const LbPiece *piece);   /* kg, wet growth included */
double lb_piece_mass_in_water (const LbPiece *piece); /* kg apparent, wholly submerged */
double lb_piece_mass_standing (const LbPiece *piece, double submerged_share); /* kg apparent */

/**
 * lb_frustum_volume:
 *
 * m3 of a tapered length between two sections of like shape: h/3 (A1 + A2 + sqrt (A1 A2)).
 */
double lb_frustum_volume (double area1_m2, double area2_m2, double length_m);

G_END_DECLS
