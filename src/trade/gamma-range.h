/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Quantiles of gamma-distributed times and rates, in closed form (docs/methods.md, "Burning,
 * learned"): the cube root of a gamma variable is nearly normal. For the tenth, fiftieth and
 * ninetieth per cent the error is under 0.6 % from a shape of 2 on. Nothing is searched for, so
 * nothing can fail to be found.
 *
 * A divisor's shape is 1 or more: under that, an end may lie beyond all numbers.
 *
 * @z is a standard normal quantile; a shape is the square of mean over standard deviation. */

/* NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1: 0.90 of the normal distribution. */
#define LB_Z_90 1.2815515655446004

/* Quantile of a gamma variable of mean 1. */
double lb_gamma_quantile (double z, double shape);

/* Quantile of the ratio of two independent ones: F with twice the shapes as degrees of freedom. */
double lb_gamma_ratio_quantile (double z, double shape, double divisor_shape);

/* The inverse: how many standard deviations out @ratio lies. */
double lb_gamma_ratio_score (double ratio, double shape, double divisor_shape);

/* The shape whose P90 is @ratio times its P10; @ratio > 1. */
double lb_gamma_shape_of_ratio (double ratio);

G_END_DECLS
