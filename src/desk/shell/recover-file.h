/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Asks where to, puts what can be read of a damaged job file there (book/recover.h), says what came
 * of it and opens the new file. */
void lb_recover_file (GtkWindow *window, GFile *damaged);

/* The same to a place that is known. */
void lb_recover_file_to (GtkWindow *window, GFile *damaged, GFile *file);

G_END_DECLS
