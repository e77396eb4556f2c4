/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Gauge pressure of the water at a depth, by the Navy's working figure of 0.445 psi a foot. */
double lb_bottom_pressure (double depth_m); /* Pa */

/* Regulator setting, Pa gauge: over-bottom + bottom pressure + hose loss; rounded up to a whole
 * psi, as regulators in the trade are read. */
double lb_regulator_setting (double over_bottom_pa, double depth_m, double hose_loss_pa);

/* How much more free gas flows at depth than at the surface with the same over-bottom pressure:
 * (p_atm + over-bottom + bottom) / (p_atm + over-bottom). Physics estimate, choked flow. */
double lb_oxygen_flow_scale (double over_bottom_pa, double depth_m);

/* kg of oxygen in a volume of free gas at 70 °F and 1 atm. */
double lb_oxygen_mass (double free_gas_m3);

G_END_DECLS
