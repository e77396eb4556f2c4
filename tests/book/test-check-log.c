/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which dive a check belongs to, what is said last of it, and what a dive is held against. */
#include "book-fixture.h"
#include "book/check-log.h"
#include "book/dive-accounts.h"
#include "book/gesture.h"

#include <locale.h>

#define FOOT      0.3048
#define MINUTE_US (G_GINT64_CONSTANT (60) * G_USEC_PER_SEC)

/* Minutes after the fixture's six in the morning. */
static gint64
at (int minutes)
{
  return FIXTURE_US + minutes * MINUTE_US;
}

static void
check_at (Story *story, int shift, const char *key, gboolean is_ticked, int said, gint64 dive_us)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_CHECK);

  draft.shift_id = story->shifts[shift];
  draft.pile_id = "test-3";
  draft.what = key;
  draft.amount = is_ticked ? 1 : 0;
  draft.at_us = at (said);
  draft.start_us = dive_us;
  story_record (story, &draft);
}

static void
dive_at (Story *story, int shift, const char *pile_id, int left)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_DIVE);

  draft.shift_id = story->shifts[shift];
  draft.pile_id = pile_id;
  draft.what = "diver 1";
  draft.amount = 39 * FOOT;
  draft.start_us = at (left);
  draft.end_us = at (left + 100);
  draft.up_us = at (left + 102);
  story_record (story, &draft);
}

typedef struct
{
  LbLedger *ledger;
  LbFold *fold;
  LbCheckLog *log;
} Reading;

static void
reading_clear (Reading *reading)
{
  lb_check_log_free (reading->log);
  lb_fold_free (reading->fold);
  lb_ledger_free (reading->ledger);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Reading, reading_clear)

static Reading
read_shift (Story *story, int shift)
{
  Reading reading = { .ledger = fixture_read (story->book) };

  reading.fold = lb_fold_new (reading.ledger, G_MAXINT64);
  reading.log = lb_check_log_new (reading.ledger, reading.fold, shift);
  return reading;
}

/* "gloves+ clamp-": keys as they were first said, ticked or not. */
static void
expect (GArray *checks, const char *said)
{
  g_autoptr (GArray) own = checks;
  g_autoptr (GString) words = g_string_new (NULL);

  for (guint i = 0; i < own->len; i++) {
    const LbCheck *check = &g_array_index (own, LbCheck, i);

    g_string_append_printf (words, "%s%s%s", i > 0 ? " " : "", check->key,
                            check->is_ticked ? "+" : "-");
  }
  g_assert_cmpstr (words->str, ==, said);
}

static void
expect_dive (const Reading *reading, guint n, const char *said)
{
  g_autoptr (GPtrArray) dives = lb_check_log_dives (reading->log, 0);

  g_assert_cmpuint (n, <, dives->len);
  expect (lb_check_log_of (reading->log, g_ptr_array_index (dives, n)), said);
}

/* The first dive that left after the check was said, whenever dives were written down. */
static void
test_next_dive (Story *story, gconstpointer data)
{
  check_at (story, 0, "gloves", TRUE, 5, 0);
  check_at (story, 0, "clamp", FALSE, 5, 0);
  {
    g_auto (Reading) reading = read_shift (story, 0);
    expect (lb_check_log_at (reading.log, 0, 0), "gloves+ clamp-");
    expect (lb_check_log_at (reading.log, 1, 0), "");
  }

  check_at (story, 0, "gloves", TRUE, 180, 0);
  dive_at (story, 0, "test-3", 200);
  dive_at (story, 0, "test-3", 10);
  dive_at (story, 0, "test-4", 6);
  check_at (story, 0, "clamp", TRUE, 320, 0);

  g_auto (Reading) reading = read_shift (story, 0);
  expect_dive (&reading, 0, "gloves+ clamp-");
  expect_dive (&reading, 1, "gloves+");
  expect (lb_check_log_at (reading.log, 0, 0), "clamp+");
}

/* Written up afterwards, a check names its dive; a dive that was corrected keeps it. */
static void
test_named_dive (Story *story, gconstpointer data)
{
  dive_at (story, 0, "test-3", 10);
  dive_at (story, 0, "test-3", 200);
  check_at (story, 0, "gloves", TRUE, 600, at (10));
  check_at (story, 0, "clamp", TRUE, 600, at (55));

  g_auto (Reading) reading = read_shift (story, 0);
  expect_dive (&reading, 0, "gloves+");
  expect_dive (&reading, 1, "");
  expect (lb_check_log_at (reading.log, 0, at (55)), "clamp+");
  expect (lb_check_log_at (reading.log, 0, 0), "");
}

static void
test_shifts_apart (Story *story, gconstpointer data)
{
  check_at (story, 0, "gloves", TRUE, 5, 0);
  dive_at (story, 1, "test-3", 1450);

  g_auto (Reading) reading = read_shift (story, 1);
  expect_dive (&reading, 0, "");
}

