/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/bar-ring.h"
#include "trade/quantity.h"

#include <glib.h>

G_BEGIN_DECLS

/* Where the bars of a pile stand, as people say it in a line:
 *
 *   ""                            the usual ring, see lb_bar_ring_place()
 *   3 on each face                so many along each face, those in the corners on both
 *   2 between corners             so many along each face, none in a corner
 *   8 outer, 4 inner at 7         two rings, the inner one so far from the face
 *   at 3.5 3.5; 3.5 -3.5; …       each bar from the centre: to the right of the lean, then with it
 */
typedef enum {
  LB_BAR_LAYOUT_USUAL,
  LB_BAR_LAYOUT_ON_FACES,
  LB_BAR_LAYOUT_BETWEEN_CORNERS,
  LB_BAR_LAYOUT_TWO_RINGS,
  LB_BAR_LAYOUT_GIVEN,
} LbBarLayoutKind;

typedef struct
{
  LbBarLayoutKind kind;
  guint n_on_face;
  guint n_outer, n_inner;
  double inner_inset_m; /* from the face to the centre of the inner bars */
  guint n_given;
  LbPoint given[LB_BARS_MAX]; /* as LbCutPlan.places; the first @n_given are set */
} LbBarLayout;

/**
 * lb_bar_layout_from_text:
 * @text: as above; lengths without a unit are sizes in @units, and a unit stands close to its
 *   number ("89mm"); a comma is a decimal sign, or ends a number
 * @out_layout: (out): untouched on failure
 *
 * Takes no memory where no length has a unit.
 */
gboolean lb_bar_layout_from_text (const char *text,
                                  LbUnits units,
                                  LbBarLayout *out_layout,
                                  GError **error);

/* What lb_bar_layout_from_text() reads back in the same @units, to a tenth of a micrometre. */
char *lb_bar_layout_to_text (const LbBarLayout *layout, LbUnits units);

/* How many bars that is in a pile of @shape; 0 when any number is right. A round pile has no faces:
 * %LB_BARS_MAX + 1, which is never right. */
guint lb_bar_layout_count (const LbBarLayout *layout, LbShape shape);

/**
 * lb_bar_layout_place:
 * @n_bars: as lb_bar_layout_count() has it; 1 to %LB_BARS_MAX
 *
 * Along faces and on each ring bars are numbered clockwise, the first at or right of +y, the outer
 * ring before the inner one; given ones as they are given.
 */
void lb_bar_layout_place (const LbBarLayout *layout,
                          const LbOutline *outline,
                          double inset_m,
                          guint n_bars,
                          LbPoint places[LB_BARS_MAX]);

G_END_DECLS
