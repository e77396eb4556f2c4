/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which acts go into a packet.
 *
 * First those of the shifts that were asked for, and all that belongs to no shift. Then what they
 * need: the act that a chosen one names goes too, so that nothing refers out of the packet; and so
 * does the act that takes a chosen one back, so that nothing is told as standing that does not. With
 * a signature goes every row that was signed, so that it can be proved where it comes to. Last the
 * shifts of all these. An act goes whole. */
#include "book/act-links.h"
#include "book/join-private.h"
#include "book/seal.h"

#include <string.h>

static gboolean
is_in_span (const LbShift *shift, const LbPacketSpan *span)
{
  return shift->day >= span->first_day && shift->day <= span->last_day &&
         (span->watch == NULL || strcmp (shift->watch, span->watch) == 0);
}

/* Marks acts, at their first entries, from the last to the first: what they name comes before them. */
static void
choose_named (guint8 *chosen, const LbActLinks *links, guint n)
{
  for (guint i = n; i-- > 0;) {
    if (links->of[i] != 0 && chosen[links->act[i]])
      chosen[links->of[i] - 1] = TRUE;
  }
}

/* Whether any was added. */
static gboolean
choose_take_backs (guint8 *chosen, const LbActLinks *links, const LbLedger *ledger)
{
  gboolean has_more = FALSE;

  for (guint i = 0; i < ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry_of_seq (ledger, (gint64) i + 1);

    if (entry->kind == LB_ENTRY_TAKE_BACK && links->of[i] != 0 && chosen[links->of[i] - 1] &&
        !chosen[links->act[i]])
    {
      chosen[links->act[i]] = TRUE;
      has_more = TRUE;
    }
  }
  return has_more;
}

/* The rows under the chosen seals. Whether any was added. */
static gboolean
choose_signed (LbJoinChoice *choice, const LbActLinks *links, const LbLedger *ledger)
{
  g_autoptr (GArray) rows = lb_rows_new (ledger);
  g_autofree guint8 *is_covered = g_new0 (guint8, rows->len + 1);
  gboolean has_more = FALSE;

  for (guint i = 0; i < ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry_of_seq (ledger, (gint64) i + 1);

    if (entry->kind == LB_ENTRY_SEAL && choice->entries[links->act[i]])
      lb_seal_mark_rows (rows, entry, is_covered);
  }
  for (guint i = 0; i < rows->len; i++) {
    const LbRow *row = &g_array_index (rows, LbRow, i);

    if (!is_covered[i])
      continue;
    if (row->kind == LB_ROW_SHIFT) {
      choice->shifts[row->index] = TRUE;
    } else if (row->kind == LB_ROW_ENTRY) {
      guint8 *chosen = &choice->entries[links->act[lb_ledger_entry (ledger, row->index)->seq - 1]];

      has_more = has_more || !*chosen;
      *chosen = TRUE;
    }
  }
  return has_more;
}

gboolean
lb_join_choice_init (LbJoinChoice *choice, const LbLedger *ledger, const LbPacketSpan *span)
{
  const guint n = ledger->entries->len;
  g_auto (LbActLinks) links = { NULL };
  gboolean has_shift = FALSE;

  lb_act_links_init (&links, ledger);
  choice->shifts = g_new0 (guint8, ledger->shifts->len + 1);
  choice->entries = g_new0 (guint8, n + 1);
  for (guint i = 0; i < ledger->shifts->len; i++) {
    choice->shifts[i] = is_in_span (lb_ledger_shift (ledger, i), span);
    has_shift = has_shift || choice->shifts[i];
  }
  for (guint i = 0; i < n; i++) {
    const int shift = lb_ledger_entry_of_seq (ledger, (gint64) i + 1)->shift;

    if (shift < 0 || choice->shifts[shift])
      choice->entries[links.act[i]] = TRUE;
  }
  do
    choose_named (choice->entries, &links, n);
  while (choose_take_backs (choice->entries, &links, ledger) ||
         choose_signed (choice, &links, ledger));

  for (guint i = 0; i < n; i++) {
    const int shift = lb_ledger_entry_of_seq (ledger, (gint64) i + 1)->shift;

    choice->entries[i] = choice->entries[links.act[i]];
    if (choice->entries[i] && shift >= 0)
      choice->shifts[shift] = TRUE;
  }
  return has_shift;
}

void
lb_join_choice_clear (LbJoinChoice *choice)
{
  g_clear_pointer (&choice->shifts, g_free);
  g_clear_pointer (&choice->entries, g_free);
}
