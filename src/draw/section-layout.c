/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * Where the outline, the bars and the bands for words of a section lie, and which bar a finger
 * means. See section.c for what is drawn there.
 */
#include "draw/section-private.h"

#include "trade/pile-bars.h"

/* Drawn for a pile whose width is not known: 16 in, a usual one (common practice). */
static const double USUAL_WIDTH_M = 0.4064;
static const double USUAL_BAR_M = 0.0254; /* and a #8 bar */

/* Of a disc with its number inside: px, and as a share of the outline where that is larger. */
static const double READABLE_RADIUS = 10, READABLE_SHARE = 0.13;
static const double NUMBER_INSIDE_FROM = 8; /* smaller ones have it outside */
static const double LEAST_RADIUS = 2;
static const double RING = 3.5;    /* about a bar, see section.c */
static const double REACH_PX = 14; /* of a finger, see the header */

/* The outline and places to draw: those at the cut, or usual ones for a width not known. */
static void
find_places (const LbSection *section, LbSectionLayout *layout, LbPoint places[LB_BARS_MAX])
{
  LbPile pile = *section->pile;
  pile.outline = section->plan->outline;
  layout->n_bars = MIN (pile.n_bars, LB_BARS_MAX);
  if (pile.outline.width_m <= 0)
    pile.outline.width_m = USUAL_WIDTH_M;
  pile.bar_inset_m = MIN (lb_pile_bar_inset (&pile), pile.outline.width_m * 0.45);
  layout->outline = pile.outline;
  if (layout->n_bars > 0)
    lb_pile_bars_place (&pile, &pile.outline, places);
}

/* Half the least distance between two bars on the page; with at most 60 of them, by all pairs. */
static double
half_spacing (const LbSectionLayout *layout)
{
  double least = INFINITY;
  for (guint i = 0; i < layout->n_bars; i++)
    for (guint j = i + 1; j < layout->n_bars; j++)
      least = MIN (least, lb_section_distance (layout->bars[i], layout->bars[j]) / 2);
  return least;
}

static void
place_bars (LbSectionLayout *layout, const LbPoint places[LB_BARS_MAX], double bar_m)
{
  layout->scale = 2 * layout->radius / layout->outline.width_m;
  for (guint i = 0; i < layout->n_bars; i++) {
    layout->bars[i] = (LbPoint){ layout->centre.x + places[i].x * layout->scale,
                                 layout->centre.y - places[i].y * layout->scale };
  }
  const double wanted = MAX (bar_m / 2 * layout->scale,
                             MAX (READABLE_RADIUS, READABLE_SHARE * layout->radius));
  /* Not over the face, nor into the void, nor onto the next bar. */
  double room = MIN (half_spacing (layout) - 1, layout->radius * 0.3);
  for (guint i = 0; i < layout->n_bars; i++) {
    const double to_void = lb_section_distance (layout->bars[i], layout->centre) -
                           layout->outline.void_m / 2 * layout->scale;
    room = MIN (room, to_void - 2);
  }
  layout->bar_radius = MAX (MIN (wanted, room), LEAST_RADIUS);
  layout->has_rings = half_spacing (layout) - layout->bar_radius >= RING;
}

void
lb_section_lay_out (const LbSection *section, double width, double height, LbSectionLayout *layout)
{
  static const double NUMBER_BAND = 13; /* outside the outline */
  static const double SHARE_BAND = 17;  /* for the per cent there */
  LbPoint places[LB_BARS_MAX];
  find_places (section, layout, places);
  const LbBar *const bar = section->pile->bar;
  const double bar_m = bar != NULL ? bar->diameter_m : USUAL_BAR_M;

  layout->title = layout->lean = CLAMP (height * 0.08, 13, 22);
  layout->foot = CLAMP (height * 0.16, 26, 44);
  const double top = layout->title + layout->lean;
  layout->centre = (LbPoint){ width / 2, (height - layout->foot + top) / 2 };
  layout->radius = MAX (MIN (width, height - top - layout->foot) / 2 - 5, 4);
  layout->has_numbers_outside = FALSE;
  place_bars (layout, places, bar_m);
  if (layout->n_bars == 0)
    return;
  const double full = layout->radius;
  if (section->shares != NULL) {
    layout->radius = MAX (full - SHARE_BAND, 4);
    place_bars (layout, places, bar_m);
  }
  if (layout->bar_radius < NUMBER_INSIDE_FROM) {
    layout->has_numbers_outside = TRUE;
    layout->radius = MAX (full - NUMBER_BAND, 4);
    place_bars (layout, places, bar_m);
  }
}

int
lb_section_bar_at (const LbSection *section, double width, double height, double x, double y)
{
  LbSectionLayout layout;
  lb_section_lay_out (section, width, height, &layout);
  const double reach = MAX (REACH_PX, layout.bar_radius + 2);
  int nearest = -1;
  double nearest_px = INFINITY;
  for (guint i = 0; i < layout.n_bars; i++) {
    const double away = lb_section_distance (layout.bars[i], (LbPoint){ x, y });
    if (away <= reach && away < nearest_px) {
      nearest = (int) i;
      nearest_px = away;
    }
  }
  return nearest;
}

LbPoint
lb_section_bar_place (const LbSection *section, double width, double height, guint bar)
{
  LbSectionLayout layout;
  lb_section_lay_out (section, width, height, &layout);
  g_return_val_if_fail (bar < layout.n_bars, layout.centre);

  return layout.bars[bar];
}
