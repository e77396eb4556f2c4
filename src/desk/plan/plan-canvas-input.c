/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Hands on the canvas.
 *
 * Pressing picks; with Control it adds. Dragging draws a box, or moves the plan when the middle
 * button or the space bar is held or a finger does it. The drag is a small machine, LbPlanDrag:
 * it claims the pointer only when it has gone past a threshold, so that a press that shakes is
 * still a press, and Escape leads back to idle with nothing changed. What was drawn or touched
 * takes effect once, on release.
 */
#include "desk/plan/plan-canvas-private.h"

#include <math.h>

/* A hand in a wet glove shakes; the platform's own threshold is 8 px. */
#define DRAG_FROM_PX 8.0

/* One notch of a wheel. */
#define WHEEL_PAN_PX  60.0
#define WHEEL_ZOOM    1.2
#define SURFACE_ZOOMS 100.0 /* px of a touchpad that make one notch */

static gboolean
is_adding (GtkEventController *controller)
{
  return (gtk_event_controller_get_current_event_state (controller) & GDK_CONTROL_MASK) != 0;
}

static void
pick (LbPlanCanvas *self, int pile, gboolean adds)
{
  if (self->selection == NULL)
    return;
  if (!adds)
    lb_selection_set_current (self->selection, pile);
  else if (pile >= 0)
    lb_selection_toggle (self->selection, (guint) pile);
}

static void
ask_menu (LbPlanCanvas *self, double x, double y)
{
  const int pile = lb_plan_canvas_pile_at (self, x, y);

  if (pile < 0 || self->selection == NULL)
    return;
  if (!lb_selection_has (self->selection, (guint) pile))
    lb_selection_set_current (self->selection, pile);
  lb_plan_canvas_emit_menu (self, x, y);
}

static void
pressed_cb (GtkGestureClick *gesture, int n_press, double x, double y, LbPlanCanvas *self)
{
  const guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (gesture));

  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (button == GDK_BUTTON_SECONDARY) {
    gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
    ask_menu (self, x, y);
  } else if (n_press == 2 && button != GDK_BUTTON_MIDDLE && self->tool < 0) {
    const int pile = lb_plan_canvas_pile_at (self, x, y);

    if (pile >= 0)
      lb_plan_canvas_emit_activated (self, pile);
  }
}

static void
released_cb (GtkGestureClick *gesture, int n_press, double x, double y, LbPlanCanvas *self)
{
  const guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (gesture));
  const int pile = lb_plan_canvas_pile_at (self, x, y);

  if (button == GDK_BUTTON_SECONDARY || button == GDK_BUTTON_MIDDLE || n_press > 1 ||
      self->input.is_space_held)
    return;
  if (self->tool < 0) {
    pick (self, pile, is_adding (GTK_EVENT_CONTROLLER (gesture)));
  } else if (pile >= 0) {
    const guint touched = (guint) pile;

    lb_plan_canvas_emit_touched (self, &touched, 1);
  }
}

static void
set_drag (LbPlanCanvas *self, LbPlanDrag drag)
{
  self->input.drag = drag;
  gtk_widget_queue_draw (self->hand_layer);
}

static gboolean
drags_plan (LbPlanCanvas *self, GtkGestureDrag *gesture)
{
  const guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (gesture));
  GdkDevice *device = gtk_event_controller_get_current_event_device (
    GTK_EVENT_CONTROLLER (gesture));
  const gboolean is_finger = device != NULL &&
                             gdk_device_get_source (device) == GDK_SOURCE_TOUCHSCREEN &&
                             self->tool < 0;

  return button == GDK_BUTTON_MIDDLE || self->input.is_space_held || is_finger;
}

static void
drag_begin_cb (GtkGestureDrag *gesture, double x, double y, LbPlanCanvas *self)
{
  self->input.start_x = self->input.now_x = x;
  self->input.start_y = self->input.now_y = y;
  set_drag (self, LB_PLAN_DRAG_PRESSED);
}

