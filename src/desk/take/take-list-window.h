/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* A pile list on its way in: which column is which fact, the first rows as they will be stored,
 * what is wrong line by line. Nothing is taken until it is confirmed. */
#define LB_TYPE_TAKE_LIST_WINDOW (lb_take_list_window_get_type ())
G_DECLARE_FINAL_TYPE (LbTakeListWindow, lb_take_list_window, LB, TAKE_LIST_WINDOW, AdwWindow)

/* Reads @file at once, on a worker; to be presented by the caller. */
LbTakeListWindow *lb_take_list_window_new (GtkWindow *parent, LbJob *job, GFile *file);

G_END_DECLS
