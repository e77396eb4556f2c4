/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/side-view.h"

#include "desk/sheet/sheet-pile.h"
#include "desk/shell/look.h"
#include "draw/plan-words.h"
#include "draw/side.h"

#include <glib/gi18n-lib.h>

/* Before the voice's scale. */
#define WIDTH  150
#define HEIGHT 230

struct _LbSideView
{
  GtkWidget parent_instance;

  LbJob *job;
  guint pile;
};

G_DEFINE_FINAL_TYPE (LbSideView, lb_side_view, GTK_TYPE_WIDGET)

static void
lb_side_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  LbSideView *self = LB_SIDE_VIEW (widget);
  const int width = gtk_widget_get_width (widget);
  const int height = gtk_widget_get_height (widget);
  LbSheetPile shown;
  cairo_t *cr;

  if (self->job == NULL)
    return;
  lb_sheet_pile_load (&shown, self->job, self->pile);

  const LbSide side = {
    .pile = shown.pile,
    .plan = &shown.plan,
    .water_m = shown.fold->assumptions.value[LB_ASSUME_WATER_LEVEL],
    .cut_m = lb_pile_cut_elevation (shown.pile, &shown.fold->assumptions),
    .step = shown.state->step,
  };

  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  lb_side_draw (cr, lb_look_palette (widget), shown.voice, &side, width, height);
  cairo_destroy (cr);
}

static void
lb_side_view_measure (GtkWidget *widget,
                      GtkOrientation orientation,
                      int for_size,
                      int *minimum,
                      int *natural,
                      int *minimum_baseline,
                      int *natural_baseline)
{
  LbSideView *self = LB_SIDE_VIEW (widget);
  const double scale = self->job != NULL ? lb_job_get_voice (self->job)->scale : 1;

  *minimum = *natural = (int) (scale *
                               (orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH : HEIGHT));
}

static void
lb_side_view_dispose (GObject *object)
{
  g_clear_object (&LB_SIDE_VIEW (object)->job);
  G_OBJECT_CLASS (lb_side_view_parent_class)->dispose (object);
}

static void
lb_side_view_class_init (LbSideViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_side_view_dispose;
  widget_class->measure = lb_side_view_measure;
  widget_class->snapshot = lb_side_view_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "sideview");
}

static void
lb_side_view_init (LbSideView *self)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The pile from the side"), -1);
  lb_look_follow (GTK_WIDGET (self));
}

/* What the picture says, for who does not see it: the figures of where the cut is. */
static void
update_description (LbSideView *self)
{
  LbSheetPile shown;

  lb_sheet_pile_load (&shown, self->job, self->pile);

  g_autofree char *pile = lb_pile_text (shown.voice, shown.pile);
  g_autofree char *depth = lb_figure_text (shown.voice, &shown.plan, LB_FIGURE_CUT_DEPTH);
  g_autofree char *words = g_strdup_printf (
    /* Translators: “16 in octagonal, leans 1:4 to the south. Water over the cut: 31 ft.” */
    _ ("%s. Water over the cut: %s."), pile, depth);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words,
                                  -1);
}

void
lb_side_view_show (LbSideView *self, LbJob *job, guint pile)
{
  g_return_if_fail (LB_IS_SIDE_VIEW (self));

  g_set_object (&self->job, job);
  self->pile = pile;
  if (job != NULL)
    update_description (self);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
