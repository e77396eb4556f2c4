/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/gesture.h"

static void
add_step (GArray *drafts, const LbFold *fold, guint pile, LbStep step)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_STEP);

  draft.pile_id = fold->piles[pile].id;
  draft.what = lb_step_name (step);
  g_array_append_val (drafts, draft);
}

/* Which bars are left, or how many where burned ones are known by their count alone. */
static void
add_bars_left (GArray *drafts, const LbFold *fold, guint pile)
{
  const LbPileState *state = &fold->states[pile];
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_BARS);

  if (state->n_left == 0)
    return;
  draft.pile_id = fold->piles[pile].id;
  if (state->n_unplaced == 0)
    draft.bars = lb_bar_set_all (fold->piles[pile].n_bars) & ~state->burned;
  else
    draft.count = state->n_left;
  g_array_append_val (drafts, draft);
}

static gboolean
has_reached (const LbFold *fold, guint pile, LbStep step)
{
  return (fold->states[pile].done & LB_STEP_BIT (step)) != 0;
}

void
lb_gesture_step (GArray *drafts, const LbFold *fold, guint pile, LbStep step)
{
  g_return_if_fail (drafts != NULL);
  g_return_if_fail (fold != NULL && pile < fold->n_piles);

  if (has_reached (fold, pile, step))
    return;
  if (step == LB_STEP_SEVERED)
    add_bars_left (drafts, fold, pile);
  add_step (drafts, fold, pile, step);
}

static gboolean
add_bars (GArray *drafts, const LbFold *fold, guint pile, LbDraft draft, guint n_fresh)
{
  /* How many are left is known only of a pile whose bars are on record. */
  const gboolean is_last = fold->piles[pile].n_bars > 0 && n_fresh >= fold->states[pile].n_left &&
                           !has_reached (fold, pile, LB_STEP_SEVERED);

  draft.pile_id = fold->piles[pile].id;
  g_array_append_val (drafts, draft);
  if (is_last)
    add_step (drafts, fold, pile, LB_STEP_SEVERED);
  return is_last;
}

gboolean
lb_gesture_bars (GArray *drafts, const LbFold *fold, guint pile, LbBarSet bars)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_BARS);

  g_return_val_if_fail (drafts != NULL, FALSE);
  g_return_val_if_fail (fold != NULL && pile < fold->n_piles, FALSE);

  draft.bars = bars & ~fold->states[pile].burned;
  return draft.bars != 0 && add_bars (drafts, fold, pile, draft, lb_bar_set_count (draft.bars));
}

void
lb_gesture_gone (GArray *drafts, const LbFold *fold, guint pile, LbBarSet bars)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_GONE);

  g_return_if_fail (drafts != NULL);
  g_return_if_fail (fold != NULL && pile < fold->n_piles);

  draft.pile_id = fold->piles[pile].id;
  draft.bars = bars & ~fold->states[pile].burned;
  if (draft.bars != 0)
    g_array_append_val (drafts, draft);
}

gboolean
lb_gesture_bar_count (GArray *drafts, const LbFold *fold, guint pile, guint count)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_BARS);

  g_return_val_if_fail (drafts != NULL, FALSE);
  g_return_val_if_fail (fold != NULL && pile < fold->n_piles, FALSE);
  g_return_val_if_fail (count > 0, FALSE);

  draft.count = count;
  return add_bars (drafts, fold, pile, draft, count);
}

void
lb_gesture_checks (GArray *drafts,
                   const LbFold *fold,
                   guint pile,
                   const LbCheck *said,
                   gsize n_said,
                   const GArray *known,
                   gint64 dive_us)
{
  g_return_if_fail (drafts != NULL);
  g_return_if_fail (fold != NULL && pile < fold->n_piles);
  g_return_if_fail (known != NULL);

  for (gsize i = 0; i < n_said; i++) {
    const LbCheck *before = lb_check_find (known, said[i].key);
    LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_CHECK);

    if (before != NULL && before->is_ticked == said[i].is_ticked)
      continue;
    draft.pile_id = fold->piles[pile].id;
    draft.what = said[i].key;
    draft.amount = said[i].is_ticked ? 1 : 0;
    draft.start_us = dive_us;
    g_array_append_val (drafts, draft);
  }
}

void
lb_gesture_answer (GArray *drafts,
                   const LbLedger *ledger,
                   const LbFinding *finding,
                   const char *reason)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_ANSWER);

  g_return_if_fail (drafts != NULL);
  g_return_if_fail (ledger != NULL);
  g_return_if_fail (finding != NULL && reason != NULL);

  if (finding->answer != NULL && g_str_equal (finding->answer->note, reason))
    return;
  draft.what = finding->key;
  draft.note = reason;
  if (finding->pile >= 0)
    draft.pile_id = lb_ledger_pile (ledger, (guint) finding->pile)->id;
  if (finding->shift >= 0 && !finding->is_signed)
    draft.shift_id = lb_ledger_shift (ledger, (guint) finding->shift)->id;
  g_array_append_val (drafts, draft);
}
