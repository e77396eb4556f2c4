/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book-fixture.h"
#include "book/fold.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <math.h>
#include <string.h>
#include <unistd.h>

/* A new job has its name, nothing else, and is the same when it is opened again. */
static void
test_new (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "new");
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_create (path, "Cannery “Tern”", &error);
  g_assert_no_error (error);
  g_assert_false (lb_book_is_read_only (book));
  g_assert_cmpstr (lb_book_get_path (book), ==, path);

  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_assert_cmpstr (fold->name, ==, "Cannery “Tern”");
  g_assert_cmpuint (fold->n_piles, ==, 0);
  g_assert_cmpuint (fold->n_days, ==, 0);
  g_assert_cmpuint (strlen (ledger->job_id), >, 8);

  g_autoptr (LbBook) again = lb_book_create (path, "Other", &error);
  g_assert_null (again);
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN);
  fixture_remove (folder);
}

/* Every field of a pile comes back as it went in, the unknown ones too. */
static void
test_piles (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "piles");
  g_autoptr (LbBook) book = fixture_book (path);
  g_autoptr (GError) error = NULL;
  LbPile piles[2];

  lb_pile_init (&piles[0]);
  piles[0].unsaid = 0;
  piles[0].mark = "G7";
  piles[0].bent = "7";
  piles[0].row = "G";
  piles[0].note = "split head; “soft”";
  piles[0].x_m = 12.25;
  piles[0].y_m = -0.1;
  piles[0].outline = (LbOutline){ .shape = LB_SHAPE_OCTAGON, .width_m = 0.4064, .void_m = 0.1 };
  piles[0].bar = lb_bar_find ("#8");
  piles[0].n_bars = 8;
  piles[0].bar_inset_m = 0.07;
  piles[0].batter = 1.0 / 6;
  piles[0].bearing_rad = 0.75;
  piles[0].head_m = 3.1;
  piles[0].cut_m = -8.4;
  piles[0].mudline_m = -8.7;
  piles[0].toe_m = -20.125;
  piles[0].bar_places = "4 outer, 4 inner at 127";
  piles[0].concrete = LB_CONCRETE_CORE;
  piles[0].pinned = LB_BAR (2) | LB_BAR (6);
  piles[0].order = LB_ORDER_HIGH_SIDE;
  piles[0].is_to_be_drawn = TRUE;
  lb_pile_init (&piles[1]);
  piles[1].mark = "unknown";
  piles[1].x_m = piles[1].y_m = 0;
  g_assert_true (lb_book_add_piles (book, piles, 2, NULL, NULL, NULL, &error));
  g_assert_no_error (error);

  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (ledger->piles->len, ==, 2);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  for (guint i = 0; i < 2; i++) {
    for (LbFact fact = 0; fact < LB_N_FACTS; fact++) {
      g_autofree char *was = lb_pile_get (&piles[i], fact, LB_UNITS_METRIC);
      g_autofree char *is = lb_pile_get (&fold->piles[i], fact, LB_UNITS_METRIC);
      g_assert_cmpstr (is, ==, was);
    }
    g_assert_true (lb_ledger_pile (ledger, i)->bar == piles[i].bar);
    g_assert_cmpfloat (lb_ledger_pile (ledger, i)->batter, ==, piles[i].batter);
    g_assert_cmphex (fold->piles[i].unsaid, ==, piles[i].unsaid);
  }
  g_assert_cmpint (lb_ledger_find_mark (ledger, " g 7"), ==, 0);
  g_assert_cmpint (lb_ledger_find_mark (ledger, "G8"), ==, -1);
  fixture_remove (folder);
}

