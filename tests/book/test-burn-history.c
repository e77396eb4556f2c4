/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Samples of burning from small ledgers, and from the demo, whose truth is known. */
#include "book-fixture.h"

#include "book/burn-history.h"
#include "book/demo-job.h"
#include "trade/oxygen.h"

#include <locale.h>
#include <math.h>

#define INCH       0.0254
#define FOOT       0.3048
#define CUBIC_FOOT (FOOT * FOOT * FOOT)
#define MINUTE_US  (G_GINT64_CONSTANT (60) * G_USEC_PER_SEC)

static void
see (Story *story, int shift, const char *visibility)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_CONDITION);

  draft.shift_id = story->shifts[shift];
  draft.what = "visibility";
  draft.note = visibility;
  story_record (story, &draft);
}

static void
dive (Story *story, int shift, const char *pile_id, double depth_m, int minutes)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_DIVE);

  draft.shift_id = story->shifts[shift];
  draft.pile_id = pile_id;
  draft.what = "diver 1";
  draft.amount = depth_m;
  draft.start_us = FIXTURE_US;
  draft.end_us = FIXTURE_US + minutes * MINUTE_US;
  story_record (story, &draft);
}

static LbBurnHistory *
history_of (Story *story)
{
  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);

  return lb_burn_history_new (ledger, fold);
}

static const LbBurnSample *
sample_at (const LbBurnHistory *history, guint i)
{
  return &g_array_index (history->samples, LbBurnSample, i);
}

static const LbBurnShift *
shift_at (const LbBurnHistory *history, guint i)
{
  return &g_array_index (history->shifts, LbBurnShift, i);
}

static void
test_samples (Story *story, gconstpointer data)
{
  see (story, 0, "black");
  story_burn (story, 0, 0, LB_BAR (0) | LB_BAR (1), 0);
  story_tell (story, 0, 0, LB_ENTRY_BURN_TIME, 40);
  story_burn (story, 0, 0, LB_BAR (1) | LB_BAR (2), 0); /* one of them once more */
  story_tell (story, 0, 0, LB_ENTRY_BURN_TIME, 25);
  story_burn (story, 0, 1, 0, 4);
  story_tell (story, 0, 1, LB_ENTRY_BURN_TIME, 90);
  see (story, 1, "5 ft");
  g_free (fixture_record (story->book, story->shifts[1], LB_ENTRY_FAULT, -1, "worn O-ring", 1200));
  story_burn (story, 1, 0, LB_BAR (3), 0);
  story_tell (story, 1, 0, LB_ENTRY_BURN_TIME, 22);
  story_burn (story, 1, 2, LB_BAR (0), 0); /* without its time */

  g_autoptr (LbBurnHistory) history = history_of (story);

  g_assert_cmpuint (history->samples->len, ==, 3);
  g_assert_cmpuint (history->n_untimed, ==, 1);

  const LbBurnSample *first = sample_at (history, 0), *second = sample_at (history, 1);
  const LbBurnSample *third = sample_at (history, 2);

  g_assert_cmpuint (first->n_bars, ==, 3);
  g_assert_cmpfloat_with_epsilon (first->steel_m2, 3 * 0.79 * INCH * INCH, 1e-9);
  g_assert_cmpfloat (first->trigger_s, ==, 65);
  g_assert_cmpint (first->visibility, ==, LB_VISIBILITY_NONE);
  g_assert_false (first->has_fault);
  g_assert_false (first->is_set_aside);
  g_assert_cmpint (first->pile, ==, 0);
  g_assert_cmpint (first->shift, ==, 0);
  g_assert_cmpuint (second->n_bars, ==, 4);
  g_assert_cmpint (second->pile, ==, 1);
  g_assert_cmpuint (third->n_bars, ==, 1);
  g_assert_cmpfloat (third->trigger_s, ==, 22);
  g_assert_cmpint (third->visibility, ==, LB_VISIBILITY_FAIR);
  g_assert_true (third->has_fault);
  g_assert_cmpint (third->shift, ==, 1);
}

static void
test_taken_back (Story *story, gconstpointer data)
{
  story_burn (story, 0, 0, LB_BAR (0), 0);
  story_tell (story, 0, 0, LB_ENTRY_BURN_TIME, 20);

  g_autofree char *act = fixture_record (story->book, story->shifts[0], LB_ENTRY_BURN_TIME, 0, NULL,
                                         4000);

  g_free (fixture_take_back (story->book, story->shifts[0], act));

  g_autoptr (LbBurnHistory) history = history_of (story);

  g_assert_cmpuint (history->samples->len, ==, 1);
  g_assert_cmpfloat (sample_at (history, 0)->trigger_s, ==, 20);
}

/* --- Set aside ------------------------------------------------------------------------------ */

