/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/assumption.h"
#include "trade/bar.h"
#include "trade/burn.h"
#include "trade/visibility.h"

#include <glib.h>

G_BEGIN_DECLS

/* What the job's own record says of burning: trigger time per steel, rods, oxygen and the time
 * between strikes. Where the record is silent, the stated defaults stand as they are
 * (docs/methods.md, "Burning, learned"). */

/* What was burned at one pile in one shift. A sample is used when its bars, steel and trigger time
 * are all known and more than nothing. */
typedef struct
{
  guint n_bars;
  double steel_m2;  /* of those bars */
  const LbBar *bar; /* of lb_bar_table() */
  LbVisibility visibility;
  double trigger_s;      /* NAN when not known */
  gboolean has_fault;    /* gear failed in that shift: counts for half */
  gboolean is_set_aside; /* by a person: does not count */
  const char *reason;    /* why it is set aside, "" when it is not; borrowed */
  int pile, shift;       /* where it came from, indices of whoever keeps them */
} LbBurnSample;

/* Whether it teaches: nobody set it aside, and all that it takes is known. */
gboolean lb_burn_sample_is_used (const LbBurnSample *sample);

/* What one shift used. Each is NAN when not known for all of the bars burned in the shift. */
typedef struct
{
  guint n_bars;
  double trigger_s;
  double wall_s; /* on the bottom at the piles, with strikes and rod changes */
  double rods;
  double oxygen_m3;  /* free gas, as metered at depth */
  double flow_scale; /* how much more flows at that depth than at the surface */
  gboolean has_fault, is_set_aside;
  const char *reason;
  int shift;
} LbBurnShift;

/* A rate with what is known of it: gamma-distributed times about a mean that is itself known to a
 * shape. The more was seen, the greater the shape. */
typedef struct
{
  double mean, shape;
} LbBurnRate;

/* One of the rates that go with the trigger: rods a second, oxygen a second, seconds a strike. */
typedef struct
{
  LbRange stated; /* from the job's assumptions */
  LbBurnRate rate;
  double spread; /* of one shift about the rate: variance over mean squared */
  guint n_shifts, n_bars;
} LbBurnUse;

/* Sizes told apart; further ones share what is known of the job. */
#define LB_BURN_SIZES_MAX 24

typedef struct
{
  LbAssumptions assumptions;
  LbRange stated; /* s of trigger a m2 */
  LbRange middle; /* median of the rates seen; the stated range while they are few */
  LbBurnRate job; /* over all sizes and visibilities */
  /* By bar size and visibility; the last row is for a size that was never burned. */
  LbBurnRate rates[LB_BURN_SIZES_MAX + 1][LB_N_VISIBILITIES];
  const LbBar *sizes[LB_BURN_SIZES_MAX];
  guint size_bars[LB_BURN_SIZES_MAX + 1], visibility_bars[LB_N_VISIBILITIES];
  guint n_sizes;
  double dive_spread, bar_spread; /* variance over mean squared: of a dive, of one bar */
  guint n_bars, n_samples;        /* used */
  guint n_set_aside, n_unusable, n_faults, n_outliers;
  LbBurnUse rods, oxygen, restrike;
} LbBurnModel;

typedef struct
{
  guint n_bars, n_samples;                    /* used, of the whole job */
  guint n_bars_of_size, n_bars_in_visibility; /* of these, alike */
  guint n_set_aside;                          /* by a person */
  guint n_unusable;                           /* without a trigger time, or bars or steel unknown */
  guint n_faults;                             /* used for half */
  guint n_outliers;                           /* used, but far from the rest */
  gboolean is_default;                        /* nothing was learned: the stated rate */
} LbBurnBasis;

/**
 * lb_burn_model_fit:
 * @samples, @shifts: in any order
 *
 * Learns from a record. Cost is linear in it; nothing is allocated.
 */
void lb_burn_model_fit (const LbBurnSample *samples,
                        gsize n_samples,
                        const LbBurnShift *shifts,
                        gsize n_shifts,
                        const LbAssumptions *assumptions,
                        LbBurnModel *out_model);

/* Whether a sample lies beyond what its own rate lets expect but once in some 700 times, or is four
 * times as slow or as quick as the middle of the job. It is kept all the same, until a person sets
 * it aside. */
gboolean lb_burn_model_is_outlier (const LbBurnModel *model, const LbBurnSample *sample);

/**
 * lb_burn_model_predict:
 * @bar: (nullable): the size, %NULL when not known
 * @steel_m2: area of the bars to burn, together
 * @out_oxygen_m3: free gas as at the surface; the flow scale of the depth is the caller's
 *
 * P10, P50 and P90 of burning these bars at one pile. With nothing learned, lb_burn_reckon().
 */
void lb_burn_model_predict (const LbBurnModel *model,
                            const LbBar *bar,
                            double steel_m2,
                            guint n_bars,
                            LbVisibility visibility,
                            LbBurn *out_burn,
                            LbRange *out_oxygen_m3);

/* Seconds of trigger per m2: P10, P50 and P90 of the rate itself, without the chance of one dive. */
LbRange lb_burn_model_rate (const LbBurnModel *model, const LbBar *bar, LbVisibility visibility);

void lb_burn_model_basis (const LbBurnModel *model,
                          const LbBar *bar,
                          LbVisibility visibility,
                          LbBurnBasis *out_basis);

/* Many piles together: their chances even out, what is not known of the rates does not. Begin with
 * LB_BURN_SUM_INIT. */
typedef struct
{
  guint n_bars;
  double steel_m2;
  double mean_s;   /* of trigger */
  double noise_s2; /* variance by chance, pile by pile */
  double unsure_s; /* standard deviation of the rates, as if they erred together */
} LbBurnSum;

#define LB_BURN_SUM_INIT \
  {                      \
    0                    \
  }

void lb_burn_sum_add (LbBurnSum *sum,
                      const LbBurnModel *model,
                      const LbBar *bar,
                      double steel_m2,
                      guint n_bars,
                      LbVisibility visibility);

void lb_burn_sum_predict (const LbBurnSum *sum,
                          const LbBurnModel *model,
                          LbBurn *out_burn,
                          LbRange *out_oxygen_m3);

G_END_DECLS
