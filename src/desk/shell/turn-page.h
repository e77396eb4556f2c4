/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Shows a page of @stack and hides the one before, so that no page is styled or measured, nor its
 * pictures read, that is not seen. In the .ui file all pages but the first are not visible. */
void lb_turn_page (GtkStack *stack, const char *name);

G_END_DECLS
