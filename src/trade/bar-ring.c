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

/* From the centre to where bars stand behind a face; a wrong inset puts them all in the centre, which
 * lb_pile_check() refuses. */
static double
half_width (const LbOutline *outline, double inset_m)
{
  return MAX (outline->width_m / 2 - inset_m, 0);
}

void
lb_bar_faces_place (const LbOutline *outline,
                    double inset_m,
                    guint n_a_face,
                    gboolean has_corners,
                    LbPoint places[LB_BARS_MAX])
{
  const guint n_faces = lb_shape_faces (outline->shape);

  g_return_if_fail (n_faces > 0);
  g_return_if_fail (n_a_face >= 1 && n_a_face * n_faces <= LB_BARS_MAX);
  g_return_if_fail (places);

  const double half = half_width (outline, inset_m);
  const double corner = half * tan (G_PI / n_faces);
  const guint n_bars = n_a_face * n_faces;
  /* Counted from the left corner of the face toward +y, the first at or right of its middle. */
  const guint first = (n_a_face + has_corners) / 2;
  const double from_corner = has_corners ? 0 : 0.5;

  for (guint face = 0; face < n_faces; face++) {
    const double angle = 2 * G_PI * face / n_faces;
    const double s = sin (angle), c = cos (angle);

    for (guint i = 0; i < n_a_face; i++) {
      const double along = corner * (2 * (i + from_corner) / n_a_face - 1);
      const guint bar = (face * n_a_face + i + n_bars - first) % n_bars;

      places[bar] = (LbPoint){ .x = along * c + half * s, .y = half * c - along * s };
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

  if (outline->shape == LB_SHAPE_SQUARE && n_bars % 4 == 0) {
    lb_bar_faces_place (outline, inset_m, n_bars / 4, TRUE, places);
    return;
  }

  const double half = half_width (outline, inset_m);
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
