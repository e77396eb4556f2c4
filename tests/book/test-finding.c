/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What in a record does not fit together: each kind raised, not raised, and answered. A finding that
 * is raised is looked for three ways, of the job, of its shift and of its pile, and is the same. */
#include "book-fixture.h"
#include "book/finding.h"
#include "book/gesture.h"
#include "book/seal.h"
#include "trade/cut-plan.h"

#include <math.h>

#define FOOT      0.3048
#define MINUTE    60.0
#define MINUTE_US (G_GINT64_CONSTANT (60) * G_USEC_PER_SEC)
#define DAY_US    (24 * 60 * MINUTE_US)

typedef struct
{
  Story story;
  LbLedger *ledger;
  LbFold *fold;
  GArray *findings;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  story_begin (&fixture->story, data);
}

static void
forget (Fixture *fixture)
{
  g_clear_pointer (&fixture->findings, g_array_unref);
  g_clear_pointer (&fixture->fold, lb_fold_free);
  g_clear_pointer (&fixture->ledger, lb_ledger_free);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  forget (fixture);
  story_end (&fixture->story, data);
}

static void
look (Fixture *fixture)
{
  forget (fixture);
  fixture->ledger = fixture_read (fixture->story.book);
  fixture->fold = lb_fold_new (fixture->ledger, G_MAXINT64);
  fixture->findings = lb_findings_new (fixture->ledger, fixture->fold);
}

/* What is said of a pile; steps by name. */
static void
step (Fixture *fixture, int shift, int pile, const char *name)
{
  g_free (fixture_record (fixture->story.book, fixture->story.shifts[shift], LB_ENTRY_STEP, pile,
                          name, (double) NAN));
}

/* A dive at 39 ft by pneumo, 40 by the table, at minutes after six of the shift's day; less than 0 for
 * not written down. */
static void
dive (Fixture *fixture, int shift, const char *diver, int left, int bottom, int up)
{
  const gint64 six_us = FIXTURE_US + shift * DAY_US;
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_DIVE);

  draft.shift_id = fixture->story.shifts[shift];
  draft.what = diver;
  draft.amount = 39 * FOOT;
  draft.start_us = left < 0 ? 0 : six_us + left * MINUTE_US;
  draft.end_us = bottom < 0 ? 0 : six_us + bottom * MINUTE_US;
  draft.up_us = up < 0 ? 0 : six_us + up * MINUTE_US;
  story_record (&fixture->story, &draft);
}

static void
hours (Fixture *fixture, int shift, int begin, int end)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_HOURS);

  draft.shift_id = fixture->story.shifts[shift];
  draft.start_us = FIXTURE_US + shift * DAY_US + begin * MINUTE_US;
  draft.end_us = FIXTURE_US + shift * DAY_US + end * MINUTE_US;
  story_record (&fixture->story, &draft);
}

static void
delay (Fixture *fixture, int shift, double minutes)
{
  g_free (fixture_record (fixture->story.book, fixture->story.shifts[shift], LB_ENTRY_DELAY, -1,
                          "weather", minutes * MINUTE));
}

static void
trigger (Fixture *fixture, int shift, int pile, double minutes)
{
  story_tell (&fixture->story, shift, pile, LB_ENTRY_BURN_TIME, minutes * MINUTE);
}

/* A bar found gone. */
static void
gone (Fixture *fixture, int shift, int pile, LbBarSet bars)
{
  g_autofree char *id = g_strdup_printf ("test-%d", pile + 3);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_GONE);

  draft.shift_id = fixture->story.shifts[shift];
  draft.pile_id = id;
  draft.bars = bars;
  story_record (&fixture->story, &draft);
}

static guint
count (const GArray *findings, LbFindingKind kind)
{
  guint n = 0;

  for (guint i = 0; i < findings->len; i++)
    n += g_array_index (findings, LbFinding, i).kind == kind ? 1 : 0;
  return n;
}

