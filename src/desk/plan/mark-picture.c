/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/plan/mark-picture.h"

#include "desk/shell/look.h"
#include "draw/mark.h"

#include <math.h>

/* Of the outline; what a mark carries outside it reaches 1.1 sizes from its centre. */
#define MARK_PX 16
#define SIDE_PX 36

struct _LbMarkPicture
{
  GtkWidget parent_instance;

  LbStep step;
};

G_DEFINE_FINAL_TYPE (LbMarkPicture, lb_mark_picture, GTK_TYPE_WIDGET)

static void
lb_mark_picture_measure (GtkWidget *widget,
                         GtkOrientation orientation,
                         int for_size,
                         int *minimum,
                         int *natural,
                         int *minimum_baseline,
                         int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_VERTICAL ? SIDE_PX : SIDE_PX - 10;
}

static void
lb_mark_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  const LbMark mark = {
    .shape = LB_SHAPE_OCTAGON,
    .step = LB_MARK_PICTURE (widget)->step,
    .share_left = 0.7,
  };
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (
    snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

  cairo_translate (cr, round (width / 2.0), round (height / 2.0));
  lb_mark_draw (cr, lb_look_palette (widget), &mark, MARK_PX);
  cairo_destroy (cr);
}

static void
lb_mark_picture_class_init (LbMarkPictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->measure = lb_mark_picture_measure;
  widget_class->snapshot = lb_mark_picture_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
lb_mark_picture_init (LbMarkPicture *self)
{
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
  lb_look_follow (GTK_WIDGET (self));
}

GtkWidget *
lb_mark_picture_new (LbStep step)
{
  LbMarkPicture *self = g_object_new (LB_TYPE_MARK_PICTURE, NULL);

  self->step = step;
  return GTK_WIDGET (self);
}
