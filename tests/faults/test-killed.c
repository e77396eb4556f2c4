/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The program is killed in the middle of what it does, a thousand times at random moments: all that
 * it said was done is there, nothing is there by half, and the file is whole each time.
 *
 * A deed is done by a child that says a number through a pipe once it is on the disk. Some go on and
 * on (recording, signing), and the file grows from kill to kill; others are done once (joining,
 * migrating), and the file begins anew each time. */
#include "book-fixture.h"

#include "book/packet.h"
#include "book/seal.h"
#include "format-1.h"

#include <locale.h>
#include <math.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

/* The sanitizers slow each look at the file down; the moments are as random with fewer. */
#ifdef __SANITIZE_ADDRESS__
#define SHARE 5
#else
#define SHARE 1
#endif

/* After so many kills a file that grows begins anew, or looking through it would take all the time. */
#define KILLS_A_FILE 25

/* How long a child goes on at most after its first act. */
#define ACTS_MOST_US 8000

/* How often what is done once is timed. */
#define N_TIMED 5

#define N_PILES         3
#define N_JOINED_ACTS   60
#define N_MIGRATED_ACTS 200

typedef struct
{
  char *folder, *path;
  GBytes *begin;  /* the file as each run begins */
  char *packet;   /* what is joined, NULL for none */
  guint n_before; /* entries at the beginning, and what is there when all is done */
  guint n_after;
} Ground;

typedef struct
{
  const char *name;
  guint n_kills;
  void (*prepare) (Ground *ground);

  /* In the child: does it, from number @next on, and says what is done. What is done once says first,
   * by the number before, that it begins. */
  void (*act) (const Ground *ground, guint32 next, int pipe_fd);

  /* How many are done by what the file holds; asserts that none is by half. */
  guint32 (*count) (const Ground *ground, const LbLedger *ledger);
  gboolean goes_on;
} Deed;

static void
say (int pipe_fd, guint32 number)
{
  if (write (pipe_fd, &number, sizeof number) != sizeof number)
    _exit (5);
}

/* --- Recording: notes, two an act, so that half an act can be told --------------------------- */

static void
prepare_plain (Ground *ground)
{
  LbBook *book = fixture_book (ground->path);

  fixture_add_piles (book, N_PILES, 8);
  lb_book_close (book);
  ground->begin = fixture_bytes (ground->path);
  ground->n_before = 1;
}

static void
act_record (const Ground *ground, guint32 next, int pipe_fd)
{
  LbBook *book = lb_book_open (ground->path, LB_BOOK_WRITE, NULL);

  if (book == NULL)
    _exit (3);
  for (;; next++) {
    LbDraft drafts[2] = { LB_DRAFT_INIT (LB_ENTRY_NOTE), LB_DRAFT_INIT (LB_ENTRY_NOTE) };
    char number[16];

    g_snprintf (number, sizeof number, "%u", next);
    drafts[0].note = drafts[1].note = number;
    if (!lb_book_record (book, drafts, 2, NULL, NULL))
      _exit (4);
    say (pipe_fd, next);
  }
}

static guint32
count_recorded (const Ground *ground, const LbLedger *ledger)
{
  const guint n_acts = (ledger->entries->len - ground->n_before) / 2;

  g_assert_cmpuint (ledger->entries->len, ==, ground->n_before + 2 * n_acts);
  for (guint i = 0; i < 2 * n_acts; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, ground->n_before + i);
    g_assert_cmpuint (strtoul (entry->note, NULL, 10), ==, i / 2 + 1);
  }
  return n_acts;
}

/* --- Signing: a shift a day, each with an entry and then its seal --------------------------- */

static void
act_sign (const Ground *ground, guint32 next, int pipe_fd)
{
  LbBook *book = lb_book_open (ground->path, LB_BOOK_WRITE, NULL);
  LbLedger *ledger = book != NULL ? lb_book_read (book, NULL, NULL) : NULL;

  if (ledger == NULL)
    _exit (3);
  for (;; next++) {
    LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_RODS);
    char *shift = NULL;

    draft.amount = next;
    /* A shift that was cut off before its signature is found again, and its entry is one more. */
    if (!lb_book_open_shift (book, FIXTURE_DAY + next, "day", NULL, &shift, NULL))
      _exit (4);
    draft.shift_id = shift;
    if (!lb_book_record (book, &draft, 1, NULL, NULL) ||
        !lb_book_sign (book, ledger, shift, "superintendent", NULL))
      _exit (4);
    g_free (shift);
    say (pipe_fd, next);
  }
}

/* Seals follow the days; what they cover is proved by lb_book_check(). */
static guint32
count_signed (const Ground *ground, const LbLedger *ledger)
{
  guint32 n = 0;

  for (guint i = 0; i < ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (entry->kind != LB_ENTRY_SEAL)
      continue;
    n++;
    g_assert_cmpuint (lb_ledger_shift (ledger, (guint) entry->shift)->day, ==, FIXTURE_DAY + n);
  }
  return n;
}