/* The first of that kind; there is one. */
static const LbFinding *
get (const GArray *findings, LbFindingKind kind)
{
  for (guint i = 0; i < findings->len; i++) {
    const LbFinding *finding = &g_array_index (findings, LbFinding, i);

    if (finding->kind == kind)
      return finding;
  }
  g_error ("no finding “%s”", lb_finding_kind_name (kind));
}

static const char *
answer_of (const LbFinding *finding)
{
  return finding->answer != NULL ? finding->answer->note : NULL;
}

/* Nothing of that kind. */
static void
expect_none (Fixture *fixture, LbFindingKind kind)
{
  look (fixture);
  g_assert_cmpuint (count (fixture->findings, kind), ==, 0);
}

static void
expect_same (const LbFinding *finding, GArray *found)
{
  const LbFinding *same = lb_findings_find (found, finding->key);

  if (same == NULL)
    g_error ("“%s” was not found", finding->key);
  g_assert_cmpint (same->kind, ==, finding->kind);
  g_assert_cmpint (same->shift, ==, finding->shift);
  g_assert_cmpint (same->pile, ==, finding->pile);
  g_assert_true (same->bars == finding->bars && same->n_bars == finding->n_bars);
  g_assert_true (same->entries[0] == finding->entries[0]);
  g_assert_true (same->entries[1] == finding->entries[1]);
  g_array_unref (found);
}

static void
record_answer (Fixture *fixture, const LbFinding *finding, const char *reason)
{
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));

  lb_gesture_answer (drafts, fixture->ledger, finding, reason);
  g_assert_cmpuint (drafts->len, ==, 1);
  story_record (&fixture->story, &g_array_index (drafts, LbDraft, 0));
}

/* One finding of that kind, in that shift (-1 for the job); answered, it is open no more. Returns it as
 * it was answered. */
static const LbFinding *
expect_answered (Fixture *fixture, LbFindingKind kind, int shift)
{
  const LbFinding *finding;

  look (fixture);
  g_assert_cmpuint (count (fixture->findings, kind), ==, 1);
  finding = get (fixture->findings, kind);
  g_assert_cmpint (finding->shift, ==, shift);
  g_assert_null (answer_of (finding));
  g_assert_cmpuint (strlen (finding->key), <=, 200);
  expect_same (finding, lb_findings_new_of_shift (fixture->ledger, fixture->fold, shift));
  if (finding->pile >= 0)
    expect_same (finding, lb_findings_new_of_pile (fixture->ledger, fixture->fold, finding->pile));

  const guint n_open = lb_findings_open (fixture->findings, shift);
  record_answer (fixture, finding, "so it was");
  look (fixture);
  finding = get (fixture->findings, kind);
  g_assert_cmpstr (answer_of (finding), ==, "so it was");
  g_assert_cmpuint (lb_findings_open (fixture->findings, shift), ==, n_open - 1);
  return finding;
}

/* Somebody named, and a condition: what the record of a dive must say. */
static void
say (Fixture *fixture, int shift, LbEntryKind kind, const char *what, const char *note)
{
  LbDraft draft = LB_DRAFT_INIT (kind);

  draft.shift_id = fixture->story.shifts[shift];
  draft.what = what;
  draft.note = note;
  story_record (&fixture->story, &draft);
}

static void
say_all (Fixture *fixture, int shift)
{
  say (fixture, shift, LB_ENTRY_CREW, LB_CHARGE_SUPERVISOR, "DS");
  say (fixture, shift, LB_ENTRY_CREW, LB_CHARGE_IN_CHARGE, "PIC");
  say (fixture, shift, LB_ENTRY_CREW, LB_CHARGE_TENDERS, "T1");
  say (fixture, shift, LB_ENTRY_CONDITION, "wind", "calm");
  say (fixture, shift, LB_ENTRY_CONDITION, "current", "slack");
  say (fixture, shift, LB_ENTRY_CONDITION, "water temperature", "52 °F");
  say (fixture, shift, LB_ENTRY_CONDITION, "visibility", "2 ft");
}

