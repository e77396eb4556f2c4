/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The canvas: which part of the plan is seen, and what lies on it.
 *
 * Three layers, each a widget of its own: the plan itself, drawn as one image (plan-image.c) and
 * kept until plan or view change; rings round the picked piles; and what follows the hand. The
 * canvas draws nothing itself, so that a pointer that moves redraws only the topmost layer.
 *
 * The image goes to the screen as a cairo node under the cairo renderer, which then copies only
 * what is damaged, and as a texture under the others, which keep it in the graphics memory.
 *
 * Invariants:
 * 1. plan is the job's present one: it changes in job_changed_cb().
 * 2. The view moves by whole device pixels while panning, so that the kept ground fits.
 */
#include "desk/plan/plan-canvas-private.h"

#include "desk/plan/plan-image.h"
#include "desk/plan/plan-layer.h"
#include "desk/shell/look.h"
#include "draw/plan-words.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

/* Room for the axes' labels round the plan, and below it for scale bar and north arrow. px. */
#define FIT_MARGIN 32
#define FIT_FOOT   30

/* As near as a bar's mark can be told in a section, as far as a tenth of the plan fitted. */
#define PX_PER_M_MOST 300.0
#define ZOOM_OUT_MOST 0.25

/* A pile answers within so many px beyond its mark: half of a fingertip's 44 px, where the mark
 * itself takes the rest (WCAG 2.2, target size; platform practice). */
#define REACH_PX 10.0

/* Over so many, picked piles get plain squares: rings would take longer than a frame. */
#define RINGS_MOST 400

#define KEEP_IN_PX 60.0

G_DEFINE_FINAL_TYPE (LbPlanCanvas, lb_plan_canvas, GTK_TYPE_WIDGET)

enum {
  ACTIVATED,
  ESCAPED,
  MENU,
  TOUCHED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static GdkRGBA
ink_rgba (LbPlanCanvas *self, LbInk ink, double alpha)
{
  const LbColour *colour = &lb_look_palette (GTK_WIDGET (self))->inks[ink];

  return (GdkRGBA){ (float) colour->r, (float) colour->g, (float) colour->b, (float) alpha };
}

static void
append_image (GtkSnapshot *snapshot, cairo_surface_t *image, int width, int height)
{
  const int pixel_width = cairo_image_surface_get_width (image);
  const int pixel_height = cairo_image_surface_get_height (image);
  const int stride = cairo_image_surface_get_stride (image);
  const graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height);
  g_autoptr (GBytes) bytes = g_bytes_new_with_free_func (
    cairo_image_surface_get_data (image), (gsize) pixel_height * (gsize) stride,
    (GDestroyNotify) cairo_surface_destroy, cairo_surface_reference (image));
  g_autoptr (GdkTexture) texture = gdk_memory_texture_new (
    pixel_width, pixel_height, GDK_MEMORY_DEFAULT, bytes, (gsize) stride);

  gtk_snapshot_append_texture (snapshot, texture, &bounds);
}

static void
append_cairo_image (GtkSnapshot *snapshot, cairo_surface_t *image, int width, int height, int scale)
{
  const graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);

  cairo_scale (cr, 1.0 / scale, 1.0 / scale);
  cairo_set_source_surface (cr, image, 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_set_operator (cr, CAIRO_OPERATOR_SOURCE);
  cairo_paint (cr);
  cairo_destroy (cr);
}

static void
draw_base (GtkSnapshot *snapshot, int width, int height, gpointer data)
{
  LbPlanCanvas *self = LB_PLAN_CANVAS (data);
  const int scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  GtkNative *native = gtk_widget_get_native (GTK_WIDGET (self));
  cairo_surface_t *image;

  if (self->plan == NULL)
    return;
  self->n_drawn++;
  image = lb_plan_image_draw (self->image, lb_look_palette (GTK_WIDGET (self)),
                              lb_job_get_voice (self->job), self->plan, &self->view, self->shown,
                              width, height, scale);
  if (GSK_IS_CAIRO_RENDERER (gtk_native_get_renderer (native)))
    append_cairo_image (snapshot, image, width, height, scale);
  else
    append_image (snapshot, image, width, height);
}

