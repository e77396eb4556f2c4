/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/cut-plan.h"

#include <math.h>
#include <string.h>

static void
reckon (const LbPile *pile,
        LbBarSet burned,
        guint n_unplaced,
        const LbAssumptions *assumptions,
        LbCutPlan *out_plan)
{
  /* What no pile says, and the defaults do not either. */
  static const LbGround ground = {
    .n_layers = 1,
    .layers = { { .to_m = 30, .soil = LB_SOIL_OWN, .strength_pa = 1e4, .buoyant_kg_per_m3 = 900 } },
  };
  LbAssumptions with_crane = *assumptions;

  with_crane.value[LB_ASSUME_CRANE_CAPACITY] = 40000;
  with_crane.value[LB_ASSUME_SLING_RATING] = 10000;
  with_crane.value[LB_ASSUME_BED] = LB_ASSUME_BED_MUD;
  with_crane.value[LB_ASSUME_LIST] = 0.01;

  LbCutBasis basis = lb_cut_basis (&with_crane);

  basis.ground = &ground;
  lb_cut_plan_reckon (pile, burned, 0, n_unplaced, &basis, out_plan);
}

#define FOOT  0.3048
#define INCH  0.0254
#define POUND 0.45359237

/* A 16-in square pile, eight bars #8, 1:6 toward the east, head 10 ft over datum, mudline 31 ft
 * under it; cut 1 ft over the mudline, 30 ft down at low water. */
static void
example (LbPile *pile)
{
  lb_pile_init (pile);
  pile->unsaid = 0;
  pile->mark = "G7";
  pile->outline.width_m = 16 * INCH;
  pile->bar = lb_bar_find ("#8");
  pile->n_bars = 8;
  pile->batter = 1.0 / 6;
  pile->bearing_rad = G_PI_2;
  pile->head_m = 10 * FOOT;
  pile->mudline_m = -31 * FOOT;
  pile->toe_m = -60 * FOOT;
  pile->is_to_be_drawn = TRUE;
}

static double
shown (const LbCutPlan *plan, LbFigureId id)
{
  return lb_quantity_from_si (lb_figure_quantity (id), LB_UNITS_US, plan->figures[id].range.likely);
}

static gboolean
says (const LbCutPlan *plan, const char *key)
{
  for (gsize i = 0; i < plan->n_cautions; i++) {
    if (g_str_equal (plan->cautions[i]->key, key))
      return TRUE;
  }
  return FALSE;
}

static void
test_by_hand (void)
{
  LbAssumptions assumptions;
  LbCutPlan plan;
  LbPile pile;
  const double length_ft = 40 * sqrt (37) / 6;
  const double air_lb = length_ft * 256 / 144 * 155;

  example (&pile);
  lb_assumptions_init (&assumptions);
  assumptions.value[LB_ASSUME_HOSE_LOSS] = lb_quantity_to_si (LB_QUANTITY_PRESSURE_PER_LENGTH,
                                                              LB_UNITS_US, 10);
  reckon (&pile, 0, 0, &assumptions, &plan);

  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_TRUE_LENGTH), length_ft, 1e-9);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_LEAN), 9.4623, 1e-4);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_HEAD_OFFSET), 41.0 / 6, 1e-9);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_CUT_OFFSET), 40.0 / 6, 1e-9);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_CUT_DEPTH), 30, 1e-9);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_PNEUMO), 31, 1e-9);
  g_assert_cmpfloat_with_epsilon (plan.table_depth_m, 35 * FOOT, 1e-9);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_NO_STOP), 232, 1e-9);
  g_assert_cmpfloat (shown (&plan, LB_FIGURE_BARS_LEFT), ==, 8);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_STEEL), 6.32, 1e-9);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_TRIGGER), 158.0 / 60, 1e-9);
  g_assert_cmpfloat (shown (&plan, LB_FIGURE_RODS), ==, 4);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_BURN), 1058.0 / 60, 1e-9);
  /* 158 s / 0.85 at 24 cu ft a minute, times (104.7 + 13.35) / 104.7. */
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_OXYGEN),
                                  158 / 0.85 / 60 * 24 * 118.05 / 104.7, 1e-6);
  g_assert_cmpfloat (shown (&plan, LB_FIGURE_CYLINDERS), ==, 1);
  /* 90 + 13.35 + 20 = 123.35, rounded up. */
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_REGULATOR), 124, 1e-9);
  /* 17.6 min in a dive of 120 less 10. */
  g_assert_cmpfloat (shown (&plan, LB_FIGURE_DIVES), ==, 1);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_MASS_IN_AIR), air_lb, 1e-6);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_MASS_IN_WATER), air_lb * 91 / 155, 1e-6);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_HOOK_LOAD), air_lb + 400, 1e-6);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_SLING),
                                  (air_lb + 400) / 2 / (sqrt (3) / 2), 1e-6);

  g_assert_true (plan.is_battered);
  g_assert_cmpint (plan.slag_side, ==, LB_COMPASS_E);
  g_assert_cmpint (plan.lead_side, ==, LB_COMPASS_W);
  g_assert_cmpuint (plan.n_order, ==, 8);
  g_assert_null (plan.hold_missing);
  g_assert_cmpuint (plan.order[0], ==, plan.hold.steps[0].bar);
  g_assert_cmpfloat (plan.places[plan.order[0]].y, <, 0); /* the high side */
}