/* A dive with all that it says itself. */
static void
dive_whole (Fixture *fixture, int shift)
{
  const gint64 six_us = FIXTURE_US + shift * DAY_US;
  g_autoptr (GError) error = NULL;
  LbDraft drafts[3] = { LB_DRAFT_INIT (LB_ENTRY_DIVE), LB_DRAFT_INIT (LB_ENTRY_DETAIL),
                        LB_DRAFT_INIT (LB_ENTRY_DETAIL) };

  drafts[0].what = "diver 1";
  drafts[0].amount = 39 * FOOT;
  drafts[0].start_us = six_us + 10 * MINUTE_US;
  drafts[0].end_us = six_us + 70 * MINUTE_US;
  drafts[0].up_us = six_us + 72 * MINUTE_US;
  drafts[1].what = LB_DETAIL_MODE;
  drafts[1].note = "surface-supplied air";
  drafts[2].what = LB_DETAIL_WORK;
  drafts[2].note = "burning";
  for (guint i = 0; i < G_N_ELEMENTS (drafts); i++)
    drafts[i].shift_id = fixture->story.shifts[shift];
  lb_book_record (fixture->story.book, drafts, G_N_ELEMENTS (drafts), NULL, &error);
  g_assert_no_error (error);
}

static void
test_record_gaps (Fixture *fixture, gconstpointer data)
{
  say_all (fixture, 0);
  expect_none (fixture, LB_FINDING_RECORD_GAPS);
  dive_whole (fixture, 0);
  expect_none (fixture, LB_FINDING_RECORD_GAPS);
  /* What was said is taken away again, and a dive says less than it should. */
  say (fixture, 0, LB_ENTRY_CREW, LB_CHARGE_SUPERVISOR, "");
  dive (fixture, 0, "diver 2", 10, 70, 72);
  g_assert_cmphex (expect_answered (fixture, LB_FINDING_RECORD_GAPS, 0)->gaps, ==,
                   1u << LB_GAP_SUPERVISOR | 1u << LB_GAP_MODE | 1u << LB_GAP_WORK);
}

static void
test_nothing (Fixture *fixture, gconstpointer data)
{
  hours (fixture, 0, 0, 600);
  say_all (fixture, 0);
  dive_whole (fixture, 0);
  trigger (fixture, 0, 0, 40);
  story_burn (&fixture->story, 0, 0, 0x03, 0);
  delay (fixture, 0, 30);
  look (fixture);
  g_assert_cmpuint (fixture->findings->len, ==, 0);
}

static void
test_bars_left (Fixture *fixture, gconstpointer data)
{
  story_burn (&fixture->story, 0, 0, 0x1f, 0);
  step (fixture, 0, 0, "rigged");
  step (fixture, 0, 0, "severed");
  g_assert_cmpuint (expect_answered (fixture, LB_FINDING_BARS_LEFT, 0)->n_bars, ==, 3);
  story_burn (&fixture->story, 1, 0, 0xe0, 0);
  expect_none (fixture, LB_FINDING_BARS_LEFT);
}

static void
test_pulled_uncut (Fixture *fixture, gconstpointer data)
{
  step (fixture, 1, 2, "pulled");
  g_assert_cmpint (expect_answered (fixture, LB_FINDING_PULLED_UNCUT, 1)->pile, ==, 2);
  story_tell (&fixture->story, 2, 2, LB_ENTRY_DRAWN, (double) NAN);
  expect_none (fixture, LB_FINDING_PULLED_UNCUT);
}

/* How many bars of a pile that nobody touched may go before the hook must hold. */
static guint
free_bars (Fixture *fixture, int pile)
{
  const LbCutBasis basis = lb_cut_basis (&fixture->fold->assumptions);
  LbCutPlan plan;

  lb_cut_plan_reckon (&fixture->fold->piles[pile], 0, 0, 0, &basis, &plan);
  g_assert_cmpfloat (plan.figures[LB_FIGURE_RIG_BEFORE].range.likely, >=, 2);
  return (guint) plan.figures[LB_FIGURE_RIG_BEFORE].range.likely - 1;
}