static void
drag_update_cb (GtkGestureDrag *gesture, double dx, double dy, LbPlanCanvas *self)
{
  LbPlanInput *input = &self->input;
  const double x = input->start_x + dx, y = input->start_y + dy;

  if (input->drag == LB_PLAN_DRAG_IDLE)
    return;
  if (input->drag == LB_PLAN_DRAG_PRESSED) {
    if (hypot (dx, dy) < DRAG_FROM_PX)
      return;
    gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
    lb_plan_canvas_set_hovered (self, -1);
    set_drag (self, drags_plan (self, gesture) ? LB_PLAN_DRAG_PAN : LB_PLAN_DRAG_BOX);
  }
  if (input->drag == LB_PLAN_DRAG_PAN) {
    const double pan_x = round (x - input->now_x), pan_y = round (y - input->now_y);

    lb_plan_canvas_pan (self, pan_x, pan_y);
    input->now_x += pan_x;
    input->now_y += pan_y;
    return;
  }
  input->now_x = x;
  input->now_y = y;
  gtk_widget_queue_draw (self->hand_layer);
}

static GArray *
piles_in_box (LbPlanCanvas *self)
{
  const graphene_rect_t box = lb_plan_canvas_box (self);
  GArray *piles = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; self->plan != NULL && i < self->plan->n_piles; i++) {
    double x, y;

    if (lb_plan_canvas_shows (self, i) && lb_plan_canvas_pile_place (self, i, &x, &y) &&
        graphene_rect_contains_point (&box, &GRAPHENE_POINT_INIT ((float) x, (float) y)))
      g_array_append_val (piles, i);
  }
  return piles;
}

static void
take_box (LbPlanCanvas *self, gboolean adds)
{
  g_autoptr (GArray) piles = piles_in_box (self);
  const guint *boxed = (const guint *) (gpointer) piles->data;

  if (self->tool >= 0) {
    if (piles->len > 0)
      lb_plan_canvas_emit_touched (self, boxed, piles->len);
    return;
  }
  if (self->selection == NULL)
    return;
  if (adds) {
    gsize n;
    const guint *before = lb_selection_get_piles (self->selection, &n);

    g_array_append_vals (piles, before, (guint) n);
  }
  lb_selection_set_piles (self->selection, (const guint *) (gpointer) piles->data, piles->len);
}

static void
drag_end_cb (GtkGestureDrag *gesture, double dx, double dy, LbPlanCanvas *self)
{
  const LbPlanDrag drag = self->input.drag;

  if (drag == LB_PLAN_DRAG_BOX)
    take_box (self, is_adding (GTK_EVENT_CONTROLLER (gesture)));
  set_drag (self, LB_PLAN_DRAG_IDLE);
}

static void
drag_cancel_cb (GtkGesture *gesture, GdkEventSequence *sequence, LbPlanCanvas *self)
{
  set_drag (self, LB_PLAN_DRAG_IDLE);
}

static gboolean
scroll_cb (GtkEventControllerScroll *controller, double dx, double dy, LbPlanCanvas *self)
{
  const GdkModifierType state = gtk_event_controller_get_current_event_state (
    GTK_EVENT_CONTROLLER (controller));
  const gboolean is_wheel = gtk_event_controller_scroll_get_unit (controller) ==
                            GDK_SCROLL_UNIT_WHEEL;
  const double px = is_wheel ? WHEEL_PAN_PX : 1;

  if (state & GDK_CONTROL_MASK)
    lb_plan_canvas_zoom_about (self, pow (WHEEL_ZOOM, -dy / (is_wheel ? 1 : SURFACE_ZOOMS)),
                               self->input.pointer_x, self->input.pointer_y);
  else if (state & GDK_SHIFT_MASK && is_wheel)
    lb_plan_canvas_pan (self, -dy * px, -dx * px);
  else
    lb_plan_canvas_pan (self, -dx * px, -dy * px);
  return GDK_EVENT_STOP;
}

static void
pinch_begin_cb (GtkGesture *gesture, GdkEventSequence *sequence, LbPlanCanvas *self)
{
  self->input.pinch_px_per_m = self->view.px_per_m;
  set_drag (self, LB_PLAN_DRAG_IDLE);
}

