/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Drives the section view, which knows the step; all that is shown here is read from it again at
 * each "stepped", whoever stepped. Playing is one timer, gone as soon as there is nothing to play
 * or nobody to see it.
 */
#include "desk/sheet/section-steps.h"

#include "desk/shell/look.h"
#include "draw/plan-words.h"
#include "draw/section.h"

#include <glib/gi18n-lib.h>

/* Long enough to read which bar went and what the others bear. */
#define PLAY_MS 1400

/* Before the voice's scale. */
#define LEGEND_HEIGHT 24

struct _LbSectionSteps
{
  GtkBox parent_instance;

  /* Template widgets */
  GtkWidget *back_button;
  GtkBox *controls_box;
  GtkWidget *forward_button;
  GtkLabel *hold_label;
  GtkDrawingArea *legend;
  GtkWidget *play_button;
  GtkLabel *reason_label;
  GtkLabel *step_label;

  LbSectionView *section;
  LbJob *job;
  guint pile;
  guint timer; /* 0 when nothing plays */
};

G_DEFINE_FINAL_TYPE (LbSectionSteps, lb_section_steps, GTK_TYPE_BOX)

static void
set_playing (LbSectionSteps *self, gboolean is_playing)
{
  const char *words = is_playing ? _ ("Stop") : _ ("Play the Order to Burn");

  if (!is_playing)
    g_clear_handle_id (&self->timer, g_source_remove);
  gtk_button_set_icon_name (GTK_BUTTON (self->play_button), is_playing
                                                              ? "media-playback-pause-symbolic"
                                                              : "media-playback-start-symbolic");
  gtk_widget_set_tooltip_text (self->play_button, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->play_button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  words, -1);
}

static gboolean
is_at_hold (const LbSheetPile *shown, gsize step)
{
  return shown->plan.hold.rig_before > 0 && step + 1 == shown->plan.hold.rig_before;
}

static gboolean
play_cb (gpointer data)
{
  LbSectionSteps *self = data;
  const gsize step = lb_section_view_get_step (self->section) + 1;
  LbSheetPile shown;

  lb_section_view_set_step (self->section, step);
  lb_sheet_pile_load (&shown, self->job, self->pile);
  if (step < lb_section_view_get_n_steps (self->section) && !is_at_hold (&shown, step))
    return G_SOURCE_CONTINUE;
  self->timer = 0;
  set_playing (self, FALSE);
  return G_SOURCE_REMOVE;
}

/* From the end it begins again. */
static void
play_clicked_cb (LbSectionSteps *self)
{
  const gboolean was_playing = self->timer != 0;

  set_playing (self, !was_playing);
  if (was_playing)
    return;
  if (lb_section_view_get_step (self->section) == lb_section_view_get_n_steps (self->section))
    lb_section_view_set_step (self->section, 0);
  self->timer = g_timeout_add (PLAY_MS, play_cb, self);
}

static void
step_by (LbSectionSteps *self, int by)
{
  const gsize step = lb_section_view_get_step (self->section);

  set_playing (self, FALSE);
  lb_section_view_set_step (self->section, by < 0 ? step - 1 : step + 1);
}

static void
back_cb (LbSectionSteps *self)
{
  step_by (self, -1);
}

static void
forward_cb (LbSectionSteps *self)
{
  step_by (self, 1);
}

static void
show_step (LbSectionSteps *self, const LbSheetPile *shown)
{
  const gsize step = lb_section_view_get_step (self->section);
  g_autofree char *hold = lb_hold_point_text (&shown->plan, step);
  g_autofree char *words = NULL;
  LbBarShares shares;

  if (lb_pile_hold_shares (shown->pile, shown->plan.places, shown->state->burned,
                           lb_fold_basis (shown->fold), &shown->plan.hold, step, &shares))
    words = lb_step_text (shown->voice, &shown->fold->assumptions, &shown->plan, &shares, step);
  gtk_label_set_text (self->hold_label, hold != NULL ? hold : "");
  gtk_widget_set_visible (GTK_WIDGET (self->hold_label), hold != NULL);
  gtk_label_set_text (self->step_label, words != NULL ? words : "");
  gtk_widget_set_sensitive (self->back_button, step > 0);
  gtk_widget_set_sensitive (self->forward_button,
                            step < lb_section_view_get_n_steps (self->section));
}

