/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/burn-rate-private.h"

#include "trade/gamma-range.h"

#include <math.h>

/* How much a shift varies about its rates, as a coefficient of variation: judgement. */
#define SHIFT_SPREAD_USUAL (0.20 * 0.20)

/* The stated flow has no range of its own; 12 to 30 cu ft about 20 to a rod, common practice. */
#define FLOW_LOW_SHARE  0.6
#define FLOW_HIGH_SHARE 1.5

/* What was used in a shift and what it went with; NAN where not known. */
typedef struct
{
  double used, per;
} Use;

typedef Use (*UseFunc) (const LbBurnModel *model, const LbBurnShift *shift);

static Use
rods_of (const LbBurnModel *model, const LbBurnShift *shift)
{
  return (Use){ shift->rods, shift->trigger_s };
}

static Use
oxygen_of (const LbBurnModel *model, const LbBurnShift *shift)
{
  return (Use){ shift->oxygen_m3, shift->trigger_s * shift->flow_scale };
}

/* Where the rods were not counted, as many as the trigger time took. */
static Use
restrike_of (const LbBurnModel *model, const LbBurnShift *shift)
{
  const double rods = isnan (shift->rods) ? shift->trigger_s * model->rods.rate.mean : shift->rods;

  return (Use){ shift->wall_s - shift->trigger_s, shift->n_bars + rods };
}

static gboolean
is_known (const Use *use)
{
  return isfinite (use->used) && use->used > 0 && isfinite (use->per) && use->per > 0;
}

static double
find_spread (const LbBurnRatios *ratios, const LbBurnRate *prior)
{
  double chances[LB_BURN_SPREADS];
  double best = -INFINITY, total = 0, mean = 0;

  for (int i = 0; i < LB_BURN_SPREADS; i++) {
    const double shape = 1 / lb_burn_spread (SHIFT_SPREAD_USUAL, i);

    chances[i] = lb_burn_spread_chance (i) + lb_burn_ratios_chance (ratios, shape) +
                 lb_burn_mean_chance (prior, shape * ratios->n, shape * ratios->sum);
    best = MAX (best, chances[i]);
  }
  for (int i = 0; i < LB_BURN_SPREADS; i++) {
    const double weight = exp (chances[i] - best);

    total += weight;
    mean += weight * lb_burn_spread (SHIFT_SPREAD_USUAL, i);
  }
  return mean / total;
}

static void
fit_use (LbBurnUse *use,
         const LbRange *guess,
         UseFunc use_of,
         const LbBurnShift *shifts,
         gsize n_shifts,
         const LbBurnModel *model)
{
  const LbBurnRate prior = lb_burn_prior (guess);
  LbBurnRatios ratios = { 0 };

  for (gsize i = 0; i < n_shifts; i++) {
    const LbBurnShift *shift = &shifts[i];
    const Use one = use_of (model, shift);
    const double weight = shift->has_fault ? LB_BURN_FAULT_WEIGHT : 1;

    if (shift->is_set_aside || !is_known (&one))
      continue;
    ratios.n += weight;
    ratios.sum_log += weight * log (one.used / one.per);
    ratios.sum += weight * one.used / one.per;
    use->n_shifts++;
    use->n_bars += shift->n_bars;
  }

  use->spread = find_spread (&ratios, &prior);

  const double shape = 1 / use->spread;

  use->rate.shape = prior.shape + shape * ratios.n;
  use->rate.mean = (prior.shape * prior.mean + shape * ratios.sum) / use->rate.shape;
}

static double
rods_a_second (const LbAssumptions *assumptions, double waste)
{
  return 1 / (assumptions->value[LB_ASSUME_ROD_TIME] * (1 - waste));
}

void
lb_burn_use_fit (const LbBurnShift *shifts, gsize n_shifts, LbBurnModel *model)
{
  const LbAssumptions *assumptions = &model->assumptions;
  const double *value = assumptions->value;
  const double waste = value[LB_ASSUME_ROD_WASTE];
  const double restrike = value[LB_ASSUME_RESTRIKE];
  const LbRange one_second = { .likely = 1, .low = 1, .high = 1 };

  model->rods.stated = (LbRange){
    .likely = rods_a_second (assumptions, waste),
    .low = rods_a_second (assumptions, MIN (waste, value[LB_ASSUME_ROD_WASTE_LOW])),
    .high = rods_a_second (assumptions, MAX (waste, value[LB_ASSUME_ROD_WASTE_HIGH])),
  };
  model->oxygen.stated = lb_burn_stated_oxygen (assumptions, &one_second);
  model->restrike.stated = (LbRange){ .likely = restrike,
                                      .low = MIN (restrike, value[LB_ASSUME_RESTRIKE_LOW]),
                                      .high = MAX (restrike, value[LB_ASSUME_RESTRIKE_HIGH]) };

  fit_use (&model->rods, &model->rods.stated, rods_of, shifts, n_shifts, model);
  const double flow = model->oxygen.stated.likely;
  const LbRange flow_guess = { .likely = flow,
                               .low = FLOW_LOW_SHARE * flow,
                               .high = FLOW_HIGH_SHARE * flow };

  fit_use (&model->oxygen, &flow_guess, oxygen_of, shifts, n_shifts, model);
  fit_use (&model->restrike, &model->restrike.stated, restrike_of, shifts, n_shifts, model);
}
