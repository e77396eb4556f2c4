/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* The pier as it stood at the end of each day of the job, by what is known today: a slider over the
 * days, and a button that plays them. Nothing can be recorded in it. */
#define LB_TYPE_PIER_WINDOW (lb_pier_window_get_type ())
G_DECLARE_FINAL_TYPE (LbPierWindow, lb_pier_window, LB, PIER_WINDOW, AdwWindow)

LbPierWindow *lb_pier_window_new (GtkWindow *parent, LbJob *job);

/* 0 before the first day, 1 for the end of the first, and so on. */
void lb_pier_window_set_day (LbPierWindow *self, guint day);
guint lb_pier_window_get_day (LbPierWindow *self);

G_END_DECLS
