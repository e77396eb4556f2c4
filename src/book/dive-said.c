/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/dive-said.h"

#include "book/book.h"
#include "book/gesture.h"

#include <glib/gi18n-lib.h>

static LbDraft *
add_draft (GArray *drafts, LbEntryKind kind, const char *pile_id)
{
  LbDraft draft = LB_DRAFT_INIT (kind);

  draft.pile_id = pile_id;
  g_array_append_val (drafts, draft);
  return &g_array_index (drafts, LbDraft, drafts->len - 1);
}

void
lb_gesture_detail (GArray *drafts, const char *which, const char *said)
{
  LbDraft *draft;

  g_return_if_fail (drafts != NULL && which != NULL);

  if (said == NULL || *said == '\0')
    return;
  draft = add_draft (drafts, LB_ENTRY_DETAIL, NULL);
  draft->what = which;
  draft->note = said;
}

static void
add_dive (GArray *drafts, const LbDiveSaid *said, const char *pile_id)
{
  LbDraft *dive = add_draft (drafts, LB_ENTRY_DIVE, pile_id);

  dive->what = said->diver;
  dive->amount = said->depth_m;
  dive->start_us = said->left_surface_us;
  dive->end_us = said->left_bottom_us;
  dive->up_us = said->reached_us;
}

/* The piles behind the first, which is the dive's own. */
static const char *
other_marks (const LbFold *fold, const LbDiveSaid *said, GStringChunk *strings)
{
  g_autoptr (GString) marks = g_string_new (NULL);

  for (gsize i = 1; i < said->n_piles; i++)
    g_string_append_printf (marks, "%s%s", i > 1 ? ", " : "", fold->piles[said->piles[i]].mark);
  return g_string_chunk_insert (strings, marks->str);
}

gboolean
lb_gesture_dive (GArray *drafts,
                 const LbFold *fold,
                 const LbDiveSaid *said,
                 GStringChunk *strings,
                 GError **error)
{
  g_return_val_if_fail (drafts != NULL && fold != NULL && said != NULL && strings != NULL, FALSE);

  const char *first = said->n_piles > 0 ? fold->piles[said->piles[0]].id : NULL;
  const char *only = said->n_piles == 1 ? first : NULL;

  if (said->n_bars > 0 && only == NULL) {
    g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                         _ ("Bars belong to one pile: name that one, or give each pile its bars in "
                            "a line of its own"));
    return FALSE;
  }
  add_dive (drafts, said, first);
  lb_gesture_detail (drafts, LB_DETAIL_MODE, said->mode);
  lb_gesture_detail (drafts, LB_DETAIL_VISIBILITY, said->visibility);
  lb_gesture_detail (drafts, LB_DETAIL_WORK, said->work);
  lb_gesture_detail (drafts, LB_DETAIL_ALSO_AT, other_marks (fold, said, strings));
  if (said->n_bars > 0)
    lb_gesture_bar_count (drafts, fold, said->piles[0], said->n_bars);
  if (said->rods > 0)
    add_draft (drafts, LB_ENTRY_RODS, only)->amount = said->rods;
  if (said->oxygen_m3 > 0)
    add_draft (drafts, LB_ENTRY_OXYGEN, only)->amount = said->oxygen_m3;
  return TRUE;
}
