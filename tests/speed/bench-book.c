/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The job file against raw SQLite in the same run: one durable entry, and opening, reading and
 * folding a large job against selecting the same rows. */
#include "big-job.h"
#include "book/finding.h"
#include "book/fold.h"
#include "stopwatch.h"

#include <glib/gstdio.h>
#include <sqlite3.h>

#define ROUNDS_QUICK 40
#define ROUNDS_LONG  400

static guint n_rounds = ROUNDS_QUICK;
static guint n_piles = 1000;
static guint n_entries = 20000;

static const char insert_sql[] =
  "INSERT INTO entry (seq, id, act, at_us, who, shift, kind, pile, what, bars, count, amount, "
  "start_us, end_us, up_us, note, of) VALUES (?1, ?2, ?1, ?3, '', 1, 'bars', 1, '', 1, 0, NULL, "
  "0, 0, 0, '', NULL)";

static void
run_sql (sqlite3 *db, const char *sql)
{
  char *message = NULL;

  if (sqlite3_exec (db, sql, NULL, NULL, &message) != SQLITE_OK)
    g_error ("%s: %s", sql, message);
}

/* The same row by hand: a kept statement, BEGIN IMMEDIATE and COMMIT, the pragmas of the book. */
static void
insert_raw (sqlite3 *db, sqlite3_stmt *insert, gint64 seq)
{
  g_autofree char *id = g_strdup_printf ("raw-%" G_GINT64_FORMAT, seq);

  run_sql (db, "BEGIN IMMEDIATE");
  sqlite3_bind_int64 (insert, 1, seq);
  sqlite3_bind_text (insert, 2, id, -1, SQLITE_TRANSIENT);
  sqlite3_bind_int64 (insert, 3, g_get_real_time ());
  if (sqlite3_step (insert) != SQLITE_DONE)
    g_error ("%s", sqlite3_errmsg (db));
  sqlite3_reset (insert);
  run_sql (db, "COMMIT");
}

static char *
make_job (const char *folder, const char *name)
{
  char *path = g_build_filename (folder, name, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = big_job_create (path, n_piles, n_entries, &error);

  g_assert_no_error (error);

  return path;
}

static void
bench_record (const char *folder)
{
  g_autofree char *ours = make_job (folder, "ours.lastbent");
  g_autofree char *raw = make_job (folder, "raw.lastbent");
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (ours, LB_BOOK_WRITE, &error);
  g_autoptr (LbLedger) ledger = NULL;
  Stopwatch by_book, by_hand;
  sqlite3_stmt *insert;
  sqlite3 *db;

  g_assert_no_error (error);
  ledger = lb_book_read (book, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (sqlite3_open (raw, &db), ==, SQLITE_OK);
  run_sql (db, "PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON");
  g_assert_cmpint (sqlite3_prepare_v2 (db, insert_sql, -1, &insert, NULL), ==, SQLITE_OK);
  stopwatch_init (&by_book);
  stopwatch_init (&by_hand);

  for (guint i = 0; i < n_rounds; i++) {
    LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_BARS);

    draft.pile_id = lb_ledger_pile (ledger, 0)->id;
    draft.shift_id = lb_ledger_shift (ledger, 0)->id;
    draft.bars = 1;
    stopwatch_begin (&by_book);
    g_assert_true (lb_book_record (book, &draft, 1, NULL, &error));
    stopwatch_end (&by_book);
    stopwatch_begin (&by_hand);
    insert_raw (db, insert, ledger->last_seq + 1 + i);
    stopwatch_end (&by_hand);
  }
  stopwatch_print (&by_book, "one durable entry, by the book");
  stopwatch_print (&by_hand, "the same row, by hand");
  stopwatch_print_ratio ("recording one entry against raw SQLite",
                         stopwatch_median (&by_book) / stopwatch_median (&by_hand), 1.5);
  stopwatch_clear (&by_book);
  stopwatch_clear (&by_hand);
  sqlite3_finalize (insert);
  sqlite3_close (db);
}

static void
select_all (const char *path)
{
  sqlite3_stmt *select;
  sqlite3 *db;
  gint64 sum = 0;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (db, "SELECT * FROM entry", -1, &select, NULL), ==,
                   SQLITE_OK);
  while (sqlite3_step (select) == SQLITE_ROW) {
    for (int column = 0; column < sqlite3_column_count (select); column++)
      sum += sqlite3_column_type (select, column) == SQLITE_TEXT
               ? sqlite3_column_bytes (select, column)
               : sqlite3_column_int64 (select, column);
  }
  g_assert_cmpint (sum, !=, 0);
  sqlite3_finalize (select);
  sqlite3_close (db);
}

