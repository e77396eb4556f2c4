/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is true now, folded from the ledger.
 *
 * Two passes over the entries that stand:
 *   1. Facts and settings, in the order they were recorded (lb_ledger_entry()): the last word counts.
 *   2. What happened to piles, in the order it happened: by shift, and within a shift as
 *      recorded. So a forgotten shift that is written up later, or one that another crew's file
 *      brings in, falls into its place. A counting sort gives that order in linear time.
 * An entry about work that no shift claims comes after all shifts.
 *
 * Invariants: a pile's step is counted in the shift in which it was first reached; a stub that is
 * back on the list may reach its steps once more; the sum of steps[PULLED] less the piles that
 * came back is n_by_step[PULLED].
 *
 * When a pile breaks, its steps are undone, and so are the bars if it had been cut through, drawn
 * or pulled: what is left in the ground then is a new cut through all of its bars. Bars burned
 * in a cut that was not yet through are still burned. */
#include "book/burn-history.h"
#include "book/caution-text.h"
#include "book/crane-chart-text.h"
#include "book/dive-table-text.h"
#include "book/fold-private.h"
#include "book/ground-text.h"
#include "book/large-room.h"

#include "trade/msgid.h"
#include "trade/pile-taper.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define STEP_BITS_CUT (LB_STEP_BIT (LB_STEP_SEVERED) | LB_STEP_BIT (LB_STEP_PULLED))

/* What the fold needs while it is made. */
typedef struct
{
  const LbLedger *ledger;
  LbFold *fold;
  gsize at;           /* which entry is looked at */
  gsize *head_at;     /* by pile: which entry set its head, and one; 0 for none */
  guint8 *has_stub;   /* by pile: broke, and the stub is not out yet */
  guint *n_came_back; /* by shift, the last for work of no shift */
} Folding;

const char *
lb_pile_flag_words (LbPileFlag flag)
{
  switch (flag) {
  case LB_FLAG_SEVERED_WITH_BARS:
    return N_ ("Said to be severed, but bars are left: record the bars, or take “severed” back.");
  case LB_FLAG_PULLED_UNSEVERED:
    return N_ ("Pulled, but neither severed nor drawn whole: record how it came out.");
  case LB_FLAG_STUB_LEFT:
    return N_ ("It broke and left a stub: the stub is on the list until it is out.");
  case LB_FLAG_BARS_UNKNOWN:
    return N_ ("Its bars are not known: find out how many and of which size before burning.");
  case LB_FLAG_MORE_BARS_THAN_HAS:
    return N_ ("More bars were burned than it has: correct the count, or the pile's bars.");
  case LB_FLAG_GONE_AND_BURNED:
    return N_ ("A bar is said to be found gone and to be burned: see its history, and take one of "
               "them back.");
  default:
    g_return_val_if_reached (NULL);
  }
}

static const char *
keep_text (gpointer pool, const char *text)
{
  return *text == '\0' ? "" : lb_text_pool_add_once (pool, text);
}

static void
set_fact (Folding *folding, const LbEntry *entry)
{
  LbFact fact;
  LbFold *fold = folding->fold;

  if (entry->pile < 0 || !lb_fact_from_name (entry->what, &fact))
    return;
  /* A value that no longer passes was stored by a version that allowed it: the one before it
   * stays. */
  if (lb_pile_set (&fold->piles[entry->pile], fact, entry->note, LB_UNITS_METRIC, keep_text,
                   fold->strings, NULL) &&
      fact == LB_FACT_HEAD)
    folding->head_at[entry->pile] = folding->at + 1;
}

static void
set_assumption (LbFold *fold, const char *key, const char *value)
{
  LbAssumptionId id;
  char *end = NULL;

  if (!lb_assumption_find (key, &id))
    return;
  if (*value == '\0') {
    fold->assumptions.value[id] = lb_assumption (id)->value;
    fold->assumptions.is_own[id] = FALSE;
    return;
  }

  const double si = g_ascii_strtod (value, &end);
  if (end != value && *end == '\0' && isfinite (si))
    lb_assumptions_set (&fold->assumptions, id, si, NULL);
}

