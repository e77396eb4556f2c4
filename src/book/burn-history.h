/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"
#include "book/fold.h"
#include "trade/burn-rate.h"

G_BEGIN_DECLS

/* What the job's own dives say of burning: the samples that the burning rate is learned from
 * (docs/methods.md, "Burning, learned"). Made from what stands in the ledger, and thrown away;
 * reasons are borrowed from the ledger. */
typedef struct
{
  GArray *samples; /* LbBurnSample, with indices of pile and shift, as they were recorded */
  GArray *shifts;  /* LbBurnShift, of shifts in which something was burned */
  guint n_untimed; /* bars burned of which no trigger time is known: in no sample */
} LbBurnHistory;

LbBurnHistory *lb_burn_history_new (const LbLedger *ledger, const LbFold *fold);
void lb_burn_history_free (LbBurnHistory *history);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbBurnHistory, lb_burn_history_free)

/* The sample of a pile in a shift, NULL for none. */
const LbBurnSample *lb_burn_history_find (const LbBurnHistory *history, int pile, int shift);

/* What was burned of one size in one visibility, as far as it teaches. */
void lb_burn_history_count (const LbBurnHistory *history,
                            const LbBar *bar,
                            LbVisibility visibility,
                            guint *out_n_bars,
                            guint *out_n_samples);

/**
 * lb_burn_history_set_aside:
 * @pile: -1 for the whole shift, with its rods, oxygen and strikes
 * @reason: (nullable): why it teaches nothing; %NULL to take it in again
 * @out_draft: (out): what to record; borrows from @ledger and @reason
 *
 * Refuses what there is nothing to say about: no burning with its time at that pile in that shift,
 * set aside already, or not set aside.
 */
gboolean lb_burn_history_set_aside (const LbBurnHistory *history,
                                    const LbLedger *ledger,
                                    const LbFold *fold,
                                    int pile,
                                    int shift,
                                    const char *reason,
                                    LbDraft *out_draft,
                                    GError **error);

/* Learns from it, under the job's own assumptions. */
void lb_burn_history_fit (const LbBurnHistory *history, const LbFold *fold, LbBurnModel *out_model);

G_END_DECLS
