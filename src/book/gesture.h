/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"
#include "book/dive-account.h"
#include "book/finding.h"
#include "book/fold.h"

G_BEGIN_DECLS

/* What one gesture records: the entries that go together, whoever makes the gesture and wherever.
 * Each function appends drafts (LbDraft) to @drafts, none when there is nothing new to say; they
 * borrow from @fold. To be recorded as one act. */

/**
 * lb_gesture_step:
 *
 * The pile reached @step. Severed says that no bar is left, so those left on record are burned
 * with it. Nothing where the step is on record already.
 */
void lb_gesture_step (GArray *drafts, const LbFold *fold, guint pile, LbStep step);

/**
 * lb_gesture_bars:
 * @bars: those burned; what is on record already is left out
 *
 * The last bar through is what “severed” means, and is recorded with it.
 *
 * Returns: whether it was
 */
gboolean lb_gesture_bars (GArray *drafts, const LbFold *fold, guint pile, LbBarSet bars);

/**
 * lb_gesture_gone:
 * @bars: those found gone, rusted through or cut by others; what is on record already is left out
 *
 * Nobody here burned them, so “severed” never follows from it.
 */
void lb_gesture_gone (GArray *drafts, const LbFold *fold, guint pile, LbBarSet bars);

/* As lb_gesture_bars() for bars of which only the count, over 0, is known. */
gboolean lb_gesture_bar_count (GArray *drafts, const LbFold *fold, guint pile, guint count);

/**
 * lb_gesture_checks:
 * @said: (array length=n_said): each caution that was gone through, ticked or left open
 * @known: LbCheck: what is on record for that dive
 * @dive_us: when the dive left the surface; 0 for the next one
 *
 * Records what differs from what is on record; what was left open is recorded too, so that later it
 * can be told what was there to tick.
 */
void lb_gesture_checks (GArray *drafts,
                        const LbFold *fold,
                        guint pile,
                        const LbCheck *said,
                        gsize n_said,
                        const GArray *known,
                        gint64 dive_us);

/**
 * lb_gesture_answer:
 * @reason: what somebody says to the finding; nothing is new where its answer says the same
 *
 * A signed shift is left as it is: there the answer belongs to the job.
 */
void lb_gesture_answer (GArray *drafts,
                        const LbLedger *ledger,
                        const LbFinding *finding,
                        const char *reason);

G_END_DECLS
