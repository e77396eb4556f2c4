/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/crane.h"

#include "trade/trade-error.h"

#include <math.h>

#define FOOT   0.3048
#define DEGREE (G_PI / 180)
/* Of a metre and of a radian: 40 ft made of metres is still the row of 40 ft, 5° still 5°. */
#define SLACK 1e-9

static gboolean
refuse (const char *fault, GError **error)
{
  g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, fault);
  return FALSE;
}

static gboolean
is_above_zero (double value)
{
  return value > 0 && isfinite (value);
}

LbCraneChartFault
lb_crane_chart_fault (const LbCraneChart *chart, guint *out_row)
{
  g_return_val_if_fail (chart && chart->n_rows <= LB_CRANE_ROWS_MAX, LB_CRANE_CHART_EMPTY);
  g_return_val_if_fail (out_row, LB_CRANE_CHART_EMPTY);

  *out_row = 0;
  for (guint i = 0; i < chart->n_rows; i++) {
    const LbCraneRow *row = &chart->rows[i];

    *out_row = i;
    if (!is_above_zero (row->radius_m))
      return LB_CRANE_CHART_RADIUS;
    if (!is_above_zero (row->capacity_n))
      return LB_CRANE_CHART_CAPACITY;
    if (i > 0 && row->radius_m <= row[-1].radius_m + SLACK)
      return LB_CRANE_CHART_RADIUS_ORDER;
    if (i > 0 && row->capacity_n > row[-1].capacity_n)
      return LB_CRANE_CHART_CAPACITY_ORDER;
  }
  return chart->n_rows > 0 ? LB_CRANE_CHART_SOUND : LB_CRANE_CHART_EMPTY;
}

gboolean
lb_crane_capacity (const LbCraneChart *chart, double radius_m, LbCraneRow *out_row, GError **error)
{
  g_return_val_if_fail (chart && chart->n_rows > 0 && out_row, FALSE);

  if (!(radius_m >= 0))
    return refuse ("The radius is not a number of 0 or more", error);

  for (guint i = 0; i < chart->n_rows; i++) {
    if (radius_m <= chart->rows[i].radius_m + SLACK) {
      *out_row = chart->rows[i];
      return TRUE;
    }
  }

  const double last_m = chart->rows[chart->n_rows - 1].radius_m;

  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
               "A radius of %.1f m (%.1f ft) is beyond the chart, which ends at %.1f m (%.1f ft): "
               "the crane has no capacity there",
               radius_m, radius_m / FOOT, last_m, last_m / FOOT);
  return FALSE;
}

static gboolean
check_slope (const char *name, double slope_rad, double most_rad, GError **error)
{
  if (fabs (slope_rad) <= most_rad + SLACK)
    return TRUE;
  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
               "A %s of %.1f° is over the limit of %.1f° (29 CFR 1926.1437(n)(3)): no lift", name,
               slope_rad / DEGREE, most_rad / DEGREE);
  return FALSE;
}

gboolean
lb_crane_radius (const LbCraneStand *stand, double *out_radius_m, GError **error)
{
  g_return_val_if_fail (stand && out_radius_m, FALSE);

  /* fmin() passes over a limit that is not known. */
  const double most_rad = fmin (LB_CRANE_LIST_MOST, stand->most_rad);

  if (!(stand->radius_m >= 0 && isfinite (stand->radius_m)))
    return refuse ("The radius is not a number of 0 or more", error);
  if (!(stand->tip_height_m >= 0 && isfinite (stand->tip_height_m)))
    return refuse ("The height of the boom tip is not a number of 0 or more", error);
  if (!(most_rad >= 0))
    return refuse ("The limit of list and trim is not a number of 0 or more", error);
  if (!check_slope ("list", stand->list_rad, most_rad, error) ||
      !check_slope ("trim", stand->trim_rad, most_rad, error))
    return FALSE;

  *out_radius_m = stand->radius_m +
                  stand->tip_height_m * hypot (tan (stand->list_rad), tan (stand->trim_rad));
  return TRUE;
}

gboolean
lb_crane_share (const LbCraneChart *chart,
                const LbCraneStand *stand,
                double load_n,
                LbCraneShare *out_share,
                GError **error)
{
  g_return_val_if_fail (chart && stand && out_share, FALSE);

  LbCraneShare share;

  if (!(load_n >= 0 && isfinite (load_n)))
    return refuse ("The load on the hook is not a number of 0 or more", error);
  if (!lb_crane_radius (stand, &share.radius_m, error) ||
      !lb_crane_capacity (chart, share.radius_m, &share.row, error))
    return FALSE;

  share.share = load_n / share.row.capacity_n;
  *out_share = share;
  return TRUE;
}
