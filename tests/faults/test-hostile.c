/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Files that somebody made to harm: with things in the schema that act, a schema that lies, sizes
 * beyond all sense; of this format and of the old one, which is opened by another way. Each is
 * refused before anything of it is evaluated, stays as it is, and leaves nothing beside it. What is
 * recovered from one is a job file and no more. */
#include "book-fixture.h"

#include "book/recover.h"
#include "format-1.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <sqlite3.h>
#include <string.h>
#include <unistd.h>

/* Opens the schema for editing; SQLite allows it to whoever has the file. */
#define EDIT "PRAGMA writable_schema=ON; PRAGMA ignore_check_constraints=ON; "

static const struct
{
  const char *name;
  const char *sql;
} attacks[] = {
  { "trigger on insert", "CREATE TRIGGER t AFTER INSERT ON entry BEGIN DELETE FROM pile; END" },
  { "trigger on delete",
    "CREATE TRIGGER t BEFORE DELETE ON shift BEGIN SELECT raise (IGNORE); END" },
  { "trigger in a view's place",
    "ALTER TABLE shift RENAME TO hidden; CREATE VIEW shift AS SELECT * FROM hidden; "
    "CREATE TRIGGER t INSTEAD OF INSERT ON shift BEGIN DELETE FROM entry; END" },
  { "view for a table",
    "ALTER TABLE job RENAME TO hidden; CREATE VIEW job AS SELECT key, value FROM hidden" },
  { "view that never ends",
    "DROP TABLE job; CREATE VIEW job (key, value) AS WITH RECURSIVE n (i) AS "
    "(SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT 'id', i FROM n" },
  { "generated column", "ALTER TABLE shift ADD COLUMN g INT AS (day * 2)" },
  { "generated column that is large",
    "ALTER TABLE pile ADD COLUMN g TEXT AS (hex (zeroblob (500000000)))" },
  { "index on an expression", "CREATE INDEX i ON entry (abs (at_us))" },
  { "index on part of a table", "CREATE INDEX i ON entry (id) WHERE zeroblob (1000000000) > 1" },
  { "default that is large", "ALTER TABLE entry ADD COLUMN d TEXT DEFAULT (1)" },
  { "another table", "CREATE TABLE x (y)" },
  { "a table less", "PRAGMA foreign_keys=OFF; DROP TABLE shift" },
  { "virtual table", EDIT "INSERT INTO sqlite_schema VALUES ('table', 'v', 'v', 0, "
                          "'CREATE VIRTUAL TABLE v USING no_such_module')" },
  { "statistics", "ANALYZE" },
  { "schema without types",
    EDIT "UPDATE sqlite_schema SET sql = replace (sql, 'STRICT', '') WHERE name = 'pile'" },
  { "schema with a check that acts",
    EDIT "UPDATE sqlite_schema SET sql = replace (sql, 'watch TEXT NOT NULL', "
         "'watch TEXT NOT NULL CHECK (load_extension (watch))') WHERE name = 'shift'" },
  { "schema that is no SQL", EDIT "UPDATE sqlite_schema SET sql = 'CREATE' WHERE name = 'job'" },
  { "schema of another name", EDIT "UPDATE sqlite_schema SET name = 'jobs' WHERE name = 'job'" },
  { "schema that nests without end",
    EDIT "UPDATE sqlite_schema SET sql = 'CREATE TABLE job (key TEXT, value TEXT CHECK (' || "
         "replace (hex (zeroblob (40000)), '0', '(') || '1' || "
         "replace (hex (zeroblob (40000)), '0', ')') || '))' WHERE name = 'job'" },
  { "schema of a hundred thousand bytes",
    EDIT "UPDATE sqlite_schema SET sql = sql || replace (hex (zeroblob (100000)), '0', ' ') "
         "WHERE name = 'entry'" },
  { "root on the first page", EDIT "UPDATE sqlite_schema SET rootpage = 1 WHERE name = 'entry'" },
  { "root on another's page",
    EDIT "UPDATE sqlite_schema SET rootpage = (SELECT rootpage FROM sqlite_schema WHERE name = "
         "'pile') WHERE name = 'entry'" },
  { "root beyond the end", EDIT "UPDATE sqlite_schema SET rootpage = 100000 WHERE name = 'entry'" },
  { "note of a million bytes",
    "UPDATE entry SET note = replace (hex (zeroblob (1000000)), '0', 'a') WHERE seq = 2" },
  { "number beyond every row", "PRAGMA foreign_keys=OFF; "
                               "UPDATE entry SET seq = 9223372036854775807 WHERE seq = 2" },
  { "names that are one another's", "PRAGMA foreign_keys=OFF; UPDATE entry SET act = 3, of = 3 "
                                    "WHERE seq = 2" },
};

/* Bytes of the first page's header, where SQL does not reach. */
static const struct
{
  const char *name;
  gsize at;
  guint8 bytes[4];
  gsize n;
} pokes[] = {
  { "pages of 64 KB", 16, { 0x00, 0x01 }, 2 },
  { "pages of one byte", 16, { 0x00, 0x02 }, 2 },
  { "write-ahead log", 18, { 2, 2 }, 2 },
  { "room kept free on each page", 20, { 250 }, 1 },
  { "four thousand million pages", 28, { 0xff, 0xff, 0xff, 0xff }, 4 },
  { "a list of free pages that begins beyond the end", 32, { 0x7f, 0xff, 0xff, 0xff }, 4 },
  { "a list of free pages that is itself", 32, { 0, 0, 0, 1 }, 4 },
  { "another encoding", 56, { 0, 0, 0, 2 }, 4 },
  { "a format to come", 60, { 0, 0, 0, 9 }, 4 },
  { "another program's", 68, { 'X', 'X', 'X', 'X' }, 4 },
};

