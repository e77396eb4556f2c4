/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/join-private.h"

#include <glib/gi18n-lib.h>

#define ROWS_BETWEEN_LOOKS 512

static gboolean
look (const LbJoinWatch *watch, gsize done, gsize total, GError **error)
{
  if (g_cancellable_is_cancelled (watch->cancellable)) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_CANCELLED,
                 _ ("This was cancelled; nothing was changed"));
    return FALSE;
  }
  if (watch->tell != NULL)
    watch->tell (done, total, watch->data);
  return TRUE;
}

static gboolean
store_entry (LbBook *book, const LbJoinPlan *plan, gint64 seq, GError **error)
{
  LbEntry entry = *lb_ledger_entry_of_seq (plan->from, seq);
  const LbEntryRows rows = {
    .act = plan->act_rows[seq - 1],
    .shift = entry.shift >= 0 ? plan->shift_rows[entry.shift] : 0,
    .pile = entry.pile >= 0 ? plan->pile_rows[entry.pile] : 0,
    .of = plan->of_rows[seq - 1],
  };

  entry.seq = plan->entry_rows[seq - 1];
  return lb_book_insert_entry (book, &entry, &rows, error);
}

gboolean
lb_book_store_plan (LbBook *book,
                    const LbJoinPlan *plan,
                    LbBook *source,
                    const LbJoinWatch *watch,
                    GError **error)
{
  const LbLedger *from = plan->from;
  const gsize total = plan->piles->len + plan->entries->len;
  gsize done = 0;

  for (guint i = 0; i < plan->piles->len; i++, done++) {
    if ((done % ROWS_BETWEEN_LOOKS == 0 && !look (watch, done, total, error)) ||
        !lb_book_copy_pile (book, source, g_array_index (plan->piles, guint, i) + 1, error))
      return FALSE;
  }
  for (guint i = 0; i < plan->shifts->len; i++) {
    const guint shift = g_array_index (plan->shifts, guint, i);

    if (!lb_book_insert_shift (book, lb_ledger_shift (from, shift), error))
      return FALSE;
  }
  for (guint i = 0; i < plan->entries->len; i++, done++) {
    if ((done % ROWS_BETWEEN_LOOKS == 0 && !look (watch, done, total, error)) ||
        !store_entry (book, plan, g_array_index (plan->entries, gint64, i), error))
      return FALSE;
  }
  return look (watch, total, total, error);
}

LbJoined
lb_join_plan_count (const LbJoinPlan *plan)
{
  return (LbJoined){
    .n_piles = plan->piles->len,
    .n_shifts = plan->shifts->len,
    .n_entries = plan->entries->len,
  };
}

static gboolean
join (LbBook *book,
      LbLedger *ledger,
      const LbPacket *packet,
      const LbJoinWatch *watch,
      LbJoined *out_joined,
      GError **error)
{
  g_autoptr (LbJoinPlan) plan = NULL;

  if (!lb_book_read_on (book, ledger, NULL, error))
    return FALSE;
  plan = lb_join_plan (ledger, packet->ledger, error);
  if (plan == NULL || !lb_book_store_plan (book, plan, packet->book, watch, error))
    return FALSE;
  *out_joined = lb_join_plan_count (plan);
  return TRUE;
}

gboolean
lb_book_join (LbBook *book,
              LbLedger *ledger,
              const LbPacket *packet,
              LbJoined *out_joined,
              LbProgress progress,
              gpointer data,
              GCancellable *cancellable,
              GError **error)
{
  g_return_val_if_fail (book != NULL, FALSE);
  g_return_val_if_fail (ledger != NULL, FALSE);
  g_return_val_if_fail (packet != NULL, FALSE);

  const LbJoinWatch watch = { .tell = progress, .data = data, .cancellable = cancellable };
  LbJoined joined;

  /* Planned inside the transaction, so that the file is what it was planned on. */
  if (!lb_book_begin_act (book, error))
    return FALSE;
  const gboolean is_joined = join (book, ledger, packet, &watch, &joined, error);
  if (!lb_book_end_act (book, is_joined, is_joined ? error : NULL))
    return FALSE;
  if (out_joined != NULL)
    *out_joined = joined;
  return TRUE;
}