static void
test_not_rigged (Fixture *fixture, gconstpointer data)
{
  look (fixture);

  const guint n_free = free_bars (fixture, 0);

  story_burn (&fixture->story, 0, 0, 0, n_free);
  expect_none (fixture, LB_FINDING_NOT_RIGGED);
  story_burn (&fixture->story, 0, 0, 0, 1);
  /* On the hook in the same shift: held. */
  story_burn (&fixture->story, 0, 1, 0xff, 0);
  step (fixture, 0, 1, "rigged");
  step (fixture, 0, 1, "severed");
  /* And pulled in it: held too. */
  story_burn (&fixture->story, 0, 2, 0xff, 0);
  step (fixture, 0, 2, "severed");
  step (fixture, 0, 2, "pulled");
  /* More of it, and the hook a shift later, say nothing new. */
  story_burn (&fixture->story, 1, 0, 0, 1);
  step (fixture, 1, 0, "rigged");

  const LbFinding *finding = expect_answered (fixture, LB_FINDING_NOT_RIGGED, 0);

  g_assert_cmpint (finding->pile, ==, 0);
  g_assert_cmpuint (finding->n_bars, ==, n_free + 1);
  g_assert_cmpuint (finding->n_bars_most, ==, n_free);
}

/* Severed in a shift, and on no hook before the next. */
static void
test_severed_not_rigged (Fixture *fixture, gconstpointer data)
{
  gone (fixture, 0, 3, 0x01);
  story_burn (&fixture->story, 1, 3, 0xfe, 0);
  step (fixture, 1, 3, "severed");
  step (fixture, 2, 3, "rigged");
  g_assert_cmpint (expect_answered (fixture, LB_FINDING_NOT_RIGGED, 1)->pile, ==, 3);
}

static void
test_more_bars (Fixture *fixture, gconstpointer data)
{
  step (fixture, 0, 0, "rigged");
  story_burn (&fixture->story, 0, 0, 0x0f, 0);
  story_burn (&fixture->story, 1, 0, 0, 4);
  expect_none (fixture, LB_FINDING_MORE_BARS);
  story_burn (&fixture->story, 2, 0, 0, 2);

  const LbFinding *finding = expect_answered (fixture, LB_FINDING_MORE_BARS, 2);

  g_assert_cmpuint (finding->n_bars, ==, 10);
  g_assert_cmpuint (finding->n_bars_most, ==, 8);
}

static void
test_bars_twice (Fixture *fixture, gconstpointer data)
{
  story_burn (&fixture->story, 0, 0, 0x03, 0);
  story_burn (&fixture->story, 0, 0, 0x0c, 0);
  expect_none (fixture, LB_FINDING_BARS_TWICE);
  story_burn (&fixture->story, 0, 0, 0x06, 0);
  g_assert_true (expect_answered (fixture, LB_FINDING_BARS_TWICE, 0)->bars == 0x06);
}

static void
test_gone_and_burned (Fixture *fixture, gconstpointer data)
{
  gone (fixture, 0, 0, 0x03);
  story_burn (&fixture->story, 0, 0, 0x04, 0);
  gone (fixture, 1, 0, 0x01);
  expect_none (fixture, LB_FINDING_GONE_AND_BURNED);
  story_burn (&fixture->story, 1, 0, 0x0b, 0);

  const LbFinding *finding = expect_answered (fixture, LB_FINDING_GONE_AND_BURNED, 1);

  g_assert_true (finding->bars == 0x03);
  g_assert_cmpint (finding->entries[0]->kind, ==, LB_ENTRY_GONE);
  g_assert_cmpint (finding->entries[1]->kind, ==, LB_ENTRY_BARS);
}

static void
test_two_crews (Fixture *fixture, gconstpointer data)
{
  step (fixture, 0, 0, "cleaned");
  story_burn (&fixture->story, 0, 0, 0x03, 0);
  story_burn (&fixture->story, 1, 0, 0x04, 0);
  expect_none (fixture, LB_FINDING_TWO_CREWS);
  step (fixture, 1, 0, "cleaned");
  story_burn (&fixture->story, 1, 0, 0x01, 0);

  const LbFinding *finding = expect_answered (fixture, LB_FINDING_TWO_CREWS, 1);

  g_assert_true (finding->bars == 0x01);
  g_assert_cmpuint (finding->steps, ==, LB_STEP_BIT (LB_STEP_CLEANED));
  g_assert_cmpint (finding->entries[0]->shift, ==, 0);
}

