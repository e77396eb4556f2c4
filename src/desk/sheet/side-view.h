/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A pile seen from the side, as draw/side draws it. */
#define LB_TYPE_SIDE_VIEW (lb_side_view_get_type ())
G_DECLARE_FINAL_TYPE (LbSideView, lb_side_view, LB, SIDE_VIEW, GtkWidget)

/* @job NULL for nothing; to be called again when the job has changed. */
void lb_side_view_show (LbSideView *self, LbJob *job, guint pile);

G_END_DECLS
