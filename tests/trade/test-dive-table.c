/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/dive-table.h"

#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

#define FOOT   0.3048
#define MINUTE 60.0

/* A supervisor's own table in metres: groups A and B, the first not printed at depth. */
static const LbDiveTable own = {
  .is_metric = TRUE,
  .groups = "AB",
  .n_rows = 3,
  .rows = { { 6, LB_DIVE_NO_LIMIT, { 40, LB_DIVE_ANY_LONGER } },
            { 9, 200, { 15, 200 } },
            { 12.5, 100, { LB_DIVE_NOT_PRINTED, 90 } } },
};

/* No table is the Navy's, to the last figure. */
static void
test_built_in (void)
{
  for (int feet = 0; feet <= 190; feet++) {
    LbNoStop named, plain;

    g_assert_true (lb_dive_table_limit (NULL, feet * FOOT, &named, NULL));
    g_assert_true (lb_no_stop_limit (feet * FOOT, &plain, NULL));
    g_assert_cmpfloat (named.limit_s, ==, plain.limit_s);
    for (int minutes = 0; minutes < 500; minutes += 7)
      g_assert_cmpint (lb_dive_table_group (NULL, feet * FOOT, minutes * MINUTE), ==,
                       lb_repetitive_group (feet * FOOT, minutes * MINUTE));
  }
}

static void
test_own_limits (void)
{
  LbNoStop limit;

  g_assert_true (lb_dive_table_limit (&own, 0, &limit, NULL));
  g_assert_true (isinf (limit.limit_s));
  g_assert_true (lb_dive_table_limit (&own, 6.1, &limit, NULL));
  g_assert_cmpfloat (limit.table_depth_m, ==, 9);
  g_assert_cmpfloat (limit.limit_s, ==, 200 * MINUTE);
  g_assert_true (lb_dive_table_limit (&own, 12.5, &limit, NULL));
  g_assert_cmpfloat (limit.limit_s, ==, 100 * MINUTE);
}

static void
test_own_groups (void)
{
  g_assert_cmpint (lb_dive_table_group (&own, 6, 40 * MINUTE), ==, 'A');
  g_assert_cmpint (lb_dive_table_group (&own, 6, 4000 * MINUTE), ==, 'B');
  g_assert_cmpint (lb_dive_table_group (&own, 12, 1 * MINUTE), ==, 'B');
  /* Within the limit, but past the last group that is printed: nothing is made up. */
  g_assert_cmpint (lb_dive_table_group (&own, 12, 95 * MINUTE), ==, 0);
  g_assert_cmpint (lb_dive_table_group (&own, 9, 201 * MINUTE), ==, 0);
}

/* A group's time that goes past the limit does not lengthen it. */
static void
test_limit_is_above_the_groups (void)
{
  const LbDiveTable wrong = { .groups = "A", .n_rows = 1, .rows = { { 40, 100, { 120 } } } };

  g_assert_cmpint (lb_dive_table_group (&wrong, 10, 100 * MINUTE), ==, 'A');
  g_assert_cmpint (lb_dive_table_group (&wrong, 10, 101 * MINUTE), ==, 0);
}

static void
test_refused (void)
{
  const LbDiveTable empty = { .n_rows = 0 };
  const double depths[] = { -1, 12.6, (double) NAN, (double) INFINITY };
  LbNoStop limit = { 7, 7 };

  for (gsize i = 0; i < G_N_ELEMENTS (depths); i++) {
    g_autoptr (GError) error = NULL;

    g_assert_false (lb_dive_table_limit (&own, depths[i], &limit, &error));
    g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_nonnull (strstr (error->message, "msw"));
    g_assert_cmpint (lb_dive_table_group (&own, depths[i], MINUTE), ==, 0);
  }
  g_assert_false (lb_dive_table_limit (&empty, 1, &limit, NULL));
  g_assert_cmpfloat (limit.limit_s, ==, 7);
  g_assert_cmpint (lb_dive_table_group (&own, 6, (double) NAN), ==, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/dive-table/built-in", test_built_in);
  g_test_add_func ("/trade/dive-table/own-limits", test_own_limits);
  g_test_add_func ("/trade/dive-table/own-groups", test_own_groups);
  g_test_add_func ("/trade/dive-table/limit-is-above-the-groups", test_limit_is_above_the_groups);
  g_test_add_func ("/trade/dive-table/refused", test_refused);
  return g_test_run ();
}
