/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Each condition of the table of cautions, met and not met; and how the rows of a plan stand. */
#include "trade/plan-cautions.h"

#include "chance-cut.h"

#include <math.h>

#define FOOT 0.3048
#define INCH 0.0254
#define KNOT (1852.0 / 3600)
#define PSI  6894.757293168

typedef struct
{
  LbPile pile;
  LbAssumptions assumptions;
  LbBarSet burned;
  guint n_unplaced;
  LbCraneChart chart;
  const LbGround *ground;
  LbCutPlan plan;
} Cut;

/* A 16-in square pile, eight bars #8, plumb in still water, cut 30 ft down: nothing out of the
 * ordinary. */
static void
begin (Cut *cut)
{
  *cut = (Cut){ 0 };
  lb_pile_init (&cut->pile);
  cut->pile.unsaid = 0;
  cut->pile.mark = "G7";
  cut->pile.outline.width_m = 16 * INCH;
  cut->pile.bar = lb_bar_find ("#8");
  cut->pile.n_bars = 8;
  cut->pile.bearing_rad = G_PI_2;
  cut->pile.head_m = 10 * FOOT;
  cut->pile.cut_m = -30 * FOOT;
  cut->pile.mudline_m = -31 * FOOT;
  cut->pile.toe_m = -60 * FOOT;
  lb_assumptions_init (&cut->assumptions);
  cut->assumptions.value[LB_ASSUME_CURRENT] = 0;
}

static void
reckon (Cut *cut)
{
  LbCutBasis basis = lb_cut_basis (&cut->assumptions);

  basis.crane = lb_crane_here (&cut->assumptions, &cut->chart);
  basis.ground = cut->ground;
  lb_cut_plan_reckon (&cut->pile, cut->burned, 0, cut->n_unplaced, &basis, &cut->plan);
}

/* What makes a cut unlike that one. */

static void
plain (Cut *cut)
{
}

static void
lean (Cut *cut)
{
  cut->pile.batter = 0.25;
}

static void
lean_burned (Cut *cut)
{
  lean (cut);
  cut->burned = lb_bar_set_all (8);
}

static void
lean_strand (Cut *cut)
{
  lean (cut);
  cut->pile.bar = lb_bar_find ("1/2 in strand 270");
}

/* A stub of 10 ft leans little enough for its bars to hold it for a while. */
static void
lean_short (Cut *cut)
{
  cut->pile.batter = 1.0 / 6;
  cut->pile.head_m = -20 * FOOT;
}

/* So little that any three bars hold it: only two, in one line, do not. */
static void
light (Cut *cut)
{
  cut->pile.head_m = -29 * FOOT;
  cut->assumptions.value[LB_ASSUME_HOLD_FACTOR] = 1;
}

static void
burned (Cut *cut)
{
  cut->burned = lb_bar_set_all (8);
}

static void
counted (Cut *cut)
{
  lean (cut);
  cut->n_unplaced = 1;
}

static void
strand (Cut *cut)
{
  cut->pile.bar = lb_bar_find ("1/2 in strand 270");
}

static void
hollow (Cut *cut)
{
  cut->pile.outline.void_m = 8 * INCH;
}

static void
no_size (Cut *cut)
{
  cut->pile.bar = NULL;
}

static void
no_batter (Cut *cut)
{
  cut->pile.unsaid = 1u << LB_FACT_BATTER | 1u << LB_FACT_BEARING;
}

static void
no_bearing (Cut *cut)
{
  cut->pile.unsaid = 1u << LB_FACT_BEARING;
}

static void
no_count (Cut *cut)
{
  cut->pile.n_bars = 0;
}

static void
core (Cut *cut)
{
  cut->pile.concrete = LB_CONCRETE_CORE;
}

static void
kept (Cut *cut)
{
  cut->pile.pinned = LB_BAR (0) | LB_BAR (2) | LB_BAR (3) | LB_BAR (5) | LB_BAR (6);
}

static void
dry (Cut *cut)
{
  cut->pile.cut_m = 5 * FOOT;
}

static void
awash (Cut *cut)
{
  cut->pile.cut_m = 2 * FOOT;
}

static void
no_depth (Cut *cut)
{
  cut->pile.cut_m = cut->pile.mudline_m = (double) NAN;
}

static void
no_head (Cut *cut)
{
  cut->pile.head_m = (double) NAN;
}

