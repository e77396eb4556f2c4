/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/dive-record.h"

#include <math.h>
#include <string.h>

/* The note of the last alive entry of that kind and name in the shift. */
static const char *
said_last (const LbLedger *ledger,
           const LbFold *fold,
           int shift,
           LbEntryKind kind,
           const char *what)
{
  for (gsize i = fold->n_entries; i-- > 0;) {
    const LbEntry *entry = lb_ledger_entry (ledger, (guint) i);

    if (entry->kind == kind && entry->shift == shift && fold->is_alive[i] &&
        strcmp (entry->what, what) == 0)
      return entry->note;
  }
  return "";
}

const char *
lb_charge_holder (const LbLedger *ledger, const LbFold *fold, int shift, const char *charge)
{
  g_return_val_if_fail (ledger != NULL && fold != NULL && charge != NULL, "");

  return said_last (ledger, fold, shift, LB_ENTRY_CREW, charge);
}

const char *
lb_condition_said (const LbLedger *ledger, const LbFold *fold, int shift, const char *condition)
{
  g_return_val_if_fail (ledger != NULL && fold != NULL && condition != NULL, "");

  return said_last (ledger, fold, shift, LB_ENTRY_CONDITION, condition);
}

/* The entries of an act follow each other in the file; details stand behind what they are of. */
const char *
lb_entry_detail (const LbLedger *ledger, const LbEntry *entry, const char *which)
{
  g_return_val_if_fail (ledger != NULL && entry != NULL && which != NULL, "");

  for (gint64 seq = entry->seq + 1; seq <= ledger->entries->len; seq++) {
    const LbEntry *detail = lb_ledger_entry_of_seq (ledger, seq);

    if (detail->kind != LB_ENTRY_DETAIL || strcmp (detail->act, entry->act) != 0)
      break;
    if (strcmp (detail->what, which) == 0)
      return detail->note;
  }
  return "";
}

static void
add_gap (GArray *gaps, gboolean is_open, LbRecordGapKind kind, const LbEntry *dive)
{
  const LbRecordGap gap = { .kind = kind, .dive = dive };

  if (is_open)
    g_array_append_val (gaps, gap);
}

static void
add_gaps_of_shift (GArray *gaps, const LbLedger *ledger, const LbFold *fold, int shift)
{
#define IS_NOT_NAMED(charge)   (*lb_charge_holder (ledger, fold, shift, charge) == '\0')
#define IS_NOT_SAID(condition) (*lb_condition_said (ledger, fold, shift, condition) == '\0')
  add_gap (gaps, IS_NOT_NAMED (LB_CHARGE_SUPERVISOR), LB_GAP_SUPERVISOR, NULL);
  add_gap (gaps, IS_NOT_NAMED (LB_CHARGE_IN_CHARGE), LB_GAP_IN_CHARGE, NULL);
  add_gap (gaps, IS_NOT_NAMED (LB_CHARGE_TENDERS) && IS_NOT_NAMED (LB_CHARGE_STANDBY), LB_GAP_TEAM,
           NULL);
  add_gap (gaps, IS_NOT_SAID ("wind") && IS_NOT_SAID ("sea"), LB_GAP_WEATHER, NULL);
  add_gap (gaps, IS_NOT_SAID ("water temperature"), LB_GAP_WATER_TEMPERATURE, NULL);
  add_gap (gaps, IS_NOT_SAID ("current"), LB_GAP_CURRENT, NULL);
#undef IS_NOT_NAMED
#undef IS_NOT_SAID
}

static void
add_gaps_of_dive (GArray *gaps, const LbLedger *ledger, const LbEntry *dive, gboolean is_seen)
{
#define HAS_NO(detail) (*lb_entry_detail (ledger, dive, detail) == '\0')
  add_gap (gaps, HAS_NO (LB_DETAIL_MODE), LB_GAP_MODE, dive);
  add_gap (gaps, HAS_NO (LB_DETAIL_WORK), LB_GAP_WORK, dive);
  add_gap (gaps, !is_seen && HAS_NO (LB_DETAIL_VISIBILITY), LB_GAP_VISIBILITY, dive);
  add_gap (gaps, isnan (dive->amount) != 0, LB_GAP_DEPTH, dive);
  add_gap (gaps, dive->start_us == 0, LB_GAP_TIME, dive);
  add_gap (gaps, dive->start_us != 0 && dive->end_us == 0, LB_GAP_BOTTOM_TIME, dive);
#undef HAS_NO
}

GArray *
lb_dive_record_gaps (const LbLedger *ledger, const LbFold *fold, int shift)
{
  g_return_val_if_fail (ledger != NULL, NULL);
  g_return_val_if_fail (fold != NULL, NULL);

  GArray *gaps = g_array_new (FALSE, FALSE, sizeof (LbRecordGap));
  const gboolean is_seen = *lb_condition_said (ledger, fold, shift, "visibility") != '\0';
  gboolean has_dive = FALSE;

  for (gsize i = 0; i < fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, (guint) i);

    if (entry->kind != LB_ENTRY_DIVE || entry->shift != shift || !fold->is_alive[i])
      continue;
    if (!has_dive)
      add_gaps_of_shift (gaps, ledger, fold, shift);
    has_dive = TRUE;
    add_gaps_of_dive (gaps, ledger, entry, is_seen);
  }
  return gaps;
}