/* A ring round a pile, clear of its mark and of the arc round it; @fill nullable. */
static void
append_ring (LbPlanCanvas *self,
             GtkSnapshot *snapshot,
             guint pile,
             double beyond,
             double thickness,
             const GdkRGBA *colour,
             const GdkRGBA *fill)
{
  const double radius = lb_plan_mark_size (self->plan, &self->view, pile) * 0.75 + 3 + beyond;
  const float t = (float) thickness;
  GskRoundedRect ring;
  double x, y;

  lb_plan_canvas_pile_place (self, pile, &x, &y);
  gsk_rounded_rect_init_from_rect (
    &ring,
    &GRAPHENE_RECT_INIT ((float) round (x - radius), (float) round (y - radius),
                         (float) round (2 * radius), (float) round (2 * radius)),
    (float) radius);
  if (fill != NULL) {
    gtk_snapshot_push_rounded_clip (snapshot, &ring);
    gtk_snapshot_append_color (snapshot, fill, &ring.bounds);
    gtk_snapshot_pop (snapshot);
  }
  gtk_snapshot_append_border (snapshot, &ring, (float[4]){ t, t, t, t },
                              (GdkRGBA[4]){ *colour, *colour, *colour, *colour });
}

static void
append_squares (LbPlanCanvas *self,
                GtkSnapshot *snapshot,
                const guint *piles,
                gsize n,
                int width,
                int height)
{
  cairo_t *cr = gtk_snapshot_append_cairo (
    snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

  lb_ink_set_alpha (cr, lb_look_palette (GTK_WIDGET (self)), LB_INK_SELECT, 0.35);
  for (gsize i = 0; i < n; i++) {
    const double half = round (lb_plan_mark_size (self->plan, &self->view, piles[i]) * 0.75) + 1;
    double x, y;

    lb_plan_canvas_pile_place (self, piles[i], &x, &y);
    if (lb_plan_canvas_shows (self, piles[i]) && x > -half && y > -half && x < width + half &&
        y < height + half)
    {
      cairo_rectangle (cr, round (x) - half, round (y) - half, 2 * half, 2 * half);
      cairo_fill (cr);
    }
  }
  cairo_destroy (cr);
}

static void
draw_picked (GtkSnapshot *snapshot, int width, int height, gpointer data)
{
  LbPlanCanvas *self = LB_PLAN_CANVAS (data);
  const GdkRGBA colour = ink_rgba (self, LB_INK_SELECT, 1);
  const GdkRGBA fill = ink_rgba (self, LB_INK_SELECT, 0.18);
  const guint *piles;
  gsize n;

  if (self->plan == NULL || self->selection == NULL)
    return;
  piles = lb_selection_get_piles (self->selection, &n);
  if (n > RINGS_MOST) {
    append_squares (self, snapshot, piles, n, width, height);
    return;
  }
  for (gsize i = 0; i < n; i++)
    if (piles[i] < self->plan->n_piles && lb_plan_canvas_shows (self, piles[i]))
      append_ring (self, snapshot, piles[i], 0,
                   (int) piles[i] == lb_selection_get_current (self->selection) ? 3 : 1.5, &colour,
                   &fill);
}

static void
append_frame (GtkSnapshot *snapshot, const graphene_rect_t *bounds, float width, GdkRGBA colour)
{
  GskRoundedRect frame;

  gsk_rounded_rect_init_from_rect (&frame, bounds, 0);
  gtk_snapshot_append_border (snapshot, &frame, (float[4]){ width, width, width, width },
                              (GdkRGBA[4]){ colour, colour, colour, colour });
}

static LbInk
step_ink (int step)
{
  switch ((LbStep) step) {
  case LB_STEP_STANDING:
    return LB_INK_STANDING;
  case LB_STEP_CLEANED:
    return LB_INK_CLEANED;
  case LB_STEP_SEVERED:
    return LB_INK_SEVERED;
  case LB_STEP_RIGGED:
    return LB_INK_RIGGED;
  case LB_STEP_PULLED:
    return LB_INK_PULLED;
  default:
    g_return_val_if_reached (LB_INK_LINE);
  }
}

static void
draw_hand (GtkSnapshot *snapshot, int width, int height, gpointer data)
{
  LbPlanCanvas *self = LB_PLAN_CANVAS (data);
  const gboolean has_focus = (gtk_widget_get_state_flags (GTK_WIDGET (self)) &
                              GTK_STATE_FLAG_FOCUS_VISIBLE) != 0;
  const int current = self->selection != NULL ? lb_selection_get_current (self->selection) : -1;
  const GdkRGBA colour = ink_rgba (self, LB_INK_SELECT, 1);
  const graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height);

  if (self->plan == NULL)
    return;
  if (self->hovered >= 0 && (gsize) self->hovered < self->plan->n_piles)
    append_ring (self, snapshot, (guint) self->hovered, 0, 1.5, &colour, NULL);
  if (self->tool >= 0)
    append_frame (snapshot, &bounds, 4, ink_rgba (self, step_ink (self->tool), 1));
  if (has_focus) {
    if (current >= 0 && (gsize) current < self->plan->n_piles)
      append_ring (self, snapshot, (guint) current, 5, 2, &colour, NULL);
    append_frame (snapshot, &bounds, 2, colour);
  }
  if (self->input.drag == LB_PLAN_DRAG_BOX) {
    const graphene_rect_t box = lb_plan_canvas_box (self);
    const GdkRGBA fill = ink_rgba (self, LB_INK_SELECT, 0.12);

    gtk_snapshot_append_color (snapshot, &fill, &box);
    append_frame (snapshot, &box, 1, colour);
  }
}

