/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* What a packet, or another copy of the job file, brings: told, and joined when somebody says so. */
#define LB_TYPE_JOIN_WINDOW (lb_join_window_get_type ())
G_DECLARE_FINAL_TYPE (LbJoinWindow, lb_join_window, LB, JOIN_WINDOW, AdwWindow)

/* @parent may be NULL. */
LbJoinWindow *lb_join_window_new (GtkWindow *parent, LbJob *job, GFile *file);

G_END_DECLS
