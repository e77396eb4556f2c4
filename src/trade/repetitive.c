/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A diver's day by the U.S. Navy air tables. Each dive leaves a group (table 9-7), which falls on
 * the surface (table 9-8, upper part) and is worth minutes already spent at the depth of the next
 * dive (lower part). Those minutes and the next bottom time together give the group after it.
 *
 * Data: lb_dive_left() walks the dives with one Stage: the dive under way, which grows while the
 * diver is up for less than ten minutes, and the group that it began with.
 *
 * Invariants:
 * 1. Whatever is in doubt goes the way that leaves less time: intervals lose their begun minute,
 *    bottom times gain theirs, depths are corrected and go to the next deeper row.
 * 2. A dive past its limit, a missing time and an empty cell each end the reckoning; nothing is
 *    guessed and no schedule is made.
 * 3. The two tables here belong to the Navy's groups: with another table they are not used.
 */
#include "trade/repetitive.h"

#include "trade/msgid.h"
#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

#define FOOT   0.3048
#define MINUTE 60.0
/* In feet and minutes, as in bottom-time.c. */
#define SLACK 1e-6

#define GROUPS   "ABCDEFGHIJKLMNOZ"
#define N_GROUPS 16
/* Under this two dives are one: slides of a government diving centre on the Navy's procedures. */
#define ONE_DIVE_MINUTES 10

/* What is printed in place of a residual time. */
#define BLANK  0           /* cannot be found in the table */
#define USE_30 G_MAXUINT16 /* "+": the row of 30 fsw */

/* U.S. Navy Diving Manual, SS521-AG-PRO-010, revision 7 (2016), table 9-8: for the group after the
 * dive, the last minute on the surface of each new group from A. */
static const guint16 last_minute[N_GROUPS][N_GROUPS] = {
  { 140 },                                                                           /* A */
  { 216, 76 },                                                                       /* B */
  { 271, 131, 55 },                                                                  /* C */
  { 323, 183, 107, 52 },                                                             /* D */
  { 375, 235, 159, 104, 52 },                                                        /* E */
  { 428, 288, 211, 157, 104, 52 },                                                   /* F */
  { 480, 340, 263, 209, 157, 104, 52 },                                              /* G */
  { 532, 392, 316, 261, 209, 157, 104, 52 },                                         /* H */
  { 584, 444, 368, 313, 261, 209, 157, 104, 52 },                                    /* I */
  { 636, 496, 420, 366, 313, 261, 209, 157, 104, 52 },                               /* J */
  { 689, 549, 472, 418, 366, 313, 261, 209, 157, 104, 52 },                          /* K */
  { 741, 601, 524, 470, 418, 366, 313, 261, 209, 157, 104, 52 },                     /* L */
  { 793, 653, 577, 522, 470, 418, 366, 313, 261, 209, 157, 104, 52 },                /* M */
  { 845, 705, 629, 574, 522, 470, 418, 366, 313, 261, 209, 157, 104, 52 },           /* N */
  { 898, 757, 681, 627, 574, 522, 470, 418, 366, 313, 261, 209, 157, 104, 52 },      /* O */
  { 950, 810, 733, 679, 627, 574, 522, 470, 418, 366, 313, 261, 209, 157, 104, 52 }, /* Z */
};

/* The same table: depth in feet of seawater, residual nitrogen time in minutes from group A. Rows
 * beyond 100 fsw were not read and are not held. */
