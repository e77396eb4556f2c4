/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/side.h"

G_BEGIN_DECLS

/* How far the slag spreads on the page, at most. */
#define LB_SIDE_SLAG_SPREAD_PX 16.0

/* Where everything of the side view lies. The page's plane holds the lean, which points to the
 * right; elevations are m above datum, known or assumed. */
typedef struct
{
  double width, height;
  double scale;            /* px per m, the same both ways */
  double top_m;            /* elevation of the page's top edge */
  double axis_x, axis_y_m; /* a point of the pile's axis: page x, elevation */
  double batter;           /* run per rise, 0 for plumb */
  double half_px;          /* half the pile's width at the cut on the page, square to its axis */
  double head_half_px, foot_half_px; /* and at the ends of what is drawn */
  double angle;                      /* of the axis from the vertical */
  double head_m, foot_m;             /* ends of what is drawn; the foot may lie under the page */
  double water_m, mudline_m, cut_m;
  gboolean has_head, has_water, has_mudline, has_cut, has_width;
  double left, right;  /* the columns for words end and begin here */
  double text_size;    /* grows a little with the page */
  gboolean is_to_burn; /* there is a cut to make, with bars in it */
  gboolean has_leads;
  double leads_x; /* page x of the umbilical on its way down */
} LbSideLayout;

void lb_side_lay_out (const LbSide *side,
                      const LbVoice *voice,
                      double width,
                      double height,
                      LbSideLayout *out_layout);

double lb_side_y (const LbSideLayout *layout, double elevation_m);

/* Half the pile's width there, square to its axis. */
double lb_side_half_px (const LbSideLayout *layout, double elevation_m);

/* The axis of the pile at an elevation. */
double lb_side_axis_x (const LbSideLayout *layout, double elevation_m);

/* The words of the view, in two columns beside the pile. */
void lb_side_draw_words (cairo_t *cr,
                         const LbPalette *palette,
                         const LbVoice *voice,
                         const LbSide *side,
                         const LbSideLayout *layout);

G_END_DECLS
