/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/pile-bars.h"

#include "trade/bar-layout.h"
#include "trade/msgid.h"

#include <math.h>

/* 2 in of cover over a tie and half a bar: common practice in marine precast work. */
#define USUAL_INSET (3 * 0.0254)
/* Closer than they may be by this, m, is rounding. */
#define TOUCH 1e-7

double
lb_pile_bar_inset (const LbPile *pile)
{
  g_return_val_if_fail (pile, (double) NAN);

  return isnan (pile->bar_inset_m) ? USUAL_INSET : pile->bar_inset_m;
}

/* From the centre to where a face must be to have the bar behind it. */
static double
reach (LbShape shape, LbPoint place)
{
  const double x = fabs (place.x), y = fabs (place.y);

  switch (shape) {
  case LB_SHAPE_SQUARE:
    return MAX (x, y);
  case LB_SHAPE_OCTAGON:
    return MAX (MAX (x, y), (x + y) * G_SQRT2 / 2);
  case LB_SHAPE_ROUND:
    return hypot (x, y);
  default:
    g_return_val_if_reached ((double) NAN);
  }
}

LbBarsFit
lb_bars_fit (const LbOutline *outline,
             const LbPoint *places,
             guint n_bars,
             double bar_m,
             guint out_bars[2])
{
  guint unused[2];
  guint *bars = out_bars ? out_bars : unused;

  g_return_val_if_fail (outline, LB_BARS_FIT);
  g_return_val_if_fail (places, LB_BARS_FIT);

  for (guint i = 0; i < n_bars; i++) {
    bars[0] = i;
    if (reach (outline->shape, places[i]) + bar_m / 2 > outline->width_m / 2 + TOUCH)
      return LB_BARS_OUT_OF_FACE;
    if (outline->void_m > 0 &&
        hypot (places[i].x, places[i].y) - bar_m / 2 < outline->void_m / 2 - TOUCH)
      return LB_BARS_IN_VOID;
    for (guint j = 0; j < i; j++) {
      const double x = places[i].x - places[j].x, y = places[i].y - places[j].y;

      bars[1] = j;
      if (x * x + y * y < (bar_m - TOUCH) * (bar_m - TOUCH))
        return LB_BARS_TOO_CLOSE;
    }
  }
  return LB_BARS_FIT;
}

/* Why the layout on record is none for this pile; %NULL when it is. */
static const char *
layout_fault (const LbPile *pile, const LbBarLayout *layout)
{
  const guint count = lb_bar_layout_count (layout, pile->outline.shape);

  if (count > LB_BARS_MAX && lb_shape_faces (pile->outline.shape) == 0)
    return N_ ("The bars on record stand along faces, and a round pile has none: correct the bar "
               "places or the shape.");
  if (count != 0 && count != pile->n_bars)
    return N_ (
      "The bar places on record are those of another number of bars: correct one of them.");
  return NULL;
}

const char *
lb_pile_bars_place (const LbPile *pile, const LbOutline *outline, LbPoint places[LB_BARS_MAX])
{
  g_return_val_if_fail (pile && pile->n_bars >= 1, NULL);
  g_return_val_if_fail (outline, NULL);
  g_return_val_if_fail (places, NULL);

  const double inset_m = lb_pile_bar_inset (pile);
  const char *fault = NULL;
  LbBarLayout layout;

  if (pile->bar_places[0] == '\0') {
    lb_bar_ring_place (outline, inset_m, pile->n_bars, places);
    return NULL;
  }
  if (!lb_bar_layout_from_text (pile->bar_places, LB_UNITS_METRIC, &layout, NULL))
    fault = N_ ("The bar places on record cannot be read: correct them.");
  else
    fault = layout_fault (pile, &layout);
  if (fault) {
    lb_bar_ring_place (outline, inset_m, pile->n_bars, places);
    return fault;
  }
  lb_bar_layout_place (&layout, outline, inset_m, pile->n_bars, places);
  return NULL;
}
