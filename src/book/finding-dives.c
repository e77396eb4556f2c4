/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/finding-private.h"

#include "book/dive-accounts.h"

static int
compare_starts (gconstpointer a, gconstpointer b)
{
  const LbEntry *one = *(const LbEntry *const *) a;
  const LbEntry *other = *(const LbEntry *const *) b;

  if (one->start_us != other->start_us)
    return one->start_us < other->start_us ? -1 : 1;
  return lb_entry_compare (one, other);
}

static gint64
end_of (const LbEntry *dive)
{
  return dive->up_us != 0 ? dive->up_us : dive->end_us;
}

/* Sorted by when they left the surface, a dive overlaps the one of the same diver that ended last so
 * far, or none. One that began at the moment the other ended does not. */
static void
find_overlaps (LbFindingSearch *search)
{
  g_autoptr (GHashTable) last = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < search->dives->len; i++) {
    const LbEntry *dive = g_ptr_array_index (search->dives, i);

    if (dive->start_us == 0 || end_of (dive) == 0)
      continue;

    char *diver = lb_diver_key (dive->what);
    const LbEntry *before = g_hash_table_lookup (last, diver);

    if (before != NULL && dive->start_us < end_of (before)) {
      const LbFinding overlap = {
        .kind = LB_FINDING_DIVES_OVERLAP,
        .shift = dive->shift,
        .pile = -1,
        .other_pile = -1,
        .entries = { before, dive },
        .time_s = (double) (MIN (end_of (before), end_of (dive)) - dive->start_us) / G_USEC_PER_SEC,
      };

      lb_finding_search_add (search, &overlap, before->id, dive->id, NULL);
    }
    if (before == NULL || end_of (dive) > end_of (before))
      g_hash_table_replace (last, diver, (gpointer) dive);
    else
      g_free (diver);
  }
}

static void
compare_limit (LbFindingSearch *search, const LbDiveLog *log, const LbEntry *dive)
{
  g_auto (LbDiveAccount) account = { 0 };

  lb_dive_account_make (log, NULL, dive, &account);
  if (!account.has_limit || !(account.bottom_s > account.left.open_s))
    return;

  const LbFinding past = {
    .kind = LB_FINDING_PAST_LIMIT,
    .shift = dive->shift,
    .pile = -1,
    .other_pile = -1,
    .entries = { dive, NULL },
    .time_s = account.bottom_s,
    .most_s = account.left.open_s,
  };

  lb_finding_search_add (search, &past, dive->id, NULL, NULL);
}

/* How long the dive lies outside the hours, s. */
static double
time_outside (const LbEntry *dive, const LbEntry *hours)
{
  const gint64 times[] = { dive->start_us, dive->end_us, dive->up_us };
  gint64 most_us = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (times); i++) {
    if (times[i] != 0)
      most_us = MAX (most_us, MAX (hours->start_us - times[i], times[i] - hours->end_us));
  }
  return (double) most_us / G_USEC_PER_SEC;
}

static void
compare_hours (LbFindingSearch *search, const LbEntry *dive)
{
  const LbEntry *hours = search->shifts[dive->shift].hours;
  const LbFinding outside = {
    .kind = LB_FINDING_OUTSIDE_HOURS,
    .shift = dive->shift,
    .pile = -1,
    .other_pile = -1,
    .entries = { dive, NULL },
    .time_s = hours != NULL ? time_outside (dive, hours) : 0,
  };

  if (outside.time_s > 0)
    lb_finding_search_add (search, &outside, dive->id, NULL, NULL);
}

void
lb_finding_search_dives (LbFindingSearch *search)
{
  g_autoptr (LbDiveLog) log = NULL;

  if (search->dives->len == 0)
    return;
  log = lb_dive_log_new (search->ledger, search->fold);
  g_ptr_array_sort (search->dives, compare_starts);
  find_overlaps (search);
  for (guint i = 0; i < search->dives->len; i++) {
    const LbEntry *dive = g_ptr_array_index (search->dives, i);

    if (!lb_finding_search_has (search, dive->shift))
      continue;
    compare_limit (search, log, dive);
    compare_hours (search, dive);
  }
}
