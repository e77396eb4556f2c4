/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/demo-answers.h"

#include "book/finding.h"

/* A stub that was left part burned when the crane went: how it stood until the hook came. */
static const char *const stood[] = {
  "Slung to the caps on both sides until the crane was back",
  "The core still stands in the cut; roped off, nobody near it until the hook was on",
  "Left for the tide; slung to the next bent, the hook first thing next morning",
};

gboolean
lb_demo_answer_findings (LbBook *book, LbLedger *record, const LbDraft *like, GError **error)
{
  gboolean has_changed;

  if (!lb_book_read_on (book, record, &has_changed, error))
    return FALSE;

  g_autoptr (LbFold) fold = lb_fold_new (record, G_MAXINT64);
  const int shift = lb_ledger_find_shift (record, like->shift_id);
  g_autoptr (GArray) findings = lb_findings_new_of_shift (record, fold, shift);

  for (guint i = 0; i < findings->len; i++) {
    const LbFinding *finding = &g_array_index (findings, LbFinding, i);
    LbDraft draft = *like;

    if (finding->kind != LB_FINDING_NOT_RIGGED)
      continue;
    draft.kind = LB_ENTRY_ANSWER;
    draft.pile_id = lb_ledger_pile (record, (guint) finding->pile)->id;
    draft.what = finding->key;
    draft.note = stood[((guint) shift + i) % G_N_ELEMENTS (stood)];
    if (!lb_book_record (book, &draft, 1, NULL, error))
      return FALSE;
  }
  return TRUE;
}
