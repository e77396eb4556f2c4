/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/day-work.h"

#include "draw/plan-words.h"
#include "draw/record-words.h"

#include <math.h>

static void
clear_pile_work (gpointer data)
{
  g_string_free (((LbPileWork *) data)->notes, TRUE);
}

static void
clear_lost (gpointer data)
{
  g_string_free (((LbLost *) data)->notes, TRUE);
}

static void
add_note (GString *notes, const char *note)
{
  if (note[0] == '\0')
    return;
  if (notes->len > 0)
    g_string_append (notes, "; ");
  g_string_append (notes, note);
}

static double
known (double amount)
{
  return isfinite (amount) ? amount : 0;
}

static LbPileWork *
work_at (LbDayWork *work, int pile)
{
  for (guint i = 0; i < work->piles->len; i++) {
    LbPileWork *const at = &g_array_index (work->piles, LbPileWork, i);
    if (at->pile == pile)
      return at;
  }
  const LbPileWork fresh = { .pile = pile, .notes = g_string_new (NULL) };
  g_array_append_val (work->piles, fresh);
  return &g_array_index (work->piles, LbPileWork, work->piles->len - 1);
}

static void
add_lost (GArray *all, const LbLedger *ledger, const LbEntry *entry)
{
  LbLost *lost = NULL;
  for (guint i = 0; i < all->len && lost == NULL; i++) {
    LbLost *const one = &g_array_index (all, LbLost, i);
    if (g_str_equal (one->what, entry->what))
      lost = one;
  }
  if (lost == NULL) {
    const LbLost fresh = { .what = entry->what, .notes = g_string_new (NULL) };
    g_array_append_val (all, fresh);
    lost = &g_array_index (all, LbLost, all->len - 1);
  }
  lost->lost_s += known (entry->amount);
  lost->n_times++;
  add_note (lost->notes, entry->note);

  g_autofree char *details = lb_details_text (ledger, entry);
  if (details != NULL)
    add_note (lost->notes, details);
}

static void
add_step (LbPileWork *at, const LbEntry *entry)
{
  LbStep step;
  if (lb_step_from_name (entry->what, &step))
    at->steps |= LB_STEP_BIT (step);
  add_note (at->notes, entry->note);
}

static void
add_bars (LbPileWork *at, const LbEntry *entry)
{
  const guint n_named = lb_bar_set_count (entry->bars);
  at->bars |= entry->bars;
  at->n_bars += n_named > 0 ? n_named : entry->count;
  add_note (at->notes, entry->note);
}

/* In words alone: it is not counted with what the crew burned. */
static void
add_said (const LbVoice *voice,
          const LbLedger *ledger,
          const LbFold *fold,
          LbPileWork *at,
          const LbEntry *entry)
{
  g_autofree char *text = lb_entry_text (voice, ledger, fold, entry);
  add_note (at->notes, text);
}

static void
add_entry (LbDayWork *work,
           const LbVoice *voice,
           const LbLedger *ledger,
           const LbFold *fold,
           const LbEntry *entry)
{
  switch (entry->kind) {
  case LB_ENTRY_STEP:
    add_step (work_at (work, entry->pile), entry);
    break;
  case LB_ENTRY_BARS:
    add_bars (work_at (work, entry->pile), entry);
    break;
  case LB_ENTRY_GONE:
    add_said (voice, ledger, fold, work_at (work, entry->pile), entry);
    break;
  case LB_ENTRY_DRAWN:
    work_at (work, entry->pile)->is_drawn = TRUE;
    add_note (work_at (work, entry->pile)->notes, entry->note);
    break;
  case LB_ENTRY_BROKEN:
    work_at (work, entry->pile)->is_broken = TRUE;
    add_said (voice, ledger, fold, work_at (work, entry->pile), entry);
    break;
  case LB_ENTRY_BURN_TIME:
    work_at (work, entry->pile)->trigger_s += known (entry->amount);
    break;
  case LB_ENTRY_RODS:
    work_at (work, entry->pile)->rods += known (entry->amount);
    break;
  case LB_ENTRY_OXYGEN:
    work_at (work, entry->pile)->oxygen_m3 += known (entry->amount);
    break;
  case LB_ENTRY_DELAY:
    add_lost (work->delays, ledger, entry);
    break;
  case LB_ENTRY_FAULT:
    add_lost (work->faults, ledger, entry);
    break;
  case LB_ENTRY_CONDITION:
    g_ptr_array_add (work->conditions, (gpointer) entry);
    break;
  case LB_ENTRY_NOTE:
    if (entry->pile >= 0)
      add_note (work_at (work, entry->pile)->notes, entry->note);
    else
      g_ptr_array_add (work->notes, (gpointer) entry);
    break;
  case LB_ENTRY_DIVE:
  case LB_ENTRY_CHECK:
  case LB_ENTRY_DETAIL:
    break; /* told with the dives, delays and faults */
  case LB_ENTRY_SET_ASIDE:
  case LB_ENTRY_TAKE_IN:
  case LB_ENTRY_HOURS:
  case LB_ENTRY_CREW:
  case LB_ENTRY_STOCK:
  case LB_ENTRY_DELIVERY:
  case LB_ENTRY_ANSWER:
  case LB_ENTRY_CORRECTION:
  case LB_ENTRY_SEAL:
  case LB_ENTRY_FACT:
  case LB_ENTRY_SETTING:
  case LB_ENTRY_TAKE_BACK:
    break; /* say what is known or meant, not what was done */
  }
}

