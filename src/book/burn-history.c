/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From entries to samples.
 *
 * One sample is what was burned at one pile in one shift: bars and trigger times are often two
 * entries, and not always of one act. Rods, oxygen and the time on the bottom are told for a shift,
 * with or without a pile, so they are samples of shifts; and of a shift only when each of its bars
 * has a trigger time, or they would be set against too little of it.
 *
 * Time at the piles is what the dives spent on the bottom less the job's usual time on the way,
 * when each of the shift's dives was at a pile that was burned at. So all that such a dive does
 * beside burning counts as time between strikes.
 *
 * What a person set aside stays among the samples, with the reason. The last word counts, whether
 * it was about the pile or about the whole shift. Of rods, oxygen and strikes only a word about the
 * shift can say anything: they are told for all of its piles together.
 *
 * Works of one pile are chained, the last first: the shift looked for is nearly always that one.
 * Cost is linear in the entries.
 */
#include "book/burn-history.h"

#include "trade/oxygen.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define NONE -1

/* Work at a pile in a shift. */
typedef struct
{
  LbBarSet bars;
  double trigger_s; /* NAN when none is recorded */
  guint count;      /* bars of which only the number is known */
  int pile, shift;
  int previous; /* the pile's work before, NONE for the first */
} Work;

typedef struct
{
  LbVisibility visibility;
  gboolean has_fault;
  guint n_timed, n_untimed; /* bars */
  guint n_dives, n_depths;
  gboolean has_other_dive; /* of unknown time, or not at a pile that was burned at */
  double bottom_s, depth_sum_m;
} Tally;

/* The last word on whether some burning teaches. */
typedef struct
{
  gint64 about;       /* key_of() */
  guint number;       /* the later, the higher */
  const char *reason; /* NULL for that it does */
} Word;

typedef struct
{
  const LbLedger *ledger;
  const LbFold *fold;
  GArray *works;     /* Work */
  int *last_work;    /* by pile */
  Tally *tallies;    /* by shift */
  GHashTable *words; /* Word by itself, by what it is about; NULL as long as there is none */
  guint n_words;
} Reading;

static gint64
key_of (int pile, int shift)
{
  return ((gint64) (pile + 1) << 32) | (guint32) shift;
}

static void
keep_word (Reading *reading, const LbEntry *entry)
{
  Word *word = g_new (Word, 1);

  if (reading->words == NULL)
    reading->words = g_hash_table_new_full (g_int64_hash, g_int64_equal, NULL, g_free);
  *word = (Word){
    .about = key_of (entry->pile, entry->shift),
    .number = ++reading->n_words,
    .reason = entry->kind == LB_ENTRY_SET_ASIDE ? entry->note : NULL,
  };
  g_hash_table_replace (reading->words, &word->about, word);
}

static const Word *
word_on (const Reading *reading, int pile, int shift)
{
  const gint64 about = key_of (pile, shift);

  return reading->words != NULL ? g_hash_table_lookup (reading->words, &about) : NULL;
}

/* NULL when it counts. @pile -1 for what the shift used. */
static const char *
reason_against (const Reading *reading, int pile, int shift)
{
  const Word *of_shift = word_on (reading, -1, shift);
  const Word *of_pile = pile >= 0 ? word_on (reading, pile, shift) : NULL;
  const Word *last = of_pile != NULL && (of_shift == NULL || of_pile->number > of_shift->number)
                       ? of_pile
                       : of_shift;

  return last != NULL ? last->reason : NULL;
}

static Work *
find_work (const Reading *reading, int pile, int shift)
{
  if (pile < 0)
    return NULL;
  for (int at = reading->last_work[pile]; at != NONE;) {
    Work *work = &g_array_index (reading->works, Work, at);

    if (work->shift == shift)
      return work;
    at = work->previous;
  }
  return NULL;
}

static Work *
work_of (Reading *reading, int pile, int shift)
{
  Work *found = find_work (reading, pile, shift);

  if (found != NULL)
    return found;

  const Work fresh = {
    .trigger_s = NAN,
    .pile = pile,
    .shift = shift,
    .previous = reading->last_work[pile],
  };

  g_array_append_val (reading->works, fresh);
  reading->last_work[pile] = (int) reading->works->len - 1;
  return &g_array_index (reading->works, Work, reading->works->len - 1);
}

