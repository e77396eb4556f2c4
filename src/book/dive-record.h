/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"
#include "book/shift-account.h"

G_BEGIN_DECLS

/**
 * lb_dive_record_gaps:
 * @shift: in the ledger
 *
 * What 29 CFR 1910.423(d)(1) and 46 CFR 197.482 ask of the record of any dive, and the record of this
 * shift does not say. A shift without a dive has no gap. Whether more is asked (dives outside the
 * no-stop limits, deep or on mixed gas, a diver who is ill) is for the diving supervisor.
 *
 * Returns: (transfer full) (element-type LbRecordGap): those of the shift first, then dive by dive
 */
GArray *lb_dive_record_gaps (const LbLedger *ledger, const LbFold *fold, int shift);

/* The same one entry after another, for all shifts at once: what was said of a shift, a bit each. */
typedef guint LbRecordSaid;

/* Takes in an entry of the shift that stands; the last word on each counts. */
void lb_record_said_take (LbRecordSaid *said, const LbEntry *entry);

/* What a shift with dives lacks, and what one of its dives does: bits 1 << LbRecordGapKind. */
guint lb_record_gaps_of_shift (LbRecordSaid said);
guint lb_record_gaps_of_dive (const LbLedger *ledger, const LbEntry *dive, LbRecordSaid said);

/* Who has @charge in the shift, as said last; "" for nobody said. */
const char *lb_charge_holder (const LbLedger *ledger,
                              const LbFold *fold,
                              int shift,
                              const char *charge);

/* A condition of the shift as said last; "" for not said. */
const char *lb_condition_said (const LbLedger *ledger,
                               const LbFold *fold,
                               int shift,
                               const char *condition);

/* What a detail of @entry says, "" for nothing. */
const char *lb_entry_detail (const LbLedger *ledger, const LbEntry *entry, const char *which);

G_END_DECLS
