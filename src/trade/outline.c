/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/outline.h"

#include "trade/msgid.h"

#include <math.h>

/* Elementary geometry of a regular octagon of width 1 across the flats: the area is 2 (√2 − 1),
 * a side √2 − 1, the second moment (4√2 − 5) / 12 about any axis through the centre. */
#define OCTAGON_SIDE    (G_SQRT2 - 1)
#define OCTAGON_AREA    (2 * (G_SQRT2 - 1))
#define OCTAGON_INERTIA ((4 * G_SQRT2 - 5) / 12)

static const struct
{
  const char *name;
  const char *others[3]; /* what lists call it */
} shapes[LB_N_SHAPES] = {
  [LB_SHAPE_SQUARE] = { N_ ("square"), { "sq", "sq.", "box" } },
  [LB_SHAPE_OCTAGON] = { N_ ("octagonal"), { "octagon", "oct", "oct." } },
  [LB_SHAPE_ROUND] = { N_ ("round"), { "circular", "circle", "cylinder" } },
};

const char *
lb_shape_name (LbShape shape)
{
  g_return_val_if_fail (shape < LB_N_SHAPES, NULL);

  return shapes[shape].name;
}

gboolean
lb_shape_from_name (const char *name, LbShape *out_shape)
{
  g_return_val_if_fail (name, FALSE);
  g_return_val_if_fail (out_shape, FALSE);

  for (int shape = 0; shape < LB_N_SHAPES; shape++) {
    gboolean is_it = g_ascii_strcasecmp (shapes[shape].name, name) == 0;

    for (gsize i = 0; i < G_N_ELEMENTS (shapes[shape].others) && !is_it; i++)
      is_it = g_ascii_strcasecmp (shapes[shape].others[i], name) == 0;
    if (is_it) {
      *out_shape = (LbShape) shape;
      return TRUE;
    }
  }
  return FALSE;
}

guint
lb_shape_faces (LbShape shape)
{
  switch (shape) {
  case LB_SHAPE_SQUARE:
    return 4;
  case LB_SHAPE_OCTAGON:
    return 8;
  case LB_SHAPE_ROUND:
    return 0;
  default:
    g_return_val_if_reached (0);
  }
}

gboolean
lb_outline_is_known (const LbOutline *outline)
{
  g_return_val_if_fail (outline, FALSE);

  return outline->width_m > 0 && outline->void_m < outline->width_m;
}

double
lb_outline_area (const LbOutline *outline)
{
  g_return_val_if_fail (outline, (double) NAN);

  const double w = outline->width_m;
  const double hole = G_PI_4 * outline->void_m * outline->void_m;

  if (!lb_outline_is_known (outline))
    return (double) NAN;

  switch (outline->shape) {
  case LB_SHAPE_SQUARE:
    return w * w - hole;
  case LB_SHAPE_OCTAGON:
    return OCTAGON_AREA * w * w - hole;
  case LB_SHAPE_ROUND:
    return G_PI_4 * w * w - hole;
  default:
    g_return_val_if_reached ((double) NAN);
  }
}

double
lb_outline_perimeter (const LbOutline *outline)
{
  g_return_val_if_fail (outline, (double) NAN);

  const double w = outline->width_m;

  if (!(w > 0))
    return (double) NAN;

  switch (outline->shape) {
  case LB_SHAPE_SQUARE:
    return 4 * w;
  case LB_SHAPE_OCTAGON:
    return 8 * OCTAGON_SIDE * w;
  case LB_SHAPE_ROUND:
    return G_PI * w;
  default:
    g_return_val_if_reached ((double) NAN);
  }
}

double
lb_outline_inertia (const LbOutline *outline)
{
  g_return_val_if_fail (outline, (double) NAN);

  const double w4 = pow (outline->width_m, 4);
  const double hole = G_PI * pow (outline->void_m, 4) / 64;

  if (!lb_outline_is_known (outline))
    return (double) NAN;

  switch (outline->shape) {
  case LB_SHAPE_SQUARE:
    return w4 / 12 - hole;
  case LB_SHAPE_OCTAGON:
    return OCTAGON_INERTIA * w4 - hole;
  case LB_SHAPE_ROUND:
    return G_PI * w4 / 64 - hole;
  default:
    g_return_val_if_reached ((double) NAN);
  }
}

gsize
lb_outline_corners (const LbOutline *outline, LbPoint corners[LB_OUTLINE_CORNERS_MAX])
{
  g_return_val_if_fail (outline, 0);
  g_return_val_if_fail (corners, 0);

  const gsize n = lb_shape_faces (outline->shape);

  if (n == 0)
    return 0;

  /* From the middle of a face to a corner, as an angle at the centre. */
  const double half = G_PI / (double) n;
  const double radius = outline->width_m / 2 / cos (half);

  for (gsize i = 0; i < n; i++) {
    const double angle = half + 2 * half * (double) i;

    corners[i] = (LbPoint){ .x = radius * cos (angle), .y = radius * sin (angle) };
  }
  return n;
}
