/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The search against all orders written out, for as many bars as that is possible with, and what
 * must hold of any order for any pile. */
#include "trade/burn-order.h"

#include "bared-cut.h"
#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

#define INCH 0.0254
#define SEED 19380401

static LbBurnOrder
weigh (const LbBurnCase *burn, const guint8 *order, gsize n)
{
  g_autoptr (GError) error = NULL;
  LbBurnOrder weighed;

  g_assert_true (lb_burn_order_weigh (burn, order, n, &weighed, &error));
  g_assert_no_error (error);
  return weighed;
}

static LbBurnOrder
weigh_best (const LbBurnCase *burn)
{
  guint8 order[LB_BARS_MAX];
  const gsize n = lb_burn_order_best (burn, order);

  g_assert_cmpuint (n, ==, lb_bar_set_count (burn->left));
  return weigh (burn, order, n);
}

/* How many bars an order lets be burned before the hook must hold. */
static gsize
count_free (const LbBurnOrder *order)
{
  return order->rig_before == 0 ? order->n_steps : order->rig_before - 1;
}

/* --- All orders written out --------------------------------------------------------------- */

typedef struct
{
  const LbBurnCase *burn;
  guint8 ring[LB_BARS_MAX]; /* bars left in their order round the pile */
  guint n;
  gboolean has_line; /* some of them in line from the middle */
  gsize most_free;
  double least_peak;
  guint fewest_turns;
  /* Of the orders that begin as the best does and go on otherwise from the hold point. */
  const LbBurnOrder *best;
  guint fewest_hinges;
  double least_held;
} Enumeration;

static guint
count_hinges (const LbBurnOrder *order)
{
  guint n_hinges = 0;

  for (gsize i = 0; i < order->n_steps; i++)
    n_hinges += order->steps[i].is_hinge;
  return n_hinges;
}

static gboolean
begins_as (const LbBurnOrder *a, const LbBurnOrder *b, gsize n)
{
  for (gsize i = 0; i < n; i++) {
    if (a->steps[i].bar != b->steps[i].bar)
      return FALSE;
  }
  return TRUE;
}

static void
note (Enumeration *all, const LbBurnOrder *order, guint n_turns_free)
{
  const gsize n_free = count_free (order);
  const gboolean is_same = n_free == all->most_free &&
                           fabs (order->slack_utilisation - all->least_peak) <=
                             1e-9 * all->least_peak;

  g_assert_cmpuint (order->n_jumps, ==, 0);
  if (is_same) {
    all->fewest_turns = MIN (all->fewest_turns, n_turns_free);
  } else if (n_free > all->most_free ||
             (n_free == all->most_free && order->slack_utilisation < all->least_peak))
  {
    all->most_free = n_free;
    all->least_peak = order->slack_utilisation;
    all->fewest_turns = n_turns_free;
  }

  const guint n_hinges = count_hinges (order);

  if (!begins_as (order, all->best, count_free (all->best)) || n_hinges > all->fewest_hinges)
    return;
  if (n_hinges < all->fewest_hinges)
    all->least_held = G_MAXDOUBLE;
  all->fewest_hinges = n_hinges;
  all->least_held = MIN (all->least_held, order->held_utilisation);
}

/* Changes of end among the first @n_free bars of an order of arcs; @ways: +1 or -1, from 1 on. */
static guint
count_turns (const int *ways, gsize n_free)
{
  guint n_turns = 0;

  for (gsize i = 2; i < n_free; i++)
    n_turns += ways[i] != ways[i - 1];
  return n_turns;
}

/* Clockwise from the lean, 0 to 2π. */
static double
bearing_of (LbPoint place)
{
  const double angle = atan2 (place.x, place.y);

  return angle < -1e-9 ? angle + 2 * G_PI : MAX (angle, 0);
}

/* Whether @b comes after @a on the way round, @in_line being 1 where the outer of bars in line comes
 * first and -1 where the inner does. */
static gboolean
comes_after (LbPoint a, LbPoint b, int in_line, gboolean *has_line)
{
  const double round = bearing_of (b) - bearing_of (a);

  if (fabs (round) > 1e-7)
    return round > 0;
  *has_line = TRUE;
  return in_line * (hypot (a.x, a.y) - hypot (b.x, b.y)) >= 0;
}