static void
bench_read (const char *folder)
{
  g_autofree char *path = make_job (folder, "read.lastbent");
  Stopwatch open, read, fold, select;

  stopwatch_init (&open);
  stopwatch_init (&read);
  stopwatch_init (&fold);
  stopwatch_init (&select);
  for (guint i = 0; i < MAX (n_rounds / 20, 3); i++) {
    g_autoptr (GError) error = NULL;

    stopwatch_begin (&open);
    g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_WRITE, &error);
    stopwatch_end (&open);
    g_assert_no_error (error);
    stopwatch_begin (&read);
    g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, &error);
    stopwatch_end (&read);
    g_assert_no_error (error);
    stopwatch_begin (&fold);
    g_autoptr (LbFold) folded = lb_fold_new (ledger, G_MAXINT64);
    stopwatch_end (&fold);
    g_assert_cmpuint (folded->n_piles, ==, n_piles);
    stopwatch_begin (&select);
    select_all (path);
    stopwatch_end (&select);
  }
  stopwatch_print (&open, "opening, with all checks");
  stopwatch_print (&read, "reading the ledger");
  stopwatch_print (&fold, "folding it");
  stopwatch_print (&select, "every row by hand");
  stopwatch_print_ratio (
    "opening, reading and folding against selecting every row",
    (stopwatch_median (&open) + stopwatch_median (&read) + stopwatch_median (&fold)) /
      stopwatch_median (&select),
    4);
  stopwatch_clear (&open);
  stopwatch_clear (&read);
  stopwatch_clear (&fold);
  stopwatch_clear (&select);
}

/* What does not fit together is looked for whenever the shift's sheet is shown anew. */
static void
bench_findings (const char *folder)
{
  g_autofree char *path = make_job (folder, "findings.lastbent");
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_READ, &error);
  g_autoptr (LbLedger) ledger = NULL;
  g_autoptr (LbFold) fold = NULL;
  Stopwatch folding, shift, all;

  g_assert_no_error (error);
  ledger = lb_book_read (book, NULL, &error);
  g_assert_no_error (error);
  fold = lb_fold_new (ledger, G_MAXINT64);
  stopwatch_init (&folding);
  stopwatch_init (&shift);
  stopwatch_init (&all);
  for (guint i = 0; i < MAX (n_rounds / 20, 3); i++) {
    stopwatch_begin (&folding);
    g_autoptr (LbFold) again = lb_fold_new (ledger, G_MAXINT64);
    stopwatch_end (&folding);
    stopwatch_begin (&shift);
    g_autoptr (GArray) of_shift = lb_findings_new_of_shift (ledger, fold, (int) fold->n_shifts / 2);
    stopwatch_end (&shift);
    stopwatch_begin (&all);
    g_autoptr (GArray) of_job = lb_findings_new (ledger, fold);
    stopwatch_end (&all);
    g_assert_cmpuint (of_job->len, >=, of_shift->len);
  }
  stopwatch_print (&shift, "finding what does not fit in one shift");
  stopwatch_print (&all, "and in all of the job");
  stopwatch_print_ratio ("the findings of one shift against folding the job",
                         stopwatch_median (&shift) / stopwatch_median (&folding), 2);
  stopwatch_clear (&folding);
  stopwatch_clear (&shift);
  stopwatch_clear (&all);
}

static void
remove_all (const char *folder)
{
  const char *const names[] = { "ours.lastbent", "raw.lastbent", "read.lastbent",
                                "findings.lastbent" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autofree char *path = g_build_filename (folder, names[i], NULL);
    g_unlink (path);
  }
  g_rmdir (folder);
}

int
main (int argc, char *argv[])
{
  g_autofree char *folder = g_dir_make_tmp ("lastbent-speed-XXXXXX", NULL);

  if (argc > 1 && g_str_equal (argv[1], "--long")) {
    n_rounds = ROUNDS_LONG;
    n_piles = 10000;
    n_entries = 200000;
  }
  g_print ("# %u piles, %u entries\n", n_piles, n_entries);
  bench_record (folder);
  bench_read (folder);
  bench_findings (folder);
  remove_all (folder);
  g_print ("1..1\nok 1 - the job file was measured\n");

  return 0;
}
