/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* A short table of the job to be typed: the crane's chart, or the layers of the ground. */
#define LB_TYPE_TABLE_WINDOW (lb_table_window_get_type ())
G_DECLARE_FINAL_TYPE (LbTableWindow, lb_table_window, LB, TABLE_WINDOW, AdwWindow)

LbTableWindow *lb_table_window_new (GtkWindow *parent, LbJob *job, LbSettingTable table);

G_END_DECLS
