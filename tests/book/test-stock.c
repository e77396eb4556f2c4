/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is left of rods and cylinders, and for how many shifts. */
#include "book-fixture.h"
#include "book/stock.h"

static void
count (Story *story, int shift, LbEntryKind kind, const char *what, double amount)
{
  g_free (fixture_record (story->book, story->shifts[shift], kind, -1, what, amount));
}

static LbStock
stock_at (Story *story, const char *what, int shift)
{
  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  LbStock stock;

  lb_stock_at (ledger, fold, what, shift, &stock);
  return stock;
}

/* Without a count nothing is known, however many came. */
static void
test_not_counted (Story *story, gconstpointer data)
{
  LbStock stock;

  count (story, 0, LB_ENTRY_DELIVERY, LB_STOCK_RODS, 200);
  story_tell (story, 0, -1, LB_ENTRY_RODS, 30);
  stock = stock_at (story, LB_STOCK_RODS, 1);
  g_assert_cmpint (stock.counted_shift, ==, -1);
  g_assert_true (isnan (stock.left));
  g_assert_true (isnan (stock.shifts_left));
  g_assert_cmpuint (stock.n_mean, ==, 1);
  g_assert_cmpfloat (stock.mean, ==, 30);
}

/* 150 counted, 100 come, 30 and 40 are used: 180 left, at a mean of 40 a shift four and a half. */
static void
test_rods (Story *story, gconstpointer data)
{
  LbStock stock;

  /* What the shift of the count used is in the count, whether it is written down before or after. */
  story_tell (story, 0, 0, LB_ENTRY_RODS, 25);
  count (story, 0, LB_ENTRY_STOCK, LB_STOCK_RODS, 150);
  story_tell (story, 0, -1, LB_ENTRY_RODS, 25);
  count (story, 0, LB_ENTRY_DELIVERY, LB_STOCK_RODS, 1000);
  stock = stock_at (story, LB_STOCK_RODS, 0);
  g_assert_cmpfloat (stock.left, ==, 150);
  g_assert_cmpfloat (stock.shifts_left, ==, 3);

  story_tell (story, 1, 1, LB_ENTRY_RODS, 30);
  count (story, 1, LB_ENTRY_DELIVERY, LB_STOCK_RODS, 100);
  count (story, 1, LB_ENTRY_DELIVERY, LB_STOCK_CYLINDERS, 6);
  story_tell (story, 2, 2, LB_ENTRY_RODS, 40);
  stock = stock_at (story, LB_STOCK_RODS, 2);
  g_assert_cmpint (stock.counted_shift, ==, 0);
  g_assert_cmpfloat (stock.delivered, ==, 100);
  g_assert_cmpfloat (stock.used, ==, 70);
  g_assert_cmpfloat (stock.left, ==, 180);
  g_assert_cmpuint (stock.n_mean, ==, 3);
  g_assert_cmpfloat (stock.mean, ==, 40);
  g_assert_cmpfloat (stock.shifts_left, ==, 4.5);
  /* As it stood a shift before. */
  g_assert_cmpfloat (stock_at (story, LB_STOCK_RODS, 1).left, ==, 220);
}

/* The last count of the latest shift counts; a shift that used none is not in the mean. */
static void
test_counted_again (Story *story, gconstpointer data)
{
  LbStock stock;
  g_autofree char *wrong = NULL;

  count (story, 2, LB_ENTRY_STOCK, LB_STOCK_RODS, 10);
  count (story, 2, LB_ENTRY_STOCK, LB_STOCK_RODS, 12);
  count (story, 0, LB_ENTRY_STOCK, LB_STOCK_RODS, 500); /* written up later */
  story_tell (story, 0, -1, LB_ENTRY_RODS, 8);
  stock = stock_at (story, LB_STOCK_RODS, 2);
  g_assert_cmpfloat (stock.left, ==, 12);
  g_assert_cmpuint (stock.n_mean, ==, 1);
  g_assert_cmpfloat (stock.shifts_left, ==, 1.5);

  wrong = fixture_record (story->book, story->shifts[2], LB_ENTRY_STOCK, -1, LB_STOCK_RODS, 99);
  g_assert_cmpfloat (stock_at (story, LB_STOCK_RODS, 2).left, ==, 99);
  g_free (fixture_take_back (story->book, story->shifts[2], wrong));
  g_assert_cmpfloat (stock_at (story, LB_STOCK_RODS, 2).left, ==, 12);
}

/* More used than there was: the count was wrong, and no shifts are promised. */
static void
test_below_nothing (Story *story, gconstpointer data)
{
  LbStock stock;

  count (story, 0, LB_ENTRY_STOCK, LB_STOCK_RODS, 10);
  story_tell (story, 1, -1, LB_ENTRY_RODS, 12);
  stock = stock_at (story, LB_STOCK_RODS, 1);
  g_assert_cmpfloat (stock.left, ==, -2);
  g_assert_true (isnan (stock.shifts_left));
}

/* Oxygen is used from cylinders, by what each gives before it is changed. */
static void
test_cylinders (Story *story, gconstpointer data)
{
  LbAssumptions assumptions;
  LbStock stock;
  double a_cylinder_m3;

  lb_assumptions_init (&assumptions);
  a_cylinder_m3 = lb_cut_basis (&assumptions).cylinder_gas_m3;
  g_assert_cmpfloat (a_cylinder_m3, >, 0);
  count (story, 0, LB_ENTRY_STOCK, LB_STOCK_CYLINDERS, 12);
  story_tell (story, 1, -1, LB_ENTRY_OXYGEN, 3 * a_cylinder_m3);
  story_tell (story, 2, -1, LB_ENTRY_OXYGEN, 5 * a_cylinder_m3);
  stock = stock_at (story, LB_STOCK_CYLINDERS, 2);
  g_assert_cmpfloat_with_epsilon (stock.left, 4, 1e-9);
  g_assert_cmpfloat_with_epsilon (stock.mean, 4, 1e-9);
  g_assert_cmpfloat_with_epsilon (stock.shifts_left, 1, 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name, func) g_test_add ("/stock/" name, Story, NULL, story_begin, func, story_end)

  ADD ("not-counted", test_not_counted);
  ADD ("rods", test_rods);
  ADD ("counted-again", test_counted_again);
  ADD ("below-nothing", test_below_nothing);
  ADD ("cylinders", test_cylinders);

  return g_test_run ();
}
