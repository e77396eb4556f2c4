/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/stock.h"

#include <math.h>
#include <string.h>

/* The last count, the deliveries behind it. Counts and deliveries of one shift stand in time. */
static void
read_entries (const LbLedger *ledger,
              const LbFold *fold,
              const char *what,
              int shift,
              LbStock *stock)
{
  for (gsize i = 0; i < fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, (guint) i);

    if (entry->kind == LB_ENTRY_STOCK && fold->is_alive[i] && entry->shift <= shift &&
        entry->shift >= stock->counted_shift && strcmp (entry->what, what) == 0)
    {
      stock->counted_shift = entry->shift;
      stock->counted = entry->amount;
    }
  }
  for (gsize i = 0; i < fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, (guint) i);

    if (entry->kind == LB_ENTRY_DELIVERY && fold->is_alive[i] && entry->shift <= shift &&
        entry->shift > stock->counted_shift && strcmp (entry->what, what) == 0)
      stock->delivered += entry->amount;
  }
}

static double
used_in (const LbTotals *totals, gboolean is_rods, double a_cylinder_m3)
{
  return is_rods ? totals->rods : totals->oxygen_m3 / a_cylinder_m3;
}

void
lb_stock_at (const LbLedger *ledger, const LbFold *fold, const char *what, int shift, LbStock *out)
{
  g_return_if_fail (ledger != NULL && fold != NULL && what != NULL && out != NULL);
  g_return_if_fail (shift < (int) fold->n_shifts);

  const gboolean is_rods = strcmp (what, LB_STOCK_RODS) == 0;
  const double a_cylinder_m3 = is_rods ? 0 : lb_cut_basis (&fold->assumptions).cylinder_gas_m3;
  double sum = 0;

  *out = (LbStock){ .counted_shift = -1 };
  read_entries (ledger, fold, what, shift, out);
  for (int i = out->counted_shift + 1; out->counted_shift >= 0 && i <= shift; i++)
    out->used += used_in (&fold->shifts[i], is_rods, a_cylinder_m3);
  for (int i = shift; i >= 0 && out->n_mean < LB_STOCK_MEAN_SHIFTS; i--) {
    const double used = used_in (&fold->shifts[i], is_rods, a_cylinder_m3);

    if (used > 0) {
      sum += used;
      out->n_mean++;
    }
  }
  out->left = out->counted_shift < 0 ? (double) NAN : out->counted + out->delivered - out->used;
  out->mean = out->n_mean > 0 ? sum / out->n_mean : (double) NAN;
  out->shifts_left = out->left >= 0 ? out->left / out->mean : (double) NAN;
}
