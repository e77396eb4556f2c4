/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Every figure of a pile's cut plan: value, range, and under them the reason and how far it can be
 * trusted. */
#define LB_TYPE_FIGURE_LIST (lb_figure_list_get_type ())
G_DECLARE_FINAL_TYPE (LbFigureList, lb_figure_list, LB, FIGURE_LIST, GtkBox)

/* To be called again when the job has changed; @job NULL for nothing. */
void lb_figure_list_show (LbFigureList *self, LbJob *job, guint pile);

G_END_DECLS