/* The price of another order than the figures': none for theirs typed out, and never a gain. */
static void
test_price_of_an_order (void)
{
  LbAssumptions assumptions;
  LbCutPlan plan, favoured;
  LbPile pile;
  g_autoptr (GString) same = g_string_new (NULL);

  example (&pile);
  lb_assumptions_init (&assumptions);
  assumptions.value[LB_ASSUME_HOLD_FACTOR] = 1.5;
  reckon (&pile, 0, 0, &assumptions, &favoured);
  g_assert_false (favoured.price.is_known);
  for (gsize i = 0; i < favoured.n_order; i++)
    g_string_append_printf (same, "%s%u", i > 0 ? "," : "", favoured.order[i] + 1u);

  pile.order = same->str;
  reckon (&pile, 0, 0, &assumptions, &plan);
  g_assert_true (plan.price.is_known);
  g_assert_cmpuint (plan.price.fewer, ==, 0);
  g_assert_cmpfloat (plan.price.chosen, ==, plan.price.favoured);

  /* The low side first: what is left hangs on the bars that are pulled. */
  pile.order = "1,2,8,3,7,4,6,5";
  reckon (&pile, 0, 0, &assumptions, &plan);
  g_assert_true (plan.price.is_known);
  g_assert_cmpuint (plan.price.fewer + plan.hold.rig_before, ==, favoured.hold.rig_before);
  g_assert_true (plan.price.fewer > 0 || plan.price.chosen >= plan.price.favoured);
}

static void
test_ranges_rise (void)
{
  LbAssumptions assumptions;
  LbCutPlan plan;
  LbPile pile;

  example (&pile);
  pile.outline.void_m = 8 * INCH;
  lb_assumptions_init (&assumptions);
  reckon (&pile, 0, 0, &assumptions, &plan);
  for (int id = 0; id < LB_N_FIGURES; id++) {
    const LbRange range = plan.figures[id].range;

    g_assert_cmpfloat (range.low, <=, range.likely);
    g_assert_cmpfloat (range.likely, <=, range.high);
  }
  /* A hollow piece may come up full of water. */
  g_assert_cmpfloat (plan.figures[LB_FIGURE_MASS_IN_AIR].range.high -
                       plan.figures[LB_FIGURE_MASS_IN_AIR].range.likely,
                     >, G_PI / 4 * 64 / 144 * 64 * 40 * POUND);
}

static void
test_missing_facts (void)
{
  LbAssumptions assumptions;

  lb_assumptions_init (&assumptions);
  for (int fact = 0; fact < 8; fact++) {
    LbCutPlan plan;
    LbPile pile;
    guint n_missing = 0;

    example (&pile);
    switch (fact) {
    case 0:
      pile.head_m = (double) NAN;
      break;
    case 1:
      pile.mudline_m = (double) NAN;
      break;
    case 2:
      pile.mudline_m = (double) NAN;
      pile.cut_m = -30 * FOOT;
      break;
    case 3:
      pile.outline.width_m = 0;
      break;
    case 4:
      pile.bar = NULL;
      break;
    case 5:
      pile.outline.void_m = pile.outline.width_m;
      break;
    case 6:
      pile.n_bars = 0;
      break;
    default:
      pile.toe_m = (double) NAN;
      break;
    }
    reckon (&pile, 0, 0, &assumptions, &plan);
    for (int id = 0; id < LB_N_FIGURES; id++) {
      const gboolean is_missing = lb_figure_missing ((LbFigureId) id, &pile) != NULL;

      g_assert_true (is_missing == !!isnan (plan.figures[id].range.likely));
      g_assert_true (is_missing == !!isnan (plan.figures[id].range.low));
      g_assert_true (is_missing == !!isnan (plan.figures[id].range.high));
      n_missing += is_missing;
    }
    g_assert_cmpuint (n_missing, >, 0);
    g_assert_true (says (&plan, "bars-unknown") == (fact == 4 || fact == 6));
    g_assert_true (says (&plan, "limit-unknown") == (fact == 1));
  }
}