static void
redraw_all (LbPlanCanvas *self)
{
  gtk_widget_queue_draw (self->base_layer);
  gtk_widget_queue_draw (self->picked_layer);
  gtk_widget_queue_draw (self->hand_layer);
}

/* The whole plan between the labels round it and what stands at the foot. */
static LbPlanView
fitting_view (LbPlanCanvas *self)
{
  const double text = lb_job_get_voice (self->job)->scale;
  const double foot = FIT_FOOT * text;
  LbPlanView view = lb_plan_fit (self->plan, gtk_widget_get_width (GTK_WIDGET (self)),
                                 gtk_widget_get_height (GTK_WIDGET (self)) - foot,
                                 FIT_MARGIN * text);

  view.centre_y_m -= foot / 2 / view.px_per_m;
  return view;
}

static void
set_view (LbPlanCanvas *self, LbPlanView view)
{
  self->view = view;
  if (self->input.has_pointer && self->input.drag == LB_PLAN_DRAG_IDLE)
    self->hovered = lb_plan_canvas_pile_at (self, self->input.pointer_x, self->input.pointer_y);
  redraw_all (self);
}

static void
fit_if_fitted (LbPlanCanvas *self)
{
  if (self->is_fitted && self->plan != NULL && gtk_widget_get_width (GTK_WIDGET (self)) > 0)
    set_view (self, fitting_view (self));
}

static void
update_shown (LbPlanCanvas *self)
{
  const LbFold *fold = self->job != NULL ? lb_job_get_fold (self->job) : NULL;

  g_clear_pointer (&self->shown, g_free);
  if (self->shown_steps == 0 || fold == NULL)
    return;
  self->shown = g_new (gboolean, fold->n_piles);
  for (guint i = 0; i < fold->n_piles; i++)
    self->shown[i] = (self->shown_steps & LB_STEP_BIT (fold->states[i].step)) != 0;
}

/* What a screen reader says of the plan: the current pile, or how to get to one. */
static void
update_description (LbPlanCanvas *self)
{
  const int current = self->selection != NULL ? lb_selection_get_current (self->selection) : -1;
  g_autofree char *state = NULL;
  g_autofree char *text = NULL;

  if (self->plan == NULL || current < 0 || (gsize) current >= self->plan->n_piles) {
    text = g_strdup (_ ("No pile is picked. The arrow keys go from pile to pile."));
  } else {
    const LbFold *fold = lb_job_get_fold (self->job);

    state = lb_pile_state_text (&fold->piles[current], &fold->states[current]);
    text = g_strdup_printf ("%s: %s", fold->piles[current].mark, state);
  }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text,
                                  -1);
}

static void
job_changed_cb (LbPlanCanvas *self)
{
  self->plan = lb_job_get_plan (self->job);
  self->hovered = -1;
  lb_plan_image_forget_plan (self->image);
  update_shown (self);
  update_description (self);
  fit_if_fitted (self);
  redraw_all (self);
}

static void
selection_changed_cb (LbPlanCanvas *self)
{
  update_description (self);
  gtk_widget_queue_draw (self->picked_layer);
  gtk_widget_queue_draw (self->hand_layer);
}

