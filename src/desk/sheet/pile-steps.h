/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Buttons that record what happened to the piles picked: the steps, and in a menu what is rarer
 * ("pile.drawn", "pile.broke", "pile.note", each for one pile alone). */
#define LB_TYPE_PILE_STEPS (lb_pile_steps_get_type ())
G_DECLARE_FINAL_TYPE (LbPileSteps, lb_pile_steps, LB, PILE_STEPS, GtkBox)

/* @job NULL for nothing; to be called again when the job has changed. @piles are copied. */
void lb_pile_steps_show (LbPileSteps *self, LbJob *job, const guint *piles, gsize n);

G_END_DECLS
