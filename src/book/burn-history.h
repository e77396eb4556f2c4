/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"
#include "trade/burn-rate.h"

G_BEGIN_DECLS

/* What the job's own dives say of burning: the samples that the burning rate is learned from
 * (docs/methods.md, "Burning, learned"). Made from what stands in the ledger, and thrown away. */
typedef struct
{
  GArray *samples; /* LbBurnSample, with indices of pile and shift, as they were recorded */
  GArray *shifts;  /* LbBurnShift, of shifts in which something was burned */
  guint n_untimed; /* bars burned of which no trigger time is known: in no sample */
} LbBurnHistory;

LbBurnHistory *lb_burn_history_new (const LbLedger *ledger, const LbFold *fold);
void lb_burn_history_free (LbBurnHistory *history);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbBurnHistory, lb_burn_history_free)

/* Learns from it, under the job's own assumptions. */
void lb_burn_history_fit (const LbBurnHistory *history, const LbFold *fold, LbBurnModel *out_model);

G_END_DECLS