static void
pinch_cb (GtkGestureZoom *gesture, double scale, LbPlanCanvas *self)
{
  double x, y;

  if (gtk_gesture_get_bounding_box_center (GTK_GESTURE (gesture), &x, &y))
    lb_plan_canvas_zoom_about (self, self->input.pinch_px_per_m * scale / self->view.px_per_m, x,
                               y);
}

static void
long_press_cb (GtkGestureLongPress *gesture, double x, double y, LbPlanCanvas *self)
{
  ask_menu (self, x, y);
}

static void
motion_cb (GtkEventControllerMotion *controller, double x, double y, LbPlanCanvas *self)
{
  self->input.pointer_x = x;
  self->input.pointer_y = y;
  self->input.has_pointer = TRUE;
  if (self->input.drag != LB_PLAN_DRAG_BOX && self->input.drag != LB_PLAN_DRAG_PAN)
    lb_plan_canvas_set_hovered (self, lb_plan_canvas_pile_at (self, x, y));
}

static void
leave_cb (GtkEventControllerMotion *controller, LbPlanCanvas *self)
{
  self->input.has_pointer = FALSE;
  lb_plan_canvas_set_hovered (self, -1);
}

static void
hold_space (LbPlanCanvas *self, gboolean is_held)
{
  if (self->input.is_space_held == is_held)
    return;
  self->input.is_space_held = is_held;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), is_held           ? "grab"
                                                      : self->tool >= 0 ? "crosshair"
                                                                        : NULL);
}

static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint key,
                guint code,
                GdkModifierType state,
                LbPlanCanvas *self)
{
  if (key != GDK_KEY_space)
    return GDK_EVENT_PROPAGATE;
  hold_space (self, TRUE);
  return GDK_EVENT_STOP;
}

static void
key_released_cb (GtkEventControllerKey *controller,
                 guint key,
                 guint code,
                 GdkModifierType state,
                 LbPlanCanvas *self)
{
  if (key == GDK_KEY_space)
    hold_space (self, FALSE);
}

static void
focus_left_cb (GtkEventControllerFocus *controller, LbPlanCanvas *self)
{
  hold_space (self, FALSE);
}

/* The next shown pile that way. Walks over those the legend has filtered out. */
static int
shown_neighbour (LbPlanCanvas *self, int from, double angle)
{
  for (gsize left = self->plan->n_piles; left > 0; left--) {
    from = lb_plan_neighbour (self->plan, from, angle);
    if (from < 0 || lb_plan_canvas_shows (self, (guint) from))
      return from;
  }
  return -1;
}

static int
first_shown (LbPlanCanvas *self, gboolean is_last)
{
  const guint n = (guint) self->plan->n_piles;

  for (guint i = 0; i < n; i++) {
    const guint pile = is_last ? n - 1 - i : i;

    if (lb_plan_canvas_shows (self, pile))
      return (int) pile;
  }
  return -1;
}

static gboolean
go_to (LbPlanCanvas *self, int pile)
{
  if (pile < 0)
    return GDK_EVENT_STOP; /* there is nothing that way, and focus stays in the plan */
  lb_selection_set_current (self->selection, pile);
  lb_plan_canvas_bring_in (self, (guint) pile);
  return GDK_EVENT_STOP;
}

static gboolean
can_go (LbPlanCanvas *self)
{
  return self->plan != NULL && self->selection != NULL && self->plan->n_piles > 0;
}

static gboolean
go_cb (GtkWidget *widget, GVariant *angle, gpointer data)
{
  LbPlanCanvas *self = LB_PLAN_CANVAS (widget);
  int current;

  if (!can_go (self))
    return GDK_EVENT_PROPAGATE;
  current = lb_selection_get_current (self->selection);
  return go_to (self, current < 0 ? first_shown (self, FALSE)
                                  : shown_neighbour (self, current, g_variant_get_double (angle)));
}

static gboolean
go_end_cb (GtkWidget *widget, GVariant *is_last, gpointer data)
{
  LbPlanCanvas *self = LB_PLAN_CANVAS (widget);

  if (!can_go (self))
    return GDK_EVENT_PROPAGATE;
  return go_to (self, first_shown (self, g_variant_get_boolean (is_last)));
}

