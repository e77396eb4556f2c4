/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "big-job.h"

#define N_SHIFTS      400
#define FIRST_DAY     739000 /* a day in 2024 */
#define PILES_PER_ROW 100
#define PITCH_M       3.0
#define N_BARS        8
#define MOST_ROUNDS   40

void
big_job_pile (guint i, LbPile *out_pile, char mark[16])
{
  g_snprintf (mark, 16, "P-%05u", i);
  lb_pile_init (out_pile);
  out_pile->unsaid = 0;
  out_pile->mark = mark;
  out_pile->x_m = (i % PILES_PER_ROW) * PITCH_M;
  out_pile->y_m = (double) (i / PILES_PER_ROW) * PITCH_M;
  out_pile->outline.shape = (LbShape) (i % LB_N_SHAPES);
  out_pile->outline.width_m = 0.4 + 0.05 * (i % 3);
  out_pile->bar = lb_bar_find (i % 2 == 0 ? "#8" : "#11");
  out_pile->n_bars = N_BARS;
  out_pile->batter = i % 4 == 0 ? 1.0 / (4 + i % 9) : 0;
  out_pile->bearing_rad = (i % 16) * G_PI / 8;
  out_pile->head_m = 1.5;
  out_pile->mudline_m = -8 - 0.01 * (i % 500);
}

static gboolean
add_piles (LbBook *book, guint n_piles, GError **error)
{
  g_autofree LbPile *piles = g_new (LbPile, n_piles);
  g_autofree char *marks = g_malloc ((gsize) n_piles * 16);

  for (guint i = 0; i < n_piles; i++)
    big_job_pile (i, &piles[i], marks + (gsize) i * 16);

  return lb_book_add_piles (book, piles, n_piles, NULL, NULL, NULL, error);
}

/* The k-th thing that happens to a pile: it is cleaned, loses one bar after the other, is severed,
 * rigged and pulled, and the rest are rods and minutes. */
static LbDraft
draft_of (guint round, const char *pile_id, const char *shift_id)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_STEP);

  if (round == 0) {
    draft.what = lb_step_name (LB_STEP_CLEANED);
  } else if (round <= N_BARS) {
    draft = LB_DRAFT_INIT (LB_ENTRY_BARS);
    draft.bars = LB_BAR (round - 1);
  } else if (round <= N_BARS + 3) {
    draft.what = lb_step_name ((LbStep) (LB_STEP_SEVERED + (round - N_BARS - 1)));
  } else {
    draft = LB_DRAFT_INIT (round % 2 == 0 ? LB_ENTRY_BURN_TIME : LB_ENTRY_RODS);
    draft.amount = round;
  }
  draft.pile_id = pile_id;
  draft.shift_id = shift_id;

  return draft;
}

/* How many entries a pile gets before all the others go on without it: 0 to 40, 20 in the mean, so
 * that every step and every share of bars left is seen somewhere on the plan. */
static guint
pace_of (guint pile)
{
  return pile * 31 % (MOST_ROUNDS + 1);
}

typedef struct
{
  LbBook *book;
  guint n, n_wanted;
  char *shift_id;
} Writing;

static gboolean
add_entry (Writing *writing, guint round, const char *pile_id, GError **error)
{
  const guint per_shift = MAX (1, writing->n_wanted / N_SHIFTS);
  LbDraft draft;

  if (writing->n % per_shift == 0) {
    g_clear_pointer (&writing->shift_id, g_free);
    if (!lb_book_open_shift (writing->book, FIRST_DAY + writing->n / per_shift, "day", NULL,
                             &writing->shift_id, error))
      return FALSE;
  }
  writing->n++;
  draft = draft_of (round, pile_id, writing->shift_id);
  return lb_book_record (writing->book, &draft, 1, NULL, error);
}

static gboolean
add_entries (LbBook *book, guint n_piles, guint n_entries, GError **error)
{
  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, error);
  Writing writing = { .book = book, .n_wanted = n_entries };
  gboolean is_good = ledger != NULL;

  for (guint round = 0; is_good && writing.n < n_entries; round++)
    for (guint i = 0; is_good && i < n_piles && writing.n < n_entries; i++)
      if (round >= MOST_ROUNDS || round < pace_of (i))
        is_good = add_entry (&writing, round, lb_ledger_pile (ledger, i)->id, error);
  g_free (writing.shift_id);

  return is_good;
}

LbBook *
big_job_create (const char *path, guint n_piles, guint n_entries, GError **error)
{
  g_autoptr (LbBook) book = lb_book_create_fixed (path, "Big job", "big",
                                                  G_GINT64_CONSTANT (1750000000000000), error);

  if (book == NULL || !add_piles (book, n_piles, error) || !lb_book_begin (book, error))
    return NULL;
  if (!add_entries (book, n_piles, n_entries, error)) {
    lb_book_roll_back (book);
    return NULL;
  }
  if (!lb_book_commit (book, error))
    return NULL;
  lb_book_set_now (book, 0);

  return g_steal_pointer (&book);
}
