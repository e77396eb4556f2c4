/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/dive-account.h"
#include "draw/picture-text.h"

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

/* What a dive's bottom time comes to: the above, or that there is nothing to compare. To be freed. */
char *lb_dive_compared_text (const LbDiveAccount *account);

/* Whether the comparison is a matter of numbers that can be drawn. */
gboolean lb_dive_is_compared (const LbDiveAccount *account);

/* What else must be said of it: that earlier dives are not counted and why, or that it is past the
 * limit; %NULL for nothing. */
const char *lb_dive_compared_note (const LbDiveAccount *account);

G_END_DECLS
