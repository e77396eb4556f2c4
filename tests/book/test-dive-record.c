/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the regulations ask of a dive's record, and which of it is not there. */
#include "book-fixture.h"
#include "book/dive-record.h"

#define MINUTE_US (G_GINT64_CONSTANT (60) * G_USEC_PER_SEC)

typedef struct
{
  LbLedger *ledger;
  LbFold *fold;
  GArray *gaps;
} Reading;

static void
reading_clear (Reading *reading)
{
  g_array_unref (reading->gaps);
  lb_fold_free (reading->fold);
  lb_ledger_free (reading->ledger);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Reading, reading_clear)

static void
read_story (Story *story, Reading *out)
{
  out->ledger = fixture_read (story->book);
  out->fold = lb_fold_new (out->ledger, G_MAXINT64);
  out->gaps = lb_dive_record_gaps (out->ledger, out->fold, 0);
}

static gboolean
has_gap (const Reading *reading, LbRecordGapKind kind)
{
  for (guint i = 0; i < reading->gaps->len; i++)
    if (g_array_index (reading->gaps, LbRecordGap, i).kind == kind)
      return TRUE;
  return FALSE;
}

static void
say (Story *story, LbEntryKind kind, const char *what, const char *note)
{
  LbDraft draft = LB_DRAFT_INIT (kind);

  draft.shift_id = story->shifts[0];
  draft.what = what;
  draft.note = note;
  story_record (story, &draft);
}

/* A dive with the details of @n pairs, as one act. */
static void
dive (Story *story, gboolean is_whole, const char *const details[][2], gsize n)
{
  LbDraft drafts[8];
  g_autoptr (GError) error = NULL;

  g_assert_cmpuint (n, <, G_N_ELEMENTS (drafts));
  drafts[0] = LB_DRAFT_INIT (LB_ENTRY_DIVE);
  drafts[0].what = "diver 1";
  if (is_whole) {
    drafts[0].amount = 11;
    drafts[0].start_us = FIXTURE_US;
    drafts[0].end_us = FIXTURE_US + 40 * MINUTE_US;
  }
  for (gsize i = 0; i < n; i++) {
    drafts[i + 1] = LB_DRAFT_INIT (LB_ENTRY_DETAIL);
    drafts[i + 1].what = details[i][0];
    drafts[i + 1].note = details[i][1];
  }
  for (gsize i = 0; i <= n; i++)
    drafts[i].shift_id = story->shifts[0];
  g_assert_true (lb_book_record (story->book, drafts, n + 1, NULL, &error));
  g_assert_no_error (error);
}

static void
test_no_dive_no_gap (Story *story, gconstpointer data)
{
  g_auto (Reading) reading = { 0 };

  story_tell (story, 0, -1, LB_ENTRY_RODS, 3);
  read_story (story, &reading);
  g_assert_cmpuint (reading.gaps->len, ==, 0);
}

static void
test_bare_dive (Story *story, gconstpointer data)
{
  g_auto (Reading) reading = { 0 };

  dive (story, FALSE, NULL, 0);
  read_story (story, &reading);
  for (int kind = 0; kind < LB_N_RECORD_GAPS; kind++)
    g_assert_cmpint (has_gap (&reading, (LbRecordGapKind) kind), ==, kind != LB_GAP_BOTTOM_TIME);
  /* Those of the shift come first and belong to no dive. */
  g_assert_null (g_array_index (reading.gaps, LbRecordGap, 0).dive);
  g_assert_cmpstr (g_array_index (reading.gaps, LbRecordGap, reading.gaps->len - 1).dive->what, ==,
                   "diver 1");
}

/* All that is asked: then nothing is missing, and what is taken away is missed again. */
static void
test_whole (Story *story, gconstpointer data)
{
  const char *const details[][2] = { { LB_DETAIL_MODE, "surface-supplied air" },
                                     { LB_DETAIL_VISIBILITY, "3 ft" },
                                     { LB_DETAIL_WORK, "burning bars" } };

  dive (story, TRUE, details, G_N_ELEMENTS (details));
  say (story, LB_ENTRY_CREW, LB_CHARGE_SUPERVISOR, "superintendent");
  say (story, LB_ENTRY_CREW, LB_CHARGE_IN_CHARGE, "superintendent");
  say (story, LB_ENTRY_CREW, LB_CHARGE_TENDERS, "tender 1");
  say (story, LB_ENTRY_CONDITION, "wind", "SW 10 kn");
  say (story, LB_ENTRY_CONDITION, "water temperature", "54 °F");
  say (story, LB_ENTRY_CONDITION, "current", "none");
  {
    g_auto (Reading) reading = { 0 };

    read_story (story, &reading);
    g_assert_cmpuint (reading.gaps->len, ==, 0);
    g_assert_cmpstr (lb_charge_holder (reading.ledger, reading.fold, 0, LB_CHARGE_TENDERS), ==,
                     "tender 1");
    g_assert_cmpstr (lb_condition_said (reading.ledger, reading.fold, 0, "tide"), ==, "");
    g_assert_cmpstr (lb_charge_holder (reading.ledger, reading.fold, 1, LB_CHARGE_TENDERS), ==, "");
  }

  /* Said last counts: nobody. */
  say (story, LB_ENTRY_CREW, LB_CHARGE_SUPERVISOR, "");
  dive (story, TRUE, details, 1);

  g_auto (Reading) reading = { 0 };

  read_story (story, &reading);
  g_assert_cmpuint (reading.gaps->len, ==, 3);
  g_assert_true (has_gap (&reading, LB_GAP_SUPERVISOR));
  g_assert_true (has_gap (&reading, LB_GAP_VISIBILITY));
  g_assert_true (has_gap (&reading, LB_GAP_WORK));
}

/* The shift's visibility is every dive's that says none of its own; a time that is open is named. */
static void
test_shift_says_it_for_its_dives (Story *story, gconstpointer data)
{
  g_auto (Reading) reading = { 0 };
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_DIVE);

  draft.shift_id = story->shifts[0];
  draft.what = "diver 2";
  draft.start_us = FIXTURE_US;
  story_record (story, &draft);
  say (story, LB_ENTRY_CONDITION, "visibility", "none");
  read_story (story, &reading);
  g_assert_false (has_gap (&reading, LB_GAP_VISIBILITY));
  g_assert_false (has_gap (&reading, LB_GAP_TIME));
  g_assert_true (has_gap (&reading, LB_GAP_BOTTOM_TIME));
}

/* A dive that was taken back asks for nothing. */
static void
test_taken_back (Story *story, gconstpointer data)
{
  g_autofree char *act = fixture_record (story->book, story->shifts[0], LB_ENTRY_DIVE, -1,
                                         "diver 1", 10);
  g_autofree char *back = fixture_take_back (story->book, story->shifts[0], act);
  g_auto (Reading) reading = { 0 };

  read_story (story, &reading);
  g_assert_cmpuint (reading.gaps->len, ==, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name, func) g_test_add ("/dive-record/" name, Story, NULL, story_begin, func, story_end)

  ADD ("no-dive-no-gap", test_no_dive_no_gap);
  ADD ("bare-dive", test_bare_dive);
  ADD ("whole", test_whole);
  ADD ("shift-says-it-for-its-dives", test_shift_says_it_for_its_dives);
  ADD ("taken-back", test_taken_back);

  return g_test_run ();
}