static gboolean
query_tooltip_cb (LbPlanCanvas *self, int x, int y, gboolean is_keyboard, GtkTooltip *tooltip)
{
  const LbFold *fold;
  g_autofree char *state = NULL;
  g_autofree char *facts = NULL;
  g_autofree char *text = NULL;
  int pile;

  if (self->plan == NULL || is_keyboard || self->input.drag != LB_PLAN_DRAG_IDLE)
    return FALSE;
  pile = lb_plan_canvas_pile_at (self, x, y);
  if (pile < 0)
    return FALSE;
  fold = lb_job_get_fold (self->job);
  state = lb_pile_state_text (&fold->piles[pile], &fold->states[pile]);
  facts = lb_pile_text (lb_job_get_voice (self->job), &fold->piles[pile]);
  text = g_strdup_printf ("%s: %s\n%s", fold->piles[pile].mark, state, facts);
  gtk_tooltip_set_text (tooltip, text);
  return TRUE;
}

static void
lb_plan_canvas_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  LbPlanCanvas *self = LB_PLAN_CANVAS (widget);

  gtk_widget_allocate (self->base_layer, width, height, baseline, NULL);
  gtk_widget_allocate (self->picked_layer, width, height, baseline, NULL);
  gtk_widget_allocate (self->hand_layer, width, height, baseline, NULL);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_POPOVER (child))
      gtk_popover_present (GTK_POPOVER (child));
  if (self->width == width && self->height == height)
    return; /* something beside the canvas changed: what is drawn still stands */
  self->width = width;
  self->height = height;
  fit_if_fitted (self);
  redraw_all (self);
}

static void
lb_plan_canvas_measure (GtkWidget *widget,
                        GtkOrientation orientation,
                        int for_size,
                        int *minimum,
                        int *natural,
                        int *minimum_baseline,
                        int *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 240 : 160;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 800 : 500;
}

static void
lb_plan_canvas_state_flags_changed (GtkWidget *widget, GtkStateFlags old)
{
  gtk_widget_queue_draw (LB_PLAN_CANVAS (widget)->hand_layer);
  GTK_WIDGET_CLASS (lb_plan_canvas_parent_class)->state_flags_changed (widget, old);
}

static void
lb_plan_canvas_dispose (GObject *object)
{
  LbPlanCanvas *self = LB_PLAN_CANVAS (object);

  if (self->job_signals != NULL)
    g_signal_group_set_target (self->job_signals, NULL);
  if (self->selection_signals != NULL)
    g_signal_group_set_target (self->selection_signals, NULL);
  g_clear_object (&self->job_signals);
  g_clear_object (&self->selection_signals);
  self->plan = NULL;
  g_clear_pointer (&self->shown, g_free);
  g_clear_pointer (&self->base_layer, gtk_widget_unparent);
  g_clear_pointer (&self->picked_layer, gtk_widget_unparent);
  g_clear_pointer (&self->hand_layer, gtk_widget_unparent);
  g_clear_pointer (&self->image, lb_plan_image_free);
  g_clear_object (&self->job);
  g_clear_object (&self->selection);
  G_OBJECT_CLASS (lb_plan_canvas_parent_class)->dispose (object);
}

static void
lb_plan_canvas_class_init (LbPlanCanvasClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_plan_canvas_dispose;
  widget_class->measure = lb_plan_canvas_measure;
  widget_class->size_allocate = lb_plan_canvas_size_allocate;
  widget_class->state_flags_changed = lb_plan_canvas_state_flags_changed;
  gtk_widget_class_set_css_name (widget_class, "plancanvas");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);

  signals[ACTIVATED] = g_signal_new ("activated", LB_TYPE_PLAN_CANVAS, G_SIGNAL_RUN_LAST, 0, NULL,
                                     NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);
  signals[ESCAPED] = g_signal_new ("escaped", LB_TYPE_PLAN_CANVAS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
  signals[MENU] = g_signal_new ("menu", LB_TYPE_PLAN_CANVAS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_DOUBLE);
  signals[TOUCHED] = g_signal_new ("touched", LB_TYPE_PLAN_CANVAS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 2, G_TYPE_POINTER, G_TYPE_UINT);

  lb_plan_canvas_input_class_init (widget_class);
}

