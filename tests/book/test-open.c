/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Files that are not what they should be: each is refused with its own code and a sentence, and
 * has the same bytes afterwards. */
#include "book-fixture.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <locale.h>
#include <sqlite3.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* A job file of a few entries, closed. */
static char *
make_job (const char *folder)
{
  char *path = fixture_path (folder, "job");
  LbBook *book = fixture_book (path);
  fixture_add_piles (book, 3, 8);
  g_autofree char *shift = fixture_shift (book, 0);

  g_free (fixture_burn (book, shift, 0, LB_BAR (0), 0));
  g_free (fixture_burn (book, shift, 1, LB_BAR (1), 0));
  lb_book_close (book);
  return path;
}

static int
code_of_error (const GError *error)
{
  if (error == NULL)
    return -1;
  g_assert_true (error->domain == LB_BOOK_ERROR);
  g_assert_cmpuint (strlen (error->message), >, 20);
  return error->code;
}

/* Opens and reads, one after the other and side by side: both come to the same, and neither
 * changes the file. */
static int
code_of (const char *path, LbBookMode mode)
{
  g_autoptr (GBytes) before = fixture_bytes (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (GError) error_beside = NULL;
  g_autoptr (LbBook) book = lb_book_open (path, mode, &error);
  g_autoptr (LbLedger) ledger = book != NULL ? lb_book_read (book, NULL, &error) : NULL;
  g_autoptr (LbLedger) ledger_beside = NULL;
  g_autoptr (LbBook) beside = lb_book_open_and_read (path, mode, NULL, &ledger_beside,
                                                     &error_beside);
  g_autoptr (GBytes) after = fixture_bytes (path);

  g_assert_true (g_bytes_equal (before, after));
  g_assert_true ((ledger == NULL) == (error != NULL));
  g_assert_true ((ledger_beside == NULL) == (error_beside != NULL));
  g_assert_true ((beside == NULL) == (ledger_beside == NULL));
  g_assert_cmpint (code_of_error (error), ==, code_of_error (error_beside));
  if (ledger != NULL) {
    g_assert_cmpstr (ledger->job_id, ==, ledger_beside->job_id);
    g_assert_cmpuint (ledger->piles->len, ==, ledger_beside->piles->len);
    g_assert_cmpint (ledger->last_seq, ==, ledger_beside->last_seq);
    g_assert_true (lb_book_is_read_only (book) == lb_book_is_read_only (beside));
  }
  return code_of_error (error);
}

static void
test_not_a_file (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *missing = fixture_path (folder, "missing");
  g_autofree char *pipe = fixture_path (folder, "pipe");
  g_autoptr (GError) error = NULL;

  g_assert_null (lb_book_open (missing, LB_BOOK_WRITE, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN);
  g_clear_error (&error);
  g_assert_false (g_file_test (missing, G_FILE_TEST_EXISTS));
  g_assert_null (lb_book_open (folder, LB_BOOK_WRITE, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN);
  g_clear_error (&error);
  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  g_assert_null (lb_book_open (pipe, LB_BOOK_WRITE, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN);
  fixture_remove (folder);
}

static void
test_foreign (void)
{
  static const char *const contents[] = {
    "", "x", "mark,x,y\nG7,1,2\n", "SQLite format 3", NULL,
  };
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "foreign");

  for (int i = 0; contents[i] != NULL; i++) {
    g_assert_true (g_file_set_contents (path, contents[i], -1, NULL));
    g_assert_cmpint (code_of (path, LB_BOOK_WRITE), ==, LB_BOOK_ERROR_FOREIGN);
  }
  g_remove (path);
  fixture_tamper (path, "CREATE TABLE job (key TEXT)");
  g_assert_cmpint (code_of (path, LB_BOOK_WRITE), ==, LB_BOOK_ERROR_FOREIGN);
  fixture_remove (folder);
}

typedef struct
{
  const char *name;
  const char *sql;
  int code;
} Case;

/* Opens the schema for editing; SQLite allows it to whoever has the file. */
#define EDIT "PRAGMA writable_schema=ON; PRAGMA ignore_check_constraints=ON; "

static const Case cases[] = {
  { "untouched", "SELECT 1", -1 },
  { "newer", "PRAGMA user_version=3", LB_BOOK_ERROR_NEWER },
  { "older", "PRAGMA user_version=0", LB_BOOK_ERROR_DAMAGED },
  { "other-program", "PRAGMA application_id=7", LB_BOOK_ERROR_FOREIGN },
  { "extra-table", "CREATE TABLE x (y)", LB_BOOK_ERROR_DAMAGED },
  { "missing-table", "DROP TABLE entry", LB_BOOK_ERROR_DAMAGED },
  { "trigger", "CREATE TRIGGER t AFTER INSERT ON entry BEGIN DELETE FROM pile; END",
    LB_BOOK_ERROR_DAMAGED },
  { "view", "ALTER TABLE job RENAME TO hidden; CREATE VIEW job AS SELECT key, value FROM hidden",
    LB_BOOK_ERROR_DAMAGED },
  { "index", "CREATE INDEX i ON entry (abs (at_us))", LB_BOOK_ERROR_DAMAGED },
  { "generated-column", "ALTER TABLE shift ADD COLUMN g INT AS (day * 2)", LB_BOOK_ERROR_DAMAGED },
  { "statistics", "ANALYZE", LB_BOOK_ERROR_DAMAGED },
  { "schema-text",
    EDIT "UPDATE sqlite_schema SET sql = replace (sql, 'STRICT', '') WHERE name = 'pile'",
    LB_BOOK_ERROR_DAMAGED },
  { "schema-name",
    EDIT "UPDATE sqlite_schema SET sql = replace (sql, 'watch TEXT', 'watch ANY') "
         "WHERE name = 'shift'",
    LB_BOOK_ERROR_DAMAGED },
  { "root-page", EDIT "UPDATE sqlite_schema SET rootpage = 1 WHERE name = 'entry'",
    LB_BOOK_ERROR_DAMAGED },
  { "gap", "PRAGMA foreign_keys=OFF; DELETE FROM entry WHERE seq = 2", LB_BOOK_ERROR_DAMAGED },
  { "no-such-pile", "UPDATE entry SET pile = 4 WHERE seq = 2", LB_BOOK_ERROR_DAMAGED },
  { "no-such-shift", "UPDATE entry SET shift = 2 WHERE seq = 2", LB_BOOK_ERROR_DAMAGED },
  { "act-to-come", "UPDATE entry SET act = 3 WHERE seq = 2", LB_BOOK_ERROR_DAMAGED },
  { "act-of-another", "UPDATE entry SET act = 1 WHERE seq = 3", LB_BOOK_ERROR_DAMAGED },
  { "takes-nothing-back", "UPDATE entry SET kind = 'take-back' WHERE seq = 2",
    LB_BOOK_ERROR_DAMAGED },
  { "takes-itself-back", "UPDATE entry SET kind = 'take-back', of = 2 WHERE seq = 2",
    LB_BOOK_ERROR_DAMAGED },
  { "kind", EDIT "UPDATE entry SET kind = 'flown' WHERE seq = 2", LB_BOOK_ERROR_DAMAGED },
  { "bars", EDIT "UPDATE entry SET bars = -1 WHERE seq = 2", LB_BOOK_ERROR_DAMAGED },
  { "time", "UPDATE entry SET at_us = 9223372036854775807", LB_BOOK_ERROR_DAMAGED },
  { "infinite", "UPDATE entry SET amount = 9e999 WHERE seq = 2", LB_BOOK_ERROR_DAMAGED },
  { "far-pile", "UPDATE pile SET x_m = 1e300 WHERE seq = 1", LB_BOOK_ERROR_DAMAGED },
  { "infinite-pile", "UPDATE pile SET head_m = -9e999 WHERE seq = 1", LB_BOOK_ERROR_DAMAGED },
  { "no-mark", "UPDATE pile SET mark = ''  WHERE seq = 1", LB_BOOK_ERROR_DAMAGED },
  { "mark-that-acts", "UPDATE pile SET mark = char (27) || '[2J' WHERE seq = 1",
    LB_BOOK_ERROR_DAMAGED },
  { "not-utf-8", "UPDATE pile SET note = CAST (x'ff41' AS TEXT)", LB_BOOK_ERROR_DAMAGED },
  { "nul-in-text", "UPDATE pile SET note = CAST (x'410042' AS TEXT)", LB_BOOK_ERROR_DAMAGED },
  { "long-note", "UPDATE entry SET note = CAST (zeroblob (900000) AS TEXT) WHERE seq = 2",
    LB_BOOK_ERROR_DAMAGED },
  { "huge-note",
    "UPDATE entry SET note = replace (hex (zeroblob (4000000)), '0', 'a') WHERE seq = 2",
    LB_BOOK_ERROR_DAMAGED },
  { "day", "UPDATE shift SET day = 4000000000", LB_BOOK_ERROR_DAMAGED },
  { "no-identity", "DELETE FROM job", LB_BOOK_ERROR_DAMAGED },
  { "wal", "PRAGMA journal_mode=WAL; PRAGMA user_version=2", LB_BOOK_ERROR_DAMAGED },
  { "wrong-type",
    EDIT "UPDATE sqlite_schema SET sql = replace (sql, ' STRICT', '') WHERE name = 'entry'; "
         "PRAGMA schema_version=99; UPDATE entry SET at_us = 'noon' WHERE seq = 2; "
         "UPDATE entry SET bars = '7' WHERE seq = 2; "
         "UPDATE sqlite_schema SET sql = sql || ' STRICT' WHERE name = 'entry'",
    LB_BOOK_ERROR_DAMAGED },
  { "unknown-bar", "UPDATE pile SET bar = '#99'", -1 },
};

static void
test_case (gconstpointer data)
{
  const Case *tampering = data;
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = make_job (folder);
  g_autofree char *journal = g_strconcat (path, "-wal", NULL);

  fixture_tamper (path, tampering->sql);
  g_assert_cmpint (code_of (path, LB_BOOK_READ), ==, tampering->code);
  g_assert_cmpint (code_of (path, LB_BOOK_WRITE), ==, tampering->code);
  g_assert_false (g_file_test (journal, G_FILE_TEST_EXISTS));
  fixture_remove (folder);
}

/* Who may not write reads: the file's own permission, then the folder's. */
static void
test_read_only (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = make_job (folder);
  const uid_t owner = geteuid ();
  /* Root may write everywhere; the test goes on as somebody else. 65534 is nobody. */
  const uid_t stranger = owner == 0 ? 65534 : owner;

  for (int i = 0; i < 2; i++) {
    g_autoptr (GError) error = NULL;
    LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_NOTE);

    g_assert_cmpint (g_chmod (path, i == 0 ? 0444 : 0666), ==, 0);
    g_assert_cmpint (g_chmod (folder, i == 0 ? 0777 : 0555), ==, 0);
    g_assert_cmpint (seteuid (stranger), ==, 0);
    g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_WRITE, &error);
    g_assert_no_error (error);
    g_assert_true (lb_book_is_read_only (book));
    g_autoptr (LbLedger) ledger = fixture_read (book);
    g_assert_cmpuint (ledger->piles->len, ==, 3);
    draft.note = "no";
    g_assert_false (lb_book_record (book, &draft, 1, NULL, &error));
    g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_READ_ONLY);
    g_assert_cmpint (seteuid (owner), ==, 0);
  }

  g_autoptr (GError) error = NULL;
  g_assert_cmpint (g_chmod (path, 0000), ==, 0);
  g_assert_cmpint (seteuid (stranger), ==, 0);
  g_assert_null (lb_book_open (path, LB_BOOK_READ, &error));
  g_assert_cmpint (seteuid (owner), ==, 0);
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN);
  g_assert_cmpint (g_chmod (folder, 0755), ==, 0);
  fixture_remove (folder);
}

