/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"
#include "book/shift-account.h"

G_BEGIN_DECLS

/**
 * lb_stock_at:
 * @what: %LB_STOCK_RODS or %LB_STOCK_CYLINDERS
 * @shift: in the ledger: what came in later shifts is left out
 *
 * A count is of the end of its shift: what that shift used or got is in it already, in whichever order
 * the two were written down. Of cylinders, what was used follows from the oxygen, at what a full one
 * gives before it is changed, by the job's assumptions.
 */
void lb_stock_at (const LbLedger *ledger,
                  const LbFold *fold,
                  const char *what,
                  int shift,
                  LbStock *out);

G_END_DECLS
