/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What goes together in one gesture, from the window's touch and the shell's word alike. */
#include "book-fixture.h"
#include "book/gesture.h"

#include <locale.h>

typedef struct
{
  char *folder;
  LbBook *book;
  LbLedger *ledger;
  LbFold *fold;
  char *shift;
  GArray *drafts;
} Fixture;

static void
refold (Fixture *fixture)
{
  g_clear_pointer (&fixture->fold, lb_fold_free);
  g_clear_pointer (&fixture->ledger, lb_ledger_free);
  fixture->ledger = fixture_read (fixture->book);
  fixture->fold = lb_fold_new (fixture->ledger, G_MAXINT64);
}

static void
set_up (Fixture *fixture, gconstpointer n_bars)
{
  g_autofree char *path = NULL;

  fixture->folder = fixture_folder ();
  path = fixture_path (fixture->folder, "gesture.lastbent");
  fixture->book = fixture_book (path);
  fixture_add_piles (fixture->book, 1, GPOINTER_TO_UINT (n_bars));
  fixture->shift = fixture_shift (fixture->book, 0);
  fixture->drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));
  refold (fixture);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_array_unref (fixture->drafts);
  g_free (fixture->shift);
  lb_fold_free (fixture->fold);
  lb_ledger_free (fixture->ledger);
  lb_book_close (fixture->book);
  fixture_remove (fixture->folder);
  g_free (fixture->folder);
}

/* Records the drafts as one act and folds anew. */
static void
record (Fixture *fixture)
{
  g_autoptr (GError) error = NULL;
  LbDraft *drafts = &g_array_index (fixture->drafts, LbDraft, 0);

  for (guint i = 0; i < fixture->drafts->len; i++)
    drafts[i].shift_id = fixture->shift;
  g_assert_true (lb_book_record (fixture->book, drafts, fixture->drafts->len, NULL, &error));
  g_assert_no_error (error);
  g_array_set_size (fixture->drafts, 0);
  refold (fixture);
}

static void
assert_severed_clean (const Fixture *fixture)
{
  g_assert_cmpint (fixture->fold->states[0].step, ==, LB_STEP_SEVERED);
  g_assert_cmpuint (fixture->fold->states[0].n_left, ==, 0);
  g_assert_cmpuint (fixture->fold->states[0].flags, ==, 0);
}

static void
test_severed_burns_the_rest (Fixture *fixture, gconstpointer data)
{
  lb_gesture_bars (fixture->drafts, fixture->fold, 0, LB_BAR (1) | LB_BAR (4));
  record (fixture);
  lb_gesture_step (fixture->drafts, fixture->fold, 0, LB_STEP_SEVERED);
  g_assert_cmpuint (fixture->drafts->len, ==, 2);
  g_assert_cmpuint (g_array_index (fixture->drafts, LbDraft, 0).bars, ==,
                    lb_bar_set_all (8) & ~(LB_BAR (1) | LB_BAR (4)));
  record (fixture);
  assert_severed_clean (fixture);

  /* It is on record now, and so are its bars. */
  lb_gesture_step (fixture->drafts, fixture->fold, 0, LB_STEP_SEVERED);
  g_assert_false (lb_gesture_bars (fixture->drafts, fixture->fold, 0, LB_BAR (2)));
  g_assert_cmpuint (fixture->drafts->len, ==, 0);
}

static void
test_other_steps_burn_nothing (Fixture *fixture, gconstpointer data)
{
  lb_gesture_step (fixture->drafts, fixture->fold, 0, LB_STEP_CLEANED);
  lb_gesture_step (fixture->drafts, fixture->fold, 0, LB_STEP_RIGGED);
  g_assert_cmpuint (fixture->drafts->len, ==, 2);
  record (fixture);
  g_assert_cmpuint (fixture->fold->states[0].n_left, ==, 8);
}

static void
test_last_bar_severs (Fixture *fixture, gconstpointer data)
{
  g_assert_false (
    lb_gesture_bars (fixture->drafts, fixture->fold, 0, lb_bar_set_all (8) & ~LB_BAR (7)));
  record (fixture);
  g_assert_true (lb_gesture_bars (fixture->drafts, fixture->fold, 0, LB_BAR (7) | LB_BAR (0)));
  /* Bar 1 was gone before: only the other is burned by this. */
  g_assert_cmpuint (g_array_index (fixture->drafts, LbDraft, 0).bars, ==, LB_BAR (7));
  record (fixture);
  assert_severed_clean (fixture);
}

