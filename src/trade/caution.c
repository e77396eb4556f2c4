/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/caution.h"

#include "trade/msgid.h"

#define COMMON_PRACTICE N_ ("common practice")
#define NAVY_CUTTING    N_ ("U.S. Navy Underwater Cutting and Welding Manual")

static const struct
{
  const char *key;
  LbSeverity severity;
  const char *source; /* msgid */
} table[LB_N_CAUTIONS] = {
  [LB_CAUTION_STRAND] = { "strand", LB_SEVERITY_DANGER, COMMON_PRACTICE },
  [LB_CAUTION_BARS_UNKNOWN] = { "bars-unknown", LB_SEVERITY_CAUTION, COMMON_PRACTICE },
  [LB_CAUTION_SLAG_SIDE] = { "slag-side", LB_SEVERITY_CAUTION, COMMON_PRACTICE },
  [LB_CAUTION_UNDER_LEAN] = { "under-lean", LB_SEVERITY_DANGER, COMMON_PRACTICE },
  [LB_CAUTION_RIG_FIRST] = { "rig-first", LB_SEVERITY_DANGER, COMMON_PRACTICE },
  [LB_CAUTION_PAST_LIMIT] = { "past-limit", LB_SEVERITY_CAUTION,
                              N_ ("U.S. Navy Diving Manual, revision 7, table 9-7") },
  [LB_CAUTION_LIMIT_UNKNOWN] = { "limit-unknown", LB_SEVERITY_CAUTION,
                                 N_ ("U.S. Navy Diving Manual, revision 7, table 9-7") },
  [LB_CAUTION_VOID_GAS] = { "void-gas", LB_SEVERITY_DANGER,
                            N_ ("29 CFR 1910.422(g)(5); vent holes above the cut are common "
                                "practice") },
  [LB_CAUTION_SWITCH_OPEN] = { "switch-open", LB_SEVERITY_CAUTION, N_ ("29 CFR 1910.422(g)(1)") },
  [LB_CAUTION_CLAMP] = { "clamp", LB_SEVERITY_CAUTION, NAVY_CUTTING },
  [LB_CAUTION_GLOVES] = { "gloves", LB_SEVERITY_CAUTION, N_ ("29 CFR 1910.422(g)(4)") },
  [LB_CAUTION_BUBBLE_TEST] = { "bubble-test", LB_SEVERITY_NOTE, COMMON_PRACTICE },
  [LB_CAUTION_GAS_TRAPS] = { "gas-traps", LB_SEVERITY_CAUTION, NAVY_CUTTING },
  [LB_CAUTION_SUBMERGED_LIFT] = { "submerged-lift", LB_SEVERITY_CAUTION, N_ ("EM 385-1-1") },
  [LB_CAUTION_SUPERVISOR] = { "supervisor", LB_SEVERITY_NOTE, COMMON_PRACTICE },
};

LbSeverity
lb_caution_severity (LbCaution caution)
{
  g_return_val_if_fail (caution < LB_N_CAUTIONS, LB_SEVERITY_DANGER);

  return table[caution].severity;
}

const char *
lb_caution_key (LbCaution caution)
{
  g_return_val_if_fail (caution < LB_N_CAUTIONS, NULL);

  return table[caution].key;
}

const char *
lb_caution_source (LbCaution caution)
{
  g_return_val_if_fail (caution < LB_N_CAUTIONS, NULL);

  return table[caution].source;
}
