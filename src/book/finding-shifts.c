/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/finding-private.h"

static double
length_of (const LbEntry *hours)
{
  return (double) (hours->end_us - hours->start_us) / G_USEC_PER_SEC;
}

static void
add (LbFindingSearch *search, guint shift, LbFinding finding)
{
  finding.shift = (int) shift;
  finding.pile = finding.other_pile = -1;
  lb_finding_search_add (search, &finding, lb_ledger_shift (search->ledger, shift)->id, NULL, NULL);
}

/* Time at the torch needs as much time at the bottom, as far as all of that is written down. */
static void
compare_burning (LbFindingSearch *search, guint shift)
{
  const LbShiftGlance *said = &search->shifts[shift];
  const LbTotals *totals = &search->fold->shifts[shift];
  LbFinding finding = {
    .kind = totals->n_dives == 0 ? LB_FINDING_NO_DIVE : LB_FINDING_BURNED_LONGER,
    .time_s = said->wet_trigger_s,
    .most_s = totals->bottom_s,
  };

  if (said->n_dives_open == 0 && said->wet_trigger_s > totals->bottom_s)
    add (search, shift, finding);
}

static void
compare_lost (LbFindingSearch *search, guint shift)
{
  const LbEntry *hours = search->shifts[shift].hours;
  const LbTotals *totals = &search->fold->shifts[shift];
  LbFinding finding = {
    .kind = hours == NULL ? LB_FINDING_NO_HOURS : LB_FINDING_LOST_LONGER,
    .entries = { hours, NULL },
    .time_s = totals->delay_s + totals->fault_s,
    .most_s = hours != NULL ? length_of (hours) : 0,
  };

  if (finding.time_s > finding.most_s)
    add (search, shift, finding);
}

/* What each of its dives lacks, and the shift that has them. */
static guint *
find_gaps (LbFindingSearch *search)
{
  guint *gaps = g_new0 (guint, search->fold->n_shifts + 1);

  for (guint i = 0; i < search->dives->len; i++) {
    const LbEntry *dive = g_ptr_array_index (search->dives, i);
    const LbRecordSaid said = search->shifts[dive->shift].said;

    gaps[dive->shift] |= lb_record_gaps_of_shift (said) |
                         lb_record_gaps_of_dive (search->ledger, dive, said);
  }
  return gaps;
}

static void
find_late (LbFindingSearch *search)
{
  for (guint i = 0; i < search->late->len; i++) {
    const LbEntry *entry = g_ptr_array_index (search->late, i);
    const LbFinding late = {
      .kind = LB_FINDING_AFTER_SIGNING,
      .shift = entry->shift,
      .pile = entry->pile,
      .other_pile = -1,
      .entries = { entry, NULL },
    };

    lb_finding_search_add (search, &late, entry->id, NULL, NULL);
  }
}

void
lb_finding_search_shifts (LbFindingSearch *search)
{
  g_autofree guint *gaps = find_gaps (search);

  for (guint i = 0; i < search->fold->n_shifts; i++) {
    const LbFinding lacking = { .kind = LB_FINDING_RECORD_GAPS, .gaps = gaps[i] };

    if (!lb_finding_search_has (search, (int) i))
      continue;
    compare_burning (search, i);
    compare_lost (search, i);
    if (gaps[i] != 0)
      add (search, i, lacking);
  }
  find_late (search);
}
