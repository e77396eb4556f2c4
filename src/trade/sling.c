/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/sling.h"

#include "trade/trade-error.h"

#include <math.h>

#define DEGREE (G_PI / 180)
/* In degrees: 30° made of radians and back is still 30°. */
#define ANGLE_SLACK 1e-9

gboolean
lb_sling_factor (double angle_rad, double *out_factor, GError **error)
{
  g_return_val_if_fail (out_factor, FALSE);

  const double angle = angle_rad / DEGREE;

  /* Under 30° from the horizontal no sling is to be used (ASME B30.9). */
  if (!(angle >= 30 - ANGLE_SLACK && angle <= 90 + ANGLE_SLACK)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "A sling at %.0f° from the horizontal is outside 30° to 90°: "
                 "use longer slings or a spreader",
                 angle);
    return FALSE;
  }

  *out_factor = 1 / sin (angle_rad);
  return TRUE;
}

gboolean
lb_sling_tension (double load_n,
                  guint n_legs,
                  double angle_rad,
                  double *out_tension_n,
                  GError **error)
{
  g_return_val_if_fail (out_tension_n, FALSE);

  double factor;

  if (n_legs < 1 || n_legs > 4) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, "A sling has 1 to 4 legs, not %u",
                 n_legs);
    return FALSE;
  }
  if (!lb_sling_factor (angle_rad, &factor, error))
    return FALSE;

  /* Legs are never equally long, so a third and fourth are not counted on. */
  *out_tension_n = load_n / MIN (n_legs, 2) * factor;
  return TRUE;
}

double
lb_choker_share (double choke_angle_rad)
{
  /* ASME B30.9, choker hitch: least angle of choke in degrees, share of the rating kept. */
  static const struct
  {
    double least, share;
  } steps[] = { { 90, 0.87 }, { 60, 0.74 }, { 30, 0.62 } };
  const double angle = choke_angle_rad / DEGREE;

  if (isnan (angle) || angle > 120 + ANGLE_SLACK)
    return isnan (angle) ? angle : 1;

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++) {
    if (angle >= steps[i].least - ANGLE_SLACK)
      return steps[i].share;
  }
  return 0.49;
}
