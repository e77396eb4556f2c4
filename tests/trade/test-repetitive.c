/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/repetitive.h"

#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

#define FOOT      0.3048
#define MINUTE    60.0
#define MINUTE_US (G_GINT64_CONSTANT (60) * G_USEC_PER_SEC)
#define GROUPS    "ABCDEFGHIJKLMNOZ"

/* Eight in the morning of some day. */
#define MORNING (G_GINT64_CONSTANT (20000 * 24 + 8) * 60 * MINUTE_US)

/* A dive that leaves the surface @at minutes after eight and takes two minutes up. */
static LbDive
dive_at (int at, int minutes, double reading_ft)
{
  const gint64 left_us = MORNING + at * MINUTE_US;

  return (LbDive){ .left_surface_us = left_us,
                   .left_bottom_us = left_us + minutes * MINUTE_US,
                   .reached_surface_us = left_us + (minutes + 2) * MINUTE_US,
                   .depth_m = reading_ft * FOOT };
}

/* More rest never leaves a higher group. */
static void
test_rest_helps (void)
{
  for (const char *group = GROUPS; *group != '\0'; group++) {
    char before = *group;

    for (int minutes = 10; minutes < 1000; minutes++) {
      LbInterval interval;

      g_assert_true (lb_surface_interval (*group, minutes * MINUTE, &interval, NULL));
      if (interval.kind == LB_INTERVAL_OVER) {
        g_assert_cmpint (before, ==, 'A');
        break;
      }
      g_assert_cmpint (interval.kind, ==, LB_INTERVAL_GROUP);
      g_assert_cmpint (interval.group, <=, before);
      before = interval.group;
    }
  }
}

/* A begun minute of rest counts for nothing. */
static void
test_begun_minute (void)
{
  LbInterval interval;

  g_assert_true (lb_surface_interval ('K', 10 * MINUTE - 1, &interval, NULL));
  g_assert_cmpint (interval.kind, ==, LB_INTERVAL_ONE_DIVE);
  g_assert_cmpint (interval.group, ==, 0);
  g_assert_true (lb_surface_interval ('K', 53 * MINUTE - 1, &interval, NULL));
  g_assert_cmpint (interval.group, ==, 'K');
  g_assert_true (lb_surface_interval ('K', 53 * MINUTE, &interval, NULL));
  g_assert_cmpint (interval.group, ==, 'J');
}

/* A higher group takes more off, and so does a shallower row. */
static void
test_residual_rises (void)
{
  for (int feet = 30; feet <= 100; feet++) {
    double before = 0;

    for (const char *group = GROUPS; *group != '\0'; group++) {
      double here, deeper;

      g_assert_true (lb_residual_time (feet * FOOT, *group, &here, NULL));
      g_assert_cmpfloat (here, >, before);
      g_assert_true (lb_residual_time (100 * FOOT, *group, &deeper, NULL));
      g_assert_cmpfloat (deeper, <=, here);
      before = here;
    }
  }
}

/* The two tables are of one make: the residual time of a group, spent at that depth, leads to no
 * lower group. */
static void
test_residual_and_groups_agree (void)
{
  for (int feet = 30; feet <= 100; feet += feet < 60 ? 5 : 10) {
    for (const char *group = GROUPS; *group != '\0'; group++) {
      double residual;

      g_assert_true (lb_residual_time (feet * FOOT, *group, &residual, NULL));
      const char after = lb_repetitive_group (feet * FOOT, residual);

      if (after != 0)
        g_assert_cmpint (after, >=, *group);
    }
  }
}

static void
test_tables_refuse (void)
{
  const char letters[] = { 'P', 'a', 0, '?', '\x80' };
  double out = 7;

  for (gsize i = 0; i < G_N_ELEMENTS (letters); i++) {
    g_autoptr (GError) interval_error = NULL;
    g_autoptr (GError) residual_error = NULL;
    LbInterval interval;

    g_assert_false (lb_surface_interval (letters[i], 3600, &interval, &interval_error));
    g_assert_error (interval_error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN);
    g_assert_true (g_utf8_validate (interval_error->message, -1, NULL));
    g_assert_false (lb_residual_time (9, letters[i], &out, &residual_error));
    g_assert_error (residual_error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN);
  }

  const double depths[] = { -1, 101 * FOOT, (double) NAN, (double) INFINITY };
  LbInterval interval;

  for (gsize i = 0; i < G_N_ELEMENTS (depths); i++) {
    g_autoptr (GError) error = NULL;

    g_assert_false (lb_residual_time (depths[i], 'A', &out, &error));
    g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
  }
  g_assert_cmpfloat (out, ==, 7);
  g_assert_false (lb_surface_interval ('A', -1, &interval, NULL));
  g_assert_false (lb_surface_interval ('A', (double) NAN, &interval, NULL));
}

