/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The supervisor's own table in the job: kept, reckoned with, refused, and put away again. */
#include "book-fixture.h"
#include "trade/cut-plan.h"

#define FOOT   0.3048
#define MINUTE 60.0

static const char short_table[] = "fsw,nostop\n30,200\n40,100\n\n60,45\n";

static gboolean
set_table (Story *story, const char *text, GError **error)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);

  draft.what = LB_SETTING_DIVE_TABLE;
  draft.note = text;
  return lb_book_record (story->book, &draft, 1, NULL, error);
}

/* The limit in the plan of a pile whose cut lies 38 ft deep: the row of 40 ft. */
static double
planned_limit (const LbFold *fold, gboolean *out_is_own)
{
  LbPile pile;
  LbCutPlan plan;

  lb_pile_init (&pile);
  pile.head_m = 2;
  pile.cut_m = -38 * FOOT;
  lb_cut_plan_reckon (&pile, 0, 0, 0, lb_fold_basis (fold), &plan);
  *out_is_own = plan.is_own_table;
  g_assert_cmpfloat_with_epsilon (plan.table_depth_m, 40 * FOOT, 1e-9);
  return plan.figures[LB_FIGURE_NO_STOP].range.likely;
}

static void
expect_limit (Story *story, double minutes, gboolean is_own)
{
  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  gboolean plan_is_own;

  g_assert_cmpfloat (planned_limit (fold, &plan_is_own), ==, minutes * MINUTE);
  g_assert_cmpint (plan_is_own, ==, is_own);
  g_assert_cmpint (fold->has_own_table, ==, is_own);
}

static void
test_kept (Story *story, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  expect_limit (story, 163, FALSE); /* U.S. Navy Diving Manual, revision 7, table 9-7 */
  set_table (story, short_table, &error);
  g_assert_no_error (error);
  expect_limit (story, 100, TRUE);
  set_table (story, "fsw,nostop\n40,90\n", &error);
  g_assert_no_error (error);
  expect_limit (story, 90, TRUE);
  set_table (story, "", &error);
  g_assert_no_error (error);
  expect_limit (story, 163, FALSE);
}

static void
test_refused (Story *story, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (set_table (story, short_table, NULL));
  g_assert_false (set_table (story, "fsw,nostop\n40,100\n30,200\n", &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "Line 3, column 1 (fsw)"));
  expect_limit (story, 100, TRUE);
}

/* Rows that are all right, in a text longer than an entry holds. */
static void
test_too_long (Story *story, gconstpointer data)
{
  g_autoptr (GString) text = g_string_new ("fsw,nostop,A,B,C,D,E\n");
  g_autoptr (GError) error = NULL;

  for (int i = 1; i <= 150; i++)
    g_string_append_printf (text, "%d,%*d,101,102,103,104,105\n", i, 1000, 1000 - i);
  g_assert_cmpuint (text->len, >, 100000);
  g_assert_false (set_table (story, text->str, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "The no-stop table is too long"));
  expect_limit (story, 163, FALSE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name, function) \
  g_test_add ("/dive-table/" name, Story, NULL, story_begin, function, story_end)
  ADD ("kept", test_kept);
  ADD ("refused", test_refused);
  ADD ("too-long", test_too_long);

  return g_test_run ();
}
