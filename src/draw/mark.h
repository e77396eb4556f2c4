/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/palette.h"
#include "trade/outline.h"
#include "trade/step.h"

G_BEGIN_DECLS

/* One pile on the plan: the heavier the mark, the more work is left. */
typedef struct
{
  LbShape shape;
  LbStep step;
  double share_left;  /* of the bars, 0 to 1; the arc round a cleaned mark; NAN: no arc */
  gboolean has_flag;  /* something is wrong */
  gboolean is_strand; /* stressed strand: a small double tick, never colour alone */
} LbMark;

/* Draws it about the origin, @size across the outline, extras outside it (sling loop, arc, flag)
 * within 1.1 @size of the centre. */
void lb_mark_draw (cairo_t *cr, const LbPalette *palette, const LbMark *mark, double size);

/* The arrow of the lean, from the outline's edge; @length_px beyond it, @angle_rad clockwise from
 * the top of the page. */
void lb_lean_arrow_draw (cairo_t *cr,
                         const LbPalette *palette,
                         LbStep step,
                         double size,
                         double length_px,
                         double angle_rad);

G_END_DECLS
