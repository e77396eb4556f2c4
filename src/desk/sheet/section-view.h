/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/sheet/sheet-pile.h"
#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The section at the cut, as draw/section draws it; its bars can be touched, and walked with the
 * arrow keys in the order to burn. Page Down, Page Up, period and comma look ahead in that order and
 * back, Home to how the pile stands: what is burned by then is gone, and the bars left say what they
 * bear.
 *
 * Signal "touched" (int bar): a bar was touched, or Space or Enter pressed on it. Records
 * nothing by itself.
 * Signal "stepped": another step is shown, by key or by lb_section_view_set_step(). */
#define LB_TYPE_SECTION_VIEW (lb_section_view_get_type ())
G_DECLARE_FINAL_TYPE (LbSectionView, lb_section_view, LB, SECTION_VIEW, GtkWidget)

/* @job NULL for nothing; to be called again when the job has changed. */
void lb_section_view_show (LbSectionView *self, LbJob *job, guint pile);

/* Whether there is an order and what the bars bear can be said. */
gboolean lb_section_view_can_step (const LbSheetPile *shown);

/* Steps looked ahead, of those there are; 0 is how the pile stands. Records nothing. */
gsize lb_section_view_get_n_steps (LbSectionView *self);
gsize lb_section_view_get_step (LbSectionView *self);
void lb_section_view_set_step (LbSectionView *self, gsize step);

/* Where a bar is drawn, in the widget's coordinates. */
void lb_section_view_bar_place (LbSectionView *self, guint bar, double *out_x, double *out_y);

G_END_DECLS