/* Every field of an entry comes back; one act's entries share it. */
static void
test_entries (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "entries");
  g_autoptr (LbBook) book = fixture_book (path);
  g_autoptr (GError) error = NULL;
  g_autofree char *shift = NULL;
  g_autofree char *act = NULL;
  fixture_add_piles (book, 3, 8);
  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, &error);
  g_assert_true (lb_book_open_shift (book, FIXTURE_DAY, "day", "super", &shift, &error));

  LbDraft drafts[2] = { LB_DRAFT_INIT (LB_ENTRY_DIVE), LB_DRAFT_INIT (LB_ENTRY_BARS) };
  drafts[0].pile_id = lb_ledger_pile (ledger, 1)->id;
  drafts[0].shift_id = shift;
  drafts[0].who = "super";
  drafts[0].what = "diver 1";
  drafts[0].amount = 8.5;
  drafts[0].start_us = FIXTURE_US;
  drafts[0].end_us = FIXTURE_US + 61 * G_USEC_PER_SEC;
  drafts[0].up_us = FIXTURE_US + 90 * G_USEC_PER_SEC;
  drafts[0].note = "cold";
  drafts[0].at_us = FIXTURE_US + 5;
  drafts[1].pile_id = lb_ledger_pile (ledger, 2)->id;
  drafts[1].shift_id = shift;
  drafts[1].bars = LB_BAR (0) | LB_BAR (59);
  g_assert_true (lb_book_record (book, drafts, 2, &act, &error));
  g_assert_no_error (error);

  gboolean changed = FALSE;
  g_assert_true (lb_book_read_on (book, ledger, &changed, &error));
  g_assert_true (changed);
  const LbEntry *dive = lb_ledger_entry (ledger, ledger->entries->len - 2);
  const LbEntry *bars = lb_ledger_entry (ledger, ledger->entries->len - 1);
  g_assert_cmpint (dive->kind, ==, LB_ENTRY_DIVE);
  g_assert_cmpint (dive->pile, ==, 1);
  g_assert_cmpint (dive->shift, ==, 0);
  g_assert_cmpstr (dive->who, ==, "super");
  g_assert_cmpstr (dive->what, ==, "diver 1");
  g_assert_cmpfloat (dive->amount, ==, 8.5);
  g_assert_cmpint (dive->start_us, ==, drafts[0].start_us);
  g_assert_cmpint (dive->end_us, ==, drafts[0].end_us);
  g_assert_cmpint (dive->up_us, ==, drafts[0].up_us);
  g_assert_cmpint (dive->at_us, ==, drafts[0].at_us);
  g_assert_cmpstr (dive->note, ==, "cold");
  g_assert_cmpstr (dive->of, ==, "");
  g_assert_cmpstr (dive->act, ==, act);
  g_assert_cmpstr (dive->id, ==, act);
  g_assert_cmpstr (bars->act, ==, act);
  g_assert_cmpstr (bars->id, !=, act);
  g_assert_cmpuint (bars->bars, ==, drafts[1].bars);
  g_assert_true (isnan (bars->amount));
  g_assert_cmpint (bars->at_us, ==, dive->at_us); /* of one act */

  g_assert_true (lb_book_read_on (book, ledger, &changed, &error));
  g_assert_false (changed);
  fixture_remove (folder);
}