/* 158 s of trigger and 12 × 75 s of strikes is 18 min; slow, 316 s and 17 × 180 s, 56 min. */
static void
short_dives (Cut *cut)
{
  cut->assumptions.value[LB_ASSUME_DIVE_LIMIT] = 20 * 60;
}

static void
middling_dives (Cut *cut)
{
  cut->assumptions.value[LB_ASSUME_DIVE_LIMIT] = 40 * 60;
}

static void
no_time (Cut *cut)
{
  cut->assumptions.value[LB_ASSUME_DIVE_LIMIT] = 10 * 60;
}

static void
swift (Cut *cut)
{
  cut->assumptions.value[LB_ASSUME_CURRENT] = 1.1 * KNOT;
}

static void
swift_dry (Cut *cut)
{
  swift (cut);
  dry (cut);
}

static void
swift_allowed (Cut *cut)
{
  swift (cut);
  cut->assumptions.value[LB_ASSUME_CURRENT_LIMIT] = 1.2 * KNOT;
}

/* 10.37 × 500 ft × 150 A / 105 600 is 7.4 V; 200 ft, 2.9 V. */
static void
long_leads (Cut *cut)
{
  lb_assumptions_set (&cut->assumptions, LB_ASSUME_LEAD_LENGTH, 500 * FOOT, NULL);
}

static void
short_leads (Cut *cut)
{
  lb_assumptions_set (&cut->assumptions, LB_ASSUME_LEAD_LENGTH, 200 * FOOT, NULL);
}

static void
fat_leads (Cut *cut)
{
  cut->assumptions.value[LB_ASSUME_LEAD_SIZE] *= 2;
}

/* 90 + 13.35 psi and the hose stand at the regulator. */
static void
low_residual (Cut *cut)
{
  cut->assumptions.value[LB_ASSUME_CYLINDER_RESIDUAL] = 100 * PSI;
}

static void
flat_sling (Cut *cut)
{
  cut->assumptions.value[LB_ASSUME_SLING_ANGLE] = 40 * G_PI / 180;
}

static void
one_leg (Cut *cut)
{
  flat_sling (cut);
  cut->assumptions.value[LB_ASSUME_SLING_LEGS] = 1;
}

/* By the heavy end of the load. */
static void
share_sling (Cut *cut, double share)
{
  reckon (cut);
  cut->assumptions.value[LB_ASSUME_SLING_RATING] = cut->plan.figures[LB_FIGURE_SLING].range.high /
                                                   9.80665 / share;
}

static void
weak_sling (Cut *cut)
{
  share_sling (cut, 1.01);
}

static void
strong_sling (Cut *cut)
{
  share_sling (cut, 0.99);
}

/* At 100° a choke keeps 87 % of the rating. */
static void
choked_sling (Cut *cut)
{
  share_sling (cut, 0.88);
  cut->assumptions.value[LB_ASSUME_CHOKE_ANGLE] = 100 * G_PI / 180;
}

static void
on_mud (Cut *cut)
{
  cut->assumptions.value[LB_ASSUME_BED] = LB_ASSUME_BED_MUD;
}

static void
no_head_on_mud (Cut *cut)
{
  on_mud (cut);
  no_head (cut);
}

/* The toe is 29 ft under the mudline. */
static void
in_ground (Cut *cut)
{
  static const LbGround ground = {
    .n_layers = 1,
    .layers = { { .to_m = 30 * FOOT, .soil = LB_SOIL_SAND, .buoyant_kg_per_m3 = 900 } },
  };

  cut->ground = &ground;
  cut->pile.is_to_be_drawn = TRUE;
}

static void
in_ground_to_cut (Cut *cut)
{
  in_ground (cut);
  cut->pile.is_to_be_drawn = FALSE;
}

static void
burned_in_ground (Cut *cut)
{
  in_ground (cut);
  cut->burned = LB_BAR (3);
}

static void
lean_anywhere (Cut *cut)
{
  lean (cut);
  no_bearing (cut);
}

static void
through_ground (Cut *cut)
{
  in_ground (cut);
  cut->pile.toe_m = -62 * FOOT;
}

static void
on_land (Cut *cut)
{
  cut->assumptions.value[LB_ASSUME_ON_BARGE] = LB_ASSUME_NO;
}

static void
listing (Cut *cut)
{
  cut->assumptions.value[LB_ASSUME_LIST] = 3 * G_PI / 180;
  cut->assumptions.value[LB_ASSUME_LIST_LIMIT] = 2 * G_PI / 180;
}