static void
read_entry (Reading *reading, const LbEntry *entry)
{
  Tally *tally = &reading->tallies[entry->shift];

  if (entry->kind == LB_ENTRY_BARS && entry->pile >= 0) {
    Work *work = work_of (reading, entry->pile, entry->shift);

    work->bars |= entry->bars;
    work->count += entry->count;
  } else if (entry->kind == LB_ENTRY_BURN_TIME && entry->pile >= 0) {
    Work *work = work_of (reading, entry->pile, entry->shift);

    work->trigger_s = isnan (work->trigger_s) ? entry->amount : work->trigger_s + entry->amount;
  } else if (entry->kind == LB_ENTRY_CONDITION && strcmp (entry->what, "visibility") == 0) {
    tally->visibility = lb_visibility_from_text (entry->note, reading->fold->units);
  } else if (entry->kind == LB_ENTRY_FAULT) {
    tally->has_fault = TRUE;
  } else if (entry->kind == LB_ENTRY_SET_ASIDE || entry->kind == LB_ENTRY_TAKE_IN) {
    keep_word (reading, entry);
  }
}

static guint
bars_of (const Work *work)
{
  return lb_bar_set_count (work->bars) + work->count;
}

static void
read_dive (Reading *reading, const LbEntry *entry)
{
  Tally *tally = &reading->tallies[entry->shift];
  const Work *work = find_work (reading, entry->pile, entry->shift);
  const gboolean is_timed = entry->start_us != 0 && entry->end_us > entry->start_us;

  if (isfinite (entry->amount)) {
    tally->n_depths++;
    tally->depth_sum_m += entry->amount;
  }
  if (!is_timed || work == NULL || bars_of (work) == 0) {
    tally->has_other_dive = TRUE;
    return;
  }
  tally->n_dives++;
  tally->bottom_s += (double) (entry->end_us - entry->start_us) / G_USEC_PER_SEC;
}

/* All entries about work that stand. */
static void
for_entries (Reading *reading,
             gboolean are_dives,
             void (*read) (Reading *reading, const LbEntry *entry))
{
  for (gsize i = 0; i < reading->fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (reading->ledger, i);

    if (reading->fold->is_alive[i] && entry->shift >= 0 &&
        (entry->kind == LB_ENTRY_DIVE) == are_dives)
      read (reading, entry);
  }
}

static void
count_bars (Reading *reading)
{
  for (guint i = 0; i < reading->works->len; i++) {
    const Work *work = &g_array_index (reading->works, Work, i);
    Tally *tally = &reading->tallies[work->shift];

    if (isnan (work->trigger_s))
      tally->n_untimed += bars_of (work);
    else
      tally->n_timed += bars_of (work);
  }
}

static void
add_sample (const Reading *reading, const Work *work, LbBurnHistory *history)
{
  const Tally *tally = &reading->tallies[work->shift];
  const LbBar *bar = reading->fold->piles[work->pile].bar;
  const guint n_bars = bars_of (work);
  const char *reason = reason_against (reading, work->pile, work->shift);
  const LbBurnSample sample = {
    .n_bars = n_bars,
    .steel_m2 = bar != NULL ? n_bars * bar->area_m2 : (double) NAN,
    .bar = bar,
    .visibility = tally->visibility,
    .trigger_s = work->trigger_s,
    .has_fault = tally->has_fault,
    .is_set_aside = reason != NULL,
    .reason = reason != NULL ? reason : "",
    .pile = work->pile,
    .shift = work->shift,
  };

  g_array_append_val (history->samples, sample);
}

static void
add_samples (const Reading *reading, LbBurnHistory *history)
{
  for (guint i = 0; i < reading->works->len; i++) {
    const Work *work = &g_array_index (reading->works, Work, i);

    if (isnan (work->trigger_s))
      history->n_untimed += bars_of (work);
    else
      add_sample (reading, work, history);
  }
}

static double
known_if (gboolean is_known, double value)
{
  return is_known ? value : (double) NAN;
}

