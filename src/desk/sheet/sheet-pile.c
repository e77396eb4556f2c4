/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/sheet-pile.h"

void
lb_sheet_pile_load (LbSheetPile *out, LbJob *job, guint index)
{
  const LbFold *fold = lb_job_get_fold (job);

  g_assert (index < fold->n_piles);

  out->job = job;
  out->index = index;
  out->fold = fold;
  out->pile = &fold->piles[index];
  out->state = &fold->states[index];
  out->voice = lb_job_get_voice (job);
  lb_cut_plan_reckon (out->pile, out->state->burned, out->state->n_unplaced, &fold->assumptions,
                      &out->plan);
}
