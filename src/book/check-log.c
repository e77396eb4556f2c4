/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/check-log.h"

struct _LbCheckLog
{
  GPtrArray *checks; /* const LbEntry, as they were recorded */
  GPtrArray *dives;  /* const LbEntry at a pile, as they left the surface */
};

gint64
lb_dive_departure (const LbEntry *dive)
{
  g_return_val_if_fail (dive != NULL, 0);

  return dive->start_us != 0 ? dive->start_us : dive->at_us;
}

static int
compare_departures (gconstpointer a, gconstpointer b)
{
  const LbEntry *one = *(const LbEntry *const *) a, *other = *(const LbEntry *const *) b;

  if (lb_dive_departure (one) != lb_dive_departure (other))
    return lb_dive_departure (one) < lb_dive_departure (other) ? -1 : 1;
  return one->seq < other->seq ? -1 : one->seq > other->seq;
}

LbCheckLog *
lb_check_log_new (const LbLedger *ledger, const LbFold *fold, int shift)
{
  g_return_val_if_fail (ledger != NULL, NULL);
  g_return_val_if_fail (fold != NULL, NULL);

  LbCheckLog *log = g_new (LbCheckLog, 1);

  log->checks = g_ptr_array_new ();
  log->dives = g_ptr_array_new ();
  for (gsize i = 0; i < fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, (guint) i);

    if (!fold->is_alive[i] || entry->shift != shift || entry->pile < 0)
      continue;
    if (entry->kind == LB_ENTRY_CHECK)
      g_ptr_array_add (log->checks, (gpointer) entry);
    else if (entry->kind == LB_ENTRY_DIVE)
      g_ptr_array_add (log->dives, (gpointer) entry);
  }
  g_ptr_array_sort (log->dives, compare_departures);
  return log;
}

void
lb_check_log_free (LbCheckLog *log)
{
  if (log == NULL)
    return;
  g_ptr_array_unref (log->checks);
  g_ptr_array_unref (log->dives);
  g_free (log);
}

/* When the dive left that a check belongs to; 0 for one that is still to come. */
static gint64
departure_of_check (const LbCheckLog *log, const LbEntry *check)
{
  if (check->start_us != 0)
    return check->start_us;
  for (guint i = 0; i < log->dives->len; i++) {
    const LbEntry *dive = g_ptr_array_index (log->dives, i);

    if (dive->pile == check->pile && lb_dive_departure (dive) >= check->at_us)
      return lb_dive_departure (dive);
  }
  return 0;
}

GArray *
lb_check_log_at (const LbCheckLog *log, int pile, gint64 departure_us)
{
  g_return_val_if_fail (log != NULL, NULL);

  GArray *gathered = g_array_new (FALSE, FALSE, sizeof (LbCheck));

  for (guint i = 0; i < log->checks->len; i++) {
    const LbEntry *entry = g_ptr_array_index (log->checks, i);

    if (entry->pile != pile || departure_of_check (log, entry) != departure_us)
      continue;

    const LbCheck said = { .key = entry->what, .is_ticked = entry->amount > 0 };
    LbCheck *known = (LbCheck *) lb_check_find (gathered, said.key);

    if (known != NULL)
      *known = said;
    else
      g_array_append_val (gathered, said);
  }
  return gathered;
}

GArray *
lb_check_log_of (const LbCheckLog *log, const LbEntry *dive)
{
  g_return_val_if_fail (log != NULL, NULL);
  g_return_val_if_fail (dive != NULL && dive->kind == LB_ENTRY_DIVE, NULL);

  return lb_check_log_at (log, dive->pile, lb_dive_departure (dive));
}

GPtrArray *
lb_check_log_dives (const LbCheckLog *log, int pile)
{
  g_return_val_if_fail (log != NULL, NULL);

  GPtrArray *found = g_ptr_array_new ();

  for (guint i = 0; i < log->dives->len; i++) {
    const LbEntry *dive = g_ptr_array_index (log->dives, i);

    if (dive->pile == pile)
      g_ptr_array_add (found, (gpointer) dive);
  }
  return found;
}
