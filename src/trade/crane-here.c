/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/crane-here.h"

#include <math.h>

/* Standard gravity, exact by definition (NIST SP 811). */
#define GRAVITY 9.80665
/* Of a radian: a limit of 5° that was typed is not passed by 5°. */
#define SLACK 1e-9

static gboolean
has_barge_sizes (const double *value)
{
  for (int id = LB_ASSUME_BARGE_LENGTH; id <= LB_ASSUME_BARGE_GRAVITY; id++)
    if (!(value[id] > 0))
      return FALSE;
  return TRUE;
}

LbHeelFrom
lb_crane_heel (const LbAssumptions *assumptions, double hook_n, LbBargeHeel *out_heel)
{
  g_return_val_if_fail (assumptions && out_heel, LB_HEEL_UNKNOWN);

  const double *value = assumptions->value;
  const double unknown = (double) NAN;
  const LbBarge barge = {
    .length_m = value[LB_ASSUME_BARGE_LENGTH],
    .beam_m = value[LB_ASSUME_BARGE_BEAM],
    .draft_m = value[LB_ASSUME_BARGE_DRAFT],
    .freeboard_m = value[LB_ASSUME_BARGE_FREEBOARD],
    .gravity_m = value[LB_ASSUME_BARGE_GRAVITY],
    .water_kg_per_m3 = value[LB_ASSUME_WATER_DENSITY],
  };

  *out_heel = (LbBargeHeel){ unknown, unknown, unknown, unknown, unknown, FALSE, FALSE };
  if (!(value[LB_ASSUME_ON_BARGE] > 0))
    return LB_HEEL_NONE;
  if (assumptions->is_own[LB_ASSUME_LIST] || value[LB_ASSUME_LIST] > 0) {
    out_heel->heel_rad = value[LB_ASSUME_LIST];
    return LB_HEEL_SET;
  }
  if (!has_barge_sizes (value))
    return LB_HEEL_UNKNOWN;
  if (!(value[LB_ASSUME_CRANE_RADIUS] > 0))
    return LB_HEEL_NO_RADIUS;
  if (!isnan (hook_n) &&
      !lb_barge_heel (&barge, hook_n, value[LB_ASSUME_CRANE_RADIUS], out_heel, NULL))
    return LB_HEEL_OVER;
  return LB_HEEL_AFLOAT;
}

gboolean
lb_crane_lists_over (const LbAssumptions *assumptions, double *out_rad)
{
  g_return_val_if_fail (assumptions && out_rad, FALSE);

  const double *value = assumptions->value;

  *out_rad = MAX (value[LB_ASSUME_LIST], value[LB_ASSUME_TRIM]);
  return value[LB_ASSUME_ON_BARGE] > 0 && *out_rad > value[LB_ASSUME_LIST_LIMIT] + SLACK;
}

/* By the chart, whose radius is said. */
static LbCraneHere
read_chart (const double *value, const LbCraneChart *chart)
{
  const gboolean on_barge = value[LB_ASSUME_ON_BARGE] > 0;
  const LbCraneStand stand = {
    .radius_m = value[LB_ASSUME_CRANE_RADIUS],
    .tip_height_m = value[LB_ASSUME_TIP_HEIGHT],
    .list_rad = on_barge ? value[LB_ASSUME_LIST] : 0,
    .trim_rad = on_barge ? value[LB_ASSUME_TRIM] : 0,
    .most_rad = value[LB_ASSUME_LIST_LIMIT],
  };
  LbCraneHere here = { .capacity_n = (double) NAN, .level_m = stand.radius_m };
  LbCraneRow row;

  if (stand.list_rad + stand.trim_rad > 0 && !(stand.tip_height_m > 0)) {
    here.from = LB_CAPACITY_NO_HEIGHT;
  } else if (!lb_crane_radius (&stand, &here.radius_m, NULL)) {
    here.from = LB_CAPACITY_LIST_OVER;
  } else if (!lb_crane_capacity (chart, here.radius_m, &row, NULL)) {
    here.from = LB_CAPACITY_BEYOND;
  } else {
    here.from = LB_CAPACITY_CHART;
    here.capacity_n = row.capacity_n;
    here.row_m = row.radius_m;
  }
  return here;
}

LbCraneHere
lb_crane_here (const LbAssumptions *assumptions, const LbCraneChart *chart)
{
  g_return_val_if_fail (assumptions, ((LbCraneHere){ .capacity_n = (double) NAN }));

  const double *value = assumptions->value;
  const gboolean has_chart = chart != NULL && chart->n_rows > 0;
  LbCraneHere here = { .capacity_n = (double) NAN };
  double slope_rad;

  if (lb_crane_lists_over (assumptions, &slope_rad)) {
    here.from = LB_CAPACITY_LIST_OVER;
  } else if (has_chart && value[LB_ASSUME_CRANE_RADIUS] > 0) {
    here = read_chart (value, chart);
  } else if (value[LB_ASSUME_CRANE_CAPACITY] > 0) {
    here.from = LB_CAPACITY_SET;
    here.capacity_n = value[LB_ASSUME_CRANE_CAPACITY] * GRAVITY;
  } else {
    here.from = has_chart ? LB_CAPACITY_NO_RADIUS : LB_CAPACITY_UNKNOWN;
  }
  return here;
}
