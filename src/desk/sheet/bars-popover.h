/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Asks how many bars of a pile were burned, and whether it was the next ones in the order or is
 * not known which; or which ones were found gone. Records it as one act. */
#define LB_TYPE_BARS_POPOVER (lb_bars_popover_get_type ())
G_DECLARE_FINAL_TYPE (LbBarsPopover, lb_bars_popover, LB, BARS_POPOVER, GtkPopover)

/* @job NULL for nothing; to be called again when the job has changed. */
void lb_bars_popover_show (LbBarsPopover *self, LbJob *job, guint pile);

/* Once it is on the screen: asks whether @bar was found gone. */
void lb_bars_popover_ask_gone (LbBarsPopover *self, guint bar);

G_END_DECLS
