/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef void (*LbPlanLayerFunc) (GtkSnapshot *snapshot, int width, int height, gpointer data);

/* One of the sheets that lie over each other on the plan. Each is a widget of its own, because GTK
 * keeps a widget's picture until that widget is to be drawn again: what moves does not redraw
 * what rests. Takes no part in input. */
#define LB_TYPE_PLAN_LAYER (lb_plan_layer_get_type ())
G_DECLARE_FINAL_TYPE (LbPlanLayer, lb_plan_layer, LB, PLAN_LAYER, GtkWidget)

/* @data must outlive the layer, as the widget that it is a part of does. */
GtkWidget *lb_plan_layer_new (LbPlanLayerFunc draw, gpointer data);

G_END_DECLS
