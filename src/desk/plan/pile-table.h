/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"
#include "desk/shell/selection.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The plan as a list: every pile with its step, its facts and what is wrong with it. What is picked
 * here is picked on the plan. It is what a screen reader reads.
 *
 * Signal "activated" (int pile): Enter on a row, or pressed twice. */
#define LB_TYPE_PILE_TABLE (lb_pile_table_get_type ())
G_DECLARE_FINAL_TYPE (LbPileTable, lb_pile_table, LB, PILE_TABLE, GtkWidget)

void lb_pile_table_set_job (LbPileTable *self, LbJob *job);
void lb_pile_table_set_selection (LbPileTable *self, LbSelection *selection);
void lb_pile_table_set_shown (LbPileTable *self, LbStepSet steps); /* 0 for all */

G_END_DECLS
