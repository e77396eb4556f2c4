/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What can be read of a damaged file goes into a new one: all of it when only what leads to the rows
 * is damaged, and never anything that was not there. */
#include "book-fixture.h"
#include "book/recover.h"
#include "format-1.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <math.h>
#include <sqlite3.h>
#include <string.h>

#define PAGE 8192

/* A job of many pages: sixty piles, four shifts, notes long enough to go on on other pages. */
static void
make_job (const char *path)
{
  g_autoptr (LbBook) book = fixture_book (path);
  g_autofree char *long_text = g_strnfill (3900, 'n');

  g_assert_true (lb_book_begin (book, NULL));
  fixture_add_piles (book, 60, 8);
  for (guint day = 0; day < 4; day++) {
    g_autofree char *shift = fixture_shift (book, day);
    LbDraft two[2] = { LB_DRAFT_INIT (LB_ENTRY_NOTE), LB_DRAFT_INIT (LB_ENTRY_NOTE) };

    for (int i = 0; i < 60; i++) {
      g_free (fixture_burn (book, shift, i, LB_BAR (day), 0));
      g_free (fixture_record (book, shift, LB_ENTRY_RODS, i, NULL, 1.5));
    }
    two[0].note = "first of two";
    two[0].shift_id = two[1].shift_id = shift;
    two[1].note = long_text;
    for (int i = 0; i < 10; i++)
      g_assert_true (lb_book_record (book, two, 2, NULL, NULL));
    g_autofree char *slip = fixture_burn (book, shift, 0, 0, 1);
    g_free (fixture_take_back (book, shift, slip));
  }
  LbDraft fact = LB_DRAFT_INIT (LB_ENTRY_FACT);
  fact.pile_id = "test-3";
  fact.what = "mudline";
  for (int i = 0; i < 3; i++) {
    fact.note = i == 0 ? "-7" : i == 1 ? "-8" : "-9";
    g_assert_true (lb_book_record (book, &fact, 1, NULL, NULL));
  }
  g_assert_true (lb_book_commit (book, NULL));
}

