/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"
#include "desk/shell/selection.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A part of the window that shows the job, and knows which piles are picked.
 * Properties "job" (LbJob, nullable) and "selection" (LbSelection, nullable). */
#define LB_TYPE_JOB_PAGE (lb_job_page_get_type ())
G_DECLARE_DERIVABLE_TYPE (LbJobPage, lb_job_page, LB, JOB_PAGE, GtkWidget)

struct _LbJobPageClass
{
  GtkWidgetClass parent_class;

  /* All may be left out. */

  /* Another job is there, or none any more; "job_changed" is not called for it. */
  void (*job_set) (LbJobPage *self);

  /* The job that is there says "changed". */
  void (*job_changed) (LbJobPage *self);

  /* Another selection is there; "selection_changed" is not called for it. */
  void (*selection_set) (LbJobPage *self);

  /* Other piles are picked, or another is the current one. */
  void (*selection_changed) (LbJobPage *self);
};

LbJob *lb_job_page_get_job (LbJobPage *self);
LbSelection *lb_job_page_get_selection (LbJobPage *self);

/* Nothing is told any more; to be called first in a subclass's dispose, which takes apart what the
 * functions above touch. */
void lb_job_page_leave (LbJobPage *self);

G_END_DECLS
