/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The crane's own capacity chart. The chart of a land crane on a barge must first be reduced for
 * list, trim, wave, wind and its place on deck, by the maker or a qualified person (29 CFR
 * 1926.1437(n)(1), (2)): what is entered here is taken to be that chart. */
#define LB_CRANE_ROWS_MAX 200

typedef struct
{
  double radius_m;
  double capacity_n;
} LbCraneRow;

typedef struct
{
  guint n_rows;
  LbCraneRow rows[LB_CRANE_ROWS_MAX];
} LbCraneChart;

typedef enum {
  LB_CRANE_CHART_SOUND,
  LB_CRANE_CHART_EMPTY,
  LB_CRANE_CHART_RADIUS,         /* not a number above 0 */
  LB_CRANE_CHART_CAPACITY,       /* not a number above 0 */
  LB_CRANE_CHART_RADIUS_ORDER,   /* not larger than that of the row before */
  LB_CRANE_CHART_CAPACITY_ORDER, /* more than that of the shorter radius before */
} LbCraneChartFault;

/* The first fault of a chart; @out_row is the row it is in, from 0. */
LbCraneChartFault lb_crane_chart_fault (const LbCraneChart *chart, guint *out_row);

/**
 * lb_crane_capacity:
 * @chart: a sound one
 * @out_row: (out): the row that counts; untouched on failure
 *
 * The row of that radius or the next larger one: a capacity between two rows is never reckoned. A
 * radius under the first row takes the first row. Refuses one beyond the last.
 */
gboolean lb_crane_capacity (const LbCraneChart *chart,
                            double radius_m,
                            LbCraneRow *out_row,
                            GError **error);

/* How the barge lies, and how the crane stands on it. */
typedef struct
{
  double radius_m;           /* measured with the barge level */
  double tip_height_m;       /* of the boom tip above the foot of the crane */
  double list_rad, trim_rad; /* either sign */
  double most_rad; /* the least of the maker's and the qualified person's limit; NAN for neither */
} LbCraneStand;

/* 29 CFR 1926.1437(n)(3): list and trim of a barge are each at most the least of 5°, the maker's
 * figure and the qualified person's. */
#define LB_CRANE_LIST_MOST (5 * G_PI / 180)

/**
 * lb_crane_radius:
 * @out_radius_m: (out): untouched on failure
 *
 * The radius with the boom swung down the slope of the deck: the tip goes out by its height times
 * the slope, √(tan² list + tan² trim). Refuses list or trim over the limit.
 */
gboolean lb_crane_radius (const LbCraneStand *stand, double *out_radius_m, GError **error);

typedef struct
{
  double radius_m; /* grown by the slope of the deck */
  LbCraneRow row;  /* of the chart, that counts */
  double share;    /* of its capacity; over 1 is too much */
} LbCraneShare;

/* A load on the hook against the chart; refuses as the two above, and a load that is no number. */
gboolean lb_crane_share (const LbCraneChart *chart,
                         const LbCraneStand *stand,
                         double load_n,
                         LbCraneShare *out_share,
                         GError **error);

G_END_DECLS
