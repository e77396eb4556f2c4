/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Two lines to type in, one for a delay and one for gear that failed, each recorded whole at Enter. The
 * words of the job's list complete themselves; any other is taken as it is typed. */
#include "desk/shift/lost-group.h"

#include "book/delay-causes.h"
#include "book/dive-record.h"
#include "book/dive-said.h"
#include "draw/record-words.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>

struct _LbLostGroup
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  LbField *cause_field;
  LbField *delay_field;
  LbField *bearer_field;
  LbField *remark_field;
  LbField *part_field;
  LbField *fault_field;
  LbField *done_field;

  char *causes; /* that complete themselves now */
};

G_DEFINE_FINAL_TYPE (LbLostGroup, lb_lost_group, LB_TYPE_SHIFT_GROUP)

static char *
text_of (LbField *field)
{
  return g_strstrip (g_strdup (lb_field_get_text (field)));
}

static gboolean
read_word (LbField *field, const char *text, const char *nothing)
{
  g_autoptr (GError) error = NULL;

  if (*text == '\0')
    g_set_error_literal (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE, nothing);
  lb_field_mark (field, error);
  return error == NULL;
}

static gboolean
record (LbLostGroup *self, const LbDraft *lost, const char *detail, const char *said)
{
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));

  g_array_append_val (drafts, *lost);
  lb_gesture_detail (drafts, detail, said);
  return lb_shift_group_record_all (LB_SHIFT_GROUP (self),
                                    (const LbDraft *) (gpointer) drafts->data, drafts->len);
}

/* Empties the line and brings the hands back to its beginning. */
static void
begin_again (LbField *const *fields, gsize n)
{
  for (gsize i = 0; i < n; i++)
    lb_field_set_text (fields[i], "");
  gtk_widget_grab_focus (GTK_WIDGET (fields[0]));
}

static void
record_delay (LbLostGroup *self)
{
  LbField *const fields[] = { self->cause_field, self->delay_field, self->bearer_field,
                              self->remark_field };
  g_autofree char *cause = text_of (self->cause_field);
  g_autofree char *bearer = text_of (self->bearer_field);
  g_autofree char *remark = text_of (self->remark_field);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_DELAY);

  draft.what = lb_shift_word_from_text (LB_WORDS_DELAY, cause);
  draft.note = remark;
  if (read_word (self->cause_field, cause, _ ("Say what the delay was put to")) &&
      lb_shift_group_read_amount (LB_SHIFT_GROUP (self), self->delay_field, LB_QUANTITY_TIME,
                                  &draft.amount) &&
      record (self, &draft, LB_DETAIL_BORNE_BY, lb_shift_word_from_text (LB_WORDS_BEARER, bearer)))
    begin_again (fields, G_N_ELEMENTS (fields));
}

static void
record_fault (LbLostGroup *self)
{
  LbField *const fields[] = { self->part_field, self->fault_field, self->done_field };
  g_autofree char *part = text_of (self->part_field);
  g_autofree char *done = text_of (self->done_field);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_FAULT);

  draft.what = lb_shift_word_from_text (LB_WORDS_FAULT, part);
  if (read_word (self->part_field, part, _ ("Say what failed")) &&
      lb_shift_group_read_if_said (LB_SHIFT_GROUP (self), self->fault_field, LB_QUANTITY_TIME,
                                   &draft.amount) &&
      record (self, &draft, LB_DETAIL_DONE, done))
    begin_again (fields, G_N_ELEMENTS (fields));
}

/* Who bears a delay, what was done about a fault. */
static char *
lb_lost_group_detail (LbShiftGroup *group, const LbEntry *entry)
{
  const LbLedger *ledger = lb_job_get_ledger (lb_shift_group_get_job (group));
  const char *which = entry->kind == LB_ENTRY_DELAY ? LB_DETAIL_BORNE_BY : LB_DETAIL_DONE;
  const char *said = lb_entry_detail (ledger, entry, which);

  if (*said == '\0')
    return NULL;
  return entry->kind == LB_ENTRY_DELAY
           /* Translators: who bears a delay: owner, contractor, … */
           ? g_strdup_printf (_ ("borne by: %s"), lb_detail_value (which, said))
           : g_strdup (said);
}

/* Words as the screen speaks; NULL-terminated, to be freed but not the words. */
static const char **
names_of (LbShiftWords kind, const char *const *words)
{
  GPtrArray *names = g_ptr_array_new ();

  for (; *words != NULL; words++)
    g_ptr_array_add (names, (gpointer) lb_shift_word_name (kind, *words));
  g_ptr_array_add (names, NULL);
  return (const char **) g_ptr_array_free (names, FALSE);
}

static void
complete (LbField *field, LbShiftWords kind, const char *const *words)
{
  g_autofree const char **names = names_of (kind, words);

  lb_field_complete (field, names);
}

static void
offer_causes (LbLostGroup *self)
{
  g_auto (GStrv) causes = lb_delay_causes (
    lb_job_get_fold (lb_shift_group_get_job (LB_SHIFT_GROUP (self))));
  g_autofree char *joined = g_strjoinv ("\n", causes);

  if (g_strcmp0 (joined, self->causes) == 0)
    return;
  g_free (self->causes);
  self->causes = g_steal_pointer (&joined);
  complete (self->cause_field, LB_WORDS_DELAY, (const char *const *) causes);
}

static void
lb_lost_group_update (LbShiftGroup *group)
{
  LbJob *job = lb_shift_group_get_job (group);
  const LbVoice *voice = lb_job_get_voice (job);
  const int shift = lb_job_get_shift (job);
  g_autofree char *said = NULL;

  offer_causes (LB_LOST_GROUP (group));
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
  g_clear_pointer (&LB_LOST_GROUP (object)->causes, g_free);

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
  group_class->detail = lb_lost_group_detail;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/lost-group.ui");
  gtk_widget_class_bind_template_child (widget_class, LbLostGroup, cause_field);
  gtk_widget_class_bind_template_child (widget_class, LbLostGroup, delay_field);
  gtk_widget_class_bind_template_child (widget_class, LbLostGroup, bearer_field);
  gtk_widget_class_bind_template_child (widget_class, LbLostGroup, remark_field);
  gtk_widget_class_bind_template_child (widget_class, LbLostGroup, part_field);
  gtk_widget_class_bind_template_child (widget_class, LbLostGroup, fault_field);
  gtk_widget_class_bind_template_child (widget_class, LbLostGroup, done_field);
  gtk_widget_class_bind_template_callback (widget_class, record_delay);
  gtk_widget_class_bind_template_callback (widget_class, record_fault);
}

static void
lb_lost_group_init (LbLostGroup *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  complete (self->bearer_field, LB_WORDS_BEARER, lb_shift_words (LB_WORDS_BEARER));
  complete (self->part_field, LB_WORDS_FAULT, lb_shift_words (LB_WORDS_FAULT));
}
