/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/assumption.h"
#include "trade/barge.h"
#include "trade/crane.h"

#include <glib.h>

G_BEGIN_DECLS

/* Where the capacity of a job's crane comes from, or why there is none. */
typedef enum {
  LB_CAPACITY_UNKNOWN,   /* neither a chart nor a capacity is entered */
  LB_CAPACITY_SET,       /* the job's own number for that radius */
  LB_CAPACITY_CHART,     /* read off the chart */
  LB_CAPACITY_NO_RADIUS, /* there is a chart, and the radius of the lift is not said */
  LB_CAPACITY_NO_HEIGHT, /* the barge is not level, and how high the boom tip is is not said */
  LB_CAPACITY_LIST_OVER, /* list or trim over the limit: no lift */
  LB_CAPACITY_BEYOND,    /* the radius is past the end of the chart */
} LbCapacityFrom;

/* What the crane of a job may lift where it stands: the same for all its piles. */
typedef struct
{
  LbCapacityFrom from;
  double capacity_n; /* known of %LB_CAPACITY_SET and %LB_CAPACITY_CHART, else NAN */
  double level_m;  /* radius with the barge level, of %LB_CAPACITY_CHART and %LB_CAPACITY_BEYOND */
  double radius_m; /* the same grown by list and trim */
  double row_m;    /* radius of the chart's row that counts, of %LB_CAPACITY_CHART */
} LbCraneHere;

/**
 * lb_crane_here:
 * @chart: (nullable): a sound one, or one without rows
 *
 * With a radius the chart counts, and the job's own number only without one.
 */
LbCraneHere lb_crane_here (const LbAssumptions *assumptions, const LbCraneChart *chart);

/* The heel of the job's barge under a load on the hook. */
typedef enum {
  LB_HEEL_NONE,    /* the crane stands on no barge */
  LB_HEEL_SET,     /* the list was read off the device, and counts whatever the load */
  LB_HEEL_UNKNOWN, /* neither the list nor the sizes of the barge are set: taken as level */
  LB_HEEL_NO_RADIUS,
  LB_HEEL_AFLOAT, /* reckoned */
  LB_HEEL_OVER,   /* by its sizes the barge would not float upright: no lift */
} LbHeelFrom;

/**
 * lb_crane_heel:
 * @hook_n: load on the hook, over the side at the radius of the lift, the crane amidships
 * @out_heel: (out): NAN and FALSE but for its heel with %LB_HEEL_SET, and all but with %LB_HEEL_AFLOAT
 */
LbHeelFrom lb_crane_heel (const LbAssumptions *assumptions, double hook_n, LbBargeHeel *out_heel);

/* Whether the barge, if the crane stands on one, lies over its limit; @out_rad is the greater of list
 * and trim. */
gboolean lb_crane_lists_over (const LbAssumptions *assumptions, double *out_rad);

G_END_DECLS
