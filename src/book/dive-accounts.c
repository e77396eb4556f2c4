/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/dive-accounts.h"

#include "trade/bottom-time.h"
#include "trade/dive-table.h"

#include <math.h>

/* The bare limit, where what earlier dives count cannot be told. */
static gboolean
read_bare_limit (const LbDiveLog *log, const LbEntry *dive, LbDiveLeft *out)
{
  double depth_m;
  LbNoStop limit;

  if (isnan (dive->amount) || !lb_pneumo_corrected (dive->amount, &depth_m, NULL) ||
      !lb_dive_table_limit (lb_dive_log_get_table (log), depth_m, &limit, NULL))
    return FALSE;
  *out =
    (LbDiveLeft){ .state = LB_DIVE_LEFT_KNOWN, .limit_s = limit.limit_s, .open_s = limit.limit_s };
  return TRUE;
}

void
lb_dive_account_make (const LbDiveLog *log,
                      const LbCheckLog *checks,
                      const LbEntry *dive,
                      LbDiveAccount *out)
{
  g_return_if_fail (log != NULL);
  g_return_if_fail (dive != NULL && dive->kind == LB_ENTRY_DIVE);
  g_return_if_fail (out != NULL);

  *out = (LbDiveAccount){
    .dive = dive,
    .bottom_s = lb_bottom_time (dive->start_us, dive->end_us),
    .left = lb_dive_log_left_before (log, dive),
    .checks = checks != NULL ? lb_check_log_of (checks, dive) : NULL,
  };
  out->state = out->left.state;
  out->has_limit = out->state == LB_DIVE_LEFT_KNOWN || read_bare_limit (log, dive, &out->left);
  if (out->has_limit && out->bottom_s > out->left.open_s)
    out->state = LB_DIVE_LEFT_PAST_LIMIT;
}

void
lb_dive_account_clear (gpointer account)
{
  g_clear_pointer (&((LbDiveAccount *) account)->checks, g_array_unref);
}

static int
compare_starts (gconstpointer a, gconstpointer b)
{
  const LbEntry *one = ((const LbDiveAccount *) a)->dive;
  const LbEntry *other = ((const LbDiveAccount *) b)->dive;

  if (one->start_us != other->start_us)
    return one->start_us < other->start_us ? -1 : 1;
  return lb_entry_compare (one, other);
}

static void
add_shift (GArray *accounts,
           const LbLedger *ledger,
           const LbFold *fold,
           const LbDiveLog *log,
           int shift)
{
  g_autoptr (LbCheckLog) checks = lb_check_log_new (ledger, fold, shift);

  for (gsize i = 0; i < fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, (guint) i);
    LbDiveAccount account;

    if (!fold->is_alive[i] || entry->shift != shift || entry->kind != LB_ENTRY_DIVE)
      continue;
    lb_dive_account_make (log, checks, entry, &account);
    g_array_append_val (accounts, account);
  }
}

GArray *
lb_dive_accounts_new (const LbLedger *ledger, const LbFold *fold, guint32 day)
{
  g_return_val_if_fail (ledger != NULL, NULL);
  g_return_val_if_fail (fold != NULL, NULL);

  g_autoptr (LbDiveLog) log = lb_dive_log_new (ledger, fold);
  GArray *accounts = g_array_new (FALSE, FALSE, sizeof (LbDiveAccount));

  g_array_set_clear_func (accounts, lb_dive_account_clear);
  for (guint i = 0; i < ledger->shifts->len; i++) {
    if (lb_ledger_shift (ledger, i)->day == day)
      add_shift (accounts, ledger, fold, log, (int) i);
  }
  g_array_sort (accounts, compare_starts);
  return accounts;
}