static void
update (LbSectionSteps *self)
{
  LbSheetPile shown;
  gboolean can_step;

  if (self->job == NULL)
    return;
  lb_sheet_pile_load (&shown, self->job, self->pile);
  can_step = lb_section_view_get_n_steps (self->section) > 0;
  gtk_widget_set_visible (GTK_WIDGET (self->controls_box), can_step);
  gtk_widget_set_visible (GTK_WIDGET (self->legend), can_step);
  gtk_widget_set_visible (GTK_WIDGET (self->reason_label), !can_step);
  if (can_step) {
    show_step (self, &shown);
  } else {
    g_autofree char *reason = lb_figure_reason_text (
      shown.voice, shown.pile, &shown.fold->assumptions, &shown.plan, LB_FIGURE_RIG_BEFORE);
    g_autofree char *words = g_strdup_printf (_ ("No steps to show: %s"), reason);

    set_playing (self, FALSE);
    gtk_label_set_text (self->reason_label, words);
  }
}

static void
draw_legend (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  LbSectionSteps *self = LB_SECTION_STEPS (data);

  if (self->job != NULL)
    lb_section_legend_draw (cr, lb_look_palette (GTK_WIDGET (area)), lb_job_get_voice (self->job),
                            width, height);
}

static void
lb_section_steps_unmap (GtkWidget *widget)
{
  set_playing (LB_SECTION_STEPS (widget), FALSE);
  GTK_WIDGET_CLASS (lb_section_steps_parent_class)->unmap (widget);
}

static void
lb_section_steps_dispose (GObject *object)
{
  LbSectionSteps *self = LB_SECTION_STEPS (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  g_clear_object (&self->section);
  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_SECTION_STEPS);
  G_OBJECT_CLASS (lb_section_steps_parent_class)->dispose (object);
}

static void
lb_section_steps_class_init (LbSectionStepsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_section_steps_dispose;
  widget_class->unmap = lb_section_steps_unmap;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/section-steps.ui");
  gtk_widget_class_bind_template_child (widget_class, LbSectionSteps, back_button);
  gtk_widget_class_bind_template_child (widget_class, LbSectionSteps, controls_box);
  gtk_widget_class_bind_template_child (widget_class, LbSectionSteps, forward_button);
  gtk_widget_class_bind_template_child (widget_class, LbSectionSteps, hold_label);
  gtk_widget_class_bind_template_child (widget_class, LbSectionSteps, legend);
  gtk_widget_class_bind_template_child (widget_class, LbSectionSteps, play_button);
  gtk_widget_class_bind_template_child (widget_class, LbSectionSteps, reason_label);
  gtk_widget_class_bind_template_child (widget_class, LbSectionSteps, step_label);
  gtk_widget_class_bind_template_callback (widget_class, back_cb);
  gtk_widget_class_bind_template_callback (widget_class, forward_cb);
  gtk_widget_class_bind_template_callback (widget_class, play_clicked_cb);
}

static void
lb_section_steps_init (LbSectionSteps *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  set_playing (self, FALSE);
  gtk_drawing_area_set_draw_func (self->legend, draw_legend, self, NULL);
  lb_look_follow (GTK_WIDGET (self->legend));
}

void
lb_section_steps_show (LbSectionSteps *self, LbSectionView *section, LbJob *job, guint pile)
{
  g_return_if_fail (LB_IS_SECTION_STEPS (self));
  g_return_if_fail (LB_IS_SECTION_VIEW (section));

  if (g_set_object (&self->section, section))
    g_signal_connect_object (section, "stepped", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  if (pile != self->pile || job != self->job)
    set_playing (self, FALSE);
  g_set_object (&self->job, job);
  self->pile = pile;
  if (job != NULL)
    gtk_drawing_area_set_content_height (self->legend,
                                         (int) (LEGEND_HEIGHT * lb_job_get_voice (job)->scale));
  update (self);
}