typedef struct
{
  char *folder, *path, *recovered;
  GBytes *jobs[2]; /* of the old format and of this one */
  guint n_tried, n_recovered;
} Ground;

static void
begin (Ground *ground, gconstpointer data)
{
  ground->folder = fixture_folder ();
  ground->path = fixture_path (ground->folder, "hostile");
  ground->recovered = fixture_path (ground->folder, "recovered");

  LbBook *book = fixture_book (ground->path);
  fixture_add_piles (book, 3, 8);
  g_autofree char *shift = fixture_shift (book, 0);
  for (int i = 0; i < 5; i++)
    g_free (fixture_record (book, shift, LB_ENTRY_RODS, i % 3, NULL, i));
  lb_book_close (book);
  ground->jobs[1] = fixture_bytes (ground->path);
  format_1_make (ground->path);
  ground->jobs[0] = fixture_bytes (ground->path);
}

static void
end (Ground *ground, gconstpointer data)
{
  fixture_remove (ground->folder);
  g_free (ground->folder);
  g_free (ground->path);
  g_free (ground->recovered);
  g_bytes_unref (ground->jobs[0]);
  g_bytes_unref (ground->jobs[1]);
}

static guint
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
expect_refused (Ground *ground, const char *name, LbBookMode mode)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (ground->path, mode, &error);
  g_autoptr (LbLedger) ledger = book != NULL ? lb_book_read (book, NULL, &error) : NULL;

  if (ledger != NULL)
    g_test_fail_printf ("%s: read", name);
  else if (error->domain != LB_BOOK_ERROR ||
           (error->code != LB_BOOK_ERROR_DAMAGED && error->code != LB_BOOK_ERROR_FOREIGN &&
            error->code != LB_BOOK_ERROR_NEWER))
    g_test_fail_printf ("%s: %s", name, error->message);
}

/* Rows are taken, and nothing that acts: the new file passes every check there is. */
static void
expect_harmless (Ground *ground)
{
  LbRecovery recovery;
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) findings = NULL;

  if (!lb_book_recover (ground->path, ground->recovered, &recovery, NULL, &error)) {
    g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED);
    return;
  }
  g_autoptr (LbBook) book = lb_book_open (ground->recovered, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  g_assert_true (lb_book_check (book, &findings, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (findings[0], ==, NULL);
  g_assert_cmpint (g_remove (ground->recovered), ==, 0);
  ground->n_recovered++;
}

static void
expect_all (Ground *ground, const char *name)
{
  g_autoptr (GBytes) before = fixture_bytes (ground->path);

  expect_refused (ground, name, LB_BOOK_READ);
  expect_refused (ground, name, LB_BOOK_WRITE);
  expect_harmless (ground);
  g_autoptr (GBytes) after = fixture_bytes (ground->path);
  if (!g_bytes_equal (before, after))
    g_test_fail_printf ("%s: changed", name);
  if (count_files (ground->folder) != 1)
    g_test_fail_printf ("%s: left a file beside it", name);
  ground->n_tried++;
}

static void
restore (Ground *ground, gsize format)
{
  gsize n = 0;
  const void *bytes = g_bytes_get_data (ground->jobs[format], &n);

  fixture_write (ground->path, bytes, n);
}

static void
tell (const Ground *ground)
{
  g_test_message ("%u hostile files refused and left alone; a job file recovered from %u of them",
                  ground->n_tried, ground->n_recovered);
  g_assert_cmpuint (ground->n_recovered, >, ground->n_tried / 2);
}

static void
test_attacks (Ground *ground, gconstpointer data)
{
  for (gsize format = 0; format < G_N_ELEMENTS (ground->jobs); format++) {
    for (gsize i = 0; i < G_N_ELEMENTS (attacks); i++) {
      restore (ground, format);
      fixture_tamper (ground->path, attacks[i].sql);
      expect_all (ground, attacks[i].name);
    }
  }
  tell (ground);
}

static void
test_pokes (Ground *ground, gconstpointer data)
{
  for (gsize format = 0; format < G_N_ELEMENTS (ground->jobs); format++) {
    for (gsize i = 0; i < G_N_ELEMENTS (pokes); i++) {
      gsize n = 0;
      const guint8 *bytes = g_bytes_get_data (ground->jobs[format], &n);
      g_autofree guint8 *poked = g_memdup2 (bytes, n);

      memcpy (poked + pokes[i].at, pokes[i].bytes, pokes[i].n);
      fixture_write (ground->path, poked, n);
      expect_all (ground, pokes[i].name);
    }
  }
  tell (ground);
}

/* Five thousand million bytes, of which a disk holds a few: no job is as large. */
static void
test_absurd_size (Ground *ground, gconstpointer data)
{
  restore (ground, 1);
  if (truncate (ground->path, G_GINT64_CONSTANT (5000000000)) != 0) {
    g_test_skip ("the file system holds no file that large");
    return;
  }
  expect_refused (ground, "five thousand million bytes", LB_BOOK_READ);
  expect_refused (ground, "five thousand million bytes", LB_BOOK_WRITE);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  fixture_use_memory ();
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/faults/hostile/attacks", Ground, NULL, begin, test_attacks, end);
  g_test_add ("/faults/hostile/pokes", Ground, NULL, begin, test_pokes, end);
  g_test_add ("/faults/hostile/absurd-size", Ground, NULL, begin, test_absurd_size, end);
  return g_test_run ();
}