static void
lb_plan_canvas_init (LbPlanCanvas *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  self->image = lb_plan_image_new ();
  self->tool = -1;
  self->hovered = -1;
  self->is_fitted = TRUE;
  self->base_layer = lb_plan_layer_new (draw_base, self);
  self->picked_layer = lb_plan_layer_new (draw_picked, self);
  self->hand_layer = lb_plan_layer_new (draw_hand, self);
  gtk_widget_set_parent (self->base_layer, widget);
  gtk_widget_set_parent (self->picked_layer, widget);
  gtk_widget_set_parent (self->hand_layer, widget);
  lb_look_follow (self->base_layer);
  lb_look_follow (self->picked_layer);
  lb_look_follow (self->hand_layer);

  self->job_signals = g_signal_group_new (LB_TYPE_JOB);
  g_signal_group_connect_swapped (self->job_signals, "changed", G_CALLBACK (job_changed_cb), self);
  self->selection_signals = g_signal_group_new (LB_TYPE_SELECTION);
  g_signal_group_connect_swapped (self->selection_signals, "changed",
                                  G_CALLBACK (selection_changed_cb), self);

  gtk_widget_set_focusable (widget, TRUE);
  gtk_widget_set_overflow (widget, GTK_OVERFLOW_HIDDEN);
  gtk_widget_set_has_tooltip (widget, TRUE);
  g_signal_connect (self, "query-tooltip", G_CALLBACK (query_tooltip_cb), NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Plan of the pier"), -1);
  update_description (self);
  lb_plan_canvas_input_init (self);
}

void
lb_plan_canvas_set_job (LbPlanCanvas *self, LbJob *job)
{
  g_return_if_fail (LB_IS_PLAN_CANVAS (self));
  g_return_if_fail (job == NULL || LB_IS_JOB (job));

  if (!g_set_object (&self->job, job))
    return;
  g_signal_group_set_target (self->job_signals, job);
  self->is_fitted = TRUE;
  if (job != NULL) {
    job_changed_cb (self);
    return;
  }
  self->plan = NULL;
  update_shown (self);
  update_description (self);
  lb_plan_image_forget_plan (self->image);
  redraw_all (self);
}

void
lb_plan_canvas_set_selection (LbPlanCanvas *self, LbSelection *selection)
{
  g_return_if_fail (LB_IS_PLAN_CANVAS (self));

  if (!g_set_object (&self->selection, selection))
    return;
  g_signal_group_set_target (self->selection_signals, selection);
  selection_changed_cb (self);
}

void
lb_plan_canvas_set_shown (LbPlanCanvas *self, LbStepSet steps)
{
  g_return_if_fail (LB_IS_PLAN_CANVAS (self));

  self->shown_steps = steps;
  self->hovered = -1;
  update_shown (self);
  redraw_all (self);
}

gboolean
lb_plan_canvas_shows (LbPlanCanvas *self, guint pile)
{
  g_return_val_if_fail (LB_IS_PLAN_CANVAS (self), FALSE);

  return self->shown == NULL || self->shown[pile];
}

void
lb_plan_canvas_set_tool (LbPlanCanvas *self, int step)
{
  g_return_if_fail (LB_IS_PLAN_CANVAS (self));

  self->tool = step;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), step >= 0 ? "crosshair" : NULL);
  gtk_widget_queue_draw (self->hand_layer);
}

void
lb_plan_canvas_zoom (LbPlanCanvas *self, double factor)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self));
  const double height = gtk_widget_get_height (GTK_WIDGET (self));
  const int current = self->selection != NULL ? lb_selection_get_current (self->selection) : -1;
  double x, y;

  g_return_if_fail (LB_IS_PLAN_CANVAS (self));

  if (current < 0 || !lb_plan_canvas_pile_place (self, (guint) current, &x, &y) || x < 0 || y < 0 ||
      x > width || y > height)
  {
    x = width / 2;
    y = height / 2;
  }
  lb_plan_canvas_zoom_about (self, factor, x, y);
}

void
lb_plan_canvas_fit (LbPlanCanvas *self)
{
  g_return_if_fail (LB_IS_PLAN_CANVAS (self));

  self->is_fitted = TRUE;
  fit_if_fitted (self);
}

void
lb_plan_canvas_show_pile (LbPlanCanvas *self, guint pile)
{
  LbPlanView view;

  g_return_if_fail (LB_IS_PLAN_CANVAS (self));
  g_return_if_fail (self->plan != NULL && pile < self->plan->n_piles);

  if (self->is_fitted)
    return; /* it is on the page with all the others, and stays with them */
  view = self->view;
  view.centre_x_m = self->plan->piles[pile].x_m;
  view.centre_y_m = self->plan->piles[pile].y_m;
  set_view (self, view);
}

gboolean
lb_plan_canvas_pile_place (LbPlanCanvas *self, guint pile, double *out_x, double *out_y)
{
  LbPoint at;

  g_return_val_if_fail (LB_IS_PLAN_CANVAS (self), FALSE);

  if (self->plan == NULL || pile >= self->plan->n_piles)
    return FALSE;
  lb_plan_to_page (&self->view, gtk_widget_get_width (GTK_WIDGET (self)),
                   gtk_widget_get_height (GTK_WIDGET (self)), self->plan->piles[pile].x_m,
                   self->plan->piles[pile].y_m, &at);
  *out_x = at.x;
  *out_y = at.y;
  return TRUE;
}

