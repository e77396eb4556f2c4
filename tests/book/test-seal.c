/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Signing: what a signed shift still takes, and that no row of it can be changed, removed, swapped
 * or added to without showing. That the hashes are those of docs/file-format.md is held by
 * tests/tool/check-seals.py, which computes them by itself. */
#include "book-fixture.h"

#include "book/seal.h"

#include <sqlite3.h>
#include <string.h>

/* Signs shift @shift of a story. */
static gboolean
sign (Story *story, int shift, GError **error)
{
  g_autoptr (LbLedger) ledger = fixture_read (story->book);

  return lb_book_sign (story->book, ledger, story->shifts[shift], "super", error);
}

static void
expect_whole (LbBook *book, guint n_seals, guint n_open)
{
  g_autoptr (LbLedger) ledger = fixture_read (book);
  g_auto (LbSealReport) report;

  lb_seals_check (ledger, &report);
  for (guint i = 0; i < report.faults->len; i++) {
    g_autofree char *text = lb_seal_fault_text (ledger,
                                                &g_array_index (report.faults, LbSealFault, i));
    g_test_message ("%s", text);
  }
  g_assert_cmpuint (report.faults->len, ==, 0);
  g_assert_cmpuint (report.n_seals, ==, n_seals);
  g_assert_cmpuint (report.n_absent, ==, 0);
  g_assert_cmpuint (report.n_open, ==, n_open);
}

