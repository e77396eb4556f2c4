/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What a page has to say to the person, through the window it stands in. */

/* A toast at the foot of the window; @undo: with a button that takes the last act back. */
void lb_say (GtkWidget *from, const char *text, gboolean undo);

/* Something went wrong: a dialog with the heading and the error's sentence; frees @error. */
void lb_say_error (GtkWidget *from, const char *heading, GError *error);

G_END_DECLS
