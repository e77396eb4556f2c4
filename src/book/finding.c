/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A search looks at the entries that stand twice: once for what is said of each shift, for the
 * answers, and for which piles were worked in the shift that is asked for; and once to gather the
 * steps, bars and dives that matter to it. Then the piles (finding-piles.c), the dives
 * (finding-dives.c) and the shifts (finding-shifts.c) are looked at each by itself.
 *
 * Invariants:
 *   1. A finding is the same whether all are searched for, or one shift's, or one pile's: whatever
 *      could bear on a pile is gathered whole, and of dives those of the days about.
 *   2. Its key is made of what it is about and not of what is found about it, so that an answer
 *      keeps to it while more is recorded.
 * Everything is linear but for the dives, which are sorted. */
#include "book/difference.h"
#include "book/finding-private.h"
#include "book/seal-rows.h"

#include "trade/bottom-time.h"
#include "trade/cut-plan.h"

#include <math.h>
#include <string.h>

const char *
lb_finding_kind_name (LbFindingKind kind)
{
  static const char *const names[] = {
    [LB_FINDING_BARS_LEFT] = "bars-left",     [LB_FINDING_PULLED_UNCUT] = "pulled-uncut",
    [LB_FINDING_NOT_RIGGED] = "not-rigged",   [LB_FINDING_MORE_BARS] = "more-bars",
    [LB_FINDING_BARS_TWICE] = "bars-twice",   [LB_FINDING_GONE_AND_BURNED] = "gone-and-burned",
    [LB_FINDING_TWO_CREWS] = "two-crews",     [LB_FINDING_DIVES_OVERLAP] = "dives-overlap",
    [LB_FINDING_PAST_LIMIT] = "past-limit",   [LB_FINDING_OUTSIDE_HOURS] = "outside-hours",
    [LB_FINDING_NO_DIVE] = "no-dive",         [LB_FINDING_BURNED_LONGER] = "burned-longer",
    [LB_FINDING_LOST_LONGER] = "lost-longer", [LB_FINDING_NO_HOURS] = "no-hours",
    [LB_FINDING_RECORD_GAPS] = "record-gaps", [LB_FINDING_AFTER_SIGNING] = "after-signing",
    [LB_FINDING_SAME_MARK] = "same-mark",     [LB_FINDING_SAID_OTHERWISE] = "said-otherwise",
  };

  g_return_val_if_fail ((guint) kind < LB_N_FINDING_KINDS, NULL);
  return names[kind];
}

static gboolean
is_asked_for (const LbFindingSearch *search, const LbFinding *finding)
{
  if (search->pile >= 0)
    return finding->pile == search->pile || finding->other_pile == search->pile;
  return finding->shift < 0 || lb_finding_search_has (search, finding->shift);
}

void
lb_finding_search_add (LbFindingSearch *search,
                       const LbFinding *finding,
                       const char *id,
                       const char *other,
                       const char *third)
{
  LbFinding whole = *finding;

  if (!is_asked_for (search, finding))
    return;
  /* The first that is NULL ends the list. */
  whole.key = g_strjoin (":", lb_finding_kind_name (finding->kind), id, other, third, NULL);
  whole.answer = g_hash_table_lookup (search->answers, whole.key);
  whole.is_signed = finding->shift >= 0 && search->shifts[finding->shift].seal != NULL;
  g_array_append_val (search->found, whole);
}

/* Steps and bars: what can contradict itself at a pile. */
static gboolean
is_pile_work (const LbEntry *entry)
{
  return entry->pile >= 0 && entry->shift >= 0 &&
         (entry->kind == LB_ENTRY_STEP || entry->kind == LB_ENTRY_BARS ||
          entry->kind == LB_ENTRY_GONE || entry->kind == LB_ENTRY_DRAWN ||
          entry->kind == LB_ENTRY_BROKEN);
}

static gboolean
is_cut_dry (const LbFindingSearch *search, int pile)
{
  return !(lb_pile_cut_depth (&search->fold->piles[pile], &search->fold->assumptions) != 0);
}

static void
glance (LbFindingSearch *search, const LbEntry *entry)
{
  LbShiftGlance *shift = entry->shift >= 0 ? &search->shifts[entry->shift] : NULL;

  if (entry->kind == LB_ENTRY_ANSWER)
    g_hash_table_insert (search->answers, (gpointer) entry->what, (gpointer) entry);
  if (shift == NULL)
    return;
  lb_record_said_take (&shift->said, entry);
  if (entry->kind == LB_ENTRY_HOURS)
    shift->hours = entry;
  else if (entry->kind == LB_ENTRY_SEAL && shift->seal == NULL)
    shift->seal = entry;
  else if (entry->kind == LB_ENTRY_BURN_TIME && entry->amount > 0 && entry->pile >= 0 &&
           !is_cut_dry (search, entry->pile))
    shift->wet_trigger_s += entry->amount;
  else if (entry->kind == LB_ENTRY_DIVE && isnan (lb_bottom_time (entry->start_us, entry->end_us)))
    shift->n_dives_open++;
}

