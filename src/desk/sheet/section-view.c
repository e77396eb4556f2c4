/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A thin widget over draw/section: it knows which bar has the focus, finds the bar under a finger,
 * and looks ahead along the order to burn. A bar counts as touched when the finger leaves it again,
 * so that a sheet scrolled with a finger on the section records nothing.
 *
 * The bars are walked in the order to burn, then those already burned.
 *
 * Looking ahead is a number of steps of the plan's order, 0 for how the pile stands; it goes back
 * there as soon as the order is another one. What the bars bear fades from one step to the next,
 * unless animations are off.
 */
#include "desk/sheet/section-view.h"

#include "desk/sheet/sheet-pile.h"
#include "desk/shell/look.h"
#include "draw/plan-words.h"
#include "draw/section.h"
#include "draw/voice-text.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

/* Before the voice's scale. */
#define WIDTH  150
#define HEIGHT 230

/* Half of what a finger in a wet glove needs; a touch beside a bar still means the nearest. */
#define REACH_PX 22.0

#define FADE_MS 300

struct _LbSectionView
{
  GtkWidget parent_instance;

  LbJob *job;
  guint pile;
  int focus;   /* bar, -1 for none */
  int pressed; /* bar under the finger, -1 for none */

  /* Looking ahead */
  gsize step;                /* of the order, how many are taken to be burned */
  guint8 order[LB_BARS_MAX]; /* the order that step is of */
  gsize n_order;
  LbBarShares faded; /* what the bars bore a step before */
  AdwAnimation *fade;
  double fade_part; /* 1 when done */
};

G_DEFINE_FINAL_TYPE (LbSectionView, lb_section_view, GTK_TYPE_WIDGET)

enum {
  TOUCHED,
  ASKED,
  STEPPED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* All that is drawn, and what it borrows. */
typedef struct
{
  LbSheetPile sheet;
  LbBarShares shares;
  gboolean has_shares;
  LbSection section;
} Shown;

static gboolean
reckon_shares (const LbSheetPile *shown, gsize step, LbBarShares *out_shares)
{
  return lb_section_view_can_step (shown) &&
         lb_pile_hold_shares (shown->pile, shown->plan.places, shown->state->burned,
                              lb_fold_basis (shown->fold), &shown->plan.hold, step, out_shares);
}

/* On the way from the step before to this one. */
static void
fade_shares (LbSectionView *self, LbBarShares *shares)
{
  for (guint i = 0; i < LB_BARS_MAX && self->fade_part < 1; i++) {
    const double from = self->faded.share[i];

    if (!isnan (from) && !isnan (shares->share[i]))
      shares->share[i] = from + (shares->share[i] - from) * self->fade_part;
  }
}

static void
load (LbSectionView *self, Shown *shown)
{
  const LbCutPlan *plan = &shown->sheet.plan;

  lb_sheet_pile_load (&shown->sheet, self->job, self->pile);
  shown->has_shares = reckon_shares (&shown->sheet, self->step, &shown->shares);
  shown->section = (LbSection){
    .pile = shown->sheet.pile,
    .plan = plan,
    .burned = shown->sheet.state->burned,
    .focus = gtk_widget_has_focus (GTK_WIDGET (self)) ? self->focus : -1,
    .n_done = self->step,
    .shares = shown->has_shares ? &shown->shares : NULL,
  };
  for (gsize i = 0; i < self->step; i++)
    shown->section.burned |= LB_BAR (plan->order[i]);
  if (shown->has_shares)
    fade_shares (self, &shown->shares);
  if (self->step > 0 && (self->faded.left & LB_BAR (plan->order[self->step - 1]))) {
    shown->section.going = plan->order[self->step - 1];
    shown->section.going_left = 1 - self->fade_part;
  }
}

static int
bar_at (LbSectionView *self, double x, double y)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self));
  const double height = gtk_widget_get_height (GTK_WIDGET (self));
  double nearest = REACH_PX;
  Shown shown;
  int found;

  load (self, &shown);
  found = lb_section_bar_at (&shown.section, width, height, x, y);
  for (guint i = 0; found < 0 && i < shown.sheet.pile->n_bars; i++) {
    const LbPoint at = lb_section_bar_place (&shown.section, width, height, i);

    nearest = MIN (nearest, hypot (at.x - x, at.y - y));
    if (nearest < REACH_PX)
      found = (int) i;
  }
  return found;
}