/* Two piles in shift 0, one in shift 1, each in some 25 s a square inch. */
static void
burn_three (Story *story)
{
  for (int i = 0; i < 3; i++) {
    const int shift = i / 2;

    story_burn (story, shift, i, 0xff, 0);
    story_tell (story, shift, i, LB_ENTRY_BURN_TIME, 150 + 10 * i);
    story_tell (story, shift, i, LB_ENTRY_RODS, 4);
  }
}

/* The job as it is now, and what it teaches. */
typedef struct
{
  LbLedger *ledger;
  LbFold *fold;
  LbBurnHistory *history;
} Now;

static Now
look (Story *story)
{
  Now now = { .ledger = fixture_read (story->book) };

  now.fold = lb_fold_new (now.ledger, G_MAXINT64);
  now.history = lb_burn_history_new (now.ledger, now.fold);
  return now;
}

static void
look_away (Now *now)
{
  lb_burn_history_free (now->history);
  lb_fold_free (now->fold);
  lb_ledger_free (now->ledger);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Now, look_away)

/* Records it; returns the act, to be freed. */
static char *
set_aside (Story *story, int pile, int shift, const char *reason)
{
  g_auto (Now) now = look (story);
  g_autoptr (GError) error = NULL;
  char *act = NULL;
  LbDraft draft;

  g_assert_true (lb_burn_history_set_aside (now.history, now.ledger, now.fold, pile, shift, reason,
                                            &draft, &error));
  g_assert_no_error (error);
  g_assert_true (lb_book_record (story->book, &draft, 1, &act, &error));
  g_assert_no_error (error);
  return act;
}

