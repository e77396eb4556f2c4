/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/join-preview.h"

#include "book/join.h"

static GHashTable *
keys_of (const LbLedger *ledger)
{
  GHashTable *keys = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_autoptr (GArray) findings = lb_findings_new (ledger, fold);

  for (guint i = 0; i < findings->len; i++)
    g_hash_table_add (keys, g_strdup (g_array_index (findings, LbFinding, i).key));
  return keys;
}

/* Leaves those that @keys has not. */
static void
drop_known (GArray *findings, GHashTable *keys)
{
  for (guint i = findings->len; i-- > 0;) {
    if (g_hash_table_contains (keys, g_array_index (findings, LbFinding, i).key))
      g_array_remove_index (findings, i);
  }
}

static void
count (LbJoinPreview *preview, const LbJoinPlan *plan)
{
  preview->n_piles = plan->piles->len;
  preview->n_shifts = plan->shifts->len;
  preview->n_known = plan->from->entries->len - plan->entries->len;
  preview->latest_us = G_MININT64;
  for (guint i = 0; i < plan->entries->len; i++) {
    const gint64 seq = g_array_index (plan->entries, gint64, i);
    const LbEntry *entry = lb_ledger_entry_of_seq (plan->from, seq);

    if (entry->shift >= 0)
      preview->n_work++;
    else
      preview->n_facts++;
    preview->latest_us = MAX (preview->latest_us, entry->at_us);
  }
}

/* By shift of the ledger that was joined. */
static void
count_by_shift (LbJoinPreview *preview, const LbJoinPlan *plan)
{
  const LbLedger *joined = preview->joined;

  preview->n_by_shift = g_new0 (guint, joined->shifts->len + 1);
  preview->is_new_shift = g_new0 (guint8, joined->shifts->len + 1);
  for (guint i = plan->n_entries; i < joined->entries->len; i++) {
    const int shift = lb_ledger_entry_of_seq (joined, (gint64) i + 1)->shift;

    if (shift >= 0)
      preview->n_by_shift[shift]++;
  }
  for (guint i = 0; i < joined->shifts->len; i++)
    preview->is_new_shift[i] = lb_ledger_shift (joined, i)->seq > plan->n_shifts;
}

LbJoinPreview *
lb_join_preview_new (LbLedger *into, const LbLedger *from, GError **error)
{
  g_return_val_if_fail (into != NULL, NULL);
  g_return_val_if_fail (from != NULL, NULL);

  g_autoptr (LbJoinPreview) preview = g_new0 (LbJoinPreview, 1);
  preview->joined = into;
  g_autoptr (LbJoinPlan) plan = lb_join_plan (into, from, error);
  if (plan == NULL)
    return NULL;

  g_autoptr (GHashTable) here = keys_of (into);
  g_autoptr (GHashTable) there = keys_of (from);
  count (preview, plan);
  lb_ledger_join (into, plan);
  count_by_shift (preview, plan);
  preview->fold = lb_fold_new (into, G_MAXINT64);
  preview->findings = lb_findings_new (into, preview->fold);
  drop_known (preview->findings, here);
  drop_known (preview->findings, there);
  return g_steal_pointer (&preview);
}

void
lb_join_preview_free (LbJoinPreview *preview)
{
  if (preview == NULL)
    return;
  g_clear_pointer (&preview->findings, g_array_unref);
  lb_fold_free (preview->fold);
  lb_ledger_free (preview->joined);
  g_free (preview->n_by_shift);
  g_free (preview->is_new_shift);
  g_free (preview);
}

gboolean
lb_join_preview_is_empty (const LbJoinPreview *preview)
{
  g_return_val_if_fail (preview != NULL, TRUE);

  return preview->n_piles + preview->n_shifts + preview->n_work + preview->n_facts == 0;
}
