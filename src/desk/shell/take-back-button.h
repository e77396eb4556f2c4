/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A small button at the end of an entry's row that takes its act back, whichever act came later.
 * @what: the entry in words, for those who do not see the row. */
GtkWidget *lb_take_back_button_new (LbJob *job, const char *act, const char *what);

G_END_DECLS