/* Half way down its taper the pile is half way between its widths; the piece is lighter for it and the
 * bars stand closer. Without the toe nobody can say. */
static void
test_tapered (void)
{
  LbAssumptions assumptions;
  LbCutPlan even, tapered, unknown;
  LbPile pile;

  example (&pile);
  lb_assumptions_init (&assumptions);
  pile.cut_m = -25 * FOOT;
  reckon (&pile, 0, 0, &assumptions, &even);
  pile.tip_width_m = 8 * INCH;
  reckon (&pile, 0, 0, &assumptions, &tapered);

  g_assert_cmpfloat_with_epsilon (tapered.outline.width_m, 12 * INCH, 1e-12);
  /* h/3 (A1 + A2 + √(A1 A2)) of 256, 144 and 192 sq in beside 256. */
  g_assert_cmpfloat_with_epsilon (shown (&tapered, LB_FIGURE_MASS_IN_AIR) /
                                    shown (&even, LB_FIGURE_MASS_IN_AIR),
                                  592.0 / 768, 1e-9);
  g_assert_cmpfloat_with_epsilon (even.places[0].y, 5 * INCH, 1e-12);
  g_assert_cmpfloat_with_epsilon (tapered.places[0].y, 3 * INCH, 1e-12);
  g_assert_null (tapered.hold_missing);

  /* A length is as heavy as the widest, so there are no fewer than the weights at the head ask for. */
  assumptions.value[LB_ASSUME_CRANE_CAPACITY] = 2000;
  reckon (&pile, 0, 0, &assumptions, &tapered);
  pile.tip_width_m = (double) NAN;
  reckon (&pile, 0, 0, &assumptions, &even);
  g_assert_cmpfloat (shown (&tapered, LB_FIGURE_LENGTHS), ==, shown (&even, LB_FIGURE_LENGTHS));

  pile.tip_width_m = 8 * INCH;
  pile.toe_m = (double) NAN;
  reckon (&pile, 0, 0, &assumptions, &unknown);
  g_assert_true (isnan (shown (&unknown, LB_FIGURE_MASS_IN_AIR)));
  g_assert_nonnull (lb_figure_missing (LB_FIGURE_MASS_IN_AIR, &pile));
  g_assert_nonnull (unknown.hold_missing);
}

/* Bars found gone are as if they had never been: a burner who keeps to the order found without them is
 * not sent to the other side. */
static void
test_found_gone (void)
{
  const LbBarSet gone = LB_BAR (2) | LB_BAR (7);
  LbAssumptions assumptions;
  LbCutBasis basis;
  LbCutPlan before, plan;
  LbBarSet burned = gone;
  LbPile pile;

  example (&pile);
  pile.n_bars = 12;
  lb_assumptions_init (&assumptions);
  basis = lb_cut_basis (&assumptions);
  lb_cut_plan_reckon (&pile, gone, gone, 0, &basis, &before);
  g_assert_null (before.hold_missing);
  g_assert_cmphex (before.gone, ==, gone);
  g_assert_cmpuint (before.n_order, ==, 10);
  g_assert_cmpfloat (shown (&before, LB_FIGURE_BARS_LEFT), ==, 10);
  for (gsize i = 0; i + 1 < before.n_order; i++) {
    burned |= LB_BAR (before.order[i]);
    lb_cut_plan_reckon (&pile, burned, gone, 0, &basis, &plan);
    g_assert_cmpmem (plan.order, plan.n_order, before.order + i + 1, before.n_order - i - 1);
  }
}

/* Stressed strand holds by rules of its own: no bar figure is taken for it, however it stands, and the
 * plan warns of what it does when it is cut. */
