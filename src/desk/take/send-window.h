/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* Asks which shifts go into a packet, and where to. */
#define LB_TYPE_SEND_WINDOW (lb_send_window_get_type ())
G_DECLARE_FINAL_TYPE (LbSendWindow, lb_send_window, LB, SEND_WINDOW, AdwWindow)

/* The job has a shift. @parent may be NULL. */
LbSendWindow *lb_send_window_new (GtkWindow *parent, LbJob *job);

G_END_DECLS
