/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/cylinder.h"

#include "trade/oxygen-state.h"
#include "trade/trade-error.h"

#include <math.h>

/* Pounds per square inch: NIST SP 811, appendix B. */
#define PSI (0.45359237 * 9.80665 / (0.0254 * 0.0254))
/* Of a cylinder: what conversion leaves over is no reason for one more. */
#define COUNT_SLACK 1e-9

static gboolean
refuse (GError **error, const char *message)
{
  g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, message);
  return FALSE;
}

gboolean
lb_cylinder_water_volume (const LbCylinder *cylinder, double *out_m3, GError **error)
{
  double ratio;

  g_return_val_if_fail (cylinder && out_m3, FALSE);

  if (!(cylinder->content_m3 > 0 && isfinite (cylinder->content_m3)))
    return refuse (error, "A cylinder has no content: give its cubic feet as sold");
  if (!(cylinder->residual_pa > 0 && cylinder->full_pa > cylinder->residual_pa)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "A cylinder filled to %.0f psi cannot be used down to %.0f psi: "
                 "the residual is above 0 and below the full pressure",
                 cylinder->full_pa / PSI, cylinder->residual_pa / PSI);
    return FALSE;
  }
  if (!lb_oxygen_free_ratio (cylinder->full_pa, LB_FREE_GAS_K, &ratio, error))
    return FALSE;

  /* All the gas in it is counted, the last atmosphere too: whether suppliers do is not known, and
   * the two differ by 0.6 % of the content. */
  *out_m3 = cylinder->content_m3 / ratio;
  return TRUE;
}

gboolean
lb_cylinder_content (const LbCylinder *cylinder,
                     double gauge_pa,
                     double temperature_k,
                     double *out_m3,
                     GError **error)
{
  double room_m3, ratio;

  g_return_val_if_fail (cylinder && out_m3, FALSE);

  if (!(gauge_pa >= 0))
    return refuse (error, "A gauge shows no less than 0: read the cylinder again");
  if (!lb_cylinder_water_volume (cylinder, &room_m3, error) ||
      !lb_oxygen_free_ratio (gauge_pa, temperature_k, &ratio, error))
    return FALSE;

  *out_m3 = room_m3 * ratio;
  return TRUE;
}

gboolean
lb_cylinder_usable (const LbCylinder *cylinder,
                    double temperature_k,
                    double *out_m3,
                    GError **error)
{
  double left_m3;

  g_return_val_if_fail (cylinder && out_m3, FALSE);

  if (!lb_cylinder_content (cylinder, cylinder->residual_pa, temperature_k, &left_m3, error))
    return FALSE;
  /* In great cold the gauge of a full one may show the residual from the start. */
  *out_m3 = MAX (0, cylinder->content_m3 - left_m3);
  return TRUE;
}

gboolean
lb_cylinder_full_gauge (const LbCylinder *cylinder,
                        double temperature_k,
                        double *out_pa,
                        GError **error)
{
  double density;

  g_return_val_if_fail (cylinder && out_pa, FALSE);

  if (!(temperature_k >= LB_OXYGEN_K_LEAST && temperature_k <= LB_OXYGEN_K_MOST)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "A cylinder at %.0f °C is outside −50 to 60 °C: read its temperature again",
                 temperature_k - 273.15);
    return FALSE;
  }
  if (!lb_oxygen_density (cylinder->full_pa + LB_FREE_GAS_PA, LB_FREE_GAS_K, &density, error))
    return FALSE;

  *out_pa = lb_oxygen_pressure (density, temperature_k) - LB_FREE_GAS_PA;
  return TRUE;
}

gboolean
lb_cylinder_feeds (const LbCylinder *cylinder, double setting_pa, GError **error)
{
  g_return_val_if_fail (cylinder, FALSE);

  if (cylinder->residual_pa > setting_pa)
    return TRUE;
  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
               "The regulator is set to %.0f psi and the cylinder used down to %.0f psi: "
               "change cylinders while more is left than the setting",
               setting_pa / PSI, cylinder->residual_pa / PSI);
  return FALSE;
}

double
lb_cylinders_needed (double need_m3, double first_m3, double usable_m3)
{
  if (isnan (need_m3) || isnan (first_m3) || !(usable_m3 > 0))
    return (double) NAN;
  if (need_m3 <= 0)
    return 0;
  return 1 + MAX (0, ceil ((need_m3 - first_m3) / usable_m3 - COUNT_SLACK));
}

double
lb_cylinder_changeover (guint change, double first_m3, double usable_m3)
{
  return first_m3 + change * usable_m3;
}
