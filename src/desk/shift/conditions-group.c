/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shift/conditions-group.h"

#include "book/dive-record.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

/* In the file in English; three to a row. */
static const char *const conditions[] = {
  "wind", "sea", "current", "visibility", "water temperature", "tide"
};

#define N_COLUMNS 3

struct _LbConditionsGroup
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  GtkGrid *grid;

  LbField *fields[G_N_ELEMENTS (conditions)];
};

G_DEFINE_FINAL_TYPE (LbConditionsGroup, lb_conditions_group, LB_TYPE_SHIFT_GROUP)

/* What was said last, "" before anything was. */
static const char *
said_last (LbConditionsGroup *self, gsize i)
{
  LbJob *job = lb_shift_group_get_job (LB_SHIFT_GROUP (self));
  const int shift = lb_job_get_shift (job);

  return shift < 0 ? ""
                   : lb_condition_said (lb_job_get_ledger (job), lb_job_get_fold (job), shift,
                                        conditions[i]);
}

/* A condition cannot be unsaid but by taking back: an emptied field shows it again. */
static void
said_cb (LbField *field, const char *text, LbConditionsGroup *self)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_CONDITION);
  gsize i = 0;

  while (self->fields[i] != field)
    i++;
  draft.what = conditions[i];
  draft.note = text;
  if (*text == '\0')
    lb_field_show (field, said_last (self, i));
  else
    lb_shift_group_record (LB_SHIFT_GROUP (self), &draft);
}

static void
lb_conditions_group_update (LbShiftGroup *group)
{
  LbConditionsGroup *self = LB_CONDITIONS_GROUP (group);

  for (gsize i = 0; i < G_N_ELEMENTS (conditions); i++)
    lb_field_show (self->fields[i], said_last (self, i));
}

static void
lb_conditions_group_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_CONDITIONS_GROUP);

  G_OBJECT_CLASS (lb_conditions_group_parent_class)->dispose (object);
}

static void
lb_conditions_group_class_init (LbConditionsGroupClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_conditions_group_dispose;
  LB_SHIFT_GROUP_CLASS (klass)->update = lb_conditions_group_update;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/conditions-group.ui");
  gtk_widget_class_bind_template_child (widget_class, LbConditionsGroup, grid);
}

static void
lb_conditions_group_init (LbConditionsGroup *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  for (gsize i = 0; i < G_N_ELEMENTS (conditions); i++) {
    self->fields[i] = g_object_new (LB_TYPE_FIELD, "caption", lb_condition_name (conditions[i]),
                                    NULL);
    g_signal_connect_object (self->fields[i], "said", G_CALLBACK (said_cb), self, 0);
    gtk_grid_attach (self->grid, GTK_WIDGET (self->fields[i]), (int) i % N_COLUMNS,
                     (int) i / N_COLUMNS, 1, 1);
  }
}
