/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Job files with flipped bytes and cut tails: each is opened as it was, opened otherwise, or refused,
 * and is the same afterwards. What is read can be folded, and what can be read of the refused ones is
 * recovered or refused in its turn. Nothing crashes, nothing hangs. */
#include "book-fixture.h"

#include "book/recover.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <string.h>

/* Under the sanitizers each file takes several times as long. */
#ifdef __SANITIZE_ADDRESS__
#define SHARE 10
#else
#define SHARE 1
#endif

#define N_FLIPPED 8000
#define N_CUT     1500
#define N_BOTH    500

/* Of the refused ones, one in so many is recovered. */
#define RECOVER_EACH 8

#define PAGE 8192

typedef struct
{
  char *folder, *torn, *recovered;
  GBytes *sizes[3]; /* jobs of a few piles and of many */
  LbLedger *ledgers[3];
} Ground;

typedef struct
{
  guint n_same, n_other, n_refused, n_recovered;
} Outcome;

/* A job with @n_piles piles and @n_days shifts. */
static GBytes *
make_job (const char *path, guint n_piles, guint n_days, LbLedger **out_ledger)
{
  LbBook *book = fixture_book (path);

  g_assert_true (lb_book_begin (book, NULL));
  fixture_add_piles (book, n_piles, 8);
  for (guint day = 0; day < n_days; day++) {
    g_autofree char *shift = fixture_shift (book, day);

    for (guint i = 0; i < n_piles; i++) {
      g_free (fixture_burn (book, shift, (int) i, LB_BAR (day % 8), 0));
      g_free (fixture_record (book, shift, LB_ENTRY_RODS, (int) i, NULL, 1.5));
    }
    g_autofree char *act = fixture_burn (book, shift, 0, 0, 1);
    g_free (fixture_take_back (book, shift, act));
  }
  g_assert_true (lb_book_commit (book, NULL));
  *out_ledger = fixture_read (book);
  lb_book_close (book);
  return fixture_bytes (path);
}

static void
begin (Ground *ground, gconstpointer data)
{
  static const struct
  {
    guint n_piles, n_days;
  } sizes[G_N_ELEMENTS (ground->sizes)] = { { 1, 1 }, { 8, 2 }, { 60, 4 } };

  ground->folder = fixture_folder ();
  ground->torn = fixture_path (ground->folder, "torn");
  ground->recovered = fixture_path (ground->folder, "recovered");
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++) {
    ground->sizes[i] = make_job (ground->torn, sizes[i].n_piles, sizes[i].n_days,
                                 &ground->ledgers[i]);
    g_assert_cmpint (g_remove (ground->torn), ==, 0);
  }
}

static void
end (Ground *ground, gconstpointer data)
{
  for (gsize i = 0; i < G_N_ELEMENTS (ground->sizes); i++) {
    g_bytes_unref (ground->sizes[i]);
    lb_ledger_free (ground->ledgers[i]);
  }
  fixture_remove (ground->folder);
  g_free (ground->folder);
  g_free (ground->torn);
  g_free (ground->recovered);
}

static gboolean
says_the_same (const LbLedger *one, const LbLedger *other)
{
  if (one->entries->len != other->entries->len || one->piles->len != other->piles->len)
    return FALSE;
  for (guint i = 0; i < one->entries->len; i++) {
    const LbEntry *a = lb_ledger_entry (one, i);
    const LbEntry *b = lb_ledger_entry (other, i);

    if (strcmp (a->id, b->id) != 0 || a->at_us != b->at_us || a->bars != b->bars ||
        strcmp (a->note, b->note) != 0 || strcmp (a->what, b->what) != 0)
      return FALSE;
  }
  return TRUE;
}

/* What is recovered is a job file like any other. */
static void
try_to_recover (const Ground *ground, Outcome *outcome)
{
  LbRecovery recovery;
  g_autoptr (GError) error = NULL;

  if (!lb_book_recover (ground->torn, ground->recovered, &recovery, NULL, &error)) {
    g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED);
    return;
  }
  g_autoptr (LbBook) book = lb_book_open (ground->recovered, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  g_autoptr (LbLedger) ledger = fixture_read (book);
  g_assert_cmpuint (ledger->entries->len, ==, recovery.n_entries);
  g_assert_cmpint (g_remove (ground->recovered), ==, 0);
  outcome->n_recovered++;
}

