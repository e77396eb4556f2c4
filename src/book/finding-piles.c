/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What contradicts itself at a pile. Each pile's steps and bars are told over again in the order of
 * the shifts, as the fold does it (fold.c), with who said each, so that a finding can stand in the
 * shift that made it true.
 *
 * Whether the hook was missing is asked at the end of each shift, since within one the record does
 * not say what came first: a pile that was on the hook or out by then was held. The plan that gives the
 * hold point is made only of piles for which that is still open. */
#include "book/finding-private.h"

#include "trade/cut-plan.h"
#include "trade/pile-bars.h"
#include "trade/pile-hold.h"
#include "trade/pile-taper.h"

#include <math.h>
#include <string.h>

#define STEP_BITS_CUT  (LB_STEP_BIT (LB_STEP_SEVERED) | LB_STEP_BIT (LB_STEP_PULLED))
#define STEP_BITS_HELD (LB_STEP_BIT (LB_STEP_RIGGED) | LB_STEP_BIT (LB_STEP_PULLED))

typedef struct
{
  LbFindingSearch *search;
  const LbCutBasis *basis;
  int pile;
  guint first_found; /* of this pile, in the search */

  LbStepSet done;
  const LbEntry *steps[LB_N_STEPS]; /* that said so first */
  LbBarSet through, gone;           /* gone or burned, and those of them that were found gone */
  const LbEntry *bars[LB_BARS_MAX]; /* that said so first */
  guint n_unplaced;
  const LbEntry *counted; /* the last that said how many and not which */
  const LbEntry *over;    /* that made them more than the pile has */

  int shift;                      /* looked at */
  gboolean was_past_hold;         /* severed, before this shift */
  guint n_burned_before;          /* by the torch */
  const LbEntry *burned_in_shift; /* the last of them; NULL for none */

  gboolean has_hold; /* of these bars gone */
  LbBarSet hold_gone;
  int n_free; /* bars before the hook must hold */
} Story;

static const LbPile *
facts_of (const Story *story)
{
  return &story->search->fold->piles[story->pile];
}

static LbFinding
finding_of (const Story *story, LbFindingKind kind, const LbEntry *first, const LbEntry *second)
{
  const LbEntry *last = second != NULL ? second : first;

  return (LbFinding){
    .kind = kind,
    .shift = last->shift,
    .pile = story->pile,
    .other_pile = -1,
    .entries = { first, second },
  };
}

static guint
n_burned (const Story *story)
{
  return lb_bar_set_count (story->through & ~story->gone) + story->n_unplaced;
}

/* Two entries that say the same. All that one shift says again of another is one finding, and so is
 * what a shift says twice. */
static void
say_twice (Story *story,
           LbFindingKind kind,
           const LbEntry *first,
           const LbEntry *second,
           const LbFinding *what)
{
  LbFindingSearch *search = story->search;
  LbFinding finding = finding_of (story, kind, first, second);

  for (guint i = story->first_found; i < search->found->len; i++) {
    LbFinding *known = &g_array_index (search->found, LbFinding, i);

    if (known->kind == kind && known->shift == second->shift &&
        known->entries[0]->shift == first->shift)
    {
      known->steps |= what->steps;
      known->bars |= what->bars;
      known->n_bars += what->n_bars;
      return;
    }
  }
  finding.steps = what->steps;
  finding.bars = what->bars;
  finding.n_bars = what->n_bars;
  if (kind == LB_FINDING_TWO_CREWS)
    lb_finding_search_add (search, &finding, facts_of (story)->id,
                           lb_ledger_shift (search->ledger, (guint) first->shift)->id,
                           lb_ledger_shift (search->ledger, (guint) second->shift)->id);
  else
    lb_finding_search_add (search, &finding, first->id, second->id, NULL);
}

static gboolean
is_of_one_watch (const LbLedger *ledger, const LbEntry *a, const LbEntry *b)
{
  const LbShift *one = lb_ledger_shift (ledger, (guint) a->shift);
  const LbShift *other = lb_ledger_shift (ledger, (guint) b->shift);

  return one->day == other->day && g_str_equal (one->watch, other->watch);
}

