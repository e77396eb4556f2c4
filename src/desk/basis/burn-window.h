/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* What the job's own dives taught of burning: the samples, each to be set aside or taken in again,
 * and the rates by bar size and visibility. */
#define LB_TYPE_BURN_WINDOW (lb_burn_window_get_type ())
G_DECLARE_FINAL_TYPE (LbBurnWindow, lb_burn_window, LB, BURN_WINDOW, AdwWindow)

LbBurnWindow *lb_burn_window_new (GtkWindow *parent, LbJob *job);

G_END_DECLS