static void
test_prestressed (void)
{
  static const char *const layouts[] = { "", "3 on each face", "4 outer, 4 inner at 101.6" };
  LbAssumptions assumptions;
  gsize n_sizes, n_strands = 0;
  const LbBar *sizes = lb_bar_table (&n_sizes);

  lb_assumptions_init (&assumptions);
  for (gsize i = 0; i < n_sizes; i++) {
    for (gsize l = 0; l < G_N_ELEMENTS (layouts) && sizes[i].kind == LB_BAR_STRAND; l++) {
      LbCutPlan plan;
      LbPile pile;

      n_strands++;
      example (&pile);
      pile.bar = &sizes[i];
      pile.bar_places = layouts[l];
      reckon (&pile, 0, 0, &assumptions, &plan);
      g_assert_nonnull (plan.hold_missing);
      g_assert_nonnull (strstr (plan.hold_missing, "Strand"));
      g_assert_true (isnan (shown (&plan, LB_FIGURE_RIG_BEFORE)));
      g_assert_true (isnan (shown (&plan, LB_FIGURE_HOLD_STRESS)));
      g_assert_cmpuint (plan.hold.n_steps, ==, 0);
      g_assert_true (says (&plan, "strand"));
      g_assert_false (says (&plan, "rig-before"));
      g_assert_true (plan.is_battered && says (&plan, "rig-first"));
    }
  }
  g_assert_cmpuint (n_strands, >, 0);
}

static void
test_deeper_is_harder (void)
{
  LbAssumptions assumptions;
  LbCutPlan before, plan;
  LbPile pile;

  example (&pile);
  lb_assumptions_init (&assumptions);
  pile.cut_m = 0;
  reckon (&pile, 0, 0, &assumptions, &before);
  for (int feet = 1; feet < 59; feet++) {
    pile.cut_m = -feet * FOOT;
    reckon (&pile, 0, 0, &assumptions, &plan);
    g_assert_cmpfloat (shown (&plan, LB_FIGURE_REGULATOR), >=,
                       shown (&before, LB_FIGURE_REGULATOR));
    g_assert_cmpfloat (shown (&plan, LB_FIGURE_OXYGEN), >, shown (&before, LB_FIGURE_OXYGEN));
    g_assert_cmpfloat (shown (&plan, LB_FIGURE_NO_STOP), <=, shown (&before, LB_FIGURE_NO_STOP));
    g_assert_cmpfloat (shown (&plan, LB_FIGURE_HOOK_LOAD), >, shown (&before, LB_FIGURE_HOOK_LOAD));
    before = plan;
  }
}

static void
test_bars_burned (void)
{
  LbAssumptions assumptions;
  LbCutPlan plan;
  LbPile pile;

  example (&pile);
  lb_assumptions_init (&assumptions);
  reckon (&pile, LB_BAR (4) | LB_BAR (5), 1, &assumptions, &plan);
  g_assert_cmpfloat (shown (&plan, LB_FIGURE_BARS_LEFT), ==, 5);
  g_assert_cmpfloat_with_epsilon (shown (&plan, LB_FIGURE_STEEL), 5 * 0.79, 1e-9);
  g_assert_cmpuint (plan.n_order, ==, 6);
  g_assert_cmpuint (plan.order[0], ==, 3);
  g_assert_true (says (&plan, "rig-first"));

  reckon (&pile, lb_bar_set_all (8), 3, &assumptions, &plan);
  for (int id = LB_FIGURE_BARS_LEFT; id <= LB_FIGURE_CYLINDERS; id++)
    g_assert_cmpfloat (plan.figures[id].range.high, ==, 0);
  g_assert_cmpfloat (plan.figures[LB_FIGURE_DIVES].range.high, ==, 0);
  g_assert_cmpuint (plan.n_order, ==, 0);
  g_assert_false (says (&plan, "rig-first"));
  g_assert_false (says (&plan, "switch-open"));
  g_assert_true (says (&plan, "under-lean"));
}

/* The plan for bars of such a yield, burned in the order of @like. */
static void
reckon_of_yield (const LbPile *pile,
                 const LbAssumptions *assumptions,
                 double ksi,
                 const LbCutPlan *like,
                 LbCutPlan *out_plan)
{
  g_autoptr (GString) order = g_string_new (NULL);
  LbAssumptions known = *assumptions;
  LbPile ordered = *pile;

  for (gsize i = 0; i < like->n_order; i++)
    g_string_append_printf (order, "%s%u", i > 0 ? ", " : "", like->order[i] + 1u);
  ordered.order = order->str;
  known.value[LB_ASSUME_STEEL_YIELD] = lb_quantity_to_si (LB_QUANTITY_STRESS, LB_UNITS_US, ksi);
  reckon (&ordered, 0, 0, &known, out_plan);
}

