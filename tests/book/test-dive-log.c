/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A diver's day out of the record: which dives are his, how far back, and what they leave. */
#include "book-fixture.h"
#include "book/dive-log.h"

#define FOOT      0.3048
#define MINUTE    60.0
#define MINUTE_US (G_GINT64_CONSTANT (60) * G_USEC_PER_SEC)

typedef struct
{
  Story story;
  LbLedger *ledger;
  LbFold *fold;
  LbDiveLog *log;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  story_begin (&fixture->story, data);
}

static void
forget (Fixture *fixture)
{
  g_clear_pointer (&fixture->log, lb_dive_log_free);
  g_clear_pointer (&fixture->fold, lb_fold_free);
  g_clear_pointer (&fixture->ledger, lb_ledger_free);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  forget (fixture);
  story_end (&fixture->story, data);
}

/* A dive at 39 ft by pneumo, which is 40 by the table; times in minutes after the fixture's six in
 * the morning, negative for one that is not written down. Returns the act. */
static char *
dive_at (Fixture *fixture, const char *diver, double depth_m, int left, int bottom, int up)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_DIVE);
  g_autoptr (GError) error = NULL;
  char *act = NULL;

  draft.shift_id = fixture->story.shifts[0];
  draft.what = diver;
  draft.amount = depth_m;
  draft.start_us = left < 0 ? 0 : FIXTURE_US + left * MINUTE_US;
  draft.end_us = bottom < 0 ? 0 : FIXTURE_US + bottom * MINUTE_US;
  draft.up_us = up < 0 ? 0 : FIXTURE_US + up * MINUTE_US;
  lb_book_record (fixture->story.book, &draft, 1, &act, &error);
  g_assert_no_error (error);
  return act;
}

static void
dive (Fixture *fixture, const char *diver, int left, int bottom, int up)
{
  g_autofree char *act = dive_at (fixture, diver, 39 * FOOT, left, bottom, up);

  g_assert_nonnull (act);
}

static void
look (Fixture *fixture)
{
  forget (fixture);
  fixture->ledger = fixture_read (fixture->story.book);
  fixture->fold = lb_fold_new (fixture->ledger, G_MAXINT64);
  fixture->log = lb_dive_log_new (fixture->ledger, fixture->fold);
}

/* The dives in the order they were recorded. */
static const LbEntry *
nth_dive (Fixture *fixture, guint n)
{
  for (guint i = 0; i < fixture->ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (fixture->ledger, i);

    if (entry->kind == LB_ENTRY_DIVE && n-- == 0)
      return entry;
  }
  g_assert_not_reached ();
}

/* What @diver has @minutes after six, at 39 ft by pneumo. */
static LbDiveLeft
left_at (Fixture *fixture, const char *diver, int minutes)
{
  look (fixture);
  return lb_dive_log_left (fixture->log, diver, 39 * FOOT, FIXTURE_US + minutes * MINUTE_US);
}

static void
expect_open (Fixture *fixture, const char *diver, int minutes, double open_minutes)
{
  const LbDiveLeft left = left_at (fixture, diver, minutes);

  g_assert_cmpint (left.state, ==, LB_DIVE_LEFT_KNOWN);
  g_assert_cmpfloat (left.open_s, ==, open_minutes * MINUTE);
}

static void
expect_state (Fixture *fixture, const char *diver, int minutes, LbDiveLeftState state)
{
  g_assert_cmpint (left_at (fixture, diver, minutes).state, ==, state);
}

/* 40 fsw for 100 min, two hours up: 163 - 85 = 78 min by the tables of the U.S. Navy Diving Manual,
 * revision 7. */
static void
test_worked (Fixture *fixture, gconstpointer data)
{
  dive (fixture, "Diver 1", 0, 100, 102);
  expect_open (fixture, "  diver 1 ", 222, 78);
  g_assert_cmpint (left_at (fixture, "DIVER 1", 222).group, ==, 'I');
  expect_open (fixture, "Diver 2", 222, 163);
  expect_open (fixture, "", 222, 163);
}

