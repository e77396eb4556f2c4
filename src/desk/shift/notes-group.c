/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shift/notes-group.h"

struct _LbNotesGroup
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  LbField *text_field;
};

G_DEFINE_FINAL_TYPE (LbNotesGroup, lb_notes_group, LB_TYPE_SHIFT_GROUP)

static void
text_said_cb (LbNotesGroup *self, const char *text)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_NOTE);

  draft.note = text;
  if (lb_shift_group_record (LB_SHIFT_GROUP (self), &draft))
    lb_field_set_text (self->text_field, "");
}

static void
lb_notes_group_update (LbShiftGroup *group)
{
  lb_field_show (LB_NOTES_GROUP (group)->text_field, "");
}

static void
lb_notes_group_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_NOTES_GROUP);

  G_OBJECT_CLASS (lb_notes_group_parent_class)->dispose (object);
}

static void
lb_notes_group_class_init (LbNotesGroupClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_notes_group_dispose;
  LB_SHIFT_GROUP_CLASS (klass)->kinds = LB_ENTRY_KIND_BIT (LB_ENTRY_NOTE);
  LB_SHIFT_GROUP_CLASS (klass)->update = lb_notes_group_update;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/notes-group.ui");
  gtk_widget_class_bind_template_child (widget_class, LbNotesGroup, text_field);
  gtk_widget_class_bind_template_callback (widget_class, text_said_cb);
}

static void
lb_notes_group_init (LbNotesGroup *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
