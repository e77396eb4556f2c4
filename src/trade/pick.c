/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/pick.h"

#include "trade/trade-error.h"

#include <math.h>

/* Of a length: a load that is just at the limit needs no further cut. */
#define SLACK 1e-9

/* The overhang at the end, share of the length; the picks stand evenly between two overhangs, but a
 * single one has its far end on the ground. */
static double
end_share (LbPickRule rule, guint n_points)
{
  /* FDOT Design Standards, index 20600 (2012): 0.3 | 0.21 0.58 0.21 | 0.145 0.355 0.355 0.145 |
   * 0.107 0.262 0.262 0.262 0.107. */
  static const double printed[LB_PICKS_MAX] = { 0.3, 0.21, 0.145, 0.107 };

  if (rule == LB_PICK_PRINTED)
    return printed[n_points - 1];

  /* Overhang a, spans s. One: w a²/2 = R²/2w. Two: w s²/8 − w a²/2 = w a²/2, so s = √8 a. Three and
   * four by the theorem of three moments: the middle supports bend as the outer ones when s = √6 a. */
  switch (n_points) {
  case 1:
    return 1 - sqrt (0.5);
  case 2:
    return 1 / (2 + sqrt (8));
  default:
    return 1 / (2 + (n_points - 1) * sqrt (6));
  }
}

static gboolean
refuse (const char *fault, GError **error)
{
  g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, fault);
  return FALSE;
}

static gboolean
is_amount (double value)
{
  return value >= 0 && isfinite (value);
}

gboolean
lb_pick_points (LbPickRule rule,
                guint n_points,
                double length_m,
                double out_at_m[LB_PICKS_MAX],
                GError **error)
{
  g_return_val_if_fail (out_at_m, FALSE);

  if (n_points < 1 || n_points > LB_PICKS_MAX)
    return refuse ("A piece is picked up at 1 to 4 points", error);
  if (!is_amount (length_m))
    return refuse ("The length of the piece is not a number of 0 or more", error);

  const double first = end_share (rule, n_points);
  const double span = n_points > 1 ? (1 - 2 * first) / (n_points - 1) : 0;

  for (guint i = 0; i < n_points; i++)
    out_at_m[i] = (first + i * span) * length_m;
  return TRUE;
}

gboolean
lb_pick_moment (double weight_n_per_m,
                double length_m,
                guint n_points,
                double overhang_m,
                double *out_moment_nm,
                GError **error)
{
  g_return_val_if_fail (out_moment_nm, FALSE);

  if (n_points != 1 && n_points != 2)
    return refuse ("Bending is reckoned for 1 or 2 points: sheaves and slack decide of more",
                   error);
  if (!is_amount (weight_n_per_m) || !(length_m > 0 && isfinite (length_m)))
    return refuse ("The piece has no weight or length", error);
  if (!(overhang_m >= 0 && overhang_m <= length_m / 2))
    return refuse ("The pick is not between the end and the middle of the piece", error);

  const double at_pick = weight_n_per_m * overhang_m * overhang_m / 2;
  double inside;

  if (n_points == 1) {
    /* The ground carries R; the span bends most at R/w from its end, by R²/2w. */
    const double ground_n = weight_n_per_m * length_m * (length_m - 2 * overhang_m) / 2 /
                            (length_m - overhang_m);

    inside = weight_n_per_m > 0 ? ground_n * ground_n / (2 * weight_n_per_m) : 0;
  } else {
    const double span_m = length_m - 2 * overhang_m;

    inside = weight_n_per_m * span_m * span_m / 8 - at_pick;
  }
  *out_moment_nm = MAX (at_pick, inside);
  return TRUE;
}

gboolean
lb_pick_lengths (double weight_n_per_m,
                 double length_m,
                 double rigging_n,
                 double limit_n,
                 LbLengths *out_lengths,
                 GError **error)
{
  g_return_val_if_fail (out_lengths, FALSE);

  if (!is_amount (weight_n_per_m) || !(length_m > 0 && isfinite (length_m)) ||
      !is_amount (rigging_n) || !is_amount (limit_n))
    return refuse ("The piece, the rigging or the limit is not a number of 0 or more", error);
  if (limit_n <= rigging_n)
    return refuse ("The rigging alone is as much as the hook may carry", error);

  const double weight_n = weight_n_per_m * length_m;
  const double needed = ceil (weight_n / (limit_n - rigging_n) - SLACK);

  if (!(needed <= LB_LENGTHS_MAX)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "The piece would have to be cut into more than %d lengths: find a crane that "
                 "carries more",
                 LB_LENGTHS_MAX);
    return FALSE;
  }

  const guint n = MAX ((guint) needed, 1);

  *out_lengths = (LbLengths){
    .n = n,
    .length_m = length_m / n,
    .load_n = weight_n / n + rigging_n,
  };
  return TRUE;
}
