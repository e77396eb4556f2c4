/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What two crews said differently of one field: found where neither knew of the other, in either file
 * the same, and gone when somebody decides. */
#include "book-fixture.h"

#include "book/difference.h"
#include "book/finding.h"
#include "book/packet.h"

#include <locale.h>

#define N_CREWS 2

/* A job and a copy of it, a crew in each. */
typedef struct
{
  Story story;
  char *paths[N_CREWS];
  LbBook *books[N_CREWS];
} Crews;

/* The clocks: crew 2 says what it says half an hour after crew 1. */
static void
let_hours_pass (Crews *crews, int hours)
{
  const gint64 half_us = G_GINT64_CONSTANT (1800) * G_USEC_PER_SEC;

  for (int i = 0; i < N_CREWS; i++)
    lb_book_set_now (crews->books[i], FIXTURE_US + (2 * hours + i) * half_us);
}

static void
crews_begin (Crews *crews, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  story_begin (&crews->story, NULL);
  crews->paths[0] = crews->story.path;
  crews->paths[1] = fixture_path (crews->story.folder, "copy");
  g_assert_true (lb_book_copy_to (crews->story.book, crews->paths[1], &error));
  crews->books[0] = crews->story.book;
  crews->books[1] = lb_book_open (crews->paths[1], LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  let_hours_pass (crews, 1);
}

static void
crews_end (Crews *crews, gconstpointer data)
{
  lb_book_close (crews->books[1]);
  g_free (crews->paths[1]);
  story_end (&crews->story, NULL);
}

/* As the window and the shell record it: in view of what is on record. @pile is -1 for a setting. */
static char *
set (Crews *crews, int crew, int pile, const char *what, const char *value)
{
  LbBook *book = crews->books[crew];
  g_autoptr (LbLedger) ledger = fixture_read (book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));
  g_autoptr (GError) error = NULL;
  LbDraft draft = LB_DRAFT_INIT (pile >= 0 ? LB_ENTRY_FACT : LB_ENTRY_SETTING);
  char *act = NULL;

  draft.pile_id = pile >= 0 ? lb_ledger_pile (ledger, (guint) pile)->id : NULL;
  draft.what = what;
  draft.note = value;
  draft.who = crew == 0 ? "crew 1" : "crew 2";
  g_array_append_val (drafts, draft);
  lb_drafts_know (drafts, ledger, fold);
  g_assert_true (
    lb_book_record (book, &g_array_index (drafts, LbDraft, 0), drafts->len, &act, &error));
  g_assert_no_error (error);
  return act;
}

static void
join_both_ways (Crews *crews)
{
  for (int i = 0; i < N_CREWS; i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (LbPacket) packet = lb_packet_open (crews->paths[1 - i], NULL, &error);
    g_autoptr (LbLedger) ledger = fixture_read (crews->books[i]);

    g_assert_no_error (error);
    g_assert_true (lb_book_join (crews->books[i], ledger, packet, NULL, NULL, NULL, NULL, &error));
    g_assert_no_error (error);
  }
}

/* A line each: which field, and what both said; "" for none. */
static char *
tell (LbBook *book)
{
  g_autoptr (LbLedger) ledger = fixture_read (book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_autoptr (GArray) differences = lb_differences_new (ledger, fold);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < differences->len; i++) {
    const LbDifference *at = &g_array_index (differences, LbDifference, i);

    g_string_append_printf (text, "%d %s %s (%s), %s (%s)\n", at->pile, at->field, at->other->note,
                            at->other->who, at->last->note, at->last->who);
  }
  return g_strdup (text->str);
}

static void
assert_told (Crews *crews, const char *expected)
{
  for (int i = 0; i < N_CREWS; i++) {
    g_autofree char *told = tell (crews->books[i]);
    g_assert_cmpstr (told, ==, expected);
  }
}

static guint
count_findings (LbBook *book, int pile)
{
  g_autoptr (LbLedger) ledger = fixture_read (book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_autoptr (GArray) findings = pile >= 0 ? lb_findings_new_of_pile (ledger, fold, pile)
                                          : lb_findings_new (ledger, fold);
  guint n = 0;

  for (guint i = 0; i < findings->len; i++)
    n += g_array_index (findings, LbFinding, i).kind == LB_FINDING_SAID_OTHERWISE ? 1 : 0;
  return n;
}

static void
test_found_and_decided (Crews *crews, gconstpointer data)
{
  g_free (set (crews, 0, 1, "mudline", "-8"));
  join_both_ways (crews);
  /* One knew of the other: no difference. */
  g_free (set (crews, 1, 1, "mudline", "-8.5"));
  join_both_ways (crews);
  assert_told (crews, "");

  let_hours_pass (crews, 2);
  g_free (set (crews, 0, 1, "mudline", "-9"));
  g_free (set (crews, 1, 1, "mudline", "-9.5"));
  g_free (set (crews, 0, -1, "assume.cut-above-mudline", "0.5"));
  g_free (set (crews, 1, -1, "assume.cut-above-mudline", "0.6"));
  assert_told (crews, "");
  join_both_ways (crews);
  assert_told (crews, "1 mudline -9 (crew 1), -9.5 (crew 2)\n"
                      "-1 assume.cut-above-mudline 0.5 (crew 1), 0.6 (crew 2)\n");
  g_assert_cmpuint (count_findings (crews->books[0], -1), ==, 2);
  g_assert_cmpuint (count_findings (crews->books[0], 1), ==, 1);

  g_free (set (crews, 0, 1, "mudline", "-9"));
  join_both_ways (crews);
  assert_told (crews, "-1 assume.cut-above-mudline 0.5 (crew 1), 0.6 (crew 2)\n");
  g_free (set (crews, 1, -1, "assume.cut-above-mudline", "0.6"));
  join_both_ways (crews);
  assert_told (crews, "");
  g_assert_cmpuint (count_findings (crews->books[0], -1), ==, 0);
}

/* The first word of both crews, and the same word of both in other digits. */
static void
test_first_and_same (Crews *crews, gconstpointer data)
{
  g_free (set (crews, 0, 2, "bent", "7"));
  g_free (set (crews, 1, 2, "bent", "8"));
  g_free (set (crews, 0, 3, "mudline", "-9"));
  g_free (set (crews, 1, 3, "mudline", "-9.00"));
  join_both_ways (crews);
  assert_told (crews, "2 bent 7 (crew 1), 8 (crew 2)\n");
}

/* What was taken back differs from nothing, and what it had been said in view of is still known. */
static void
test_taken_back (Crews *crews, gconstpointer data)
{
  g_free (set (crews, 0, 0, "bent", "7"));
  g_autofree char *act = set (crews, 1, 0, "bent", "8");
  join_both_ways (crews);
  assert_told (crews, "0 bent 7 (crew 1), 8 (crew 2)\n");
  g_free (fixture_take_back (crews->books[1], crews->story.shifts[0], act));
  join_both_ways (crews);
  assert_told (crews, "");
  g_free (set (crews, 0, 0, "bent", "9"));
  join_both_ways (crews);
  assert_told (crews, "");
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/difference/found-and-decided", Crews, NULL, crews_begin, test_found_and_decided,
              crews_end);
  g_test_add ("/difference/first-and-same", Crews, NULL, crews_begin, test_first_and_same,
              crews_end);
  g_test_add ("/difference/taken-back", Crews, NULL, crews_begin, test_taken_back, crews_end);
  return g_test_run ();
}
