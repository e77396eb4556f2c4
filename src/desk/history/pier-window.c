/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Each day is a fold of its own (lb_fold_new_of_day()), made when it is looked at: a few milliseconds
 * even for a large job. The last day is the job as it is now. */
#include "desk/history/pier-window.h"

#include "draw/plan-words.h"
#include "draw/plan.h"

#include <glib/gi18n-lib.h>

/* A day on the screen while it plays: a job of sixty days goes by in under half a minute. */
#define PLAY_MS 400

struct _LbPierWindow
{
  AdwWindow parent_instance;

  /* Template widgets */
  GtkDrawingArea *area;
  GtkLabel *label;
  GtkToggleButton *play_button;
  GtkScale *scale;

  /* Owned */
  LbJob *job;
  LbFold *past; /* of the day shown; NULL before it was made */
  guint timer;
};

G_DEFINE_FINAL_TYPE (LbPierWindow, lb_pier_window, ADW_TYPE_WINDOW)

guint
lb_pier_window_get_day (LbPierWindow *self)
{
  g_return_val_if_fail (LB_IS_PIER_WINDOW (self), 0);

  return (guint) gtk_range_get_value (GTK_RANGE (self->scale));
}

static guint
count_days (LbPierWindow *self)
{
  return (guint) lb_job_get_fold (self->job)->n_days;
}

/* "Fri 10 Jul 2026: 66 of 198 piles are out. That day: 5 cleaned, 3 severed, 1 rigged, 1 pulled." */
static char *
day_words (LbPierWindow *self, guint day)
{
  const LbFold *now = lb_job_get_fold (self->job);

  if (day == 0)
    return g_strdup (_ ("Before the first shift"));

  const LbDay *of = &now->days[day - 1];
  g_autofree char *name = lb_day_text (of->day);
  return g_strdup_printf (
    g_dngettext (
      GETTEXT_PACKAGE,
      /* Translators: a day; how many piles are out, of how many; and what was done that
                  * day. */
      "%s: %u of %u pile is out. That day: %u cleaned, %u severed, %u rigged, %u pulled.",
      "%s: %u of %u piles are out. That day: %u cleaned, %u severed, %u rigged, %u pulled.",
      now->n_piles),
    name, of->pulled_so_far, now->n_piles, of->totals.steps[LB_STEP_CLEANED],
    of->totals.steps[LB_STEP_SEVERED], of->totals.steps[LB_STEP_RIGGED],
    of->totals.steps[LB_STEP_PULLED]);
}

static void
show_day (LbPierWindow *self)
{
  const guint day = MIN (lb_pier_window_get_day (self), count_days (self));
  const LbFold *now = lb_job_get_fold (self->job);
  g_autofree char *words = day_words (self, day);

  g_clear_pointer (&self->past, lb_fold_free);
  self->past = lb_fold_new_of_day (lb_job_get_ledger (self->job),
                                   day == 0 ? 0 : now->days[day - 1].day);
  gtk_label_set_text (self->label, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scale), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT,
                                  words, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->area), GTK_ACCESSIBLE_PROPERTY_LABEL, words,
                                  -1);
  gtk_widget_queue_draw (GTK_WIDGET (self->area));
}

void
lb_pier_window_set_day (LbPierWindow *self, guint day)
{
  g_return_if_fail (LB_IS_PIER_WINDOW (self));

  gtk_range_set_value (GTK_RANGE (self->scale), day);
}

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  const LbPierWindow *self = data;
  const gboolean is_dark = adw_style_manager_get_dark (adw_style_manager_get_default ());
  const LbPalette *palette = lb_palette (is_dark ? LB_PALETTE_DARK : LB_PALETTE_LIGHT);

  lb_ink_set (cr, palette, LB_INK_PAPER);
  cairo_paint (cr);
  if (self->past != NULL)
    lb_plan_draw_sheet (cr, palette, lb_job_get_voice (self->job), self->past, width, height);
}

/* The job went on, or was joined with another: its days may be others. */
static void
job_changed_cb (LbPierWindow *self)
{
  const guint n_days = count_days (self);

  gtk_range_set_range (GTK_RANGE (self->scale), 0, MAX (n_days, 1));
  gtk_widget_set_sensitive (GTK_WIDGET (self->scale), n_days > 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->play_button), n_days > 0);
  show_day (self);
}

static gboolean
play_cb (gpointer data)
{
  LbPierWindow *self = LB_PIER_WINDOW (data);
  const guint day = lb_pier_window_get_day (self);

  if (day >= count_days (self)) {
    self->timer = 0;
    gtk_toggle_button_set_active (self->play_button, FALSE);
    return G_SOURCE_REMOVE;
  }
  lb_pier_window_set_day (self, day + 1);
  return G_SOURCE_CONTINUE;
}

static void
play_toggled_cb (LbPierWindow *self)
{
  const gboolean plays = gtk_toggle_button_get_active (self->play_button);

  gtk_button_set_icon_name (GTK_BUTTON (self->play_button), plays
                                                              ? "media-playback-pause-symbolic"
                                                              : "media-playback-start-symbolic");
  g_clear_handle_id (&self->timer, g_source_remove);
  if (!plays)
    return;
  if (lb_pier_window_get_day (self) >= count_days (self))
    lb_pier_window_set_day (self, 0);
  self->timer = g_timeout_add (PLAY_MS, play_cb, self);
}

static void
lb_pier_window_dispose (GObject *object)
{
  LbPierWindow *self = LB_PIER_WINDOW (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_PIER_WINDOW);
  g_clear_pointer (&self->past, lb_fold_free);
  g_clear_object (&self->job);
  G_OBJECT_CLASS (lb_pier_window_parent_class)->dispose (object);
}

static void
lb_pier_window_class_init (LbPierWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pier_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/pier-window.ui");
  gtk_widget_class_bind_template_child (widget_class, LbPierWindow, area);
  gtk_widget_class_bind_template_child (widget_class, LbPierWindow, label);
  gtk_widget_class_bind_template_child (widget_class, LbPierWindow, play_button);
  gtk_widget_class_bind_template_child (widget_class, LbPierWindow, scale);
  gtk_widget_class_bind_template_callback (widget_class, play_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, show_day);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
lb_pier_window_init (LbPierWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drawing_area_set_draw_func (self->area, draw_cb, self, NULL);
  g_signal_connect_object (adw_style_manager_get_default (), "notify::dark",
                           G_CALLBACK (gtk_widget_queue_draw), self->area, G_CONNECT_SWAPPED);
}

LbPierWindow *
lb_pier_window_new (GtkWindow *parent, LbJob *job)
{
  g_return_val_if_fail (LB_IS_JOB (job), NULL);

  LbPierWindow *self = g_object_new (LB_TYPE_PIER_WINDOW, "transient-for", parent, NULL);
  self->job = g_object_ref (job);
  g_signal_connect_object (job, "changed", G_CALLBACK (job_changed_cb), self, G_CONNECT_SWAPPED);
  job_changed_cb (self);
  lb_pier_window_set_day (self, count_days (self));
  return self;
}
