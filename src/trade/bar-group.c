/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Stress in bars that carry a stub together, by elementary mechanics: plane sections stay plane,
 * all bars are alike and elastic, the faces on both sides of the cut are rigid.
 *
 *   stress (p) = N / ΣA + g · (p − c),   T g = m
 *
 * c is the centroid of the bars, T the second-moment tensor about it with each bar's own inertia,
 * and m = (0, M) − N c the first moment that the stress must have: the load acts on the axis of
 * the pile, not on the centroid. T is symmetric and need not be diagonal: bending is unsymmetric
 * as soon as bars are gone on one side only.
 *
 * The current's moment has any bearing u, |u| = 1, and adds M_d u · T⁻¹ (p − c); the worst u for
 * a bar gives M_d |T⁻¹ (p − c)|, so each bar has its own and no bearing is searched for.
 *
 * A bar is bent in itself twice: over its thickness by the slope of the stress, and between the
 * faces by its share V / n of the shear, the greatest moment being V / n × gap / 2.
 *
 * Invariant: nothing is divided by a second moment that is 0 but for the bars' own; such a set is
 * a hinge.
 */
#include "trade/bar-group.h"

/* A set is taken as one straight line when its second moment across the line is under this share
 * of that along it: bars off the line by less than some 3 % of its length, about a bar's own
 * thickness in a pile. No published figure; on the safe side, since a hinge holds nothing. */
#define LINE_SHARE 1e-3

LbBarSection
lb_bar_section (const LbBar *bar, double gap_m)
{
  g_return_val_if_fail (bar, (LbBarSection){ 0 });

  const double d = bar->diameter_m;
  LbBarSection section = { .area_m2 = bar->area_m2 };

  /* Elementary geometry. A square bar may be twisted, so that its corner can be outermost. */
  if (bar->kind == LB_BAR_SQUARE) {
    section.inertia_m4 = d * d * d * d / 12;
    section.reach_m = d / G_SQRT2;
  } else {
    section.inertia_m4 = G_PI * d * d * d * d / 64;
    section.reach_m = d / 2;
  }
  if (section.inertia_m4 > 0)
    section.bending_pa_per_n = gap_m / 2 * section.reach_m / section.inertia_m4;
  return section;
}

void
lb_bar_field_reckon (const LbBarSection *section,
                     const LbBarSums *sums,
                     const LbStubLoad *load,
                     LbBarField *out_field)
{
  g_return_if_fail (section);
  g_return_if_fail (sums);
  g_return_if_fail (load);
  g_return_if_fail (out_field);

  /* Two bars are always in a line; half a bar is left for the rounding of the sums. */
  if (sums->n < 2.5) {
    *out_field = (LbBarField){ .is_hinge = TRUE };
    return;
  }

  const double area = section->area_m2;
  const LbPoint centroid = { .x = sums->x / sums->n, .y = sums->y / sums->n };
  const double xx = sums->xx - sums->x * centroid.x;
  const double xy = sums->xy - sums->x * centroid.y;
  const double yy = sums->yy - sums->y * centroid.y;
  /* The principal values, of places alone. */
  const double middle = (xx + yy) / 2;
  const double spread = sqrt ((xx - yy) * (xx - yy) / 4 + xy * xy);

  if (middle - spread <= LINE_SHARE * (middle + spread)) {
    *out_field = (LbBarField){ .is_hinge = TRUE };
    return;
  }

  const double own = sums->n * section->inertia_m4;
  const double t_xx = area * xx + own, t_xy = area * xy, t_yy = area * yy + own;
  const double determinant = t_xx * t_yy - t_xy * t_xy;
  const double weakest = area * (middle - spread) + own;
  const double m_x = -load->axial_n * centroid.x;
  const double m_y = load->moment_nm - load->axial_n * centroid.y;
  const LbPoint slope = {
    .x = (t_yy * m_x - t_xy * m_y) / determinant,
    .y = (t_xx * m_y - t_xy * m_x) / determinant,
  };
  const double steepest = sqrt (slope.x * slope.x + slope.y * slope.y) + load->drag_nm / weakest;
  const double shear_n = fabs (load->shear_n) + load->drag_n;

  *out_field = (LbBarField){
    .centroid = centroid,
    .inertia_xx_m4 = t_xx,
    .inertia_xy_m4 = t_xy,
    .inertia_yy_m4 = t_yy,
    .mean_pa = load->axial_n / (area * sums->n),
    .slope_pa_m = slope,
    .drag_xx = load->drag_nm * t_yy / determinant,
    .drag_xy = -load->drag_nm * t_xy / determinant,
    .drag_yy = load->drag_nm * t_xx / determinant,
    .bending_pa = steepest * section->reach_m + shear_n / sums->n * section->bending_pa_per_n,
  };
}
