/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/section.h"

#include <math.h>

G_BEGIN_DECLS

/* Where all of a section lies on the page. */
typedef struct
{
  LbPoint centre;
  double scale;             /* px per m */
  double radius;            /* half the outline's width, px */
  double title, lean, foot; /* height of the bands for words and needle; the first two are on top */
  double bar_radius;
  gboolean has_numbers_outside;
  gboolean has_rings; /* room for one about a bar */
  guint n_bars;
  LbPoint bars[LB_BARS_MAX]; /* on the page */
  LbOutline outline;
} LbSectionLayout;

void lb_section_lay_out (const LbSection *section,
                         double width,
                         double height,
                         LbSectionLayout *layout);

/* Numbers and ordinals are part of the drawing and grow with it, not with the text. */
LbVoice lb_section_plain_voice (const LbVoice *voice);

/* Whether the bar holds until the hook does. */
gboolean lb_section_is_hold_bar (const LbCutPlan *plan, guint bar);

void lb_section_draw_bar_words (cairo_t *cr,
                                const LbPalette *palette,
                                const LbVoice *voice,
                                const LbSection *section,
                                const LbSectionLayout *layout);

static inline double
lb_section_distance (LbPoint a, LbPoint b)
{
  return hypot (a.x - b.x, a.y - b.y);
}

G_END_DECLS
