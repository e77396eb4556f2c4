/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The steps of a cut, held against the plan's own sums and against the order as it was weighed. */
#include "trade/cut-steps.h"

#include "trade/pile-hold.h"

#include <math.h>

#define FOOT 0.3048
#define INCH 0.0254

typedef struct
{
  LbAssumptions assumptions;
  LbPile pile;
  LbCutBasis basis;
  LbCutPlan plan;
  LbCutSteps steps;
} Case;

/* A 16-in octagon, eight bars #8, 1:4, forty feet of it over a cut 30 ft down. */
static void
case_init (Case *it)
{
  lb_assumptions_init (&it->assumptions);
  lb_pile_init (&it->pile);
  it->pile.unsaid = 0;
  it->pile.outline = (LbOutline){ LB_SHAPE_OCTAGON, 16 * INCH, 0 };
  it->pile.bar = lb_bar_find ("#8");
  it->pile.n_bars = 8;
  it->pile.batter = 0.25;
  it->pile.head_m = 10 * FOOT;
  it->pile.mudline_m = -31 * FOOT;
  it->pile.cut_m = -30 * FOOT;
}

static gboolean
reckon (Case *it, LbBarSet burned, guint n_unplaced)
{
  it->basis = lb_cut_basis (&it->assumptions);
  lb_cut_plan_reckon (&it->pile, burned, 0, n_unplaced, &it->basis, &it->plan);
  return lb_cut_steps_reckon (&it->pile, &it->basis, &it->plan, &it->steps);
}

static void
test_sums (void)
{
  Case it;

  for (guint n_bars = 1; n_bars <= LB_BARS_MAX; n_bars += 7) {
    case_init (&it);
    it.pile.n_bars = n_bars;
    g_assert_true (reckon (&it, 0, 0));
    g_assert_cmpuint (it.steps.n_steps, ==, n_bars);

    const double burn_s = it.plan.figures[LB_FIGURE_BURN].range.likely;
    LbBarSet seen = 0;
    double sum_s = 0;

    for (gsize i = 0; i < n_bars; i++) {
      sum_s += it.steps.steps[i].takes_s;
      g_assert_cmpfloat_with_epsilon (it.steps.steps[i].total_s, sum_s, 1e-6);
      seen |= LB_BAR (it.steps.steps[i].bar);
    }
    g_assert_cmpfloat_with_epsilon (sum_s, burn_s, 1e-6);
    g_assert_cmpuint (seen, ==, lb_bar_set_all (n_bars));
    /* The last cylinder on line is the last that the plan counts. */
    g_assert_cmpfloat (it.steps.steps[n_bars - 1].cylinder, ==,
                       it.plan.figures[LB_FIGURE_CYLINDERS].range.likely);
  }
}

static void
test_hook_comes_before_its_bar (void)
{
  Case it;
  gsize n_hooks = 0;

  case_init (&it);
  g_assert_true (reckon (&it, 0, 0));
  g_assert_null (it.plan.hold_missing);
  g_assert_cmpuint (it.plan.hold.rig_before, >, 0);
  for (gsize i = 0; i < it.steps.n_steps; i++) {
    n_hooks += it.steps.steps[i].needs_hook;
    g_assert_true (it.steps.steps[i].needs_hook == (i + 1 == it.plan.hold.rig_before));
  }
  g_assert_cmpuint (n_hooks, ==, 1);
}

/* Two bars and a half in one dive: two are burned in each, and none is left half burned. */
static void
test_dives_of_whole_bars (void)
{
  Case it;
  double each_s;

  case_init (&it);
  g_assert_true (reckon (&it, 0, 0));
  g_assert_cmpuint (it.steps.n_dives, ==, 1);
  each_s = it.steps.steps[0].takes_s;

  it.assumptions.value[LB_ASSUME_DIVE_LIMIT] = it.assumptions.value[LB_ASSUME_DIVE_SETUP] +
                                               2.5 * each_s;
  g_assert_true (reckon (&it, 0, 0));
  g_assert_cmpuint (it.steps.n_dives, ==, 4);
  for (gsize i = 0; i < 8; i++) {
    g_assert_cmpuint (it.steps.steps[i].dive, ==, i / 2 + 1);
    g_assert_true (it.steps.steps[i].starts_dive == (i > 0 && i % 2 == 0));
  }

  /* Exactly two bars are two. */
  it.assumptions.value[LB_ASSUME_DIVE_LIMIT] = it.assumptions.value[LB_ASSUME_DIVE_SETUP] +
                                               2 * each_s;
  g_assert_true (reckon (&it, 0, 0));
  g_assert_cmpuint (it.steps.n_dives, ==, 4);

  /* A bar longer than a dive has one to itself. */
  it.assumptions.value[LB_ASSUME_DIVE_LIMIT] = it.assumptions.value[LB_ASSUME_DIVE_SETUP] +
                                               0.5 * each_s;
  g_assert_true (reckon (&it, 0, 0));
  g_assert_cmpuint (it.steps.n_dives, ==, 8);

  /* No time at all, and a dry cut, have none. */
  it.assumptions.value[LB_ASSUME_DIVE_LIMIT] = it.assumptions.value[LB_ASSUME_DIVE_SETUP];
  g_assert_true (reckon (&it, 0, 0));
  g_assert_cmpuint (it.steps.n_dives, ==, 0);
  it.pile.cut_m = 5 * FOOT;
  g_assert_true (reckon (&it, 0, 0));
  g_assert_cmpuint (it.steps.n_dives, ==, 0);
  g_assert_cmpuint (it.steps.steps[7].dive, ==, 0);
}

