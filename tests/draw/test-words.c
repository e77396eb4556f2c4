/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The words of the cut plan, of piles, of entries and of days. Expected figures are worked out in
 * the comments from the pile below, not copied from a run. */
#include "draw/input-words.h"
#include "draw/plan-words.h"
#include "draw/voice-text.h"
#include "sample-job.h"

#include <locale.h>
#include <math.h>
#include <string.h>

static void
reckon (const LbPile *pile,
        LbBarSet burned,
        guint n_unplaced,
        const LbAssumptions *assumptions,
        LbCutPlan *out_plan)
{
  const LbCutBasis basis = lb_cut_basis (assumptions);

  lb_cut_plan_reckon (pile, burned, 0, n_unplaced, &basis, out_plan);
}

#define FOOT    0.3048
#define HOUR_US (G_GINT64_CONSTANT (3600) * G_USEC_PER_SEC)
#define INCH    0.0254

static LbVoice
metric_voice (void)
{
  LbVoice voice = LB_VOICE_PLAIN;
  voice.units = LB_UNITS_METRIC;
  return voice;
}

static void
assert_takes (char *text, const char *expected)
{
  g_assert_cmpstr (text, ==, expected);
  g_free (text);
}

static void
test_reasons (void)
{
  static const struct
  {
    LbFigureId id;
    const char *reason;
  } CASES[] = {
    { LB_FIGURE_TRUE_LENGTH, "head +10 ft to cut -31 ft, along 1:4" },
    { LB_FIGURE_LEAN, "batter 1:4 to the south" },
    { LB_FIGURE_HEAD_OFFSET, "1:4 over 42 ft, mudline to head" },
    { LB_FIGURE_CUT_OFFSET, "1:4 over 41 ft, cut to head" },
    { LB_FIGURE_CUT_DEPTH, "water at 0 ft, cut at -31 ft" },
    { LB_FIGURE_PNEUMO, "31 ft + 1 ft pneumo correction" },
    { LB_FIGURE_BARS_LEFT, "of 8 bars on record" },
    { LB_FIGURE_STEEL, "8 × 0.79 in², #8" },
    { LB_FIGURE_TRIGGER, "25 s/in² × 6.32 in²; the stated default" },
    /* 158 s ÷ (50 s × 0.85) is four rods, started. */
    { LB_FIGURE_BURN, "158 s of trigger + 75 s at each of 8 strikes and 4 rods" },
    { LB_FIGURE_RODS, "158 s ÷ 50 s a rod, 15% lost" },
    /* 0.445 psi/ft × 31 ft = 13.8 psi; 200 ft of hose at 10 psi per 100 ft. */
    { LB_FIGURE_REGULATOR, "90 psi over bottom + 14 psi for 31 ft + 38 psi hose" },
    { LB_FIGURE_NO_STOP, "U.S. Navy air table, 35 ft row; the way up takes 62 s" },
    { LB_FIGURE_SLING, "2 legs at 60° from the horizontal" },
  };
  const LbPile pile = sample_known_pile ();
  LbAssumptions assumptions;
  LbCutPlan plan;
  lb_assumptions_init (&assumptions);
  reckon (&pile, 0, 0, &assumptions, &plan);
  for (gsize i = 0; i < G_N_ELEMENTS (CASES); i++) {
    g_test_message ("%s", lb_figure_key (CASES[i].id));
    assert_takes (lb_figure_reason_text (&LB_VOICE_PLAIN, &pile, &assumptions, &plan, CASES[i].id),
                  CASES[i].reason);
  }
}

/* The numbers of a sum must add up to the figure they explain. */
static void
test_hook_load_adds_up (void)
{
  const LbPile pile = sample_known_pile ();
  LbAssumptions assumptions;
  LbCutPlan plan;
  lb_assumptions_init (&assumptions);
  reckon (&pile, 0, 0, &assumptions, &plan);
  g_autofree char *why = lb_figure_reason_text (&LB_VOICE_PLAIN, &pile, &assumptions, &plan,
                                                LB_FIGURE_HOOK_LOAD);
  g_autofree char *hook = lb_figure_text (&LB_VOICE_PLAIN, &plan, LB_FIGURE_HOOK_LOAD);
  double in_air, rigging;
  const char *const plus = strstr (why, " + ");
  g_assert_nonnull (plus);
  in_air = g_ascii_strtod (why, NULL);
  rigging = g_ascii_strtod (plus + 3, NULL);
  g_assert_cmpfloat_with_epsilon (in_air + rigging, g_ascii_strtod (hook, NULL), 1.01);
  g_assert_cmpfloat (in_air, >, 8000);
}

