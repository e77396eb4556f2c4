/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/day-account.h"

G_BEGIN_DECLS

/* All that is asked of the record for the report of @day. */
LbDayAccount *lb_day_account_new (const LbLedger *ledger, const LbFold *fold, guint32 day);
void lb_day_account_free (LbDayAccount *account);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbDayAccount, lb_day_account_free)

G_END_DECLS