static void
test_last_word (Story *story, gconstpointer data)
{
  char *act = NULL;

  check_at (story, 0, "gloves", FALSE, 1, 0);
  check_at (story, 0, "a-key-of-a-later-table", TRUE, 1, 0);
  act = fixture_record (story->book, story->shifts[0], LB_ENTRY_CHECK, 0, "gloves", 1);
  {
    g_auto (Reading) reading = read_shift (story, 0);
    expect (lb_check_log_at (reading.log, 0, 0), "gloves+ a-key-of-a-later-table+");
  }
  g_free (fixture_take_back (story->book, story->shifts[0], act));
  g_free (act);

  g_auto (Reading) reading = read_shift (story, 0);
  expect (lb_check_log_at (reading.log, 0, 0), "gloves- a-key-of-a-later-table+");
}

/* Only what is new is said, and what was left open once. */
static void
test_gesture (Story *story, gconstpointer data)
{
  const LbCheck said[] = { { "gloves", TRUE }, { "clamp", FALSE }, { "strand", TRUE } };
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));

  check_at (story, 0, "gloves", TRUE, 1, 0);
  check_at (story, 0, "strand", FALSE, 1, 0);

  g_auto (Reading) reading = read_shift (story, 0);
  g_autoptr (GArray) known = lb_check_log_at (reading.log, 0, 0);

  lb_gesture_checks (drafts, reading.fold, 0, said, G_N_ELEMENTS (said), known, at (10));
  g_assert_cmpuint (drafts->len, ==, 2);
  g_assert_cmpstr (g_array_index (drafts, LbDraft, 0).what, ==, "clamp");
  g_assert_cmpfloat (g_array_index (drafts, LbDraft, 0).amount, ==, 0);
  g_assert_cmpstr (g_array_index (drafts, LbDraft, 1).what, ==, "strand");
  g_assert_cmpfloat (g_array_index (drafts, LbDraft, 1).amount, ==, 1);
  g_assert_cmpint (g_array_index (drafts, LbDraft, 1).start_us, ==, at (10));
}

static void
expect_refused (Story *story, const char *key, double amount)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_CHECK);

  draft.shift_id = story->shifts[0];
  draft.pile_id = "test-3";
  draft.what = key;
  draft.amount = amount;
  g_assert_false (lb_book_record (story->book, &draft, 1, NULL, NULL));
}

static void
test_refused (Story *story, gconstpointer data)
{
  expect_refused (story, "gloves", 0.5);
  expect_refused (story, "gloves", 2);
  expect_refused (story, "gloves", (double) NAN);
  expect_refused (story, "Gloves", 1);
  expect_refused (story, "two words", 1);
  expect_refused (story, "", 1);
}

/* 40 fsw for 100 min, two hours up: 163 - 85 = 78 min by the tables of the U.S. Navy Diving Manual,
 * revision 7. */
static void
test_accounts (Story *story, gconstpointer data)
{
  dive_at (story, 0, "test-3", 222);
  dive_at (story, 0, "test-3", 0);
  dive_at (story, 1, "test-3", 1440);

  g_auto (Reading) reading = read_shift (story, 0);
  g_autoptr (GArray) accounts = lb_dive_accounts_new (reading.ledger, reading.fold, FIXTURE_DAY);

  g_assert_cmpuint (accounts->len, ==, 2);
  const LbDiveAccount *first = &g_array_index (accounts, LbDiveAccount, 0);
  const LbDiveAccount *second = &g_array_index (accounts, LbDiveAccount, 1);

  g_assert_true (first->has_limit && second->has_limit);
  g_assert_cmpint (first->state, ==, LB_DIVE_LEFT_KNOWN);
  g_assert_cmpfloat (first->left.open_s, ==, 163 * 60);
  g_assert_cmpint (second->state, ==, LB_DIVE_LEFT_PAST_LIMIT);
  g_assert_cmpfloat (second->left.open_s, ==, 78 * 60);
  g_assert_cmpfloat (second->bottom_s, ==, 100 * 60);
}

/* Where earlier dives cannot be counted the bare limit is left, and the reason. */
static void
test_bare_limit (Story *story, gconstpointer data)
{
  story_set (story, LB_SETTING_DIVE_TABLE, "fsw,nostop\n40,110\n");
  dive_at (story, 0, "test-3", 0);
  dive_at (story, 0, "test-3", 222);

  g_auto (Reading) reading = read_shift (story, 0);
  g_autoptr (GArray) accounts = lb_dive_accounts_new (reading.ledger, reading.fold, FIXTURE_DAY);
  const LbDiveAccount *second = &g_array_index (accounts, LbDiveAccount, 1);

  g_assert_true (second->has_limit);
  g_assert_cmpint (second->state, ==, LB_DIVE_LEFT_OWN_TABLE);
  g_assert_cmpfloat (second->left.limit_s, ==, 110 * 60);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  setlocale (LC_ALL, "");

#define ADD(name, function) \
  g_test_add ("/check-log/" name, Story, NULL, story_begin, function, story_end)
  ADD ("next-dive", test_next_dive);
  ADD ("named-dive", test_named_dive);
  ADD ("shifts-apart", test_shifts_apart);
  ADD ("last-word", test_last_word);
  ADD ("gesture", test_gesture);
  ADD ("refused", test_refused);
  ADD ("accounts", test_accounts);
  ADD ("bare-limit", test_bare_limit);

  return g_test_run ();
}
