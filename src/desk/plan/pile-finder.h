/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* An entry for a pile's mark, with the marks that fit below it.
 *
 * Signal "found" (int pile): somebody went to that pile.
 * Signal "left": Escape; nothing is looked for any more. */
#define LB_TYPE_PILE_FINDER (lb_pile_finder_get_type ())
G_DECLARE_FINAL_TYPE (LbPileFinder, lb_pile_finder, LB, PILE_FINDER, GtkWidget)

void lb_pile_finder_set_job (LbPileFinder *self, LbJob *job);

/* Empties the entry and puts the cursor there. */
void lb_pile_finder_begin (LbPileFinder *self);

G_END_DECLS
