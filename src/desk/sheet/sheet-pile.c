/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/sheet-pile.h"

/* From this size of text on there is no room for two things side by side. */
#define STACK_FROM_SCALE 1.25

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
  lb_cut_plan_reckon (out->pile, out->state->burned, out->state->gone, out->state->n_unplaced,
                      lb_fold_basis (fold), &out->plan);
}

void
lb_sheet_pile_turn (GtkBox *box, LbJob *job)
{
  const gboolean is_stacked = lb_job_get_voice (job)->scale >= STACK_FROM_SCALE;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (box), is_stacked ? GTK_ORIENTATION_VERTICAL
                                                                   : GTK_ORIENTATION_HORIZONTAL);
}