static LbLedger *
read_file (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_READ, &error);
  g_auto (GStrv) findings = NULL;

  g_assert_no_error (error);
  g_assert_true (lb_book_check (book, &findings, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (findings[0], ==, NULL);
  return fixture_read (book);
}

/* The same entry, apart from its numbers. */
static void
assert_same_entry (const LbLedger *one, const LbEntry *a, const LbLedger *other, const LbEntry *b)
{
  g_assert_cmpstr (a->id, ==, b->id);
  g_assert_cmpstr (a->act, ==, b->act);
  g_assert_cmpint (a->at_us, ==, b->at_us);
  g_assert_cmpstr (a->note, ==, b->note);
  g_assert_cmpstr (a->what, ==, b->what);
  g_assert_true (a->bars == b->bars && a->count == b->count && a->kind == b->kind);
  g_assert_true (a->amount == b->amount || (isnan (a->amount) && isnan (b->amount)));
  g_assert_true ((a->pile < 0) == (b->pile < 0) && (a->shift < 0) == (b->shift < 0));
  if (a->pile >= 0)
    g_assert_cmpstr (lb_ledger_pile (one, (guint) a->pile)->id, ==,
                     lb_ledger_pile (other, (guint) b->pile)->id);
  if (a->shift >= 0)
    g_assert_cmpstr (lb_ledger_shift (one, (guint) a->shift)->id, ==,
                     lb_ledger_shift (other, (guint) b->shift)->id);
}

/* Everything in @part is in @whole, in the same order. */
static void
assert_part (const LbLedger *whole, const LbLedger *part)
{
  guint at = 0;

  for (guint i = 0; i < part->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (part, i);

    while (at < whole->entries->len && !g_str_equal (lb_ledger_entry (whole, at)->id, entry->id))
      at++;
    g_assert_cmpuint (at, <, whole->entries->len);
    assert_same_entry (whole, lb_ledger_entry (whole, at), part, entry);
  }
}

typedef struct
{
  char *folder, *path, *new_path;
  LbLedger *whole;
  GBytes *bytes;
} Desk;

static void
begin (Desk *desk, gconstpointer data)
{
  desk->folder = fixture_folder ();
  desk->path = fixture_path (desk->folder, "damaged");
  desk->new_path = fixture_path (desk->folder, "new");
  make_job (desk->path);
  desk->whole = read_file (desk->path);
  desk->bytes = fixture_bytes (desk->path);
}

static void
end (Desk *desk, gconstpointer data)
{
  fixture_remove (desk->folder);
  g_free (desk->folder);
  g_free (desk->path);
  g_free (desk->new_path);
  lb_ledger_free (desk->whole);
  g_bytes_unref (desk->bytes);
}

static LbLedger *
recover (Desk *desk, LbRecovery *recovery)
{
  g_autoptr (GBytes) before = fixture_bytes (desk->path);
  g_autoptr (GError) error = NULL;

  g_assert_true (lb_book_recover (desk->path, desk->new_path, recovery, NULL, &error));
  g_assert_no_error (error);
  g_autoptr (GBytes) after = fixture_bytes (desk->path);
  g_assert_true (g_bytes_equal (before, after));

  LbLedger *part = read_file (desk->new_path);
  assert_part (desk->whole, part);
  g_assert_cmpuint (part->piles->len, ==, recovery->n_piles);
  g_assert_cmpuint (part->shifts->len, ==, recovery->n_shifts);
  g_assert_cmpuint (part->entries->len, ==, recovery->n_entries);
  return part;
}

static void
expect_all (Desk *desk)
{
  LbRecovery recovery;
  g_autoptr (LbLedger) part = recover (desk, &recovery);
  g_autofree char *text = lb_recovery_to_text (&recovery);

  g_assert_cmpuint (part->entries->len, ==, desk->whole->entries->len);
  g_assert_cmpuint (part->piles->len, ==, 60);
  g_assert_cmpstr (part->job_id, ==, desk->whole->job_id);
  g_assert_true (lb_recovery_is_whole (&recovery));
  g_assert_nonnull (strstr (text, "60 piles, 4 shifts"));
}

static void
test_whole (Desk *desk, gconstpointer data)
{
  expect_all (desk);
}

/* The first page leads to everything; without it, all is found. */
static void
test_first_page (Desk *desk, gconstpointer data)
{
  gsize n;
  const guint8 *bytes = g_bytes_get_data (desk->bytes, &n);
  g_autofree guint8 *torn = g_memdup2 (bytes, n);

  memset (torn, 0, PAGE);
  fixture_write (desk->path, torn, n);
  expect_all (desk);
}

/* The inner pages of the tables. */
static void
test_inner_pages (Desk *desk, gconstpointer data)
{
  gsize n;
  const guint8 *bytes = g_bytes_get_data (desk->bytes, &n);
  g_autofree guint8 *torn = g_memdup2 (bytes, n);
  guint n_inner = 0;

  for (gsize at = PAGE; at < n; at += PAGE) {
    if (torn[at] != 5)
      continue;
    memset (torn + at, 0xee, PAGE);
    n_inner++;
  }
  g_assert_cmpuint (n_inner, >, 0);
  fixture_write (desk->path, torn, n);
  g_autoptr (LbBook) book = lb_book_open (desk->path, LB_BOOK_READ, NULL);
  g_assert_null (book);
  expect_all (desk);
}

/* One page at a time: nothing that was not there, whole acts, and what is lost is counted. */
static void
test_each_page (Desk *desk, gconstpointer data)
{
  gsize n;
  const guint8 *bytes = g_bytes_get_data (desk->bytes, &n);
  guint n_with_loss = 0;

  for (gsize at = 0; at < n; at += PAGE) {
    g_autofree guint8 *torn = g_memdup2 (bytes, n);
    LbRecovery recovery;

    memset (torn + at, 0, PAGE);
    fixture_write (desk->path, torn, n);
    g_autoptr (LbLedger) part = recover (desk, &recovery);
    n_with_loss += !lb_recovery_is_whole (&recovery);
    g_assert_cmpuint (recovery.n_entries + recovery.n_lost_entries, <=, desk->whole->entries->len);
    for (guint i = 0; i < part->entries->len; i++) {
      const LbEntry *entry = lb_ledger_entry (part, i);
      const gboolean is_half = g_str_equal (entry->note, "first of two") &&
                               (i + 1 == part->entries->len ||
                                lb_ledger_entry (part, i + 1)->act != entry->act);

      /* Only right before a gap, or at the end, and then it is said. */
      if (is_half && i + 1 < part->entries->len)
        g_assert_cmpuint (recovery.n_open_acts, >, 0);
    }
    g_assert_cmpint (g_remove (desk->new_path), ==, 0);
  }
  g_test_message ("%u of %u pages took something with them", n_with_loss, (guint) (n / PAGE));
  g_assert_cmpuint (n_with_loss, >, 3);
}

static void
test_cut (Desk *desk, gconstpointer data)
{
  gsize n;
  const guint8 *bytes = g_bytes_get_data (desk->bytes, &n);

  for (int tenth = 3; tenth < 10; tenth++) {
    LbRecovery recovery;

    fixture_write (desk->path, bytes, n * (gsize) tenth / 10);
    g_autoptr (LbLedger) part = recover (desk, &recovery);
    g_assert_cmpuint (recovery.n_unread_bytes, ==, n - n * (gsize) tenth / 10);
    g_assert_cmpuint (part->piles->len, >, 0);
    g_assert_false (lb_recovery_is_whole (&recovery));
    g_assert_cmpint (g_remove (desk->new_path), ==, 0);
  }
}

static void
damage (const char *path, const char *sql)
{
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, sql, NULL, NULL, NULL), ==, SQLITE_OK);
  sqlite3_close (db);
}

