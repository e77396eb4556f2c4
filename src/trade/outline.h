/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  LB_SHAPE_SQUARE,
  LB_SHAPE_OCTAGON,
  LB_SHAPE_ROUND,
} LbShape;

#define LB_N_SHAPES            (LB_SHAPE_ROUND + 1)
#define LB_OUTLINE_CORNERS_MAX 8

/* A pile's cross section, square to its axis. */
typedef struct
{
  LbShape shape;
  double width_m; /* across flats, or diameter; 0 when not known */
  double void_m;  /* diameter of a central round hole, 0 for a solid pile */
} LbOutline;

typedef struct
{
  double x, y;
} LbPoint;

const char *lb_shape_name (LbShape shape); /* "square", "octagonal", "round": msgids */
gboolean lb_shape_from_name (const char *name, LbShape *out_shape);
guint lb_shape_faces (LbShape shape); /* flat ones: 4, 8, and 0 for round */

/* Whether there is a section to reckon with: a width, and a void that leaves something of it. */
gboolean lb_outline_is_known (const LbOutline *outline);

/* Section properties by elementary geometry (docs/methods.md, "Sections"); NAN for an outline that
 * is not known, the perimeter as long as the width is. */
double lb_outline_area (const LbOutline *outline);      /* m2, void taken off */
double lb_outline_perimeter (const LbOutline *outline); /* m, outside */
double lb_outline_inertia (const LbOutline *outline);   /* m4, about a centroidal axis */

/**
 * lb_outline_corners:
 *
 * The corners about the centre with a flat face toward +y, counter-clockwise; 4 or 8 of them,
 * 0 for a round pile.
 */
gsize lb_outline_corners (const LbOutline *outline, LbPoint corners[LB_OUTLINE_CORNERS_MAX]);

G_END_DECLS