static void
add_totals (LbTotals *sum, const LbTotals *more)
{
  for (LbStep step = 0; step < LB_N_STEPS; step++)
    sum->steps[step] += more->steps[step];
  sum->bars += more->bars;
  sum->rods += more->rods;
  sum->oxygen_m3 += more->oxygen_m3;
  sum->trigger_s += more->trigger_s;
  sum->n_dives += more->n_dives;
  sum->bottom_s += more->bottom_s;
  sum->delay_s += more->delay_s;
  sum->fault_s += more->fault_s;
}

static LbDayWork *
empty_work (void)
{
  LbDayWork *const work = g_new0 (LbDayWork, 1);
  work->piles = g_array_new (FALSE, FALSE, sizeof (LbPileWork));
  g_array_set_clear_func (work->piles, clear_pile_work);
  work->delays = g_array_new (FALSE, FALSE, sizeof (LbLost));
  g_array_set_clear_func (work->delays, clear_lost);
  work->faults = g_array_new (FALSE, FALSE, sizeof (LbLost));
  g_array_set_clear_func (work->faults, clear_lost);
  work->conditions = g_ptr_array_new ();
  work->notes = g_ptr_array_new ();
  return work;
}

/* Adds what is alive of one shift. */
static void
add_shift (LbDayWork *work,
           const LbVoice *voice,
           const LbLedger *ledger,
           const LbFold *fold,
           int shift)
{
  for (guint i = 0; i < fold->n_entries; i++) {
    const LbEntry *const entry = lb_ledger_entry (ledger, i);
    if (fold->is_alive[i] && entry->shift == shift)
      add_entry (work, voice, ledger, fold, entry);
  }
}

LbDayWork *
lb_day_work_new (const LbVoice *voice, const LbLedger *ledger, const LbFold *fold, guint32 day)
{
  LbDayWork *const work = empty_work ();

  for (gsize i = 0; i < fold->n_shifts; i++) {
    if (lb_ledger_shift (ledger, (guint) i)->day == day)
      add_shift (work, voice, ledger, fold, (int) i);
  }
  for (gsize i = 0; i < fold->n_days && fold->days[i].day <= day; i++) {
    add_totals (&work->to_date, &fold->days[i].totals);
    work->pulled_so_far = fold->days[i].pulled_so_far;
    if (fold->days[i].day == day)
      work->today = fold->days[i].totals;
  }
  return work;
}

LbDayWork *
lb_day_work_new_of_shift (const LbVoice *voice,
                          const LbLedger *ledger,
                          const LbFold *fold,
                          int shift)
{
  LbDayWork *const work = empty_work ();

  add_shift (work, voice, ledger, fold, shift);
  work->today = fold->shifts[shift];
  return work;
}

void
lb_day_work_free (LbDayWork *work)
{
  if (work == NULL)
    return;
  g_array_unref (work->piles);
  g_array_unref (work->delays);
  g_array_unref (work->faults);
  g_ptr_array_unref (work->conditions);
  g_ptr_array_unref (work->notes);
  g_free (work);
}
