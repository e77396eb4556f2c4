/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Oxygen as a real gas: the equation of state of Schmidt and Wagner (1985) as Stewart, Jacobsen and
 * Wagner print it (J. Phys. Chem. Ref. Data 20, 917, 1991). Pressures here are absolute. The
 * equation holds to 300 K and 80 MPa; a cylinder in the sun is a little past the first. */
#define LB_OXYGEN_K_LEAST     223.15 /* −50 °C */
#define LB_OXYGEN_K_MOST      333.15 /* 60 °C */
#define LB_OXYGEN_PA_MOST     30e6
#define LB_OXYGEN_KG_PER_MOLE 0.0319988
/* The gas constant of the same paper, to which its coefficients were fitted. */
#define LB_OXYGEN_GAS_CONSTANT 8.31434

/* Free gas is oxygen at 70 °F and 1 atm. */
#define LB_FREE_GAS_K  ((70 + 459.67) / 1.8)
#define LB_FREE_GAS_PA 101325.0

/**
 * lb_oxygen_pressure:
 * @density_kg_m3: not negative
 * @temperature_k: above 0
 *
 * Returns: Pa absolute, by the equation itself and without a look at its range.
 */
double lb_oxygen_pressure (double density_kg_m3, double temperature_k);

/**
 * lb_oxygen_density:
 * @pressure_pa: absolute
 * @out_kg_m3: (out): untouched on failure
 *
 * Refuses a temperature outside %LB_OXYGEN_K_LEAST to %LB_OXYGEN_K_MOST and a pressure under 0 or
 * over %LB_OXYGEN_PA_MOST. Some microseconds a call: work a cylinder out once, not once a pile.
 */
gboolean lb_oxygen_density (double pressure_pa,
                            double temperature_k,
                            double *out_kg_m3,
                            GError **error);

/**
 * lb_oxygen_free_ratio:
 * @gauge_pa: as the gauge of a cylinder shows it
 * @out_ratio: (out): m³ of free gas in each m³ of the cylinder
 *
 * Counts all that is in the cylinder, the one atmosphere that stays in it too.
 */
gboolean lb_oxygen_free_ratio (double gauge_pa,
                               double temperature_k,
                               double *out_ratio,
                               GError **error);

G_END_DECLS
