/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Tension factor of a sling leg at an angle from the horizontal: 1 / sin θ (ASME B30.9 tables).
 * Refuses under 30°, where no sling is to be used, and over 90°. */
gboolean lb_sling_factor (double angle_rad, double *out_factor, GError **error);

/* Tension of one leg, N. One leg carries all; of more than two, two are taken to carry. */
gboolean lb_sling_tension (double load_n,
                           guint n_legs,
                           double angle_rad,
                           double *out_tension_n,
                           GError **error);

/* Share of its choker rating that a choked sling keeps at an angle of choke (ASME B30.9). */
double lb_choker_share (double choke_angle_rad);

G_END_DECLS
