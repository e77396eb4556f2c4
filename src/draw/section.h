/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/palette.h"
#include "draw/picture-text.h"
#include "trade/cut-plan.h"

G_BEGIN_DECLS

/* The section at the cut seen from above, the lean pointing up the page, or north for a plumb pile.
 * Every bar carries its own number, from 1 clockwise; bars left also say which comes when: "1st" is
 * the next to burn. A ring round a bar says that the hook must hold before it is burned. Burned ones
 * are faint rings. */
typedef struct
{
  const LbPile *pile;
  const LbCutPlan *plan;
  LbBarSet burned;
  int focus; /* bar with the keyboard's focus, -1 for none */
} LbSection;

void lb_section_draw (cairo_t *cr,
                      const LbPalette *palette,
                      const LbVoice *voice,
                      const LbSection *section,
                      double width,
                      double height);

/* The bar at a place on the page, -1 for none; each answers within at least 14 px, or half the
 * way to its neighbour. */
int lb_section_bar_at (const LbSection *section, double width, double height, double x, double y);

/* Whether an order to burn is told: not for stressed strand, which no bar rule holds for. */
gboolean lb_section_tells_order (const LbPile *pile);

/* The unit vector on the page, y down, that points north. */
LbPoint lb_section_north (const LbSection *section);

/* Where a bar is drawn, for focus rings and tests. */
LbPoint lb_section_bar_place (const LbSection *section, double width, double height, guint bar);

G_END_DECLS
