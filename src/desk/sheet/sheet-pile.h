/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"
#include "trade/cut-plan.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* All that the sheet shows of one pile, taken from the job at one moment: good until the job's
 * next "changed". The cut plan is reckoned anew, which costs microseconds. */
typedef struct
{
  LbJob *job;
  guint index;
  const LbFold *fold;
  const LbPile *pile;
  const LbPileState *state;
  const LbVoice *voice;
  LbCutPlan plan;
} LbSheetPile;

void lb_sheet_pile_load (LbSheetPile *out, LbJob *job, guint index);

/* What stands side by side in @box stands one over the other with large text. */
void lb_sheet_pile_turn (GtkBox *box, LbJob *job);

G_END_DECLS
