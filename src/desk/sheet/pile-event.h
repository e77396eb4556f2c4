/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What happens to a pile besides the steps; the last two ask first. @from: the widget it was asked
 * for at. */
void lb_pile_event_drawn (GtkWidget *from, LbJob *job, guint pile);
void lb_pile_event_broke (GtkWidget *from, LbJob *job, guint pile);
void lb_pile_event_note (GtkWidget *from, LbJob *job, guint pile);

G_END_DECLS
