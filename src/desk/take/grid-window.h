/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* Lays out bents and rows where there is no survey: counts, spacings, bearing, kind of pile, with
 * a picture of what will be laid. Nothing is taken until it is confirmed. */
#define LB_TYPE_GRID_WINDOW (lb_grid_window_get_type ())
G_DECLARE_FINAL_TYPE (LbGridWindow, lb_grid_window, LB, GRID_WINDOW, AdwWindow)

LbGridWindow *lb_grid_window_new (GtkWindow *parent, LbJob *job);

G_END_DECLS
