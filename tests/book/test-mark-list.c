/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which piles a line of the shift's record names. */
#include "book-fixture.h"
#include "book/mark-list.h"

#include <string.h>

typedef struct
{
  char *folder;
  LbBook *book;
  LbLedger *ledger;
  LbFold *fold;
} Fixture;

/* Rows A to F of bents 1 to 12, without C5, and some odd marks. */
static void
set_up (Fixture *fixture, gconstpointer data)
{
  static const char *const odd[] = { "D1-3", "D1-4", "A to B", "P", "Ñ1" };
  g_autoptr (GStringChunk) strings = g_string_chunk_new (256);
  g_autoptr (GArray) piles = g_array_new (FALSE, FALSE, sizeof (LbPile));
  g_autoptr (GError) error = NULL;
  g_autofree char *path = NULL;

  for (char row = 'A'; row <= 'F'; row++) {
    for (int bent = 12; bent >= 1; bent--) {
      LbPile pile;
      g_autofree char *mark = g_strdup_printf ("%c%d", row, bent);

      if (g_str_equal (mark, "C5"))
        continue;
      lb_pile_init (&pile);
      pile.mark = g_string_chunk_insert (strings, mark);
      pile.x_m = bent;
      pile.y_m = row;
      g_array_append_val (piles, pile);
    }
  }
  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++) {
    LbPile pile;

    lb_pile_init (&pile);
    pile.mark = odd[i];
    pile.x_m = (double) i;
    pile.y_m = 0;
    g_array_append_val (piles, pile);
  }

  fixture->folder = fixture_folder ();
  path = fixture_path (fixture->folder, "marks.lastbent");
  fixture->book = fixture_book (path);
  lb_book_add_piles (fixture->book, (const LbPile *) (gconstpointer) piles->data, piles->len, NULL,
                     NULL, NULL, &error);
  g_assert_no_error (error);
  fixture->ledger = fixture_read (fixture->book);
  fixture->fold = lb_fold_new (fixture->ledger, G_MAXINT64);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  lb_fold_free (fixture->fold);
  lb_ledger_free (fixture->ledger);
  lb_book_close (fixture->book);
  fixture_remove (fixture->folder);
  g_free (fixture->folder);
}

static void
check_list (Fixture *fixture, const char *text, const char *expected)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) piles = lb_mark_list_read (fixture->fold, text, &error);
  g_autoptr (GString) marks = g_string_new (NULL);

  g_assert_no_error (error);
  for (guint i = 0; i < piles->len; i++)
    g_string_append_printf (marks, "%s%s", i > 0 ? " " : "",
                            fixture->fold->piles[g_array_index (piles, guint, i)].mark);
  g_assert_cmpstr (marks->str, ==, expected);
}

static void
check_refused (Fixture *fixture, const char *text, const char *says)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (lb_mark_list_read (fixture->fold, text, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  if (strstr (error->message, says) == NULL)
    g_error ("“%s” does not say “%s”", error->message, says);
}

static void
test_lists (Fixture *fixture, gconstpointer data)
{
  check_list (fixture, "A7", "A7");
  check_list (fixture, " a 7 ", "A7");
  check_list (fixture, "A7, B2; A7,", "A7 B2");
  check_list (fixture, "C3 to C9", "C3 C4 C6 C7 C8 C9");
  check_list (fixture, "C9 to C3", "C9 C8 C7 C6 C4 C3");
  check_list (fixture, "c9–c11", "C9 C10 C11");
  check_list (fixture, "c9..11", "C9 C10 C11");
  check_list (fixture, "D1-3..4", "D1-3 D1-4");
  check_list (fixture, "A2..F2", "A2 B2 C2 D2 E2 F2");
  check_list (fixture, "D1-3 to D1-4", "D1-3 D1-4");
  check_list (fixture, "A1 to A3, B3, A2 to A4", "A1 A2 A3 B3 A4");
  check_list (fixture, "B1 to B1", "B1");
  check_list (fixture, "A to B", "A to B");
}

static void
test_refused (Fixture *fixture, gconstpointer data)
{
  check_refused (fixture, "", "No pile is named");
  check_refused (fixture, " , ;", "No pile is named");
  check_refused (fixture, "A7, Z9", "“Z9”");
  check_refused (fixture, "C3 to C99", "“C99”");
  check_refused (fixture, "C5 to C9", "“C5”");
  check_refused (fixture, "A1 to B2", "no range");
  check_refused (fixture, "A1 to P", "no range");
  check_refused (fixture, "A1 to Ñ1", "no range");
  check_refused (fixture, "A1 to ", "A1 to");
  check_refused (fixture, "A1..", "“”");
  check_refused (fixture, "C3..99", "“C99”");
}

static int
next_of (Fixture *fixture, const char *mark)
{
  return lb_mark_list_next (fixture->fold, (guint) lb_fold_find_mark (fixture->fold, mark));
}

/* In the order of the list; what is out is passed over, and after the last there is none. */
static void
test_next (Fixture *fixture, gconstpointer data)
{
  LbPileState *out;

  g_assert_cmpint (next_of (fixture, "A12"), ==, lb_fold_find_mark (fixture->fold, "A11"));
  out = &fixture->fold->states[lb_fold_find_mark (fixture->fold, "A11")];
  out->done |= LB_STEP_BIT (LB_STEP_PULLED);
  g_assert_cmpint (next_of (fixture, "A12"), ==, lb_fold_find_mark (fixture->fold, "A10"));
  /* Another bent is no next. */
  fixture->fold->piles[lb_fold_find_mark (fixture->fold, "A10")].bent = "10";
  g_assert_cmpint (next_of (fixture, "A12"), ==, lb_fold_find_mark (fixture->fold, "A9"));
  g_assert_cmpint (next_of (fixture, "A10"), ==, -1);
  g_assert_cmpint (next_of (fixture, "Ñ1"), ==, -1);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add ("/mark-list/lists", Fixture, NULL, set_up, test_lists, tear_down);
  g_test_add ("/mark-list/refused", Fixture, NULL, set_up, test_refused, tear_down);
  g_test_add ("/mark-list/next", Fixture, NULL, set_up, test_next, tear_down);

  return g_test_run ();
}