static void
refuse_set_aside (Story *story, int pile, int shift, const char *reason)
{
  g_auto (Now) now = look (story);
  g_autoptr (GError) error = NULL;
  LbDraft draft;

  g_assert_false (lb_burn_history_set_aside (now.history, now.ledger, now.fold, pile, shift, reason,
                                             &draft, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
}

/* Which of the three samples teach, a bit each, and the shifts from bit 4 on. */
static guint
taught_by (Story *story)
{
  g_auto (Now) now = look (story);
  guint taught = 0, n_aside = 0;

  g_assert_cmpuint (now.history->samples->len, ==, 3);
  g_assert_cmpuint (now.history->shifts->len, ==, 2);
  for (guint i = 0; i < 3; i++) {
    const LbBurnSample *sample = sample_at (now.history, i);

    taught |= sample->is_set_aside ? 0 : 1u << i;
    n_aside += sample->is_set_aside ? 1 : 0;
    g_assert_true (sample->is_set_aside == (*sample->reason != '\0'));
  }
  for (guint i = 0; i < 2; i++)
    taught |= shift_at (now.history, i)->is_set_aside ? 0 : 0x10u << i;
  g_assert_cmpuint (lb_fold_basis (now.fold)->burn->n_set_aside, ==, n_aside);
  g_assert_cmpuint (lb_fold_basis (now.fold)->burn->n_samples, ==, 3 - n_aside);
  return taught;
}

static void
test_set_aside (Story *story, gconstpointer data)
{
  burn_three (story);
  g_assert_cmphex (taught_by (story), ==, 0x37);

  /* One pile of a shift: its rods still count. */
  g_autofree char *act = set_aside (story, 1, 0, "jacketed");

  g_assert_cmphex (taught_by (story), ==, 0x35);
  refuse_set_aside (story, 1, 0, "once more");
  {
    g_auto (Now) now = look (story);

    g_assert_cmpstr (lb_burn_history_find (now.history, 1, 0)->reason, ==, "jacketed");
    g_assert_null (lb_burn_history_find (now.history, 1, 1));
  }

  /* The whole shift, then one pile of it again. */
  g_free (set_aside (story, -1, 0, "clock stood still"));
  g_assert_cmphex (taught_by (story), ==, 0x24);
  refuse_set_aside (story, -1, 0, "once more");
  g_free (set_aside (story, 0, 0, NULL));
  g_assert_cmphex (taught_by (story), ==, 0x25);
  refuse_set_aside (story, 0, 0, NULL);
  /* And all of it. */
  g_free (set_aside (story, -1, 0, NULL));
  g_assert_cmphex (taught_by (story), ==, 0x37);
  refuse_set_aside (story, -1, 0, NULL);
  /* Taking the first word back leaves the last one. */
  g_free (fixture_take_back (story->book, story->shifts[0], act));
  g_assert_cmphex (taught_by (story), ==, 0x37);
}

static void
test_set_aside_taken_back (Story *story, gconstpointer data)
{
  burn_three (story);

  g_autofree char *act = set_aside (story, 2, 1, "slip of the pen");
  g_autofree char *back = NULL;

  g_assert_cmphex (taught_by (story), ==, 0x33);
  back = fixture_take_back (story->book, story->shifts[1], act);
  g_assert_cmphex (taught_by (story), ==, 0x37);
  g_free (fixture_take_back (story->book, story->shifts[1], back));
  g_assert_cmphex (taught_by (story), ==, 0x33);
}

/* What is set aside changes what is learned, and nothing else of the job. */
static void
test_set_aside_teaches_nothing (Story *story, gconstpointer data)
{
  burn_three (story);
  story_burn (story, 1, 3, 0xff, 0);
  story_tell (story, 1, 3, LB_ENTRY_BURN_TIME, 6000);

  g_auto (Now) with = look (story);

  g_assert_true (
    lb_burn_model_is_outlier (lb_fold_basis (with.fold)->burn, sample_at (with.history, 3)));
  g_free (set_aside (story, 3, 1, "hours typed for minutes"));

  g_auto (Now) without = look (story);

  g_assert_cmpfloat (lb_fold_basis (without.fold)->burn->job.mean, <,
                     0.5 * lb_fold_basis (with.fold)->burn->job.mean);
  g_assert_cmpfloat (without.fold->job.trigger_s, ==, with.fold->job.trigger_s);
  g_assert_cmpuint (without.fold->states[3].n_left, ==, with.fold->states[3].n_left);
}

static void
test_nothing_to_set_aside (Story *story, gconstpointer data)
{
  story_burn (story, 0, 0, LB_BAR (0), 0); /* without its time */
  refuse_set_aside (story, 0, 0, "why not");
  refuse_set_aside (story, 1, 0, "why not");
  refuse_set_aside (story, -1, 0, "why not");
}

/* Pile 0 has the id "test-3", see the fixture. */
static void
test_shifts (Story *story, gconstpointer data)
{
  story_burn (story, 0, 0, 0xff, 0);
  story_tell (story, 0, 0, LB_ENTRY_BURN_TIME, 160);
  story_tell (story, 0, 0, LB_ENTRY_RODS, 5);
  story_tell (story, 0, -1, LB_ENTRY_RODS, 1);
  story_tell (story, 0, -1, LB_ENTRY_OXYGEN, 2.5);
  dive (story, 0, "test-3", 10, 30);
  /* A bar without its time: the rods cannot be set against anything. */
  story_burn (story, 1, 1, LB_BAR (0), 0);
  story_burn (story, 1, 2, LB_BAR (0), 0);
  story_tell (story, 1, 1, LB_ENTRY_BURN_TIME, 20);
  story_tell (story, 1, 1, LB_ENTRY_RODS, 2);
  /* A dive somewhere else: the time at the piles is not known. */
  story_burn (story, 2, 1, LB_BAR (1), 0);
  story_tell (story, 2, 1, LB_ENTRY_BURN_TIME, 20);
  dive (story, 2, "test-4", 10, 15);
  dive (story, 2, NULL, (double) NAN, 15);

  g_autoptr (LbBurnHistory) history = history_of (story);

  g_assert_cmpuint (history->shifts->len, ==, 3);

  const LbBurnShift *first = shift_at (history, 0);

  g_assert_cmpuint (first->n_bars, ==, 8);
  g_assert_cmpfloat (first->trigger_s, ==, 160);
  g_assert_cmpfloat (first->rods, ==, 6);
  g_assert_cmpfloat (first->oxygen_m3, ==, 2.5);
  /* Thirty minutes less ten on the way. */
  g_assert_cmpfloat (first->wall_s, ==, 20 * 60);
  g_assert_cmpfloat_with_epsilon (
    first->flow_scale, lb_oxygen_flow_scale (lb_assumption (LB_ASSUME_OVER_BOTTOM)->value, 10),
    1e-12);
  g_assert_cmpint (first->shift, ==, 0);
  g_assert_true (isnan (shift_at (history, 1)->rods));
  g_assert_true (isnan (shift_at (history, 1)->trigger_s));
  g_assert_true (isnan (shift_at (history, 1)->flow_scale));
  g_assert_cmpfloat (shift_at (history, 2)->trigger_s, ==, 20);
  g_assert_true (isnan (shift_at (history, 2)->rods));
  g_assert_true (isnan (shift_at (history, 2)->wall_s));
}

static void
test_unknown_bars (Story *story, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_FACT);

  draft.pile_id = "test-3";
  draft.what = lb_fact_name (LB_FACT_BAR);
  draft.note = "";
  story_record (story, &draft);
  story_burn (story, 0, 0, 0, 3);
  story_tell (story, 0, 0, LB_ENTRY_BURN_TIME, 60);
  /* Trigger time without a bar. */
  story_tell (story, 0, 1, LB_ENTRY_BURN_TIME, 30);

  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_autoptr (LbBurnHistory) history = lb_burn_history_new (ledger, fold);
  LbBurnModel model;

  lb_burn_history_fit (history, fold, &model);
  g_assert_cmpuint (model.n_samples, ==, 0);
  g_assert_cmpuint (model.n_unusable, ==, 2);
}

static void
test_empty (Story *story, gconstpointer data)
{
  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_autoptr (LbBurnHistory) history = lb_burn_history_new (ledger, fold);
  LbBurnModel model;
  LbBurnBasis basis;

  lb_burn_history_fit (history, fold, &model);
  lb_burn_model_basis (&model, NULL, LB_VISIBILITY_UNKNOWN, &basis);
  g_assert_true (basis.is_default);
  g_assert_cmpuint (basis.n_bars, ==, 0);
}

/* --- The demo ------------------------------------------------------------------------------- */

/* What the demo's crew takes for a square inch in a shift, on the mean: demo-shifts.c, from
 * twice the 25 s of common practice down as it learns, by chance between 0.75 and 1.40 of that. */
static double
demo_rate (int shift)
{
  return 25 * (100 + 600 / (6 + shift)) / 100.0 * (0.75 + 1.40) / 2;
}

static void
test_demo (Story *story, gconstpointer data)
{
  g_autofree char *path = fixture_path (story->folder, "demo");
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_demo_job_create (path, &error);

  g_assert_no_error (error);

  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, &error);

  g_assert_no_error (error);

  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_autoptr (LbBurnHistory) history = lb_burn_history_new (ledger, fold);
  LbBurnModel model;
  double truth = 0, weight = 0;
  guint n_faults = 0;

  lb_burn_history_fit (history, fold, &model);
  g_assert_cmpuint (model.n_bars, ==, fold->job.bars);
  g_assert_cmpuint (history->n_untimed, ==, 0);
  for (guint i = 0; i < history->samples->len; i++) {
    const LbBurnSample *sample = sample_at (history, i);

    truth += (sample->has_fault ? 0.5 : 1) * demo_rate (sample->shift);
    weight += sample->has_fault ? 0.5 : 1;
    n_faults += sample->has_fault ? 1 : 0;
  }
  g_assert_cmpuint (model.n_faults, ==, n_faults);
  g_assert_cmpuint (n_faults, >, 0);

  const LbRange rate = lb_burn_model_rate (&model, NULL, LB_VISIBILITY_UNKNOWN);
  const double in2 = INCH * INCH;

  g_test_message ("%u bars in %u samples, %u far from the rest: %.1f (%.1f to %.1f) s/in², truth "
                  "%.1f; a dive varies by %.0f %%, a bar by %.0f %%",
                  model.n_bars, model.n_samples, model.n_outliers, rate.likely * in2,
                  rate.low * in2, rate.high * in2, truth / weight, 100 * sqrt (model.dive_spread),
                  100 * sqrt (model.bar_spread));
  g_assert_cmpfloat_with_epsilon (rate.likely * in2, truth / weight, 0.05 * truth / weight);

  /* A rod to 42 s and one or two each time, and some for the shift: more than one to 42 s. */
  g_test_message ("%.1f s of trigger to a rod, %.1f cu ft a minute, %.0f s a strike",
                  1 / model.rods.rate.mean, model.oxygen.rate.mean * 60 / CUBIC_FOOT,
                  model.restrike.rate.mean);
  g_assert_cmpfloat (1 / model.rods.rate.mean, <, 42);
  g_assert_cmpfloat (1 / model.rods.rate.mean, >, 25);
  /* 24 cu ft a minute at the surface and 1.17 of it at depth, where the physics has nearly as
   * much; 4 to 22 % lost. */
  g_assert_cmpfloat_with_epsilon (model.oxygen.rate.mean * 60 / CUBIC_FOOT, 24 * 1.13, 24 * 0.05);
  g_assert_cmpuint (model.restrike.n_shifts, >, 20);
}

int
main (int argc, char **argv)
{
  static const struct
  {
    const char *name;
    void (*test) (Story *story, gconstpointer data);
  } tests[] = {
    { "/book/burn-history/samples", test_samples },
    { "/book/burn-history/taken-back", test_taken_back },
    { "/book/burn-history/set-aside", test_set_aside },
    { "/book/burn-history/set-aside-taken-back", test_set_aside_taken_back },
    { "/book/burn-history/set-aside-teaches-nothing", test_set_aside_teaches_nothing },
    { "/book/burn-history/nothing-to-set-aside", test_nothing_to_set_aside },
    { "/book/burn-history/shifts", test_shifts },
    { "/book/burn-history/unknown-bars", test_unknown_bars },
    { "/book/burn-history/empty", test_empty },
    { "/book/burn-history/demo", test_demo },
  };

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].name, Story, NULL, story_begin, tests[i].test, story_end);
  return g_test_run ();
}
