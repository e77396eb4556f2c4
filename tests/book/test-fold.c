/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is true now, from small ledgers. Each test is a story of a few entries on a job of four
 * piles with eight bars each. */
#include "book-fixture.h"

#include <locale.h>
#include <math.h>
#include <string.h>

static void
step (Story *story, int shift, int pile, const char *name)
{
  g_free (fixture_record (story->book, story->shifts[shift], LB_ENTRY_STEP, pile, name, NAN));
}

static LbFold *
fold (Story *story)
{
  g_autoptr (LbLedger) ledger = fixture_read (story->book);

  return lb_fold_new (ledger, G_MAXINT64);
}

static void
fact (Story *story, int pile, LbFact which, const char *value)
{
  g_autofree char *id = g_strdup_printf ("test-%d", pile + 3);
  g_autoptr (GError) error = NULL;
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_FACT);

  draft.pile_id = id;
  draft.what = lb_fact_name (which);
  draft.note = value;
  story_record (story, &draft);
}

/* The way of an ordinary pile: counts by step, bars left, the day each step was reached. */
static void
test_ordinary (Story *story, gconstpointer data)
{
  step (story, 0, 0, "cleaned");
  story_burn (story, 0, 0, LB_BAR (0) | LB_BAR (1), 0);
  story_burn (story, 1, 0, 0xfc, 0);
  step (story, 1, 0, "severed");
  step (story, 1, 0, "rigged");
  step (story, 1, 0, "severed"); /* said twice, counted once */
  step (story, 2, 0, "pulled");
  step (story, 2, 1, "cleaned");

  g_autoptr (LbFold) now = fold (story);
  const LbPileState *pile = &now->states[0];
  g_assert_cmpint (pile->step, ==, LB_STEP_PULLED);
  g_assert_cmpuint (pile->n_left, ==, 0);
  g_assert_cmpuint (pile->flags, ==, 0);
  g_assert_cmpint (pile->step_shift[LB_STEP_CLEANED], ==, 0);
  g_assert_cmpint (pile->step_shift[LB_STEP_SEVERED], ==, 1);
  g_assert_cmpint (pile->step_shift[LB_STEP_PULLED], ==, 2);
  g_assert_cmpint (pile->step_shift[LB_STEP_STANDING], ==, -1);
  g_assert_cmpuint (now->n_by_step[LB_STEP_STANDING], ==, 2);
  g_assert_cmpuint (now->n_by_step[LB_STEP_CLEANED], ==, 1);
  g_assert_cmpuint (now->n_by_step[LB_STEP_PULLED], ==, 1);
  g_assert_cmpuint (now->n_days, ==, 3);
  g_assert_cmpuint (now->days[0].day, ==, FIXTURE_DAY);
  g_assert_cmpuint (now->days[0].totals.bars, ==, 2);
  g_assert_cmpuint (now->days[1].totals.bars, ==, 6);
  g_assert_cmpuint (now->days[1].totals.steps[LB_STEP_SEVERED], ==, 1);
  g_assert_cmpuint (now->days[1].pulled_so_far, ==, 0);
  g_assert_cmpuint (now->days[2].pulled_so_far, ==, 1);
  g_assert_cmpuint (now->job.bars, ==, 8);
  g_assert_cmpuint (now->job.steps[LB_STEP_CLEANED], ==, 2);
  g_assert_cmpuint (now->shifts[1].bars, ==, 6);
}

/* Entries that disagree are kept and flagged. */
static void
test_flags (Story *story, gconstpointer data)
{
  step (story, 0, 0, "severed");
  story_burn (story, 0, 0, 0, 3);
  step (story, 0, 1, "pulled");
  story_burn (story, 0, 2, 0, 5);
  story_burn (story, 0, 2, 0, 4);
  story_burn (story, 0, 3, LB_BAR (8), 0);

  g_autoptr (LbFold) now = fold (story);
  g_assert_cmpuint (now->states[0].flags, ==, LB_FLAG_SEVERED_WITH_BARS);
  g_assert_cmpuint (now->states[0].n_left, ==, 5);
  g_assert_cmpuint (now->states[0].n_unplaced, ==, 3);
  g_assert_cmpuint (now->states[1].flags, ==, LB_FLAG_PULLED_UNSEVERED);
  g_assert_cmpuint (now->states[2].flags, ==, LB_FLAG_MORE_BARS_THAN_HAS);
  g_assert_cmpuint (now->states[2].n_left, ==, 0);
  g_assert_cmpuint (now->states[3].flags, ==, LB_FLAG_MORE_BARS_THAN_HAS);

  fact (story, 1, LB_FACT_N_BARS, "");
  fact (story, 2, LB_FACT_N_BARS, "");
  g_autoptr (LbFold) unknown = fold (story);
  g_assert_cmpuint (unknown->states[1].flags, ==, LB_FLAG_PULLED_UNSEVERED);
  g_assert_cmpuint (unknown->states[2].flags, ==, LB_FLAG_BARS_UNKNOWN);
  for (guint bit = 0; bit < 5; bit++)
    g_assert_nonnull (lb_pile_flag_words (1u << bit));
}

