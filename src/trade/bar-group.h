/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/bar.h"
#include "trade/outline.h"
#include "trade/stub-load.h"

#include <glib.h>
#include <math.h>

G_BEGIN_DECLS

/* Bars that carry a load together, each as good as the next: the mechanics under hold.h and
 * burn-order.h (docs/methods.md, "Hold"). */

/* One bar's own section. All 0 but the area for a bar without thickness. */
typedef struct
{
  double area_m2;
  double inertia_m4;       /* about any axis through its middle */
  double reach_m;          /* from its middle to its outermost steel */
  double bending_pa_per_n; /* greatest stress that a shear of 1 N bends into it over the gap */
} LbBarSection;

/* @gap_m: of bar bared between the two faces, which hold it fast */
LbBarSection lb_bar_section (const LbBar *bar, double gap_m);

/* Sums over bars of 1, x, y, x², xy and y²: those of two sets add, so a set is what all have less
 * what is gone. */
typedef struct
{
  double n, x, y, xx, xy, yy;
} LbBarSums;

static inline LbBarSums
lb_bar_sums_add (LbBarSums sums, LbPoint place)
{
  return (LbBarSums){
    .n = sums.n + 1,
    .x = sums.x + place.x,
    .y = sums.y + place.y,
    .xx = sums.xx + place.x * place.x,
    .xy = sums.xy + place.x * place.y,
    .yy = sums.yy + place.y * place.y,
  };
}

static inline LbBarSums
lb_bar_sums_less (LbBarSums all, LbBarSums gone)
{
  return (LbBarSums){
    .n = all.n - gone.n,
    .x = all.x - gone.x,
    .y = all.y - gone.y,
    .xx = all.xx - gone.xx,
    .xy = all.xy - gone.xy,
    .yy = all.yy - gone.yy,
  };
}

/* How stress runs over the bars under one load. Compression is positive. */
typedef struct
{
  gboolean is_hinge; /* fewer than three bars, or all in one line: nothing else is set */
  LbPoint centroid;
  double inertia_xx_m4, inertia_xy_m4, inertia_yy_m4; /* ∫ x² dA, ∫ xy dA, ∫ y² dA about it */
  double mean_pa;                                     /* at the centroid */
  LbPoint slope_pa_m;               /* how stress rises from there, weight and hook */
  double drag_xx, drag_xy, drag_yy; /* Pa/m for a push of the current along x and y, symmetric */
  double bending_pa; /* what each bar has in itself: its thickness in the slope, and shear */
} LbBarField;

void lb_bar_field_reckon (const LbBarSection *section,
                          const LbBarSums *sums,
                          const LbStubLoad *load,
                          LbBarField *out_field);

/* Weight and hook, at the middle of the bar at @place. */
static inline double
lb_bar_field_base (const LbBarField *field, LbPoint place)
{
  return field->mean_pa + field->slope_pa_m.x * (place.x - field->centroid.x) +
         field->slope_pa_m.y * (place.y - field->centroid.y);
}

/* The most that the current can add there or take off, from the bearing that is worst for it. */
static inline double
lb_bar_field_drag (const LbBarField *field, LbPoint place)
{
  const double x = place.x - field->centroid.x;
  const double y = place.y - field->centroid.y;
  const double along_x = field->drag_xx * x + field->drag_xy * y;
  const double along_y = field->drag_xy * x + field->drag_yy * y;

  return sqrt (along_x * along_x + along_y * along_y);
}

/* Of several bars: the greatest size of stress anywhere, and the greatest mean compression. */
typedef struct
{
  double stress_pa, compression_pa;
} LbBarPeak;

static inline LbBarPeak
lb_bar_field_peak (const LbBarField *field, const LbPoint *places, gsize n, LbBarPeak so_far)
{
  for (gsize i = 0; i < n; i++) {
    const double base_pa = lb_bar_field_base (field, places[i]);
    const double drag_pa = lb_bar_field_drag (field, places[i]);

    so_far.stress_pa = MAX (so_far.stress_pa, fabs (base_pa) + drag_pa + field->bending_pa);
    so_far.compression_pa = MAX (so_far.compression_pa, base_pa + drag_pa);
  }
  return so_far;
}

G_END_DECLS
