/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"

G_BEGIN_DECLS

/* Fills @fold->works from the alive entries of @ledger; needs @fold->is_alive. */
void lb_fold_collect_work (LbFold *fold, const LbLedger *ledger);

G_END_DECLS