static void
test_count_severs_too (Fixture *fixture, gconstpointer data)
{
  g_assert_false (lb_gesture_bar_count (fixture->drafts, fixture->fold, 0, 5));
  record (fixture);
  g_assert_cmpuint (fixture->fold->states[0].n_left, ==, 3);
  /* Which three are left is not known, so severed burns so many. */
  lb_gesture_step (fixture->drafts, fixture->fold, 0, LB_STEP_SEVERED);
  g_assert_cmpuint (g_array_index (fixture->drafts, LbDraft, 0).count, ==, 3);
  g_array_set_size (fixture->drafts, 0);
  g_assert_true (lb_gesture_bar_count (fixture->drafts, fixture->fold, 0, 3));
  record (fixture);
  assert_severed_clean (fixture);
}

/* Nobody knows which bar is the last of a pile whose bars are not on record. */
static void
test_unknown_bars_do_not_sever (Fixture *fixture, gconstpointer data)
{
  g_assert_false (lb_gesture_bar_count (fixture->drafts, fixture->fold, 0, 1));
  record (fixture);
  g_assert_cmpint (fixture->fold->states[0].step, ==, LB_STEP_STANDING);
  lb_gesture_step (fixture->drafts, fixture->fold, 0, LB_STEP_SEVERED);
  g_assert_cmpuint (fixture->drafts->len, ==, 1);
}

/* Bars found gone hold nothing and are not burned again, nobody is said to have burned them, and the
 * pile is not severed by them. */
static void
test_found_gone (Fixture *fixture, gconstpointer data)
{
  const LbPileState *state;

  lb_gesture_bars (fixture->drafts, fixture->fold, 0, LB_BAR (0));
  record (fixture);
  lb_gesture_gone (fixture->drafts, fixture->fold, 0, LB_BAR (0) | LB_BAR (2) | LB_BAR (5));
  record (fixture);
  state = &fixture->fold->states[0];
  g_assert_cmphex (state->gone, ==, LB_BAR (2) | LB_BAR (5));
  g_assert_cmphex (state->burned, ==, LB_BAR (0) | LB_BAR (2) | LB_BAR (5));
  g_assert_cmpuint (state->n_left, ==, 5);
  g_assert_cmpuint (fixture->fold->job.bars, ==, 1);

  lb_gesture_gone (fixture->drafts, fixture->fold, 0, LB_BAR (0) | LB_BAR (2));
  g_assert_false (lb_gesture_bars (fixture->drafts, fixture->fold, 0, LB_BAR (5)));
  g_assert_cmpuint (fixture->drafts->len, ==, 0);

  /* Taken back, they are there again. */
  g_autofree char *act = g_strdup (lb_fold_next_take_back (fixture->fold, fixture->ledger, 0));
  g_autofree char *taken = fixture_take_back (fixture->book, fixture->shift, act);
  refold (fixture);
  g_assert_cmphex (fixture->fold->states[0].burned, ==, LB_BAR (0));
  g_assert_cmphex (fixture->fold->states[0].gone, ==, 0);

  /* All the rest gone: no bar is left, and what becomes of the pile is for people to say. */
  lb_gesture_gone (fixture->drafts, fixture->fold, 0, lb_bar_set_all (8));
  g_assert_cmpuint (fixture->drafts->len, ==, 1);
  record (fixture);
  g_assert_cmpuint (fixture->fold->states[0].n_left, ==, 0);
  g_assert_cmpint (fixture->fold->states[0].step, ==, LB_STEP_STANDING);
  lb_gesture_step (fixture->drafts, fixture->fold, 0, LB_STEP_SEVERED);
  g_assert_cmpuint (fixture->drafts->len, ==, 1);
  record (fixture);
  assert_severed_clean (fixture);
  g_assert_cmpuint (fixture->fold->job.bars, ==, 1);
}

#define ADD(path, n_bars, test) \
  g_test_add ("/book/gesture/" path, Fixture, GUINT_TO_POINTER (n_bars), set_up, test, tear_down)

int
main (int argc, char *argv[])
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  ADD ("severed burns the rest", 8, test_severed_burns_the_rest);
  ADD ("other steps burn nothing", 8, test_other_steps_burn_nothing);
  ADD ("the last bar severs", 8, test_last_bar_severs);
  ADD ("a count severs too", 8, test_count_severs_too);
  ADD ("bars found gone", 8, test_found_gone);
  ADD ("unknown bars do not sever", 0, test_unknown_bars_do_not_sever);
  return g_test_run ();
}