static void
test_first_dive (void)
{
  const LbDiveLeft left = lb_dive_left (NULL, NULL, 0, 39 * FOOT, MORNING);

  g_assert_cmpint (left.state, ==, LB_DIVE_LEFT_KNOWN);
  g_assert_cmpint (left.group, ==, 0);
  g_assert_false (left.is_one_dive);
  g_assert_cmpfloat (left.limit_s, ==, 163 * MINUTE);
  g_assert_cmpfloat (left.open_s, ==, left.limit_s);
  g_assert_cmpstr (lb_dive_left_reason (left.state), ==, "");
}

/* Three dives of a day, by hand: 40 ft 50 min F; 2:00 (F: F 0:52, E 1:44, D 2:37) D; 37 + 40 = 77
 * min at 40 ft I; 2:00 (I: I 0:52, H 1:44, G 2:37) G; 163 − 64 = 99 min left. */
static void
test_three_dives (void)
{
  const LbDive dives[] = { dive_at (0, 50, 39), dive_at (172, 40, 39) };
  const LbDiveLeft left = lb_dive_left (NULL, dives, G_N_ELEMENTS (dives), 39 * FOOT,
                                        dives[1].reached_surface_us + 120 * MINUTE_US);

  g_assert_cmpint (left.state, ==, LB_DIVE_LEFT_KNOWN);
  g_assert_cmpint (left.group, ==, 'G');
  g_assert_cmpfloat (left.residual_s, ==, 64 * MINUTE);
  g_assert_cmpfloat (left.open_s, ==, 99 * MINUTE);
}

/* Two minutes up and down again: one dive of 30 min at 50 ft; then 1:00 (E after 34: E 0:52, D 1:44)
 * D, and 163 − 37 min at 40 ft. */
static void
test_short_break_is_one_dive (void)
{
  const LbDive dives[] = { dive_at (0, 20, 49), dive_at (24, 10, 29) };
  const LbDive whole[] = { dive_at (6, 30, 49) };
  const gint64 again_us = MORNING + 96 * MINUTE_US;
  const LbDiveLeft left = lb_dive_left (NULL, dives, 2, 39 * FOOT, again_us + 60 * MINUTE_US);
  const LbDiveLeft same = lb_dive_left (NULL, whole, 1, 39 * FOOT, again_us + 60 * MINUTE_US);

  g_assert_cmpint (left.state, ==, LB_DIVE_LEFT_KNOWN);
  g_assert_cmpint (left.group, ==, same.group);
  g_assert_cmpfloat (left.open_s, ==, same.open_s);

  const LbDiveLeft at_once = lb_dive_left (NULL, dives, 2, 39 * FOOT,
                                           dives[1].reached_surface_us + 5 * MINUTE_US);

  g_assert_true (at_once.is_one_dive);
  g_assert_cmpfloat (at_once.spent_s, ==, 30 * MINUTE);
  g_assert_cmpfloat (at_once.limit_s, ==, 92 * MINUTE); /* 50 ft, the deeper */
  g_assert_cmpfloat (at_once.open_s, ==, 62 * MINUTE);
}

/* The dive that goes on keeps the group it began with: F after 50 min at 40 ft, D after 2:00; 20 and
 * 10 min at 40 ft and 37 of D are 67, H. */
static void
test_short_break_keeps_the_group (void)
{
  const LbDive dives[] = { dive_at (0, 50, 39), dive_at (172, 20, 39), dive_at (199, 10, 39) };
  const gint64 up_us = dives[2].reached_surface_us;
  const LbDiveLeft at_once = lb_dive_left (NULL, dives, 3, 39 * FOOT, up_us + MINUTE_US);
  const LbDiveLeft soon = lb_dive_left (NULL, dives, 3, 39 * FOOT, up_us + 30 * MINUTE_US);

  g_assert_true (at_once.is_one_dive);
  g_assert_cmpint (at_once.group, ==, 'H');
  g_assert_cmpfloat (at_once.residual_s, ==, 37 * MINUTE);
  g_assert_cmpfloat (at_once.open_s, ==, (163 - 37 - 30) * MINUTE);
  g_assert_false (soon.is_one_dive);
  g_assert_cmpint (soon.group, ==, 'H');
  g_assert_cmpfloat (soon.open_s, ==, (163 - 74) * MINUTE);
}