guint
lb_plan_canvas_count_drawn (LbPlanCanvas *self)
{
  g_return_val_if_fail (LB_IS_PLAN_CANVAS (self), 0);

  return self->n_drawn;
}

int
lb_plan_canvas_pile_at (LbPlanCanvas *self, double x, double y)
{
  int pile;

  if (self->plan == NULL)
    return -1;
  pile = lb_plan_pile_at (self->plan, &self->view, gtk_widget_get_width (GTK_WIDGET (self)),
                          gtk_widget_get_height (GTK_WIDGET (self)), x, y, REACH_PX);
  return pile >= 0 && lb_plan_canvas_shows (self, (guint) pile) ? pile : -1;
}

void
lb_plan_canvas_pan (LbPlanCanvas *self, double dx, double dy)
{
  const int scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  LbPlanView view = self->view;

  if (self->plan == NULL)
    return;
  view.centre_x_m -= round (dx * scale) / scale / view.px_per_m;
  view.centre_y_m += round (dy * scale) / scale / view.px_per_m;
  /* The middle of the page stays on the plan, so that it cannot be lost. */
  view.centre_x_m = CLAMP (view.centre_x_m, self->plan->left_m, self->plan->right_m);
  view.centre_y_m = CLAMP (view.centre_y_m, self->plan->bottom_m, self->plan->top_m);
  self->is_fitted = FALSE;
  set_view (self, view);
}

void
lb_plan_canvas_zoom_about (LbPlanCanvas *self, double factor, double x, double y)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self));
  const double height = gtk_widget_get_height (GTK_WIDGET (self));
  LbPlanView view = self->view;
  LbPoint held;
  double fitting;

  if (self->plan == NULL || width <= 0)
    return;
  fitting = fitting_view (self).px_per_m;
  lb_plan_from_page (&view, width, height, x, y, &held);
  view.px_per_m = CLAMP (view.px_per_m * factor, fitting * ZOOM_OUT_MOST,
                         MAX (PX_PER_M_MOST, fitting));
  view.centre_x_m = held.x - (x - width / 2) / view.px_per_m;
  view.centre_y_m = held.y + (y - height / 2) / view.px_per_m;
  self->is_fitted = FALSE;
  set_view (self, view);
}

void
lb_plan_canvas_bring_in (LbPlanCanvas *self, guint pile)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self));
  const double height = gtk_widget_get_height (GTK_WIDGET (self));
  const double keep_x = MIN (KEEP_IN_PX, width / 3), keep_y = MIN (KEEP_IN_PX, height / 3);
  double x, y, dx, dy;

  if (!lb_plan_canvas_pile_place (self, pile, &x, &y))
    return;
  dx = CLAMP (x, keep_x, width - keep_x) - x;
  dy = CLAMP (y, keep_y, height - keep_y) - y;
  if (!self->is_fitted && (fabs (dx) > 0.5 || fabs (dy) > 0.5))
    lb_plan_canvas_pan (self, dx, dy);
}

void
lb_plan_canvas_set_hovered (LbPlanCanvas *self, int pile)
{
  if (self->hovered == pile)
    return;
  self->hovered = pile;
  gtk_widget_queue_draw (self->hand_layer);
}

graphene_rect_t
lb_plan_canvas_box (LbPlanCanvas *self)
{
  const LbPlanInput *input = &self->input;

  return GRAPHENE_RECT_INIT (
    (float) MIN (input->start_x, input->now_x), (float) MIN (input->start_y, input->now_y),
    (float) fabs (input->now_x - input->start_x), (float) fabs (input->now_y - input->start_y));
}

void
lb_plan_canvas_emit_activated (LbPlanCanvas *self, int pile)
{
  g_signal_emit (self, signals[ACTIVATED], 0, pile);
}

void
lb_plan_canvas_emit_touched (LbPlanCanvas *self, const guint *piles, guint n)
{
  g_signal_emit (self, signals[TOUCHED], 0, piles, n);
}

void
lb_plan_canvas_emit_menu (LbPlanCanvas *self, double x, double y)
{
  g_signal_emit (self, signals[MENU], 0, x, y);
}

void
lb_plan_canvas_emit_escaped (LbPlanCanvas *self)
{
  g_signal_emit (self, signals[ESCAPED], 0);
}
