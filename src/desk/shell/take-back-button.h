/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A small button at the end of an entry's row that takes its act back, whichever act came later. */
GtkWidget *lb_take_back_button_new (LbJob *job, const char *act);

G_END_DECLS