/* A stub is a new cut: its steps and bars come again. */
static void
test_stub (Fixture *fixture, gconstpointer data)
{
  step (fixture, 0, 0, "rigged");
  story_burn (&fixture->story, 0, 0, 0xff, 0);
  step (fixture, 0, 0, "severed");
  step (fixture, 0, 0, "pulled");
  story_tell (&fixture->story, 1, 0, LB_ENTRY_BROKEN, -8);
  step (fixture, 2, 0, "rigged");
  story_burn (&fixture->story, 2, 0, 0xff, 0);
  step (fixture, 2, 0, "severed");
  look (fixture);
  g_assert_cmpuint (fixture->findings->len, ==, 0);
}

static void
test_overlap (Fixture *fixture, gconstpointer data)
{
  dive (fixture, 0, "diver 1", 0, 40, 42);
  dive (fixture, 0, "diver 2", 20, 60, 62);
  dive (fixture, 0, "diver 1", 42, 80, 82);
  dive (fixture, 0, "diver 1", -1, 100, 102);
  expect_none (fixture, LB_FINDING_DIVES_OVERLAP);
  dive (fixture, 0, " Diver 2 ", 50, 90, 92);

  const LbFinding *finding = expect_answered (fixture, LB_FINDING_DIVES_OVERLAP, 0);

  g_assert_cmpfloat (finding->time_s, ==, 12 * MINUTE);
  g_assert_cmpstr (finding->entries[0]->what, ==, "diver 2");
  g_assert_cmpstr (finding->entries[1]->what, ==, " Diver 2 ");
}

/* 40 fsw: 163 min (U.S. Navy Diving Manual, revision 7, table 9-7). */
static void
test_past_limit (Fixture *fixture, gconstpointer data)
{
  dive (fixture, 0, "diver 1", 0, 163, 165);
  expect_none (fixture, LB_FINDING_PAST_LIMIT);
  dive (fixture, 1, "diver 1", 0, 164, 166);

  const LbFinding *finding = expect_answered (fixture, LB_FINDING_PAST_LIMIT, 1);

  g_assert_cmpfloat (finding->time_s, ==, 164 * MINUTE);
  g_assert_cmpfloat (finding->most_s, ==, 163 * MINUTE);
}

static void
test_outside_hours (Fixture *fixture, gconstpointer data)
{
  dive (fixture, 0, "diver 1", 0, 40, 42);
  hours (fixture, 0, 0, 41);
  hours (fixture, 0, 0, 42);
  expect_none (fixture, LB_FINDING_OUTSIDE_HOURS);
  dive (fixture, 0, "diver 2", -5, 30, 45);
  g_assert_cmpfloat (expect_answered (fixture, LB_FINDING_OUTSIDE_HOURS, 0)->time_s, ==,
                     3 * MINUTE);
}

static void
test_no_dive (Fixture *fixture, gconstpointer data)
{
  trigger (fixture, 0, 0, 20);
  expect_answered (fixture, LB_FINDING_NO_DIVE, 0);
  dive (fixture, 0, "diver 1", 0, 20, 22);
  expect_none (fixture, LB_FINDING_NO_DIVE);
  expect_none (fixture, LB_FINDING_BURNED_LONGER);
}

static void
test_burned_longer (Fixture *fixture, gconstpointer data)
{
  dive (fixture, 0, "diver 1", 0, 20, 22);
  trigger (fixture, 0, 0, 21);
  expect_answered (fixture, LB_FINDING_BURNED_LONGER, 0);
  /* A dive whose times are not written down may have been long enough. */
  dive (fixture, 0, "diver 1", -1, -1, -1);
  expect_none (fixture, LB_FINDING_BURNED_LONGER);
}