static void
test_drawn (Story *story, gconstpointer data)
{
  story_tell (story, 1, 0, LB_ENTRY_DRAWN, NAN);

  g_autoptr (LbFold) now = fold (story);
  g_assert_cmpint (now->states[0].step, ==, LB_STEP_PULLED);
  g_assert_true (now->states[0].is_drawn);
  g_assert_cmpuint (now->states[0].flags, ==, 0);
  g_assert_cmpuint (now->days[1].totals.steps[LB_STEP_PULLED], ==, 1);
}

/* A pile that breaks is back on the list, and the stub's way is counted anew. */
static void
test_broken (Story *story, gconstpointer data)
{
  story_burn (story, 0, 0, 0xff, 0);
  step (story, 0, 0, "severed");
  story_tell (story, 0, 0, LB_ENTRY_DRAWN, NAN);
  story_tell (story, 1, 0, LB_ENTRY_BROKEN, -7.5);
  story_burn (story, 0, 1, 0x7, 0);
  story_tell (story, 1, 1, LB_ENTRY_BROKEN, -2.25);

  g_autoptr (LbFold) broken = fold (story);
  g_assert_cmpint (broken->states[0].step, ==, LB_STEP_STANDING);
  g_assert_cmpuint (broken->states[0].flags, ==, LB_FLAG_STUB_LEFT);
  g_assert_cmpuint (broken->states[0].n_left, ==, 8);
  g_assert_cmpfloat (broken->piles[0].head_m, ==, -7.5);
  g_assert_cmpuint (broken->states[1].n_left, ==, 5);
  g_assert_cmpuint (broken->days[0].pulled_so_far, ==, 1);
  g_assert_cmpuint (broken->days[1].pulled_so_far, ==, 0);
  g_assert_cmpuint (broken->n_by_step[LB_STEP_PULLED], ==, 0);

  step (story, 2, 0, "pulled");
  g_autoptr (LbFold) half = fold (story);
  g_assert_cmpuint (half->states[0].flags, ==, LB_FLAG_STUB_LEFT | LB_FLAG_PULLED_UNSEVERED);
  story_burn (story, 2, 0, 0xff, 0);
  step (story, 2, 0, "severed");
  g_autoptr (LbFold) out = fold (story);
  g_assert_cmpuint (out->states[0].flags, ==, 0);
  g_assert_cmpuint (out->days[2].pulled_so_far, ==, 1);
  g_assert_cmpuint (out->job.bars, ==, 8 + 3 + 8);

  fact (story, 0, LB_FACT_HEAD, "-8");
  g_autoptr (LbFold) surveyed = fold (story);
  g_assert_cmpfloat (surveyed->piles[0].head_m, ==, -8);
}

/* A shift written up later falls into its place. */
static void
test_late_shift (Story *story, gconstpointer data)
{
  step (story, 2, 0, "pulled");
  story_tell (story, 1, 0, LB_ENTRY_BROKEN, -3);
  step (story, 0, 1, "cleaned");
  step (story, 1, 1, "standing"); /* it was another pile after all */

  g_autoptr (LbFold) now = fold (story);
  g_assert_cmpint (now->states[0].step, ==, LB_STEP_PULLED);
  g_assert_cmpuint (now->days[2].pulled_so_far, ==, 1);
  g_assert_cmpint (now->states[1].step, ==, LB_STEP_STANDING);
}