/* The bars left round the pile, by picking the next again and again. */
static void
find_ring (Enumeration *all, int in_line)
{
  const LbPoint *places = all->burn->cut->places;

  all->n = 0;
  for (guint bar = 0; bar < all->burn->cut->n_bars; bar++) {
    guint at = all->n;

    if ((all->burn->left & LB_BAR (bar)) == 0)
      continue;
    for (; at > 0 && !comes_after (places[all->ring[at - 1]], places[bar], in_line, &all->has_line);
         at--)
      all->ring[at] = all->ring[at - 1];
    all->ring[at] = (guint8) bar;
    all->n++;
  }
}

static void
enumerate (Enumeration *all)
{
  guint8 order[LB_BARS_MAX];
  int ways[LB_BARS_MAX] = { 0 };

  for (guint start = 0; start < all->n; start++) {
    for (guint choice = 0; choice < 1u << (all->n - 1); choice++) {
      guint first = start, last = start;

      order[0] = all->ring[start];
      for (guint i = 1; i < all->n; i++) {
        if ((choice >> (i - 1)) & 1) {
          last = (last + 1) % all->n;
          order[i] = all->ring[last];
          ways[i] = 1;
        } else {
          first = (first + all->n - 1) % all->n;
          order[i] = all->ring[first];
          ways[i] = -1;
        }
      }

      const LbBurnOrder weighed = weigh (all->burn, order, all->n);

      note (all, &weighed, count_turns (ways, count_free (&weighed)));
    }
  }
}

/* As the search found them. */
static guint
turns_of_best (const Enumeration *all, const LbBurnOrder *best)
{
  int ways[LB_BARS_MAX] = { 0 };
  LbBarSet gone = 0;
  guint position[LB_BARS_MAX] = { 0 };

  for (guint i = 0; i < all->n; i++)
    position[all->ring[i]] = i;
  for (gsize i = 0; i < best->n_steps; i++) {
    const guint at = position[best->steps[i].bar];

    ways[i] = (gone & LB_BAR ((at + all->n - 1) % all->n)) ? 1 : -1;
    gone |= LB_BAR (at);
  }
  return count_turns (ways, count_free (best));
}

static void
test_against_all_orders (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);
  guint n_held_somewhat = 0, n_in_line = 0;

  for (int trial = 0; trial < 300; trial++) {
    LbBaredCut pile;
    Enumeration all = { .least_peak = G_MAXDOUBLE,
                        .least_held = G_MAXDOUBLE,
                        .fewest_hinges = G_MAXUINT };

    lb_bared_cut_chance (&pile, random, trial < 280 ? 7 : 8);
    all.burn = &pile.burn;

    const LbBurnOrder best = weigh_best (&pile.burn);

    all.best = &best;
    find_ring (&all, 1);
    enumerate (&all);
    if (all.has_line) {
      find_ring (&all, -1);
      enumerate (&all);
    }

    g_assert_cmpuint (best.n_jumps, ==, 0);
    g_assert_cmpuint (count_free (&best), ==, all.most_free);
    if (isfinite (all.least_peak) && best.stands)
      g_assert_cmpfloat_with_epsilon (best.slack_utilisation, all.least_peak,
                                      1e-9 * all.least_peak);
    n_held_somewhat += all.most_free > 0;
    n_in_line += all.has_line;
    /* What comes after that is told of one way round. */
    if (all.has_line)
      continue;
    if (isfinite (all.least_peak) && best.stands)
      g_assert_cmpuint (turns_of_best (&all, &best), ==, all.fewest_turns);
    g_assert_cmpuint (count_hinges (&best), ==, all.fewest_hinges);
    g_assert_cmpfloat_with_epsilon (best.held_utilisation, all.least_held,
                                    1e-9 * (1 + all.least_held));
  }
  /* Else the comparison would be of nothing with nothing. */
  g_assert_cmpuint (n_held_somewhat, >, 60);
  g_assert_cmpuint (n_in_line, >, 20);
}

/* --- What holds of every order ------------------------------------------------------------- */

static void
test_every_order_ends_on_the_hook (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);

  for (int trial = 0; trial < 60; trial++) {
    LbBaredCut pile;

    lb_bared_cut_chance (&pile, random, 24);

    const LbBurnOrder best = weigh_best (&pile.burn);
    const gsize n = best.n_steps;

    /* Three bars left are the fewest that can hold. */
    g_assert_cmpuint (best.rig_before, >=, 1);
    g_assert_cmpuint (best.rig_before, <=, n - 2);
    g_assert_cmpuint (lb_bar_set_count (best.hold), ==, n - best.rig_before + 1);
    for (gsize i = 0; i < n; i++) {
      const LbBurnStep *step = &best.steps[i];

      g_assert_cmpuint (step->n_left, ==, n - i - 1);
      g_assert_true (step->n_left > 2 || step->is_hinge);
      g_assert_true (step->is_hinge == (gboolean) isnan (step->slack.peak_pa));
      g_assert_true (step->is_hinge == (gboolean) isnan (step->held.utilisation));
      if (i + 1 < best.rig_before)
        g_assert_cmpfloat (step->slack.utilisation, <=, 1);
      g_assert_true (((best.hold & LB_BAR (step->bar)) != 0) == (i + 1 >= best.rig_before));
    }
  }
}

