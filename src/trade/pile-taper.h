/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/pile.h"

#include <glib.h>

G_BEGIN_DECLS

/* A tapered pile is as wide as its outline at the head, and narrows evenly to the width at its toe; a
 * void goes through it at one diameter (docs/methods.md, "Sections"). */

static inline gboolean
lb_pile_is_tapered (const LbPile *pile)
{
  return pile->tip_width_m > 0;
}

/* The section there; beyond an end, that of the end. Its width is 0 where it is not known, which
 * takes head and toe of a tapered pile, and a toe that is wider than the void. */
LbOutline lb_pile_outline_at (const LbPile *pile, double elevation_m);

/* The width there as what ends a tapered length (LbPiece, LbStub): 0 where it is even, NAN where it is
 * not known. */
double lb_pile_end_width (const LbPile *pile, double elevation_m);

/* What is left when it breaks: @head_m is its head from now on, as wide as it was there. */
void lb_pile_break_off (LbPile *pile, double head_m);

G_END_DECLS
