/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/day-accounts.h"

#include "book/dive-accounts.h"
#include "book/finding.h"
#include "book/stock.h"

#include <math.h>

/* The day's last shift, -1 when it has none. */
static int
last_shift_of (const LbLedger *ledger, guint32 day)
{
  for (guint i = ledger->shifts->len; i-- > 0;) {
    if (lb_ledger_shift (ledger, i)->day == day)
      return (int) i;
  }
  return -1;
}

LbDayAccount *
lb_day_account_new (const LbLedger *ledger, const LbFold *fold, guint32 day)
{
  g_return_val_if_fail (ledger != NULL, NULL);
  g_return_val_if_fail (fold != NULL, NULL);

  const int shift = last_shift_of (ledger, day);
  LbDayAccount *account = g_new (LbDayAccount, 1);

  *account = (LbDayAccount){
    .ledger = ledger,
    .fold = fold,
    .day = day,
    .dives = lb_dive_accounts_new (ledger, fold, day),
    .findings = lb_findings_new (ledger, fold),
    .rods = { .counted_shift = -1, .left = NAN },
    .cylinders = { .counted_shift = -1, .left = NAN },
  };
  if (shift >= 0) {
    lb_stock_at (ledger, fold, LB_STOCK_RODS, shift, &account->rods);
    lb_stock_at (ledger, fold, LB_STOCK_CYLINDERS, shift, &account->cylinders);
  }
  return account;
}

void
lb_day_account_free (LbDayAccount *account)
{
  if (account == NULL)
    return;
  g_array_unref (account->dives);
  g_array_unref (account->findings);
  g_free (account);
}
