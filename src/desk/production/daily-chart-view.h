/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The daily chart on the screen; the pointer and the arrow keys walk the days.
 *
 * Property "day": Julian day under the pointer or keyboard, 0 for none. Its accessible description
 * is that day's figures. */
#define LB_TYPE_DAILY_CHART_VIEW (lb_daily_chart_view_get_type ())
G_DECLARE_FINAL_TYPE (LbDailyChartView, lb_daily_chart_view, LB, DAILY_CHART_VIEW, GtkWidget)

/* Shows @job's days, and again whenever it changes; NULL shows none. */
void lb_daily_chart_view_set_job (LbDailyChartView *self, LbJob *job);

guint32 lb_daily_chart_view_get_day (LbDailyChartView *self);

/* Puts the focus on a day; 0 or a day without a shift takes it away. */
void lb_daily_chart_view_set_day (LbDailyChartView *self, guint32 day);

G_END_DECLS
