/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The spans of all dives that stand, sorted by when they began. One diver's are found from the last
 * one backwards, and the search ends where none could reach the first of them, so
 * that a long job costs no more than a short one.
 *
 * A dive with times missing is placed by those it has. One without any may have been at any hour of
 * its shift, and is placed where it matters most: nothing is left out because it was not written
 * down. */
#include "book/dive-log.h"

#include <math.h>
#include <string.h>

#define HOUR_US (G_GINT64_CONSTANT (3600) * G_USEC_PER_SEC)
/* U.S. Navy Diving Manual, revision 7, table 9-8: no group lasts longer than 15:50. */
#define SURFACE_MOST_US (16 * HOUR_US)
/* From the midnight before a shift to the noon after its night; longer than any dive (draft.c). */
#define SHIFT_US (36 * HOUR_US)

typedef struct
{
  gint64 from_us, until_us;
  guint diver;
  const LbEntry *entry;
} Span;

struct _LbDiveLog
{
  const LbFold *fold;
  GArray *spans;      /* Span, by from_us */
  GHashTable *divers; /* lb_diver_key() → number, from 1 */
  GHashTable *names;  /* as they are written → the same */
};

static gint64
midnight_before (const LbShift *shift)
{
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_julian (&date, shift->day);

  g_autoptr (GDateTime) midnight = g_date_time_new_local (
    g_date_get_year (&date), g_date_get_month (&date), g_date_get_day (&date), 0, 0, 0);

  return g_date_time_to_unix (midnight) * G_USEC_PER_SEC;
}

static Span
span_of (const LbLedger *ledger, const LbEntry *dive)
{
  const gint64 times[] = { dive->start_us, dive->end_us, dive->up_us };
  Span span = { .entry = dive };

  for (gsize i = 0; i < G_N_ELEMENTS (times); i++) {
    if (times[i] == 0)
      continue;
    span.from_us = span.from_us == 0 ? times[i] : MIN (span.from_us, times[i]);
    span.until_us = MAX (span.until_us, times[i]);
  }
  if (span.until_us == 0 && dive->shift >= 0) {
    span.from_us = midnight_before (lb_ledger_shift (ledger, (guint) dive->shift));
    span.until_us = span.from_us + SHIFT_US;
  } else if (span.until_us == 0) {
    span.from_us = span.until_us = dive->at_us;
  }
  return span;
}

static int
compare_spans (gconstpointer a, gconstpointer b)
{
  const Span *first = a, *second = b;

  if (first->from_us != second->from_us)
    return first->from_us < second->from_us ? -1 : 1;
  return lb_entry_compare (first->entry, second->entry);
}

/* The diver of that key, a new one when there is none. */
static guint
number_diver (LbDiveLog *log, const char *name)
{
  guint number = GPOINTER_TO_UINT (g_hash_table_lookup (log->names, name));

  if (number != 0)
    return number;

  char *key = lb_diver_key (name);

  number = GPOINTER_TO_UINT (g_hash_table_lookup (log->divers, key));
  if (number == 0) {
    number = g_hash_table_size (log->divers) + 1;
    g_hash_table_insert (log->divers, key, GUINT_TO_POINTER (number));
  } else {
    g_free (key);
  }
  g_hash_table_insert (log->names, (gpointer) name, GUINT_TO_POINTER (number));
  return number;
}

/* 0 for somebody who never dived. */
static guint
find_diver (const LbDiveLog *log, const char *name)
{
  g_autofree char *key = lb_diver_key (name);

  return GPOINTER_TO_UINT (g_hash_table_lookup (log->divers, key));
}

LbDiveLog *
lb_dive_log_new (const LbLedger *ledger, const LbFold *fold)
{
  g_return_val_if_fail (ledger != NULL, NULL);
  g_return_val_if_fail (fold != NULL, NULL);

  LbDiveLog *log = g_new (LbDiveLog, 1);

  log->fold = fold;
  log->spans = g_array_new (FALSE, FALSE, sizeof (Span));
  log->divers = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  log->names = g_hash_table_new (g_str_hash, g_str_equal);
  for (gsize i = 0; i < fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, (guint) i);

    if (entry->kind == LB_ENTRY_DIVE && fold->is_alive[i]) {
      Span span = span_of (ledger, entry);

      span.diver = number_diver (log, entry->what);
      g_array_append_val (log->spans, span);
    }
  }
  g_array_sort (log->spans, compare_spans);
  return log;
}