static void
listing_little (Cut *cut)
{
  listing (cut);
  cut->assumptions.value[LB_ASSUME_LIST] = 2 * G_PI / 180;
}

static void
trimming (Cut *cut)
{
  listing_little (cut);
  cut->assumptions.value[LB_ASSUME_TRIM] = 2.1 * G_PI / 180;
}

static void
listing_on_land (Cut *cut)
{
  listing (cut);
  on_land (cut);
}

static void
two_cranes (Cut *cut)
{
  cut->assumptions.value[LB_ASSUME_CRANES] = 2;
}

/* One row, at 12 m; the radius is a little less, and 2° of list take it beyond. */
static void
charted (Cut *cut)
{
  cut->chart = (LbCraneChart){ .n_rows = 1, .rows = { { .radius_m = 12, .capacity_n = 1e6 } } };
  cut->assumptions.value[LB_ASSUME_CRANE_RADIUS] = 11.5;
  cut->assumptions.value[LB_ASSUME_TIP_HEIGHT] = 25;
}

static void
beyond_chart (Cut *cut)
{
  charted (cut);
  cut->assumptions.value[LB_ASSUME_LIST] = 2 * G_PI / 180;
}

/* A crane that the hook load takes such a share of. */
static void
share_crane (Cut *cut, double share)
{
  LbCutPlan plan;
  const LbCutBasis basis = lb_cut_basis (&cut->assumptions);

  lb_cut_plan_reckon (&cut->pile, 0, 0, 0, &basis, &plan);
  cut->assumptions.value[LB_ASSUME_CRANE_CAPACITY] = plan.figures[LB_FIGURE_HOOK_LOAD].range.high /
                                                     9.80665 / share;
}

static void
strong_crane (Cut *cut)
{
  share_crane (cut, 0.7);
}

static void
near_crane (Cut *cut)
{
  share_crane (cut, 0.8);
}

static void
weak_crane (Cut *cut)
{
  share_crane (cut, 1.1);
}

typedef void (*Change) (Cut *cut);

static gboolean
holds (LbCautionWhen when, Change change)
{
  Cut cut;

  begin (&cut);
  change (&cut);
  reckon (&cut);
  return lb_plan_caution_holds (when, &cut.pile, &cut.assumptions, &cut.plan);
}

