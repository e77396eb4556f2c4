/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Comparison of bottom time with the no-stop limit of the U.S. Navy air table, Rev 7 (2016),
 * table 9-7; any other table: dive-table.h. This tool never makes a decompression schedule; the
 * diving supervisor's own table and word stand above it. */

/* m of seawater to read the table with: the pneumofathometer's correction added (+1 fsw to
 * 100 fsw, +2 to 200). Refuses readings below 0 or above 200 fsw. */
gboolean lb_pneumo_corrected (double reading_m, double *out_depth_m, GError **error);

typedef struct
{
  double table_depth_m; /* the row entered: exact or next deeper */
  double limit_s;       /* no-stop limit; INFINITY where the table gives none */
} LbNoStop;

/**
 * lb_no_stop_limit:
 * @depth_m: corrected depth
 *
 * Refuses depths under 0 and beyond 190 fsw (no no-stop option there).
 */
gboolean lb_no_stop_limit (double depth_m, LbNoStop *out_limit, GError **error);

/**
 * lb_repetitive_group:
 *
 * Returns: the letter after a dive within the limit, 0 when the time is past it or the depth
 *   outside the table; 'A' the least. At 10 to 20 fsw the highest group reachable is returned
 *   for any longer time.
 */
char lb_repetitive_group (double depth_m, double bottom_time_s);

/* s, rounded up to whole minutes as tables are entered. */
double lb_bottom_time_whole (double s);

/**
 * lb_bottom_time:
 * @left_surface_us: 0 when not written down
 *
 * Bottom time as dive logs keep it (U.S. Navy Diving Manual, Rev 7): from leaving the surface to
 * leaving the bottom, up to the next whole minute.
 *
 * Returns: s; NAN when the times are not written down or not in order.
 */
double lb_bottom_time (gint64 left_surface_us, gint64 left_bottom_us);

/* Descent and ascent pace taken for planning: 75 and 30 ft a minute (table 9-9 heading). */
double lb_ascent_time (double depth_m);

/* Least manifold pressure for a demand helmet, Pa: 0.445 D + 90, 135 or 165 psi by depth band
 * (U.S. Navy Diving Manual, chapter 8). Refuses beyond 190 fsw. */
gboolean lb_helmet_supply_pressure (double depth_m, double *out_pa, GError **error);

G_END_DECLS