/* Asked for reading only, nothing can be recorded and nothing is written. */
static void
test_mode_read (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = make_job (folder);
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_READ, &error);
  g_autofree char *shift = NULL;

  g_assert_true (lb_book_is_read_only (book));
  g_assert_false (lb_book_open_shift (book, FIXTURE_DAY, "day", NULL, &shift, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_READ_ONLY);
  fixture_remove (folder);
}

/* A copy of file and journal taken in the middle of a transaction is what a crash leaves. */
static void
test_left_by_a_crash (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = make_job (folder);
  g_autofree char *crashed = fixture_path (folder, "crashed");
  g_autofree char *from = g_strconcat (path, "-journal", NULL);
  g_autofree char *to = g_strconcat (crashed, "-journal", NULL);
  g_autoptr (GError) error = NULL;
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  /* A cache of one page makes SQLite write into the file before the end. */
  g_assert_cmpint (sqlite3_exec (db,
                                 "PRAGMA cache_size=1; PRAGMA cache_spill=1; BEGIN; "
                                 "WITH RECURSIVE n (i) AS (SELECT 4 UNION ALL SELECT i + 1 FROM n "
                                 "WHERE i < 3000) INSERT INTO entry SELECT i, 'c' || i, i, 0, '', "
                                 "NULL, 'note', NULL, '', 0, 0, NULL, 0, 0, 0, 'lost', NULL FROM n",
                                 NULL, NULL, NULL),
                   ==, SQLITE_OK);
  g_autoptr (GBytes) file = fixture_bytes (path);
  g_autoptr (GBytes) journal = fixture_bytes (from);
  sqlite3_close (db);
  g_file_set_contents (crashed, g_bytes_get_data (file, NULL), (gssize) g_bytes_get_size (file),
                       &error);
  g_file_set_contents (to, g_bytes_get_data (journal, NULL), (gssize) g_bytes_get_size (journal),
                       &error);
  g_assert_no_error (error);

  g_assert_cmpint (code_of (crashed, LB_BOOK_READ), ==, LB_BOOK_ERROR_OPEN);
  g_autoptr (LbBook) book = lb_book_open (crashed, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  g_autoptr (LbLedger) ledger = fixture_read (book);
  g_assert_cmpint (ledger->last_seq, ==, 3);
  g_assert_false (g_file_test (to, G_FILE_TEST_EXISTS));
  g_autoptr (GBytes) whole = fixture_bytes (path);
  g_autoptr (GBytes) restored = fixture_bytes (crashed);
  g_assert_true (g_bytes_equal (whole, restored));
  fixture_remove (folder);
}

/* A file that is gone or another takes nothing, instead of taking it with it. */
static void
test_replaced (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = make_job (folder);
  g_autofree char *moved = fixture_path (folder, "moved");
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_WRITE, &error);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_NOTE);

  draft.note = "where to?";
  g_assert_cmpint (g_rename (path, moved), ==, 0);
  g_assert_false (lb_book_record (book, &draft, 1, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK);
  g_clear_error (&error);
  g_assert_cmpint (g_rename (moved, path), ==, 0);
  g_assert_true (lb_book_record (book, &draft, 1, NULL, &error));
  fixture_remove (folder);
}

