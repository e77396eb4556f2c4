/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/gamma-range.h"

#include <math.h>

/* Chance of a ratio of gamma variables of mean 1 with whole shapes, exactly: the incomplete beta
 * function is then a binomial tail. */
static double
chance_of_ratio (double ratio, int shape, int divisor_shape)
{
  const double x = shape * ratio / (shape * ratio + divisor_shape);
  const int n = shape + divisor_shape - 1;
  double chance = 0;

  for (int j = shape; j <= n; j++)
    chance += exp (lgamma (n + 1) - lgamma (j + 1) - lgamma (n - j + 1) + j * log (x) +
                   (n - j) * log1p (-x));
  return chance;
}

/* The exact quantile by halving. */
static double
exact_quantile (double chance, int shape, int divisor_shape)
{
  double low = 1e-6, high = 1e6;

  for (int i = 0; i < 200; i++) {
    const double middle = sqrt (low * high);

    if (chance_of_ratio (middle, shape, divisor_shape) < chance)
      low = middle;
    else
      high = middle;
  }
  return low;
}

static void
test_beside_exact (void)
{
  static const int shapes[] = { 2, 3, 4, 7, 12, 25, 100, 400 };
  static const double chances[] = { 0.1, 0.5, 0.9 };
  static const double scores[] = { -LB_Z_90, 0, LB_Z_90 };
  double worst = 0;

  for (guint i = 0; i < G_N_ELEMENTS (shapes); i++) {
    for (guint j = 1; j < G_N_ELEMENTS (shapes); j++) {
      for (guint p = 0; p < G_N_ELEMENTS (chances); p++) {
        const double exact = exact_quantile (chances[p], shapes[i], shapes[j]);
        const double ours = lb_gamma_ratio_quantile (scores[p], shapes[i], shapes[j]);

        worst = MAX (worst, fabs (ours / exact - 1));
      }
    }
  }
  g_test_message ("worst of %u: %.3f %%", (guint) (8 * 7 * 3), 100 * worst);
  g_assert_cmpfloat (worst, <, 0.006);
}

static void
test_score_is_the_inverse (void)
{
  for (double z = -3; z <= 3; z += 0.25) {
    const double ratio = lb_gamma_ratio_quantile (z, 9, 30);

    g_assert_cmpfloat_with_epsilon (lb_gamma_ratio_score (ratio, 9, 30), z, 1e-9);
  }
}

/* A ratio turned over is a ratio. */
static void
test_turned_over (void)
{
  g_assert_cmpfloat_with_epsilon (
    lb_gamma_ratio_quantile (LB_Z_90, 6, 17) * lb_gamma_ratio_quantile (-LB_Z_90, 17, 6), 1, 1e-12);
}

/* What is known for sure divides nothing. */
static void
test_known_divisor (void)
{
  g_assert_cmpfloat_with_epsilon (lb_gamma_ratio_quantile (LB_Z_90, 6, 1e12),
                                  lb_gamma_quantile (LB_Z_90, 6), 1e-6);
}

static void
test_shape_of_ratio (void)
{
  for (double ratio = 1.05; ratio < 40; ratio *= 1.3) {
    const double shape = lb_gamma_shape_of_ratio (ratio);

    g_assert_cmpfloat_with_epsilon (lb_gamma_quantile (LB_Z_90, shape) /
                                      lb_gamma_quantile (-LB_Z_90, shape),
                                    ratio, 1e-9 * ratio);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/gamma-range/beside-exact", test_beside_exact);
  g_test_add_func ("/gamma-range/score-is-the-inverse", test_score_is_the_inverse);
  g_test_add_func ("/gamma-range/turned-over", test_turned_over);
  g_test_add_func ("/gamma-range/known-divisor", test_known_divisor);
  g_test_add_func ("/gamma-range/shape-of-ratio", test_shape_of_ratio);
  return g_test_run ();
}
