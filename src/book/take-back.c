/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which entries stand, and what "take back" and "redo" would do next.
 *
 * Nothing is deleted: a take-back is an entry that names an act, and an act named by a take-back
 * that stands does not stand itself. A take-back can be taken back in the same way; that is redo.
 * Since an entry can only name what was recorded before it, going from the last entry to the
 * first settles each in one look.
 *
 * Take back and redo are those of any editor, told by the ledger alone:
 *   take back names the last act of the shift that stands and is no take-back (nor a signature, which
 *   stands for good);
 *   redo names the last take-back of the shift that stands and took such an act, unless a new act
 *   was recorded after it.
 * The redo itself (a take-back of a take-back) is never named by either. */
#include "book/fold-private.h"

#include <string.h>

static gboolean
is_later (const LbLedger *ledger, const LbEntry *entry, guint32 until_day)
{
  return entry->shift >= 0 && entry->kind != LB_ENTRY_TAKE_BACK &&
         lb_ledger_shift (ledger, (guint) entry->shift)->day > until_day;
}

void
lb_fold_find_alive (LbFold *fold, const LbLedger *ledger, gint64 until_us, guint32 until_day)
{
  g_autoptr (GHashTable) taken_back = g_hash_table_new (g_str_hash, g_str_equal);
  const char *act = NULL; /* of the entry looked at last, and whether it stands */
  gboolean stands = TRUE;

  for (gsize i = ledger->entries->len; i-- > 0;) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (entry->at_us > until_us)
      continue;
    if (entry->act != act) {
      act = entry->act;
      stands = g_hash_table_size (taken_back) == 0 || !g_hash_table_contains (taken_back, act);
    }
    fold->is_alive[i] = stands && !is_later (ledger, entry, until_day);
    if (stands && entry->kind == LB_ENTRY_TAKE_BACK)
      g_hash_table_add (taken_back, (gpointer) entry->of);
  }
}

const char *
lb_fold_next_take_back (const LbFold *fold, const LbLedger *ledger, int shift)
{
  g_return_val_if_fail (fold != NULL, NULL);
  g_return_val_if_fail (ledger != NULL, NULL);

  for (gsize i = fold->n_entries; i-- > 0;) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (fold->is_alive[i] && entry->shift == shift && lb_entry_is_new (entry) &&
        entry->kind != LB_ENTRY_SEAL)
      return entry->act;
  }
  return NULL;
}

/* Acts that take-backs of @shift took back, as far as those came after @first. */
static GHashTable *
find_take_backs (const LbFold *fold, const LbLedger *ledger, int shift, gsize first)
{
  GHashTable *acts = g_hash_table_new (g_str_hash, g_str_equal);

  for (gsize i = first; i < fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (entry->shift == shift && entry->kind == LB_ENTRY_TAKE_BACK)
      g_hash_table_add (acts, (gpointer) entry->act);
  }
  return acts;
}

/* Where the entries of @shift after its last new act begin. */
static gsize
find_after_last_act (const LbFold *fold, const LbLedger *ledger, int shift)
{
  for (gsize i = fold->n_entries; i-- > 0;) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (entry->shift == shift && lb_entry_is_new (entry))
      return i + 1;
  }
  return 0;
}

const char *
lb_fold_next_redo (const LbFold *fold, const LbLedger *ledger, int shift)
{
  g_return_val_if_fail (fold != NULL, NULL);
  g_return_val_if_fail (ledger != NULL, NULL);

  const gsize first = find_after_last_act (fold, ledger, shift);
  g_autoptr (GHashTable) take_backs = find_take_backs (fold, ledger, shift, first);

  for (gsize i = fold->n_entries; i-- > first;) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (fold->is_alive[i] && entry->shift == shift && entry->kind == LB_ENTRY_TAKE_BACK &&
        !g_hash_table_contains (take_backs, entry->of))
      return entry->act;
  }
  return NULL;
}
