/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The cautions of a pile's cut, to be gone through before a dive, and the act that stores what was
 * ticked. It is told to show another pile or another state by lb_dive_checks_show(). */
#define LB_TYPE_DIVE_CHECKS (lb_dive_checks_get_type ())
G_DECLARE_FINAL_TYPE (LbDiveChecks, lb_dive_checks, LB, DIVE_CHECKS, GtkBox)

/* The next dive at @pile, or the one that was picked there before; %NULL for no job. */
void lb_dive_checks_show (LbDiveChecks *self, LbJob *job, guint pile);

/* Picks a dive at the shown pile by its entry's id. */
void lb_dive_checks_pick (LbDiveChecks *self, const char *dive_id);

G_END_DECLS
