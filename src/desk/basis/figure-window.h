/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"
#include "trade/figure-basis.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* A figure of a pile's cut plan opened: its value and range, formula, source, and all that it rests
 * on. A figure among those opens in turn; an assumption leads to where it is set, a fact to the
 * pile's facts, a lesson to the samples it was learned from. */
#define LB_TYPE_FIGURE_WINDOW (lb_figure_window_get_type ())
G_DECLARE_FINAL_TYPE (LbFigureWindow, lb_figure_window, LB, FIGURE_WINDOW, AdwWindow)

/**
 * lb_figure_window_new:
 * @from: in the pile sheet; its action "sheet.ask-fact" is activated for a fact that is wanted
 */
LbFigureWindow *lb_figure_window_new (GtkWidget *from, LbJob *job, guint pile, LbFigureId id);

LbFigureId lb_figure_window_get_figure (LbFigureWindow *self);

G_END_DECLS
