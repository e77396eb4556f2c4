/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/plan/plan-layer.h"

struct _LbPlanLayer
{
  GtkWidget parent_instance;

  LbPlanLayerFunc draw;
  gpointer data;
};

G_DEFINE_FINAL_TYPE (LbPlanLayer, lb_plan_layer, GTK_TYPE_WIDGET)

static void
lb_plan_layer_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  LbPlanLayer *self = LB_PLAN_LAYER (widget);
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (self->draw != NULL && width > 0 && height > 0)
    self->draw (snapshot, width, height, self->data);
}

static void
lb_plan_layer_class_init (LbPlanLayerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = lb_plan_layer_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
lb_plan_layer_init (LbPlanLayer *self)
{
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
}

GtkWidget *
lb_plan_layer_new (LbPlanLayerFunc draw, gpointer data)
{
  LbPlanLayer *self = g_object_new (LB_TYPE_PLAN_LAYER, NULL);

  self->draw = draw;
  self->data = data;
  return GTK_WIDGET (self);
}