static void
test_reasons_are_metric (void)
{
  const LbVoice voice = metric_voice ();
  const LbPile pile = sample_known_pile ();
  LbAssumptions assumptions;
  LbCutPlan plan;
  lb_assumptions_init (&assumptions);
  reckon (&pile, 0, 0, &assumptions, &plan);
  /* 90 psi is 6.2 bar, 31 ft is 9.45 m. */
  assert_takes (lb_figure_reason_text (&voice, &pile, &assumptions, &plan, LB_FIGURE_REGULATOR),
                "6.2 bar over bottom + 1 bar for 9.45 m + 2.6 bar hose");
  assert_takes (lb_figure_reason_text (&voice, &pile, &assumptions, &plan, LB_FIGURE_STEEL),
                "8 × 510 mm², #8");
  static const char *const US[] = { " ft", " in", " lb", " psi", "in²" };
  for (LbFigureId id = 0; id < LB_N_FIGURES; id++) {
    g_autofree char *why = lb_figure_reason_text (&voice, &pile, &assumptions, &plan, id);
    g_autofree char *value = lb_figure_text (&voice, &plan, id);
    for (gsize i = 0; i < G_N_ELEMENTS (US); i++) {
      g_autofree char *unit = g_strconcat (US[i], " ", NULL);
      g_autofree char *said = g_strconcat (value, " ", NULL);
      g_assert_null (strstr (said, unit));
      if (id != LB_FIGURE_NO_STOP && g_str_has_suffix (why, US[i]))
        g_error ("“%s” ends in a US unit", why);
    }
  }
}

static void
test_missing_facts (void)
{
  LbPile pile;
  LbAssumptions assumptions;
  LbCutPlan plan;
  lb_pile_init (&pile);
  lb_assumptions_init (&assumptions);
  reckon (&pile, 0, 0, &assumptions, &plan);
  guint n_missing = 0;
  for (LbFigureId id = 0; id < LB_N_FIGURES; id++) {
    const char *const missing = lb_figure_missing (id, &pile);
    if (missing == NULL)
      continue;
    n_missing++;
    assert_takes (lb_figure_text (&LB_VOICE_PLAIN, &plan, id), "–");
    g_assert_null (lb_figure_range_text (&LB_VOICE_PLAIN, &plan, id));
    assert_takes (lb_figure_reason_text (&LB_VOICE_PLAIN, &pile, &assumptions, &plan, id), missing);
  }
  g_assert_cmpuint (n_missing, >=,
                    LB_N_FIGURES - 3); /* leads, rules of a critical lift and the list do without */
}

/* The crane's chart, slings, mud and ground, as the plan says where they come from. */
static void
test_lift_reasons (void)
{
  static const LbCraneChart chart = { .n_rows = 2,
                                      .rows = { { 30 * FOOT, 2e5 }, { 40 * FOOT, 1e5 } } };
  static const LbGround ground = {
    .n_layers = 1,
    .layers = { { .to_m = 20 * FOOT,
                  .soil = LB_SOIL_OWN,
                  .strength_pa = 1e4,
                  .buoyant_kg_per_m3 = 900 } },
  };
  LbPile pile = sample_known_pile ();
  LbAssumptions assumptions;
  LbCutBasis basis;
  LbCutPlan plan;
  struct
  {
    LbAssumptionId id;
    double value;
    LbFigureId figure;
    const char *reason;
  } cases[] = {
    { LB_ASSUME_WATER_LEVEL, 0, LB_FIGURE_CRANE_SHARE,
      "The crane’s chart is there; the radius of the lift is not set." },
    { LB_ASSUME_CRANE_RADIUS, 29 * FOOT, LB_FIGURE_CRANE_SHARE,
      "10047 lb at the hook, 44962 lb by its chart’s 30 ft row for 29 ft" },
    { LB_ASSUME_LIST, 2 * G_PI / 180, LB_FIGURE_CRANE_SHARE,
      "The barge is not level, and how high the boom tip is is not set." },
    /* 80 ft × tan 2° is 2.8 ft: the next row counts. */
    { LB_ASSUME_TIP_HEIGHT, 80 * FOOT, LB_FIGURE_CRANE_SHARE,
      "10047 lb at the hook, 22481 lb by its chart’s 40 ft row for 29 ft and 2.8 ft more from list "
      "and trim" },
    { LB_ASSUME_CRANE_RADIUS, 38 * FOOT, LB_FIGURE_LENGTHS,
      "A radius of 40.8 ft is beyond the crane’s chart: no lift." },
    { LB_ASSUME_LIST, 6 * G_PI / 180, LB_FIGURE_CRANE_SHARE,
      "List or trim of the barge is over the limit: no lift." },
    { LB_ASSUME_WATER_LEVEL, 0, LB_FIGURE_SLING_SHARE, "What the sling is rated for is not set." },
    { LB_ASSUME_SLING_RATING, 5000, LB_FIGURE_SLING_SHARE,
      "5801 lb a leg, rated 11023 lb as hitched" },
    { LB_ASSUME_CHOKE_ANGLE, 100 * G_PI / 180, LB_FIGURE_SLING_SHARE,
      "5801 lb a leg, rated 11023 lb as hitched, of which a choke of 100° keeps 87%" },
    { LB_ASSUME_WATER_LEVEL, 0, LB_FIGURE_SUCTION, "It is taken to lie on nothing that holds it." },
    { LB_ASSUME_BED, LB_ASSUME_BED_SOFT_CLAY, LB_FIGURE_SUCTION,
      "a quarter to all of the 5664 lb in water: it lies on soft clay" },
    /* 0.21 and 0.79 of 42.3 ft. */
    { LB_ASSUME_WATER_LEVEL, 0, LB_FIGURE_PICK,
      "8.9 ft, 33.4 ft of 42.3 ft, laid level (FDOT index 20600)" },
    { LB_ASSUME_PICKS, 1, LB_FIGURE_PICK,
      "one point in 42.3 ft upends it, its far end on the ground (FDOT index 20600)" },
    { LB_ASSUME_WATER_LEVEL, 0, LB_FIGURE_WHOLE_PULL,
      "The ground is known to 20 ft below the mudline and the toe is at 28 ft: add what lies below." },
  };

  lb_assumptions_init (&assumptions);
  pile.is_to_be_drawn = TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *reason = NULL;

    assumptions.value[cases[i].id] = cases[i].value;
    basis = lb_cut_basis (&assumptions);
    basis.crane = lb_crane_here (&assumptions, &chart);
    basis.ground = &ground;
    lb_cut_plan_reckon (&pile, 0, 0, 0, &basis, &plan);
    reason = lb_figure_reason_text (&LB_VOICE_PLAIN, &pile, &assumptions, &plan, cases[i].figure);
    g_test_message ("%zu", i);
    g_assert_cmpstr (reason, ==, cases[i].reason);
  }

  /* Each trigger with its rule: under water, no capacity known, and it swings plumb. */
  assert_takes (lb_figure_text (&LB_VOICE_PLAIN, &plan, LB_FIGURE_CRITICAL), "yes, by 3 rules");
  g_autofree char *rules = lb_figure_reason_text (&LB_VOICE_PLAIN, &pile, &assumptions, &plan,
                                                  LB_FIGURE_CRITICAL);
  assert_takes (lb_critical_rules_text (&plan),
                "under water; share of capacity not known; centre of gravity can change");
  g_assert_cmpstr (
    rules, ==,
    "under water (EM 385-1-1); share of capacity not known (common practice); centre "
    "of gravity can change (EM 385-1-1)");
}

