/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The no-stop limits and repetitive groups of the U.S. Navy air table, and how any such table is
 * entered.
 *
 * Rows are kept as printed, in feet or metres and minutes; metres and seconds are turned at the
 * edge. Depth is a length in seawater, so a foot of it is a foot.
 *
 * Invariants:
 * 1. A table is entered at the exact or next deeper depth and the exact or next longer time.
 * 2. Nothing here makes a decompression schedule: past the limit there is no answer.
 */
#include "trade/dive-table.h"

#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

#define FOOT   0.3048
#define MINUTE 60.0
/* In feet or metres, and minutes: what turning units leaves over must not move an entry to the next
 * row. */
#define SLACK 1e-6

/* U.S. Navy Diving Manual, SS521-AG-PRO-010, revision 7 (2016), table 9-7: depth in feet of
 * seawater, no-stop limit in minutes, then the longest minutes of each group from A. */
static const LbDiveTable navy = {
  .groups = "ABCDEFGHIJKLMNOZ",
  .n_rows = 24,
  .rows = {
    { 10, LB_DIVE_NO_LIMIT, { 57, 101, 158, 245, 426, LB_DIVE_ANY_LONGER } },
    { 15, LB_DIVE_NO_LIMIT, { 36, 60, 88, 121, 163, 217, 297, 449, LB_DIVE_ANY_LONGER } },
    { 20, LB_DIVE_NO_LIMIT, { 26, 43, 61, 82, 106, 133, 165, 205, 256, 330, 461, LB_DIVE_ANY_LONGER } },
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
    { 150, 8, { LB_DIVE_NOT_PRINTED, 3, 5, 7, 8 } },
    { 160, 7, { LB_DIVE_NOT_PRINTED, 3, 5, 6, 7 } },
    { 170, 6, { LB_DIVE_NOT_PRINTED, LB_DIVE_NOT_PRINTED, 4, 6 } },
    { 180, 6, { LB_DIVE_NOT_PRINTED, LB_DIVE_NOT_PRINTED, 4, 5, 6 } },
    { 190, 5, { LB_DIVE_NOT_PRINTED, LB_DIVE_NOT_PRINTED, 3, 5 } },
  },
};

/* Metres to a unit of the table's depths. */
static double
unit_of (const LbDiveTable *table)
{
  return table->is_metric ? 1 : FOOT;
}

/* The row to enter with, %NULL when the table has none. */
static const LbDiveRow *
row_of (const LbDiveTable *table, double depth)
{
  if (!(depth >= -SLACK))
    return NULL;
  for (gsize i = 0; i < table->n_rows; i++)
    if (depth <= table->rows[i].depth + SLACK)
      return &table->rows[i];
  return NULL;
}

gboolean
lb_dive_table_limit (const LbDiveTable *table, double depth_m, LbNoStop *out_limit, GError **error)
{
  g_return_val_if_fail (out_limit, FALSE);

  const LbDiveTable *used = table != NULL ? table : &navy;
  const double unit = unit_of (used);
  const LbDiveRow *row = row_of (used, depth_m / unit);

  if (row == NULL) {
    const char *name = used->is_metric ? "msw" : "fsw";

    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "%.0f %s is outside the no-stop table, which goes from 0 to %.0f %s: "
                 "the diving supervisor decides",
                 depth_m / unit, name, used->n_rows > 0 ? used->rows[used->n_rows - 1].depth : 0,
                 name);
    return FALSE;
  }

  out_limit->table_depth_m = row->depth * unit;
  out_limit->limit_s = row->limit == LB_DIVE_NO_LIMIT ? (double) INFINITY : row->limit * MINUTE;
  return TRUE;
}

char
lb_dive_table_group (const LbDiveTable *table, double depth_m, double bottom_time_s)
{
  const LbDiveTable *used = table != NULL ? table : &navy;
  const LbDiveRow *row = row_of (used, depth_m / unit_of (used));
  const double minutes = lb_bottom_time_whole (bottom_time_s) / MINUTE;

  if (row == NULL || !(bottom_time_s >= 0))
    return 0;
  if (row->limit != LB_DIVE_NO_LIMIT && minutes > row->limit)
    return 0;

  const gsize n_groups = strlen (used->groups);

  for (gsize i = 0; i < n_groups; i++) {
    const guint16 longest = row->group[i];

    if (longest == LB_DIVE_ANY_LONGER || (longest != LB_DIVE_NOT_PRINTED && minutes <= longest))
      return used->groups[i];
  }
  return 0;
}
