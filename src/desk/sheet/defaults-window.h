/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"
#include "trade/figure-basis.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* Every number the cut plans take for granted, with its source, to be set for this job. */
#define LB_TYPE_DEFAULTS_WINDOW (lb_defaults_window_get_type ())
G_DECLARE_FINAL_TYPE (LbDefaultsWindow, lb_defaults_window, LB, DEFAULTS_WINDOW, AdwWindow)

LbDefaultsWindow *lb_defaults_window_new (GtkWindow *parent, LbJob *job);

/* Shows the row in which an assumption, the visibility or the no-stop table is set; the window is on
 * the screen. */
void lb_defaults_window_ask (LbDefaultsWindow *self, const LbInput *input);

G_END_DECLS
