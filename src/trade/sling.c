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

static gboolean
check_rating (double rating_n, GError **error)
{
  if (rating_n > 0 && isfinite (rating_n))
    return TRUE;
  g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                       "The sling has no rating above 0: read it off its tag");
  return FALSE;
}

gboolean
lb_sling_share (double rating_n,
                double load_n,
                guint n_legs,
                double angle_rad,
                double *out_share,
                GError **error)
{
  g_return_val_if_fail (out_share, FALSE);

  double tension_n;

  if (!check_rating (rating_n, error) ||
      !lb_sling_tension (load_n, n_legs, angle_rad, &tension_n, error))
    return FALSE;

  *out_share = tension_n / rating_n;
  return TRUE;
}

gboolean
lb_sling_capacity (double rating_n,
                   guint n_legs,
                   double angle_rad,
                   double *out_load_n,
                   GError **error)
{
  g_return_val_if_fail (out_load_n, FALSE);

  double tension_n;

  /* Of a load of 1 N. */
  if (!check_rating (rating_n, error) ||
      !lb_sling_tension (1, n_legs, angle_rad, &tension_n, error))
    return FALSE;

  *out_load_n = rating_n / tension_n;
  return TRUE;
}

gboolean
lb_choker_capacity (double choker_rating_n,
                    double choke_angle_rad,
                    guint n_legs,
                    double angle_rad,
                    double *out_load_n,
                    GError **error)
{
  if (!(choke_angle_rad >= 0 && choke_angle_rad <= G_PI)) {
    g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                         "The angle of choke is not from 0 to 180°: measure it at the choke");
    return FALSE;
  }
  return lb_sling_capacity (choker_rating_n * lb_choker_share (choke_angle_rad), n_legs, angle_rad,
                            out_load_n, error);
}
