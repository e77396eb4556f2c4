/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shift/finding-group.h"

#include "desk/shift/finding-rows.h"

#include <glib/gi18n-lib.h>

struct _LbFindingGroup
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  GtkListBox *list;

  /* Owned */
  GPtrArray *shown; /* what its rows say */
};

G_DEFINE_FINAL_TYPE (LbFindingGroup, lb_finding_group, LB_TYPE_SHIFT_GROUP)

static void
lb_finding_group_update (LbShiftGroup *group)
{
  LbFindingGroup *self = LB_FINDING_GROUP (group);

  gtk_widget_set_visible (
    GTK_WIDGET (self),
    lb_finding_rows_show_sheet (lb_shift_group_get_job (group), self->list, &self->shown) > 0);
}

static void
lb_finding_group_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_FINDING_GROUP);

  G_OBJECT_CLASS (lb_finding_group_parent_class)->dispose (object);
}

static void
lb_finding_group_finalize (GObject *object)
{
  g_ptr_array_unref (LB_FINDING_GROUP (object)->shown);

  G_OBJECT_CLASS (lb_finding_group_parent_class)->finalize (object);
}

static void
lb_finding_group_class_init (LbFindingGroupClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_finding_group_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_finding_group_finalize;
  LB_SHIFT_GROUP_CLASS (klass)->update = lb_finding_group_update;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/finding-group.ui");
  gtk_widget_class_bind_template_child (widget_class, LbFindingGroup, list);
}

static void
lb_finding_group_init (LbFindingGroup *self)
{
  self->shown = g_ptr_array_new_with_free_func (g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}