/* Where the cut is dry nobody dives. */
static void
test_dry (Fixture *fixture, gconstpointer data)
{
  story_set (&fixture->story, "assume.water-level", "-30");
  trigger (fixture, 0, 0, 21);
  look (fixture);
  g_assert_cmpuint (fixture->findings->len, ==, 0);
}

static void
test_lost_longer (Fixture *fixture, gconstpointer data)
{
  hours (fixture, 0, 0, 120);
  delay (fixture, 0, 120);
  expect_none (fixture, LB_FINDING_LOST_LONGER);
  delay (fixture, 0, 1);

  const LbFinding *finding = expect_answered (fixture, LB_FINDING_LOST_LONGER, 0);

  g_assert_cmpfloat (finding->time_s, ==, 121 * MINUTE);
  g_assert_cmpfloat (finding->most_s, ==, 120 * MINUTE);
}

static void
test_no_hours (Fixture *fixture, gconstpointer data)
{
  delay (fixture, 1, 30);
  expect_answered (fixture, LB_FINDING_NO_HOURS, 1);
  hours (fixture, 1, 0, 600);
  expect_none (fixture, LB_FINDING_NO_HOURS);
}

/* No program lets two piles have one mark, but two files that are joined may. */
static void
test_same_mark (Fixture *fixture, gconstpointer data)
{
  expect_none (fixture, LB_FINDING_SAME_MARK);
  ((LbPile *) (gpointer) fixture->ledger->piles->data)[2].mark = "p 1";
  g_clear_pointer (&fixture->findings, g_array_unref);
  g_clear_pointer (&fixture->fold, lb_fold_free);
  fixture->fold = lb_fold_new (fixture->ledger, G_MAXINT64);
  fixture->findings = lb_findings_new (fixture->ledger, fixture->fold);
  g_assert_cmpuint (lb_findings_open (fixture->findings, -1), ==, 1);

  const LbFinding *finding = get (fixture->findings, LB_FINDING_SAME_MARK);

  g_assert_cmpint (finding->pile, ==, 2);
  g_assert_cmpint (finding->other_pile, ==, 0);
  expect_same (finding, lb_findings_new_of_shift (fixture->ledger, fixture->fold, 0));
  expect_same (finding, lb_findings_new_of_shift (fixture->ledger, fixture->fold, -1));
  expect_same (finding, lb_findings_new_of_pile (fixture->ledger, fixture->fold, 0));
  record_answer (fixture, finding, "one of them is out");
}

static void
sign (Fixture *fixture, int shift)
{
  g_autoptr (LbLedger) ledger = fixture_read (fixture->story.book);
  g_autoptr (GError) error = NULL;

  g_assert_true (
    lb_book_sign (fixture->story.book, ledger, fixture->story.shifts[shift], "DS", &error));
  g_assert_no_error (error);
}

/* A correction says itself why it came later, and what another shift's signature covers is no matter of
 * this one's. */
static void
test_signed (Fixture *fixture, gconstpointer data)
{
  LbDraft drafts[2] = { LB_DRAFT_INIT (LB_ENTRY_CORRECTION), LB_DRAFT_INIT (LB_ENTRY_STEP) };
  g_autoptr (GError) error = NULL;

  step (fixture, 0, 0, "cleaned");
  sign (fixture, 0);
  for (guint i = 0; i < G_N_ELEMENTS (drafts); i++)
    drafts[i].shift_id = fixture->story.shifts[0];
  drafts[0].note = "forgotten";
  drafts[1].pile_id = "test-4";
  drafts[1].what = "cleaned";
  lb_book_record (fixture->story.book, drafts, G_N_ELEMENTS (drafts), NULL, &error);
  g_assert_no_error (error);
  sign (fixture, 1);
  expect_none (fixture, LB_FINDING_AFTER_SIGNING);
}