static gboolean
read_cautions (LbFold *fold, const char *text)
{
  if (fold->crew_texts == NULL)
    fold->crew_texts = g_string_chunk_new (1024);
  return lb_cautions_from_text (text, fold->crew_texts, fold->crew_rows, &fold->n_crew_rows, NULL);
}

static gboolean
read_table (LbFold *fold, LbSettingTable table, const char *text)
{
  switch (table) {
  case LB_TABLE_DIVE:
    return lb_dive_table_from_text (text, &fold->own_table, NULL);
  case LB_TABLE_CRANE:
    return lb_crane_chart_from_text (text, &fold->chart, NULL);
  case LB_TABLE_GROUND:
    return lb_ground_from_text (text, &fold->ground, NULL);
  case LB_TABLE_CAUTIONS:
    return read_cautions (fold, text);
  case LB_TABLE_DELAYS:
    return lb_setting_table_check (table, text, NULL);
  }
  g_assert_not_reached ();
}

/* As with facts: a table that no longer passes leaves the one before it. */
static void
set_table (LbFold *fold, LbSettingTable table, const char *text)
{
  if (*text != '\0' && !read_table (fold, table, text))
    return;
  fold->tables[table] = text;
  fold->has_own_table = *fold->tables[LB_TABLE_DIVE] != '\0';
  if (*fold->tables[LB_TABLE_CRANE] == '\0')
    fold->chart.n_rows = 0;
  if (*fold->tables[LB_TABLE_GROUND] == '\0')
    fold->ground.n_layers = 0;
  if (*fold->tables[LB_TABLE_CAUTIONS] == '\0')
    fold->n_crew_rows = 0;
}

static void
set_visibility (LbFold *fold, const char *key)
{
  if (*key == '\0')
    fold->has_own_visibility = FALSE;
  else if (lb_visibility_from_key (key, &fold->own_visibility))
    fold->has_own_visibility = TRUE;
}

static void
set_setting (LbFold *fold, const LbEntry *entry)
{
  LbSettingTable table;

  if (strcmp (entry->what, "name") == 0)
    fold->name = entry->note;
  else if (strcmp (entry->what, "place") == 0)
    fold->place = entry->note;
  else if (strcmp (entry->what, "datum") == 0)
    fold->datum = entry->note;
  else if (strcmp (entry->what, "units") == 0)
    fold->units = strcmp (entry->note, "metric") == 0 ? LB_UNITS_METRIC : LB_UNITS_US;
  else if (lb_setting_table_find (entry->what, &table))
    set_table (fold, table, entry->note);
  else if (strcmp (entry->what, LB_SETTING_VISIBILITY) == 0)
    set_visibility (fold, entry->note);
  else if (g_str_has_prefix (entry->what, "assume."))
    set_assumption (fold, entry->what + strlen ("assume."), entry->note);
}

static void
fold_facts (Folding *folding)
{
  for (gsize i = 0; i < folding->fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (folding->ledger, i);

    if (!folding->fold->is_alive[i])
      continue;
    folding->at = i;
    if (entry->kind == LB_ENTRY_FACT)
      set_fact (folding, entry);
    else if (entry->kind == LB_ENTRY_SETTING)
      set_setting (folding->fold, entry);
  }
}

/* Sums of the shift an entry belongs to, or straight those of the job. */
static LbTotals *
totals_of (LbFold *fold, const LbEntry *entry)
{
  return entry->shift >= 0 ? &fold->shifts[entry->shift] : &fold->job;
}

static void
reach_step (Folding *folding, const LbEntry *entry, LbStep step)
{
  LbPileState *state = &folding->fold->states[entry->pile];

  if (state->done & LB_STEP_BIT (step))
    return;
  state->done |= LB_STEP_BIT (step);
  state->step_shift[step] = entry->shift;
  totals_of (folding->fold, entry)->steps[step]++;
}

