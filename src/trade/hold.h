/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/bar-group.h"
#include "trade/bar-ring.h"

#include <glib.h>

G_BEGIN_DECLS

/* Concrete that still stands in the cut. It holds too, by how much nobody knows, so the figures
 * are of the bars alone and are then the least of what holds. */
typedef enum {
  LB_CONCRETE_NONE,
  LB_CONCRETE_CORE,
  LB_CONCRETE_ONE_SIDE,
} LbConcreteLeft;

#define LB_N_CONCRETE_LEFT (LB_CONCRETE_ONE_SIDE + 1)

/* "none", "core", "one side": key in files, msgid */
const char *lb_concrete_left_name (LbConcreteLeft left);
gboolean lb_concrete_left_from_name (const char *name, LbConcreteLeft *out_left);

/* The bared cut. */
typedef struct
{
  const LbPoint *places; /* of all bars, see lb_pile_bars_place() */
  guint n_bars;          /* at most %LB_BARS_MAX */
  const LbBar *bar;
  LbConcreteLeft concrete;
  double gap_m;            /* length of bar bared between the faces */
  double yield_pa;         /* see lb_steel_for_year() */
  double factor;           /* on yield and on buckling, 1 or more; the engineer's to set */
  double effective_length; /* K of the bared length: 0.65 where the stub cannot move sideways, 1
                            * where it can (both faces hold the bar fast) */
} LbCut;

/* Whether bar rules say anything of this pile: not for prestressing strand, which is stressed
 * before the stub's weight is, nor for a size that is not known. */
gboolean lb_hold_applies (const LbBar *bar);

/* %FALSE with %LB_TRADE_ERROR_INCOMPLETE or %LB_TRADE_ERROR_DOMAIN, and what is wrong. */
gboolean lb_cut_check (const LbCut *cut, GError **error);

/* What the bars left carry, Pa; compression is positive. A hinge has NAN for stresses and shares:
 * it holds nothing that could be said in numbers. */
typedef struct
{
  guint n_left;
  gboolean is_hinge;       /* fewer than three bars, or all in one straight line */
  gboolean is_lower_bound; /* concrete is left, see LbConcreteLeft */
  LbBarField field;
  double base_pa[LB_BARS_MAX]; /* of weight and hook at the bar's middle; NAN for a bar gone */
  double peak_pa[LB_BARS_MAX]; /* greatest size anywhere in the bar, current, shear and all */
  double greatest_pa;          /* of @peak_pa */
  guint8 governing;            /* the bar that has it; undefined for a hinge */
  double buckling_share; /* greatest compression of a bar beside its Euler load, no factor on it */
  double utilisation;    /* of yield or of the Euler load over the factor, the greater; 1 is full */
} LbHold;

/**
 * lb_hold_reckon:
 * @left: the bars not yet burned
 *
 * Returns: %FALSE with the error of lb_cut_check(); @out_hold is untouched then
 */
gboolean lb_hold_reckon (const LbCut *cut,
                         LbBarSet left,
                         const LbStubLoad *load,
                         LbHold *out_hold,
                         GError **error);

/* A bar's Euler load over the gap, N: π² E I / (K gap)²; INFINITY without a gap. */
double lb_bar_euler_load (const LbBar *bar, double gap_m, double effective_length);

/* Of what the steel may bear: what stresses are measured by. */
typedef struct
{
  double per_stress;      /* utilisation for each Pa of greatest stress */
  double per_compression; /* and for each Pa of mean compression in a bar */
} LbHoldMeasure;

LbHoldMeasure lb_hold_measure (const LbCut *cut);

static inline double
lb_hold_utilisation (const LbHoldMeasure *measure, LbBarPeak peak)
{
  return MAX (peak.stress_pa * measure->per_stress, peak.compression_pa * measure->per_compression);
}

G_END_DECLS