/* What another file brings into the shift after it was signed here, though it was recorded before. */
static void
test_after_signing (Fixture *fixture, gconstpointer data)
{
  LbEntry *entry;

  sign (fixture, 0);
  step (fixture, 1, 0, "cleaned");
  look (fixture);
  entry = (LbEntry *) lb_ledger_entry (fixture->ledger, fixture->ledger->entries->len - 1);
  g_assert_cmpint (entry->kind, ==, LB_ENTRY_STEP);
  entry->shift = 0;
  entry->at_us = FIXTURE_US;
  g_array_unref (fixture->findings);
  fixture->findings = lb_findings_new (fixture->ledger, fixture->fold);

  const LbFinding *finding = get (fixture->findings, LB_FINDING_AFTER_SIGNING);

  g_assert_true (finding->is_signed && finding->entries[0] == entry);
  /* Which leaves the signed shift as it is. */
  record_answer (fixture, finding, "the other crew’s laptop came late");
}

static void
take_answer_back (Fixture *fixture, const LbFinding *finding)
{
  if (finding->answer == NULL)
    g_error ("“%s” was not answered", finding->key);
  g_free (fixture_take_back (fixture->story.book, fixture->story.shifts[0], finding->answer->act));
  look (fixture);
}

/* The last answer counts; one that is taken back does not. */
static void
test_answers (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));
  const LbFinding *finding;

  delay (fixture, 0, 30);
  expect_answered (fixture, LB_FINDING_NO_HOURS, 0);
  finding = get (fixture->findings, LB_FINDING_NO_HOURS);
  lb_gesture_answer (drafts, fixture->ledger, finding, "so it was");
  g_assert_cmpuint (drafts->len, ==, 0);
  record_answer (fixture, finding, "the clerk was ill");
  look (fixture);
  finding = get (fixture->findings, LB_FINDING_NO_HOURS);
  g_assert_cmpstr (answer_of (finding), ==, "the clerk was ill");
  take_answer_back (fixture, finding);
  finding = get (fixture->findings, LB_FINDING_NO_HOURS);
  g_assert_cmpstr (answer_of (finding), ==, "so it was");
  take_answer_back (fixture, finding);
  finding = get (fixture->findings, LB_FINDING_NO_HOURS);
  g_assert_null (answer_of (finding));
  g_assert_cmpuint (lb_findings_open (fixture->findings, 0), ==, 1);
}

static void
test_names (void)
{
  g_autoptr (GHashTable) names = g_hash_table_new (g_str_hash, g_str_equal);

  for (int kind = 0; kind < LB_N_FINDING_KINDS; kind++)
    g_assert_true (
      g_hash_table_add (names, (gpointer) lb_finding_kind_name ((LbFindingKind) kind)));
}

#define ADD(path, test) g_test_add (path, Fixture, NULL, set_up, test, tear_down)

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/finding/names", test_names);
  ADD ("/finding/nothing", test_nothing);
  ADD ("/finding/bars-left", test_bars_left);
  ADD ("/finding/pulled-uncut", test_pulled_uncut);
  ADD ("/finding/not-rigged", test_not_rigged);
  ADD ("/finding/severed-not-rigged", test_severed_not_rigged);
  ADD ("/finding/more-bars", test_more_bars);
  ADD ("/finding/bars-twice", test_bars_twice);
  ADD ("/finding/gone-and-burned", test_gone_and_burned);
  ADD ("/finding/two-crews", test_two_crews);
  ADD ("/finding/stub", test_stub);
  ADD ("/finding/overlap", test_overlap);
  ADD ("/finding/past-limit", test_past_limit);
  ADD ("/finding/outside-hours", test_outside_hours);
  ADD ("/finding/no-dive", test_no_dive);
  ADD ("/finding/burned-longer", test_burned_longer);
  ADD ("/finding/dry", test_dry);
  ADD ("/finding/lost-longer", test_lost_longer);
  ADD ("/finding/no-hours", test_no_hours);
  ADD ("/finding/record-gaps", test_record_gaps);
  ADD ("/finding/signed", test_signed);
  ADD ("/finding/after-signing", test_after_signing);
  ADD ("/finding/same-mark", test_same_mark);
  ADD ("/finding/answers", test_answers);
  return g_test_run ();
}
