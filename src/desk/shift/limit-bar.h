/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Bottom time against a no-stop limit: a bar, and its figures below. */

/**
 * lb_limit_bar_new:
 * @note: (nullable): a sentence that stands below
 *
 * Returns: (transfer floating): @spent_s of @limit_s
 */
GtkWidget *lb_limit_bar_new (double spent_s, double limit_s, const char *said, const char *note);

/* The words alone, where there is nothing to draw. */
GtkWidget *lb_limit_words_new (const char *said);

G_END_DECLS