/* Back to standing, so that what comes after counts anew. */
static void
stand_again (Folding *folding, const LbEntry *entry)
{
  LbPileState *state = &folding->fold->states[entry->pile];
  const guint shift = entry->shift >= 0 ? (guint) entry->shift : (guint) folding->fold->n_shifts;

  if (state->done & LB_STEP_BIT (LB_STEP_PULLED))
    folding->n_came_back[shift]++;
  state->done = 0;
  state->is_drawn = FALSE;
  for (int step = 0; step < LB_N_STEPS; step++)
    state->step_shift[step] = -1;
}

static void
burn_bars (LbFold *fold, const LbEntry *entry)
{
  LbPileState *state = &fold->states[entry->pile];
  const LbBarSet fresh = entry->bars & ~state->burned;

  state->disputed |= entry->bars & state->gone;
  state->burned |= entry->bars;
  state->n_unplaced += entry->count;
  totals_of (fold, entry)->bars += lb_bar_set_count (fresh) + entry->count;
}

/* They hold nothing any more, and nobody here burned them. */
static void
find_gone (LbFold *fold, const LbEntry *entry)
{
  LbPileState *state = &fold->states[entry->pile];

  state->disputed |= entry->bars & state->burned & ~state->gone;
  state->gone |= entry->bars & ~state->burned;
  state->burned |= entry->bars;
}

static void
break_pile (Folding *folding, const LbEntry *entry)
{
  LbFold *fold = folding->fold;
  LbPileState *state = &fold->states[entry->pile];

  if ((state->done & STEP_BITS_CUT) != 0) {
    state->burned = state->gone = state->disputed = 0;
    state->n_unplaced = 0;
  }
  stand_again (folding, entry);
  folding->has_stub[entry->pile] = TRUE;
  if (folding->at + 1 > folding->head_at[entry->pile]) {
    lb_pile_break_off (&fold->piles[entry->pile], entry->amount);
    folding->head_at[entry->pile] = folding->at + 1;
  }
}

static void
take_step (Folding *folding, const LbEntry *entry)
{
  LbStep step;

  if (!lb_step_from_name (entry->what, &step))
    return;
  if (step == LB_STEP_STANDING)
    stand_again (folding, entry);
  else
    reach_step (folding, entry, step);
}

static void
fold_pile_entry (Folding *folding, const LbEntry *entry)
{
  LbPileState *state = &folding->fold->states[entry->pile];

  state->last_us = MAX (state->last_us, entry->at_us);
  if (entry->kind == LB_ENTRY_STEP)
    take_step (folding, entry);
  else if (entry->kind == LB_ENTRY_BARS)
    burn_bars (folding->fold, entry);
  else if (entry->kind == LB_ENTRY_GONE)
    find_gone (folding->fold, entry);
  else if (entry->kind == LB_ENTRY_BROKEN)
    break_pile (folding, entry);
  else if (entry->kind == LB_ENTRY_DRAWN) {
    state->is_drawn = TRUE;
    reach_step (folding, entry, LB_STEP_PULLED);
  }
}

/* The last one said, shift after shift. */
static void
hear_condition (LbFold *fold, const LbEntry *entry)
{
  if (entry->shift < 0 || strcmp (entry->what, "visibility") != 0)
    return;
  fold->said_visibility = lb_visibility_from_text (entry->note, fold->units);
  fold->visibility_shift = entry->shift;
}

static gsize
heap_of (const Folding *folding, gsize i)
{
  const int shift = lb_ledger_entry (folding->ledger, i)->shift;

  return shift >= 0 ? (gsize) shift : folding->fold->n_shifts;
}

/* What the order of the shifts decides about; the rest says what is known or meant of it. */
static gboolean
is_work (LbEntryKind kind)
{
  return kind < LB_ENTRY_SET_ASIDE;
}