static gboolean
activate_cb (GtkWidget *widget, GVariant *unused, gpointer data)
{
  LbPlanCanvas *self = LB_PLAN_CANVAS (widget);
  const int current = self->selection != NULL ? lb_selection_get_current (self->selection) : -1;
  const guint touched = (guint) MAX (current, 0);

  if (current < 0)
    return GDK_EVENT_PROPAGATE;
  if (self->tool >= 0)
    lb_plan_canvas_emit_touched (self, &touched, 1);
  else
    lb_plan_canvas_emit_activated (self, current);
  return GDK_EVENT_STOP;
}

static gboolean
menu_key_cb (GtkWidget *widget, GVariant *unused, gpointer data)
{
  LbPlanCanvas *self = LB_PLAN_CANVAS (widget);
  const int current = self->selection != NULL ? lb_selection_get_current (self->selection) : -1;
  double x, y;

  if (current < 0 || !lb_plan_canvas_pile_place (self, (guint) current, &x, &y))
    return GDK_EVENT_PROPAGATE;
  lb_plan_canvas_emit_menu (self, x, y);
  return GDK_EVENT_STOP;
}

static gboolean
escape_cb (GtkWidget *widget, GVariant *unused, gpointer data)
{
  LbPlanCanvas *self = LB_PLAN_CANVAS (widget);

  if (self->input.drag != LB_PLAN_DRAG_IDLE)
    set_drag (self, LB_PLAN_DRAG_IDLE);
  else
    lb_plan_canvas_emit_escaped (self);
  return GDK_EVENT_STOP;
}

static gboolean
pick_all_cb (GtkWidget *widget, GVariant *unused, gpointer data)
{
  LbPlanCanvas *self = LB_PLAN_CANVAS (widget);
  g_autoptr (GArray) piles = g_array_new (FALSE, FALSE, sizeof (guint));

  if (!can_go (self))
    return GDK_EVENT_PROPAGATE;
  for (guint i = 0; i < self->plan->n_piles; i++)
    if (lb_plan_canvas_shows (self, i))
      g_array_append_val (piles, i);
  lb_selection_set_piles (self->selection, (const guint *) (gpointer) piles->data, piles->len);
  return GDK_EVENT_STOP;
}

static gboolean
zoom_key_cb (GtkWidget *widget, GVariant *factor, gpointer data)
{
  LbPlanCanvas *self = LB_PLAN_CANVAS (widget);
  const LbPlanInput *input = &self->input;

  if (input->has_pointer)
    lb_plan_canvas_zoom_about (self, g_variant_get_double (factor), input->pointer_x,
                               input->pointer_y);
  else
    lb_plan_canvas_zoom (self, g_variant_get_double (factor));
  return GDK_EVENT_STOP;
}

static gboolean
fit_key_cb (GtkWidget *widget, GVariant *unused, gpointer data)
{
  lb_plan_canvas_fit (LB_PLAN_CANVAS (widget));
  return GDK_EVENT_STOP;
}

