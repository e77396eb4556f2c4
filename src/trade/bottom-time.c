/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The no-stop limits and repetitive groups of the U.S. Navy air table, and the few other figures
 * of that manual which the cut plan compares with.
 *
 * Rows are kept as printed, in feet and minutes; metres and seconds are turned at the edge. Depth
 * is a length in seawater, so a foot of it is a foot.
 *
 * Invariants:
 * 1. A table is entered at the exact or next deeper depth and the exact or next longer time.
 * 2. Nothing here makes a decompression schedule: past the limit there is no answer.
 */
#include "trade/bottom-time.h"

#include "trade/trade-error.h"

#include <math.h>

#define FOOT   0.3048
#define MINUTE 60.0
/* Pounds per square inch: NIST SP 811, appendix B. */
#define PSI (0.45359237 * 9.80665 / (0.0254 * 0.0254))
/* In feet and minutes: what turning units leaves over must not move an entry to the next row. */
#define SLACK  1e-6
#define GROUPS "ABCDEFGHIJKLMNOZ"

#define N_GROUPS    16
#define NO_LIMIT    0
#define NOT_PRINTED 0

/* U.S. Navy Diving Manual, SS521-AG-PRO-010, revision 7 (2016), table 9-7: depth in feet of
 * seawater, no-stop limit in minutes, then the longest minutes of each group from A. */
static const struct
{
  guint16 depth, limit, group[N_GROUPS];
} rows[] = {
  { 10, NO_LIMIT, { 57, 101, 158, 245, 426, G_MAXUINT16 } },
  { 15, NO_LIMIT, { 36, 60, 88, 121, 163, 217, 297, 449, G_MAXUINT16 } },
  { 20, NO_LIMIT, { 26, 43, 61, 82, 106, 133, 165, 205, 256, 330, 461, G_MAXUINT16 } },
  { 25, 1102, { 20, 33, 47, 62, 78, 97, 117, 140, 166, 198, 236, 285, 354, 469, 992, 1102 } },
  { 30, 371, { 17, 27, 38, 50, 62, 76, 91, 107, 125, 145, 167, 193, 223, 260, 307, 371 } },
  { 35, 232, { 14, 23, 32, 42, 52, 63, 74, 87, 100, 115, 131, 148, 168, 190, 215, 232 } },
  { 40, 163, { 12, 20, 27, 36, 44, 53, 63, 73, 84, 95, 108, 121, 135, 151, 163 } },
  { 45, 125, { 11, 17, 24, 31, 39, 46, 55, 63, 72, 82, 92, 102, 114, 125 } },
  { 50, 92, { 9, 15, 21, 28, 34, 41, 48, 56, 63, 71, 80, 89, 92 } },
  { 55, 74, { 8, 14, 19, 25, 31, 37, 43, 50, 56, 63, 71, 74 } },
  { 60, 63, { 7, 12, 17, 22, 28, 33, 39, 45, 51, 57, 63 } },
  { 70, 48, { 6, 10, 14, 19, 23, 28, 32, 37, 42, 47, 48 } },
  { 80, 39, { 5, 9, 12, 16, 20, 24, 28, 32, 36, 39 } },
  { 90, 33, { 4, 7, 11, 14, 17, 21, 24, 28, 31, 33 } },
  { 100, 25, { 4, 6, 9, 12, 15, 18, 21, 25 } },
  { 110, 20, { 3, 6, 8, 11, 14, 16, 19, 20 } },
  { 120, 15, { 3, 5, 7, 10, 12, 15 } },
  { 130, 12, { 2, 4, 6, 9, 11, 12 } },
  { 140, 10, { 2, 4, 6, 8, 10 } },
  { 150, 8, { NOT_PRINTED, 3, 5, 7, 8 } },
  { 160, 7, { NOT_PRINTED, 3, 5, 6, 7 } },
  { 170, 6, { NOT_PRINTED, NOT_PRINTED, 4, 6 } },
  { 180, 6, { NOT_PRINTED, NOT_PRINTED, 4, 5, 6 } },
  { 190, 5, { NOT_PRINTED, NOT_PRINTED, 3, 5 } },
};

/* The row to enter with, %G_N_ELEMENTS (rows) when the table has none. */
static gsize
row_of (double depth_ft)
{
  gsize row = 0;

  if (!(depth_ft >= -SLACK))
    return G_N_ELEMENTS (rows);
  while (row < G_N_ELEMENTS (rows) && depth_ft > rows[row].depth + SLACK)
    row++;
  return row;
}

gboolean
lb_pneumo_corrected (double reading_m, double *out_depth_m, GError **error)
{
  g_return_val_if_fail (out_depth_m, FALSE);

  const double reading = reading_m / FOOT;

  if (!(reading >= -SLACK && reading <= 200 + SLACK)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "A pneumofathometer reading of %.0f fsw has no correction: "
                 "the table goes from 0 to 200 fsw",
                 reading);
    return FALSE;
  }

  /* U.S. Navy Diving Manual, table 9-1: 1 fsw to 100 fsw, 2 fsw from 101 to 200. */
  *out_depth_m = reading_m + (reading <= 100 + SLACK ? 1 : 2) * FOOT;
  return TRUE;
}

gboolean
lb_no_stop_limit (double depth_m, LbNoStop *out_limit, GError **error)
{
  g_return_val_if_fail (out_limit, FALSE);

  const gsize row = row_of (depth_m / FOOT);

  if (row == G_N_ELEMENTS (rows)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "%.0f fsw is outside the no-stop table, which goes from 0 to 190 fsw: "
                 "the diving supervisor decides",
                 depth_m / FOOT);
    return FALSE;
  }

  out_limit->table_depth_m = rows[row].depth * FOOT;
  out_limit->limit_s = rows[row].limit == NO_LIMIT ? (double) INFINITY : rows[row].limit * MINUTE;
  return TRUE;
}

char
lb_repetitive_group (double depth_m, double bottom_time_s)
{
  const gsize row = row_of (depth_m / FOOT);
  /* Bottom time is rounded up to whole minutes. */
  const double minutes = ceil (bottom_time_s / MINUTE - SLACK);

  if (row == G_N_ELEMENTS (rows) || !(bottom_time_s >= 0))
    return 0;

  for (gsize i = 0; i < N_GROUPS; i++) {
    const guint16 longest = rows[row].group[i];

    if (longest == G_MAXUINT16 || (longest != NOT_PRINTED && minutes <= longest))
      return GROUPS[i];
  }
  return 0;
}

double
lb_ascent_time (double depth_m)
{
  /* U.S. Navy Diving Manual, table 9-9: 30 ft a minute. */
  return depth_m / (30 * FOOT / MINUTE);
}

gboolean
lb_helmet_supply_pressure (double depth_m, double *out_pa, GError **error)
{
  /* U.S. Navy Diving Manual, chapter 8: psi over the bottom pressure, by the deepest feet. */
  static const struct
  {
    double deepest, over_bottom;
  } bands[] = { { 60, 90 }, { 130, 135 }, { 190, 165 } };
  const double depth = depth_m / FOOT;

  g_return_val_if_fail (out_pa, FALSE);

  for (gsize i = 0; i < G_N_ELEMENTS (bands); i++) {
    if (depth >= -SLACK && depth <= bands[i].deepest + SLACK) {
      *out_pa = (0.445 * depth + bands[i].over_bottom) * PSI;
      return TRUE;
    }
  }

  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
               "No supply pressure is given for %.0f fsw: the bands go from 0 to 190 fsw", depth);
  return FALSE;
}
