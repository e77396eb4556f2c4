/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* The copies that are kept of a job file, the newest first; touching one opens it for reading. */
GtkWindow *lb_copies_window_new (GtkWindow *parent, GFile *file);

/* Opens a copy, or any job file, in a window of its own. */
void lb_copies_open (GFile *file);

G_END_DECLS
