/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/bottom-time.h"

#include "trade/dive-table.h"
#include "trade/trade-error.h"

#include <math.h>

#define FOOT   0.3048
#define MINUTE 60.0
/* Of a clock. */
#define MINUTE_US (G_GUINT64_CONSTANT (60) * G_USEC_PER_SEC)
/* Pounds per square inch: NIST SP 811, appendix B. */
#define PSI (0.45359237 * 9.80665 / (0.0254 * 0.0254))
/* In feet and minutes: what turning units leaves over must not move an entry to the next row. */
#define SLACK 1e-6

double
lb_bottom_time_whole (double s)
{
  return ceil (s / MINUTE - SLACK) * MINUTE;
}

double
lb_bottom_time (gint64 left_surface_us, gint64 left_bottom_us)
{
  if (left_surface_us == 0 || left_bottom_us <= left_surface_us)
    return (double) NAN;
  /* Exact, so that a microsecond over is a minute more; and unsigned, since the times of a damaged
   * file can lie further apart than a signed difference holds. */
  const guint64 span_us = (guint64) left_bottom_us - (guint64) left_surface_us;

  return (double) (span_us / MINUTE_US + (span_us % MINUTE_US != 0)) * MINUTE;
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
  return lb_dive_table_limit (NULL, depth_m, out_limit, error);
}

char
lb_repetitive_group (double depth_m, double bottom_time_s)
{
  return lb_dive_table_group (NULL, depth_m, bottom_time_s);
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