static void
test_conditions (void)
{
  static const struct
  {
    LbCautionWhen when;
    Change met, unmet;
  } cases[] = {
    { LB_WHEN_BURNING, plain, burned },
    { LB_WHEN_BURNING, no_count, lean_burned },
    { LB_WHEN_BREAKING, plain, burned },
    { LB_WHEN_OXYGEN, plain, no_depth },
    { LB_WHEN_OXYGEN, dry, burned },
    { LB_WHEN_UNDER_WATER, plain, dry },
    { LB_WHEN_UNDER_WATER, burned, no_depth },
    { LB_WHEN_SPLASH_ZONE, awash, dry },
    { LB_WHEN_SPLASH_ZONE, awash, no_depth },
    { LB_WHEN_BATTERED, lean_burned, plain },
    { LB_WHEN_BATTERED_BURN, lean, lean_burned },
    { LB_WHEN_PLUMB_BURN, plain, lean },
    { LB_WHEN_PLUMB_BURN, plain, burned },
    { LB_WHEN_PLUMB_BURN, no_bearing, no_batter },
    { LB_WHEN_LEAN_UNKNOWN, no_batter, no_bearing },
    { LB_WHEN_LEAN_UNKNOWN, lean_anywhere, lean },
    { LB_WHEN_BATTERED, lean, lean_anywhere },
    { LB_WHEN_STRAND, strand, plain },
    { LB_WHEN_STRAND, strand, no_size },
    { LB_WHEN_HOLLOW, hollow, plain },
    { LB_WHEN_BARS_UNKNOWN, no_size, plain },
    { LB_WHEN_BARS_UNKNOWN, no_count, strand },
    { LB_WHEN_CONCRETE_LEFT, core, plain },
    { LB_WHEN_NOT_STANDING, lean, plain },
    { LB_WHEN_NOT_STANDING, lean, lean_strand },
    { LB_WHEN_HOLD_KNOWN, lean_short, lean },
    { LB_WHEN_HOLD_KNOWN, plain, kept },
    { LB_WHEN_KEPT_BAR, kept, plain },
    { LB_WHEN_HINGE, light, plain },
    { LB_WHEN_HINGE, light, kept },
    { LB_WHEN_HOLD_UNKNOWN, lean_strand, lean },
    { LB_WHEN_HOLD_UNKNOWN, counted, strand },
    { LB_WHEN_HOLD_UNKNOWN, counted, lean_burned },
    { LB_WHEN_SEVERAL_DIVES, short_dives, middling_dives },
    { LB_WHEN_SEVERAL_DIVES, short_dives, no_time },
    { LB_WHEN_DIVES_MAY_GROW, middling_dives, plain },
    { LB_WHEN_DIVES_MAY_GROW, middling_dives, short_dives },
    { LB_WHEN_PAST_LIMIT, no_time, short_dives },
    { LB_WHEN_PAST_LIMIT, no_time, no_size },
    { LB_WHEN_LIMIT_UNKNOWN, no_depth, plain },
    { LB_WHEN_CURRENT_OVER, swift, plain },
    { LB_WHEN_CURRENT_OVER, swift, swift_dry },
    { LB_WHEN_CURRENT_OVER, swift, swift_allowed },
    { LB_WHEN_LEAD_DROP_OVER, long_leads, short_leads },
    { LB_WHEN_LEAD_DROP_OVER, long_leads, plain },
    { LB_WHEN_LEADS_ASSUMED, plain, long_leads },
    { LB_WHEN_LEADS_ASSUMED, plain, fat_leads },
    { LB_WHEN_RESIDUAL_LOW, low_residual, plain },
    { LB_WHEN_SUBMERGED_LIFT, plain, dry },
    { LB_WHEN_LOAD_KNOWN, plain, no_head },
    { LB_WHEN_LOAD_UNKNOWN, no_head, plain },
    { LB_WHEN_LOAD_UNKNOWN, no_head, dry },
    { LB_WHEN_CAPACITY_UNKNOWN, dry, no_head },
    { LB_WHEN_CAPACITY_UNKNOWN, plain, strong_crane },
    { LB_WHEN_CAPACITY_NEAR, near_crane, strong_crane },
    { LB_WHEN_CAPACITY_NEAR, near_crane, weak_crane },
    { LB_WHEN_CAPACITY_OVER, weak_crane, near_crane },
    { LB_WHEN_SLING_FLAT, flat_sling, plain },
    { LB_WHEN_CAPACITY_UNKNOWN, plain, charted },
    { LB_WHEN_CAPACITY_UNKNOWN, plain, beyond_chart },
    { LB_WHEN_CAPACITY_UNKNOWN, plain, listing },
    { LB_WHEN_BEYOND_CHART, beyond_chart, charted },
    { LB_WHEN_BARGE_CRANE, plain, on_land },
    { LB_WHEN_LIST_OVER, listing, listing_little },
    { LB_WHEN_LIST_OVER, trimming, listing_on_land },
    { LB_WHEN_TWO_CRANES, two_cranes, plain },
    { LB_WHEN_SLING_FLAT, flat_sling, one_leg },
    { LB_WHEN_SLING_OVER, weak_sling, strong_sling },
    { LB_WHEN_SLING_OVER, choked_sling, plain },
    { LB_WHEN_ON_MUD, on_mud, plain },
    { LB_WHEN_ON_MUD, on_mud, no_head_on_mud },
    { LB_WHEN_WHOLE_PULL, in_ground, plain },
    { LB_WHEN_WHOLE_PULL, in_ground, through_ground },
    { LB_WHEN_WHOLE_PULL, in_ground, burned_in_ground },
    { LB_WHEN_WHOLE_PULL, in_ground, in_ground_to_cut },
  };
  gboolean is_tried[LB_N_CAUTION_WHENS] = { FALSE };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_test_message ("%zu %s", i, lb_caution_when_key (cases[i].when));
    g_assert_true (holds (cases[i].when, cases[i].met));
    g_assert_false (holds (cases[i].when, cases[i].unmet));
    is_tried[cases[i].when] = TRUE;
  }

  /* What is left holds at every cut. */
  for (guint when = 0; when < LB_N_CAUTION_WHENS; when++)
    if (!is_tried[when]) {
      g_test_message ("%s", lb_caution_when_key ((LbCautionWhen) when));
      g_assert_cmpuint (when, ==, LB_WHEN_ALWAYS);
      g_assert_true (holds ((LbCautionWhen) when, lean));
    }
}