/* A lost pile takes its entries along, a lost shift too; of a fact, the one before stands in. */
static void
test_lost_rows (Desk *desk, gconstpointer data)
{
  LbRecovery recovery;
  const gint64 last = desk->whole->last_seq;
  g_autofree char *sql = g_strdup_printf ("DELETE FROM pile WHERE seq = 7;"
                                          "DELETE FROM entry WHERE seq = %d",
                                          (int) last - 1);

  damage (desk->path, sql);
  g_autoptr (LbLedger) part = recover (desk, &recovery);
  g_assert_cmpuint (recovery.n_lost_piles, ==, 1);
  g_assert_cmpuint (recovery.n_orphans, ==, 8);
  g_assert_cmpuint (recovery.n_lost_entries, ==, 9);
  const LbEntry *fact = lb_ledger_entry (part, part->entries->len - 1);
  const LbEntry *before = lb_ledger_entry (part, part->entries->len - 2);
  g_assert_cmpstr (fact->note, ==, "-9");
  g_assert_cmpstr (before->note, ==, "-7");
  g_assert_cmpstr (fact->of, ==, before->act);
}

/* Rows with values that no job file holds are left out. */
static void
test_spoilt_rows (Desk *desk, gconstpointer data)
{
  static const char *const spoils[] = {
    "PRAGMA ignore_check_constraints=ON; UPDATE entry SET bars = -1 WHERE seq = 100",
    "UPDATE entry SET kind = 'flown' WHERE seq = 100",
    "UPDATE entry SET at_us = 9223372036854775807 WHERE seq = 100",
    "UPDATE entry SET note = CAST (x'ff' AS TEXT) WHERE seq = 100",
    "UPDATE entry SET amount = 9e999 WHERE seq = 100",
    "UPDATE entry SET act = 4 WHERE seq = 100",
    "UPDATE entry SET of = 99 WHERE seq = 100",
    "UPDATE entry SET shift = 77 WHERE seq = 100",
    "UPDATE entry SET id = '' WHERE seq = 100",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (spoils); i++) {
    LbRecovery recovery;
    gsize n;
    const guint8 *bytes = g_bytes_get_data (desk->bytes, &n);

    fixture_write (desk->path, bytes, n);
    damage (desk->path, spoils[i]);
    g_autoptr (LbLedger) part = recover (desk, &recovery);
    g_assert_cmpuint (part->entries->len, ==, desk->whole->entries->len - 1);
    g_assert_cmpuint (recovery.n_lost_entries, ==, 1);
    g_assert_cmpint (g_remove (desk->new_path), ==, 0);
  }
}