/* Each step is what lb_hold_reckon() says of the bars it leaves. */
static void
test_steps_are_holds (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);

  for (int trial = 0; trial < 60; trial++) {
    LbBaredCut pile;

    lb_bared_cut_chance (&pile, random, 20);

    const LbBurnOrder best = weigh_best (&pile.burn);
    LbBarSet left = pile.burn.left;

    for (gsize i = 0; i < best.n_steps; i++) {
      const LbBurnStep *step = &best.steps[i];
      LbHold slack, held;

      left &= ~LB_BAR (step->bar);
      g_assert_true (lb_hold_reckon (&pile.cut, left, &pile.burn.slack, &slack, NULL));
      g_assert_true (lb_hold_reckon (&pile.cut, left, &pile.burn.held, &held, NULL));
      g_assert_true (slack.is_hinge == step->is_hinge);
      if (step->is_hinge)
        continue;
      g_assert_cmpfloat_with_epsilon (step->slack.peak_pa, slack.greatest_pa,
                                      1e-9 * slack.greatest_pa);
      g_assert_cmpfloat_with_epsilon (step->slack.utilisation, slack.utilisation,
                                      1e-9 * slack.utilisation);
      g_assert_cmpfloat_with_epsilon (step->held.utilisation, held.utilisation,
                                      1e-9 * held.utilisation);
    }
  }
}

/* The order by sides is one of all the bars left, as the best is. */
static void
test_from_side_is_whole (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);

  for (int trial = 0; trial < 60; trial++) {
    LbBaredCut pile;
    guint8 order[LB_BARS_MAX];

    lb_bared_cut_chance (&pile, random, 16);

    const LbBurnOrder best = weigh_best (&pile.burn);

    const LbBurnOrder from_side = weigh (&pile.burn, order,
                                         lb_burn_order_from_side (&pile.burn, order));

    /* It may jump where bars are gone on one side, so it is held to no more than being whole. */
    g_assert_cmpuint (from_side.n_steps, ==, best.n_steps);
  }
}

/* The mirror image of a pile is cut by the mirror image of its order, or by one as good. */
static void
test_mirror (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);

  for (int trial = 0; trial < 60; trial++) {
    LbBaredCut pile;

    lb_bared_cut_chance (&pile, random, 16);

    const LbBurnOrder once = weigh_best (&pile.burn);

    for (guint bar = 0; bar < pile.cut.n_bars; bar++)
      pile.places[bar].x = -pile.places[bar].x;
    pile.burn.side_rad = 2 * G_PI - pile.burn.side_rad;

    const LbBurnOrder mirrored = weigh_best (&pile.burn);

    g_assert_cmpuint (mirrored.rig_before, ==, once.rig_before);
    g_assert_true (mirrored.stands == once.stands);
    if (once.stands)
      g_assert_cmpfloat_with_epsilon (mirrored.slack_utilisation, once.slack_utilisation, 1e-8);
    g_assert_cmpfloat_with_epsilon (mirrored.held_utilisation, once.held_utilisation,
                                    1e-8 * (1 + once.held_utilisation));
  }
}

/* Bars numbered any way are the same pile. */
static void
test_numbering (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);

  for (int trial = 0; trial < 60; trial++) {
    LbBaredCut pile;

    lb_bared_cut_chance (&pile, random, 16);
    pile.burn.left = lb_bar_set_all (pile.cut.n_bars);

    const LbBurnOrder once = weigh_best (&pile.burn);

    for (guint i = pile.cut.n_bars - 1; i > 0; i--) {
      const gint32 j = g_rand_int_range (random, 0, (gint32) i + 1);
      const LbPoint place = pile.places[i];

      pile.places[i] = pile.places[j];
      pile.places[j] = place;
    }

    const LbBurnOrder shuffled = weigh_best (&pile.burn);

    g_assert_cmpuint (shuffled.rig_before, ==, once.rig_before);
    g_assert_cmpuint (shuffled.n_jumps, ==, 0);
    if (once.stands)
      g_assert_cmpfloat_with_epsilon (shuffled.slack_utilisation, once.slack_utilisation, 1e-8);
  }
}

