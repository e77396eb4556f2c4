/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"

G_BEGIN_DECLS

/* take-back.c: marks in fold->is_alive the entries recorded up to @until_us and not taken back, but
 * for work in shifts after @until_day. */
void lb_fold_find_alive (LbFold *fold, const LbLedger *ledger, gint64 until_us, guint32 until_day);

/* fold-days.c: adds an alive entry that counts something to the sums of its shift. */
void lb_fold_count_entry (LbFold *fold, const LbEntry *entry);

/* Sums the shifts up into days and the job; @n_came_back: by shift, piles that were out and are
 * on the list again. */
void lb_fold_sum_days (LbFold *fold, const LbLedger *ledger, const guint *n_came_back);

/* signatures.c: who signed each shift. */
void lb_fold_find_signatures (LbFold *fold, const LbLedger *ledger, gint64 until_us);

G_END_DECLS
