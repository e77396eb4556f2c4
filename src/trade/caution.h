/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What must be said before a cut. Ordinary ones hold for every cut; the rest follow from the
 * pile's own figures. The words, with the figures in them, are draw/caution-words. */
typedef enum {
  LB_CAUTION_STRAND,        /* stressed strand whips; no bar rule holds */
  LB_CAUTION_BARS_UNKNOWN,  /* bars not known: find them before burning */
  LB_CAUTION_SLAG_SIDE,     /* umbilical and leads away from the fall of slag */
  LB_CAUTION_UNDER_LEAN,    /* out from under the lean */
  LB_CAUTION_RIG_FIRST,     /* leaning stub: hook tension on before the last bars */
  LB_CAUTION_PAST_LIMIT,    /* the burn does not fit in one dive */
  LB_CAUTION_LIMIT_UNKNOWN, /* no no-stop limit can be read */
  LB_CAUTION_VOID_GAS,      /* hollow pile: vent above the cut */
  LB_CAUTION_SWITCH_OPEN,
  LB_CAUTION_CLAMP,
  LB_CAUTION_GLOVES,
  LB_CAUTION_BUBBLE_TEST,
  LB_CAUTION_GAS_TRAPS,
  LB_CAUTION_SUBMERGED_LIFT, /* lifting a submerged load is a critical lift (EM 385-1-1) */
  LB_CAUTION_SUPERVISOR,     /* the supervisor's word stands above this card */
} LbCaution;

#define LB_N_CAUTIONS (LB_CAUTION_SUPERVISOR + 1)

typedef enum {
  LB_SEVERITY_NOTE,
  LB_SEVERITY_CAUTION,
  LB_SEVERITY_DANGER,
} LbSeverity;

LbSeverity lb_caution_severity (LbCaution caution);
const char *lb_caution_key (LbCaution caution);    /* "slag-side": in JSON */
const char *lb_caution_source (LbCaution caution); /* the rule or "common practice" */

G_END_DECLS
