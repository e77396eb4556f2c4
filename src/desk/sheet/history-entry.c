/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/history-entry.h"

#include "book/clock-text.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

struct _LbHistoryEntry
{
  GObject parent_instance;

  gint64 seq;
  char *text;
  char *when;
  char *act;
  gboolean is_alive;
};

G_DEFINE_FINAL_TYPE (LbHistoryEntry, lb_history_entry, G_TYPE_OBJECT)

static void
lb_history_entry_finalize (GObject *object)
{
  LbHistoryEntry *self = LB_HISTORY_ENTRY (object);

  g_free (self->text);
  g_free (self->when);
  g_free (self->act);
  G_OBJECT_CLASS (lb_history_entry_parent_class)->finalize (object);
}

static void
lb_history_entry_class_init (LbHistoryEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = lb_history_entry_finalize;
}

static void
lb_history_entry_init (LbHistoryEntry *self)
{
}

/* "Tue 14 Jul 2026 · 07:10 · diver 2": the shift's day, for work written up later belongs there. */
static char *
when_words (const LbLedger *ledger, const LbEntry *entry)
{
  g_autofree char *clock = lb_clock_text (entry->at_us);
  g_autofree char *day = NULL;

  if (entry->shift >= 0) {
    day = lb_day_text (lb_ledger_shift (ledger, (guint) entry->shift)->day);
  } else {
    g_autoptr (GDateTime) at = g_date_time_new_from_unix_local (entry->at_us / G_USEC_PER_SEC);
    GDate date;

    g_date_clear (&date, 1);
    if (at != NULL)
      g_date_set_dmy (&date, (GDateDay) g_date_time_get_day_of_month (at),
                      (GDateMonth) g_date_time_get_month (at),
                      (GDateYear) g_date_time_get_year (at));
    day = at != NULL ? lb_day_text (g_date_get_julian (&date)) : g_strdup ("–");
  }
  return *entry->who != '\0' ? g_strdup_printf ("%s · %s · %s", day, clock, entry->who)
                             : g_strdup_printf ("%s · %s", day, clock);
}

LbHistoryEntry *
lb_history_entry_new (LbJob *job, guint i)
{
  LbHistoryEntry *self = g_object_new (LB_TYPE_HISTORY_ENTRY, NULL);
  const LbLedger *ledger = lb_job_get_ledger (job);
  const LbEntry *entry = lb_ledger_entry (ledger, i);

  self->seq = entry->seq;
  self->text = lb_entry_text (lb_job_get_voice (job), ledger, lb_job_get_fold (job), entry);
  self->when = when_words (ledger, entry);
  self->act = g_strdup (entry->act);
  self->is_alive = lb_job_get_fold (job)->is_alive[i] != 0;
  return self;
}

const char *
lb_history_entry_get_text (LbHistoryEntry *self)
{
  g_return_val_if_fail (LB_IS_HISTORY_ENTRY (self), NULL);

  return self->text;
}

const char *
lb_history_entry_get_when (LbHistoryEntry *self)
{
  g_return_val_if_fail (LB_IS_HISTORY_ENTRY (self), NULL);

  return self->when;
}

const char *
lb_history_entry_get_act (LbHistoryEntry *self)
{
  g_return_val_if_fail (LB_IS_HISTORY_ENTRY (self), NULL);

  return self->act;
}

gboolean
lb_history_entry_get_is_alive (LbHistoryEntry *self)
{
  g_return_val_if_fail (LB_IS_HISTORY_ENTRY (self), FALSE);

  return self->is_alive;
}

gboolean
lb_history_entry_equal (LbHistoryEntry *one, LbHistoryEntry *other)
{
  g_return_val_if_fail (LB_IS_HISTORY_ENTRY (one), FALSE);
  g_return_val_if_fail (LB_IS_HISTORY_ENTRY (other), FALSE);

  return one->seq == other->seq && one->is_alive == other->is_alive &&
         g_str_equal (one->text, other->text) && g_str_equal (one->when, other->when);
}