static void
add_shift (const Reading *reading, int i, LbBurnHistory *history)
{
  const LbFold *fold = reading->fold;
  const double *assumed = fold->assumptions.value;
  const LbTotals *totals = &fold->shifts[i];
  const Tally *tally = &reading->tallies[i];
  const gboolean is_timed = tally->n_timed > 0 && tally->n_untimed == 0;
  const double depth_m = tally->depth_sum_m / MAX (tally->n_depths, 1);
  const double at_piles_s = tally->bottom_s - tally->n_dives * assumed[LB_ASSUME_DIVE_SETUP];
  const gboolean is_wall_known = is_timed && tally->n_dives > 0 && !tally->has_other_dive;
  const char *reason = reason_against (reading, -1, i);

  if (tally->n_timed + tally->n_untimed == 0)
    return;

  const LbBurnShift shift = {
    .n_bars = tally->n_timed + tally->n_untimed,
    .trigger_s = known_if (is_timed, totals->trigger_s),
    .wall_s = known_if (is_wall_known, at_piles_s),
    .rods = known_if (is_timed && totals->rods > 0, totals->rods),
    .oxygen_m3 = known_if (is_timed && totals->oxygen_m3 > 0, totals->oxygen_m3),
    .flow_scale = known_if (tally->n_depths > 0,
                            lb_oxygen_flow_scale (assumed[LB_ASSUME_OVER_BOTTOM], depth_m)),
    .has_fault = tally->has_fault,
    .is_set_aside = reason != NULL,
    .reason = reason != NULL ? reason : "",
    .shift = i,
  };

  g_array_append_val (history->shifts, shift);
}

LbBurnHistory *
lb_burn_history_new (const LbLedger *ledger, const LbFold *fold)
{
  g_return_val_if_fail (ledger != NULL, NULL);
  g_return_val_if_fail (fold != NULL, NULL);

  g_autoptr (GArray) works = g_array_new (FALSE, FALSE, sizeof (Work));
  g_autofree int *last_work = g_new (int, fold->n_piles + 1);
  g_autofree Tally *tallies = g_new0 (Tally, fold->n_shifts + 1);
  LbBurnHistory *history = g_new0 (LbBurnHistory, 1);
  Reading reading = { .ledger = ledger,
                      .fold = fold,
                      .works = works,
                      .last_work = last_work,
                      .tallies = tallies };

  history->samples = g_array_new (FALSE, FALSE, sizeof (LbBurnSample));
  history->shifts = g_array_new (FALSE, FALSE, sizeof (LbBurnShift));
  for (guint i = 0; i < fold->n_piles; i++)
    last_work[i] = NONE;

  for_entries (&reading, FALSE, read_entry);
  count_bars (&reading);
  for_entries (&reading, TRUE, read_dive);
  add_samples (&reading, history);
  for (gsize i = 0; i < fold->n_shifts; i++)
    add_shift (&reading, (int) i, history);
  g_clear_pointer (&reading.words, g_hash_table_unref);
  return history;
}

void
lb_burn_history_free (LbBurnHistory *history)
{
  if (history == NULL)
    return;
  g_array_unref (history->samples);
  g_array_unref (history->shifts);
  g_free (history);
}

const LbBurnSample *
lb_burn_history_find (const LbBurnHistory *history, int pile, int shift)
{
  g_return_val_if_fail (history != NULL, NULL);

  for (guint i = 0; i < history->samples->len; i++) {
    const LbBurnSample *sample = &g_array_index (history->samples, LbBurnSample, i);

    if (sample->pile == pile && sample->shift == shift)
      return sample;
  }
  return NULL;
}

void
lb_burn_history_count (const LbBurnHistory *history,
                       const LbBar *bar,
                       LbVisibility visibility,
                       guint *out_n_bars,
                       guint *out_n_samples)
{
  g_return_if_fail (history != NULL);

  *out_n_bars = *out_n_samples = 0;
  for (guint i = 0; i < history->samples->len; i++) {
    const LbBurnSample *sample = &g_array_index (history->samples, LbBurnSample, i);

    if (lb_burn_sample_is_used (sample) && sample->bar == bar && sample->visibility == visibility) {
      *out_n_bars += sample->n_bars;
      *out_n_samples += 1;
    }
  }
}

