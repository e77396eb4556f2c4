/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shift/lost-group.h"

#include <glib/gi18n-lib.h>

/* What goes into the file, in English whatever the screen speaks; shown translated. */
typedef struct
{
  LbEntryKind kind;
  const char *what;
} Cause;

static const Cause causes[] = {
  { LB_ENTRY_DELAY, N_ ("current") },          { LB_ENTRY_DELAY, N_ ("weather") },
  { LB_ENTRY_DELAY, N_ ("visibility") },       { LB_ENTRY_DELAY, N_ ("vessel traffic") },
  { LB_ENTRY_DELAY, N_ ("waiting on crane") }, { LB_ENTRY_DELAY, N_ ("waiting on owner") },
  { LB_ENTRY_DELAY, N_ ("other delay") },      { LB_ENTRY_FAULT, N_ ("leak at the collet") },
  { LB_ENTRY_FAULT, N_ ("worn O-ring") },      { LB_ENTRY_FAULT, N_ ("bad clamp") },
  { LB_ENTRY_FAULT, N_ ("dead switch") },      { LB_ENTRY_FAULT, N_ ("cable") },
  { LB_ENTRY_FAULT, N_ ("oxygen hose") },      { LB_ENTRY_FAULT, N_ ("other gear") },
};

struct _LbLostGroup
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  AdwComboRow *cause_row;
  AdwEntryRow *minutes_row;
};

G_DEFINE_FINAL_TYPE (LbLostGroup, lb_lost_group, LB_TYPE_SHIFT_GROUP)

static void
minutes_apply_cb (LbLostGroup *self)
{
  const Cause *cause = &causes[adw_combo_row_get_selected (self->cause_row)];
  LbDraft draft = LB_DRAFT_INIT (cause->kind);

  draft.what = cause->what;
  if (lb_shift_group_read_amount (LB_SHIFT_GROUP (self), GTK_WIDGET (self->minutes_row),
                                  LB_QUANTITY_TIME, &draft.amount) &&
      lb_shift_group_record (LB_SHIFT_GROUP (self), &draft))
    gtk_editable_set_text (GTK_EDITABLE (self->minutes_row), "");
}

static void
lb_lost_group_update (LbShiftGroup *group)
{
  LbJob *job = lb_shift_group_get_job (group);
  const LbVoice *voice = lb_job_get_voice (job);
  const int shift = lb_job_get_shift (job);
  g_autofree char *said = NULL;

  if (shift >= 0) {
    const LbTotals *totals = &lb_job_get_fold (job)->shifts[shift];
    g_autofree char *delays = lb_quantity_to_text (LB_QUANTITY_TIME, voice->units, totals->delay_s,
                                                   &voice->numbers);
    g_autofree char *faults = lb_quantity_to_text (LB_QUANTITY_TIME, voice->units, totals->fault_s,
                                                   &voice->numbers);

    /* Translators: “This shift: 90 min of delays, 35 min lost to gear” */
    said = g_strdup_printf (_ ("This shift: %s of delays, %s lost to gear"), delays, faults);
  }
  adw_preferences_group_set_description (ADW_PREFERENCES_GROUP (group),
                                         said != NULL ? said : _ ("This shift: nothing yet"));
}

static void
lb_lost_group_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_LOST_GROUP);

  G_OBJECT_CLASS (lb_lost_group_parent_class)->dispose (object);
}

static void
lb_lost_group_class_init (LbLostGroupClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  LbShiftGroupClass *group_class = LB_SHIFT_GROUP_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_lost_group_dispose;
  group_class->kinds = LB_ENTRY_KIND_BIT (LB_ENTRY_DELAY) | LB_ENTRY_KIND_BIT (LB_ENTRY_FAULT);
  group_class->update = lb_lost_group_update;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/lost-group.ui");
  gtk_widget_class_bind_template_child (widget_class, LbLostGroup, cause_row);
  gtk_widget_class_bind_template_child (widget_class, LbLostGroup, minutes_row);
  gtk_widget_class_bind_template_callback (widget_class, minutes_apply_cb);
}

static void
lb_lost_group_init (LbLostGroup *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  gtk_widget_init_template (GTK_WIDGET (self));
  for (gsize i = 0; i < G_N_ELEMENTS (causes); i++)
    gtk_string_list_append (names, _ (causes[i].what));
  adw_combo_row_set_model (self->cause_row, G_LIST_MODEL (names));
}
