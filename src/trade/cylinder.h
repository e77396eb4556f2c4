/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* An oxygen cylinder as it is sold: so much free gas (70 °F, 1 atm) when its gauge shows so much at
 * 70 °F; and the pressure down to which the crew uses it. Letters for sizes differ between
 * suppliers and say nothing here. */
typedef struct
{
  double content_m3;  /* all the free gas in it */
  double full_pa;     /* gauge, at 70 °F */
  double residual_pa; /* gauge: it is changed here */
} LbCylinder;

/**
 * lb_cylinder_water_volume:
 *
 * The room inside, which is what content and pressure together say. Refuses a content, a full
 * pressure or a residual that is not above 0, a residual that is not below the full pressure, and
 * a pressure outside the equation of state.
 */
gboolean lb_cylinder_water_volume (const LbCylinder *cylinder, double *out_m3, GError **error);

/**
 * lb_cylinder_content:
 * @gauge_pa: what the gauge shows now, 0 to any pressure of the equation of state
 * @temperature_k: of the gas
 *
 * Free gas in it: the whole content at the full pressure and 70 °F.
 */
gboolean lb_cylinder_content (const LbCylinder *cylinder,
                              double gauge_pa,
                              double temperature_k,
                              double *out_m3,
                              GError **error);

/**
 * lb_cylinder_usable:
 * @temperature_k: of the gas while it is used
 *
 * What a full one gives before its gauge shows the residual. Work it out once a job.
 */
gboolean lb_cylinder_usable (const LbCylinder *cylinder,
                             double temperature_k,
                             double *out_m3,
                             GError **error);

/**
 * lb_cylinder_full_gauge:
 *
 * What the gauge of a full, closed one shows at another temperature: its density does not change.
 */
gboolean lb_cylinder_full_gauge (const LbCylinder *cylinder,
                                 double temperature_k,
                                 double *out_pa,
                                 GError **error);

/**
 * lb_cylinder_feeds:
 * @setting_pa: gauge, as set on the regulator
 *
 * Returns: %FALSE with %LB_TRADE_ERROR_DOMAIN when the cylinder would be used down to the setting or
 *   under it: a regulator holds its setting only while more stands before it.
 */
gboolean lb_cylinder_feeds (const LbCylinder *cylinder, double setting_pa, GError **error);

/**
 * lb_cylinders_needed:
 * @need_m3: free gas, 0 or more
 * @first_m3: usable gas left in the cylinder on line; one full one's when it is full
 * @usable_m3: of each full one, above 0
 *
 * Returns: how many are used from, the one on line included; as a double, since a need is no
 *   smaller for being absurd; NAN when any of the three is not a number.
 */
double lb_cylinders_needed (double need_m3, double first_m3, double usable_m3);

/**
 * lb_cylinder_changeover:
 * @change: from 0
 *
 * Returns: m³ of free gas used since the start when this change comes.
 */
double lb_cylinder_changeover (guint change, double first_m3, double usable_m3);

G_END_DECLS
