/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"
#include "book/shift-account.h"

G_BEGIN_DECLS

/* What a day's report is made of, plain: see book/day-accounts.h. It borrows the ledger and the fold. */
typedef struct
{
  const LbLedger *ledger;
  const LbFold *fold;
  guint32 day;
  GArray *dives;           /* LbDiveAccount, as they left the surface */
  GArray *findings;        /* LbFinding of the job and all its shifts */
  LbStock rods, cylinders; /* at the end of the day's last shift */
} LbDayAccount;

G_END_DECLS