/* --- Joining: all of another copy's acts, or none ------------------------------------------- */

static void
prepare_join (Ground *ground)
{
  g_autoptr (GError) error = NULL;
  LbBook *book;

  prepare_plain (ground);
  ground->packet = fixture_path (ground->folder, "other");
  book = lb_book_open (ground->path, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  g_assert_true (lb_book_copy_to (book, ground->packet, &error));
  lb_book_close (book);

  book = lb_book_open (ground->packet, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  g_assert_true (lb_book_begin (book, NULL));
  g_autofree char *shift = fixture_shift (book, 0);
  for (guint i = 0; i < N_JOINED_ACTS; i++)
    g_free (fixture_record (book, shift, LB_ENTRY_RODS, (int) (i % N_PILES), NULL, i));
  g_assert_true (lb_book_commit (book, NULL));
  lb_book_close (book);
  ground->n_after = ground->n_before + N_JOINED_ACTS;
}

static void
act_join (const Ground *ground, guint32 next, int pipe_fd)
{
  LbBook *book = lb_book_open (ground->path, LB_BOOK_WRITE, NULL);
  LbLedger *ledger = book != NULL ? lb_book_read (book, NULL, NULL) : NULL;
  LbPacket *packet = lb_packet_open (ground->packet, NULL, NULL);

  if (ledger == NULL || packet == NULL)
    _exit (3);
  say (pipe_fd, next - 1);
  if (!lb_book_join (book, ledger, packet, NULL, NULL, NULL, NULL, NULL))
    _exit (4);
  say (pipe_fd, next);
  pause ();
}

static guint32
count_all_or_none (const Ground *ground, const LbLedger *ledger)
{
  if (ledger->entries->len == ground->n_before)
    return 0;
  g_assert_cmpuint (ledger->entries->len, ==, ground->n_after);
  return 1;
}

/* --- Migrating: an old file opened for writing ---------------------------------------------- */

#define FORMAT_AT 63 /* the low byte of user_version in the header of an SQLite file */

static void
prepare_migrate (Ground *ground)
{
  LbBook *book = fixture_book (ground->path);

  g_assert_true (lb_book_begin (book, NULL));
  fixture_add_piles (book, N_PILES, 8);
  g_autofree char *shift = fixture_shift (book, 0);
  for (guint i = 0; i < N_MIGRATED_ACTS; i++)
    g_free (fixture_record (book, shift, LB_ENTRY_RODS, (int) (i % N_PILES), NULL, i));
  g_assert_true (lb_book_commit (book, NULL));
  lb_book_close (book);
  format_1_make (ground->path);
  ground->begin = fixture_bytes (ground->path);
  ground->n_before = ground->n_after = 1 + N_MIGRATED_ACTS;
}

static void
act_migrate (const Ground *ground, guint32 next, int pipe_fd)
{
  say (pipe_fd, next - 1);
  if (lb_book_open (ground->path, LB_BOOK_WRITE, NULL) == NULL)
    _exit (3);
  say (pipe_fd, next);
  pause ();
}

/* All rows, in whichever format. That the file looked through is of the new one says only that this
 * test opened it; so it is told by the bytes, before. */
static guint32
count_migrated (const Ground *ground, const LbLedger *ledger)
{
  g_assert_cmpuint (ledger->entries->len, ==, ground->n_after);
  g_assert_cmpuint (ledger->piles->len, ==, N_PILES);
  return 1;
}

/* --- Killing -------------------------------------------------------------------------------- */

static const Deed deeds[] = {
  { "recording", 400, prepare_plain, act_record, count_recorded, TRUE },
  { "signing", 200, prepare_plain, act_sign, count_signed, TRUE },
  { "joining", 200, prepare_join, act_join, count_all_or_none, FALSE },
  { "migrating", 200, prepare_migrate, act_migrate, count_migrated, FALSE },
};

/* Empties the folder of what a kill left, but for the packet, and puts the first file back. */
static void
begin_anew (const Ground *ground)
{
  g_autoptr (GDir) dir = g_dir_open (ground->folder, 0, NULL);
  const char *name;
  gsize n;
  const void *bytes = g_bytes_get_data (ground->begin, &n);

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (ground->folder, name, NULL);

    if (g_strcmp0 (path, ground->packet) != 0)
      g_assert_cmpint (unlink (path), ==, 0);
  }
  fixture_write (ground->path, bytes, n);
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

static guint32
read_one (int pipe_fd)
{
  guint32 said = 0;

  g_assert_cmpint (read (pipe_fd, &said, sizeof said), ==, sizeof said);
  return said;
}

/* Starts a child, waits for its first word and then for a moment of chance: @usual_us at most, or as
 * long as the first act took of what goes on, though not for hundreds of acts. Then kills it; the last
 * number it said. With @out_took_us it is not killed before its second word, and that is how long it
 * took. */
static guint32
kill_one (const Deed *deed,
          const Ground *ground,
          guint32 last,
          gint64 usual_us,
          gint64 *out_took_us)
{
  int ends[2];
  int status = 0;

  g_assert_cmpint (pipe (ends), ==, 0);
  gint64 begin = g_get_monotonic_time ();
  const pid_t child = fork ();
  g_assert_cmpint (child, >=, 0);
  if (child == 0) {
    close (ends[0]);
    deed->act (ground, last + 1, ends[1]);
  }
  close (ends[1]);

  guint32 said = read_one (ends[0]);
  if (deed->goes_on)
    usual_us = CLAMP (g_get_monotonic_time () - begin, 100, ACTS_MOST_US);
  if (out_took_us != NULL) {
    begin = g_get_monotonic_time ();
    said = read_one (ends[0]);
    *out_took_us = g_get_monotonic_time () - begin;
  } else {
    g_usleep ((gulong) g_test_rand_int_range (0, (gint32) usual_us));
  }
  g_assert_cmpint (kill (child, SIGKILL), ==, 0);
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFSIGNALED (status));
  said = read_said (ends[0], said);
  close (ends[0]);
  return said;
}

/* What is done once is timed a few times, so that kills come anywhere in it. */
static gint64
usual_time (const Deed *deed, const Ground *ground)
{
  gint64 least_us = 1000000;

  for (int i = 0; i < N_TIMED && !deed->goes_on; i++) {
    gint64 took_us = 0;

    begin_anew (ground);
    g_assert_cmpuint (kill_one (deed, ground, 0, 0, &took_us), ==, 1);
    least_us = MIN (least_us, MAX (took_us, 100));
  }
  return 2 * least_us;
}

/* The file is whole, and all that was said is in it. */
static guint32
look_through (const Deed *deed, const Ground *ground, guint32 said)
{
  g_autoptr (GBytes) bytes = fixture_bytes (ground->path);
  const guint8 format = ((const guint8 *) g_bytes_get_data (bytes, NULL))[FORMAT_AT];
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (ground->path, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  g_autoptr (LbLedger) ledger = fixture_read (book);
  g_auto (GStrv) findings = NULL;

  g_assert_true (lb_book_check (book, &findings, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (findings[0], ==, NULL);

  const guint32 n = deed->count == count_migrated && format == 1 ? 0 : deed->count (ground, ledger);
  if (deed->count == count_migrated)
    count_migrated (ground, ledger);
  g_assert_cmpuint (n, >=, said);
  g_assert_cmpuint (n, <=, said + 1);
  return n;
}

static void
test_killed (gconstpointer data)
{
  const Deed *deed = data;
  Ground ground = { .folder = fixture_folder () };
  const guint n_kills = deed->n_kills / SHARE;
  guint n_journals = 0, n_unsaid = 0, n_done = 0;
  guint32 last = 0;

  ground.path = fixture_path (ground.folder, "killed");
  deed->prepare (&ground);
  const gint64 usual_us = usual_time (deed, &ground);
  for (guint i = 0; i < n_kills; i++) {
    g_autofree char *journal = g_strconcat (ground.path, "-journal", NULL);

    if (!deed->goes_on || i % KILLS_A_FILE == 0) {
      begin_anew (&ground);
      last = 0;
    }
    const guint32 before = last;
    const guint32 said = kill_one (deed, &ground, last, usual_us, NULL);

    if (g_file_test (journal, G_FILE_TEST_EXISTS))
      n_journals++;
    last = look_through (deed, &ground, said);
    n_unsaid += last - said;
    n_done += said - before;
  }
  g_test_message ("%s: %u kills, %u done and found, %u done and not said any more, %u journals "
                  "left, 0 lost, 0 by half",
                  deed->name, n_kills, n_done, n_unsaid, n_journals);
  g_assert_cmpuint (n_done, >, 0);
  /* Some kills must have hit the middle, or the test shows nothing; a few dozen may all miss it. */
  if (deed->goes_on && SHARE == 1)
    g_assert_cmpuint (n_journals + n_unsaid, >, 0);
  if (!deed->goes_on)
    g_assert_cmpuint (n_done, <, n_kills);
  fixture_remove (ground.folder);
  g_free (ground.folder);
  g_free (ground.path);
  g_free (ground.packet);
  g_bytes_unref (ground.begin);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  fixture_use_memory ();
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (deeds); i++) {
    g_autofree char *name = g_strconcat ("/faults/killed/", deeds[i].name, NULL);
    g_test_add_data_func (name, &deeds[i], test_killed);
  }
  return g_test_run ();
}
