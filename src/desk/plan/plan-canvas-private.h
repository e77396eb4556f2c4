/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/plan/plan-canvas.h"
#include "draw/plan.h"

G_BEGIN_DECLS

/* What plan-canvas.c (view, pictures) and plan-canvas-input.c (hands) share. */

typedef enum {
  LB_PLAN_DRAG_IDLE,
  LB_PLAN_DRAG_PRESSED, /* down, and not yet far enough to be a drag */
  LB_PLAN_DRAG_PAN,
  LB_PLAN_DRAG_BOX,
} LbPlanDrag;

typedef struct
{
  LbPlanDrag drag;
  double start_x, start_y; /* where the drag began */
  double now_x, now_y;     /* where it is */
  double pointer_x, pointer_y;
  gboolean has_pointer;
  gboolean is_space_held;
  double pinch_px_per_m;
} LbPlanInput;

struct _LbPlanCanvas
{
  GtkWidget parent_instance;

  /* Owned */
  LbJob *job;
  LbSelection *selection;
  GSignalGroup *job_signals;
  GSignalGroup *selection_signals;
  gboolean *shown;
  struct _LbPlanImage *image;
  GtkWidget *base_layer;   /* ground, marks, names */
  GtkWidget *picked_layer; /* rings round picked piles */
  GtkWidget *hand_layer;   /* hover, focus, box, the tool's frame */

  /* Borrowed */
  const LbPlan *plan; /* the job's, NULL without one */

  /* State */
  LbPlanView view;
  gboolean is_fitted; /* until somebody pans or zooms */
  LbStepSet shown_steps;
  int tool;
  int hovered;
  guint n_drawn;
  int width, height; /* as allocated last */
  LbPlanInput input;
};

void lb_plan_canvas_input_init (LbPlanCanvas *self);
void lb_plan_canvas_input_class_init (GtkWidgetClass *klass);

/* The pile at a place that can be picked, -1 for none. */
int lb_plan_canvas_pile_at (LbPlanCanvas *self, double x, double y);

void lb_plan_canvas_pan (LbPlanCanvas *self, double dx, double dy);
void lb_plan_canvas_zoom_about (LbPlanCanvas *self, double factor, double x, double y);
void lb_plan_canvas_set_hovered (LbPlanCanvas *self, int pile);

/* Pans just so far that the pile is well inside. */
void lb_plan_canvas_bring_in (LbPlanCanvas *self, guint pile);

/* The sides of the box being drawn. */
graphene_rect_t lb_plan_canvas_box (LbPlanCanvas *self);

/* Emitters of the canvas's signals. */
void lb_plan_canvas_emit_activated (LbPlanCanvas *self, int pile);
void lb_plan_canvas_emit_touched (LbPlanCanvas *self, const guint *piles, guint n);
void lb_plan_canvas_emit_menu (LbPlanCanvas *self, double x, double y);
void lb_plan_canvas_emit_escaped (LbPlanCanvas *self);

G_END_DECLS
