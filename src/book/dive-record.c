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

/* All that a record can say of a shift, by what its entries are called. */
static const struct
{
  LbEntryKind kind;
  const char *what;
} sayings[] = {
  { LB_ENTRY_CREW, LB_CHARGE_SUPERVISOR }, { LB_ENTRY_CREW, LB_CHARGE_IN_CHARGE },
  { LB_ENTRY_CREW, LB_CHARGE_TENDERS },    { LB_ENTRY_CREW, LB_CHARGE_STANDBY },
  { LB_ENTRY_CONDITION, "wind" },          { LB_ENTRY_CONDITION, "sea" },
  { LB_ENTRY_CONDITION, "current" },       { LB_ENTRY_CONDITION, "water temperature" },
  { LB_ENTRY_CONDITION, "visibility" },
};

static LbRecordSaid
bit_of (LbEntryKind kind, const char *what)
{
  for (guint i = 0; i < G_N_ELEMENTS (sayings); i++) {
    if (sayings[i].kind == kind && strcmp (sayings[i].what, what) == 0)
      return 1u << i;
  }
  return 0;
}

void
lb_record_said_take (LbRecordSaid *said, const LbEntry *entry)
{
  g_return_if_fail (said != NULL && entry != NULL);

  if (entry->kind != LB_ENTRY_CREW && entry->kind != LB_ENTRY_CONDITION)
    return;
  if (*entry->note != '\0')
    *said |= bit_of (entry->kind, entry->what);
  else
    *said &= ~bit_of (entry->kind, entry->what);
}

static guint
gap_if (gboolean is_open, LbRecordGapKind kind)
{
  return is_open ? 1u << kind : 0;
}

guint
lb_record_gaps_of_shift (LbRecordSaid said)
{
#define IS_NOT_NAMED(charge)   ((said & bit_of (LB_ENTRY_CREW, charge)) == 0)
#define IS_NOT_SAID(condition) ((said & bit_of (LB_ENTRY_CONDITION, condition)) == 0)
  return gap_if (IS_NOT_NAMED (LB_CHARGE_SUPERVISOR), LB_GAP_SUPERVISOR) |
         gap_if (IS_NOT_NAMED (LB_CHARGE_IN_CHARGE), LB_GAP_IN_CHARGE) |
         gap_if (IS_NOT_NAMED (LB_CHARGE_TENDERS) && IS_NOT_NAMED (LB_CHARGE_STANDBY),
                 LB_GAP_TEAM) |
         gap_if (IS_NOT_SAID ("wind") && IS_NOT_SAID ("sea"), LB_GAP_WEATHER) |
         gap_if (IS_NOT_SAID ("water temperature"), LB_GAP_WATER_TEMPERATURE) |
         gap_if (IS_NOT_SAID ("current"), LB_GAP_CURRENT);
#undef IS_NOT_NAMED
#undef IS_NOT_SAID
}

guint
lb_record_gaps_of_dive (const LbLedger *ledger, const LbEntry *dive, LbRecordSaid said)
{
  g_return_val_if_fail (ledger != NULL && dive != NULL, 0);

  const gboolean is_seen = (said & bit_of (LB_ENTRY_CONDITION, "visibility")) != 0;

#define HAS_NO(detail) (*lb_entry_detail (ledger, dive, detail) == '\0')
  return gap_if (HAS_NO (LB_DETAIL_MODE), LB_GAP_MODE) |
         gap_if (HAS_NO (LB_DETAIL_WORK), LB_GAP_WORK) |
         gap_if (!is_seen && HAS_NO (LB_DETAIL_VISIBILITY), LB_GAP_VISIBILITY) |
         gap_if (isnan (dive->amount) != 0, LB_GAP_DEPTH) |
         gap_if (dive->start_us == 0, LB_GAP_TIME) |
         gap_if (dive->start_us != 0 && dive->end_us == 0, LB_GAP_BOTTOM_TIME);
#undef HAS_NO
}

static void
add_gaps (GArray *gaps, guint kinds, const LbEntry *dive)
{
  for (int kind = 0; kind < LB_N_RECORD_GAPS; kind++) {
    const LbRecordGap gap = { .kind = (LbRecordGapKind) kind, .dive = dive };

    if (kinds & 1u << kind)
      g_array_append_val (gaps, gap);
  }
}

GArray *
lb_dive_record_gaps (const LbLedger *ledger, const LbFold *fold, int shift)
{
  g_return_val_if_fail (ledger != NULL, NULL);
  g_return_val_if_fail (fold != NULL, NULL);

  GArray *gaps = g_array_new (FALSE, FALSE, sizeof (LbRecordGap));
  g_autoptr (GPtrArray) dives = g_ptr_array_new ();
  LbRecordSaid said = 0;

  for (gsize i = 0; i < fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, (guint) i);

    if (entry->shift != shift || !fold->is_alive[i])
      continue;
    lb_record_said_take (&said, entry);
    if (entry->kind == LB_ENTRY_DIVE)
      g_ptr_array_add (dives, (gpointer) entry);
  }
  if (dives->len > 0)
    add_gaps (gaps, lb_record_gaps_of_shift (said), NULL);
  for (guint i = 0; i < dives->len; i++)
    add_gaps (gaps, lb_record_gaps_of_dive (ledger, dives->pdata[i], said), dives->pdata[i]);
  return gaps;
}
