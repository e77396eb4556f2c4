/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"
#include "desk/shell/selection.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The pier to look at and to touch: pans, zooms, picks.
 *
 * Signal "activated" (int pile): Enter, or pressed twice.
 * Signal "touched" (pointer to guint, guint n): piles touched or boxed while a tool is in hand.
 * Signal "menu" (double x, double y): the picked piles' menu was asked for, there.
 * Signal "escaped": Escape, with nothing of the canvas's own to break off. */
#define LB_TYPE_PLAN_CANVAS (lb_plan_canvas_get_type ())
G_DECLARE_FINAL_TYPE (LbPlanCanvas, lb_plan_canvas, LB, PLAN_CANVAS, GtkWidget)

void lb_plan_canvas_set_job (LbPlanCanvas *self, LbJob *job);
void lb_plan_canvas_set_selection (LbPlanCanvas *self, LbSelection *selection);

/* Only piles at these steps are shown and can be picked; 0 for all. */
void lb_plan_canvas_set_shown (LbPlanCanvas *self, LbStepSet steps);
gboolean lb_plan_canvas_shows (LbPlanCanvas *self, guint pile);

/* The step in hand: touching marks instead of picking; -1 for none. */
void lb_plan_canvas_set_tool (LbPlanCanvas *self, int step);

/* About the current pile where it is seen, else about the middle. */
void lb_plan_canvas_zoom (LbPlanCanvas *self, double factor);

void lb_plan_canvas_fit (LbPlanCanvas *self);

/* Brings a pile into the middle, unless the whole plan is on the page. */
void lb_plan_canvas_show_pile (LbPlanCanvas *self, guint pile);

/* Where a pile is now, in the canvas's own px. */
gboolean lb_plan_canvas_pile_place (LbPlanCanvas *self, guint pile, double *out_x, double *out_y);

/* How often the plan's own picture has been drawn: it must not be while only the pointer moves. */
guint lb_plan_canvas_count_drawn (LbPlanCanvas *self);

G_END_DECLS
