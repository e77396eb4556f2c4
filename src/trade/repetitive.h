/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/dive-table.h"

#include <glib.h>

G_BEGIN_DECLS

/* Diving again on the same day, by the U.S. Navy air tables: what the group of the last dive becomes
 * on the surface, what it takes off the next limit, and so how much bottom time without stops a diver
 * still has. Past a limit, and wherever the tables are silent, there is no answer: the diving
 * supervisor decides. No decompression schedule is ever made. */

typedef enum {
  LB_INTERVAL_ONE_DIVE, /* under 10 minutes: both dives are one */
  LB_INTERVAL_GROUP,    /* the diver is in a group still */
  LB_INTERVAL_OVER,     /* past the table: the next dive is no repetitive one */
} LbIntervalKind;

typedef struct
{
  LbIntervalKind kind;
  char group; /* after the interval; 0 unless LB_INTERVAL_GROUP */
} LbInterval;

/**
 * lb_surface_interval:
 * @group: 'A' to 'O' or 'Z', after the last dive
 * @interval_s: from reaching the surface to leaving it again; begun minutes don't count
 *
 * Refuses any other letter and a negative interval.
 */
gboolean lb_surface_interval (char group, double interval_s, LbInterval *out, GError **error);

/**
 * lb_residual_time:
 * @depth_m: corrected depth of the dive to come
 * @group: at its start
 * @out_s: (out): to be taken as spent at that depth; untouched on failure
 *
 * Refuses any other letter, a depth outside 0 to 100 fsw, and the cells that the table leaves empty.
 */
gboolean lb_residual_time (double depth_m, char group, double *out_s, GError **error);

/* A dive that was made. Times are UTC microseconds, 0 where not written down; the depth is the
 * deepest, as read on the pneumofathometer, NAN where not written down. */
typedef struct
{
  gint64 left_surface_us, left_bottom_us, reached_surface_us;
  double depth_m;
} LbDive;

/* Whether the bottom time left can be told, and if not why. */
typedef enum {
  LB_DIVE_LEFT_KNOWN,
  LB_DIVE_LEFT_NOT_WRITTEN, /* a time or a depth is missing */
  LB_DIVE_LEFT_OUT_OF_ORDER,
  LB_DIVE_LEFT_PAST_LIMIT,
  LB_DIVE_LEFT_OUTSIDE,   /* a depth or group that the tables don't have */
  LB_DIVE_LEFT_OWN_TABLE, /* it has no surface intervals */
} LbDiveLeftState;

typedef struct
{
  LbDiveLeftState state; /* the rest holds only when known */
  char group;            /* at the planned start; 0 when the dive is no repetitive one */
  gboolean is_one_dive;  /* the last dive goes on: less than 10 minutes on the surface */
  double limit_s;        /* by the row of the depth; INFINITY where the table prints none */
  double residual_s;     /* of earlier dives; NAN where none is printed and none is needed */
  double spent_s;        /* bottom time of the dive that goes on, else 0 */
  double open_s;         /* limit less both, never under 0 */
} LbDiveLeft;

/**
 * lb_dive_left:
 * @table: (nullable): the supervisor's own table; only a first dive can be reckoned with one
 * @dives: the diver's dives in order of time, back to a stay of 16 hours on the surface, which ends
 *   every group
 * @depth_m: planned, as it will be read on the pneumofathometer
 * @start_us: planned
 *
 * How much bottom time without stops is left for the dive planned.
 */
LbDiveLeft lb_dive_left (const LbDiveTable *table,
                         const LbDive *dives,
                         gsize n_dives,
                         double depth_m,
                         gint64 start_us);

/**
 * lb_dive_left_reason:
 *
 * Returns: why it cannot be told, a sentence to be looked up at the edge; "" when it is known
 */
const char *lb_dive_left_reason (LbDiveLeftState state);

G_END_DECLS