/* All bars as they are walked. */
static gsize
find_walk (const LbSheetPile *shown, guint8 walk[LB_BARS_MAX])
{
  const LbBarSet burned = shown->state->burned;
  gsize n = shown->plan.n_order;

  memcpy (walk, shown->plan.order, n);
  for (guint i = 0; i < shown->pile->n_bars; i++) {
    if (burned & LB_BAR (i))
      walk[n++] = (guint8) i;
  }
  return n;
}

/* "Bar 6, 1st of 5 to burn" */
static char *
place_words (const LbSheetPile *shown, guint bar)
{
  const gsize n_order = lb_section_tells_order (shown->pile) ? shown->plan.n_order : 0;

  for (gsize i = 0; i < n_order; i++) {
    if (shown->plan.order[i] == bar) {
      g_autofree char *ordinal = lb_ordinal_text ((guint) i + 1);

      /* Translators: “Bar 6, 1st of 5 to burn” */
      return g_strdup_printf (_ ("Bar %u, %s of %u to burn"), bar + 1, ordinal, (guint) n_order);
    }
  }
  return g_strdup_printf (_ ("Bar %u"), bar + 1);
}

/* "Bar 6, 1st of 5 to burn: bears 12% of what it may", "Bar 6: burned" */
static char *
bar_words (LbSectionView *self, const LbSheetPile *shown, guint bar)
{
  g_autofree char *place = place_words (shown, bar);
  g_autofree char *share = NULL;
  LbBarShares shares;

  if (shown->state->gone & LB_BAR (bar))
    return g_strdup_printf (_ ("Bar %u: found gone"), bar + 1);
  if (shown->state->burned & LB_BAR (bar))
    return g_strdup_printf (_ ("Bar %u: burned"), bar + 1);
  if (!reckon_shares (shown, self->step, &shares))
    return g_steal_pointer (&place);
  if ((shares.left & LB_BAR (bar)) == 0)
    return g_strdup_printf (_ ("%s: burned by this step"), place);
  if (shares.is_hinge)
    return g_steal_pointer (&place);
  share = lb_voice_quantity (shown->voice, LB_QUANTITY_SHARE, shares.share[bar]);
  /* Translators: “Bar 6, 1st of 5 to burn: bears 12% of what it may” */
  return g_strdup_printf (_ ("%s: bears %s of what it may"), place, share);
}

