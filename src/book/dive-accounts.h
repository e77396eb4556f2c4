/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/check-log.h"
#include "book/dive-account.h"
#include "book/dive-log.h"

G_BEGIN_DECLS

/**
 * lb_dive_account_make:
 * @log: of all dives of the job
 * @checks: (nullable): of the dive's shift; without them @out has none
 * @out: (out): to be cleared with lb_dive_account_clear()
 *
 * A bottom time is never compared with more than one rule: this one.
 */
void lb_dive_account_make (const LbDiveLog *log,
                           const LbCheckLog *checks,
                           const LbEntry *dive,
                           LbDiveAccount *out);
void lb_dive_account_clear (gpointer account);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LbDiveAccount, lb_dive_account_clear)

/* Of all dives of the day's shifts: LbDiveAccount, as they left the surface. */
GArray *lb_dive_accounts_new (const LbLedger *ledger, const LbFold *fold, guint32 day);

G_END_DECLS