static const struct
{
  guint16 depth, residual[N_GROUPS];
} residual_rows[] = {
  { 10,
    { 58, 101, 159, 246, 427, BLANK, BLANK, BLANK, BLANK, BLANK, BLANK, BLANK, BLANK, BLANK, BLANK,
      BLANK } },
  { 15,
    { 37, 61, 89, 122, 164, 218, 298, 450, BLANK, BLANK, BLANK, BLANK, BLANK, BLANK, BLANK,
      BLANK } },
  { 20, { 27, 44, 62, 83, 106, 134, 166, 206, 257, 331, 462, BLANK, BLANK, BLANK, BLANK, BLANK } },
  { 25, { 21, 34, 48, 63, 79, 98, 118, 141, 167, 198, 237, 286, 354, 470, USE_30, USE_30 } },
  { 30, { 18, 28, 39, 51, 63, 77, 92, 108, 126, 146, 168, 194, 224, 261, 308, 372 } },
  { 35, { 15, 24, 33, 43, 53, 64, 75, 88, 101, 116, 132, 149, 169, 191, 216, 245 } },
  { 40, { 13, 21, 29, 37, 45, 55, 64, 74, 85, 97, 109, 122, 136, 152, 169, 188 } },
  { 45, { 12, 18, 25, 32, 40, 48, 56, 64, 73, 83, 93, 104, 115, 127, 140, 154 } },
  { 50, { 11, 17, 23, 29, 35, 42, 49, 57, 65, 73, 81, 90, 99, 109, 120, 131 } },
  { 55, { 10, 15, 20, 26, 32, 38, 44, 51, 58, 65, 72, 80, 88, 96, 105, 114 } },
  { 60, { 9, 14, 19, 24, 29, 35, 40, 46, 52, 58, 65, 72, 79, 86, 93, 101 } },
  { 70, { 8, 12, 16, 20, 25, 29, 34, 39, 44, 49, 54, 59, 65, 71, 77, 83 } },
  { 80, { 7, 10, 14, 18, 22, 25, 29, 33, 38, 42, 46, 51, 55, 60, 65, 70 } },
  { 90, { 6, 9, 12, 16, 19, 22, 26, 29, 33, 37, 41, 44, 48, 52, 57, 61 } },
  { 100, { 5, 8, 11, 14, 17, 20, 23, 26, 30, 33, 36, 40, 43, 47, 50, 54 } },
};

#define ROW_30 4 /* in residual_rows */

static gboolean
index_of_group (char group, gsize *out_index, GError **error)
{
  const char *at = group != 0 ? strchr (GROUPS, group) : NULL;

  if (at == NULL) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
                 "“%c” is no repetitive group: they go from A to O, and Z",
                 g_ascii_isprint (group) ? group : '?');
    return FALSE;
  }
  *out_index = (gsize) (at - GROUPS);
  return TRUE;
}

gboolean
lb_surface_interval (char group, double interval_s, LbInterval *out, GError **error)
{
  gsize before;

  g_return_val_if_fail (out, FALSE);

  if (!index_of_group (group, &before, error))
    return FALSE;
  if (!(interval_s >= 0)) {
    g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                         "A surface interval is 0 or more: put the dives in order of time");
    return FALSE;
  }

  const double minutes = floor (interval_s / MINUTE + SLACK);

  *out = (LbInterval){ .kind = LB_INTERVAL_OVER };
  if (minutes < ONE_DIVE_MINUTES) {
    out->kind = LB_INTERVAL_ONE_DIVE;
    return TRUE;
  }
  for (gsize after = before + 1; after-- > 0;) {
    if (minutes <= last_minute[before][after]) {
      *out = (LbInterval){ .kind = LB_INTERVAL_GROUP, .group = GROUPS[after] };
      break;
    }
  }
  return TRUE;
}

gboolean
lb_residual_time (double depth_m, char group, double *out_s, GError **error)
{
  const double depth = depth_m / FOOT;
  gsize column, row = 0;

  g_return_val_if_fail (out_s, FALSE);

  if (!index_of_group (group, &column, error))
    return FALSE;
  if (!(depth >= -SLACK && depth <= 100 + SLACK)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "Residual nitrogen times are held from 0 to 100 fsw, not for %.0f fsw: "
                 "the diving supervisor decides",
                 depth);
    return FALSE;
  }

  while (depth > residual_rows[row].depth + SLACK)
    row++;

  guint16 minutes = residual_rows[row].residual[column];
  if (minutes == USE_30)
    minutes = residual_rows[ROW_30].residual[column];
  if (minutes == BLANK) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "The table gives no residual nitrogen time for group %c at %.0f fsw: "
                 "the diving supervisor decides",
                 group, depth);
    return FALSE;
  }

  *out_s = minutes * MINUTE;
  return TRUE;
}

