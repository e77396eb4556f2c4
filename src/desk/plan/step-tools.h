/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/step.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A row of buttons, of which at most one is down: the step that touched piles are marked with.
 *
 * Signal "changed": another is down, or none. */
#define LB_TYPE_STEP_TOOLS (lb_step_tools_get_type ())
G_DECLARE_FINAL_TYPE (LbStepTools, lb_step_tools, LB, STEP_TOOLS, GtkWidget)

int lb_step_tools_get_step (LbStepTools *self); /* -1 for none */
void lb_step_tools_set_step (LbStepTools *self, int step);

G_END_DECLS
