/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The copies that are kept by themselves: one for each state of the file, the last ten, found again
 * by the file's path alone, and nothing else is ever removed. */
#include "book-fixture.h"
#include "book/backup.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <string.h>
#include <sys/stat.h>
#include <utime.h>

typedef struct
{
  char *folder; /* with the job in it */
  char *copies; /* empty at first */
  char *path;
  LbBook *book;
} Desk;

static void
begin (Desk *desk, gconstpointer data)
{
  desk->folder = fixture_folder ();
  desk->copies = fixture_folder ();
  desk->path = fixture_path (desk->folder, "Pier 9 – north");
  desk->book = fixture_book (desk->path);
  fixture_add_piles (desk->book, 3, 8);
}

static void
remove_tree (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    if (g_file_test (path, G_FILE_TEST_IS_DIR))
      fixture_remove (path);
    else
      g_assert_cmpint (g_remove (path), ==, 0);
  }
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

static void
end (Desk *desk, gconstpointer data)
{
  lb_book_close (desk->book);
  fixture_remove (desk->folder);
  remove_tree (desk->copies);
  g_free (desk->folder);
  g_free (desk->copies);
  g_free (desk->path);
}

static void
note (Desk *desk, const char *text)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_NOTE);
  g_autoptr (GError) error = NULL;

  draft.note = text;
  g_assert_true (lb_book_record (desk->book, &draft, 1, NULL, &error));
  g_assert_no_error (error);
}

/* A copy at so many seconds; %NULL when none was needed. */
static char *
keep (Desk *desk, gint64 s)
{
  g_autoptr (GError) error = NULL;
  char *path = NULL;

  g_assert_true (
    lb_backup_keep (desk->copies, desk->path, FIXTURE_US + s * G_USEC_PER_SEC, &path, &error));
  g_assert_no_error (error);
  return path;
}

static void
expect_last_note (const LbBackup *backup, const char *text)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (backup->path, LB_BOOK_READ, &error);
  g_assert_no_error (error);
  g_autoptr (LbLedger) ledger = fixture_read (book);

  g_assert_cmpstr (lb_ledger_entry (ledger, ledger->entries->len - 1)->note, ==, text);
}

static void
test_only_what_is_new (Desk *desk, gconstpointer data)
{
  g_autoptr (GPtrArray) none = lb_backup_list (desk->copies, desk->path);
  g_assert_cmpuint (none->len, ==, 0);

  g_autofree char *first = keep (desk, 0);
  g_assert_nonnull (first);
  g_assert_true (g_str_has_suffix (first, "20260302T060000Z.lastbent"));
  g_assert_null (keep (desk, 60));

  note (desk, "one");
  g_autofree char *second = keep (desk, 120);
  g_assert_nonnull (second);
  g_assert_null (keep (desk, 180));

  g_autoptr (GPtrArray) two = lb_backup_list (desk->copies, desk->path);
  g_assert_cmpuint (two->len, ==, 2);
  const LbBackup *newest = g_ptr_array_index (two, 0);
  g_assert_cmpint (newest->made_us, ==, FIXTURE_US + 120 * G_USEC_PER_SEC);
  g_assert_cmpint (newest->size, >, 8192);
  expect_last_note (newest, "one");
}

/* The last ten stay, also when the clock was put back in between. */
static void
test_pruned (Desk *desk, gconstpointer data)
{
  for (int i = 0; i < 25; i++) {
    g_autofree char *text = g_strdup_printf ("note %d", i);

    note (desk, text);
    g_free (keep (desk, i < 20 ? i * 60 : -100000));
  }
  g_autoptr (GPtrArray) kept = lb_backup_list (desk->copies, desk->path);
  g_assert_cmpuint (kept->len, ==, LB_BACKUPS_KEPT);
  for (guint i = 0; i < kept->len; i++) {
    g_autofree char *text = g_strdup_printf ("note %u", 24 - i);
    expect_last_note (g_ptr_array_index (kept, i), text);
  }
}

