/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/bar-ring.h"

#include <math.h>

/* Two bars closer than this in height are at one height: far below any bar's size, far above
 * what sine and cosine leave over. */
#define SAME_HEIGHT 1e-6

LbBarSet
lb_bar_set_all (guint n_bars)
{
  g_return_val_if_fail (n_bars <= LB_BARS_MAX, 0);

  return LB_BAR (n_bars) - 1;
}

guint
lb_bar_set_count (LbBarSet set)
{
  guint n = 0;

  for (; set != 0; set &= set - 1)
    n++;
  return n;
}

/* Along the faces of a square of half side @half, the same number on each, one in each corner. */
static void
place_along_faces (double half, guint n_bars, LbPoint *places)
{
  const guint n_side = n_bars / 4;
  /* Counted from the left corner of the face toward +y, the first at or right of its middle. */
  const guint first = (n_side + 1) / 2;

  for (guint i = 0; i < n_bars; i++) {
    const guint at = (first + i) % n_bars;
    const double along = -half + 2 * half * (at % n_side) / n_side;

    switch (at / n_side) {
    case 0:
      places[i] = (LbPoint){ .x = along, .y = half };
      break;
    case 1:
      places[i] = (LbPoint){ .x = half, .y = -along };
      break;
    case 2:
      places[i] = (LbPoint){ .x = -along, .y = -half };
      break;
    default:
      places[i] = (LbPoint){ .x = -half, .y = along };
      break;
    }
  }
}

void
lb_bar_ring_place (const LbOutline *outline,
                   double inset_m,
                   guint n_bars,
                   LbPoint places[LB_BARS_MAX])
{
  g_return_if_fail (outline);
  g_return_if_fail (n_bars >= 1 && n_bars <= LB_BARS_MAX);
  g_return_if_fail (places);

  /* From the centre to where the bars stand behind a face; a wrong inset puts them all in the
   * centre, which lb_pile_check() refuses. */
  const double half = MAX (outline->width_m / 2 - inset_m, 0);

  if (outline->shape == LB_SHAPE_SQUARE && n_bars % 4 == 0) {
    place_along_faces (half, n_bars, places);
    return;
  }

  const gboolean is_in_corners = outline->shape == LB_SHAPE_OCTAGON && n_bars == 8;
  const double radius = is_in_corners ? half / cos (G_PI / 8) : half;
  const double first = is_in_corners ? G_PI / 8 : 0;

  for (guint i = 0; i < n_bars; i++) {
    const double angle = first + 2 * G_PI * i / n_bars;

    places[i] = (LbPoint){ .x = radius * sin (angle), .y = radius * cos (angle) };
  }
}

/* Whether @a is burned before @b: lower on the slope first; at one height, the one that is met
 * first on the way round from the high side; of two mirror images the left one. */
static gboolean
is_before (const LbPoint *a, const LbPoint *b)
{
  if (fabs (a->y - b->y) > SAME_HEIGHT)
    return a->y < b->y;

  const double outward = fabs (a->x) - fabs (b->x);

  if (fabs (outward) > SAME_HEIGHT)
    return a->y < 0 ? outward < 0 : outward > 0;
  return a->x < b->x - SAME_HEIGHT;
}

gsize
lb_bar_ring_order (const LbPoint *places, guint n_bars, LbBarSet left, guint8 order[LB_BARS_MAX])
{
  g_return_val_if_fail (places, 0);
  g_return_val_if_fail (n_bars <= LB_BARS_MAX, 0);
  g_return_val_if_fail (order, 0);

  gsize n = 0;

  /* By insertion: at most sixty, nearly sorted already on each side. */
  for (guint bar = 0; bar < n_bars; bar++) {
    if ((left & LB_BAR (bar)) == 0)
      continue;

    gsize at = n++;

    for (; at > 0 && is_before (&places[bar], &places[order[at - 1]]); at--)
      order[at] = order[at - 1];
    order[at] = (guint8) bar;
  }
  return n;
}
