/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/range.h"

#include <glib.h>

G_BEGIN_DECLS

/* What mud adds to a piece that lies on it or in it, for the first moment of a lift. Nobody can
 * tell it closely: NCEL R-755 gives ± 50 % for the force and ± 100 % for the time. A slow pull needs
 * less than a quick one. A stub that is no longer in the ground has none of it. */
typedef enum {
  LB_BED_MUD,
  LB_BED_SOFT_CLAY,
} LbBed;

#define LB_N_BEDS (LB_BED_SOFT_CLAY + 1)

/**
 * lb_breakout_suction:
 * @submerged_n: weight of the piece in water
 * @out_suction_n: (out): to add to that weight; untouched on failure
 *
 * 0.25 to 0.5 of the weight in water on mud, up to all of it on soft clay (common practice).
 */
gboolean lb_breakout_suction (LbBed bed,
                              double submerged_n,
                              LbRange *out_suction_n,
                              GError **error);

/**
 * lb_breakout_hold:
 * @static_n: what the ground holds by shear and tension
 * @pull_s: how long the pull may take
 * @embedded_s: how long the piece has lain there
 * @out_hold_n: (out): what a pull of that time must bring; untouched on failure
 *
 * NCEL R-635 (1969): F = 1.5 (T / Tin)^−0.07 of the static hold, with the ± 50 % of R-755.
 * Refuses a ratio of times outside 0.001 to 10, which the tests did not cover.
 */
gboolean lb_breakout_hold (double static_n,
                           double pull_s,
                           double embedded_s,
                           LbRange *out_hold_n,
                           GError **error);

G_END_DECLS
