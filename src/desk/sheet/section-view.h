/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The section at the cut, as draw/section draws it; its bars can be touched, and walked with the
 * arrow keys in the order to burn.
 *
 * Signal "touched" (int bar): a bar was touched, or Space or Enter pressed on it. Records
 * nothing by itself. */
#define LB_TYPE_SECTION_VIEW (lb_section_view_get_type ())
G_DECLARE_FINAL_TYPE (LbSectionView, lb_section_view, LB, SECTION_VIEW, GtkWidget)

/* @job NULL for nothing; to be called again when the job has changed. */
void lb_section_view_show (LbSectionView *self, LbJob *job, guint pile);

/* Where a bar is drawn, in the widget's coordinates. */
void lb_section_view_bar_place (LbSectionView *self, guint bar, double *out_x, double *out_y);

G_END_DECLS
