/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/picture-text.h"
#include "trade/repetitive.h"

G_BEGIN_DECLS

/**
 * lb_dive_left_text:
 * @depth_m: that was asked for
 * @at_us: likewise
 *
 * What a diver has left, in one line: “group I at 11:40 · open without stops: 78 min at 39 ft”, or
 * why it cannot be told. Never a schedule. To be freed.
 */
char *lb_dive_left_text (const LbVoice *voice,
                         const LbDiveLeft *left,
                         double depth_m,
                         gint64 at_us);

/* “52 of 163 min”, or with what earlier dives count “52 + 85 of 163 min”; past the limit it says so.
 * @left must be known and have a limit. To be freed. */
char *lb_bottom_time_text (const LbDiveLeft *left, double bottom_s);

G_END_DECLS