/* Without year or yield the figures go by the weakest steel, and their other end is the plan of the
 * strongest; a year or a yield leaves one value. */
static void
test_steel_not_known (void)
{
  static const struct
  {
    double head_ft, factor, batter;
  } cases[] = { { 10, 3, 1.0 / 6 }, { 0, 1, 0.1 }, { 10, 1, 1.0 / 12 }, { -20, 1.5, 0.02 } };
  guint n_wide = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    LbAssumptions assumptions;
    LbCutPlan plan, weak, strong;
    LbPile pile;

    example (&pile);
    pile.head_m = cases[i].head_ft * FOOT;
    pile.batter = cases[i].batter;
    lb_assumptions_init (&assumptions);
    assumptions.value[LB_ASSUME_HOLD_FACTOR] = cases[i].factor;
    reckon (&pile, 0, 0, &assumptions, &plan);
    reckon_of_yield (&pile, &assumptions, 33, &plan, &weak);
    reckon_of_yield (&pile, &assumptions, 60, &plan, &strong);

    const LbRange rig = plan.figures[LB_FIGURE_RIG_BEFORE].range;
    const double late = strong.figures[LB_FIGURE_RIG_BEFORE].range.likely;
    const LbRange stress = plan.figures[LB_FIGURE_HOLD_STRESS].range;

    g_assert_cmpfloat (rig.likely, ==, weak.figures[LB_FIGURE_RIG_BEFORE].range.likely);
    g_assert_cmpfloat (rig.low, ==, rig.likely);
    g_assert_cmpfloat (rig.high, ==, late);
    g_assert_cmpfloat (stress.likely, ==, weak.figures[LB_FIGURE_HOLD_STRESS].range.likely);
    g_assert_cmpfloat (stress.high, ==, strong.figures[LB_FIGURE_HOLD_STRESS].range.likely);
    n_wide += rig.high > rig.low ? 1 : 0;

    g_assert_cmpfloat (strong.figures[LB_FIGURE_RIG_BEFORE].range.high, ==, late);
    assumptions.value[LB_ASSUME_YEAR_BUILT] = 1938;
    reckon (&pile, 0, 0, &assumptions, &plan);
    g_assert_cmpfloat (plan.figures[LB_FIGURE_RIG_BEFORE].range.high, ==, rig.likely);
  }
  g_assert_cmpuint (n_wide, >, 1);
}

/* The load heels the barge, the heel swings the boom out to a row that carries less; over what the barge
 * bears there is no capacity, and on land nothing of it is told. */
static void
test_barge_heels (void)
{
  static const LbCraneChart chart = { .n_rows = 2, .rows = { { 12.5, 4e5 }, { 16, 1e5 } } };
  LbAssumptions assumptions;
  LbCutPlan level, heeled;
  LbCutBasis basis;
  LbPile pile;
  double *value = assumptions.value;

  example (&pile);
  lb_assumptions_init (&assumptions);
  value[LB_ASSUME_CRANE_RADIUS] = 12;
  value[LB_ASSUME_TIP_HEIGHT] = 30;
  basis = lb_cut_basis (&assumptions);
  basis.chart = &chart;
  basis.crane = lb_crane_here (&assumptions, &chart);
  lb_cut_plan_reckon (&pile, 0, 0, 0, &basis, &level);
  g_assert_cmpfloat (level.crane.capacity_n, ==, 4e5);
  g_assert_true (isnan (level.figures[LB_FIGURE_HEEL].range.likely));

  value[LB_ASSUME_BARGE_LENGTH] = 30;
  value[LB_ASSUME_BARGE_BEAM] = 12;
  value[LB_ASSUME_BARGE_DRAFT] = 1.2;
  value[LB_ASSUME_BARGE_FREEBOARD] = 1;
  value[LB_ASSUME_BARGE_GRAVITY] = 5;
  lb_cut_plan_reckon (&pile, 0, 0, 0, &basis, &heeled);
  const LbRange list = heeled.figures[LB_FIGURE_HEEL].range;

  g_assert_cmpfloat (list.low, <, list.likely);
  g_assert_cmpfloat (list.likely, <, list.high);
  g_assert_cmpfloat_with_epsilon (heeled.crane.radius_m, 12 + 30 * tan (list.high), 1e-9);
  g_assert_cmpfloat (heeled.crane.radius_m, >, 12.5);
  g_assert_cmpfloat (heeled.crane.capacity_n, ==, 1e5);

  value[LB_ASSUME_BARGE_FREEBOARD] = 0.01;
  lb_cut_plan_reckon (&pile, 0, 0, 0, &basis, &heeled);
  g_assert_cmpint (heeled.crane.from, ==, LB_CAPACITY_LIST_OVER);
  g_assert_true (says (&heeled, "list-over"));

  value[LB_ASSUME_ON_BARGE] = LB_ASSUME_NO;
  lb_cut_plan_reckon (&pile, 0, 0, 0, &basis, &heeled);
  g_assert_false (lb_cut_plan_tells (&heeled, LB_FIGURE_HEEL));
  g_assert_cmpfloat (heeled.crane.capacity_n, ==, 4e5);
}