static gboolean
says (const LbCutPlan *plan, const char *key)
{
  for (gsize i = 0; i < plan->n_cautions; i++)
    if (g_str_equal (plan->cautions[i]->key, key))
      return TRUE;
  return FALSE;
}

/* The bar of the words is the one whose burning leaves too little, and the plan says so itself. */
static void
test_hook_bar (void)
{
  Cut cut;

  begin (&cut);
  light (&cut);
  reckon (&cut);

  const LbBurnOrder *hold = &cut.plan.hold;

  /* Of eight, the burning of the sixth leaves two. */
  g_assert_cmpuint (hold->rig_before, ==, 6);
  g_assert_cmpuint (lb_plan_hook_bar (&cut.plan), ==, cut.plan.order[hold->rig_before - 1]);
  g_assert_true (says (&cut.plan, "rig-before"));
  g_assert_true (says (&cut.plan, "hinge"));
}

static void
test_longest_dive (void)
{
  Cut cut;

  begin (&cut);
  reckon (&cut);
  /* 232 min by the table, and the job's own 120. */
  g_assert_cmpfloat (lb_plan_longest_dive (&cut.plan, &cut.assumptions), ==, 120 * 60);
  cut.assumptions.value[LB_ASSUME_DIVE_LIMIT] = 300 * 60;
  g_assert_cmpfloat_with_epsilon (lb_plan_longest_dive (&cut.plan, &cut.assumptions), 232 * 60,
                                  1e-9);
  no_depth (&cut);
  reckon (&cut);
  g_assert_true (isnan (lb_plan_longest_dive (&cut.plan, &cut.assumptions)));
}

/* The rows of a plan are those whose conditions hold, each once; in each part the gravest are first,
 * and a crew's own stand with the rest. */
static void
test_rows (void)
{
  static const LbCautionRow crew[] = {
    { "our-gate", LB_SEVERITY_DANGER, LB_WHEN_ALWAYS, "Gate B is locked.", "us" },
    { "our-lean", LB_SEVERITY_NOTE, LB_WHEN_BATTERED, "Leans {lean}.", "us" },
    { "our-list", LB_SEVERITY_NOTE, LB_WHEN_LIST_OVER, "Lists {list}.", "us" },
  };
  g_autoptr (GRand) rand = g_rand_new_with_seed (31);
  gsize n_rows;
  const LbCautionRow *rows = lb_caution_rows (&n_rows);

  for (guint trial = 0; trial < 60; trial++) {
    LbChanceCut cut;
    LbCutPlan plan;
    gsize n_met = 0;

    lb_chance_cut (&cut, rand);

    LbCutBasis basis = lb_cut_basis (&cut.assumptions);

    basis.crew_rows = crew;
    basis.n_crew_rows = G_N_ELEMENTS (crew);
    lb_cut_plan_reckon (&cut.pile, cut.burned, 0, cut.n_unplaced, &basis, &plan);
    for (gsize i = 0; i < n_rows + G_N_ELEMENTS (crew); i++) {
      const LbCautionRow *row = i < n_rows ? &rows[i] : &crew[i - n_rows];
      const gboolean is_met = lb_plan_caution_holds (row->when, &cut.pile, &cut.assumptions, &plan);

      g_assert_true (says (&plan, row->key) == is_met);
      n_met += is_met;
    }
    g_assert_cmpuint (plan.n_cautions, ==, n_met);
    g_assert_cmpuint (plan.n_own_cautions, <=, n_met);
    for (gsize i = 0; i < n_met; i++) {
      const LbCautionRow *row = plan.cautions[i];

      g_assert_true (lb_caution_when_is_ordinary (row->when) == (i >= plan.n_own_cautions));
      if (i > 0 && i != plan.n_own_cautions)
        g_assert_cmpint (row->severity, <=, plan.cautions[i - 1]->severity);
    }
    g_assert_true (says (&plan, "our-gate"));
    g_assert_true (says (&plan, "our-lean") == plan.is_battered);
    g_assert_true (says (&plan, "our-list") == says (&plan, "list-over"));
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/plan-cautions/conditions", test_conditions);
  g_test_add_func ("/trade/plan-cautions/hook-bar", test_hook_bar);
  g_test_add_func ("/trade/plan-cautions/longest-dive", test_longest_dive);
  g_test_add_func ("/trade/plan-cautions/rows", test_rows);
  return g_test_run ();
}