void
lb_dive_log_free (LbDiveLog *log)
{
  if (log == NULL)
    return;
  g_array_unref (log->spans);
  g_hash_table_unref (log->divers);
  g_hash_table_unref (log->names);
  g_free (log);
}

const LbDiveTable *
lb_dive_log_get_table (const LbDiveLog *log)
{
  g_return_val_if_fail (log != NULL, NULL);

  return log->fold->has_own_table ? &log->fold->own_table : NULL;
}

char *
lb_diver_key (const char *name)
{
  g_return_val_if_fail (name != NULL, NULL);

  g_autofree char *folded = g_utf8_casefold (name, -1);

  return g_strdup (g_strstrip (folded));
}

gboolean
lb_is_same_diver (const char *a, const char *b)
{
  g_return_val_if_fail (a != NULL && b != NULL, FALSE);

  g_autofree char *first = lb_diver_key (a);
  g_autofree char *second = lb_diver_key (b);

  return strcmp (first, second) == 0;
}

GArray *
lb_dive_log_of (const LbDiveLog *log, const char *diver, const LbEntry *but, gint64 until_us)
{
  g_return_val_if_fail (log != NULL, NULL);
  g_return_val_if_fail (diver != NULL, NULL);

  const guint number = find_diver (log, diver);
  GArray *dives = g_array_new (FALSE, FALSE, sizeof (LbDive));
  gint64 next_us = until_us;

  for (guint i = log->spans->len; i-- > 0;) {
    const Span *span = &g_array_index (log->spans, Span, i);

    if (span->from_us + SHIFT_US + SURFACE_MOST_US <= next_us)
      break;
    if (span->from_us > until_us || span->until_us + SURFACE_MOST_US <= next_us ||
        span->entry == but || span->diver != number)
      continue;

    const LbDive dive = {
      .left_surface_us = span->entry->start_us,
      .left_bottom_us = span->entry->end_us,
      .reached_surface_us = span->entry->up_us,
      .depth_m = span->entry->amount,
    };

    g_array_prepend_val (dives, dive);
    next_us = span->from_us;
  }
  return dives;
}

LbDiveLeft
lb_dive_log_left (const LbDiveLog *log, const char *diver, double depth_m, gint64 start_us)
{
  g_autoptr (GArray) dives = lb_dive_log_of (log, diver, NULL, start_us);

  return lb_dive_left (lb_dive_log_get_table (log), (const LbDive *) (gconstpointer) dives->data,
                       dives->len, depth_m, start_us);
}

LbDiveLeft
lb_dive_log_left_before (const LbDiveLog *log, const LbEntry *dive)
{
  g_return_val_if_fail (dive != NULL, (LbDiveLeft){ .state = LB_DIVE_LEFT_NOT_WRITTEN });

  if (dive->start_us == 0)
    return (LbDiveLeft){ .state = LB_DIVE_LEFT_NOT_WRITTEN };

  g_autoptr (GArray) dives = lb_dive_log_of (log, dive->what, dive, dive->start_us);

  return lb_dive_left (lb_dive_log_get_table (log), (const LbDive *) (gconstpointer) dives->data,
                       dives->len, dive->amount, dive->start_us);
}

const LbEntry *
lb_dive_log_last (const LbDiveLog *log, const char *diver)
{
  g_return_val_if_fail (log != NULL, NULL);
  g_return_val_if_fail (diver != NULL, NULL);

  const guint number = find_diver (log, diver);

  for (guint i = log->spans->len; i-- > 0;) {
    const Span *span = &g_array_index (log->spans, Span, i);

    if (span->diver == number)
      return span->entry;
  }
  return NULL;
}