/* Whether the entries about work were recorded shift after shift, as they mostly are. */
static gboolean
is_in_order (const Folding *folding)
{
  gsize last = 0;

  for (gsize i = 0; i < folding->fold->n_entries; i++) {
    const LbEntryKind kind = lb_ledger_entry (folding->ledger, i)->kind;
    const gsize heap = heap_of (folding, i);

    if (!is_work (kind))
      continue;
    if (heap < last)
      return FALSE;
    last = heap;
  }
  return TRUE;
}

/* The entries by shift, those of none last; the caller frees. */
static guint32 *
order_by_shift (const Folding *folding)
{
  const LbFold *fold = folding->fold;
  const gsize n_heaps = fold->n_shifts + 1;
  g_autofree guint32 *begin = g_new0 (guint32, n_heaps + 1);
  guint32 *order = g_new (guint32, fold->n_entries + 1);

  for (gsize i = 0; i < fold->n_entries; i++)
    begin[heap_of (folding, i) + 1]++;
  for (gsize heap = 1; heap <= n_heaps; heap++)
    begin[heap] += begin[heap - 1];
  for (gsize i = 0; i < fold->n_entries; i++)
    order[begin[heap_of (folding, i)]++] = (guint32) i;
  return order;
}

static void
fold_work (Folding *folding)
{
  LbFold *fold = folding->fold;
  g_autofree guint32 *order = is_in_order (folding) ? NULL : order_by_shift (folding);

  for (gsize i = 0; i < fold->n_entries; i++) {
    const gsize at = order != NULL ? order[i] : i;
    const LbEntry *entry = lb_ledger_entry (folding->ledger, at);

    if (!fold->is_alive[at])
      continue;
    folding->at = at;
    lb_fold_count_entry (fold, entry);
    if (entry->kind == LB_ENTRY_CONDITION)
      hear_condition (fold, entry);
    if (entry->pile >= 0)
      fold_pile_entry (folding, entry);
  }
}

static guint
flags_of (const LbPile *pile, const LbPileState *state, gboolean has_stub)
{
  const gboolean is_pulled = (state->done & LB_STEP_BIT (LB_STEP_PULLED)) != 0;
  const gboolean is_severed = (state->done & LB_STEP_BIT (LB_STEP_SEVERED)) != 0;
  const guint n_burned = lb_bar_set_count (state->burned) + state->n_unplaced;
  guint flags = 0;

  if (has_stub && !(is_pulled && (is_severed || state->is_drawn)))
    flags |= LB_FLAG_STUB_LEFT;
  if (is_pulled && !is_severed && !state->is_drawn)
    flags |= LB_FLAG_PULLED_UNSEVERED;
  if (state->disputed != 0)
    flags |= LB_FLAG_GONE_AND_BURNED;
  if (pile->n_bars == 0) {
    if (!is_pulled)
      flags |= LB_FLAG_BARS_UNKNOWN;
    return flags;
  }
  if (is_severed && state->n_left > 0)
    flags |= LB_FLAG_SEVERED_WITH_BARS;
  if (n_burned > pile->n_bars || (state->burned & ~lb_bar_set_all (pile->n_bars)) != 0)
    flags |= LB_FLAG_MORE_BARS_THAN_HAS;
  return flags;
}

static void
conclude_piles (Folding *folding)
{
  LbFold *fold = folding->fold;

  for (guint i = 0; i < fold->n_piles; i++) {
    const LbPile *pile = &fold->piles[i];
    LbPileState *state = &fold->states[i];
    const guint n_burned = lb_bar_set_count (state->burned) + state->n_unplaced;

    state->step = lb_step_furthest (state->done);
    state->n_left = pile->n_bars > n_burned ? pile->n_bars - n_burned : 0;
    state->flags = flags_of (pile, state, folding->has_stub[i]);
    fold->n_by_step[state->step]++;
  }
}

