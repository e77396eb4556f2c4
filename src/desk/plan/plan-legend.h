/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/step.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The legend over the plan: mark, word and count of each step. Pressed ones are shown alone.
 *
 * Signal "changed": others are pressed. */
#define LB_TYPE_PLAN_LEGEND (lb_plan_legend_get_type ())
G_DECLARE_FINAL_TYPE (LbPlanLegend, lb_plan_legend, LB, PLAN_LEGEND, GtkWidget)

void lb_plan_legend_set_counts (LbPlanLegend *self, const guint n_by_step[LB_N_STEPS]);

/* The pressed ones; 0 when none is, and all are to be shown. */
LbStepSet lb_plan_legend_get_steps (LbPlanLegend *self);
void lb_plan_legend_clear (LbPlanLegend *self);

/* A step as a word of its own: "Standing"; translated. */
const char *lb_step_title (LbStep step);

G_END_DECLS
