/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shift/used-group.h"

#include <glib/gi18n-lib.h>

struct _LbUsedGroup
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  AdwEntryRow *oxygen_row;
  AdwEntryRow *rods_row;
};

G_DEFINE_FINAL_TYPE (LbUsedGroup, lb_used_group, LB_TYPE_SHIFT_GROUP)

static void
record (LbUsedGroup *self, AdwEntryRow *row, LbEntryKind kind, LbQuantity quantity)
{
  LbDraft draft = LB_DRAFT_INIT (kind);

  if (lb_shift_group_read_amount (LB_SHIFT_GROUP (self), GTK_WIDGET (row), quantity,
                                  &draft.amount) &&
      lb_shift_group_record (LB_SHIFT_GROUP (self), &draft))
    gtk_editable_set_text (GTK_EDITABLE (row), "");
}

static void
rods_apply_cb (LbUsedGroup *self)
{
  record (self, self->rods_row, LB_ENTRY_RODS, LB_QUANTITY_COUNT);
}

static void
oxygen_apply_cb (LbUsedGroup *self)
{
  record (self, self->oxygen_row, LB_ENTRY_OXYGEN, LB_QUANTITY_GAS);
}

static void
lb_used_group_update (LbShiftGroup *group)
{
  LbUsedGroup *self = LB_USED_GROUP (group);
  LbJob *job = lb_shift_group_get_job (group);
  const LbVoice *voice = lb_job_get_voice (job);
  const int shift = lb_job_get_shift (job);
  g_autofree char *said = NULL;

  lb_shift_group_title_row (group, GTK_WIDGET (self->oxygen_row), _ ("Oxygen used"),
                            LB_QUANTITY_GAS);
  if (shift >= 0) {
    const LbTotals *totals = &lb_job_get_fold (job)->shifts[shift];
    g_autofree char *rods = lb_number_to_text (totals->rods, 0, &voice->numbers);
    g_autofree char *oxygen = lb_quantity_to_text (LB_QUANTITY_GAS, voice->units, totals->oxygen_m3,
                                                   &voice->numbers);

    /* Translators: “This shift: 32 rods, 640 cu ft of oxygen” */
    said = g_strdup_printf (_ ("This shift: %s rods, %s of oxygen"), rods, oxygen);
  }
  adw_preferences_group_set_description (ADW_PREFERENCES_GROUP (self),
                                         said != NULL ? said : _ ("This shift: nothing yet"));
}

static void
lb_used_group_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_USED_GROUP);

  G_OBJECT_CLASS (lb_used_group_parent_class)->dispose (object);
}

static void
lb_used_group_class_init (LbUsedGroupClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  LbShiftGroupClass *group_class = LB_SHIFT_GROUP_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_used_group_dispose;
  group_class->kinds = LB_ENTRY_KIND_BIT (LB_ENTRY_RODS) | LB_ENTRY_KIND_BIT (LB_ENTRY_OXYGEN);
  group_class->update = lb_used_group_update;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/used-group.ui");
  gtk_widget_class_bind_template_child (widget_class, LbUsedGroup, oxygen_row);
  gtk_widget_class_bind_template_child (widget_class, LbUsedGroup, rods_row);
  gtk_widget_class_bind_template_callback (widget_class, oxygen_apply_cb);
  gtk_widget_class_bind_template_callback (widget_class, rods_apply_cb);
}

static void
lb_used_group_init (LbUsedGroup *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
