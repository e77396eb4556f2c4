/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Every day with a shift, newest first, with all its sums: the chart as a table. To be shown
 * again when the job changes; the days that say the same stay where they are. */
void lb_day_table_show (GtkColumnView *view, LbJob *job);

G_END_DECLS
