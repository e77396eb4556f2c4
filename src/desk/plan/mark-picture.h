/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/step.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The mark of a step as a small picture, for legends, buttons and menus. */
#define LB_TYPE_MARK_PICTURE (lb_mark_picture_get_type ())
G_DECLARE_FINAL_TYPE (LbMarkPicture, lb_mark_picture, LB, MARK_PICTURE, GtkWidget)

GtkWidget *lb_mark_picture_new (LbStep step);

G_END_DECLS
