/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/ledger.h"

G_BEGIN_DECLS

/* What is known of a shift's record, plain, for the window, the shell and the daily report alike. */

/* What the record of a dive can lack. */
typedef enum {
  LB_GAP_SUPERVISOR, /* of the shift */
  LB_GAP_IN_CHARGE,
  LB_GAP_TEAM,
  LB_GAP_WEATHER,
  LB_GAP_WATER_TEMPERATURE,
  LB_GAP_CURRENT,
  LB_GAP_MODE, /* of a dive */
  LB_GAP_WORK,
  LB_GAP_VISIBILITY,
  LB_GAP_DEPTH,
  LB_GAP_TIME,
  LB_GAP_BOTTOM_TIME,
} LbRecordGapKind;

#define LB_N_RECORD_GAPS (LB_GAP_BOTTOM_TIME + 1)

typedef struct
{
  LbRecordGapKind kind;
  const LbEntry *dive; /* NULL for one of the shift */
} LbRecordGap;

/* As many of the last shifts that used any are asked for the mean. Common practice: long enough to
 * even out one bad day, short enough to follow a crew that learns. */
#define LB_STOCK_MEAN_SHIFTS 5

/* What is on hand of rods or oxygen cylinders at the end of a shift, from the last count. */
typedef struct
{
  int counted_shift;      /* the count's; -1 before there is one, and then nothing is known */
  double counted;         /* at the end of that shift */
  double delivered, used; /* in the shifts after it */
  double left;            /* NAN when not counted; below 0 when the count cannot have been right */
  guint n_mean;           /* shifts that the mean is of, 0 for none */
  double mean;            /* used in each, NAN when none used any */
  double shifts_left;     /* NAN when either is not known */
} LbStock;

G_END_DECLS
