/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"
#include "book/shift-account.h"

#include <glib.h>

G_BEGIN_DECLS

/* What in the record does not fit together: found anew whenever the record changed, and never
 * stored. Nothing is refused for it, since the record must be able to say what happened; somebody
 * puts it right or answers it with a reason, and the answer is an entry. */
typedef enum {
  LB_FINDING_BARS_LEFT,    /* severed, but bars are left */
  LB_FINDING_PULLED_UNCUT, /* pulled, neither severed nor drawn whole */
  LB_FINDING_NOT_RIGGED,   /* burned past the hold point, and on no hook by the end of the shift */
  LB_FINDING_MORE_BARS,    /* more bars burned than the pile has */
  LB_FINDING_BARS_TWICE,   /* the same bar burned twice in a shift */
  LB_FINDING_GONE_AND_BURNED, /* the same bar found gone and burned */
  LB_FINDING_TWO_CREWS,       /* the same steps or bars in two shifts */
  LB_FINDING_DIVES_OVERLAP,   /* one diver on two dives at a time */
  LB_FINDING_PAST_LIMIT,      /* bottom time past the no-stop limit */
  LB_FINDING_OUTSIDE_HOURS,   /* a dive outside the shift's hours */
  LB_FINDING_NO_DIVE,         /* burned under water, but nobody dived */
  LB_FINDING_BURNED_LONGER,   /* more trigger time under water than bottom time */
  LB_FINDING_LOST_LONGER,     /* more time lost than the shift has */
  LB_FINDING_NO_HOURS,        /* time lost, and the shift's hours are not said */
  LB_FINDING_RECORD_GAPS,     /* the record of its dives does not say all it must (dive-record.h) */
  LB_FINDING_AFTER_SIGNING,   /* in a signed shift, later than the signature, and no correction */
  LB_FINDING_SAME_MARK,       /* two piles with one mark */
  LB_FINDING_SAID_OTHERWISE,  /* a fact or setting that two crews set differently (difference.h) */
} LbFindingKind;

#define LB_N_FINDING_KINDS (LB_FINDING_SAID_OTHERWISE + 1)

/* A finding; what its kind has no use for is 0. It borrows entries from the ledger. */
typedef struct
{
  LbFindingKind kind;
  char *key;                 /* its kind and the ids of what it is about, the same whenever found */
  int shift;                 /* in whose sheet it stands, -1 for the job's */
  int pile;                  /* that it is about, -1 for none */
  int other_pile;            /* the other one of that mark, -1 for none */
  const LbEntry *entries[2]; /* that it is about, the earlier first; NULL for none */
  LbStepSet steps;           /* said twice */
  LbBarSet bars;             /* which */
  guint n_bars, n_bars_most; /* how many, and how many there should be at most */
  double time_s, most_s;     /* the same of time */
  guint gaps;                /* bits 1 << LbRecordGapKind */
  gboolean is_signed;        /* the shift is */
  const LbEntry *answer;     /* the last one that stands, NULL while it is open */
} LbFinding;

/* "bars-left": how the key of such a finding begins. */
const char *lb_finding_kind_name (LbFindingKind kind);

/**
 * lb_findings_new:
 *
 * All findings of the job: LbFinding, by shift, those of the job first. Pure; some nanoseconds an
 * entry, and a cut plan for each pile that was burned in a shift before it was on the hook.
 */
GArray *lb_findings_new (const LbLedger *ledger, const LbFold *fold);

/* Those of one shift and of the job, the same ones; -1 for those of the job alone. */
GArray *lb_findings_new_of_shift (const LbLedger *ledger, const LbFold *fold, int shift);

/* Those about one pile; the same ones. */
GArray *lb_findings_new_of_pile (const LbLedger *ledger, const LbFold *fold, int pile);

/* How many of a shift, or of the job for -1, nobody has answered. */
guint lb_findings_open (const GArray *findings, int shift);

/* The one of that key, NULL for none. */
const LbFinding *lb_findings_find (const GArray *findings, const char *key);

G_END_DECLS