/* The label says what is shown, step and hook with it; the description the bar and the state. */
static void
update_words (LbSectionView *self)
{
  g_autofree char *state = NULL;
  g_autofree char *bar = NULL;
  g_autofree char *words = NULL;
  g_autofree char *step = NULL;
  g_autofree char *hold = NULL;
  g_autofree char *label = NULL;
  LbBarShares shares;
  LbSheetPile shown;

  if (self->job == NULL)
    return;
  lb_sheet_pile_load (&shown, self->job, self->pile);
  state = lb_pile_state_text (shown.pile, shown.state);
  if (self->focus >= 0)
    bar = bar_words (self, &shown, (guint) self->focus);
  words = bar != NULL ? g_strdup_printf ("%s. %s", bar, state) : g_strdup (state);
  if (reckon_shares (&shown, self->step, &shares)) {
    step = lb_step_text (shown.voice, &shown.fold->assumptions, &shown.plan, &shares, self->step);
    hold = lb_hold_point_text (&shown.plan, self->step);
  }
  label = g_strjoin (". ", _ ("The bars at the cut, looking down"), hold != NULL ? hold : step,
                     hold != NULL ? step : NULL, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

static void
set_focus_bar (LbSectionView *self, int bar)
{
  self->focus = bar;
  update_words (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
pressed_cb (GtkGestureClick *click, int n_press, double x, double y, LbSectionView *self)
{
  self->pressed = self->job != NULL ? bar_at (self, x, y) : -1;
  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (self->pressed >= 0)
    set_focus_bar (self, self->pressed);
}

static void
released_cb (GtkGestureClick *click, int n_press, double x, double y, LbSectionView *self)
{
  const int bar = self->pressed;

  self->pressed = -1;
  if (bar >= 0 && self->job != NULL && bar_at (self, x, y) == bar)
    g_signal_emit (self, signals[TOUCHED], 0, bar);
}

/* The other button, or a finger that stays: what else can be said of the bar. */
static void
ask (LbSectionView *self, int bar)
{
  self->pressed = -1;
  if (bar < 0)
    return;
  set_focus_bar (self, bar);
  g_signal_emit (self, signals[ASKED], 0, bar);
}

static void
other_pressed_cb (GtkGestureClick *click, int n_press, double x, double y, LbSectionView *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
  ask (self, self->job != NULL ? bar_at (self, x, y) : -1);
}

static void
stayed_cb (GtkGestureLongPress *press, double x, double y, LbSectionView *self)
{
  ask (self, self->job != NULL ? bar_at (self, x, y) : -1);
}

/* The arrow keys: @args is by how many places, over the ends and round again. */
static gboolean
walk_cb (GtkWidget *widget, GVariant *args, gpointer data)
{
  LbSectionView *self = LB_SECTION_VIEW (widget);
  const int by = g_variant_get_int32 (args);
  guint8 walk[LB_BARS_MAX];
  LbSheetPile shown;
  int n, at = -1;

  if (self->job == NULL)
    return FALSE;
  lb_sheet_pile_load (&shown, self->job, self->pile);
  n = (int) find_walk (&shown, walk);
  if (n == 0)
    return FALSE;
  for (int i = 0; i < n; i++) {
    if (walk[i] == self->focus)
      at = i;
  }
  /* From a bar just burned the next in the order is what is meant. */
  if (by > 0 && at >= (int) shown.plan.n_order && shown.plan.n_order > 0)
    at = -1;
  if (at < 0)
    at = by > 0 ? 0 : n - 1;
  else
    at = (at + by + n) % n;
  set_focus_bar (self, walk[at]);
  return TRUE;
}

static void
fade_cb (double value, gpointer data)
{
  LbSectionView *self = data;

  self->fade_part = value;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* The keys that look ahead: @args is by how many steps, G_MININT32 for back to how it stands. */
static gboolean
step_cb (GtkWidget *widget, GVariant *args, gpointer data)
{
  LbSectionView *self = LB_SECTION_VIEW (widget);
  const int by = g_variant_get_int32 (args);
  const gsize n = lb_section_view_get_n_steps (self);

  if (n == 0)
    return FALSE;
  if (by < 0)
    lb_section_view_set_step (self, by == G_MININT32 || self->step == 0 ? 0 : self->step - 1);
  else
    lb_section_view_set_step (self, MIN (self->step + 1, n));
  return TRUE;
}

static gboolean
activate_cb (GtkWidget *widget, GVariant *args, gpointer data)
{
  LbSectionView *self = LB_SECTION_VIEW (widget);

  if (self->job == NULL || self->focus < 0)
    return FALSE;
  g_signal_emit (self, signals[TOUCHED], 0, self->focus);
  return TRUE;
}

static gboolean
ask_cb (GtkWidget *widget, GVariant *args, gpointer data)
{
  LbSectionView *self = LB_SECTION_VIEW (widget);

  if (self->job == NULL || self->focus < 0)
    return FALSE;
  ask (self, self->focus);
  return TRUE;
}

static void
has_focus_cb (LbSectionView *self)
{
  LbSheetPile shown;

  if (self->job != NULL && self->focus < 0) {
    lb_sheet_pile_load (&shown, self->job, self->pile);
    if (shown.plan.n_order > 0)
      self->focus = shown.plan.order[0];
  }
  set_focus_bar (self, self->focus);
}

static gboolean
lb_section_view_query_tooltip (GtkWidget *widget,
                               int x,
                               int y,
                               gboolean is_by_keyboard,
                               GtkTooltip *tooltip)
{
  LbSectionView *self = LB_SECTION_VIEW (widget);
  const int bar = self->job == NULL ? -1 : is_by_keyboard ? self->focus : bar_at (self, x, y);
  g_autofree char *words = NULL;
  LbSheetPile shown;

  if (bar < 0)
    return FALSE;
  lb_sheet_pile_load (&shown, self->job, self->pile);
  words = bar_words (self, &shown, (guint) bar);
  gtk_tooltip_set_text (tooltip, words);
  return TRUE;
}

static void
lb_section_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  LbSectionView *self = LB_SECTION_VIEW (widget);
  const int width = gtk_widget_get_width (widget);
  const int height = gtk_widget_get_height (widget);
  Shown shown;
  cairo_t *cr;

  if (self->job == NULL)
    return;
  load (self, &shown);
  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  lb_section_draw (cr, lb_look_palette (widget), shown.sheet.voice, &shown.section, width, height);
  cairo_destroy (cr);
}

static void
lb_section_view_measure (GtkWidget *widget,
                         GtkOrientation orientation,
                         int for_size,
                         int *minimum,
                         int *natural,
                         int *minimum_baseline,
                         int *natural_baseline)
{
  LbSectionView *self = LB_SECTION_VIEW (widget);
  const double scale = self->job != NULL ? lb_job_get_voice (self->job)->scale : 1;

  *minimum = *natural = (int) (scale *
                               (orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH : HEIGHT));
}

static void
lb_section_view_dispose (GObject *object)
{
  LbSectionView *self = LB_SECTION_VIEW (object);

  g_clear_object (&self->fade);
  g_clear_object (&self->job);
  G_OBJECT_CLASS (lb_section_view_parent_class)->dispose (object);
}

static void
lb_section_view_class_init (LbSectionViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const struct
  {
    guint key;
    int by;
  } steps[] = { { GDK_KEY_Left, -1 },
                { GDK_KEY_Up, -1 },
                { GDK_KEY_Right, 1 },
                { GDK_KEY_Down, 1 } };
  const struct
  {
    guint key;
    int by;
  } ahead[] = { { GDK_KEY_Page_Up, -1 },
                { GDK_KEY_comma, -1 },
                { GDK_KEY_Page_Down, 1 },
                { GDK_KEY_period, 1 },
                { GDK_KEY_Home, G_MININT32 } };
  const guint touches[] = { GDK_KEY_space, GDK_KEY_KP_Space, GDK_KEY_Return, GDK_KEY_KP_Enter };

  G_OBJECT_CLASS (klass)->dispose = lb_section_view_dispose;
  widget_class->measure = lb_section_view_measure;
  widget_class->query_tooltip = lb_section_view_query_tooltip;
  widget_class->snapshot = lb_section_view_snapshot;

  signals[TOUCHED] = g_signal_new ("touched", LB_TYPE_SECTION_VIEW, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);
  signals[ASKED] = g_signal_new ("asked", LB_TYPE_SECTION_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 1, G_TYPE_INT);
  signals[STEPPED] = g_signal_new ("stepped", LB_TYPE_SECTION_VIEW, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    gtk_widget_class_add_binding (widget_class, steps[i].key, 0, walk_cb, "i", steps[i].by);
  for (gsize i = 0; i < G_N_ELEMENTS (ahead); i++)
    gtk_widget_class_add_binding (widget_class, ahead[i].key, 0, step_cb, "i", ahead[i].by);
  for (gsize i = 0; i < G_N_ELEMENTS (touches); i++)
    gtk_widget_class_add_binding (widget_class, touches[i], 0, activate_cb, NULL);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Menu, 0, ask_cb, NULL);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_F10, GDK_SHIFT_MASK, ask_cb, NULL);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "sectionview");
}

static void
lb_section_view_init (LbSectionView *self)
{
  GtkGesture *click = gtk_gesture_click_new ();
  GtkGesture *other = gtk_gesture_click_new ();
  GtkGesture *stay = gtk_gesture_long_press_new ();

  self->focus = self->pressed = -1;
  self->fade_part = 1;
  self->fade = adw_timed_animation_new (GTK_WIDGET (self), 0, 1, FADE_MS,
                                        adw_callback_animation_target_new (fade_cb, self, NULL));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The bars at the cut, looking down"), -1);
  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  g_signal_connect (click, "released", G_CALLBACK (released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (other), GDK_BUTTON_SECONDARY);
  g_signal_connect (other, "pressed", G_CALLBACK (other_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (other));
  gtk_gesture_single_set_touch_only (GTK_GESTURE_SINGLE (stay), TRUE);
  g_signal_connect (stay, "pressed", G_CALLBACK (stayed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (stay));
  g_signal_connect (self, "notify::has-focus", G_CALLBACK (has_focus_cb), NULL);
  lb_look_follow (GTK_WIDGET (self));
}

/* Another order, another pile: a step of the old one means nothing. */
static void
follow_order (LbSectionView *self)
{
  LbSheetPile shown;
  gsize n;

  lb_sheet_pile_load (&shown, self->job, self->pile);
  n = lb_section_view_can_step (&shown) ? shown.plan.n_order : 0;
  if (n == self->n_order && memcmp (self->order, shown.plan.order, n) == 0)
    return;
  self->n_order = n;
  memcpy (self->order, shown.plan.order, n);
  self->step = 0;
  self->faded.left = 0;
  adw_animation_skip (self->fade);
}

void
lb_section_view_show (LbSectionView *self, LbJob *job, guint pile)
{
  g_return_if_fail (LB_IS_SECTION_VIEW (self));

  if (job != self->job || pile != self->pile) {
    self->focus = self->pressed = -1;
    self->n_order = self->step = 0;
  }
  g_set_object (&self->job, job);
  self->pile = pile;
  /* Facts can take bars away. */
  if (job != NULL && self->focus >= (int) lb_job_get_fold (job)->piles[pile].n_bars)
    self->focus = -1;
  if (job != NULL)
    follow_order (self);
  update_words (self);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

gboolean
lb_section_view_can_step (const LbSheetPile *shown)
{
  return shown->plan.n_order > 0 && shown->plan.hold_missing == NULL;
}

gsize
lb_section_view_get_n_steps (LbSectionView *self)
{
  g_return_val_if_fail (LB_IS_SECTION_VIEW (self), 0);

  return self->n_order;
}

gsize
lb_section_view_get_step (LbSectionView *self)
{
  g_return_val_if_fail (LB_IS_SECTION_VIEW (self), 0);

  return self->step;
}

void
lb_section_view_set_step (LbSectionView *self, gsize step)
{
  LbSheetPile shown;

  g_return_if_fail (LB_IS_SECTION_VIEW (self));
  g_return_if_fail (step <= self->n_order);

  if (step == self->step)
    return;
  lb_sheet_pile_load (&shown, self->job, self->pile);
  if (!reckon_shares (&shown, self->step, &self->faded))
    self->faded.left = 0;
  self->step = step;
  /* Goes to its end at once when animations are off. */
  adw_animation_play (self->fade);
  update_words (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[STEPPED], 0);
}

void
lb_section_view_bar_place (LbSectionView *self, guint bar, double *out_x, double *out_y)
{
  Shown shown;
  LbPoint at;

  g_return_if_fail (LB_IS_SECTION_VIEW (self));
  g_return_if_fail (self->job != NULL);

  load (self, &shown);
  at = lb_section_bar_place (&shown.section, gtk_widget_get_width (GTK_WIDGET (self)),
                             gtk_widget_get_height (GTK_WIDGET (self)), bar);
  *out_x = at.x;
  *out_y = at.y;
}