static void
test_sign (Story *story, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  story_burn (story, 0, 0, LB_BAR (0), 0);
  story_burn (story, 1, 1, LB_BAR (1), 0);
  expect_whole (story->book, 0, 4 + 3 + 1 + 2); /* piles, shifts, the job's name, the two */
  g_assert_true (sign (story, 0, &error));
  expect_whole (story->book, 1, 1); /* what the second shift burned */
  g_assert_false (sign (story, 0, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_SIGNED);
  g_clear_error (&error);
  g_assert_true (sign (story, 1, &error));
  expect_whole (story->book, 2, 0);

  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  const LbEntry *last = lb_ledger_entry (ledger, ledger->entries->len - 1);
  g_autofree char *hash = lb_seal_hash (last);
  g_assert_cmpuint (strlen (hash), ==, 64);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_assert_cmpuint (fold->signatures[1].n_rows, ==, 10);
  g_assert_cmpstr (fold->signatures[1].who, ==, "super");
  g_assert_cmpstr (fold->signatures[1].hash, ==, hash);
  g_assert_cmpint (fold->signatures[2].at_us, ==, 0);

  g_assert_false (lb_book_sign (story->book, ledger, story->shifts[2], "", &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_false (lb_book_sign (story->book, ledger, "nowhere", "super", &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
}

static gboolean
record (Story *story, const LbDraft *drafts, gsize n, GError **error)
{
  return lb_book_record (story->book, drafts, n, NULL, error);
}

/* What a signed shift takes: a correction that says why, and nothing else. */
static void
test_correct (Story *story, gconstpointer data)
{
  g_autofree char *slip = fixture_burn (story->book, story->shifts[0], 0, LB_BAR (5), 0);
  g_autoptr (GError) error = NULL;
  LbDraft drafts[2] = { LB_DRAFT_INIT (LB_ENTRY_CORRECTION), LB_DRAFT_INIT (LB_ENTRY_TAKE_BACK) };

  drafts[0].shift_id = drafts[1].shift_id = story->shifts[0];
  drafts[0].note = "it was bar 4";
  drafts[1].of = slip;
  g_assert_true (sign (story, 0, &error));
  g_assert_false (record (story, &drafts[1], 1, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_SIGNED);
  g_clear_error (&error);

  /* Not by way of another shift, or of none. */
  drafts[1].shift_id = NULL;
  g_assert_false (record (story, &drafts[1], 1, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_SIGNED);
  g_clear_error (&error);

  g_assert_false (record (story, drafts, 1, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_true (record (story, drafts, 2, &error));

  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_assert_cmpuint (fold->states[0].burned, ==, 0);

  /* The next signature covers the correction. */
  expect_whole (story->book, 1, 2);
  g_assert_true (sign (story, 1, &error));
  expect_whole (story->book, 2, 0);
}

static void
test_not_taken_back (Story *story, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  LbDraft drafts[2] = { LB_DRAFT_INIT (LB_ENTRY_CORRECTION), LB_DRAFT_INIT (LB_ENTRY_TAKE_BACK) };

  g_assert_true (sign (story, 0, &error));
  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  drafts[0].shift_id = drafts[1].shift_id = story->shifts[0];
  drafts[0].note = "signed too early";
  drafts[1].of = lb_ledger_entry (ledger, ledger->entries->len - 1)->id;
  g_assert_false (record (story, drafts, 2, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_SIGNED);
}

/* --- Tampering ----------------------------------------------------------------------------- */

/* A job whose three shifts are signed: nothing in it is without a signature. */
static void
fill (Story *story)
{
  LbDraft fact = LB_DRAFT_INIT (LB_ENTRY_FACT);
  g_autoptr (LbLedger) ledger = fixture_read (story->book);

  fact.pile_id = lb_ledger_pile (ledger, 2)->id;
  fact.what = "mudline";
  fact.note = "-7.5";
  for (int shift = 0; shift < 3; shift++) {
    for (int pile = 0; pile < 4; pile++) {
      story_burn (story, shift, pile, LB_BAR ((guint) (shift + pile)), 0);
      story_tell (story, shift, pile, LB_ENTRY_BURN_TIME, 100 + pile);
    }
    g_assert_true (lb_book_record (story->book, &fact, 1, NULL, NULL));
    g_assert_true (sign (story, shift, NULL));
  }
  expect_whole (story->book, 3, 0);
}

static void
run_sql (const char *path, const char *sql)
{
  sqlite3 *db = NULL;
  char *message = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  sqlite3_exec (db, "PRAGMA foreign_keys=OFF; PRAGMA ignore_check_constraints=ON", NULL, NULL,
                NULL);
  sqlite3_exec (db, sql, NULL, NULL, &message);
  g_test_message ("%s", sql);
  g_assert_cmpstr (message, ==, NULL);
  sqlite3_close (db);
}

/* Whether it shows: the file is refused, or a signature is broken, or rows are under none. */
static gboolean
shows (const char *path)
{
  g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_READ, NULL);
  g_autoptr (LbLedger) ledger = book != NULL ? lb_book_read (book, NULL, NULL) : NULL;
  g_auto (LbSealReport) report = { 0 };

  if (ledger == NULL)
    return TRUE;
  lb_seals_check (ledger, &report);
  return report.faults->len > 0 || report.n_open > 0;
}

static const char *const changes[] = {
  /* Every column of every table, to something else that it might have been. */
  "UPDATE pile SET mark = 'X9', mark_key = 'x9' WHERE seq = 2",
  "UPDATE pile SET bent = '9' WHERE seq = 1",
  "UPDATE pile SET row = 'Q' WHERE seq = 1",
  "UPDATE pile SET note = 'x' WHERE seq = 1",
  "UPDATE pile SET x_m = x_m + 1e-9 WHERE seq = 1",
  "UPDATE pile SET y_m = -1 WHERE seq = 4",
  "UPDATE pile SET shape = 'square' WHERE seq = 1",
  "UPDATE pile SET width_m = 0.5 WHERE seq = 1",
  "UPDATE pile SET void_m = 0.1 WHERE seq = 1",
  "UPDATE pile SET bar = '#9' WHERE seq = 1",
  "UPDATE pile SET n_bars = 7 WHERE seq = 1",
  "UPDATE pile SET bar_inset_m = 0.05 WHERE seq = 1",
  "UPDATE pile SET batter = 0.2 WHERE seq = 1",
  "UPDATE pile SET bearing_rad = 0.2 WHERE seq = 1",
  "UPDATE pile SET head_m = 1.25 WHERE seq = 1",
  "UPDATE pile SET cut_m = -9.25 WHERE seq = 1",
  "UPDATE pile SET mudline_m = -8.25 WHERE seq = 1",
  "UPDATE pile SET toe_m = -19.25 WHERE seq = 1",
  "UPDATE pile SET id = 'test-999' WHERE seq = 4",
  "UPDATE shift SET day = day + 9 WHERE seq = 2",
  "UPDATE shift SET watch = 'night' WHERE seq = 2",
  "UPDATE shift SET opened_us = opened_us + 1 WHERE seq = 2",
  "UPDATE shift SET who = 'nobody' WHERE seq = 2",
  "UPDATE shift SET id = 'test-999' WHERE seq = 2",
  "UPDATE entry SET id = 'test-999' WHERE seq = 4",
  "UPDATE entry SET at_us = at_us + 1 WHERE seq = 4",
  "UPDATE entry SET who = 'nobody' WHERE seq = 4",
  "UPDATE entry SET shift = 2 WHERE seq = 4",
  "UPDATE entry SET kind = 'gone' WHERE seq = 4",
  "UPDATE entry SET pile = 4 WHERE seq = 4",
  "UPDATE entry SET what = 'x' WHERE seq = 4",
  "UPDATE entry SET bars = bars + 1 WHERE seq = 4",
  "UPDATE entry SET count = 1 WHERE seq = 4",
  "UPDATE entry SET amount = 103.5 WHERE seq = 3",
  "UPDATE entry SET start_us = 1 WHERE seq = 3",
  "UPDATE entry SET end_us = 1 WHERE seq = 3",
  "UPDATE entry SET up_us = 1 WHERE seq = 3",
  "UPDATE entry SET note = 'x' WHERE seq = 3",
  "UPDATE entry SET of = NULL WHERE kind = 'fact' AND of IS NOT NULL",
  "UPDATE job SET value = 'test-0' WHERE key = 'id'",
  "UPDATE job SET value = value || '1' WHERE key = 'made'",
  "UPDATE job SET value = '4' WHERE key = 'seals'",
  /* The seals themselves. */
  "UPDATE entry SET who = 'nobody' WHERE kind = 'seal' AND shift = 3",
  "UPDATE entry SET at_us = at_us + 1 WHERE kind = 'seal' AND shift = 3",
  "UPDATE entry SET shift = 1 WHERE kind = 'seal' AND shift = 3",
  "UPDATE entry SET note = replace (note, 'count', 'count ') WHERE kind = 'seal' AND shift = 2",
  "UPDATE entry SET note = note || '0' WHERE kind = 'seal' AND shift = 2",
  "UPDATE entry SET note = replace (note, 'checks A', 'checks B'), what = 'x' WHERE kind = 'seal'",
  "UPDATE entry SET note = 'lastbent seal 1' WHERE kind = 'seal' AND shift = 1",
  "UPDATE entry SET kind = 'note' WHERE kind = 'seal' AND shift = 1",
  /* Removed, the last seal too; the rows after are moved up, or the gap would show. */
  "DELETE FROM entry WHERE seq = (SELECT max(seq) FROM entry)",
  "DELETE FROM entry WHERE seq = 5; UPDATE entry SET seq = -(seq - 1), act = act - (act > 5), "
  "of = of - (of > 5) WHERE seq > 5; UPDATE entry SET seq = -seq WHERE seq < 0",
  "DELETE FROM pile WHERE seq = 4; DELETE FROM entry WHERE pile = 4",
  /* Put in, at the end or between. */
  "INSERT INTO entry SELECT max(seq) + 1, 'test-998', max(seq) + 1, max(at_us) - 5, '', 1, 'bars', "
  "1, '', 4, 0, NULL, 0, 0, 0, '', NULL FROM entry",
  "UPDATE entry SET seq = -(seq + 1), act = act + (act >= 5), of = of + (of >= 5) WHERE seq >= 5; "
  "UPDATE entry SET seq = -seq WHERE seq < 0; "
  "INSERT INTO entry SELECT 5, 'test-998', 5, at_us + 1, '', 1, 'bars', 1, '', 64, 0, NULL, 0, 0, 0, "
  "'', NULL FROM entry WHERE seq = 4",
  "INSERT INTO pile SELECT 5, 'test-998', 'P5', 'p5', bent, row, note, x_m, 50, shape, width_m, "
  "void_m, bar, n_bars, bar_inset_m, batter, bearing_rad, head_m, cut_m, mudline_m, toe_m FROM pile "
  "WHERE seq = 1",
  /* Swapped: two rows' words, two rows' names. */
  "UPDATE entry SET amount = CASE seq WHEN 3 THEN (SELECT amount FROM entry WHERE seq = 5) ELSE "
  "(SELECT amount FROM entry WHERE seq = 3) END WHERE seq IN (3, 5)",
  "UPDATE pile SET id = 'x-1' WHERE seq = 1; UPDATE pile SET id = (SELECT 'test-' || (substr (id, 6) "
  "- 1) FROM pile WHERE seq = 2) WHERE seq = 2; UPDATE pile SET id = 'test-' || (SELECT substr (id, "
  "6) + 1 FROM pile WHERE seq = 2) WHERE seq = 1",
  NULL,
};

static void
test_tampered (Story *story, gconstpointer data)
{
  g_autofree char *copy = g_strconcat (story->path, ".copy", NULL);

  fill (story);
  g_autoptr (GBytes) whole = fixture_bytes (story->path);
  for (int i = 0; changes[i] != NULL; i++) {
    gsize size;
    const char *bytes = g_bytes_get_data (whole, &size);

    g_assert_true (g_file_set_contents (copy, bytes, (gssize) size, NULL));
    g_assert_false (shows (copy));
    run_sql (copy, changes[i]);
    g_assert_true (shows (copy));
  }
}

/* The row that breaks a seal is named, and the first one of several. */
static void
test_named (Story *story, gconstpointer data)
{
  g_auto (LbSealReport) report;

  fill (story);
  g_autoptr (LbLedger) before = fixture_read (story->book);
  g_autofree char *fourth = g_strdup (lb_ledger_entry_of_seq (before, 4)->id);
  lb_book_close (g_steal_pointer (&story->book));
  run_sql (story->path, "UPDATE entry SET bars = 128 WHERE seq IN (4, 6, 17)");
  story->book = lb_book_open (story->path, LB_BOOK_WRITE, NULL);

  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  lb_seals_check (ledger, &report);
  g_assert_cmpuint (report.faults->len, ==, 2);

  const LbSealFault *first = &g_array_index (report.faults, LbSealFault, 0);
  g_assert_cmpint (first->kind, ==, LB_SEAL_FAULT_CHANGED);
  g_assert_cmpint (first->shift, ==, 0);
  g_assert_cmpstr (first->row_id, ==, fourth);
  g_autofree char *text = lb_seal_fault_text (ledger, first);
  g_assert_nonnull (strstr (text, "2026-03-02"));
  g_assert_nonnull (strstr (text, fourth));
}

#define STORY(path, test) g_test_add (path, Story, NULL, story_begin, test, story_end)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  STORY ("/book/seal/sign", test_sign);
  STORY ("/book/seal/correct", test_correct);
  STORY ("/book/seal/not-taken-back", test_not_taken_back);
  STORY ("/book/seal/tampered", test_tampered);
  STORY ("/book/seal/named", test_named);
  return g_test_run ();
}