/* Of the samples of a shift: how many there are, and how many of them are set aside. */
static void
count_of_shift (const LbBurnHistory *history, int shift, guint *out_n, guint *out_aside)
{
  *out_n = *out_aside = 0;
  for (guint i = 0; i < history->samples->len; i++) {
    const LbBurnSample *sample = &g_array_index (history->samples, LbBurnSample, i);

    if (sample->shift == shift) {
      *out_n += 1;
      *out_aside += sample->is_set_aside ? 1 : 0;
    }
  }
}

static gboolean
is_shift_set_aside (const LbBurnHistory *history, int shift)
{
  for (guint i = 0; i < history->shifts->len; i++) {
    const LbBurnShift *one = &g_array_index (history->shifts, LbBurnShift, i);

    if (one->shift == shift)
      return one->is_set_aside;
  }
  return FALSE;
}

/* Whether nothing, or all, of what is spoken of is set aside. */
static void
look_at_state (const LbBurnHistory *history,
               int pile,
               int shift,
               guint *out_n,
               gboolean *out_is_all_in,
               gboolean *out_is_all_out)
{
  if (pile >= 0) {
    const LbBurnSample *sample = lb_burn_history_find (history, pile, shift);

    *out_n = sample != NULL ? 1 : 0;
    *out_is_all_out = sample != NULL && sample->is_set_aside;
    *out_is_all_in = !*out_is_all_out;
    return;
  }

  const gboolean is_aside = is_shift_set_aside (history, shift);
  guint n_aside;

  count_of_shift (history, shift, out_n, &n_aside);
  *out_is_all_out = is_aside && n_aside == *out_n;
  *out_is_all_in = !is_aside && n_aside == 0;
}

static gboolean
refuse (GError **error, const char *sentence)
{
  g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, sentence);
  return FALSE;
}

gboolean
lb_burn_history_set_aside (const LbBurnHistory *history,
                           const LbLedger *ledger,
                           const LbFold *fold,
                           int pile,
                           int shift,
                           const char *reason,
                           LbDraft *out_draft,
                           GError **error)
{
  g_return_val_if_fail (history != NULL, FALSE);
  g_return_val_if_fail (ledger != NULL, FALSE);
  g_return_val_if_fail (fold != NULL && pile < (int) fold->n_piles, FALSE);
  g_return_val_if_fail (shift >= 0 && (gsize) shift < fold->n_shifts, FALSE);
  g_return_val_if_fail (out_draft != NULL, FALSE);

  gboolean is_all_in, is_all_out;
  guint n;

  look_at_state (history, pile, shift, &n, &is_all_in, &is_all_out);
  if (n == 0)
    return refuse (error, pile >= 0
                            ? _ ("No burning with its trigger time is on record at that pile in "
                                 "that shift")
                            : _ ("No burning with its trigger time is on record in that shift"));
  if (reason != NULL && is_all_out)
    return refuse (error, _ ("That is set aside already; take it in again to give another reason"));
  if (reason == NULL && is_all_in)
    return refuse (error, _ ("Nothing of that is set aside"));

  *out_draft = LB_DRAFT_INIT (reason != NULL ? LB_ENTRY_SET_ASIDE : LB_ENTRY_TAKE_IN);
  out_draft->pile_id = pile >= 0 ? fold->piles[pile].id : NULL;
  out_draft->shift_id = lb_ledger_shift (ledger, (guint) shift)->id;
  out_draft->note = reason;
  return TRUE;
}

void
lb_burn_history_fit (const LbBurnHistory *history, const LbFold *fold, LbBurnModel *out_model)
{
  g_return_if_fail (history != NULL);
  g_return_if_fail (fold != NULL);
  g_return_if_fail (out_model != NULL);

  lb_burn_model_fit ((const LbBurnSample *) history->samples->data, history->samples->len,
                     (const LbBurnShift *) history->shifts->data, history->shifts->len,
                     &fold->assumptions, out_model);
}