static void
test_tags (void)
{
  LbAssumptions assumptions;
  LbCutPlan plan;
  LbPile pile;

  example (&pile);
  lb_assumptions_init (&assumptions);
  reckon (&pile, 0, 0, &assumptions, &plan);
  g_assert_cmpint (plan.figures[LB_FIGURE_LEAN].tag, ==, LB_TAG_COMPUTED);
  g_assert_cmpint (plan.figures[LB_FIGURE_TRUE_LENGTH].tag, ==, LB_TAG_COMMON_PRACTICE);
  g_assert_cmpint (plan.figures[LB_FIGURE_MASS_IN_WATER].tag, ==, LB_TAG_MEMORY);
  g_assert_cmpint (plan.figures[LB_FIGURE_MASS_IN_AIR].tag, ==, LB_TAG_COMMON_PRACTICE);

  pile.cut_m = -30 * FOOT;
  pile.bar = lb_bar_find ("1/2 in strand 270");
  reckon (&pile, 0, 0, &assumptions, &plan);
  g_assert_cmpint (plan.figures[LB_FIGURE_TRUE_LENGTH].tag, ==, LB_TAG_COMPUTED);
  g_assert_cmpint (plan.figures[LB_FIGURE_STEEL].tag, ==, LB_TAG_MEMORY);

  /* What the crew measured itself is as good as what is reckoned. */
  g_assert_cmpint (plan.figures[LB_FIGURE_CUT_DEPTH].tag, ==, LB_TAG_COMMON_PRACTICE);
  g_assert_true (lb_assumptions_set (&assumptions, LB_ASSUME_WATER_LEVEL, 0.5, NULL));
  reckon (&pile, 0, 0, &assumptions, &plan);
  g_assert_cmpint (plan.figures[LB_FIGURE_CUT_DEPTH].tag, ==, LB_TAG_COMPUTED);
}

static void
test_keys (void)
{
  for (int a = 0; a < LB_N_FIGURES; a++) {
    g_assert_nonnull (lb_figure_title ((LbFigureId) a));
    for (int b = 0; b < a; b++)
      g_assert_cmpstr (lb_figure_key ((LbFigureId) a), !=, lb_figure_key ((LbFigureId) b));
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/cut-plan/by-hand", test_by_hand);
  g_test_add_func ("/trade/cut-plan/ranges-rise", test_ranges_rise);
  g_test_add_func ("/trade/cut-plan/missing-facts", test_missing_facts);
  g_test_add_func ("/trade/cut-plan/deeper-is-harder", test_deeper_is_harder);
  g_test_add_func ("/trade/cut-plan/tapered", test_tapered);
  g_test_add_func ("/trade/cut-plan/found-gone", test_found_gone);
  g_test_add_func ("/trade/cut-plan/prestressed", test_prestressed);
  g_test_add_func ("/trade/cut-plan/bars-burned", test_bars_burned);
  g_test_add_func ("/trade/cut-plan/price-of-an-order", test_price_of_an_order);
  g_test_add_func ("/trade/cut-plan/steel-not-known", test_steel_not_known);
  g_test_add_func ("/trade/cut-plan/barge-heels", test_barge_heels);
  g_test_add_func ("/trade/cut-plan/tags", test_tags);
  g_test_add_func ("/trade/cut-plan/keys", test_keys);
  return g_test_run ();
}
