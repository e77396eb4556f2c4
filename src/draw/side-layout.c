/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * What the side view shows and at what scale. Elevations that are not known are assumed for the
 * drawing's sake, and flagged, so that nothing is drawn at a place that could be taken for true.
 */
#include "draw/side-private.h"

#include "trade/pile-taper.h"

#include <math.h>

/* Assumed for the drawing when not known, m: common practice for small piers; said in words. */
static const double USUAL_FREEBOARD_M = 1.8;
static const double USUAL_DEPTH_M = 8;
static const double USUAL_WIDTH_M = 0.4064;

static const double LEADS_FROM_PX = 24; /* with less water over the cut there is no room */

static double
or_else (double value, gboolean *out_is_known, double usual)
{
  *out_is_known = isfinite (value);
  return *out_is_known ? value : usual;
}

static void
find_elevations (const LbSide *side, LbSideLayout *layout)
{
  const LbPile *const pile = side->pile;
  const double anchor = isfinite (pile->head_m)      ? pile->head_m - USUAL_FREEBOARD_M
                        : isfinite (pile->mudline_m) ? pile->mudline_m + USUAL_DEPTH_M
                        : isfinite (side->cut_m)     ? side->cut_m + USUAL_DEPTH_M
                                                     : 0;
  layout->water_m = or_else (side->water_m, &layout->has_water, anchor);
  layout->head_m = or_else (pile->head_m, &layout->has_head, layout->water_m + USUAL_FREEBOARD_M);
  const double lowest = MIN (layout->water_m, layout->head_m);
  const double floor_m = isfinite (side->cut_m) ? MIN (side->cut_m - 1, lowest)
                                                : lowest - USUAL_DEPTH_M;
  layout->mudline_m = or_else (pile->mudline_m, &layout->has_mudline, floor_m);
  layout->cut_m = or_else (side->cut_m, &layout->has_cut, layout->mudline_m);
  /* Facts that disagree (a cut over the head) are shown as they are; see lb_pile_check(). */
}

/* On the page, the least that can be seen. */
static double
half_px (const LbSideLayout *layout, double width_m)
{
  return MAX (width_m * layout->scale / 2, 2.5);
}

/* A tapered pile whose toe is not known is drawn as wide as its head. */
static void
find_widths (const LbPile *pile, LbSideLayout *layout)
{
  const double head_m = layout->has_width ? pile->outline.width_m : USUAL_WIDTH_M;
  const double foot_m = lb_pile_end_width (pile, layout->foot_m);

  layout->head_half_px = half_px (layout, head_m);
  layout->foot_half_px = foot_m > 0 ? half_px (layout, foot_m) : layout->head_half_px;
  layout->half_px = lb_side_half_px (layout, layout->cut_m);
}

void
lb_side_lay_out (const LbSide *side,
                 const LbVoice *voice,
                 double width,
                 double height,
                 LbSideLayout *out_layout)
{
  /* Shares of the page: bands over and under for words, a column each side. */
  static const double COLUMN_SHARE = 0.33, COLUMN_LEAST = 37, COLUMN_MOST = 150;
  const LbPile *const pile = side->pile;
  LbSideLayout layout = {
    .width = width,
    .height = height,
    .batter = pile->batter > 0 ? pile->batter : 0,
  };
  find_elevations (side, &layout);
  layout.has_width = pile->outline.width_m > 0;
  layout.angle = atan (layout.batter);

  const double column = MIN (
    MAX (MIN (width * COLUMN_SHARE, COLUMN_MOST * voice->scale), COLUMN_LEAST), width * 0.45);
  layout.left = column;
  layout.right = width - column;

  layout.text_size = CLAMP (MIN (width, height) / 46, 10, 13);
  /* Room for the water's words over its line, a hook over the head, and words in the mud. */
  const double hook_band = side->step == LB_STEP_RIGGED ? 20 : 0;
  const double top_band = CLAMP (height * 0.07, 16, 30) * voice->scale + hook_band;
  const double mud_band = MAX (CLAMP (height * 0.17, 34, 90),
                               layout.text_size * voice->scale * 2 + 12);
  const double highest = MAX (layout.head_m, layout.water_m);
  const double lowest = MIN (MIN (layout.mudline_m, layout.cut_m), layout.water_m);
  const double span = MAX (highest - lowest, 1);
  layout.scale = (height - top_band - mud_band) / span;
  /* A short pile with a strong lean is as wide as it is tall. */
  const double lean_m = layout.batter * span + USUAL_WIDTH_M;
  layout.scale = MIN (layout.scale, (layout.right - layout.left) / lean_m);
  layout.top_m = highest + top_band / layout.scale;
  /* What is left over at the foot of the page is mud. */
  const double bottom_m = layout.top_m - height / layout.scale;

  layout.foot_m = isfinite (pile->toe_m) ? pile->toe_m : bottom_m - 1;
  layout.axis_y_m = (highest + lowest) / 2;
  layout.axis_x = (layout.left + layout.right) / 2;
  find_widths (pile, &layout);

  layout.is_to_burn = layout.has_cut && side->plan->n_order > 0 && side->step != LB_STEP_SEVERED &&
                      side->step != LB_STEP_PULLED;
  const double drop = (layout.water_m - layout.cut_m) * layout.scale;
  layout.has_leads = layout.is_to_burn && layout.has_water && side->plan->is_battered &&
                     drop >= LEADS_FROM_PX;
  layout.leads_x = MAX (lb_side_axis_x (&layout, layout.cut_m) - layout.half_px - 9 -
                          CLAMP (drop * 0.1, 4, 22),
                        layout.left - 6);
  *out_layout = layout;
}

double
lb_side_y (const LbSideLayout *layout, double elevation_m)
{
  return (layout->top_m - elevation_m) * layout->scale;
}

double
lb_side_half_px (const LbSideLayout *layout, double elevation_m)
{
  const double down = (layout->head_m - elevation_m) / (layout->head_m - layout->foot_m);

  return layout->head_half_px + CLAMP (down, 0, 1) * (layout->foot_half_px - layout->head_half_px);
}

double
lb_side_axis_x (const LbSideLayout *layout, double elevation_m)
{
  return layout->axis_x + (elevation_m - layout->axis_y_m) * layout->batter * layout->scale;
}
