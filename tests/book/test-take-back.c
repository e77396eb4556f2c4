/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Take back and redo against the plainest model there is: two stacks. */
#include "book-fixture.h"

#include <locale.h>

typedef struct
{
  LbBook *book;
  LbLedger *ledger;
  char *shifts[2];
  GPtrArray *done[2];   /* acts that stand, the last on top */
  GPtrArray *undone[2]; /* acts taken back, the next to redo on top */
} Model;

/* The act that a take-back took back. */
static const char *
target_of (const LbLedger *ledger, const char *take_back)
{
  for (guint i = 0; i < ledger->entries->len; i++) {
    if (g_strcmp0 (lb_ledger_entry (ledger, i)->id, take_back) == 0)
      return lb_ledger_entry (ledger, i)->of;
  }
  return NULL;
}

static const char *
top (const GPtrArray *stack)
{
  return stack->len > 0 ? g_ptr_array_index (stack, stack->len - 1) : NULL;
}

static LbFold *
compare (Model *model)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (lb_book_read_on (model->book, model->ledger, NULL, &error));
  g_assert_no_error (error);

  LbFold *fold = lb_fold_new (model->ledger, G_MAXINT64);
  for (int shift = 0; shift < 2; shift++) {
    const char *next = lb_fold_next_take_back (fold, model->ledger, shift);
    const char *redo = lb_fold_next_redo (fold, model->ledger, shift);
    guint n_alive = 0;

    g_assert_cmpstr (next, ==, top (model->done[shift]));
    g_assert_true ((redo == NULL) == (model->undone[shift]->len == 0));
    if (redo != NULL)
      g_assert_cmpstr (target_of (model->ledger, redo), ==, top (model->undone[shift]));
    for (guint i = 0; i < model->ledger->entries->len; i++) {
      const LbEntry *entry = lb_ledger_entry (model->ledger, i);

      if (entry->shift == shift && entry->kind == LB_ENTRY_BARS && fold->is_alive[i])
        n_alive++;
    }
    /* Acts of the model have two entries each. */
    g_assert_cmpuint (n_alive, ==, 2 * model->done[shift]->len);
    g_assert_cmpuint (fold->shifts[shift].bars, ==, 2 * model->done[shift]->len);
  }
  return fold;
}

static void
act_anew (Model *model, int shift)
{
  g_autoptr (GError) error = NULL;
  LbDraft drafts[2] = { LB_DRAFT_INIT (LB_ENTRY_BARS), LB_DRAFT_INIT (LB_ENTRY_BARS) };
  char *act = NULL;

  for (int i = 0; i < 2; i++) {
    drafts[i].pile_id = lb_ledger_pile (model->ledger, 0)->id;
    drafts[i].shift_id = model->shifts[shift];
    drafts[i].count = 1;
  }
  g_assert_true (lb_book_record (model->book, drafts, 2, &act, &error));
  g_assert_no_error (error);
  g_ptr_array_add (model->done[shift], act);
  g_ptr_array_set_size (model->undone[shift], 0);
}

static void
move_top (GPtrArray *from, GPtrArray *to)
{
  g_ptr_array_add (to, g_ptr_array_steal_index (from, from->len - 1));
}

static void
do_something (Model *model)
{
  g_autoptr (LbFold) fold = compare (model);
  const int shift = g_test_rand_int_range (0, 2);
  const char *next = lb_fold_next_take_back (fold, model->ledger, shift);
  const char *redo = lb_fold_next_redo (fold, model->ledger, shift);

  switch (g_test_rand_int_range (0, 5)) {
  case 0:
    act_anew (model, shift);
    break;
  case 1:
  case 2:
    if (next != NULL) {
      g_free (fixture_take_back (model->book, model->shifts[shift], next));
      move_top (model->done[shift], model->undone[shift]);
    }
    break;
  default:
    if (redo != NULL) {
      g_free (fixture_take_back (model->book, model->shifts[shift], redo));
      move_top (model->undone[shift], model->done[shift]);
    } else
      act_anew (model, shift);
    break;
  }
}

static void
test_stacks (void)
{
  for (int round = 0; round < 12; round++) {
    g_autofree char *folder = fixture_folder ();
    g_autofree char *path = fixture_path (folder, "stacks");
    Model model = { .book = fixture_book (path) };

    fixture_add_piles (model.book, 1, 8);
    for (guint i = 0; i < 2; i++) {
      model.shifts[i] = fixture_shift (model.book, i);
      model.done[i] = g_ptr_array_new_with_free_func (g_free);
      model.undone[i] = g_ptr_array_new_with_free_func (g_free);
    }
    model.ledger = fixture_read (model.book);
    g_assert_true (lb_book_begin (model.book, NULL));
    for (int i = 0; i < 200; i++)
      do_something (&model);
    lb_fold_free (compare (&model));
    g_assert_true (lb_book_commit (model.book, NULL));

    for (int i = 0; i < 2; i++) {
      g_free (model.shifts[i]);
      g_ptr_array_unref (model.done[i]);
      g_ptr_array_unref (model.undone[i]);
    }
    lb_ledger_free (model.ledger);
    lb_book_close (model.book);
    fixture_remove (folder);
  }
}

/* An act that was taken back twice, by two people at once, needs both brought back. */
static void
test_taken_twice (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "twice");
  g_autoptr (LbBook) book = fixture_book (path);
  fixture_add_piles (book, 1, 8);
  g_autofree char *shift = fixture_shift (book, 0);
  g_autofree char *act = fixture_burn (book, shift, 0, LB_BAR (0), 0);
  g_autofree char *one = fixture_take_back (book, shift, act);
  g_autofree char *other = fixture_take_back (book, shift, act);

  for (int i = 0; i < 3; i++) {
    g_autoptr (LbLedger) ledger = fixture_read (book);
    g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);

    g_assert_cmpuint (fold->states[0].n_left, ==, i < 2 ? 8 : 7);
    g_free (fixture_take_back (book, shift, i == 0 ? one : other));
  }
  fixture_remove (folder);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/book/take-back/stacks", test_stacks);
  g_test_add_func ("/book/take-back/taken-twice", test_taken_twice);
  return g_test_run ();
}