static void
try_bytes (const Ground *ground, gsize size, const guint8 *bytes, gsize n, Outcome *outcome)
{
  g_autoptr (GError) error = NULL;

  fixture_write (ground->torn, bytes, n);
  g_autoptr (LbBook) book = lb_book_open (ground->torn, LB_BOOK_WRITE, &error);
  g_autoptr (LbLedger) ledger = book != NULL ? lb_book_read (book, NULL, &error) : NULL;
  g_auto (GStrv) findings = NULL;

  if (book != NULL)
    lb_book_check (book, &findings, NULL);
  if (ledger != NULL) {
    g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);

    g_assert_cmpuint (fold->n_piles, ==, ledger->piles->len);
    if (says_the_same (ledger, ground->ledgers[size]))
      outcome->n_same++;
    else
      outcome->n_other++;
  } else {
    g_assert_nonnull (error);
    g_assert_true (error->domain == LB_BOOK_ERROR);
    outcome->n_refused++;
    if (outcome->n_refused % RECOVER_EACH == 0)
      try_to_recover (ground, outcome);
  }

  g_autoptr (GBytes) after = fixture_bytes (ground->torn);
  g_assert_cmpmem (g_bytes_get_data (after, NULL), g_bytes_get_size (after), bytes, n);
}

/* Half of the flips go to where structure is: the first page, and the heads of the others. */
static gsize
choose_place (gsize n)
{
  const gsize head = 100;

  switch (g_test_rand_int_range (0, 4)) {
  case 0:
    return (gsize) g_test_rand_int_range (0, PAGE);
  case 1:
    return (gsize) g_test_rand_int_range (0, (gint32) (n / PAGE)) * PAGE +
           (gsize) g_test_rand_int_range (0, (gint32) head);
  default:
    return (gsize) g_test_rand_int_range (0, (gint32) n);
  }
}

/* Mostly the small ones, which are as good a target and take less time. */
static gsize
choose_size (void)
{
  const int chance = g_test_rand_int_range (0, 10);

  return chance < 5 ? 0 : chance < 9 ? 1 : 2;
}

static void
flip (guint8 *bytes, gsize n)
{
  for (int flips = g_test_rand_int_range (1, 6); flips > 0; flips--)
    bytes[choose_place (n)] ^= (guint8) g_test_rand_int_range (1, 256);
}

static void
tell (const char *name, guint n, const Outcome *outcome)
{
  g_test_message ("%u files %s: %u read as they were, %u otherwise, %u refused, "
                  "%u of %u recovered",
                  n, name, outcome->n_same, outcome->n_other, outcome->n_refused,
                  outcome->n_recovered, outcome->n_refused / RECOVER_EACH);
}

static void
test_flipped (Ground *ground, gconstpointer data)
{
  const guint n_files = N_FLIPPED / SHARE;
  Outcome outcome = { 0 };

  for (guint i = 0; i < n_files; i++) {
    const gsize size = choose_size ();
    gsize n = 0;
    const guint8 *bytes = g_bytes_get_data (ground->sizes[size], &n);
    g_autofree guint8 *flipped = g_memdup2 (bytes, n);

    flip (flipped, n);
    try_bytes (ground, size, flipped, n, &outcome);
  }
  tell ("with flipped bytes", n_files, &outcome);
  g_assert_cmpuint (outcome.n_refused, >, n_files / 4);
  g_assert_cmpuint (outcome.n_recovered, >, 0);
}

static void
test_cut (Ground *ground, gconstpointer data)
{
  const guint n_files = N_CUT / SHARE;
  Outcome outcome = { 0 };

  for (guint i = 0; i < n_files; i++) {
    const gsize size = i % G_N_ELEMENTS (ground->sizes);
    gsize n = 0;
    const guint8 *bytes = g_bytes_get_data (ground->sizes[size], &n);

    try_bytes (ground, size, bytes, n * i / n_files, &outcome);
  }
  tell ("cut short", n_files, &outcome);
  /* A few lose nothing but the room that is left on their last page. */
  g_assert_cmpuint (outcome.n_other, ==, 0);
  g_assert_cmpuint (outcome.n_refused, >, n_files * 8 / 10);
  g_assert_cmpuint (outcome.n_recovered, >, 0);
}

static void
test_both (Ground *ground, gconstpointer data)
{
  const guint n_files = N_BOTH / SHARE;
  Outcome outcome = { 0 };

  for (guint i = 0; i < n_files; i++) {
    const gsize size = choose_size ();
    gsize n = 0;
    const guint8 *bytes = g_bytes_get_data (ground->sizes[size], &n);
    g_autofree guint8 *torn = g_memdup2 (bytes, n);

    flip (torn, n);
    try_bytes (ground, size, torn, (gsize) g_test_rand_int_range (PAGE, (gint32) n), &outcome);
  }
  tell ("flipped and cut", n_files, &outcome);
  g_assert_cmpuint (outcome.n_refused, >, n_files * 8 / 10);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  fixture_use_memory ();
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/faults/torn/flipped", Ground, NULL, begin, test_flipped, end);
  g_test_add ("/faults/torn/cut", Ground, NULL, begin, test_cut, end);
  g_test_add ("/faults/torn/both", Ground, NULL, begin, test_both, end);
  return g_test_run ();
}