/* --- Single cases -------------------------------------------------------------------------- */

/* A leaning pile on strong bars is opened on the high side, and the lean holds to the last. */
static void
test_high_side_first (void)
{
  LbBaredCut pile;

  lb_bared_cut_init (&pile, LB_SHAPE_OCTAGON, 16 * INCH, 8, "#8");

  const LbBurnOrder best = weigh_best (&pile.burn);

  g_assert_true (best.stands);
  g_assert_cmpuint (best.rig_before, >, 1);
  g_assert_cmpfloat (pile.places[best.steps[0].bar].y, <, 0);
}

/* With no load any order will do, so it goes straight round, clockwise, from the side asked for. */
static void
test_ties (void)
{
  LbBaredCut pile;

  lb_bared_cut_init (&pile, LB_SHAPE_ROUND, 16 * INCH, 8, "#8");
  pile.burn.slack = pile.burn.held = (LbStubLoad){ 0 };
  for (guint bar = 0; bar < 8; bar++) {
    pile.burn.side_rad = 2 * G_PI * bar / 8;

    const LbBurnOrder best = weigh_best (&pile.burn);

    g_assert_cmpuint (best.steps[0].bar, ==, bar);
    g_assert_cmpuint (best.rig_before, ==, 6);
    g_assert_cmpfloat (best.slack_utilisation, ==, 0);
    for (guint i = 1; i < 8; i++)
      g_assert_cmpuint (best.steps[i].bar, ==, (bar + i) % 8);
  }
}

/* Bars 5 and 7 are gone, and what is left is used most as it stands. No first bar can make that
 * worse but 4 and 6, so of the others the one nearest to the high side is as good as any. */
static void
test_worst_as_it_stands (void)
{
  LbBaredCut pile;

  lb_bared_cut_init (&pile, LB_SHAPE_ROUND, 0.5, 8, "#11");
  pile.burn.left &= ~(LB_BAR (4) | LB_BAR (6));
  pile.burn.slack = pile.burn.held = (LbStubLoad){ .axial_n = 250e3 };

  const LbBurnOrder best = weigh_best (&pile.burn);

  g_assert_true (best.stands);
  g_assert_cmpuint (best.rig_before, ==, 2);
  g_assert_cmpfloat (best.steps[0].slack.utilisation, <, best.as_it_stands.utilisation);
  g_assert_cmpfloat (best.slack_utilisation, ==, best.as_it_stands.utilisation);
  g_assert_cmpuint (best.steps[0].bar, ==, 2);
}

static void
test_pinned (void)
{
  LbBaredCut pile;
  guint8 orders[2][LB_BARS_MAX];

  lb_bared_cut_init (&pile, LB_SHAPE_SQUARE, 20 * INCH, 12, "#11");
  pile.burn.pinned = LB_BAR (1) | LB_BAR (5) | LB_BAR (9);

  gsize n[2];

  n[0] = lb_burn_order_best (&pile.burn, orders[0]);
  n[1] = lb_burn_order_from_side (&pile.burn, orders[1]);
  for (int i = 0; i < 2; i++) {
    const LbBurnOrder weighed = weigh (&pile.burn, orders[i], n[i]);

    g_assert_cmpuint (n[i], ==, 12);
    g_assert_cmpuint (weighed.rig_before, <=, 10);
    for (int last = 9; last < 12; last++)
      g_assert_true (pile.burn.pinned & LB_BAR (orders[i][last]));
  }

  /* With no load three pinned bars hold until the hook must: before the first of them. */
  pile.burn.slack = (LbStubLoad){ 0 };
  g_assert_cmpuint (weigh_best (&pile.burn).rig_before, ==, 10);

  /* All pinned: the hook before the first. */
  pile.burn.pinned = lb_bar_set_all (12);
  g_assert_cmpuint (weigh_best (&pile.burn).rig_before, ==, 1);
}

/* The order by sides is that of the pile's own high side. */
static void
test_from_side (void)
{
  LbBaredCut pile;
  guint8 order[LB_BARS_MAX], expected[LB_BARS_MAX];

  for (int shape = 0; shape < LB_N_SHAPES; shape++) {
    lb_bared_cut_init (&pile, (LbShape) shape, 0.5, 12, "#8");
    g_assert_cmpuint (lb_burn_order_from_side (&pile.burn, order), ==, 12);
    lb_bar_ring_order (pile.places, 12, pile.burn.left, expected);
    g_assert_cmpmem (order, 12, expected, 12);
  }

  /* A quarter round: begins to the right of the lean. */
  lb_bared_cut_init (&pile, LB_SHAPE_ROUND, 0.5, 8, "#8");
  pile.burn.side_rad = G_PI / 2;
  lb_burn_order_from_side (&pile.burn, order);
  g_assert_cmpuint (order[0], ==, 2);
  g_assert_cmpuint (order[7], ==, 6);
}