/* A bar that was through before is through again. */
static void
compare_bar (Story *story, guint bar, const LbEntry *entry)
{
  const LbEntry *first = story->bars[bar];
  const LbFinding what = { .bars = (LbBarSet) 1 << bar };

  if (first->act == entry->act)
    return;
  if (first->kind != entry->kind)
    say_twice (story, LB_FINDING_GONE_AND_BURNED, first, entry, &what);
  else if (first->shift != entry->shift)
    say_twice (story, LB_FINDING_TWO_CREWS, first, entry, &what);
  else if (entry->kind == LB_ENTRY_BARS)
    say_twice (story, LB_FINDING_BARS_TWICE, first, entry, &what);
}

/* Two crews that each counted bars of one pile in the same watch may have counted the same ones. */
static void
compare_count (Story *story, const LbEntry *entry)
{
  const LbEntry *first = story->counted;
  const LbFinding what = { .n_bars = entry->count };

  if (first != NULL && first->shift != entry->shift &&
      is_of_one_watch (story->search->ledger, first, entry))
    say_twice (story, LB_FINDING_TWO_CREWS, first, entry, &what);
}

static void
take_bars (Story *story, const LbEntry *entry)
{
  const guint n_has = facts_of (story)->n_bars;

  for (guint bar = 0; bar < LB_BARS_MAX; bar++) {
    if ((entry->bars >> bar & 1) == 0)
      continue;
    if (story->bars[bar] != NULL)
      compare_bar (story, bar, entry);
    else
      story->bars[bar] = entry;
  }
  if (entry->kind == LB_ENTRY_GONE)
    story->gone |= entry->bars & ~story->through;
  else
    story->burned_in_shift = entry;
  story->through |= entry->bars;
  if (entry->count > 0) {
    compare_count (story, entry);
    story->counted = entry;
    story->n_unplaced += entry->count;
  }
  if (story->over == NULL && n_has > 0 &&
      (lb_bar_set_count (story->through) + story->n_unplaced > n_has ||
       (story->through & ~lb_bar_set_all (n_has)) != 0))
    story->over = entry;
}

static void
reach_step (Story *story, const LbEntry *entry, LbStep step)
{
  g_assert ((guint) step < LB_N_STEPS);

  const LbEntry *first = story->steps[step];
  const LbFinding what = { .steps = LB_STEP_BIT (step) };

  if (step == LB_STEP_SEVERED)
    story->burned_in_shift = entry;
  if (first != NULL && first->shift != entry->shift)
    say_twice (story, LB_FINDING_TWO_CREWS, first, entry, &what);
  if (first == NULL)
    story->steps[step] = entry;
  story->done |= LB_STEP_BIT (step);
}

static void
stand_again (Story *story)
{
  story->done = 0;
  memset (story->steps, 0, sizeof story->steps);
}

static void
break_off (Story *story)
{
  if ((story->done & STEP_BITS_CUT) != 0) {
    story->through = story->gone = 0;
    story->n_unplaced = 0;
    story->counted = story->over = NULL;
    memset (story->bars, 0, sizeof story->bars);
  }
  stand_again (story);
}

static void
tell (Story *story, const LbEntry *entry)
{
  LbStep step;

  if (entry->kind == LB_ENTRY_BARS || entry->kind == LB_ENTRY_GONE)
    take_bars (story, entry);
  else if (entry->kind == LB_ENTRY_DRAWN)
    reach_step (story, entry, LB_STEP_PULLED);
  else if (entry->kind == LB_ENTRY_BROKEN)
    break_off (story);
  else if (lb_step_from_name (entry->what, &step) && step == LB_STEP_STANDING)
    stand_again (story);
  else if (lb_step_from_name (entry->what, &step))
    reach_step (story, entry, step);
}

/* Bars that may be burned before the hook must hold, as the cut plan says; less than 0 where that
 * cannot be reckoned. It is asked again each shift, and is the same while no other bars are gone. */
static int
count_free_bars (Story *story)
{
  const LbPile *pile = facts_of (story);
  const LbOutline outline = lb_pile_outline_at (
    pile, lb_pile_cut_elevation (pile, story->basis->assumptions));
  LbPoint places[LB_BARS_MAX];
  LbBurnOrder order;

  if (story->has_hold && story->hold_gone == story->gone)
    return story->n_free;
  story->has_hold = TRUE;
  story->hold_gone = story->gone;
  story->n_free = -1;
  if (lb_pile_bars_place (pile, &outline, places) == NULL &&
      lb_pile_hold_reckon (pile, places, story->gone, story->gone, 0, story->basis, &order) ==
        NULL &&
      order.rig_before > 0)
    story->n_free = (int) order.rig_before - 1;
  return story->n_free;
}

