/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Joining a packet of 1,000 entries into a large job against raw SQLite that inserts the same rows in
 * the same run: INSERT … SELECT from the attached packet, one transaction, the pragmas of the book. */
#include "big-job.h"
#include "book/packet.h"
#include "stopwatch.h"

#include <glib/gstdio.h>
#include <sqlite3.h>

#define ROUNDS_QUICK   3
#define ROUNDS_LONG    20
#define ENTRIES_JOINED 1000
#define FIRST_DAY      740000u /* after all of the big job's */

static guint n_rounds = ROUNDS_QUICK;
static guint n_piles = 1000;
static guint n_entries = 20000;

/* The big job three times: where a packet is joined, where its rows are inserted by hand, and the other
 * crew's. */
typedef struct
{
  char *folder;
  char *ours, *raw, *theirs, *packet;
} Files;

static void
run_sql (sqlite3 *db, const char *sql)
{
  char *message = NULL;

  if (sqlite3_exec (db, sql, NULL, NULL, &message) != SQLITE_OK)
    g_error ("%s: %s", sql, message);
}

static void
files_init (Files *files)
{
  g_autoptr (GError) error = NULL;

  files->folder = g_dir_make_tmp ("lastbent-speed-XXXXXX", &error);
  g_assert_no_error (error);
  files->ours = g_build_filename (files->folder, "ours.lastbent", NULL);
  files->raw = g_build_filename (files->folder, "raw.lastbent", NULL);
  files->theirs = g_build_filename (files->folder, "theirs.lastbent", NULL);
  files->packet = g_build_filename (files->folder, "packet.lastpack", NULL);

  g_autoptr (LbBook) book = big_job_create (files->ours, n_piles, n_entries, &error);
  g_assert_no_error (error);
  g_assert_true (lb_book_copy_to (book, files->raw, &error));
  g_assert_true (lb_book_copy_to (book, files->theirs, &error));
}

static void
files_clear (Files *files)
{
  char *const paths[] = { files->ours, files->raw, files->theirs, files->packet };

  for (gsize i = 0; i < G_N_ELEMENTS (paths); i++) {
    g_unlink (paths[i]);
    g_free (paths[i]);
  }
  g_rmdir (files->folder);
  g_free (files->folder);
}

/* The other crew's next shift, sent. */
static void
write_packet (const Files *files, LbBook *theirs, const LbLedger *ledger, guint round)
{
  const LbPacketSpan span = { .first_day = FIRST_DAY + round, .last_day = FIRST_DAY + round };
  g_autofree char *shift = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (lb_book_begin (theirs, &error));
  g_assert_true (lb_book_open_shift (theirs, FIRST_DAY + round, "day", NULL, &shift, &error));
  for (guint i = 0; i < ENTRIES_JOINED; i++) {
    LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_RODS);

    draft.shift_id = shift;
    draft.pile_id = lb_ledger_pile (ledger, i % n_piles)->id;
    draft.amount = i % 20;
    g_assert_true (lb_book_record (theirs, &draft, 1, NULL, &error));
  }
  g_assert_true (lb_book_commit (theirs, &error));
  g_unlink (files->packet);
  g_assert_true (
    lb_packet_write (theirs, &span, "", files->packet, NULL, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
}

/* The packet's piles have the numbers they have in the job; its entries of the shift come last. */
static void
insert_raw (sqlite3 *db)
{
  run_sql (
    db, "BEGIN IMMEDIATE;"
        "INSERT INTO shift SELECT (SELECT max(seq) FROM main.shift) + 1, id, day, watch, "
        "opened_us, who FROM packet.shift;"
        "CREATE TEMP TABLE base AS SELECT (SELECT max(seq) FROM main.entry) - min(seq) + 1 AS n, "
        "(SELECT max(seq) FROM main.shift) AS shift FROM packet.entry WHERE shift IS NOT NULL;"
        "INSERT INTO entry SELECT seq + base.n, id, act + base.n, at_us, who, base.shift, kind, "
        "pile, what, bars, count, amount, start_us, end_us, up_us, note, NULL "
        "FROM packet.entry, base WHERE packet.entry.shift IS NOT NULL ORDER BY seq;"
        "COMMIT;");
}

static void
bench_join (void)
{
  Files files;
  Stopwatch joined, inserted, opened;
  sqlite3 *db;
  g_autoptr (GError) error = NULL;

  files_init (&files);

  g_autoptr (LbBook) ours = lb_book_open (files.ours, LB_BOOK_WRITE, &error);
  g_autoptr (LbBook) theirs = lb_book_open (files.theirs, LB_BOOK_WRITE, &error);
  g_autoptr (LbLedger) ledger = lb_book_read (ours, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (sqlite3_open (files.raw, &db), ==, SQLITE_OK);
  run_sql (db, "PRAGMA synchronous = EXTRA; PRAGMA foreign_keys = ON; PRAGMA mmap_size = 0; "
               "PRAGMA cell_size_check = ON; PRAGMA temp_store = MEMORY");
  stopwatch_init (&joined);
  stopwatch_init (&inserted);
  stopwatch_init (&opened);
  for (guint round = 0; round < n_rounds; round++) {
    g_autofree char *attach = g_strdup_printf ("ATTACH '%s' AS packet", files.packet);
    LbJoined counted = { 0 };

    write_packet (&files, theirs, ledger, round);
    stopwatch_begin (&opened);
    g_autoptr (LbPacket) packet = lb_packet_open (files.packet, NULL, &error);
    stopwatch_end (&opened);
    g_assert_no_error (error);

    stopwatch_begin (&joined);
    lb_book_join (ours, ledger, packet, &counted, NULL, NULL, NULL, &error);
    stopwatch_end (&joined);
    g_assert_no_error (error);
    g_assert_cmpuint (counted.n_entries, ==, ENTRIES_JOINED);
    /* As the window does once it has been told; not part of the join. */
    g_assert_true (lb_book_read_on (ours, ledger, NULL, &error));

    run_sql (db, attach);
    stopwatch_begin (&inserted);
    insert_raw (db);
    stopwatch_end (&inserted);
    run_sql (db, "DROP TABLE temp.base; DETACH packet");
  }

  stopwatch_print (&opened, "opening the packet with all checks");
  stopwatch_print (&joined, "joining 1,000 entries");
  stopwatch_print (&inserted, "INSERT … SELECT by raw SQLite");
  stopwatch_print_ratio ("joining against raw SQLite",
                         stopwatch_median (&joined) / stopwatch_median (&inserted), 2);
  stopwatch_clear (&opened);
  stopwatch_clear (&joined);
  stopwatch_clear (&inserted);
  sqlite3_close (db);
  g_clear_pointer (&ours, lb_book_close);
  g_clear_pointer (&theirs, lb_book_close);
  files_clear (&files);
}

int
main (int argc, char **argv)
{
  if (argc == 2 && g_str_equal (argv[1], "--long")) {
    n_rounds = ROUNDS_LONG;
    n_piles = 10000;
    n_entries = 200000;
  }
  g_print ("1..1\n");
  bench_join ();
  g_print ("ok 1 join\n");
  return 0;
}
