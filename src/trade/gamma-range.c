/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/gamma-range.h"

#include <math.h>

/* Wilson and Hilferty, “The distribution of chi-square”, Proc. Natl. Acad. Sci. 17 (1931): the cube
 * root of a gamma variable of mean 1 is close to normal, with mean 1 - 1/(9 shape) and variance
 * 1/(9 shape). Paulson, Ann. Math. Stat. 13 (1942), has the same for a ratio. */
static double
root_variance (double shape)
{
  return 1 / (9 * shape);
}

static double
cube (double x)
{
  return x * x * x;
}

double
lb_gamma_quantile (double z, double shape)
{
  const double variance = root_variance (shape);

  return cube (MAX (1 - variance + z * sqrt (variance), 0));
}

/* The root r at which (r m2 - m1)² = z² (v1 + r² v2), on the side of z. */
double
lb_gamma_ratio_quantile (double z, double shape, double divisor_shape)
{
  const double v1 = root_variance (shape), v2 = root_variance (divisor_shape);
  const double m1 = 1 - v1, m2 = 1 - v2;
  const double a = m2 * m2 - z * z * v2, c = m1 * m1 - z * z * v1;
  const double discriminant = MAX (m1 * m1 * m2 * m2 - a * c, 0);
  const double side = z < 0 ? -1 : 1;

  return cube (MAX ((m1 * m2 + side * sqrt (discriminant)) / a, 0));
}

double
lb_gamma_ratio_score (double ratio, double shape, double divisor_shape)
{
  const double v1 = root_variance (shape), v2 = root_variance (divisor_shape);
  const double root = cbrt (ratio);

  return (root * (1 - v2) - (1 - v1)) / sqrt (v1 + root * root * v2);
}

/* With u² = 1/(9 shape) and q the cube root of the ratio: (1 - u² + zu) = q (1 - u² - zu). */
double
lb_gamma_shape_of_ratio (double ratio)
{
  const double q = cbrt (ratio);
  const double t = LB_Z_90 * (q + 1) / (q - 1);
  /* 2 / (t + √) is (√ - t) / 2 without the loss of digits. */
  const double u = 2 / (t + sqrt (t * t + 4));

  return 1 / (9 * u * u);
}
