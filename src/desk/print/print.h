/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Paper, as the window asks for it. What goes wrong is said in @parent. */

/* Asks for a printer, then prints: a page for each of the @n piles (at least one), or the report
 * of @day. The window can be used meanwhile. */
void lb_print_cards (GtkWindow *parent, LbJob *job, const guint *piles, gsize n);
void lb_print_day (GtkWindow *parent, LbJob *job, guint32 day);

/* Asks for a name, then writes the same pages into a PDF file. */
void lb_save_cards (GtkWindow *parent, LbJob *job, const guint *piles, gsize n);
void lb_save_day (GtkWindow *parent, LbJob *job, guint32 day);

/* Writes them without asking; @path ends in .pdf and is replaced only by a whole file. */
gboolean lb_print_cards_to_file (LbJob *job,
                                 const guint *piles,
                                 gsize n,
                                 const char *path,
                                 GError **error);
gboolean lb_print_day_to_file (LbJob *job, guint32 day, const char *path, GError **error);

G_END_DECLS