/* All facts are there and still there is no figure. */
static void
test_no_figure_is_explained (void)
{
  LbPile pile = sample_known_pile ();
  LbAssumptions assumptions;
  LbCutPlan plan;
  lb_assumptions_init (&assumptions);

  pile.cut_m = -250 * FOOT; /* beyond the table's 190 ft */
  pile.mudline_m = -251 * FOOT;
  reckon (&pile, 0, 0, &assumptions, &plan);
  assert_takes (
    lb_figure_reason_text (&LB_VOICE_PLAIN, &pile, &assumptions, &plan, LB_FIGURE_NO_STOP),
    "Deeper than the no-stop table goes.");
  assert_takes (
    lb_figure_reason_text (&LB_VOICE_PLAIN, &pile, &assumptions, &plan, LB_FIGURE_DIVES),
    "Deeper than the no-stop table goes.");

  pile = sample_known_pile ();
  pile.head_m = -33 * FOOT; /* below the cut: broken off */
  reckon (&pile, 0, 0, &assumptions, &plan);
  assert_takes (
    lb_figure_reason_text (&LB_VOICE_PLAIN, &pile, &assumptions, &plan, LB_FIGURE_TRUE_LENGTH),
    "The head on record is below the cut.");

  pile = sample_known_pile ();
  pile.cut_m = -10 * FOOT; /* the table gives no limit at 10 and 15 ft */
  reckon (&pile, 0, 0, &assumptions, &plan);
  assert_takes (lb_figure_text (&LB_VOICE_PLAIN, &plan, LB_FIGURE_NO_STOP), "no limit");

  pile.cut_m = 2 * FOOT; /* dry */
  reckon (&pile, 0, 0, &assumptions, &plan);
  assert_takes (
    lb_figure_reason_text (&LB_VOICE_PLAIN, &pile, &assumptions, &plan, LB_FIGURE_DIVES),
    "the cut is above the water");
}

static void
test_ranges (void)
{
  LbCutPlan plan = { .n_order = 0 };
  plan.figures[LB_FIGURE_BURN].range = (LbRange){ .likely = 1560, .low = 1080, .high = 2220 };
  assert_takes (lb_figure_text (&LB_VOICE_PLAIN, &plan, LB_FIGURE_BURN), "26 min");
  assert_takes (lb_figure_range_text (&LB_VOICE_PLAIN, &plan, LB_FIGURE_BURN), "18–37 min");
  /* A range that reads the same at both ends says nothing. */
  plan.figures[LB_FIGURE_BURN].range = (LbRange){ .likely = 1560, .low = 1559, .high = 1561 };
  g_assert_null (lb_figure_range_text (&LB_VOICE_PLAIN, &plan, LB_FIGURE_BURN));
  plan.figures[LB_FIGURE_NO_STOP].range =
    (LbRange){ .likely = INFINITY, .low = INFINITY, .high = INFINITY };
  g_assert_null (lb_figure_range_text (&LB_VOICE_PLAIN, &plan, LB_FIGURE_NO_STOP));
}