void
lb_plan_canvas_input_class_init (GtkWidgetClass *klass)
{
  static const struct
  {
    guint key, keypad;
    double angle;
  } ways[] = {
    { GDK_KEY_Up, GDK_KEY_KP_Up, 0 },
    { GDK_KEY_Right, GDK_KEY_KP_Right, G_PI / 2 },
    { GDK_KEY_Down, GDK_KEY_KP_Down, G_PI },
    { GDK_KEY_Left, GDK_KEY_KP_Left, 3 * G_PI / 2 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++) {
    gtk_widget_class_add_binding (klass, ways[i].key, 0, go_cb, "d", ways[i].angle);
    gtk_widget_class_add_binding (klass, ways[i].keypad, 0, go_cb, "d", ways[i].angle);
  }
  gtk_widget_class_add_binding (klass, GDK_KEY_Home, 0, go_end_cb, "b", FALSE);
  gtk_widget_class_add_binding (klass, GDK_KEY_End, 0, go_end_cb, "b", TRUE);
  gtk_widget_class_add_binding (klass, GDK_KEY_Return, 0, activate_cb, NULL);
  gtk_widget_class_add_binding (klass, GDK_KEY_KP_Enter, 0, activate_cb, NULL);
  gtk_widget_class_add_binding (klass, GDK_KEY_Menu, 0, menu_key_cb, NULL);
  gtk_widget_class_add_binding (klass, GDK_KEY_F10, GDK_SHIFT_MASK, menu_key_cb, NULL);
  gtk_widget_class_add_binding (klass, GDK_KEY_Escape, 0, escape_cb, NULL);
  gtk_widget_class_add_binding (klass, GDK_KEY_a, GDK_CONTROL_MASK, pick_all_cb, NULL);
  gtk_widget_class_add_binding (klass, GDK_KEY_plus, 0, zoom_key_cb, "d", WHEEL_ZOOM);
  gtk_widget_class_add_binding (klass, GDK_KEY_plus, GDK_SHIFT_MASK, zoom_key_cb, "d", WHEEL_ZOOM);
  gtk_widget_class_add_binding (klass, GDK_KEY_equal, 0, zoom_key_cb, "d", WHEEL_ZOOM);
  gtk_widget_class_add_binding (klass, GDK_KEY_KP_Add, 0, zoom_key_cb, "d", WHEEL_ZOOM);
  gtk_widget_class_add_binding (klass, GDK_KEY_minus, 0, zoom_key_cb, "d", 1 / WHEEL_ZOOM);
  gtk_widget_class_add_binding (klass, GDK_KEY_KP_Subtract, 0, zoom_key_cb, "d", 1 / WHEEL_ZOOM);
  gtk_widget_class_add_binding (klass, GDK_KEY_0, 0, fit_key_cb, NULL);
  gtk_widget_class_add_binding (klass, GDK_KEY_KP_0, 0, fit_key_cb, NULL);
}

static void
add_controller (LbPlanCanvas *self, gpointer controller, const char *name)
{
  gtk_event_controller_set_static_name (controller, name);
  gtk_widget_add_controller (GTK_WIDGET (self), controller);
}

static void
add_drag (LbPlanCanvas *self, guint button, const char *name)
{
  GtkGesture *drag = gtk_gesture_drag_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (drag), button);
  g_signal_connect (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect (drag, "cancel", G_CALLBACK (drag_cancel_cb), self);
  add_controller (self, drag, name);
}

void
lb_plan_canvas_input_init (LbPlanCanvas *self)
{
  GtkGesture *click = gtk_gesture_click_new ();
  GtkGesture *pinch = gtk_gesture_zoom_new ();
  GtkGesture *hold = gtk_gesture_long_press_new ();
  GtkEventController *scroll = gtk_event_controller_scroll_new (
    GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *key = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), 0);
  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  g_signal_connect (click, "released", G_CALLBACK (released_cb), self);
  add_controller (self, click, "plan-click");

  add_drag (self, GDK_BUTTON_PRIMARY, "plan-drag");
  add_drag (self, GDK_BUTTON_MIDDLE, "plan-pan");

  g_signal_connect (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect (pinch, "scale-changed", G_CALLBACK (pinch_cb), self);
  add_controller (self, pinch, "plan-pinch");

  gtk_gesture_single_set_touch_only (GTK_GESTURE_SINGLE (hold), TRUE);
  g_signal_connect (hold, "pressed", G_CALLBACK (long_press_cb), self);
  add_controller (self, hold, "plan-hold");

  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  add_controller (self, scroll, "plan-scroll");

  g_signal_connect (motion, "enter", G_CALLBACK (motion_cb), self);
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect (motion, "leave", G_CALLBACK (leave_cb), self);
  add_controller (self, motion, "plan-motion");

  g_signal_connect (key, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  g_signal_connect (key, "key-released", G_CALLBACK (key_released_cb), self);
  add_controller (self, key, "plan-key");

  g_signal_connect (focus, "leave", G_CALLBACK (focus_left_cb), self);
  add_controller (self, focus, "plan-focus");
}