static gboolean
is_severed (const Story *story)
{
  return (story->done & LB_STEP_BIT (LB_STEP_SEVERED)) != 0;
}

/* At the end of a shift: whether it burned past the hold point without the hook. */
static void
look_for_hook (Story *story)
{
  const LbEntry *entry = story->burned_in_shift;

  if (entry == NULL || (story->done & STEP_BITS_HELD) != 0 || story->was_past_hold ||
      facts_of (story)->n_bars == 0 || !lb_finding_search_has (story->search, entry->shift))
    return;

  const int n_free = count_free_bars (story);
  LbFinding finding = finding_of (story, LB_FINDING_NOT_RIGGED, entry, NULL);

  if (n_free < 0 || story->n_burned_before > (guint) n_free ||
      (n_burned (story) <= (guint) n_free && !is_severed (story)))
    return;
  finding.n_bars = n_burned (story);
  finding.n_bars_most = (guint) n_free;
  lb_finding_search_add (story->search, &finding, facts_of (story)->id,
                         lb_ledger_shift (story->search->ledger, (guint) entry->shift)->id, NULL);
}

static void
begin_shift (Story *story, int shift)
{
  story->shift = shift;
  story->burned_in_shift = NULL;
  story->was_past_hold = is_severed (story);
  story->n_burned_before = n_burned (story);
}

/* What the fold says of the pile as it stands now, put to the entry that made it so. */
static void
conclude (Story *story)
{
  const LbPileState *state = &story->search->fold->states[story->pile];
  const LbEntry *severed = story->steps[LB_STEP_SEVERED], *pulled = story->steps[LB_STEP_PULLED];

  if ((state->flags & LB_FLAG_SEVERED_WITH_BARS) != 0 && severed != NULL) {
    LbFinding finding = finding_of (story, LB_FINDING_BARS_LEFT, severed, NULL);

    finding.n_bars = state->n_left;
    lb_finding_search_add (story->search, &finding, severed->id, NULL, NULL);
  }
  if ((state->flags & LB_FLAG_PULLED_UNSEVERED) != 0 && pulled != NULL) {
    const LbFinding finding = finding_of (story, LB_FINDING_PULLED_UNCUT, pulled, NULL);

    lb_finding_search_add (story->search, &finding, pulled->id, NULL, NULL);
  }
  if ((state->flags & LB_FLAG_MORE_BARS_THAN_HAS) != 0 && story->over != NULL) {
    LbFinding finding = finding_of (story, LB_FINDING_MORE_BARS, story->over, NULL);

    finding.n_bars = lb_bar_set_count (story->through) + story->n_unplaced;
    finding.n_bars_most = facts_of (story)->n_bars;
    finding.bars = story->through & ~lb_bar_set_all (facts_of (story)->n_bars);
    lb_finding_search_add (story->search, &finding, story->over->id, NULL, NULL);
  }
}

/* @works: those of one pile. */
static void
tell_pile (LbFindingSearch *search, const LbCutBasis *basis, gconstpointer *works, guint n)
{
  Story story = {
    .search = search,
    .basis = basis,
    .pile = ((const LbEntry *) works[0])->pile,
    .first_found = search->found->len,
    .shift = -1,
  };

  for (guint i = 0; i < n; i++) {
    const LbEntry *entry = works[i];

    if (entry->shift != story.shift) {
      look_for_hook (&story);
      begin_shift (&story, entry->shift);
    }
    tell (&story, entry);
  }
  look_for_hook (&story);
  conclude (&story);
}

void
lb_finding_search_piles (LbFindingSearch *search)
{
  const LbCutBasis basis = lb_cut_basis (&search->fold->assumptions);
  guint i = 0;

  while (i < search->works->len) {
    const int pile = ((const LbEntry *) search->works->pdata[i])->pile;
    guint n = 1;

    while (i + n < search->works->len &&
           ((const LbEntry *) search->works->pdata[i + n])->pile == pile)
      n++;
    tell_pile (search, &basis, (gconstpointer *) search->works->pdata + i, n);
    i += n;
  }
}
