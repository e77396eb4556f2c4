/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A thin widget over draw/section: it knows which bar has the focus and finds the bar under a
 * finger. A bar counts as touched when the finger leaves it again, so that a sheet scrolled with
 * a finger on the section records nothing.
 *
 * The bars are walked in the order to burn, then those already burned.
 */
#include "desk/sheet/section-view.h"

#include "desk/sheet/sheet-pile.h"
#include "desk/shell/look.h"
#include "draw/plan-words.h"
#include "draw/section.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Before the voice's scale. */
#define WIDTH  150
#define HEIGHT 230

/* Half of what a finger in a wet glove needs; a touch beside a bar still means the nearest. */
#define REACH_PX 22.0

struct _LbSectionView
{
  GtkWidget parent_instance;

  LbJob *job;
  guint pile;
  int focus;   /* bar, -1 for none */
  int pressed; /* bar under the finger, -1 for none */
};

G_DEFINE_FINAL_TYPE (LbSectionView, lb_section_view, GTK_TYPE_WIDGET)

enum {
  TOUCHED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* @shown must outlive the section. */
static LbSection
section_of (LbSectionView *self, LbSheetPile *shown)
{
  lb_sheet_pile_load (shown, self->job, self->pile);
  return (LbSection){
    .pile = shown->pile,
    .plan = &shown->plan,
    .burned = shown->state->burned,
    .focus = gtk_widget_has_focus (GTK_WIDGET (self)) ? self->focus : -1,
  };
}

static int
bar_at (LbSectionView *self, double x, double y)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self));
  const double height = gtk_widget_get_height (GTK_WIDGET (self));
  LbSheetPile shown;
  const LbSection section = section_of (self, &shown);
  int found = lb_section_bar_at (&section, width, height, x, y);
  double nearest = REACH_PX;

  for (guint i = 0; found < 0 && i < shown.pile->n_bars; i++) {
    const LbPoint at = lb_section_bar_place (&section, width, height, i);

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

/* "Bar 6, 1st of 5 to burn", "Bar 6: burned" */
static char *
bar_words (const LbSheetPile *shown, guint bar)
{
  const gsize n_order = lb_section_tells_order (shown->pile) ? shown->plan.n_order : 0;

  if (shown->state->burned & LB_BAR (bar))
    return g_strdup_printf (_ ("Bar %u: burned"), bar + 1);
  for (gsize i = 0; i < n_order; i++) {
    if (shown->plan.order[i] == bar) {
      g_autofree char *ordinal = lb_ordinal_text ((guint) i + 1);

      /* Translators: “Bar 6, 1st of 5 to burn” */
      return g_strdup_printf (_ ("Bar %u, %s of %u to burn"), bar + 1, ordinal, (guint) n_order);
    }
  }
  return g_strdup_printf (_ ("Bar %u"), bar + 1);
}

static void
update_description (LbSectionView *self)
{
  g_autofree char *state = NULL;
  g_autofree char *bar = NULL;
  g_autofree char *words = NULL;
  LbSheetPile shown;

  if (self->job == NULL)
    return;
  lb_sheet_pile_load (&shown, self->job, self->pile);
  state = lb_pile_state_text (shown.pile, shown.state);
  if (self->focus >= 0)
    bar = bar_words (&shown, (guint) self->focus);
  words = bar != NULL ? g_strdup_printf ("%s. %s", bar, state) : g_strdup (state);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words,
                                  -1);
}

static void
set_focus_bar (LbSectionView *self, int bar)
{
  self->focus = bar;
  update_description (self);
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

static gboolean
activate_cb (GtkWidget *widget, GVariant *args, gpointer data)
{
  LbSectionView *self = LB_SECTION_VIEW (widget);

  if (self->job == NULL || self->focus < 0)
    return FALSE;
  g_signal_emit (self, signals[TOUCHED], 0, self->focus);
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
  words = bar_words (&shown, (guint) bar);
  gtk_tooltip_set_text (tooltip, words);
  return TRUE;
}

static void
lb_section_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  LbSectionView *self = LB_SECTION_VIEW (widget);
  const int width = gtk_widget_get_width (widget);
  const int height = gtk_widget_get_height (widget);
  LbSheetPile shown;
  LbSection section;
  cairo_t *cr;

  if (self->job == NULL)
    return;
  section = section_of (self, &shown);
  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  lb_section_draw (cr, lb_look_palette (widget), shown.voice, &section, width, height);
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
  g_clear_object (&LB_SECTION_VIEW (object)->job);
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
  const guint touches[] = { GDK_KEY_space, GDK_KEY_KP_Space, GDK_KEY_Return, GDK_KEY_KP_Enter };

  G_OBJECT_CLASS (klass)->dispose = lb_section_view_dispose;
  widget_class->measure = lb_section_view_measure;
  widget_class->query_tooltip = lb_section_view_query_tooltip;
  widget_class->snapshot = lb_section_view_snapshot;

  signals[TOUCHED] = g_signal_new ("touched", LB_TYPE_SECTION_VIEW, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    gtk_widget_class_add_binding (widget_class, steps[i].key, 0, walk_cb, "i", steps[i].by);
  for (gsize i = 0; i < G_N_ELEMENTS (touches); i++)
    gtk_widget_class_add_binding (widget_class, touches[i], 0, activate_cb, NULL);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "sectionview");
}

static void
lb_section_view_init (LbSectionView *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  self->focus = self->pressed = -1;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The bars at the cut, looking down"), -1);
  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  g_signal_connect (click, "released", G_CALLBACK (released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  g_signal_connect (self, "notify::has-focus", G_CALLBACK (has_focus_cb), NULL);
  lb_look_follow (GTK_WIDGET (self));
}

void
lb_section_view_show (LbSectionView *self, LbJob *job, guint pile)
{
  g_return_if_fail (LB_IS_SECTION_VIEW (self));

  if (job != self->job || pile != self->pile)
    self->focus = self->pressed = -1;
  g_set_object (&self->job, job);
  self->pile = pile;
  /* Facts can take bars away. */
  if (job != NULL && self->focus >= (int) lb_job_get_fold (job)->piles[pile].n_bars)
    self->focus = -1;
  update_description (self);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
lb_section_view_bar_place (LbSectionView *self, guint bar, double *out_x, double *out_y)
{
  LbSheetPile shown;
  LbSection section;
  LbPoint at;

  g_return_if_fail (LB_IS_SECTION_VIEW (self));
  g_return_if_fail (self->job != NULL);

  section = section_of (self, &shown);
  at = lb_section_bar_place (&section, gtk_widget_get_width (GTK_WIDGET (self)),
                             gtk_widget_get_height (GTK_WIDGET (self)), bar);
  *out_x = at.x;
  *out_y = at.y;
}
