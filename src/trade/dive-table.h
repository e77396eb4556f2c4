/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/bottom-time.h"

#include <glib.h>

G_BEGIN_DECLS

/* A table of no-stop limits: the U.S. Navy's, which is built in, or the supervisor's own. Where a
 * function takes a table, NULL is the Navy's. Nothing here makes a decompression schedule. */

#define LB_DIVE_ROWS_MAX   200
#define LB_DIVE_GROUPS_MAX 26

#define LB_DIVE_NO_LIMIT    0           /* a limit: none is printed at this depth */
#define LB_DIVE_NOT_PRINTED 0           /* a group's time: an empty cell */
#define LB_DIVE_ANY_LONGER  G_MAXUINT16 /* a group's time: the highest group of this depth */

/* As printed: the depth in the table's unit, times in minutes. */
typedef struct
{
  double depth;
  guint16 limit;
  guint16 group[LB_DIVE_GROUPS_MAX]; /* longest time of each group */
} LbDiveRow;

/* Rows from shallow to deep, each limit no longer than that of the row before. */
typedef struct
{
  gboolean is_metric;                  /* msw, else fsw */
  char groups[LB_DIVE_GROUPS_MAX + 1]; /* a letter for each, in order; "" when it has none */
  gsize n_rows;
  LbDiveRow rows[LB_DIVE_ROWS_MAX];
} LbDiveTable;

/**
 * lb_dive_table_limit:
 * @table: (nullable):
 * @depth_m: corrected depth
 *
 * The limit by the exact or next deeper row; refuses depths under 0 and past the last row.
 */
gboolean lb_dive_table_limit (const LbDiveTable *table,
                              double depth_m,
                              LbNoStop *out_limit,
                              GError **error);

/**
 * lb_dive_table_group:
 * @table: (nullable):
 *
 * Returns: the letter by the exact or next deeper row and the exact or next longer time; 0 when the
 *   time is past the limit, the depth outside the table, or the table has no groups.
 */
char lb_dive_table_group (const LbDiveTable *table, double depth_m, double bottom_time_s);

G_END_DECLS