static void
move_away_cb (gsize done, gsize total, gpointer data)
{
  const char *const *paths = data;

  if (done == total)
    g_assert_cmpint (g_rename (paths[0], paths[1]), ==, 0);
}

/* Nor does one that goes while many acts or piles are being stored. */
static void
test_replaced_meanwhile (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = make_job (folder);
  g_autofree char *moved = fixture_path (folder, "moved");
  const char *paths[] = { path, moved };
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_WRITE, &error);
  g_autoptr (LbLedger) before = fixture_read (book);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_NOTE);
  LbPile pile;

  draft.note = "where to?";
  g_assert_true (lb_book_begin (book, &error));
  g_assert_true (lb_book_record (book, &draft, 1, NULL, &error));
  g_assert_cmpint (g_rename (path, moved), ==, 0);
  g_assert_false (lb_book_commit (book, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK);
  g_clear_error (&error);
  g_assert_cmpint (g_rename (moved, path), ==, 0);

  lb_pile_init (&pile);
  pile.mark = "Z99";
  pile.x_m = pile.y_m = 0;
  g_assert_false (lb_book_add_piles (book, &pile, 1, move_away_cb, paths, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK);
  g_clear_error (&error);
  g_assert_cmpint (g_rename (moved, path), ==, 0);

  g_autoptr (LbLedger) after = fixture_read (book);
  g_assert_cmpuint (after->piles->len, ==, before->piles->len);
  g_assert_cmpint (after->last_seq, ==, before->last_seq);
  fixture_remove (folder);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/book/open/not-a-file", test_not_a_file);
  g_test_add_func ("/book/open/foreign", test_foreign);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *name = g_strconcat ("/book/open/", cases[i].name, NULL);
    g_test_add_data_func (name, &cases[i], test_case);
  }
  g_test_add_func ("/book/open/read-only", test_read_only);
  g_test_add_func ("/book/open/mode-read", test_mode_read);
  g_test_add_func ("/book/open/left-by-a-crash", test_left_by_a_crash);
  g_test_add_func ("/book/open/replaced", test_replaced);
  g_test_add_func ("/book/open/replaced-meanwhile", test_replaced_meanwhile);
  return g_test_run ();
}
