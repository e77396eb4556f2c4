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

/**
 * lb_sling_capacity:
 * @rating_n: what one leg is rated for, hanging straight
 *
 * The load that @n_legs may carry at an angle from the horizontal: rating × legs that carry × sin θ.
 * Refuses as lb_sling_tension() does, and a rating that is no number above 0.
 */
gboolean lb_sling_capacity (double rating_n,
                            guint n_legs,
                            double angle_rad,
                            double *out_load_n,
                            GError **error);

/**
 * lb_choker_capacity:
 * @choker_rating_n: of one leg choked, as on its tag, not its vertical rating
 *
 * As lb_sling_capacity() of legs that are choked each round the load.
 */
gboolean lb_choker_capacity (double choker_rating_n,
                             double choke_angle_rad,
                             guint n_legs,
                             double angle_rad,
                             double *out_load_n,
                             GError **error);

/* Tension of a leg under @load_n, share of its rating; over 1 is too much. */
gboolean lb_sling_share (double rating_n,
                         double load_n,
                         guint n_legs,
                         double angle_rad,
                         double *out_share,
                         GError **error);

G_END_DECLS