/* Returns: (transfer full): by pile, whether all that was done to it is to be gathered */
static guint8 *
glance_at_all (LbFindingSearch *search)
{
  guint8 *is_wanted = g_new0 (guint8, search->fold->n_piles + 1);

  if (search->pile >= 0)
    is_wanted[search->pile] = TRUE;
  for (gsize i = 0; i < search->fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (search->ledger, (guint) i);

    if (!search->fold->is_alive[i])
      continue;
    glance (search, entry);
    if (search->pile < 0 && is_pile_work (entry) && lb_finding_search_has (search, entry->shift))
      is_wanted[entry->pile] = TRUE;
  }
  return is_wanted;
}

/* A dive that could overlap one of the shift in question. */
static gboolean
is_near (const LbFindingSearch *search, const LbEntry *dive)
{
  if (search->pile >= 0 || dive->shift < 0 || search->shift == -1)
    return FALSE;
  if (search->shift == LB_EVERY_SHIFT)
    return TRUE;

  const guint32 day = lb_ledger_shift (search->ledger, (guint) dive->shift)->day;
  const guint32 asked = lb_ledger_shift (search->ledger, (guint) search->shift)->day;

  return day + 1 >= asked && day <= asked + 1;
}

/* Whether the shift's own seal covers the entry, whenever it came into this file. */
static gboolean
is_sealed (const LbShiftGlance *shift, const LbEntry *entry)
{
  LbRowName name;

  if (shift->sealed == NULL || !lb_row_name_read (entry->id, &name))
    return lb_entry_compare (entry, shift->seal) <= 0;
  for (guint i = 0; i < shift->sealed->spans->len; i++) {
    const LbSealSpan *span = &g_array_index (shift->sealed->spans, LbSealSpan, i);

    if (name.number >= span->from && name.number <= span->to &&
        strlen (span->tag) == name.tag_length &&
        strncmp (span->tag, name.tag, name.tag_length) == 0)
      return TRUE;
  }
  return FALSE;
}

/* @first: of its act. Another crew's seal of the shift is no entry of it. */
static gboolean
is_late (const LbFindingSearch *search, const LbEntry *entry, const LbEntry *first)
{
  const LbShiftGlance *shift = entry->shift >= 0 ? &search->shifts[entry->shift] : NULL;

  return shift != NULL && shift->seal != NULL && search->pile < 0 && entry == first &&
         entry->kind != LB_ENTRY_CORRECTION && entry->kind != LB_ENTRY_SEAL &&
         lb_finding_search_has (search, entry->shift) && !is_sealed (shift, entry);
}

static void
read_seals (LbFindingSearch *search)
{
  for (gsize i = 0; i < search->fold->n_shifts; i++) {
    LbShiftGlance *shift = &search->shifts[i];

    if (shift->seal != NULL && search->pile < 0 && lb_finding_search_has (search, (int) i))
      shift->sealed = lb_seal_text_read (shift->seal->note);
  }
}

static void
gather (LbFindingSearch *search, const guint8 *is_wanted)
{
  const LbEntry *first = NULL; /* of the act */

  for (gsize i = 0; i < search->fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (search->ledger, (guint) i);

    if (!search->fold->is_alive[i])
      continue;
    if (first == NULL || first->act != entry->act)
      first = entry;
    if (is_pile_work (entry) && is_wanted[entry->pile])
      g_ptr_array_add (search->works, (gpointer) entry);
    else if (entry->kind == LB_ENTRY_DIVE && is_near (search, entry))
      g_ptr_array_add (search->dives, (gpointer) entry);
    if (is_late (search, entry, first))
      g_ptr_array_add (search->late, (gpointer) entry);
  }
}

static guint
heap_by_shift (const LbEntry *entry)
{
  return (guint) entry->shift;
}

static guint
heap_by_pile (const LbEntry *entry)
{
  return (guint) entry->pile;
}

/* Sorts by heap, and leaves the order within each as it is. */
static void
sort_by (GPtrArray *works, guint (*heap) (const LbEntry *), gsize n_heaps)
{
  g_autofree guint *begin = g_new0 (guint, n_heaps + 1);
  gpointer *sorted = g_new (gpointer, works->len + 1);

  for (guint i = 0; i < works->len; i++)
    begin[heap (works->pdata[i]) + 1]++;
  for (gsize i = 1; i <= n_heaps; i++)
    begin[i] += begin[i - 1];
  for (guint i = 0; i < works->len; i++)
    sorted[begin[heap (works->pdata[i])]++] = works->pdata[i];
  if (works->len > 0)
    memcpy (works->pdata, sorted, works->len * sizeof *sorted);
  g_free (sorted);
}

