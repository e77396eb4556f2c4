/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Puts the focus into @widget after the layout that is due: what scrolls to the focus does not know
 * before where it will be. */
void lb_focus_later (GtkWidget *widget);

G_END_DECLS
