/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/range.h"

#include <glib.h>

G_BEGIN_DECLS

/* What the ground holds of a pile that is drawn whole: friction along its sides, layer by layer
 * (docs/methods.md, "Grip of the ground"). Weight, and the tip of a closed pile, come on top. */

typedef enum {
  LB_SOIL_CLAY,
  LB_SOIL_SAND,
  LB_SOIL_OWN, /* friction given by the engineer */
} LbSoil;

/* Rows of API RP 2GEO's table 1. */
typedef enum {
  LB_SAND_SILT_MEDIUM,
  LB_SAND_MEDIUM,
  LB_SAND_SILT_DENSE,
  LB_SAND_DENSE,
  LB_SAND_SILT_VERY_DENSE,
  LB_SAND_VERY_DENSE,
} LbSand;

#define LB_N_SANDS         (LB_SAND_VERY_DENSE + 1)
#define LB_SOIL_LAYERS_MAX 16

typedef struct
{
  double from_m, to_m; /* below the mudline, down positive */
  LbSoil soil;
  LbSand sand;              /* of a sand */
  double strength_pa;       /* undrained shear strength of a clay, or the friction given */
  double buoyant_kg_per_m3; /* of the ground, less the water it displaces */
} LbSoilLayer;

/* The layers of a job's ground from the mudline down, without gaps. */
typedef struct
{
  guint n_layers;
  LbSoilLayer layers[LB_SOIL_LAYERS_MAX];
} LbGround;

/* The part in the ground. */
typedef struct
{
  double perimeter_m;        /* outside */
  double depth_m;            /* of the toe below the mudline */
  double lean_rad;           /* of the axis from the vertical, 0 for a plumb pile */
  const LbSoilLayer *layers; /* from the mudline down, without gaps, to the toe or further */
  gsize n_layers;
  double sand_pull;               /* share of the friction of sand that is left in a pull, 0 to 1 */
  double low_factor, high_factor; /* the range about the likely figure */
} LbRoot;

/* Some codes keep 0.7 to 0.8 of it; API RP 2GEO keeps all (from memory). All is the heavier load. */
#define LB_SAND_PULL_USUAL 1.0
/* Common practice, no wider than the ± 50 % to which NCEL R-755 could tell a force of breakout. */
#define LB_GRIP_LOW_FACTOR  0.5
#define LB_GRIP_HIGH_FACTOR 1.5

typedef struct
{
  LbRange total_n;                    /* along the axis */
  double layer_n[LB_SOIL_LAYERS_MAX]; /* likely; 0 below the toe */
  gboolean is_clay_stiff; /* a clay of more than three times its overburden: use with care */
} LbGrip;

/**
 * lb_clay_friction:
 * @strength_pa: undrained shear strength, 0 or more
 * @overburden_pa: effective, more than 0
 *
 * Returns: Pa; α su of API RP 2GEO. NAN for a number that makes no sense.
 */
double lb_clay_friction (double strength_pa, double overburden_pa);

/* Pa; β p'o of API RP 2GEO up to the limit of the row. */
double lb_sand_friction (LbSand sand, double overburden_pa);

const char *lb_sand_name (LbSand sand); /* msgid: "medium dense sand" */
gboolean lb_sand_from_name (const char *name, LbSand *out_sand);

/* What is wrong with a layer that should begin at @above_m, a msgid as "has no strength from …"; %NULL
 * for nothing. */
const char *lb_soil_layer_fault (const LbSoilLayer *layer, double above_m);

/**
 * lb_grip_reckon:
 * @out_grip: (out): untouched on failure
 *
 * Each layer is cut into equal slices of 5 ft at most, and each slice has the friction of its
 * middle.
 *
 * Returns: %FALSE with %LB_TRADE_ERROR_INCOMPLETE when the layers end above the toe, with
 *   %LB_TRADE_ERROR_DOMAIN when a number makes no sense or the layers leave a gap
 */
gboolean lb_grip_reckon (const LbRoot *root, LbGrip *out_grip, GError **error);

G_END_DECLS
