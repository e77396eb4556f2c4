/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/fold-work.h"

static LbWork *
work_of (GArray *works, GHashTable *place, const LbEntry *entry)
{
  const gint64 key = ((gint64) entry->shift << 32) | (guint32) entry->pile;
  gpointer found = g_hash_table_lookup (place, &key);

  if (found == NULL) {
    const LbWork fresh = { .shift = entry->shift, .pile = (guint) entry->pile, .note = "" };

    g_array_append_val (works, fresh);
    found = GUINT_TO_POINTER (works->len);
    g_hash_table_insert (place, g_memdup2 (&key, sizeof key), found);
  }

  return &g_array_index (works, LbWork, GPOINTER_TO_UINT (found) - 1);
}

static void
add_entry (LbWork *work, const LbEntry *entry)
{
  LbStep step;

  work->last_us = MAX (work->last_us, entry->at_us);
  switch (entry->kind) {
  case LB_ENTRY_STEP:
    if (lb_step_from_name (entry->what, &step))
      work->steps |= LB_STEP_BIT (step);
    break;
  case LB_ENTRY_BARS:
    work->bars |= entry->bars;
    work->n_unplaced += entry->bars == 0 ? entry->count : 0;
    break;
  case LB_ENTRY_DRAWN:
    work->is_drawn = TRUE;
    break;
  case LB_ENTRY_BROKEN:
    work->is_broken = TRUE;
    break;
  case LB_ENTRY_BURN_TIME:
    work->burn_s += entry->amount;
    break;
  case LB_ENTRY_RODS:
    work->rods += entry->amount;
    break;
  case LB_ENTRY_OXYGEN:
    work->oxygen_m3 += entry->amount;
    break;
  case LB_ENTRY_NOTE:
    work->note = entry->note;
    break;
  case LB_ENTRY_DIVE:
  case LB_ENTRY_DELAY:
  case LB_ENTRY_FAULT:
  case LB_ENTRY_CONDITION:
  case LB_ENTRY_FACT:
  case LB_ENTRY_SETTING:
  case LB_ENTRY_TAKE_BACK:
    break;
  }
}

static gint
by_shift (gconstpointer a, gconstpointer b)
{
  return ((const LbWork *) a)->shift - ((const LbWork *) b)->shift;
}

void
lb_fold_collect_work (LbFold *fold, const LbLedger *ledger)
{
  GArray *works = g_array_new (FALSE, FALSE, sizeof (LbWork));
  g_autoptr (GHashTable) place = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);

  for (gsize i = 0; i < fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, (guint) i);

    if (fold->is_alive[i] && entry->shift >= 0 && entry->pile >= 0)
      add_entry (work_of (works, place, entry), entry);
  }

  /* g_array_sort() is stable, so lines of one shift stay as first touched. */
  g_array_sort (works, by_shift);
  fold->n_works = works->len;
  fold->works = (LbWork *) (gpointer) g_array_free (works, FALSE);
}
