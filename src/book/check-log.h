/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/dive-account.h"
#include "book/fold.h"

G_BEGIN_DECLS

/* The checks of one shift, put to its dives. A check that says when its dive left the surface belongs
 * to the dives at its pile that left then. Any other belongs to the first dive at its pile that left
 * after it was said, and until there is one, to the next dive. None goes over into another shift.
 * Borrows the ledger and the fold. */
typedef struct _LbCheckLog LbCheckLog;

/* When a dive left the surface, by which its checks are put to it; one that is not written down left
 * at the latest when it was recorded. */
gint64 lb_dive_departure (const LbEntry *dive);

LbCheckLog *lb_check_log_new (const LbLedger *ledger, const LbFold *fold, int shift);
void lb_check_log_free (LbCheckLog *log);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbCheckLog, lb_check_log_free)

/* Of a dive of the shift. Returns: (transfer full): LbCheck, the last word on each */
GArray *lb_check_log_of (const LbCheckLog *log, const LbEntry *dive);

/* Of the dive at @pile that left the surface at @departure_us, on record or not; 0 for the next dive.
 * The same. */
GArray *lb_check_log_at (const LbCheckLog *log, int pile, gint64 departure_us);

/* The shift's dives at @pile: const LbEntry, as they left the surface. */
GPtrArray *lb_check_log_dives (const LbCheckLog *log, int pile);

G_END_DECLS
