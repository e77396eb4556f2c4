/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book-fixture.h"

#include <locale.h>
#include <math.h>
#include <sqlite3.h>
#include <string.h>

/* A copy reads like the original, and replaces nothing. */
static void
test_copy (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "job");
  g_autofree char *copy = fixture_path (folder, "copy");
  g_autofree char *nowhere = g_build_filename (folder, "none", "copy", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = fixture_book (path);
  fixture_add_piles (book, 50, 8);
  g_autofree char *shift = fixture_shift (book, 0);
  g_free (fixture_burn (book, shift, 49, LB_BAR (7), 0));

  g_assert_true (lb_book_copy_to (book, copy, &error));
  g_assert_no_error (error);
  g_autoptr (LbBook) second = lb_book_open (copy, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  g_assert_false (lb_book_is_read_only (second));
  g_autoptr (LbLedger) one = fixture_read (book);
  g_autoptr (LbLedger) other = fixture_read (second);
  g_assert_cmpuint (other->piles->len, ==, 50);
  g_assert_cmpint (other->last_seq, ==, one->last_seq);
  g_assert_cmpstr (other->job_id, ==, one->job_id);
  g_assert_cmpstr (lb_ledger_entry (other, 1)->id, ==, lb_ledger_entry (one, 1)->id);

  g_autoptr (GBytes) before = fixture_bytes (copy);
  g_assert_false (lb_book_copy_to (book, copy, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN);
  g_clear_error (&error);
  g_autoptr (GBytes) after = fixture_bytes (copy);
  g_assert_true (g_bytes_equal (before, after));
  g_assert_false (lb_book_copy_to (book, nowhere, &error));
  g_assert_nonnull (error);
  fixture_remove (folder);
}

static char **
check (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_READ, &error);
  char **findings = NULL;

  g_assert_no_error (error);
  g_assert_true (lb_book_check (book, &findings, &error));
  g_assert_no_error (error);
  return findings;
}

/* A sound job has nothing to find, whatever people said of it: what does not fit together is no
 * damage (book/finding.h). */
static void
test_check (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "job");
  g_autoptr (LbBook) book = fixture_book (path);
  fixture_add_piles (book, 3, 8);
  g_autofree char *shift = fixture_shift (book, 0);
  g_free (fixture_burn (book, shift, 1, 0xff, 0));
  g_free (fixture_record (book, shift, LB_ENTRY_STEP, 1, "severed", NAN));

  g_auto (GStrv) none = check (path);
  g_assert_cmpuint (g_strv_length (none), ==, 0);
  g_free (fixture_record (book, shift, LB_ENTRY_STEP, 2, "pulled", NAN));
  g_auto (GStrv) still_none = check (path);
  g_assert_cmpuint (g_strv_length (still_none), ==, 0);
  fixture_remove (folder);
}

/* What opening and reading let pass, since it does no harm, is found here. */
static void
test_check_tampered (void)
{
  static const struct
  {
    const char *sql;
    const char *names;
  } cases[] = {
    { "UPDATE pile SET bar = '#99' WHERE seq = 2", "#99" },
    { "UPDATE entry SET amount = 1e12 WHERE seq = 2", "test-7" },
    { "UPDATE entry SET what = 'flown' WHERE seq = 2", "flown" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *folder = fixture_folder ();
    g_autofree char *path = fixture_path (folder, "job");
    sqlite3 *db = NULL;
    LbBook *book = fixture_book (path);
    fixture_add_piles (book, 3, 8);
    g_autofree char *shift = fixture_shift (book, 0);
    g_free (fixture_record (book, shift, LB_ENTRY_STEP, 1, "cleaned", NAN));
    lb_book_close (book);

    g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
    g_assert_cmpint (sqlite3_exec (db, cases[i].sql, NULL, NULL, NULL), ==, SQLITE_OK);
    sqlite3_close (db);
    g_auto (GStrv) findings = check (path);
    g_assert_cmpuint (g_strv_length (findings), ==, 1);
    g_assert_nonnull (strstr (findings[0], cases[i].names));
    fixture_remove (folder);
  }
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/book/copy/copy", test_copy);
  g_test_add_func ("/book/copy/check", test_check);
  g_test_add_func ("/book/copy/check-tampered", test_check_tampered);
  return g_test_run ();
}
