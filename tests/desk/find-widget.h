/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The first widget of @type within @parent that shows or is called @text (NULL for any): a label,
 * a button, a row by its title, or a field of the shift's sheet by its caption. NULL when there is none. */
GtkWidget *find_widget (GtkWidget *parent, GType type, const char *text);

G_END_DECLS