static void
test_before_a_dive (Fixture *fixture, gconstpointer data)
{
  LbDiveLeft left;

  /* Written down in the wrong order. */
  dive (fixture, "diver 1", 222, 322, 324);
  dive (fixture, "Diver 1", 0, 100, 102);
  look (fixture);
  left = lb_dive_log_left_before (fixture->log, nth_dive (fixture, 0));
  g_assert_cmpfloat (left.open_s, ==, 78 * MINUTE);
  left = lb_dive_log_left_before (fixture->log, nth_dive (fixture, 1));
  g_assert_cmpfloat (left.open_s, ==, 163 * MINUTE);
  g_assert_true (lb_dive_log_last (fixture->log, "diver 1") == nth_dive (fixture, 0));
  /* 100 min where 78 were open. */
  expect_state (fixture, "diver 1", 500, LB_DIVE_LEFT_PAST_LIMIT);
}

static void
test_taken_back (Fixture *fixture, gconstpointer data)
{
  g_autofree char *act = dive_at (fixture, "diver 1", 39 * FOOT, 0, 100, 102);
  g_autofree char *back = NULL;

  expect_open (fixture, "diver 1", 222, 78);
  back = fixture_take_back (fixture->story.book, fixture->story.shifts[0], act);
  expect_open (fixture, "diver 1", 222, 163);
}

/* A dive past its limit is forgotten after 16 hours up, and not a minute before. */
static void
test_sixteen_hours (Fixture *fixture, gconstpointer data)
{
  dive (fixture, "diver 1", 0, 180, 190);
  expect_state (fixture, "diver 1", 190 + 16 * 60 - 1, LB_DIVE_LEFT_PAST_LIMIT);
  expect_open (fixture, "diver 1", 190 + 16 * 60, 163);

  /* With a dive in between, the first counts: the second began from it. */
  dive (fixture, "diver 1", 800, 810, 811);
  expect_state (fixture, "diver 1", 190 + 16 * 60, LB_DIVE_LEFT_PAST_LIMIT);
  expect_open (fixture, "diver 1", 811 + 16 * 60, 163);
}

static void
test_not_written (Fixture *fixture, gconstpointer data)
{
  dive (fixture, "no surface", 0, 100, -1);
  expect_state (fixture, "no surface", 222, LB_DIVE_LEFT_NOT_WRITTEN);
  dive (fixture, "no start", -1, 100, 102);
  expect_state (fixture, "no start", 222, LB_DIVE_LEFT_NOT_WRITTEN);
  /* At any hour of the shift, from its midnight to the noon after its night. */
  dive (fixture, "no time", -1, -1, -1);
  expect_state (fixture, "no time", 222, LB_DIVE_LEFT_NOT_WRITTEN);
  expect_state (fixture, "no time", (30 + 15) * 60, LB_DIVE_LEFT_NOT_WRITTEN);
  expect_open (fixture, "no time", (30 + 16) * 60, 163);
  expect_open (fixture, "no time", -7 * 60, 163);

  g_autofree char *act = dive_at (fixture, "no depth", (double) NAN, 0, 100, 102);
  expect_state (fixture, "no depth", 222, LB_DIVE_LEFT_NOT_WRITTEN);
}

/* Two entries of one dive, or two crews' divers by one name. */
static void
test_same_start (Fixture *fixture, gconstpointer data)
{
  dive (fixture, "diver 1", 0, 100, 102);
  dive (fixture, "diver 1", 0, 50, 52);
  look (fixture);
  for (guint i = 0; i < 2; i++)
    g_assert_cmpint (lb_dive_log_left_before (fixture->log, nth_dive (fixture, i)).state, ==,
                     LB_DIVE_LEFT_OUT_OF_ORDER);
  expect_state (fixture, "diver 1", 222, LB_DIVE_LEFT_OUT_OF_ORDER);
}

static void
test_own_table (Fixture *fixture, gconstpointer data)
{
  story_set (&fixture->story, LB_SETTING_DIVE_TABLE, "fsw,nostop\n40,100\n");
  dive (fixture, "diver 1", 0, 50, 52);
  expect_state (fixture, "diver 1", 222, LB_DIVE_LEFT_OWN_TABLE);
  expect_open (fixture, "diver 2", 222, 100);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name, function) \
  g_test_add ("/dive-log/" name, Fixture, NULL, set_up, function, tear_down)
  ADD ("worked", test_worked);
  ADD ("before-a-dive", test_before_a_dive);
  ADD ("taken-back", test_taken_back);
  ADD ("sixteen-hours", test_sixteen_hours);
  ADD ("not-written", test_not_written);
  ADD ("same-start", test_same_start);
  ADD ("own-table", test_own_table);

  return g_test_run ();
}
