/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"
#include "desk/shell/selection.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* One window on one job, or on none yet: then it says how to begin. */
#define LB_TYPE_WINDOW (lb_window_get_type ())
G_DECLARE_FINAL_TYPE (LbWindow, lb_window, LB, WINDOW, AdwApplicationWindow)

LbWindow *lb_window_new (GtkApplication *application);

/* Opens @file on a worker and presents the window: a new one when the job, or why not, or that it
 * takes a while, is there to be shown. */
void lb_window_open (LbWindow *self, GFile *file);

/* The file shown or being opened, NULL for none. */
GFile *lb_window_get_file (LbWindow *self);

LbJob *lb_window_get_job (LbWindow *self); /* NULL for none */
LbSelection *lb_window_get_selection (LbWindow *self);

/* The page of that name, made when first asked for; NULL when there is none. */
GtkWidget *lb_window_get_page (LbWindow *self, const char *name);
void lb_window_show_page (LbWindow *self, const char *name);

G_END_DECLS