static void
assert_input (LbFigureId id, const LbInput *input, const LbPile *pile, const char *expected)
{
  LbAssumptions assumptions;
  LbCutPlan plan;
  g_auto (LbInputWords) words = { 0 };

  lb_assumptions_init (&assumptions);
  const LbCutBasis basis = lb_cut_basis (&assumptions);
  lb_cut_plan_reckon (pile, 0, 0, 0, &basis, &plan);
  lb_input_words (&LB_VOICE_PLAIN, pile, &basis, &plan, id, input, &words);
  g_autofree char *said = g_strdup_printf ("%s: %s · %s", words.title, words.value, words.note);
  g_assert_cmpstr (said, ==, expected);
  g_assert_true (words.is_missing == (strstr (expected, "to be given") != NULL ||
                                      strstr (expected, "is known.") != NULL));
}

static void
test_input_words (void)
{
  LbPile pile = sample_known_pile ();
  static const struct
  {
    LbFigureId id;
    LbInput input;
    const char *words;
  } CASES[] = {
    { LB_FIGURE_TRUE_LENGTH,
      { LB_INPUT_FACT, LB_FACT_HEAD },
      "Head elevation: +10 ft · on record for this pile" },
    { LB_FIGURE_TRUE_LENGTH,
      { LB_INPUT_FACT, LB_FACT_CUT },
      "Cut elevation: -31 ft · on record for this pile" },
    { LB_FIGURE_TRUE_LENGTH,
      { LB_INPUT_FACT, LB_FACT_BATTER },
      "Batter: 1:4 · on record for this pile" },
    { LB_FIGURE_HOLD_STRESS,
      { LB_INPUT_FACT, LB_FACT_BAR_INSET },
      "Bar inset: 3 in · not on record; usual cover, common practice" },
    { LB_FIGURE_HOLD_STRESS,
      { LB_INPUT_ASSUMPTION, LB_ASSUME_HOLD_FACTOR },
      "Factor on what the bars left hold: 3 · common practice · The licensed engineer’s to set" },
    { LB_FIGURE_STEEL, { LB_INPUT_FIGURE, LB_FIGURE_BARS_LEFT }, "Bars left: 8 · computed" },
    { LB_FIGURE_BARS_LEFT, { LB_INPUT_BURNED, 0 }, "Bars burned so far: 0 · the job’s record" },
    { LB_FIGURE_NO_STOP,
      { LB_INPUT_DIVE_TABLE, 0 },
      "No-stop table: the U.S. Navy’s · U.S. Navy Diving Manual, revision 7, table 9-7" },
    { LB_FIGURE_TRIGGER,
      { LB_INPUT_VISIBILITY, 0 },
      "Visibility: visibility not said · as it was said last" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (CASES); i++)
    assert_input (CASES[i].id, &CASES[i].input, &pile, CASES[i].words);

  const LbInput cut = { LB_INPUT_FACT, LB_FACT_CUT };
  pile.cut_m = NAN;
  assert_input (LB_FIGURE_TRUE_LENGTH, &cut, &pile,
                "Cut elevation: -31 ft · not on record; taken from the mudline");
  pile.mudline_m = NAN;
  assert_input (LB_FIGURE_TRUE_LENGTH, &cut, &pile,
                "Cut elevation: not known · to be given among the facts of the pile");
  const LbInput length = { LB_INPUT_FIGURE, LB_FIGURE_TRUE_LENGTH };
  assert_input (
    LB_FIGURE_MASS_IN_AIR, &length, &pile,
    "True length of the piece: – · Neither the cut elevation nor the mudline is known.");
}

/* What the job's own dives taught, and for which visibility it is taken. */
static void
test_learned_reason (void)
{
  const LbPile pile = sample_known_pile ();
  const LbBurnSample samples[] = {
    { .n_bars = 8,
      .steel_m2 = 8 * pile.bar->area_m2,
      .bar = pile.bar,
      .trigger_s = 200,
      .visibility = LB_VISIBILITY_POOR,
      .reason = "" },
    { .n_bars = 4,
      .steel_m2 = 4 * pile.bar->area_m2,
      .bar = pile.bar,
      .trigger_s = 90,
      .visibility = LB_VISIBILITY_GOOD,
      .reason = "" },
  };
  static const struct
  {
    LbVisibility visibility;
    const char *ends;
  } CASES[] = {
    { LB_VISIBILITY_UNKNOWN, "; this job’s rate, from 12 bars" },
    { LB_VISIBILITY_POOR, "; this job’s rate, from 12 bars, for poor visibility (8 of them)" },
    { LB_VISIBILITY_NONE, "; this job’s rate, from 12 bars, for no visibility (0 of them)" },
  };
  LbAssumptions assumptions;
  LbBurnModel model;
  double none_s = 0;

  lb_assumptions_init (&assumptions);
  lb_burn_model_fit (samples, G_N_ELEMENTS (samples), NULL, 0, &assumptions, &model);
  for (gsize i = 0; i < G_N_ELEMENTS (CASES); i++) {
    LbCutBasis basis = lb_cut_basis (&assumptions);
    LbCutPlan plan;

    basis.burn = &model;
    basis.visibility = CASES[i].visibility;
    lb_cut_plan_reckon (&pile, 0, 0, 0, &basis, &plan);
    g_autofree char *reason = lb_figure_reason_text (&LB_VOICE_PLAIN, &pile, &assumptions, &plan,
                                                     LB_FIGURE_TRIGGER);
    g_assert_true (g_str_has_suffix (reason, CASES[i].ends));
    g_assert_cmpfloat (plan.figures[LB_FIGURE_TRIGGER].range.likely, !=, none_s);
    none_s = plan.figures[LB_FIGURE_TRIGGER].range.likely;
  }
}

/* Two lines of a sheet 340 px wide. */
static void
test_reasons_are_short (void)
{
  cairo_surface_t *const surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *const cr = cairo_create (surface);
  const LbVoice voices[] = { LB_VOICE_PLAIN, metric_voice () };
  LbPile piles[] = { sample_known_pile (), sample_known_pile () };
  LbAssumptions assumptions;
  lb_assumptions_init (&assumptions);
  piles[1].bar = lb_bar_find ("1/2 in strand 270");
  piles[1].n_bars = 40;
  piles[1].outline = (LbOutline){ .shape = LB_SHAPE_ROUND, .width_m = 1.37, .void_m = 1.1 };

  for (gsize v = 0; v < G_N_ELEMENTS (voices); v++) {
    for (gsize p = 0; p < G_N_ELEMENTS (piles); p++) {
      LbCutPlan plan;
      reckon (&piles[p], 0, 0, &assumptions, &plan);
      double line_w, line_h;
      lb_text_measure (cr, &voices[v], "0", 11, FALSE, 340, &line_w, &line_h);
      for (LbFigureId id = 0; id < LB_N_FIGURES; id++) {
        g_autofree char *why = lb_figure_reason_text (&voices[v], &piles[p], &assumptions, &plan,
                                                      id);
        double width, height;
        lb_text_measure (cr, &voices[v], why, 11, FALSE, 340, &width, &height);
        g_test_message ("%s", why);
        /* The rules of a critical lift take a line more. */
        g_assert_cmpfloat (height, <=, (id == LB_FIGURE_CRITICAL ? 3.1 : 2.1) * line_h);
      }
    }
  }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* The words of each step say what the order was weighed by, and the hook comes once, before its bar. */
static void
test_step_words (void)
{
  LbPile pile = sample_known_pile ();
  LbAssumptions assumptions;
  LbCutPlan plan;
  LbBarShares shares;
  lb_assumptions_init (&assumptions);
  /* No lean: the hook is not needed before the first. */
  pile.batter = 0;
  reckon (&pile, 0, 0, &assumptions, &plan);
  const LbCutBasis basis = lb_cut_basis (&assumptions);
  g_assert_null (plan.hold_missing);
  g_assert_cmpuint (plan.hold.rig_before, >, 1);
  g_assert_cmpuint (plan.hold.rig_before, <, 8);

  for (gsize n_done = 0; n_done <= 8; n_done++) {
    g_assert_true (
      lb_pile_hold_shares (&pile, plan.places, 0, &basis, &plan.hold, n_done, &shares));
    g_autofree char *text = lb_step_text (&LB_VOICE_PLAIN, &assumptions, &plan, &shares, n_done);
    g_autofree char *hold = lb_hold_point_text (&plan, n_done);
    if (n_done + 1 == plan.hold.rig_before) {
      g_autofree char *ordinal = lb_ordinal_text ((guint) n_done + 1);
      g_autofree char *expected = g_strdup_printf ("Hook tension on before bar %u, the %s",
                                                   plan.order[n_done] + 1u, ordinal);
      g_assert_cmpstr (hold, ==, expected);
    } else {
      g_assert_null (hold);
    }
    if (n_done == 0) {
      g_autofree char *expected = g_strdup_printf (
        "As it stands. Bar %u bears most: %.0f%% of what it may.", shares.governing + 1u,
        plan.hold.as_it_stands.utilisation * 100);
      g_assert_cmpstr (text, ==, expected);
    } else {
      g_autofree char *start = g_strdup_printf ("%zu of 8 bars burned. ", n_done);
      g_assert_true (g_str_has_prefix (text, start));
    }
    g_assert_true ((strstr (text, "With 50% on the hook") != NULL) ==
                   (n_done >= plan.hold.rig_before && n_done < 6));
    g_assert_true ((strstr (text, "hinge") != NULL) == (n_done == 6 || n_done == 7));
    g_assert_true ((strstr (text, "Nothing but the hook holds the piece.") != NULL) ==
                   (n_done == 8));
  }
}

static void
test_pile_text (void)
{
  LbPile pile = sample_known_pile ();
  assert_takes (lb_pile_text (&LB_VOICE_PLAIN, &pile),
                "16 in octagonal, 8 × #8 bars, leans 1:4 to the south");
  const LbVoice metric = metric_voice ();
  assert_takes (lb_pile_text (&metric, &pile),
                "406 mm octagonal, 8 × #8 bars, leans 1:4 to the south");
  pile.bar = NULL;
  assert_takes (lb_pile_text (&LB_VOICE_PLAIN, &pile),
                "16 in octagonal, 8 bars of a size not known, leans 1:4 to the south");
  lb_pile_init (&pile);
  pile.unsaid = 0;
  assert_takes (lb_pile_text (&LB_VOICE_PLAIN, &pile),
                "square, width not known, bars not known, plumb");
  pile.bar = lb_bar_find ("#18");
  assert_takes (lb_pile_text (&LB_VOICE_PLAIN, &pile),
                "square, width not known, #18, how many is not known, plumb");
}

static void
test_state_text (void)
{
  static const struct
  {
    LbPileState state;
    const char *text;
  } CASES[] = {
    { { .step = LB_STEP_STANDING, .n_left = 8 }, "standing" },
    { { .step = LB_STEP_STANDING, .n_left = 5 }, "standing · 5 of 8 bars left" },
    { { .step = LB_STEP_CLEANED, .n_left = 5 }, "cleaned · 5 of 8 bars left" },
    { { .step = LB_STEP_CLEANED, .n_left = 8 }, "cleaned · 8 of 8 bars left" },
    { { .step = LB_STEP_SEVERED, .done = LB_STEP_BIT (LB_STEP_SEVERED) }, "severed" },
    { { .step = LB_STEP_SEVERED,
        .done = LB_STEP_BIT (LB_STEP_SEVERED),
        .n_left = 2,
        .flags = LB_FLAG_SEVERED_WITH_BARS },
      "severed · 2 of 8 bars left" },
    { { .step = LB_STEP_RIGGED, .done = LB_STEP_BIT (LB_STEP_RIGGED), .n_left = 3 },
      "rigged · 3 of 8 bars left" },
    { { .step = LB_STEP_RIGGED,
        .done = LB_STEP_BIT (LB_STEP_RIGGED) | LB_STEP_BIT (LB_STEP_SEVERED) },
      "severed and rigged" },
    { { .step = LB_STEP_PULLED, .done = LB_STEP_BIT (LB_STEP_PULLED), .n_left = 8 }, "pulled" },
    { { .step = LB_STEP_PULLED, .is_drawn = TRUE, .n_left = 8 }, "drawn whole" },
    { { .step = LB_STEP_STANDING, .flags = LB_FLAG_STUB_LEFT, .n_left = 8 }, "broke: stub left" },
  };
  const LbPile pile = sample_known_pile ();
  for (gsize i = 0; i < G_N_ELEMENTS (CASES); i++)
    assert_takes (lb_pile_state_text (&pile, &CASES[i].state), CASES[i].text);
}

static void
test_bar_numbers (void)
{
  assert_takes (lb_bar_numbers_text (0), "");
  assert_takes (lb_bar_numbers_text (LB_BAR (0) | LB_BAR (1)), "1, 2");
  assert_takes (lb_bar_numbers_text (LB_BAR (0) | LB_BAR (2) | LB_BAR (3) | LB_BAR (4)), "1, 3–5");
  assert_takes (lb_bar_numbers_text (lb_bar_set_all (LB_BARS_MAX)), "1–60");
}

static void
test_entries (void)
{
  static const struct
  {
    LbEntry entry;
    const char *text;
  } CASES[] = {
    { { .kind = LB_ENTRY_STEP, .what = "severed" }, "Severed" },
    { { .kind = LB_ENTRY_STEP, .what = "cleaned", .note = "by hand" }, "Cleaned (by hand)" },
    { { .kind = LB_ENTRY_STEP, .what = "rigged" }, "Rigged" },
    { { .kind = LB_ENTRY_STEP, .what = "pulled" }, "Pulled" },
    { { .kind = LB_ENTRY_STEP, .what = "standing" }, "Standing" },
    { { .kind = LB_ENTRY_STEP, .what = "painted" },
      "Step “painted”, which this version does not know" },
    { { .kind = LB_ENTRY_BARS, .bars = 3 }, "Bars 1, 2 burned" },
    { { .kind = LB_ENTRY_BARS, .bars = 1 }, "Bar 1 burned" },
    { { .kind = LB_ENTRY_GONE, .bars = 1 }, "Bar 1 found gone" },
    { { .kind = LB_ENTRY_GONE, .bars = 7 }, "Bars 1–3 found gone" },
    { { .kind = LB_ENTRY_BARS, .count = 3 }, "3 bars burned, not said which" },
    { { .kind = LB_ENTRY_DRAWN }, "Drawn whole, not cut" },
    { { .kind = LB_ENTRY_BROKEN, .amount = -21 * FOOT },
      "Broke: a stub is left with its head at -21 ft" },
    { { .kind = LB_ENTRY_BROKEN, .amount = NAN }, "Broke: a stub is left" },
    { { .kind = LB_ENTRY_BURN_TIME, .amount = 720 }, "12 min of trigger time" },
    { { .kind = LB_ENTRY_RODS, .amount = 6 }, "6 rods used" },
    { { .kind = LB_ENTRY_RODS, .amount = 1 }, "1 rod used" },
    { { .kind = LB_ENTRY_OXYGEN, .amount = 180 * FOOT * FOOT * FOOT }, "180 cu ft of oxygen used" },
    { { .kind = LB_ENTRY_DIVE,
        .what = "diver 1",
        .amount = 31 * FOOT,
        .start_us = G_USEC_PER_SEC,
        .end_us = (gint64) (1 + 41 * 60 + 1) * G_USEC_PER_SEC },
      "Dive, diver 1: 31 ft, bottom time 42 min" },
    { { .kind = LB_ENTRY_DIVE, .amount = NAN },
      "Dive, diver not said: depth not said, bottom time not said" },
    { { .kind = LB_ENTRY_DELAY, .what = "current", .amount = 45 * 60 }, "Delay, current: 45 min" },
    { { .kind = LB_ENTRY_DELAY, .amount = NAN }, "Delay, cause not said" },
    { { .kind = LB_ENTRY_FAULT, .what = "collet", .amount = 600 },
      "Gear fault, collet: 10 min lost" },
    { { .kind = LB_ENTRY_FAULT, .what = "switch", .amount = NAN }, "Gear fault, switch" },
    { { .kind = LB_ENTRY_CONDITION, .what = "wind", .note = "12 kn" }, "Wind: 12 kn" },
    { { .kind = LB_ENTRY_CONDITION, .what = "ice", .note = "none" }, "ice: none" },
    { { .kind = LB_ENTRY_NOTE, .note = "Slack late." }, "Slack late." },
    { { .kind = LB_ENTRY_CHECK, .what = "under-lean", .amount = 0 },
      "Before the dive: 0 of 1 check ticked; not: Stay out from under the lean" },
    { { .kind = LB_ENTRY_HOURS, .start_us = 7 * HOUR_US, .end_us = 17 * HOUR_US + HOUR_US / 2 },
      "Shift from 07:00 to 17:30" },
    { { .kind = LB_ENTRY_CREW, .what = "diving supervisor", .note = "DS" },
      "Diving supervisor: DS" },
    { { .kind = LB_ENTRY_STOCK, .what = "rods", .amount = 120 }, "Rods on hand: 120" },
    { { .kind = LB_ENTRY_STOCK, .what = "cylinders", .amount = 9 },
      "Full oxygen cylinders on hand: 9" },
    { { .kind = LB_ENTRY_DELIVERY, .what = "rods", .amount = 50 }, "Rods that came aboard: 50" },
    { { .kind = LB_ENTRY_DELIVERY, .what = "cylinders", .amount = 6 },
      "Full oxygen cylinders that came aboard: 6" },
    { { .kind = LB_ENTRY_DETAIL, .what = "borne by", .note = "owner" }, "Borne by: owner" },
    { { .kind = LB_ENTRY_ANSWER, .what = "overlap:a-1:a-2", .note = "clock was wrong" },
      "Answered: clock was wrong" },
    { { .kind = LB_ENTRY_CORRECTION, .note = "miscounted" },
      "Correction of the signed shift: nothing (miscounted)" },
    { { .kind = LB_ENTRY_SEAL, .who = "superintendent", .note = "x" },
      "Shift signed by superintendent" },
    { { .kind = LB_ENTRY_SEAL, .note = "x" }, "Shift signed, not said by whom" },
    { { .kind = LB_ENTRY_SET_ASIDE, .note = "jacketed pile" },
      "Burning set aside from the learned rate (jacketed pile)" },
    { { .kind = LB_ENTRY_TAKE_IN }, "Burning taken into the learned rate again" },
    /* Facts are kept in metric and shown in the reader's units. */
    { { .kind = LB_ENTRY_FACT, .what = "mudline", .note = "-7.3152" },
      "Mudline elevation set to -24 ft" },
    { { .kind = LB_ENTRY_FACT, .what = "mudline", .note = "" },
      "Mudline elevation set to not known" },
    { { .kind = LB_ENTRY_FACT, .what = "batter", .note = "1:6" }, "Batter set to 1:6" },
    { { .kind = LB_ENTRY_FACT, .what = "colour", .note = "red" },
      "“colour” set to “red”, which this version does not know" },
    { { .kind = LB_ENTRY_SETTING, .what = "assume.water-level", .note = "0.9144" },
      "Water level above datum set to 3 ft" },
    { { .kind = LB_ENTRY_SETTING, .what = "assume.water-level", .note = "" },
      "Water level above datum set back to the default" },
    { { .kind = LB_ENTRY_SETTING, .what = "name", .note = "Sample Wharf" },
      "Job’s name set to Sample Wharf" },
    { { .kind = LB_ENTRY_SETTING, .what = "visibility", .note = "poor" },
      "Planned for poor visibility" },
    { { .kind = LB_ENTRY_SETTING, .what = "visibility", .note = "" },
      "Planned for the visibility that was said last" },
    { { .kind = LB_ENTRY_TAKE_BACK, .of = "nowhere" },
      "Taken back: an entry that is not in this file" },
  };
  guint seen = 0;
  g_autoptr (LbLedger) ledger = lb_ledger_new ();
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  for (gsize i = 0; i < G_N_ELEMENTS (CASES); i++) {
    sample_job_add (ledger, &CASES[i].entry);
    const LbEntry *const entry = lb_ledger_entry (ledger, (guint) i);
    seen |= 1u << entry->kind;
    assert_takes (lb_entry_text (&LB_VOICE_PLAIN, ledger, fold, entry), CASES[i].text);
  }
  g_assert_cmpuint (seen, ==, (1u << LB_N_ENTRY_KINDS) - 1); /* every kind was met */
}

static void
test_take_back (void)
{
  g_autoptr (LbLedger) ledger = lb_ledger_new ();
  sample_job_add_shift (ledger, 739677);
  const LbEntry bars = { SAMPLE_ENTRY (LB_ENTRY_BARS, 0), .bars = 3 };
  LbEntry back = { SAMPLE_ENTRY (LB_ENTRY_TAKE_BACK, 0) };
  back.of = sample_job_add (ledger, &bars);
  LbEntry again = back;
  again.of = sample_job_add (ledger, &back);
  sample_job_add (ledger, &again);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  assert_takes (lb_entry_text (&LB_VOICE_PLAIN, ledger, fold, lb_ledger_entry (ledger, 1)),
                "Taken back: Bars 1, 2 burned");
  assert_takes (lb_entry_text (&LB_VOICE_PLAIN, ledger, fold, lb_ledger_entry (ledger, 2)),
                "Put back: Bars 1, 2 burned");
}

static void
test_short_times (void)
{
  assert_takes (lb_voice_quantity (&LB_VOICE_PLAIN, LB_QUANTITY_TIME, 20), "under 1 min");
  assert_takes (lb_voice_quantity (&LB_VOICE_PLAIN, LB_QUANTITY_TIME, 0), "0 min");
  assert_takes (lb_voice_quantity (&LB_VOICE_PLAIN, LB_QUANTITY_TIME, 45), "1 min");
  assert_takes (lb_voice_quantity (&LB_VOICE_PLAIN, LB_QUANTITY_TIME, NAN), "–");
  assert_takes (lb_voice_quantity (&LB_VOICE_PLAIN, LB_QUANTITY_SHORT_TIME, 20), "20 s");
}

static void
test_ordinals (void)
{
  static const struct
  {
    guint n;
    const char *text;
  } cases[] = { { 1, "1st" },   { 2, "2nd" },   { 3, "3rd" },   { 4, "4th" },
                { 10, "10th" }, { 11, "11th" }, { 12, "12th" }, { 13, "13th" },
                { 21, "21st" }, { 52, "52nd" }, { 60, "60th" } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_takes (lb_ordinal_text (cases[i].n), cases[i].text);
}

static void
test_days (void)
{
  const guint32 day = sample_job_first_day ();
  assert_takes (lb_day_text (day), "Tue 14 Jul 2026");
  assert_takes (lb_day_iso (day), "2026-07-14");
  assert_takes (lb_day_iso (day - 13), "2026-07-01");
  assert_takes (lb_day_text (0), "–");
  assert_takes (lb_day_iso (G_MAXUINT32), "–");
  assert_takes (lb_clock_text (sample_time_us (0, 7, 10)), "07:10");
  assert_takes (lb_clock_text (0), "–");
}

int
main (int argc, char *argv[])
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/words/reasons", test_reasons);
  g_test_add_func ("/draw/words/hook-load-adds-up", test_hook_load_adds_up);
  g_test_add_func ("/draw/words/metric", test_reasons_are_metric);
  g_test_add_func ("/draw/words/missing-facts", test_missing_facts);
  g_test_add_func ("/draw/words/lift-reasons", test_lift_reasons);
  g_test_add_func ("/draw/words/no-figure", test_no_figure_is_explained);
  g_test_add_func ("/draw/words/ranges", test_ranges);
  g_test_add_func ("/draw/words/learned-reason", test_learned_reason);
  g_test_add_func ("/draw/words/input-words", test_input_words);
  g_test_add_func ("/draw/words/short", test_reasons_are_short);
  g_test_add_func ("/draw/words/steps", test_step_words);
  g_test_add_func ("/draw/words/pile", test_pile_text);
  g_test_add_func ("/draw/words/state", test_state_text);
  g_test_add_func ("/draw/words/bar-numbers", test_bar_numbers);
  g_test_add_func ("/draw/words/entries", test_entries);
  g_test_add_func ("/draw/words/take-back", test_take_back);
  g_test_add_func ("/draw/words/short-times", test_short_times);
  g_test_add_func ("/draw/words/ordinals", test_ordinals);
  g_test_add_func ("/draw/words/days", test_days);
  return g_test_run ();
}
