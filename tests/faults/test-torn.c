/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Job files with flipped bytes and cut tails: each is opened or refused, read or refused, and is
 * the same afterwards. What is read can be folded. Nothing crashes, nothing hangs. */
#include "book-fixture.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#define N_FLIPPED 1600
#define N_CUT     400

static GBytes *
make_job (const char *path)
{
  LbBook *book = fixture_book (path);

  g_assert_true (lb_book_begin (book, NULL));
  fixture_add_piles (book, 60, 8);
  for (guint day = 0; day < 4; day++) {
    g_autofree char *shift = fixture_shift (book, day);

    for (int i = 0; i < 60; i++) {
      g_free (fixture_burn (book, shift, i, LB_BAR (day), 0));
      g_free (fixture_record (book, shift, LB_ENTRY_RODS, i, NULL, 1.5));
    }
    g_autofree char *act = fixture_burn (book, shift, 0, 0, 1);
    g_free (fixture_take_back (book, shift, act));
  }
  g_assert_true (lb_book_commit (book, NULL));
  lb_book_close (book);
  return fixture_bytes (path);
}

typedef struct
{
  guint n_read, n_refused;
} Outcome;

static void
try_bytes (const char *path, const guint8 *bytes, gsize n, Outcome *outcome)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents_full (path, (const char *) bytes, (gssize) n,
                                           G_FILE_SET_CONTENTS_NONE, 0644, NULL));
  g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_WRITE, &error);
  g_autoptr (LbLedger) ledger = book != NULL ? lb_book_read (book, NULL, &error) : NULL;
  g_auto (GStrv) findings = NULL;

  if (book != NULL)
    lb_book_check (book, &findings, NULL);
  if (ledger != NULL) {
    g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);

    g_assert_cmpuint (fold->n_piles, ==, ledger->piles->len);
    outcome->n_read++;
  } else {
    g_assert_nonnull (error);
    outcome->n_refused++;
  }

  g_autoptr (GBytes) after = fixture_bytes (path);
  g_assert_cmpmem (g_bytes_get_data (after, NULL), g_bytes_get_size (after), bytes, n);
}

/* Half of the flips go to where structure is: the first page, and the heads of the others. */
static gsize
choose_place (gsize n)
{
  const gsize page = 8192;
  const gsize head = 100;

  switch (g_test_rand_int_range (0, 4)) {
  case 0:
    return (gsize) g_test_rand_int_range (0, (gint32) page);
  case 1:
    return (gsize) g_test_rand_int_range (0, (gint32) (n / page)) * page +
           (gsize) g_test_rand_int_range (0, (gint32) head);
  default:
    return (gsize) g_test_rand_int_range (0, (gint32) n);
  }
}

static void
test_flipped (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "whole");
  g_autofree char *torn = fixture_path (folder, "torn");
  g_autoptr (GBytes) whole = make_job (path);
  gsize n = 0;
  const guint8 *bytes = g_bytes_get_data (whole, &n);
  Outcome outcome = { 0 };

  for (int i = 0; i < N_FLIPPED; i++) {
    g_autofree guint8 *flipped = g_memdup2 (bytes, n);

    for (int flips = g_test_rand_int_range (1, 6); flips > 0; flips--)
      flipped[choose_place (n)] ^= (guint8) g_test_rand_int_range (1, 256);
    try_bytes (torn, flipped, n, &outcome);
  }
  g_test_message ("%d files with flipped bytes: %u read, %u refused", N_FLIPPED, outcome.n_read,
                  outcome.n_refused);
  g_assert_cmpuint (outcome.n_refused, >, N_FLIPPED / 4);
  fixture_remove (folder);
}

static void
test_cut (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "whole");
  g_autofree char *torn = fixture_path (folder, "torn");
  g_autoptr (GBytes) whole = make_job (path);
  gsize n = 0;
  const guint8 *bytes = g_bytes_get_data (whole, &n);
  Outcome outcome = { 0 };

  for (int i = 0; i < N_CUT; i++)
    try_bytes (torn, bytes, n * (gsize) i / N_CUT, &outcome);
  g_test_message ("%d files cut short: %u read, %u refused", N_CUT, outcome.n_read,
                  outcome.n_refused);
  g_assert_cmpuint (outcome.n_read, ==, 0);
  fixture_remove (folder);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/faults/torn/flipped", test_flipped);
  g_test_add_func ("/faults/torn/cut", test_cut);
  return g_test_run ();
}