/* A long night clears everything but a dive past the limit. */
static void
test_next_day (void)
{
  const LbDive dive = dive_at (0, 163, 39);
  const LbDive past = dive_at (0, 164, 39);
  const gint64 night_us = 16 * 60 * MINUTE_US;
  const LbDiveLeft left = lb_dive_left (NULL, &dive, 1, 39 * FOOT,
                                        dive.reached_surface_us + night_us);
  const LbDiveLeft not = lb_dive_left (NULL, &past, 1, 39 * FOOT,
                                       past.reached_surface_us + night_us);

  g_assert_cmpint (left.state, ==, LB_DIVE_LEFT_KNOWN);
  g_assert_cmpint (left.group, ==, 0);
  g_assert_cmpfloat (left.open_s, ==, 163 * MINUTE);
  g_assert_cmpint (not .state, ==, LB_DIVE_LEFT_PAST_LIMIT);
  g_assert_cmpfloat (not .open_s, ==, 0);
  g_assert_nonnull (strstr (lb_dive_left_reason (not .state), "no-stop limit"));
}

/* No time is left, but nothing is past a limit: the group alone takes all of it. */
static void
test_nothing_left (void)
{
  const LbDive dive = dive_at (0, 163, 39);
  const LbDiveLeft left = lb_dive_left (NULL, &dive, 1, 89 * FOOT,
                                        dive.reached_surface_us + 20 * MINUTE_US);

  g_assert_cmpint (left.state, ==, LB_DIVE_LEFT_KNOWN);
  g_assert_cmpint (left.group, ==, 'O');
  g_assert_cmpfloat (left.residual_s, >, left.limit_s);
  g_assert_cmpfloat (left.open_s, ==, 0);
}

/* A dive that would go on deeper than its bottom time allows there. */
static void
test_going_on_deeper (void)
{
  const LbDive dive = dive_at (0, 100, 39);
  const LbDiveLeft left = lb_dive_left (NULL, &dive, 1, 59 * FOOT,
                                        dive.reached_surface_us + 5 * MINUTE_US);

  g_assert_cmpint (left.state, ==, LB_DIVE_LEFT_PAST_LIMIT);
}

/* Where the table prints no limit there is none, whatever the group. */
static void
test_shallow (void)
{
  const LbDive dive = dive_at (0, 163, 39);
  const gint64 again_us = dive.reached_surface_us + 20 * MINUTE_US;
  const LbDiveLeft left = lb_dive_left (NULL, &dive, 1, 14 * FOOT, again_us);

  g_assert_cmpint (left.state, ==, LB_DIVE_LEFT_KNOWN);
  g_assert_true (isinf (left.open_s));
  g_assert_true (isnan (left.residual_s));

  /* But the group after that dive cannot be found. */
  const LbDive both[] = { dive, dive_at (185, 30, 14) };
  const LbDiveLeft third = lb_dive_left (NULL, both, 2, 39 * FOOT,
                                         both[1].reached_surface_us + 60 * MINUTE_US);

  g_assert_cmpint (third.state, ==, LB_DIVE_LEFT_OUTSIDE);
}

