/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/plan/plan-legend.h"

#include "desk/plan/mark-picture.h"

#include <glib/gi18n-lib.h>

struct _LbPlanLegend
{
  GtkWidget parent_instance;

  GtkWidget *flow;
  GtkToggleButton *buttons[LB_N_STEPS];
  GtkLabel *counts[LB_N_STEPS];
  gboolean is_clearing;
};

G_DEFINE_FINAL_TYPE (LbPlanLegend, lb_plan_legend, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

const char *
lb_step_title (LbStep step)
{
  switch (step) {
  case LB_STEP_STANDING:
    return _ ("Standing");
  case LB_STEP_CLEANED:
    return _ ("Cleaned");
  case LB_STEP_SEVERED:
    return _ ("Severed");
  case LB_STEP_RIGGED:
    return _ ("Rigged");
  case LB_STEP_PULLED:
    return _ ("Pulled");
  default:
    g_return_val_if_reached (NULL);
  }
}

static void
toggled_cb (LbPlanLegend *self)
{
  if (!self->is_clearing)
    g_signal_emit (self, signals[CHANGED], 0);
}

static void
add_button (LbPlanLegend *self, LbStep step)
{
  GtkWidget *button = gtk_toggle_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  GtkWidget *count = gtk_label_new ("0");
  GtkWidget *child;

  gtk_box_append (GTK_BOX (box), lb_mark_picture_new (step));
  gtk_box_append (GTK_BOX (box), gtk_label_new (lb_step_title (step)));
  gtk_box_append (GTK_BOX (box), count);
  gtk_widget_add_css_class (count, "strong");
  gtk_widget_add_css_class (count, "numeric");
  gtk_widget_add_css_class (button, "flat");
  gtk_button_set_child (GTK_BUTTON (button), box);
  g_signal_connect_swapped (button, "toggled", G_CALLBACK (toggled_cb), self);
  gtk_flow_box_append (GTK_FLOW_BOX (self->flow), button);
  /* The button takes the focus, not the cell it lies in. */
  child = gtk_widget_get_parent (button);
  gtk_widget_set_focusable (child, FALSE);

  self->buttons[step] = GTK_TOGGLE_BUTTON (button);
  self->counts[step] = GTK_LABEL (count);
}

static void
lb_plan_legend_dispose (GObject *object)
{
  g_clear_pointer (&LB_PLAN_LEGEND (object)->flow, gtk_widget_unparent);
  G_OBJECT_CLASS (lb_plan_legend_parent_class)->dispose (object);
}

static void
lb_plan_legend_class_init (LbPlanLegendClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_plan_legend_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);

  signals[CHANGED] = g_signal_new ("changed", LB_TYPE_PLAN_LEGEND, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
lb_plan_legend_init (LbPlanLegend *self)
{
  gtk_widget_add_css_class (GTK_WIDGET (self), "legend");
  self->flow = gtk_flow_box_new ();
  gtk_flow_box_set_selection_mode (GTK_FLOW_BOX (self->flow), GTK_SELECTION_NONE);
  gtk_flow_box_set_max_children_per_line (GTK_FLOW_BOX (self->flow), LB_N_STEPS);
  gtk_flow_box_set_min_children_per_line (GTK_FLOW_BOX (self->flow), 2);
  gtk_flow_box_set_row_spacing (GTK_FLOW_BOX (self->flow), 0);
  gtk_flow_box_set_column_spacing (GTK_FLOW_BOX (self->flow), 0);
  gtk_flow_box_set_homogeneous (GTK_FLOW_BOX (self->flow), FALSE);
  gtk_widget_set_halign (self->flow, GTK_ALIGN_START);
  gtk_widget_set_parent (self->flow, GTK_WIDGET (self));
  for (int step = 0; step < LB_N_STEPS; step++)
    add_button (self, (LbStep) step);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Show only piles at a step"), -1);
}

void
lb_plan_legend_set_counts (LbPlanLegend *self, const guint n_by_step[LB_N_STEPS])
{
  g_return_if_fail (LB_IS_PLAN_LEGEND (self));

  for (int step = 0; step < LB_N_STEPS; step++) {
    g_autofree char *count = g_strdup_printf ("%u", n_by_step[step]);
    /* Translators: a step and how many piles are at it. */
    g_autofree char *label = g_strdup_printf (_ ("%s: %s"), lb_step_title ((LbStep) step), count);
    g_autofree char *tip = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Show only this pile: %s",
                                                         "Show only these piles: %s",
                                                         n_by_step[step]),
                                            lb_step_title ((LbStep) step));

    gtk_label_set_label (self->counts[step], count);
    gtk_accessible_update_property (GTK_ACCESSIBLE (self->buttons[step]),
                                    GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
    gtk_widget_set_tooltip_text (GTK_WIDGET (self->buttons[step]), tip);
  }
}

LbStepSet
lb_plan_legend_get_steps (LbPlanLegend *self)
{
  LbStepSet steps = 0;

  g_return_val_if_fail (LB_IS_PLAN_LEGEND (self), 0);

  for (int step = 0; step < LB_N_STEPS; step++)
    if (gtk_toggle_button_get_active (self->buttons[step]))
      steps |= LB_STEP_BIT (step);
  return steps;
}

void
lb_plan_legend_clear (LbPlanLegend *self)
{
  g_return_if_fail (LB_IS_PLAN_LEGEND (self));

  if (lb_plan_legend_get_steps (self) == 0)
    return;
  self->is_clearing = TRUE;
  for (int step = 0; step < LB_N_STEPS; step++)
    gtk_toggle_button_set_active (self->buttons[step], FALSE);
  self->is_clearing = FALSE;
  g_signal_emit (self, signals[CHANGED], 0);
}
