/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Says above the sheet whether the shift is signed, by whom and under which seal, and lets it be
 * signed or corrected. */
#define LB_TYPE_SIGN_BAR (lb_sign_bar_get_type ())
G_DECLARE_FINAL_TYPE (LbSignBar, lb_sign_bar, LB, SIGN_BAR, GtkBox)

/* %NULL for none; to be called again after every change of the job. */
void lb_sign_bar_show (LbSignBar *self, LbJob *job);

/* Asks who signs. @n_open: findings that nobody has answered. */
void lb_sign_bar_ask (LbSignBar *self, guint n_open);

G_END_DECLS
