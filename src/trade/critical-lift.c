/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/critical-lift.h"

#include "trade/msgid.h"

#include <math.h>

/* Of a share: 75 % reckoned is 75 %. */
#define SLACK 1e-9

static const struct
{
  const char *words, *source; /* msgids */
} triggers[LB_N_CRITICAL_TRIGGERS] = {
  [LB_CRITICAL_SUBMERGED] = { N_ ("The load is under water"),
                              N_ ("EM 385-1-1, critical lifts, as quoted in a trade article") },
  [LB_CRITICAL_CAPACITY] = { N_ ("The load is 75 % of the crane’s rated capacity or more"),
                             N_ ("29 CFR 1926.751 (more than 75 %); a crane association’s list "
                                 "(75 % or more)") },
  [LB_CRITICAL_CAPACITY_UNKNOWN] = { N_ ("The share of the crane’s capacity is not known"),
                                     N_ ("common practice") },
  [LB_CRITICAL_CRANES] = { N_ ("More than one crane lifts"), N_ ("29 CFR 1926.751; EM 385-1-1") },
  [LB_CRITICAL_CENTRE] = { N_ ("The centre of gravity can change"),
                           N_ ("EM 385-1-1, critical lifts, as quoted in a trade article") },
  [LB_CRITICAL_VIEW] = { N_ ("The load is out of the operator’s view"),
                         N_ ("EM 385-1-1, critical lifts, as quoted in a trade article") },
};

LbCriticalSet
lb_critical_lift (const LbLiftFacts *facts)
{
  g_return_val_if_fail (facts, 0);

  const gboolean holds[LB_N_CRITICAL_TRIGGERS] = {
    [LB_CRITICAL_SUBMERGED] = facts->is_submerged,
    [LB_CRITICAL_CAPACITY] = facts->share >= LB_CRITICAL_SHARE - SLACK,
    [LB_CRITICAL_CAPACITY_UNKNOWN] = isnan (facts->share),
    [LB_CRITICAL_CRANES] = facts->n_cranes > 1,
    [LB_CRITICAL_CENTRE] = facts->is_centre_changing,
    [LB_CRITICAL_VIEW] = facts->is_out_of_view,
  };
  LbCriticalSet set = 0;

  for (guint i = 0; i < LB_N_CRITICAL_TRIGGERS; i++)
    set |= holds[i] ? 1u << i : 0;
  return set;
}

gboolean
lb_critical_set_has (LbCriticalSet set, LbCriticalTrigger trigger)
{
  return (set >> trigger & 1) != 0;
}

const char *
lb_critical_words (LbCriticalTrigger trigger)
{
  g_return_val_if_fail (trigger < LB_N_CRITICAL_TRIGGERS, NULL);

  return triggers[trigger].words;
}

const char *
lb_critical_source (LbCriticalTrigger trigger)
{
  g_return_val_if_fail (trigger < LB_N_CRITICAL_TRIGGERS, NULL);

  return triggers[trigger].source;
}
