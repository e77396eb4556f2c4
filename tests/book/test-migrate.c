/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Files of an older format: read as they are where they may not be written, else taken along, with
 * a copy of the old one beside them. */
#include "book-fixture.h"
#include "format-1.h"

#include <glib/gstdio.h>
#include <sqlite3.h>
#include <string.h>

#define FORMAT_AT 63 /* the low byte of user_version in the header of an SQLite file */

static guint8
format_of (const char *path)
{
  g_autoptr (GBytes) bytes = fixture_bytes (path);

  return ((const guint8 *) g_bytes_get_data (bytes, NULL))[FORMAT_AT];
}

/* A job of format 1 at @path: piles, a burned bar, a slip that was taken back, and a fact. */
static void
make_old (const char *path)
{
  g_autoptr (LbBook) book = fixture_book (path);
  LbDraft fact = LB_DRAFT_INIT (LB_ENTRY_FACT);

  fixture_add_piles (book, 3, 8);
  g_autofree char *shift = fixture_shift (book, 0);
  g_autoptr (LbLedger) ledger = fixture_read (book);

  g_free (fixture_burn (book, shift, 0, LB_BAR (2), 0));
  g_autofree char *slip = fixture_burn (book, shift, 1, LB_BAR (0), 0);
  g_free (fixture_take_back (book, shift, slip));
  fact.pile_id = lb_ledger_pile (ledger, 2)->id;
  fact.what = "mark";
  fact.note = "G6";
  g_assert_true (lb_book_record (book, &fact, 1, NULL, NULL));
  fact.note = "G7";
  g_assert_true (lb_book_record (book, &fact, 1, NULL, NULL));
  lb_book_close (g_steal_pointer (&book));
  format_1_make (path);
  g_assert_cmpuint (format_of (path), ==, 1);
}

static void
expect_job (LbBook *book)
{
  g_autoptr (LbLedger) ledger = fixture_read (book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);

  g_assert_cmpuint (fold->n_piles, ==, 3);
  g_assert_cmpuint (fold->states[0].burned, ==, LB_BAR (2));
  g_assert_cmpuint (fold->states[1].burned, ==, 0);
  g_assert_cmpint (lb_fold_find_mark (fold, "G7"), ==, 2);
}

/* A field that was set twice, one after the other, is not said by two crews. */
static void
expect_one_opinion (LbBook *book)
{
  g_autoptr (LbLedger) ledger = fixture_read (book);
  const LbEntry *last = lb_ledger_entry (ledger, ledger->entries->len - 1);
  const LbEntry *before = lb_ledger_entry (ledger, ledger->entries->len - 2);

  g_assert_cmpstr (last->note, ==, "G7");
  g_assert_cmpstr (last->of, ==, before->act);
  g_assert_cmpstr (before->of, ==, "");
}

static void
test_taken_along (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "pier.lastbent", NULL);
  g_autofree char *copy = g_build_filename (folder, "pier (format 1).lastbent", NULL);
  g_autoptr (GError) error = NULL;

  make_old (path);
  g_autoptr (GBytes) old = fixture_bytes (path);
  g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (format_of (path), ==, 2);
  g_assert_false (lb_book_is_read_only (book));
  expect_job (book);
  expect_one_opinion (book);

  /* The copy is the old file, and takes the same way when it is opened. */
  g_assert_cmpuint (format_of (copy), ==, 1);
  g_autoptr (LbBook) before = lb_book_open (copy, LB_BOOK_READ, &error);
  g_assert_no_error (error);
  expect_job (before);
  g_assert_cmpuint (format_of (copy), ==, 1);

  g_auto (GStrv) findings = NULL;
  g_assert_true (lb_book_check (book, &findings, &error));
  g_assert_cmpuint (g_strv_length (findings), ==, 0);
  fixture_remove (folder);
}

/* Opened and read side by side, as the window does it; twice, so that the copies need two names. */
static void
test_beside (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "pier.lastbent", NULL);
  g_autofree char *second = g_build_filename (folder, "pier (format 1, 2).lastbent", NULL);
  g_autoptr (GError) error = NULL;

  for (int i = 0; i < 2; i++) {
    g_autoptr (LbLedger) ledger = NULL;

    g_unlink (path);
    make_old (path);
    g_autoptr (LbBook) book = lb_book_open_and_read (path, LB_BOOK_WRITE, NULL, &ledger, &error);
    g_assert_no_error (error);
    expect_job (book);
    g_assert_cmpuint (ledger->piles->len, ==, 3);
  }
  g_assert_true (g_file_test (second, G_FILE_TEST_EXISTS));
  fixture_remove (folder);
}

/* The old tables are compared as strictly as the present ones. */
static void
test_not_old (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "new");
  g_autoptr (GError) error = NULL;
  sqlite3 *db = NULL;

  lb_book_close (fixture_book (path));
  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  sqlite3_exec (db, "PRAGMA user_version=1", NULL, NULL, NULL);
  sqlite3_close (db);
  g_assert_null (lb_book_open (path, LB_BOOK_WRITE, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED);
  fixture_remove (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/book/migrate/taken-along", test_taken_along);
  g_test_add_func ("/book/migrate/beside", test_beside);
  g_test_add_func ("/book/migrate/not-old", test_not_old);
  return g_test_run ();
}
