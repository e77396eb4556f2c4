/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/burn-rate.h"

G_BEGIN_DECLS

/* What a shift with a gear fault counts for: judgement. Its times happened and will again, but not
 * as often. */
#define LB_BURN_FAULT_WEIGHT 0.5

/* Shape of the time of @n_bars burned in one go: what differs from dive to dive does not even out
 * over the bars, what differs from bar to bar does. */
double lb_burn_shape (const LbBurnModel *model, guint n_bars);

/* Row of the size in the model's rates; the last for one that was never burned. */
guint lb_burn_size_row (const LbBurnModel *model, const LbBar *bar);

/* A guess as strong as its range says, within what a guess may claim: its median is the likely
 * value, its P90 as many times its P10 as stated. */
LbBurnRate lb_burn_prior (const LbRange *stated);

/* Ratios about a mean, gamma-distributed: their number, the sums of their logarithms and of
 * themselves, each by weight. */
typedef struct
{
  double n, sum_log, sum;
} LbBurnRatios;

/* Logarithm of how likely they are at one shape, apart from what is the same at every shape and
 * from what the mean has to do with it. */
double lb_burn_ratios_chance (const LbBurnRatios *ratios, double shape);

/* The rest, with the mean averaged over what @prior and the ratios leave open; @shape: the sum of
 * their shapes by weight, @sum: of shape times ratio. */
double lb_burn_mean_chance (const LbBurnRate *prior, double shape, double sum);

/* Spreads that are tried: from a sixteenth of the usual to sixteen times. */
#define LB_BURN_SPREADS 9

double lb_burn_spread (double usual, int i);

/* Logarithm of how likely a spread is before anything was seen. */
double lb_burn_spread_chance (int i);

/* burn-outlier.c: the middle of the rates seen. */
void lb_burn_find_middle (const LbBurnSample *samples, gsize n, LbBurnModel *model);

/* burn-use.c: rods, oxygen and restrikes of the model, whose assumptions are set. */
void lb_burn_use_fit (const LbBurnShift *shifts, gsize n_shifts, LbBurnModel *model);

G_END_DECLS