static void
find_same_marks (LbFindingSearch *search)
{
  const LbFold *fold = search->fold;

  for (guint i = 0; i < fold->n_piles; i++) {
    const int first = lb_fold_find_mark (fold, fold->piles[i].mark);
    const LbFinding same = {
      .kind = LB_FINDING_SAME_MARK,
      .shift = -1,
      .pile = (int) i,
      .other_pile = first,
    };

    if (first != (int) i)
      lb_finding_search_add (search, &same, fold->piles[first].id, fold->piles[i].id, NULL);
  }
}

static void
find_differences (LbFindingSearch *search)
{
  g_autoptr (GArray) differences = lb_differences_new (search->ledger, search->fold);

  for (guint i = 0; i < differences->len; i++) {
    const LbDifference *difference = &g_array_index (differences, LbDifference, i);
    const LbFinding finding = {
      .kind = LB_FINDING_SAID_OTHERWISE,
      .shift = -1,
      .pile = difference->pile,
      .other_pile = -1,
      .entries = { difference->other, difference->last },
    };

    lb_finding_search_add (search, &finding, difference->other->id, difference->last->id, NULL);
  }
}

static int
compare_shifts (gconstpointer a, gconstpointer b)
{
  const LbFinding *one = a, *other = b;

  return (one->shift > other->shift) - (one->shift < other->shift);
}

static void
clear_finding (gpointer data)
{
  g_free (((LbFinding *) data)->key);
}

static GArray *
search_for (const LbLedger *ledger, const LbFold *fold, int shift, int pile)
{
  g_autofree LbShiftGlance *shifts = g_new0 (LbShiftGlance, fold->n_shifts + 1);
  g_autoptr (GPtrArray) works = g_ptr_array_new ();
  g_autoptr (GPtrArray) dives = g_ptr_array_new ();
  g_autoptr (GPtrArray) late = g_ptr_array_new ();
  g_autoptr (GHashTable) answers = g_hash_table_new (g_str_hash, g_str_equal);
  LbFindingSearch search = {
    .ledger = ledger,
    .fold = fold,
    .shift = shift,
    .pile = pile,
    .shifts = shifts,
    .works = works,
    .dives = dives,
    .late = late,
    .answers = answers,
    .found = g_array_new (FALSE, FALSE, sizeof (LbFinding)),
  };
  g_autofree guint8 *is_wanted = glance_at_all (&search);

  g_array_set_clear_func (search.found, clear_finding);
  read_seals (&search);
  gather (&search, is_wanted);
  sort_by (works, heap_by_shift, fold->n_shifts);
  sort_by (works, heap_by_pile, fold->n_piles);
  find_same_marks (&search);
  find_differences (&search);
  lb_finding_search_piles (&search);
  if (pile < 0) {
    lb_finding_search_dives (&search);
    lb_finding_search_shifts (&search);
  }
  for (gsize i = 0; i < fold->n_shifts; i++)
    g_clear_pointer (&shifts[i].sealed, lb_seal_text_free);
  /* Stable: in a shift piles come first, then dives. */
  g_array_sort (search.found, compare_shifts);
  return search.found;
}

GArray *
lb_findings_new (const LbLedger *ledger, const LbFold *fold)
{
  g_return_val_if_fail (ledger != NULL, NULL);
  g_return_val_if_fail (fold != NULL, NULL);

  return search_for (ledger, fold, LB_EVERY_SHIFT, -1);
}

GArray *
lb_findings_new_of_shift (const LbLedger *ledger, const LbFold *fold, int shift)
{
  g_return_val_if_fail (ledger != NULL, NULL);
  g_return_val_if_fail (fold != NULL && shift >= -1 && shift < (int) fold->n_shifts, NULL);

  return search_for (ledger, fold, shift, -1);
}

GArray *
lb_findings_new_of_pile (const LbLedger *ledger, const LbFold *fold, int pile)
{
  g_return_val_if_fail (ledger != NULL, NULL);
  g_return_val_if_fail (fold != NULL && pile >= 0 && (guint) pile < fold->n_piles, NULL);

  return search_for (ledger, fold, LB_EVERY_SHIFT, pile);
}

guint
lb_findings_open (const GArray *findings, int shift)
{
  guint n = 0;

  g_return_val_if_fail (findings != NULL, 0);

  for (guint i = 0; i < findings->len; i++) {
    const LbFinding *finding = &g_array_index (findings, LbFinding, i);

    n += finding->shift == shift && finding->answer == NULL ? 1 : 0;
  }
  return n;
}

const LbFinding *
lb_findings_find (const GArray *findings, const char *key)
{
  g_return_val_if_fail (findings != NULL, NULL);
  g_return_val_if_fail (key != NULL, NULL);

  for (guint i = 0; i < findings->len; i++) {
    const LbFinding *finding = &g_array_index (findings, LbFinding, i);

    if (g_str_equal (finding->key, key))
      return finding;
  }
  return NULL;
}
