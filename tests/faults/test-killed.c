/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The program is killed while it records, 200 times at random moments: every act that it said was
 * stored is there, and the file is whole each time. */
#include "book-fixture.h"

#include <locale.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

#define N_KILLS 200

/* The child: records notes numbered from @next on, and says each number once it is stored.
 * Two entries an act, so that half an act can be told. Never returns. */
static void
record_until_killed (const char *path, guint32 next, int pipe_fd)
{
  LbBook *book = lb_book_open (path, LB_BOOK_WRITE, NULL);

  if (book == NULL)
    _exit (3);
  for (;; next++) {
    LbDraft drafts[2] = { LB_DRAFT_INIT (LB_ENTRY_NOTE), LB_DRAFT_INIT (LB_ENTRY_NOTE) };
    char number[16];

    g_snprintf (number, sizeof number, "%u", next);
    drafts[0].note = drafts[1].note = number;
    if (!lb_book_record (book, drafts, 2, NULL, NULL))
      _exit (4);
    if (write (pipe_fd, &next, sizeof next) != sizeof next)
      _exit (5);
  }
}

/* The last number that the child said; @last when it said none. */
static guint32
read_said (int pipe_fd, guint32 last)
{
  guint32 said;

  while (read (pipe_fd, &said, sizeof said) == sizeof said)
    last = said;
  return last;
}

/* Waits for the first number and then for a while, by chance up to as long as that took:
 * long enough on any disk for the kill to come anywhere in an act. */
static guint32
wait_for_a_moment (int pipe_fd)
{
  const gint64 begin = g_get_monotonic_time ();
  guint32 said = 0;

  g_assert_cmpint (read (pipe_fd, &said, sizeof said), ==, sizeof said);
  const gint64 took = g_get_monotonic_time () - begin;
  g_usleep ((gulong) g_test_rand_int_range (0, (gint32) CLAMP (took, 1000, 1000000)));
  return said;
}

/* Starts a child, kills it after a while, and returns the last number it said. */
static guint32
kill_one (const char *path, guint32 last)
{
  int ends[2];
  int status = 0;

  g_assert_cmpint (pipe (ends), ==, 0);
  const pid_t child = fork ();
  g_assert_cmpint (child, >=, 0);
  if (child == 0) {
    close (ends[0]);
    record_until_killed (path, last + 1, ends[1]);
  }
  close (ends[1]);
  last = wait_for_a_moment (ends[0]);
  g_assert_cmpint (kill (child, SIGKILL), ==, 0);
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFSIGNALED (status));
  last = read_said (ends[0], last);
  close (ends[0]);
  return last;
}

/* Every act up to the last one said is there, whole and in order; one more may be, which was
 * stored and not said any more. Returns the last that is there. */
static guint32
check_file (const char *path, guint32 said)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  g_autoptr (LbLedger) ledger = fixture_read (book);
  const guint n_acts = (ledger->entries->len - 1) / 2;
  g_auto (GStrv) findings = NULL;

  g_assert_cmpuint (ledger->entries->len, ==, 1 + 2 * n_acts);
  g_assert_cmpuint (n_acts, >=, said);
  g_assert_cmpuint (n_acts, <=, said + 1);
  for (guint i = 0; i < 2 * n_acts; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, 1 + i);
    g_assert_cmpuint (strtoul (entry->note, NULL, 10), ==, i / 2 + 1);
  }
  g_assert_true (lb_book_check (book, &findings, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (findings[0], ==, NULL);
  return n_acts;
}

static void
test_killed (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "killed");
  guint32 last = 0;
  guint n_journals = 0;
  guint n_unsaid = 0;

  lb_book_close (fixture_book (path));
  for (int i = 0; i < N_KILLS; i++) {
    g_autofree char *journal = g_strconcat (path, "-journal", NULL);
    const guint32 said = kill_one (path, last);

    if (g_file_test (journal, G_FILE_TEST_EXISTS))
      n_journals++;
    last = check_file (path, said);
    n_unsaid += last - said;
  }
  g_test_message ("%d kills, %u acts said and found, %u stored and not said, "
                  "%u journals rolled back or stale, 0 acts lost",
                  N_KILLS, last - n_unsaid, n_unsaid, n_journals);
  g_assert_cmpuint (last, >=, N_KILLS);
  /* Some kills must have hit the middle of an act, or the test shows nothing. */
  g_assert_cmpuint (n_journals, >, 0);
  fixture_remove (folder);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/faults/killed", test_killed);
  return g_test_run ();
}
