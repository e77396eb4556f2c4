/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* Asks why what was burned at a pile in a shift is to teach nothing, and whether the whole shift is
 * meant; records it. @from: in the window to ask in */
void lb_set_aside_ask (GtkWidget *from, LbJob *job, int pile, int shift);

/* Records that it teaches again; @pile -1 for the whole shift. Says itself what went wrong. */
void lb_set_aside_undo (GtkWidget *from, LbJob *job, int pile, int shift);

G_END_DECLS