/* What is no copy stays where it is; a half-made one of long ago goes. */
static void
test_others_stay (Desk *desk, gconstpointer data)
{
  g_autofree char *first = keep (desk, 0);
  g_autofree char *own = g_path_get_dirname (first);
  static const char *const strangers[] = { "notes.txt", "20260302.lastbent",
                                           "20260302T060000Zx.lastbent", ".lastbent-new.part" };

  for (gsize i = 0; i < G_N_ELEMENTS (strangers); i++) {
    g_autofree char *path = g_build_filename (own, strangers[i], NULL);
    g_assert_true (g_file_set_contents (path, "x", 1, NULL));
  }
  g_autofree char *litter = g_build_filename (own, ".lastbent-old.part", NULL);
  g_assert_true (g_file_set_contents (litter, "x", 1, NULL));
  struct utimbuf long_ago = { .actime = 1000, .modtime = 1000 };
  g_assert_cmpint (g_utime (litter, &long_ago), ==, 0);

  for (int i = 0; i < 12; i++) {
    note (desk, "more");
    g_free (keep (desk, 60 + i));
  }
  for (gsize i = 0; i < G_N_ELEMENTS (strangers); i++) {
    g_autofree char *path = g_build_filename (own, strangers[i], NULL);
    g_assert_true (g_file_test (path, G_FILE_TEST_EXISTS));
  }
  g_assert_false (g_file_test (litter, G_FILE_TEST_EXISTS));
}

/* Another file of the same job keeps its own; a damaged file's are found, and none is made of it. */
static void
test_by_path (Desk *desk, gconstpointer data)
{
  g_autofree char *other = fixture_path (desk->folder, "other");
  g_autoptr (GError) error = NULL;
  char *path = NULL;

  g_free (keep (desk, 0));
  g_assert_true (lb_book_copy_to (desk->book, other, NULL));
  g_autoptr (GPtrArray) none = lb_backup_list (desk->copies, other);
  g_assert_cmpuint (none->len, ==, 0);

  g_assert_true (g_file_set_contents (desk->path, "SQLite format 3", -1, NULL));
  g_assert_false (
    lb_backup_keep (desk->copies, desk->path, FIXTURE_US + G_USEC_PER_SEC, &path, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_FOREIGN);
  g_assert_null (path);
  g_autoptr (GPtrArray) one = lb_backup_list (desk->copies, desk->path);
  g_assert_cmpuint (one->len, ==, 1);
}

/* A copy that was spoilt does not count as one; where no folder can be, nothing stops. */
static void
test_spoilt (Desk *desk, gconstpointer data)
{
  g_autofree char *first = keep (desk, 0);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (g_chmod (first, 0600), ==, 0);
  g_assert_true (g_file_set_contents (first, "spoilt", -1, NULL));
  g_autofree char *second = keep (desk, 60);
  g_assert_nonnull (second);
  g_assert_false (lb_backup_keep ("/dev/null", desk->path, FIXTURE_US, NULL, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK);
}

static void
test_marked (Desk *desk, gconstpointer data)
{
  g_autofree char *first = keep (desk, 0);
  struct stat facts;

  g_assert_cmpint (g_stat (first, &facts), ==, 0);
  g_assert_cmpuint (facts.st_mode & 0777, ==, 0400);
  g_assert_true (lb_backup_is_kept_in (desk->copies, first));
  g_assert_false (lb_backup_is_kept_in (desk->copies, desk->path));
}

int
main (int argc, char **argv)
{
  static const struct
  {
    const char *name;
    void (*test) (Desk *desk, gconstpointer data);
  } tests[] = {
    { "/book/backup/only-what-is-new", test_only_what_is_new },
    { "/book/backup/pruned", test_pruned },
    { "/book/backup/others-stay", test_others_stay },
    { "/book/backup/by-path", test_by_path },
    { "/book/backup/spoilt", test_spoilt },
    { "/book/backup/marked", test_marked },
  };

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].name, Desk, NULL, begin, tests[i].test, end);
  return g_test_run ();
}
