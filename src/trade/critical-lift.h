/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What makes a lift a critical one, for which a plan is written and signed. Lifting people and
 * hazardous goods is outside this tool. */
typedef enum {
  LB_CRITICAL_SUBMERGED,
  LB_CRITICAL_CAPACITY,
  LB_CRITICAL_CAPACITY_UNKNOWN,
  LB_CRITICAL_CRANES,
  LB_CRITICAL_CENTRE,
  LB_CRITICAL_VIEW,
} LbCriticalTrigger;

#define LB_N_CRITICAL_TRIGGERS (LB_CRITICAL_VIEW + 1)

typedef guint LbCriticalSet; /* bit n is trigger n; 0: not critical by these rules */

/* 29 CFR 1926.751 says more than 75 %; a crane association's list 75 % or more, which is taken. */
#define LB_CRITICAL_SHARE 0.75

typedef struct
{
  gboolean is_submerged; /* any of the load, unless it runs in guided slots */
  double share;          /* of the crane's rated capacity; NAN when not known */
  guint n_cranes;
  gboolean is_centre_changing; /* a battered pile that swings plumb, trapped water that runs out */
  gboolean is_out_of_view;     /* of the operator */
} LbLiftFacts;

LbCriticalSet lb_critical_lift (const LbLiftFacts *facts);

gboolean lb_critical_set_has (LbCriticalSet set, LbCriticalTrigger trigger);
const char *lb_critical_words (LbCriticalTrigger trigger);  /* msgid: "The load is under water" */
const char *lb_critical_source (LbCriticalTrigger trigger); /* msgid: the rule */

G_END_DECLS