static void
test_hopeless (void)
{
  LbBaredCut pile;

  /* Too heavy as it stands. */
  lb_bared_cut_init (&pile, LB_SHAPE_SQUARE, 20 * INCH, 8, "#3");
  const LbBurnOrder heavy = weigh_best (&pile.burn);
  g_assert_false (heavy.stands);
  g_assert_cmpuint (heavy.rig_before, ==, 1);
  g_assert_cmpfloat (heavy.slack_utilisation, >, 1);
  /* On the hook it still never stands on one face of the square while three bars are left. */
  g_assert_cmpuint (count_hinges (&heavy), ==, 3);

  /* On two bars, on one, on none. */
  for (guint n = 2; n < 3; n--) {
    pile.burn.left = lb_bar_set_all (n);

    const LbBurnOrder few = weigh_best (&pile.burn);

    g_assert_cmpuint (few.n_steps, ==, n);
    g_assert_cmpuint (few.rig_before, ==, n > 0 ? 1 : 0);
    g_assert_false (few.stands);
    g_assert_true (isnan (few.slack_utilisation));
  }
}

static void
test_jumps (void)
{
  LbBaredCut pile;

  lb_bared_cut_init (&pile, LB_SHAPE_ROUND, 0.4, 6, "#8");
  g_assert_cmpuint (weigh (&pile.burn, (guint8[]){ 0, 1, 5, 2, 4, 3 }, 6).n_jumps, ==, 0);
  g_assert_cmpuint (weigh (&pile.burn, (guint8[]){ 0, 2, 4, 1, 3, 5 }, 6).n_jumps, ==, 2);

  /* Over bars already gone is no jump. */
  pile.burn.left &= ~(LB_BAR (1) | LB_BAR (2));
  g_assert_cmpuint (weigh (&pile.burn, (guint8[]){ 0, 3, 4, 5 }, 4).n_jumps, ==, 0);
}

static void
test_refused (void)
{
  LbBaredCut pile;
  const struct
  {
    guint8 order[6];
    gsize n;
    const char *words;
  } cases[] = {
    { { 0, 1, 2, 3, 4, 6 }, 6, "Bar 7 is not" },
    { { 0, 1, 2, 3, 4, 4 }, 6, "Bar 5 comes twice" },
    { { 0, 1, 2, 3, 4 }, 5, "Bar 6 is left out" },
  };

  lb_bared_cut_init (&pile, LB_SHAPE_ROUND, 0.4, 6, "#8");
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (GError) error = NULL;
    LbBurnOrder weighed = { .n_steps = 7 };

    g_assert_false (lb_burn_order_weigh (&pile.burn, cases[i].order, cases[i].n, &weighed, &error));
    g_assert_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN);
    g_assert_nonnull (strstr (error->message, cases[i].words));
    g_assert_cmpuint (weighed.n_steps, ==, 7);
  }

  /* Strand has no order by bar rules. */
  guint8 order[LB_BARS_MAX];

  pile.cut.bar = lb_bar_find ("1/2 in strand 270");
  g_assert_cmpuint (lb_burn_order_best (&pile.burn, order), ==, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/burn-order/against-all-orders", test_against_all_orders);
  g_test_add_func ("/trade/burn-order/ends-on-the-hook", test_every_order_ends_on_the_hook);
  g_test_add_func ("/trade/burn-order/steps-are-holds", test_steps_are_holds);
  g_test_add_func ("/trade/burn-order/from-side-is-whole", test_from_side_is_whole);
  g_test_add_func ("/trade/burn-order/mirror", test_mirror);
  g_test_add_func ("/trade/burn-order/numbering", test_numbering);
  g_test_add_func ("/trade/burn-order/high-side-first", test_high_side_first);
  g_test_add_func ("/trade/burn-order/ties", test_ties);
  g_test_add_func ("/trade/burn-order/worst-as-it-stands", test_worst_as_it_stands);
  g_test_add_func ("/trade/burn-order/pinned", test_pinned);
  g_test_add_func ("/trade/burn-order/from-side", test_from_side);
  g_test_add_func ("/trade/burn-order/hopeless", test_hopeless);
  g_test_add_func ("/trade/burn-order/jumps", test_jumps);
  g_test_add_func ("/trade/burn-order/refused", test_refused);
  return g_test_run ();
}