static void
find_gone (Story *story, int shift, int pile, LbBarSet bars)
{
  g_autofree char *id = g_strdup_printf ("test-%d", pile + 3);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_GONE);

  draft.pile_id = id;
  draft.shift_id = story->shifts[shift];
  draft.bars = bars;
  story_record (story, &draft);
}

/* Whichever was said first: a bar cannot be rusted through and burned. Said twice alike is no dispute, and
 * with the pile broken off below all of it is past. */
static void
test_gone_and_burned (Story *story, gconstpointer data)
{
  find_gone (story, 0, 0, LB_BAR (1) | LB_BAR (2));
  story_burn (story, 1, 0, LB_BAR (2) | LB_BAR (3), 0);
  story_burn (story, 0, 1, LB_BAR (4), 0);
  find_gone (story, 1, 1, LB_BAR (4));
  find_gone (story, 0, 2, LB_BAR (1));
  find_gone (story, 1, 2, LB_BAR (1));
  story_burn (story, 1, 2, LB_BAR (2), 0);

  g_autoptr (LbFold) now = fold (story);
  g_assert_cmpuint (now->states[0].flags, ==, LB_FLAG_GONE_AND_BURNED);
  g_assert_cmphex (now->states[0].disputed, ==, LB_BAR (2));
  g_assert_cmpuint (now->states[0].n_left, ==, 5);
  g_assert_cmpuint (now->states[1].flags, ==, LB_FLAG_GONE_AND_BURNED);
  g_assert_cmpuint (now->states[2].flags, ==, 0);
  g_assert_true (strstr (lb_pile_flag_words (LB_FLAG_LAST), "gone") != NULL);
}

static void
test_totals (Story *story, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  LbDraft dive = LB_DRAFT_INIT (LB_ENTRY_DIVE);

  dive.shift_id = story->shifts[1];
  dive.what = "diver 1";
  dive.start_us = FIXTURE_US;
  dive.end_us = FIXTURE_US + 600 * G_USEC_PER_SEC; /* ten minutes and not one more */
  g_assert_true (lb_book_record (story->book, &dive, 1, NULL, &error));
  dive.end_us++; /* begins the eleventh */
  g_assert_true (lb_book_record (story->book, &dive, 1, NULL, &error));
  dive.start_us = dive.end_us = 0;
  g_assert_true (lb_book_record (story->book, &dive, 1, NULL, &error));
  g_assert_no_error (error);
  story_tell (story, 1, 0, LB_ENTRY_BURN_TIME, 90);
  story_tell (story, 1, 0, LB_ENTRY_RODS, 2.5);
  story_tell (story, 2, -1, LB_ENTRY_RODS, 4);
  story_tell (story, 1, -1, LB_ENTRY_OXYGEN, 6.25);
  g_free (fixture_record (story->book, story->shifts[1], LB_ENTRY_DELAY, -1, "current", 1800));
  g_free (fixture_record (story->book, story->shifts[1], LB_ENTRY_FAULT, -1, "collet", 300));
  g_free (fixture_record (story->book, story->shifts[1], LB_ENTRY_FAULT, -1, "clamp", NAN));

  g_autoptr (LbFold) now = fold (story);
  const LbTotals *day = &now->days[1].totals;
  g_assert_cmpuint (day->n_dives, ==, 3);
  g_assert_cmpfloat (day->bottom_s, ==, 600 + 660);
  g_assert_cmpfloat (day->trigger_s, ==, 90);
  g_assert_cmpfloat (day->rods, ==, 2.5);
  g_assert_cmpfloat (day->oxygen_m3, ==, 6.25);
  g_assert_cmpfloat (day->delay_s, ==, 1800);
  g_assert_cmpfloat (day->fault_s, ==, 300);
  g_assert_cmpfloat (now->job.rods, ==, 6.5);
}

/* Each date is one day, however its shifts came into the file: night before day, a forgotten
 * shift written up weeks later, and while the ledger is read on shift by shift. */
