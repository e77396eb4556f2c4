/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/palette.h"
#include "draw/picture-text.h"
#include "trade/cut-plan.h"
#include "trade/step.h"

G_BEGIN_DECLS

/* One pile seen from the side, square to its lean, at scale: water, mudline, cut line, the fall
 * of the slag, the side for leads. Unknown elevations are left out and said to be unknown. */
typedef struct
{
  const LbPile *pile;
  const LbCutPlan *plan;
  double water_m; /* level above datum */
  double cut_m;   /* NAN when not known */
  LbStep step;
} LbSide;

void lb_side_draw (cairo_t *cr,
                   const LbPalette *palette,
                   const LbVoice *voice,
                   const LbSide *side,
                   double width,
                   double height);

G_END_DECLS
