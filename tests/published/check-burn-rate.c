/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/burn-rate.h"
#include "trade/gamma-range.h"

/* The 0.80 of the normal distribution. */
#define Z_80 0.8416212335729143

static void
check_gamma (LbTrial *trial)
{
  const double degrees = lb_trial_number (trial, "degrees");

  lb_trial_expect (trial, "chi-square",
                   degrees * lb_gamma_quantile (lb_trial_number (trial, "z"), degrees / 2));
}

static void
check_gamma_ratio (LbTrial *trial)
{
  lb_trial_expect (trial, "ratio",
                   lb_gamma_ratio_quantile (lb_trial_number (trial, "z"),
                                            lb_trial_number (trial, "degrees") / 2,
                                            lb_trial_number (trial, "divisor degrees") / 2));
}

static void
check_gamma_posterior (LbTrial *trial)
{
  const double shape = lb_trial_number (trial, "prior shape") + lb_trial_number (trial, "failures");
  const double time = lb_trial_number (trial, "prior time") + lb_trial_number (trial, "time");
  const LbBurnModel model = { .n_samples = 1, .job = { .mean = time / shape, .shape = shape } };

  lb_trial_expect (trial, "median",
                   lb_burn_model_rate (&model, NULL, LB_VISIBILITY_UNKNOWN).likely);
  lb_trial_expect (trial, "lower fifth", time / shape / lb_gamma_quantile (Z_80, shape));
}

const LbCheck LB_CHECKS_BURN_RATE[] = {
  { "gamma",
    check_gamma,
    { LB_GIVEN ("degrees", "number"), LB_GIVEN ("z", "number"),
      LB_EXPECTED ("chi-square", "number") } },
  { "gamma ratio",
    check_gamma_ratio,
    { LB_GIVEN ("degrees", "number"), LB_GIVEN ("divisor degrees", "number"),
      LB_GIVEN ("z", "number"), LB_EXPECTED ("ratio", "number") } },
  { "gamma posterior",
    check_gamma_posterior,
    { LB_GIVEN ("prior shape", "number"), LB_GIVEN ("prior time", "number"),
      LB_GIVEN ("failures", "number"), LB_GIVEN ("time", "number"),
      LB_EXPECTED ("median", "number"), LB_EXPECTED ("lower fifth", "number") } },
  { NULL },
};