static void
test_days_of_shifts_out_of_order (Story *story, gconstpointer data)
{
  static const struct
  {
    guint day;
    const char *watch;
  } came[] = { { 9, "day" }, { 5, "night" }, { 1, "night" }, { 9, "night" },
               { 5, "day" }, { 7, "day" },   { 0, "night" }, { 2, "night" } };
  static const guint days[] = { 0, 1, 2, 5, 7, 9 };
  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (came); i++) {
    g_autofree char *id = NULL;

    lb_book_set_now (story->book, FIXTURE_US + i * G_USEC_PER_SEC);
    g_assert_true (lb_book_open_shift (story->book, FIXTURE_DAY + came[i].day, came[i].watch, NULL,
                                       &id, &error));
    g_assert_no_error (error);
    g_free (fixture_record (story->book, id, LB_ENTRY_RODS, -1, NULL, 1));
    g_assert_true (lb_book_read_on (story->book, ledger, NULL, &error));
    g_assert_no_error (error);
  }

  g_autoptr (LbFold) read_on = lb_fold_new (ledger, G_MAXINT64);
  g_autoptr (LbFold) anew = fold (story);
  const LbFold *folds[] = { read_on, anew };
  for (guint f = 0; f < G_N_ELEMENTS (folds); f++) {
    g_assert_cmpuint (folds[f]->n_days, ==, G_N_ELEMENTS (days));
    for (guint i = 0; i < G_N_ELEMENTS (days); i++) {
      double rods = 0;

      for (guint k = 0; k < G_N_ELEMENTS (came); k++)
        rods += came[k].day == days[i];
      g_assert_cmpuint (folds[f]->days[i].day, ==, FIXTURE_DAY + days[i]);
      g_assert_cmpfloat (folds[f]->days[i].totals.rods, ==, rods);
    }
  }
}

/* Facts and settings: the last word that stands counts; marks are found in any spelling. */
static void
test_facts_and_settings (Story *story, gconstpointer data)
{
  LbAssumptionId rate;

  g_assert_true (lb_assumption_find ("burn-rate", &rate));
  fact (story, 0, LB_FACT_MARK, "G 7");
  fact (story, 0, LB_FACT_MUDLINE, "-9.75");
  fact (story, 0, LB_FACT_MUDLINE, "-9.5");
  story_set (story, "place", "Tern Cove");
  story_set (story, "units", "metric");

  g_autofree char *value = g_strdup_printf ("%.17g", lb_assumption (rate)->most);
  story_set (story, "assume.burn-rate", value);
  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  g_autoptr (LbFold) now = lb_fold_new (ledger, G_MAXINT64);
  g_assert_cmpint (lb_fold_find_mark (now, "g7"), ==, 0);
  g_assert_cmpint (lb_fold_find_mark (now, "P1"), ==, -1);
  g_assert_cmpint (lb_ledger_find_mark (ledger, "p 1"), ==, 0);
  g_assert_cmpfloat (now->piles[0].mudline_m, ==, -9.5);
  g_assert_cmpstr (now->place, ==, "Tern Cove");
  g_assert_cmpint (now->units, ==, LB_UNITS_METRIC);
  g_assert_cmpfloat (now->assumptions.value[rate], ==, lb_assumption (rate)->most);
  g_assert_true (now->assumptions.is_own[rate]);

  story_set (story, "assume.burn-rate", "");
  g_autoptr (LbFold) back = fold (story);
  g_assert_cmpfloat (back->assumptions.value[rate], ==, lb_assumption (rate)->value);
  g_assert_false (back->assumptions.is_own[rate]);
}

/* The fold of an earlier moment knows nothing of what was recorded later. */
static void
test_until (Story *story, gconstpointer data)
{
  g_autofree char *act = fixture_burn (story->book, story->shifts[0], 0, LB_BAR (3), 0);
  lb_book_set_now (story->book, FIXTURE_US + 10);
  g_free (fixture_take_back (story->book, story->shifts[0], act));
  story_burn (story, 0, 0, LB_BAR (4), 0);

  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  g_autoptr (LbFold) before = lb_fold_new (ledger, FIXTURE_US + 9);
  g_autoptr (LbFold) after = lb_fold_new (ledger, G_MAXINT64);
  g_assert_cmpuint (before->states[0].burned, ==, LB_BAR (3));
  g_assert_cmpuint (after->states[0].burned, ==, LB_BAR (4));
  /* No two acts are of one moment. */
  g_assert_cmpint (after->states[0].last_us, ==, FIXTURE_US + 11);
}

/* Whatever is recorded in whatever order: each pile is at one step, the days add up to the job,
 * and what came out less what came back is what is out. */