static void
test_not_known (void)
{
  const LbDive good = dive_at (0, 50, 39);
  const gint64 again_us = good.reached_surface_us + 60 * MINUTE_US;
  LbDive no_time = good, no_depth = good, deep = good, crossed = good, still_down = good;

  no_time.reached_surface_us = 0;
  no_depth.depth_m = (double) NAN;
  deep.depth_m = 195 * FOOT;
  crossed.reached_surface_us = crossed.left_bottom_us - 1;
  still_down.reached_surface_us = again_us + 1;

  const struct
  {
    LbDive dive;
    double depth_ft;
    LbDiveLeftState state;
  } cases[] = {
    { no_time, 39, LB_DIVE_LEFT_NOT_WRITTEN },
    { no_depth, 39, LB_DIVE_LEFT_NOT_WRITTEN },
    { good, (double) NAN, LB_DIVE_LEFT_NOT_WRITTEN },
    { deep, 39, LB_DIVE_LEFT_OUTSIDE },
    { good, 195, LB_DIVE_LEFT_OUTSIDE },
    { good, 105, LB_DIVE_LEFT_OUTSIDE },
    { good, -1, LB_DIVE_LEFT_OUTSIDE },
    { crossed, 39, LB_DIVE_LEFT_OUT_OF_ORDER },
    { still_down, 39, LB_DIVE_LEFT_OUT_OF_ORDER },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    const LbDive dives[] = { cases[i].dive, dive_at (1000, 10, 39) };
    const LbDiveLeft last = lb_dive_left (NULL, dives, 1, cases[i].depth_ft * FOOT, again_us);
    const LbDiveLeft earlier = lb_dive_left (NULL, dives, 2, cases[i].depth_ft * FOOT,
                                             dives[1].reached_surface_us + MINUTE_US * 60);

    g_assert_cmpint (last.state, ==, cases[i].state);
    g_assert_cmpfloat (last.open_s, ==, 0);
    g_assert_cmpstr (lb_dive_left_reason (last.state), !=, "");
    /* A dive before the last one counts as much, but for the one whose fault was the start. */
    if (i + 1 < G_N_ELEMENTS (cases) && cases[i].depth_ft != 105)
      g_assert_cmpint (earlier.state, ==, cases[i].state);
  }
  g_assert_cmpint (lb_dive_left (NULL, &good, 1, 39 * FOOT, 0).state, ==, LB_DIVE_LEFT_NOT_WRITTEN);
}

/* The ends of time itself. */
static void
test_wild_times (void)
{
  const LbDive wild = { .left_surface_us = G_MININT64,
                        .left_bottom_us = G_MAXINT64,
                        .reached_surface_us = G_MAXINT64,
                        .depth_m = 10 };

  g_assert_cmpint (lb_dive_left (NULL, &wild, 1, 10, G_MININT64).state, ==,
                   LB_DIVE_LEFT_PAST_LIMIT);
}

static void
test_own_table (void)
{
  const LbDiveTable own = { .is_metric = TRUE, .n_rows = 1, .rows = { { 15, 90, { 0 } } } };
  const LbDive dive = dive_at (0, 20, 39);
  const LbDiveLeft first = lb_dive_left (&own, NULL, 0, 10, MORNING);
  const LbDiveLeft second = lb_dive_left (&own, &dive, 1, 10, MORNING + 300 * MINUTE_US);

  g_assert_cmpint (first.state, ==, LB_DIVE_LEFT_KNOWN);
  g_assert_cmpfloat (first.open_s, ==, 90 * MINUTE);
  g_assert_cmpint (second.state, ==, LB_DIVE_LEFT_OWN_TABLE);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/repetitive/rest-helps", test_rest_helps);
  g_test_add_func ("/trade/repetitive/begun-minute", test_begun_minute);
  g_test_add_func ("/trade/repetitive/residual-rises", test_residual_rises);
  g_test_add_func ("/trade/repetitive/residual-and-groups-agree", test_residual_and_groups_agree);
  g_test_add_func ("/trade/repetitive/tables-refuse", test_tables_refuse);
  g_test_add_func ("/trade/repetitive/first-dive", test_first_dive);
  g_test_add_func ("/trade/repetitive/three-dives", test_three_dives);
  g_test_add_func ("/trade/repetitive/short-break", test_short_break_is_one_dive);
  g_test_add_func ("/trade/repetitive/short-break-keeps-the-group",
                   test_short_break_keeps_the_group);
  g_test_add_func ("/trade/repetitive/next-day", test_next_day);
  g_test_add_func ("/trade/repetitive/nothing-left", test_nothing_left);
  g_test_add_func ("/trade/repetitive/going-on-deeper", test_going_on_deeper);
  g_test_add_func ("/trade/repetitive/shallow", test_shallow);
  g_test_add_func ("/trade/repetitive/not-known", test_not_known);
  g_test_add_func ("/trade/repetitive/wild-times", test_wild_times);
  g_test_add_func ("/trade/repetitive/own-table", test_own_table);
  return g_test_run ();
}