/* A shift is opened once a day and watch; the ledger has them by day whatever the order. */
static void
test_shifts (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "shifts");
  g_autoptr (LbBook) book = fixture_book (path);
  g_autoptr (GError) error = NULL;
  g_autofree char *late = NULL;
  g_autofree char *late_again = NULL;
  g_autofree char *night = NULL;
  g_autofree char *early = NULL;

  g_assert_true (lb_book_open_shift (book, FIXTURE_DAY + 4, "day", NULL, &late, &error));
  g_assert_true (lb_book_open_shift (book, FIXTURE_DAY + 4, "day", "x", &late_again, &error));
  g_assert_cmpstr (late, ==, late_again);
  g_assert_true (lb_book_open_shift (book, FIXTURE_DAY + 4, "night", "x", &night, &error));
  g_assert_cmpstr (late, !=, night);

  LbDraft note = LB_DRAFT_INIT (LB_ENTRY_NOTE);
  note.shift_id = night;
  note.note = "fog";
  g_assert_true (lb_book_record (book, &note, 1, NULL, &error));
  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, &error);
  g_assert_cmpint (lb_ledger_entry (ledger, 1)->shift, ==, 1);

  g_assert_true (lb_book_open_shift (book, FIXTURE_DAY, "day", "x", &early, &error));
  g_assert_true (lb_book_read_on (book, ledger, NULL, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (ledger->shifts->len, ==, 3);
  g_assert_cmpstr (lb_ledger_shift (ledger, 0)->id, ==, early);
  g_assert_cmpuint (lb_ledger_shift (ledger, 0)->day, ==, FIXTURE_DAY);
  g_assert_cmpstr (lb_ledger_shift (ledger, 2)->id, ==, night);
  g_assert_cmpint (lb_ledger_entry (ledger, 1)->shift, ==, 2);

  g_assert_false (lb_book_open_shift (book, FIXTURE_DAY, "dusk", NULL, &early, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  fixture_remove (folder);
}

/* The same calls with a fixed origin make the same bytes. */
static void
test_fixed_origin (void)
{
  g_autofree char *folder = fixture_folder ();
  GBytes *bytes[2] = { NULL, NULL };

  for (int i = 0; i < 2; i++) {
    g_autofree char *path = fixture_path (folder, i == 0 ? "one" : "other");
    g_autoptr (GError) error = NULL;
    g_autofree char *shift = NULL;
    LbBook *book = lb_book_create_fixed (path, "Same", "demo", FIXTURE_US, &error);

    g_assert_no_error (error);
    g_assert_true (lb_book_begin (book, &error));
    fixture_add_piles (book, 20, 8);
    lb_book_set_now (book, FIXTURE_US + 7);
    g_assert_true (lb_book_open_shift (book, FIXTURE_DAY, "day", NULL, &shift, &error));
    LbDraft note = LB_DRAFT_INIT (LB_ENTRY_NOTE);
    note.shift_id = shift;
    note.note = "same";
    g_assert_true (lb_book_record (book, &note, 1, NULL, &error));
    g_assert_true (lb_book_commit (book, &error));
    lb_book_close (book);
    bytes[i] = fixture_bytes (path);
  }
  g_assert_true (g_bytes_equal (bytes[0], bytes[1]));
  g_bytes_unref (bytes[0]);
  g_bytes_unref (bytes[1]);
  fixture_remove (folder);
}

/* Two programs on one file see what the other stored, piles, shifts and entries. */
static void
test_two_books (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "two");
  g_autoptr (LbBook) one = fixture_book (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) other = lb_book_open (path, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  g_autoptr (LbLedger) seen_by_one = lb_book_read (one, NULL, &error);
  g_autoptr (LbLedger) seen_by_other = lb_book_read (other, NULL, &error);
  LbLedger *ledgers[2] = { seen_by_one, seen_by_other };

  fixture_add_piles (one, 4, 8);
  for (int i = 0; i < 20; i++) {
    LbBook *writer = i % 2 == 0 ? other : one;
    g_autofree char *shift = NULL;
    gboolean changed = FALSE;
    LbDraft step = LB_DRAFT_INIT (LB_ENTRY_STEP);

    g_assert_true (lb_book_read_on (writer, ledgers[i % 2 == 0], NULL, &error));
    g_assert_true (
      lb_book_open_shift (writer, FIXTURE_DAY + (guint) i / 5, "day", NULL, &shift, &error));
    step.pile_id = lb_ledger_pile (ledgers[i % 2 == 0], (guint) i % 4)->id;
    step.shift_id = shift;
    step.what = "cleaned";
    g_assert_true (lb_book_record (writer, &step, 1, NULL, &error));
    g_assert_no_error (error);
    g_assert_true (lb_book_read_on (one, ledgers[0], &changed, &error));
    g_assert_true (changed);
    g_assert_true (lb_book_read_on (other, ledgers[1], &changed, &error));
    g_assert_true (changed);
    g_assert_cmpint (ledgers[0]->last_seq, ==, i + 2);
    g_assert_cmpint (ledgers[1]->last_seq, ==, i + 2);
  }
  for (guint i = 0; i < ledgers[0]->entries->len; i++)
    g_assert_cmpstr (lb_ledger_entry (ledgers[0], i)->id, ==, lb_ledger_entry (ledgers[1], i)->id);
  fixture_remove (folder);
}

/* A copy that is put back over an open file, as cp does it, is noticed: whether it is shorter or
 * has grown another past since. */
static void
test_put_back (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "job");
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = fixture_book (path);
  g_autoptr (GBytes) early = fixture_bytes (path);
  g_autoptr (LbLedger) ledger = NULL;
  gsize n_bytes;
  const char *bytes = g_bytes_get_data (early, &n_bytes);
  LbDraft note = LB_DRAFT_INIT (LB_ENTRY_NOTE);

  note.note = "seen";
  for (int i = 0; i < 3; i++)
    g_assert_true (lb_book_record (book, &note, 1, NULL, &error));
  ledger = fixture_read (book);
  g_assert_true (lb_book_read_on (book, ledger, NULL, &error));

  FILE *over = g_fopen (path, "r+b");
  g_assert_cmpuint (fwrite (bytes, 1, n_bytes, over), ==, n_bytes);
  g_assert_cmpint (fflush (over), ==, 0);
  g_assert_cmpint (ftruncate (fileno (over), (off_t) n_bytes), ==, 0);
  g_assert_cmpint (fclose (over), ==, 0);

  g_autoptr (LbBook) again = lb_book_open (path, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  g_assert_false (lb_book_read_on (again, ledger, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK);
  for (int i = 0; i < 9; i++) {
    g_clear_error (&error);
    note.note = "never seen";
    g_assert_true (lb_book_record (again, &note, 1, NULL, &error));
    g_assert_false (lb_book_read_on (again, ledger, NULL, &error));
    g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK);
  }
  fixture_remove (folder);
}

/* Nor does a ledger that saw what was rolled back go on as if it had been stored. */
static void
test_rolled_back (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "job");
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = fixture_book (path);
  g_autoptr (LbLedger) ledger = fixture_read (book);
  LbDraft note = LB_DRAFT_INIT (LB_ENTRY_NOTE);

  note.note = "perhaps";
  g_assert_true (lb_book_begin (book, &error));
  g_assert_true (lb_book_record (book, &note, 1, NULL, &error));
  g_assert_true (lb_book_read_on (book, ledger, NULL, &error));
  lb_book_roll_back (book);
  for (int i = 0; i < 3; i++) {
    g_assert_false (lb_book_read_on (book, ledger, NULL, &error));
    g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK);
    g_clear_error (&error);
    g_assert_true (lb_book_record (book, &note, 1, NULL, &error));
  }
  fixture_remove (folder);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/book/round-trip/new", test_new);
  g_test_add_func ("/book/round-trip/piles", test_piles);
  g_test_add_func ("/book/round-trip/entries", test_entries);
  g_test_add_func ("/book/round-trip/shifts", test_shifts);
  g_test_add_func ("/book/round-trip/fixed-origin", test_fixed_origin);
  g_test_add_func ("/book/round-trip/two-books", test_two_books);
  g_test_add_func ("/book/round-trip/put-back", test_put_back);
  g_test_add_func ("/book/round-trip/rolled-back", test_rolled_back);
  return g_test_run ();
}