/* A cylinder that gives three bars and a little is changed within the fourth. */
static void
test_changeovers (void)
{
  Case it;

  case_init (&it);
  reckon (&it, 0, 0);
  it.basis.cylinder_gas_m3 = it.plan.figures[LB_FIGURE_OXYGEN].range.likely * 3.1 / 8;
  g_assert_true (lb_cut_steps_reckon (&it.pile, &it.basis, &it.plan, &it.steps));

  static const guint on_line[] = { 1, 1, 1, 2, 2, 2, 3, 3 };

  for (gsize i = 0; i < 8; i++) {
    g_assert_cmpuint (it.steps.steps[i].cylinder, ==, on_line[i]);
    g_assert_true (it.steps.steps[i].changes_cylinder == (i == 3 || i == 6));
  }
}

static void
test_no_order (void)
{
  Case it;

  case_init (&it);
  g_assert_false (reckon (&it, 0, 2));
  g_assert_cmpuint (it.steps.n_steps, ==, 0);
  g_assert_false (reckon (&it, lb_bar_set_all (8), 0));
  it.pile.bar = lb_bar_find ("1/2 in strand 270");
  g_assert_false (reckon (&it, 0, 0));
  /* Without a size the minutes are those half way between the sizes that it may be. */
  it.pile.bar = NULL;
  g_assert_true (reckon (&it, 0, 0));
  g_assert_cmpfloat (it.steps.steps[7].total_s, ==, it.plan.figures[LB_FIGURE_BURN].range.likely);
  g_assert_cmpuint (it.steps.n_dives, >, 0);
  it.pile.n_bars = 0;
  g_assert_false (reckon (&it, 0, 0));
}

static gboolean
get_shares (const Case *it, LbBarSet burned, gsize n_done, LbBarShares *out_shares)
{
  return lb_pile_hold_shares (&it->pile, it->plan.places, burned, &it->basis, &it->plan.hold,
                              n_done, out_shares);
}

/* What each bar bears never says another thing than the order that was weighed. */
static void
test_shares_are_those_of_the_order (void)
{
  static const guint counts[] = { 4, 8, 12, 20 };
  Case it;
  LbBarShares shares;

  for (gsize c = 0; c < G_N_ELEMENTS (counts); c++) {
    for (guint n_gone = 0; n_gone < 2; n_gone++) {
      const LbBarSet burned = n_gone > 0 ? LB_BAR (counts[c] / 2) : 0;

      case_init (&it);
      it.pile.n_bars = counts[c];
      g_assert_true (reckon (&it, burned, 0));
      g_assert_null (it.plan.hold_missing);

      const LbBurnOrder *hold = &it.plan.hold;

      g_assert_true (get_shares (&it, burned, 0, &shares));
      g_assert_false (shares.is_held);
      g_assert_cmpfloat_with_epsilon (shares.greatest, hold->as_it_stands.utilisation, 1e-9);
      for (gsize i = 0; i < hold->n_steps; i++) {
        const LbBurnStep *step = &hold->steps[i];
        const gboolean is_held = hold->rig_before > 0 && i + 1 >= hold->rig_before;
        const double expected = is_held ? step->held.utilisation : step->slack.utilisation;

        g_assert_true (get_shares (&it, burned, i + 1, &shares));
        g_assert_true (shares.is_held == is_held);
        g_assert_true (shares.is_hinge == step->is_hinge);
        g_assert_cmpuint (lb_bar_set_count (shares.left), ==, step->n_left);
        g_assert_cmpuint (shares.left & LB_BAR (step->bar), ==, 0);
        if (step->is_hinge) {
          g_assert_true (isnan (shares.greatest));
          continue;
        }
        g_assert_cmpfloat_with_epsilon (shares.greatest, expected, 1e-9);
        g_assert_cmpfloat (shares.share[shares.governing], ==, shares.greatest);
        for (guint bar = 0; bar < counts[c]; bar++)
          g_assert_true (isnan (shares.share[bar]) == ((shares.left & LB_BAR (bar)) == 0));
      }
    }
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cut-steps/sums", test_sums);
  g_test_add_func ("/cut-steps/hook", test_hook_comes_before_its_bar);
  g_test_add_func ("/cut-steps/dives", test_dives_of_whole_bars);
  g_test_add_func ("/cut-steps/changeovers", test_changeovers);
  g_test_add_func ("/cut-steps/no-order", test_no_order);
  g_test_add_func ("/cut-steps/shares", test_shares_are_those_of_the_order);
  return g_test_run ();
}
