/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/palette.h"
#include "draw/picture-text.h"
#include "trade/cut-plan.h"
#include "trade/pile-hold.h"

G_BEGIN_DECLS

/* The section at the cut seen from above, the lean pointing up the page, or north for a plumb pile.
 * Every bar carries its own number, from 1 clockwise; bars left also say which comes when: "1st" is
 * the next to burn. A ring round a bar says that the hook must hold before it is burned. Burned ones
 * are faint rings, those found gone crosses, which the foot explains.
 *
 * With @shares each bar left is filled by how much of what it may bear it carries, the number of
 * per cent stands outside it where there is room, and one that carries more than it may is ringed. */
typedef struct
{
  const LbPile *pile;
  const LbCutPlan *plan;
  LbBarSet burned;           /* gone: those on record, and those of the steps done */
  int focus;                 /* bar with the keyboard's focus, -1 for none */
  gsize n_done;              /* steps of the plan's order taken to be burned */
  const LbBarShares *shares; /* NULL for plain bars */
  guint going;               /* a bar that is just being burned… */
  double going_left;         /* …and how much of it is still to be seen, 0 to 1 */
} LbSection;

void lb_section_draw (cairo_t *cr,
                      const LbPalette *palette,
                      const LbVoice *voice,
                      const LbSection *section,
                      double width,
                      double height);

/* What the fills say: words, and a strip from 0 to 100 %. */
void lb_section_legend_draw (cairo_t *cr,
                             const LbPalette *palette,
                             const LbVoice *voice,
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