static void
test_sums (Story *story, gconstpointer data)
{
  static const char *const steps[] = { "cleaned", "severed", "rigged", "pulled", "standing" };

  g_assert_true (lb_book_begin (story->book, NULL));
  for (int i = 0; i < 600; i++) {
    const int pile = g_test_rand_int_range (0, 4);
    const int shift = g_test_rand_int_range (0, 3);

    switch (g_test_rand_int_range (0, 8)) {
    case 0:
      story_tell (story, shift, pile, LB_ENTRY_BROKEN, -1);
      break;
    case 1:
      story_tell (story, shift, pile, LB_ENTRY_DRAWN, NAN);
      break;
    case 2:
      story_burn (story, shift, pile, LB_BAR (g_test_rand_int_range (0, 8)), 0);
      break;
    default:
      step (story, shift, pile, steps[g_test_rand_int_range (0, 5)]);
      break;
    }

    g_autoptr (LbFold) now = fold (story);
    guint n_piles = 0;
    guint bars = 0;
    for (int at = 0; at < LB_N_STEPS; at++)
      n_piles += now->n_by_step[at];
    for (gsize day = 0; day < now->n_days; day++)
      bars += now->days[day].totals.bars;
    g_assert_cmpuint (n_piles, ==, 4);
    g_assert_cmpuint (bars, ==, now->job.bars);
    g_assert_cmpuint (now->days[2].pulled_so_far, ==, now->n_by_step[LB_STEP_PULLED]);
  }
  g_assert_true (lb_book_commit (story->book, NULL));
}

/* For which visibility a cut would be planned now. */
static LbVisibility
planned_for (Story *story)
{
  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  g_autoptr (LbFold) now = lb_fold_new (ledger, G_MAXINT64);

  return lb_fold_basis (now)->visibility;
}

static LbVisibility
say (Story *story, int shift, LbEntryKind kind, const char *what, const char *note)
{
  g_autoptr (GError) error = NULL;
  LbDraft draft = LB_DRAFT_INIT (kind);

  draft.shift_id = shift >= 0 ? story->shifts[shift] : NULL;
  draft.what = what;
  draft.note = note;
  story_record (story, &draft);
  return planned_for (story);
}

static LbVisibility
choose (Story *story, const char *key)
{
  return say (story, -1, LB_ENTRY_SETTING, LB_SETTING_VISIBILITY, key);
}

/* The one said in the latest shift, until somebody says for which to plan. */
static void
test_visibility (Story *story, gconstpointer data)
{
  const LbEntryKind condition = LB_ENTRY_CONDITION;

  g_assert_cmpint (planned_for (story), ==, LB_VISIBILITY_UNKNOWN);
  g_assert_cmpint (say (story, 2, condition, "visibility", "2 ft"), ==, LB_VISIBILITY_POOR);
  /* A shift that is written up later is no later shift. */
  g_assert_cmpint (say (story, 0, condition, "visibility", "20 ft"), ==, LB_VISIBILITY_POOR);
  g_assert_cmpint (say (story, 2, condition, "wind", "none"), ==, LB_VISIBILITY_POOR);
  {
    g_autoptr (LbFold) now = fold (story);

    g_assert_cmpint (now->visibility_shift, ==, 2);
    g_assert_false (now->has_own_visibility);
  }
  g_assert_cmpint (choose (story, "none"), ==, LB_VISIBILITY_NONE);
  g_assert_cmpint (choose (story, "unknown"), ==, LB_VISIBILITY_UNKNOWN);
  g_assert_cmpint (choose (story, ""), ==, LB_VISIBILITY_POOR);
}

int
main (int argc, char **argv)
{
  static const struct
  {
    const char *name;
    void (*test) (Story *story, gconstpointer data);
  } tests[] = {
    { "/book/fold/ordinary", test_ordinary },
    { "/book/fold/flags", test_flags },
    { "/book/fold/drawn", test_drawn },
    { "/book/fold/broken", test_broken },
    { "/book/fold/late-shift", test_late_shift },
    { "/book/fold/gone-and-burned", test_gone_and_burned },
    { "/book/fold/totals", test_totals },
    { "/book/fold/days-out-of-order", test_days_of_shifts_out_of_order },
    { "/book/fold/facts-and-settings", test_facts_and_settings },
    { "/book/fold/visibility", test_visibility },
    { "/book/fold/until", test_until },
    { "/book/fold/sums", test_sums },
  };

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].name, Story, NULL, story_begin, tests[i].test, story_end);
  return g_test_run ();
}