/* A dive, or several with hardly a break between them. */
typedef struct
{
  double depth_m;  /* deepest, corrected */
  double bottom_s; /* in whole minutes */
  char before;     /* group it began with, 0 for none */
  gint64 up_us;
} Stage;

/* The dive as a stage of its own, or why it is none. */
static LbDiveLeftState
read_dive (const LbDive *dive, Stage *out)
{
  const double bottom_s = lb_bottom_time (dive->left_surface_us, dive->left_bottom_us);
  double depth_m;

  if (dive->left_surface_us == 0 || dive->left_bottom_us == 0 || dive->reached_surface_us == 0 ||
      isnan (dive->depth_m))
    return LB_DIVE_LEFT_NOT_WRITTEN;
  if (isnan (bottom_s) || dive->reached_surface_us < dive->left_bottom_us)
    return LB_DIVE_LEFT_OUT_OF_ORDER;
  if (!lb_pneumo_corrected (dive->depth_m, &depth_m, NULL))
    return LB_DIVE_LEFT_OUTSIDE;

  *out = (Stage){ .depth_m = depth_m, .bottom_s = bottom_s, .up_us = dive->reached_surface_us };
  return LB_DIVE_LEFT_KNOWN;
}

/* The group that the stage leaves its diver in. */
static LbDiveLeftState
group_after (const Stage *stage, char *out_group)
{
  double residual_s = 0;
  LbNoStop no_stop;

  if (!lb_no_stop_limit (stage->depth_m, &no_stop, NULL))
    return LB_DIVE_LEFT_OUTSIDE;
  if (stage->before != 0 && !lb_residual_time (stage->depth_m, stage->before, &residual_s, NULL))
    return LB_DIVE_LEFT_OUTSIDE;
  *out_group = lb_repetitive_group (stage->depth_m, stage->bottom_s + residual_s);
  return *out_group != 0 ? LB_DIVE_LEFT_KNOWN : LB_DIVE_LEFT_PAST_LIMIT;
}

/* The stage, and how long after it its diver goes down again. */
static LbDiveLeftState
go_down_again (const Stage *stage, gint64 down_us, char *out_after, LbInterval *out_interval)
{
  const LbDiveLeftState state = group_after (stage, out_after);

  if (state != LB_DIVE_LEFT_KNOWN)
    return state;
  if (down_us < stage->up_us)
    return LB_DIVE_LEFT_OUT_OF_ORDER;

  const double interval_s = (double) ((guint64) down_us - (guint64) stage->up_us) / G_USEC_PER_SEC;
  const gboolean is_read = lb_surface_interval (*out_after, interval_s, out_interval, NULL);

  g_assert (is_read);
  return LB_DIVE_LEFT_KNOWN;
}

/* All the dives; the last stage is left open. */
static LbDiveLeftState
walk (const LbDive *dives, gsize n_dives, Stage *stage)
{
  LbDiveLeftState state = read_dive (&dives[0], stage);

  for (gsize i = 1; i < n_dives && state == LB_DIVE_LEFT_KNOWN; i++) {
    LbInterval interval;
    Stage next;
    char after;

    state = read_dive (&dives[i], &next);
    if (state == LB_DIVE_LEFT_KNOWN)
      state = go_down_again (stage, dives[i].left_surface_us, &after, &interval);
    if (state != LB_DIVE_LEFT_KNOWN)
      break;

    if (interval.kind == LB_INTERVAL_ONE_DIVE) {
      next.depth_m = MAX (next.depth_m, stage->depth_m);
      next.bottom_s += stage->bottom_s;
      next.before = stage->before;
    } else {
      next.before = interval.group;
    }
    *stage = next;
  }
  return state;
}

/* What the earlier dives leave of the planned one's limit: group, residual and spent time, and the
 * depth at which it is to be read. */