static LbFold *
new_fold (const LbLedger *ledger)
{
  LbFold *fold = g_new0 (LbFold, 1);

  fold->n_piles = ledger->piles->len;
  fold->n_shifts = ledger->shifts->len;
  fold->n_entries = ledger->entries->len;
  fold->piles = lb_large_room_new ((fold->n_piles + 1) * sizeof (LbPile));
  fold->states = g_new0 (LbPileState, fold->n_piles + 1);
  fold->shifts = g_new0 (LbTotals, fold->n_shifts + 1);
  fold->signatures = g_new0 (LbSignature, fold->n_shifts + 1);
  fold->is_alive = g_new0 (guint8, fold->n_entries + 1);
  fold->by_mark = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  fold->strings = lb_text_pool_new ();
  fold->name = fold->place = fold->datum = "";
  fold->visibility_shift = -1;
  for (int table = 0; table < LB_N_SETTING_TABLES; table++)
    fold->tables[table] = "";
  lb_assumptions_init (&fold->assumptions);
  if (fold->n_piles > 0)
    memcpy (fold->piles, ledger->piles->data, fold->n_piles * sizeof (LbPile));
  for (guint i = 0; i < fold->n_piles; i++) {
    for (int step = 0; step < LB_N_STEPS; step++)
      fold->states[i].step_shift[step] = -1;
  }
  return fold;
}

/* What the plans rest on. The ledger is the one folded, which has only grown since. */
typedef struct _LbFoldLessons
{
  const LbLedger *ledger;
  gboolean are_learned;
  LbBurnModel burn;
  LbCutBasis basis;
} LbFoldLessons;

static LbFoldLessons *
new_lessons (const LbLedger *ledger)
{
  LbFoldLessons *lessons = g_new (LbFoldLessons, 1);

  lessons->ledger = ledger;
  lessons->are_learned = FALSE;
  return lessons;
}

/* The sizes of the job's bars; strand is no bar of another size. */
static void
learn_bars (const LbFold *fold, LbCutBasis *basis)
{
  const LbBar *least = NULL, *most = NULL;

  for (guint i = 0; i < fold->n_piles; i++) {
    const LbBar *bar = fold->piles[i].bar;

    if (bar == NULL || bar->kind == LB_BAR_STRAND)
      continue;
    if (least == NULL || bar->area_m2 < least->area_m2)
      least = bar;
    if (most == NULL || bar->area_m2 > most->area_m2)
      most = bar;
  }
  lb_cut_basis_take_bars (basis, least, most);
}

static void
learn (const LbFold *fold, LbFoldLessons *lessons)
{
  g_autoptr (LbBurnHistory) history = lb_burn_history_new (lessons->ledger, fold);

  lb_burn_history_fit (history, fold, &lessons->burn);
  lessons->basis = lb_cut_basis (&fold->assumptions);
  lessons->basis.table = fold->has_own_table ? &fold->own_table : NULL;
  lessons->basis.burn = &lessons->burn;
  lessons->basis.crew_rows = fold->crew_rows;
  lessons->basis.n_crew_rows = fold->n_crew_rows;
  lessons->basis.is_visibility_chosen = fold->has_own_visibility;
  lessons->basis.visibility = fold->has_own_visibility ? fold->own_visibility
                                                       : fold->said_visibility;
  lessons->basis.chart = &fold->chart;
  lessons->basis.crane = lb_crane_here (&fold->assumptions, &fold->chart);
  learn_bars (fold, &lessons->basis);
  lessons->basis.ground = fold->ground.n_layers > 0 ? &fold->ground : NULL;
  lessons->are_learned = TRUE;
}

const LbCutBasis *
lb_fold_basis (const LbFold *fold)
{
  g_return_val_if_fail (fold != NULL, NULL);

  if (!fold->lessons->are_learned)
    learn (fold, fold->lessons);
  return &fold->lessons->basis;
}

