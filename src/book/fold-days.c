/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/fold-private.h"
#include "trade/bottom-time.h"

#include <math.h>

static double
said (double amount)
{
  return isnan (amount) ? 0 : amount;
}

void
lb_fold_count_entry (LbFold *fold, const LbEntry *entry)
{
  LbTotals *totals = entry->shift >= 0 ? &fold->shifts[entry->shift] : &fold->job;

  switch (entry->kind) {
  case LB_ENTRY_BURN_TIME:
    totals->trigger_s += said (entry->amount);
    break;
  case LB_ENTRY_RODS:
    totals->rods += said (entry->amount);
    break;
  case LB_ENTRY_OXYGEN:
    totals->oxygen_m3 += said (entry->amount);
    break;
  case LB_ENTRY_DIVE:
    totals->n_dives++;
    totals->bottom_s += said (lb_bottom_time (entry->start_us, entry->end_us));
    break;
  case LB_ENTRY_DELAY:
    totals->delay_s += said (entry->amount);
    break;
  case LB_ENTRY_FAULT:
    totals->fault_s += said (entry->amount);
    break;
  case LB_ENTRY_STEP:
  case LB_ENTRY_BARS:
  case LB_ENTRY_GONE:
  case LB_ENTRY_DRAWN:
  case LB_ENTRY_BROKEN:
  case LB_ENTRY_CONDITION:
  case LB_ENTRY_NOTE:
  case LB_ENTRY_SET_ASIDE:
  case LB_ENTRY_TAKE_IN:
  case LB_ENTRY_CHECK:
  case LB_ENTRY_HOURS:
  case LB_ENTRY_CREW:
  case LB_ENTRY_STOCK:
  case LB_ENTRY_DELIVERY:
  case LB_ENTRY_DETAIL:
  case LB_ENTRY_ANSWER:
  case LB_ENTRY_CORRECTION:
  case LB_ENTRY_SEAL:
  case LB_ENTRY_FACT:
  case LB_ENTRY_SETTING:
  case LB_ENTRY_TAKE_BACK:
  default:
    break;
  }
}

static void
add_totals (LbTotals *sum, const LbTotals *part)
{
  for (int step = 0; step < LB_N_STEPS; step++)
    sum->steps[step] += part->steps[step];
  sum->bars += part->bars;
  sum->rods += part->rods;
  sum->oxygen_m3 += part->oxygen_m3;
  sum->trigger_s += part->trigger_s;
  sum->n_dives += part->n_dives;
  sum->bottom_s += part->bottom_s;
  sum->delay_s += part->delay_s;
  sum->fault_s += part->fault_s;
}

void
lb_fold_sum_days (LbFold *fold, const LbLedger *ledger, const guint *n_came_back)
{
  guint n_out = 0;

  /* The ledger keeps its shifts by day, whatever their order in the file: those of one day are
   * neighbours (lb_ledger_place_shifts()). */
  fold->days = g_new0 (LbDay, MAX (fold->n_shifts, 1));
  for (gsize i = 0; i < fold->n_shifts; i++) {
    const guint32 day = lb_ledger_shift (ledger, i)->day;

    if (fold->n_days == 0 || fold->days[fold->n_days - 1].day != day)
      fold->days[fold->n_days++].day = day;

    LbDay *at = &fold->days[fold->n_days - 1];
    n_out += fold->shifts[i].steps[LB_STEP_PULLED] - n_came_back[i];
    at->pulled_so_far = n_out;
    add_totals (&at->totals, &fold->shifts[i]);
    add_totals (&fold->job, &fold->shifts[i]);
  }
}
