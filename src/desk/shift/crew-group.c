/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Each charge is a field that shows who was named last. The hours are one entry of two times, stored as
 * soon as both are there. A crew is the same for weeks: one press names those of the shift before. */
#include "desk/shift/crew-group.h"

#include "book/clock-text.h"
#include "book/dive-record.h"
#include "draw/plan-words.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>

static const char *const charges[] = { LB_CHARGE_SUPERVISOR, LB_CHARGE_IN_CHARGE, LB_CHARGE_CRANE,
                                       LB_CHARGE_TENDERS, LB_CHARGE_STANDBY };

#define N_COLUMNS 3

struct _LbCrewGroup
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  LbField *began_field;
  LbField *ended_field;
  GtkGrid *grid;
  GtkWidget *same_button;

  LbField *fields[G_N_ELEMENTS (charges)];
};

G_DEFINE_FINAL_TYPE (LbCrewGroup, lb_crew_group, LB_TYPE_SHIFT_GROUP)

static const char *
holder (LbCrewGroup *self, int shift, const char *charge)
{
  LbJob *job = lb_shift_group_get_job (LB_SHIFT_GROUP (self));

  return shift < 0
           ? ""
           : lb_charge_holder (lb_job_get_ledger (job), lb_job_get_fold (job), shift, charge);
}

static gboolean
has_crew (LbCrewGroup *self, int shift)
{
  for (gsize i = 0; i < G_N_ELEMENTS (charges); i++)
    if (*holder (self, shift, charges[i]) != '\0')
      return TRUE;
  return FALSE;
}

/* The shift before this one whose crew is known, -1 for none. */
static int
shift_before (LbCrewGroup *self)
{
  LbJob *job = lb_shift_group_get_job (LB_SHIFT_GROUP (self));
  const int present = lb_job_get_shift (job);
  int shift = present >= 0 ? present : (int) lb_job_get_ledger (job)->shifts->len;

  while (--shift >= 0)
    if (has_crew (self, shift))
      break;
  return shift;
}

static void
same_clicked_cb (LbCrewGroup *self)
{
  const int before = shift_before (self);
  LbDraft drafts[G_N_ELEMENTS (charges)];
  gsize n = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (charges) && before >= 0; i++) {
    const char *who = holder (self, before, charges[i]);

    if (*who == '\0')
      continue;
    drafts[n] = LB_DRAFT_INIT (LB_ENTRY_CREW);
    drafts[n].what = charges[i];
    drafts[n++].note = who;
  }
  if (n > 0 && lb_shift_group_record_all (LB_SHIFT_GROUP (self), drafts, n))
    gtk_widget_grab_focus (GTK_WIDGET (self->began_field));
}

static void
charge_said_cb (LbField *field, const char *text, LbCrewGroup *self)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_CREW);
  gsize i = 0;

  while (self->fields[i] != field)
    i++;
  draft.what = charges[i];
  draft.note = text;
  lb_shift_group_record (LB_SHIFT_GROUP (self), &draft);
}

/* Empty is no time, and no fault: the other one may still be to come. */
static gboolean
read_time (LbCrewGroup *self, LbField *field, gint64 *out_us)
{
  const LbShift shift = lb_shift_group_shift_of_times (LB_SHIFT_GROUP (self));
  g_autoptr (GError) error = NULL;

  if (*lb_field_get_text (field) == '\0')
    return FALSE;
  lb_clock_from_text (&shift, lb_field_get_text (field), out_us, &error);
  lb_field_mark (field, error);
  return error == NULL;
}

/* As the program writes them, whatever was typed. */
static void
show_hours (LbCrewGroup *self, gint64 start_us, gint64 end_us)
{
  g_autofree char *began = lb_clock_to_text (start_us);
  g_autofree char *ended = lb_clock_to_text (end_us);

  lb_field_set_text (self->began_field, began);
  lb_field_set_text (self->ended_field, ended);
}

static void
hours_said_cb (LbCrewGroup *self)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_HOURS);
  g_autoptr (GError) error = NULL;

  if (!read_time (self, self->began_field, &draft.start_us) ||
      !read_time (self, self->ended_field, &draft.end_us))
    return;
  if (draft.end_us <= draft.start_us) {
    g_set_error_literal (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                         _ ("The shift ended before it began; check the times"));
    lb_field_mark (self->ended_field, error);
    return;
  }
  if (lb_shift_group_record (LB_SHIFT_GROUP (self), &draft))
    show_hours (self, draft.start_us, draft.end_us);
}

/* The hours said last; NULL for none. */
static const LbEntry *
find_hours (LbCrewGroup *self)
{
  LbJob *job = lb_shift_group_get_job (LB_SHIFT_GROUP (self));
  const LbFold *fold = lb_job_get_fold (job);
  const int shift = lb_job_get_shift (job);

  for (gsize i = fold->n_entries; i-- > 0 && shift >= 0;) {
    const LbEntry *entry = lb_ledger_entry (lb_job_get_ledger (job), (guint) i);

    if (entry->kind == LB_ENTRY_HOURS && entry->shift == shift && fold->is_alive[i])
      return entry;
  }
  return NULL;
}

static void
lb_crew_group_update (LbShiftGroup *group)
{
  LbCrewGroup *self = LB_CREW_GROUP (group);
  const int shift = lb_job_get_shift (lb_shift_group_get_job (group));
  const LbEntry *hours = find_hours (self);
  g_autofree char *began = lb_clock_to_text (hours != NULL ? hours->start_us : 0);
  g_autofree char *ended = lb_clock_to_text (hours != NULL ? hours->end_us : 0);

  lb_field_show (self->began_field, began);
  lb_field_show (self->ended_field, ended);
  for (gsize i = 0; i < G_N_ELEMENTS (charges); i++)
    lb_field_show (self->fields[i], holder (self, shift, charges[i]));
  gtk_widget_set_visible (self->same_button, !has_crew (self, shift) && shift_before (self) >= 0);
}

static void
lb_crew_group_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_CREW_GROUP);

  G_OBJECT_CLASS (lb_crew_group_parent_class)->dispose (object);
}

static void
lb_crew_group_class_init (LbCrewGroupClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_crew_group_dispose;
  LB_SHIFT_GROUP_CLASS (klass)->update = lb_crew_group_update;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/crew-group.ui");
  gtk_widget_class_bind_template_child (widget_class, LbCrewGroup, began_field);
  gtk_widget_class_bind_template_child (widget_class, LbCrewGroup, ended_field);
  gtk_widget_class_bind_template_child (widget_class, LbCrewGroup, grid);
  gtk_widget_class_bind_template_child (widget_class, LbCrewGroup, same_button);
  gtk_widget_class_bind_template_callback (widget_class, hours_said_cb);
  gtk_widget_class_bind_template_callback (widget_class, same_clicked_cb);
}

static void
lb_crew_group_init (LbCrewGroup *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  for (gsize i = 0; i < G_N_ELEMENTS (charges); i++) {
    const int at = (int) i + 2; /* the hours stand first */

    self->fields[i] = g_object_new (LB_TYPE_FIELD, "caption", lb_charge_name (charges[i]), NULL);
    g_signal_connect_object (self->fields[i], "said", G_CALLBACK (charge_said_cb), self, 0);
    gtk_grid_attach (self->grid, GTK_WIDGET (self->fields[i]), at % N_COLUMNS, at / N_COLUMNS, 1,
                     1);
  }
}
