/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shift/notes-group.h"

#include <glib/gi18n-lib.h>

/* What a line is about; the last is a plain note. In the file in English. */
static const char *const subjects[] = {
  N_ ("visibility"), N_ ("current"), N_ ("wind"), N_ ("sea"), N_ ("water temperature"), N_ ("note"),
};

struct _LbNotesGroup
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  AdwComboRow *subject_row;
  AdwEntryRow *text_row;
};

G_DEFINE_FINAL_TYPE (LbNotesGroup, lb_notes_group, LB_TYPE_SHIFT_GROUP)

static void
text_apply_cb (LbNotesGroup *self)
{
  const guint subject = adw_combo_row_get_selected (self->subject_row);
  const gboolean is_note = subject == G_N_ELEMENTS (subjects) - 1;
  LbDraft draft = LB_DRAFT_INIT (is_note ? LB_ENTRY_NOTE : LB_ENTRY_CONDITION);
  g_autofree char *text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->text_row)));

  draft.note = g_strstrip (text);
  draft.what = is_note ? NULL : subjects[subject];
  if (*draft.note != '\0' && lb_shift_group_record (LB_SHIFT_GROUP (self), &draft))
    gtk_editable_set_text (GTK_EDITABLE (self->text_row), "");
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
  LB_SHIFT_GROUP_CLASS (klass)->kinds = LB_ENTRY_KIND_BIT (LB_ENTRY_CONDITION) |
                                        LB_ENTRY_KIND_BIT (LB_ENTRY_NOTE);

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/notes-group.ui");
  gtk_widget_class_bind_template_child (widget_class, LbNotesGroup, subject_row);
  gtk_widget_class_bind_template_child (widget_class, LbNotesGroup, text_row);
  gtk_widget_class_bind_template_callback (widget_class, text_apply_cb);
}

static void
lb_notes_group_init (LbNotesGroup *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  gtk_widget_init_template (GTK_WIDGET (self));
  for (gsize i = 0; i < G_N_ELEMENTS (subjects); i++)
    gtk_string_list_append (names, _ (subjects[i]));
  adw_combo_row_set_model (self->subject_row, G_LIST_MODEL (names));
}
