/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Two programs write to one file, each a thousand acts, while a third reads on: nobody loses one,
 * and all three see them in the same order. */
#include "book-fixture.h"

#include <locale.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#define N_WRITERS 2
#define WRITER    "--writer"
#define N_ACTS    1000

/* A writer, which is this program begun again: two entries an act, each with its number; its own pile
 * tells it from the other. Another program's lock is waited for, and if that takes too long, the act
 * is recorded again. */
static int
write_acts (const char *path, int writer)
{
  LbBook *book = lb_book_open (path, LB_BOOK_WRITE, NULL);
  const char *pile = writer == 0 ? "test-3" : "test-4";

  if (book == NULL)
    return 3;
  for (int i = 0; i < N_ACTS;) {
    LbDraft drafts[2] = { LB_DRAFT_INIT (LB_ENTRY_NOTE), LB_DRAFT_INIT (LB_ENTRY_NOTE) };
    g_autoptr (GError) error = NULL;
    char number[16];

    g_snprintf (number, sizeof number, "%d", i);
    drafts[0].note = drafts[1].note = number;
    drafts[0].pile_id = drafts[1].pile_id = pile;
    if (lb_book_record (book, drafts, 2, NULL, &error)) {
      i++;
      /* The other's turn. */
      g_usleep (50);
    } else if (!g_error_matches (error, LB_BOOK_ERROR, LB_BOOK_ERROR_BUSY)) {
      g_printerr ("# a writer: %s\n", error->message);
      return 4;
    }
  }
  lb_book_close (book);
  return 0;
}

static pid_t
begin_writer (const char *path, int writer)
{
  const pid_t child = fork ();
  char number[16];

  g_assert_cmpint (child, >=, 0);
  if (child > 0)
    return child;
  g_snprintf (number, sizeof number, "%d", writer);
  execl ("/proc/self/exe", "writer", WRITER, path, number, NULL);
  _exit (2);
}

/* Reads on until both writers have ended and there is nothing new. */
static guint
read_while_they_write (LbBook *book, LbLedger *ledger, pid_t writers[N_WRITERS])
{
  guint n_writing = N_WRITERS;
  guint n_times_new = 0;
  gboolean has_changed = TRUE;

  while (n_writing > 0 || has_changed) {
    g_autoptr (GError) error = NULL;
    int status = 0;

    has_changed = FALSE;
    for (int i = 0; i < N_WRITERS; i++) {
      if (writers[i] == 0 || waitpid (writers[i], &status, WNOHANG) != writers[i])
        continue;
      g_assert_true (WIFEXITED (status));
      g_assert_cmpint (WEXITSTATUS (status), ==, 0);
      writers[i] = 0;
      n_writing--;
    }
    if (!lb_book_read_on (book, ledger, &has_changed, &error)) {
      g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_BUSY);
      has_changed = TRUE;
    }
    n_times_new += has_changed;
  }
  return n_times_new;
}

/* Each writer's acts whole, all of them, one after the other. */
static void
check_all (const LbLedger *ledger)
{
  int next[N_WRITERS] = { 0 };

  g_assert_cmpuint (ledger->entries->len, ==, 1 + 2 * N_WRITERS * N_ACTS);
  for (guint i = 1; i < ledger->entries->len; i += 2) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);
    const LbEntry *second = lb_ledger_entry (ledger, i + 1);

    g_assert_true (second->act == entry->act);
    g_assert_cmpstr (second->note, ==, entry->note);
    g_assert_cmpint (atoi (entry->note), ==, next[entry->pile]);
    next[entry->pile]++;
  }
  for (int i = 0; i < N_WRITERS; i++)
    g_assert_cmpint (next[i], ==, N_ACTS);
}

static void
test_two_writers (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "shared");
  g_autoptr (LbBook) book = fixture_book (path);
  pid_t writers[N_WRITERS];
  guint n_turns = 0;

  fixture_add_piles (book, N_WRITERS, 8);
  for (int i = 0; i < N_WRITERS; i++)
    writers[i] = begin_writer (path, i);

  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) reader = lb_book_open (path, LB_BOOK_READ, &error);
  g_assert_no_error (error);
  g_autoptr (LbLedger) followed = fixture_read (reader);
  const guint n_times_new = read_while_they_write (reader, followed, writers);
  g_autoptr (LbLedger) fresh = fixture_read (reader);

  check_all (followed);
  check_all (fresh);
  for (guint i = 0; i < fresh->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (fresh, i);

    g_assert_cmpstr (lb_ledger_entry (followed, i)->id, ==, entry->id);
    g_assert_cmpint (lb_ledger_entry (followed, i)->at_us, ==, entry->at_us);
    n_turns += i > 1 && entry->pile != lb_ledger_entry (fresh, i - 1)->pile;
  }
  g_test_message ("%d acts of each of %d writers, %u turns between them, read in %u steps: none "
                  "lost, one order",
                  N_ACTS, N_WRITERS, n_turns, n_times_new);
  /* They did write at the same time. */
  g_assert_cmpuint (n_turns, >, 2);
  fixture_remove (folder);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  if (argc == 4 && strcmp (argv[1], WRITER) == 0)
    return write_acts (argv[2], atoi (argv[3]));
  fixture_use_memory ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/faults/shared/two-writers", test_two_writers);
  return g_test_run ();
}