static void
test_format_1 (Desk *desk, gconstpointer data)
{
  format_1_make (desk->path);
  g_autoptr (GBytes) old = fixture_bytes (desk->path);
  gsize n;
  const guint8 *bytes = g_bytes_get_data (old, &n);
  g_autofree guint8 *torn = g_memdup2 (bytes, n);
  LbRecovery recovery;

  memset (torn + 100, 0xee, 500);
  fixture_write (desk->path, torn, n);
  g_autoptr (LbLedger) part = recover (desk, &recovery);
  g_assert_cmpuint (part->entries->len, ==, desk->whole->entries->len);
}

static void
test_refused (Desk *desk, gconstpointer data)
{
  LbRecovery recovery;
  g_autoptr (GError) error = NULL;
  static const char *const strangers[] = { "", "not a job", "SQLite format 3" };

  for (gsize i = 0; i < G_N_ELEMENTS (strangers); i++) {
    g_assert_true (g_file_set_contents (desk->path, strangers[i], -1, NULL));
    g_assert_false (lb_book_recover (desk->path, desk->new_path, &recovery, NULL, &error));
    g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED);
    g_clear_error (&error);
    g_assert_false (g_file_test (desk->new_path, G_FILE_TEST_EXISTS));
  }
  g_assert_false (lb_book_recover (desk->path, desk->path, &recovery, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN);
  g_clear_error (&error);
  g_assert_false (lb_book_recover ("/nowhere", desk->new_path, &recovery, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN);
}

static void
test_cancelled (Desk *desk, gconstpointer data)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (LbBook) book = lb_book_open (desk->path, LB_BOOK_WRITE, NULL);
  g_autoptr (GError) error = NULL;
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_NOTE);
  LbRecovery recovery;

  draft.note = "one of many";
  g_assert_true (lb_book_begin (book, NULL));
  for (int i = 0; i < 2000; i++)
    g_assert_true (lb_book_record (book, &draft, 1, NULL, NULL));
  g_assert_true (lb_book_commit (book, NULL));
  g_cancellable_cancel (cancellable);
  g_assert_false (lb_book_recover (desk->path, desk->new_path, &recovery, cancellable, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_CANCELLED);
  g_assert_false (g_file_test (desk->new_path, G_FILE_TEST_EXISTS));
}

int
main (int argc, char **argv)
{
  static const struct
  {
    const char *name;
    void (*test) (Desk *desk, gconstpointer data);
  } tests[] = {
    { "/book/recover/whole", test_whole },
    { "/book/recover/first-page", test_first_page },
    { "/book/recover/inner-pages", test_inner_pages },
    { "/book/recover/each-page", test_each_page },
    { "/book/recover/cut", test_cut },
    { "/book/recover/lost-rows", test_lost_rows },
    { "/book/recover/spoilt-rows", test_spoilt_rows },
    { "/book/recover/format-1", test_format_1 },
    { "/book/recover/refused", test_refused },
    { "/book/recover/cancelled", test_cancelled },
  };

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].name, Desk, NULL, begin, tests[i].test, end);
  return g_test_run ();
}