void
lb_fold_burn_left (const LbFold *fold, LbBurnLeft *out_left)
{
  g_return_if_fail (fold != NULL);
  g_return_if_fail (out_left != NULL);

  *out_left = (LbBurnLeft) LB_BURN_LEFT_INIT;
  for (guint i = 0; i < fold->n_piles; i++) {
    if ((fold->states[i].done & STEP_BITS_CUT) == 0 && !fold->piles[i].is_to_be_drawn)
      lb_burn_left_add (out_left, &fold->piles[i], fold->states[i].n_left, lb_fold_basis (fold));
  }
}

static LbFold *
make_fold (const LbLedger *ledger, gint64 until_us, guint32 until_day)
{
  LbFold *fold = new_fold (ledger);
  g_autofree gsize *head_at = g_new0 (gsize, fold->n_piles + 1);
  g_autofree guint8 *has_stub = g_new0 (guint8, fold->n_piles + 1);
  g_autofree guint *n_came_back = g_new0 (guint, fold->n_shifts + 1);
  Folding folding = {
    .ledger = ledger,
    .fold = fold,
    .head_at = head_at,
    .has_stub = has_stub,
    .n_came_back = n_came_back,
  };

  lb_fold_find_alive (fold, ledger, until_us, until_day);
  lb_fold_find_signatures (fold, ledger, until_us);
  fold_facts (&folding);
  fold_work (&folding);
  conclude_piles (&folding);
  lb_fold_sum_days (fold, ledger, n_came_back);
  fold->lessons = new_lessons (ledger);
  return fold;
}

LbFold *
lb_fold_new (const LbLedger *ledger, gint64 until_us)
{
  g_return_val_if_fail (ledger != NULL, NULL);

  return make_fold (ledger, until_us, G_MAXUINT32);
}

LbFold *
lb_fold_new_of_day (const LbLedger *ledger, guint32 day)
{
  g_return_val_if_fail (ledger != NULL, NULL);

  return make_fold (ledger, G_MAXINT64, day);
}

void
lb_fold_free (LbFold *fold)
{
  if (fold == NULL)
    return;
  lb_large_room_free (fold->piles);
  g_free (fold->states);
  g_free (fold->days);
  g_free (fold->shifts);
  g_free (fold->signatures);
  g_free (fold->is_alive);
  g_hash_table_unref (fold->by_mark);
  lb_text_pool_free (fold->strings);
  g_clear_pointer (&fold->crew_texts, g_string_chunk_free);
  g_free (fold->lessons);
  g_free (fold);
}

/* Of two piles with one mark it names the one whose id comes first: the same in every file. */
static void
name_pile (const LbFold *fold, guint i)
{
  char *key = lb_mark_key (fold->piles[i].mark);
  const guint taken = GPOINTER_TO_UINT (g_hash_table_lookup (fold->by_mark, key));

  if (taken == 0 || lb_id_compare (fold->piles[i].id, fold->piles[taken - 1].id) < 0)
    g_hash_table_insert (fold->by_mark, key, GUINT_TO_POINTER (i + 1));
  else
    g_free (key);
}

static GHashTable *
by_mark (const LbFold *fold)
{
  if (g_hash_table_size (fold->by_mark) == 0) {
    for (guint i = 0; i < fold->n_piles; i++)
      name_pile (fold, i);
  }
  return fold->by_mark;
}

int
lb_fold_find_mark (const LbFold *fold, const char *mark)
{
  g_return_val_if_fail (fold != NULL, -1);
  g_return_val_if_fail (mark != NULL, -1);

  g_autofree char *key = lb_mark_key (mark);
  return GPOINTER_TO_INT (g_hash_table_lookup (by_mark (fold), key)) - 1;
}

GHashTable *
lb_fold_taken_marks (const LbFold *fold)
{
  g_return_val_if_fail (fold != NULL, NULL);

  GHashTable *taken = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  GHashTableIter iter;
  gpointer mark;

  g_hash_table_iter_init (&iter, by_mark (fold));
  while (g_hash_table_iter_next (&iter, &mark, NULL))
    g_hash_table_add (taken, g_strdup (mark));
  return taken;
}
