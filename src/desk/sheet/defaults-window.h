/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* Every number the cut plans take for granted, with its source, to be set for this job. */
#define LB_TYPE_DEFAULTS_WINDOW (lb_defaults_window_get_type ())
G_DECLARE_FINAL_TYPE (LbDefaultsWindow, lb_defaults_window, LB, DEFAULTS_WINDOW, AdwWindow)

LbDefaultsWindow *lb_defaults_window_new (GtkWindow *parent, LbJob *job);

G_END_DECLS
