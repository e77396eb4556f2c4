/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is refused when it is recorded, each with the file as it was before. */
#include "book-fixture.h"

#include <locale.h>
#include <math.h>
#include <string.h>

typedef struct
{
  char *folder;
  char *path;
  LbBook *book;
  char *shift;
  GBytes *before;
} Job;

static void
begin (Job *job, gconstpointer data)
{
  job->folder = fixture_folder ();
  job->path = fixture_path (job->folder, "refused");
  job->book = fixture_book (job->path);
  fixture_add_piles (job->book, 3, 8);
  job->shift = fixture_shift (job->book, 0);
  job->before = fixture_bytes (job->path);
}

static void
end (Job *job, gconstpointer data)
{
  lb_book_close (job->book);
  fixture_remove (job->folder);
  g_free (job->folder);
  g_free (job->path);
  g_free (job->shift);
  g_bytes_unref (job->before);
}

static void
assert_unchanged (Job *job)
{
  g_autoptr (GBytes) now = fixture_bytes (job->path);

  g_assert_true (g_bytes_equal (now, job->before));
}

static void
refuse (Job *job, const LbDraft *draft)
{
  g_autoptr (GError) error = NULL;
  char *act = NULL;

  g_assert_false (lb_book_record (job->book, draft, 1, &act, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_assert_cmpuint (strlen (error->message), >, 10);
  g_assert_null (act);
  assert_unchanged (job);
}

static LbDraft
good (Job *job, LbEntryKind kind)
{
  LbDraft draft = LB_DRAFT_INIT (kind);

  draft.pile_id = "test-3";
  draft.shift_id = job->shift;
  return draft;
}

/* A good draft of each kind is stored; without what the kind needs it is refused. */
static void
test_needs (Job *job, gconstpointer data)
{
  LbDraft draft = good (job, LB_ENTRY_STEP);
  refuse (job, &draft);
  draft.what = "flown";
  refuse (job, &draft);
  draft.what = "severed";
  draft.pile_id = NULL;
  refuse (job, &draft);
  draft.pile_id = "test-99";
  refuse (job, &draft);
  draft.pile_id = "test-3";
  draft.shift_id = NULL;
  refuse (job, &draft);
  draft.shift_id = "test-3";
  refuse (job, &draft);
  draft.shift_id = job->shift;
  draft.amount = 1;
  refuse (job, &draft);
  draft.amount = NAN;
  draft.bars = 1;
  refuse (job, &draft);

  /* Which bars were found gone, and not how many. */
  draft = good (job, LB_ENTRY_GONE);
  draft.bars = 0;
  draft.count = 3;
  refuse (job, &draft);

  draft = good (job, LB_ENTRY_BARS);
  refuse (job, &draft);
  draft.bars = 1;
  draft.count = 1;
  refuse (job, &draft);
  draft.bars = 0;
  draft.count = 61;
  refuse (job, &draft);

  draft = good (job, LB_ENTRY_RODS);
  refuse (job, &draft);
  draft.amount = -1;
  refuse (job, &draft);
  draft.amount = INFINITY;
  refuse (job, &draft);

  draft = good (job, LB_ENTRY_CONDITION);
  draft.what = "mood";
  draft.note = "good";
  refuse (job, &draft);
  draft.what = "wind";
  draft.note = " \n";
  refuse (job, &draft);

  draft = good (job, LB_ENTRY_SETTING);
  draft.what = LB_SETTING_VISIBILITY;
  draft.note = "murky";
  refuse (job, &draft);

  draft = good (job, LB_ENTRY_SET_ASIDE);
  refuse (job, &draft); /* without a reason */
  draft.note = "slip of the pen";
  draft.shift_id = NULL;
  refuse (job, &draft);

  draft = good (job, LB_ENTRY_TAKE_IN);
  draft.shift_id = NULL;
  refuse (job, &draft);

  draft = good (job, (LbEntryKind) 99);
  refuse (job, &draft);
}

static void
test_times (Job *job, gconstpointer data)
{
  LbDraft draft = good (job, LB_ENTRY_DIVE);

  draft.what = "diver 1";
  draft.start_us = FIXTURE_US;
  draft.end_us = FIXTURE_US - 1;
  refuse (job, &draft);
  draft.end_us = FIXTURE_US + G_GINT64_CONSTANT (25) * 3600 * G_USEC_PER_SEC;
  refuse (job, &draft);
  draft.end_us = FIXTURE_US + 60;
  draft.up_us = FIXTURE_US + 59;
  refuse (job, &draft);
  draft.up_us = G_MAXINT64;
  refuse (job, &draft);
  draft.up_us = 0;
  draft.at_us = G_MININT64;
  refuse (job, &draft);
}

static void
test_texts (Job *job, gconstpointer data)
{
  g_autofree char *longest = g_strnfill (4000, 'n');
  g_autofree char *too_long = g_strnfill (4001, 'n');
  LbDraft draft = good (job, LB_ENTRY_NOTE);

  draft.note = too_long;
  refuse (job, &draft);
  draft.note = "bad \xff bytes";
  refuse (job, &draft);
  draft.note = "";
  refuse (job, &draft);
  draft.note = "rings \a bells";
  refuse (job, &draft);
  draft.note = "clears \x1b[2J screens";
  refuse (job, &draft);
  draft.note = "does so by \xc2\x9b"
               "2J";
  refuse (job, &draft);
  draft.note = "said";
  draft.who = "\xc3";
  refuse (job, &draft);
  draft.who = NULL;
  draft.note = longest;
  g_assert_true (lb_book_record (job->book, &draft, 1, NULL, NULL));
}

/* Facts and settings are as strict as the forms that ask for them. */
static void
test_facts (Job *job, gconstpointer data)
{
  LbDraft draft = good (job, LB_ENTRY_FACT);

  draft.what = "colour";
  draft.note = "grey";
  refuse (job, &draft);
  draft.what = lb_fact_name (LB_FACT_WIDTH);
  draft.note = "wide";
  refuse (job, &draft);
  draft.what = lb_fact_name (LB_FACT_N_BARS);
  draft.note = "61";
  refuse (job, &draft);
  draft.what = lb_fact_name (LB_FACT_MARK);
  draft.note = " ";
  refuse (job, &draft);

  draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);
  draft.what = "units";
  draft.note = "furlongs";
  refuse (job, &draft);
  draft.what = "name";
  draft.note = "";
  refuse (job, &draft);
  draft.what = "mood";
  draft.note = "fine";
  refuse (job, &draft);
  draft.what = "assume.luck";
  draft.note = "1";
  refuse (job, &draft);
  draft.what = "assume.burn-rate";
  draft.note = "fast";
  refuse (job, &draft);
  draft.note = "-1";
  refuse (job, &draft);
}

/* Two piles never have one mark: not by a rename, not by taking a rename back. */
static void
test_marks (Job *job, gconstpointer data)
{
  g_autofree char *away = NULL;
  LbDraft rename = good (job, LB_ENTRY_FACT);
  LbDraft other = good (job, LB_ENTRY_FACT);
  LbDraft back = good (job, LB_ENTRY_TAKE_BACK);

  rename.what = other.what = lb_fact_name (LB_FACT_MARK);
  rename.note = "p 2";
  refuse (job, &rename);

  rename.note = "Q1";
  g_assert_true (lb_book_record (job->book, &rename, 1, &away, NULL));
  other.pile_id = "test-4";
  other.note = "P1"; /* free since the rename */
  g_assert_true (lb_book_record (job->book, &other, 1, NULL, NULL));
  g_bytes_unref (job->before);
  job->before = fixture_bytes (job->path);
  back.of = away;
  refuse (job, &back);

  /* Two at once change places; one at a time cannot. */
  LbDraft swap[2] = { rename, other };
  swap[0].note = "P1";
  refuse (job, swap);
  swap[1].note = "Q1";
  g_autoptr (GError) error = NULL;
  g_assert_true (lb_book_record (job->book, swap, 2, NULL, &error));
  g_assert_no_error (error);
}

/* The rename may stand anywhere in the act that is taken back. */
static void
test_marks_of_mixed_acts (Job *job, gconstpointer data)
{
  g_autofree char *away = NULL;
  g_autoptr (GError) error = NULL;
  LbDraft act[2] = { good (job, LB_ENTRY_NOTE), good (job, LB_ENTRY_FACT) };
  LbDraft other = good (job, LB_ENTRY_FACT);
  LbDraft back = good (job, LB_ENTRY_TAKE_BACK);

  act[0].note = "painted anew";
  act[1].what = other.what = lb_fact_name (LB_FACT_MARK);
  act[1].note = "Q1";
  g_assert_true (lb_book_record (job->book, act, 2, &away, &error));
  g_assert_no_error (error);
  other.pile_id = "test-4";
  other.note = "P1";
  g_assert_true (lb_book_record (job->book, &other, 1, NULL, &error));
  g_assert_no_error (error);
  g_bytes_unref (job->before);
  job->before = fixture_bytes (job->path);
  back.of = away;
  refuse (job, &back);
}

static void
test_take_backs (Job *job, gconstpointer data)
{
  LbDraft back = good (job, LB_ENTRY_TAKE_BACK);

  refuse (job, &back);
  back.of = "nobody-1";
  refuse (job, &back);
  back.of = "test-3"; /* a pile */
  refuse (job, &back);

  LbDraft burn[2] = { good (job, LB_ENTRY_BARS), good (job, LB_ENTRY_BARS) };
  g_autoptr (GError) error = NULL;
  burn[0].count = burn[1].count = 1;
  burn[1].of = "test-2";
  g_assert_false (lb_book_record (job->book, burn, 2, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  assert_unchanged (job);

  g_clear_error (&error);
  back.of = "test-2"; /* the name */
  LbDraft mixed[2] = { back, good (job, LB_ENTRY_BARS) };
  mixed[1].count = 1;
  g_assert_false (lb_book_record (job->book, mixed, 2, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  assert_unchanged (job);
}

/* All drafts of an act or none, also among many acts in one transaction. */
static void
test_all_or_none (Job *job, gconstpointer data)
{
  LbDraft drafts[3];
  g_autoptr (GError) error = NULL;

  for (int i = 0; i < 3; i++) {
    drafts[i] = good (job, LB_ENTRY_BARS);
    drafts[i].count = 1;
  }
  drafts[2].pile_id = "nowhere";
  g_assert_false (lb_book_record (job->book, drafts, 3, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  assert_unchanged (job);

  g_assert_true (lb_book_begin (job->book, NULL));
  g_assert_true (lb_book_record (job->book, drafts, 2, NULL, NULL));
  g_assert_false (lb_book_record (job->book, drafts, 3, NULL, NULL));
  g_assert_true (lb_book_commit (job->book, NULL));
  g_autoptr (LbLedger) ledger = fixture_read (job->book);
  g_assert_cmpint (ledger->last_seq, ==, 1 + 2);

  g_assert_true (lb_book_begin (job->book, NULL));
  g_assert_true (lb_book_record (job->book, drafts, 2, NULL, NULL));
  lb_book_roll_back (job->book);
  g_autoptr (LbLedger) same = fixture_read (job->book);
  g_assert_cmpint (same->last_seq, ==, 1 + 2);
}

static void
cancel_cb (gsize done, gsize total, gpointer data)
{
  g_assert_cmpuint (done, <=, total);
  if (done >= 512)
    g_cancellable_cancel (data);
}

static void
add_named (Job *job, const char *first, const char *second, int code)
{
  LbPile piles[2];
  g_autoptr (GError) error = NULL;

  lb_pile_init (&piles[0]);
  lb_pile_init (&piles[1]);
  piles[0].x_m = piles[0].y_m = piles[1].x_m = piles[1].y_m = 0;
  piles[0].mark = first;
  piles[1].mark = second;
  g_assert_false (lb_book_add_piles (job->book, piles, 2, NULL, NULL, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, code);
  assert_unchanged (job);
}

static void
test_piles (Job *job, gconstpointer data)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autofree LbPile *piles = g_new (LbPile, 5000);
  g_autoptr (GStringChunk) marks = g_string_chunk_new (4096);
  g_autoptr (GError) error = NULL;

  add_named (job, "N1", "n 1", LB_BOOK_ERROR_REFUSED);
  add_named (job, "N1", "p1", LB_BOOK_ERROR_REFUSED);
  add_named (job, "N1", "", LB_BOOK_ERROR_REFUSED);
  add_named (job, "N1", "\xff", LB_BOOK_ERROR_REFUSED);

  for (guint i = 0; i < 5000; i++) {
    g_autofree char *mark = g_strdup_printf ("N%u", i);
    lb_pile_init (&piles[i]);
    piles[i].x_m = piles[i].y_m = i;
    piles[i].mark = g_string_chunk_insert (marks, mark);
  }
  g_assert_false (
    lb_book_add_piles (job->book, piles, 5000, cancel_cb, cancellable, cancellable, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_CANCELLED);
  assert_unchanged (job);

  g_clear_error (&error);
  piles[4999].y_m = (double) NAN;
  g_assert_false (lb_book_add_piles (job->book, piles, 5000, NULL, NULL, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  assert_unchanged (job);

  g_clear_error (&error);
  piles[4999].y_m = 0;
  piles[4999].head_m = 1e30;
  g_assert_false (lb_book_add_piles (job->book, piles, 5000, NULL, NULL, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  assert_unchanged (job);
}

/* Another program in the middle of its work is waited for, then told about. */
static void
test_busy (Job *job, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) other = lb_book_open (job->path, LB_BOOK_WRITE, &error);
  LbDraft draft = good (job, LB_ENTRY_NOTE);

  g_assert_no_error (error);
  draft.note = "wait";
  g_assert_true (lb_book_begin (other, &error));
  g_assert_false (lb_book_record (job->book, &draft, 1, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_BUSY);
  g_clear_error (&error);
  lb_book_roll_back (other);
  g_assert_true (lb_book_record (job->book, &draft, 1, NULL, &error));
}

int
main (int argc, char **argv)
{
  static const struct
  {
    const char *name;
    void (*test) (Job *job, gconstpointer data);
  } tests[] = {
    { "/book/refused/needs", test_needs },
    { "/book/refused/times", test_times },
    { "/book/refused/texts", test_texts },
    { "/book/refused/facts", test_facts },
    { "/book/refused/marks", test_marks },
    { "/book/refused/marks-of-mixed-acts", test_marks_of_mixed_acts },
    { "/book/refused/take-backs", test_take_backs },
    { "/book/refused/all-or-none", test_all_or_none },
    { "/book/refused/piles", test_piles },
    { "/book/refused/busy", test_busy },
  };

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].name, Job, NULL, begin, tests[i].test, end);
  return g_test_run ();
}