static LbDiveLeftState
look_back (const LbDive *dives, gsize n_dives, gint64 start_us, double *depth_m, LbDiveLeft *left)
{
  LbInterval interval;
  Stage last;
  char after, base;
  LbDiveLeftState state = walk (dives, n_dives, &last);

  if (state == LB_DIVE_LEFT_KNOWN)
    state = go_down_again (&last, start_us, &after, &interval);
  if (state != LB_DIVE_LEFT_KNOWN)
    return state;

  left->is_one_dive = interval.kind == LB_INTERVAL_ONE_DIVE;
  if (left->is_one_dive) {
    *depth_m = MAX (*depth_m, last.depth_m);
    left->spent_s = last.bottom_s;
    left->group = after;
    base = last.before;
  } else {
    left->group = base = interval.group;
  }
  if (base != 0 && !lb_residual_time (*depth_m, base, &left->residual_s, NULL))
    left->residual_s = (double) NAN;
  return LB_DIVE_LEFT_KNOWN;
}

LbDiveLeft
lb_dive_left (const LbDiveTable *table,
              const LbDive *dives,
              gsize n_dives,
              double depth_m,
              gint64 start_us)
{
  LbDiveLeft left = { .state = LB_DIVE_LEFT_KNOWN };
  LbNoStop no_stop;
  double corrected_m;

  g_return_val_if_fail (dives != NULL || n_dives == 0, left);

  if (isnan (depth_m) || (n_dives > 0 && start_us == 0))
    return (LbDiveLeft){ .state = LB_DIVE_LEFT_NOT_WRITTEN };
  if (!lb_pneumo_corrected (depth_m, &corrected_m, NULL))
    return (LbDiveLeft){ .state = LB_DIVE_LEFT_OUTSIDE };
  if (table != NULL && n_dives > 0)
    return (LbDiveLeft){ .state = LB_DIVE_LEFT_OWN_TABLE };

  if (n_dives > 0)
    left.state = look_back (dives, n_dives, start_us, &corrected_m, &left);
  if (left.state == LB_DIVE_LEFT_KNOWN && !lb_dive_table_limit (table, corrected_m, &no_stop, NULL))
    left.state = LB_DIVE_LEFT_OUTSIDE;
  if (left.state != LB_DIVE_LEFT_KNOWN)
    return (LbDiveLeft){ .state = left.state };

  left.limit_s = no_stop.limit_s;
  if (isinf (left.limit_s)) {
    left.open_s = left.limit_s;
  } else if (isnan (left.residual_s)) {
    return (LbDiveLeft){ .state = LB_DIVE_LEFT_OUTSIDE };
  } else {
    const double open_s = left.limit_s - left.residual_s - left.spent_s;

    /* A dive that goes on at a greater depth may be past that depth's limit from the start. */
    if (left.is_one_dive && open_s < 0)
      return (LbDiveLeft){ .state = LB_DIVE_LEFT_PAST_LIMIT };
    left.open_s = MAX (0, open_s);
  }
  return left;
}

const char *
lb_dive_left_reason (LbDiveLeftState state)
{
  switch (state) {
  case LB_DIVE_LEFT_KNOWN:
    return "";
  case LB_DIVE_LEFT_NOT_WRITTEN:
    return N_ ("A depth or a time of the diver’s dives is not written down: add it, or ask the "
               "diving supervisor");
  case LB_DIVE_LEFT_OUT_OF_ORDER:
    return N_ ("The times of the diver’s dives overlap: correct them, or ask the diving "
               "supervisor");
  case LB_DIVE_LEFT_PAST_LIMIT:
    return N_ ("Past the no-stop limit: the diving supervisor’s table decides");
  case LB_DIVE_LEFT_OUTSIDE:
    return N_ ("A depth or a group is outside the tables: the diving supervisor decides");
  case LB_DIVE_LEFT_OWN_TABLE:
    return N_ ("The job’s own table says nothing of a second dive: the diving supervisor decides");
  }
  g_return_val_if_reached ("");
}
