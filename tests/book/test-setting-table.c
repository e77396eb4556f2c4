/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The crane's chart and the ground in the job: kept, reckoned with, refused, and put away again. */
#include "book-fixture.h"
#include "book/delay-causes.h"
#include "book/ground-text.h"
#include "trade/cut-plan.h"
#include "trade/shift-words.h"

#include <math.h>

#define FOOT  0.3048
#define POUND (0.45359237 * 9.80665)

static gboolean
set (Story *story, const char *key, const char *value, GError **error)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);

  draft.what = key;
  draft.note = value;
  return lb_book_record (story->book, &draft, 1, NULL, error);
}

/* Of a pile 20 ft in the ground. */
static LbCutPlan
plan_of (Story *story)
{
  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  LbPile pile;
  LbCutPlan plan;

  lb_pile_init (&pile);
  pile.outline.width_m = 14 * 0.0254;
  pile.head_m = 2;
  pile.mudline_m = -38 * FOOT;
  pile.toe_m = -58 * FOOT;
  pile.unsaid = 0;
  pile.is_to_be_drawn = TRUE;
  lb_cut_plan_reckon (&pile, 0, 0, 0, lb_fold_basis (fold), &plan);
  return plan;
}

static void
expect_capacity (Story *story, double lb)
{
  const LbCutPlan plan = plan_of (story);

  if (isnan (lb))
    g_assert_true (isnan (plan.crane.capacity_n));
  else
    g_assert_cmpfloat_with_epsilon (plan.crane.capacity_n, lb * POUND, 1e-6);
}

static void
test_chart (Story *story, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  set (story, "assume.crane-radius", "10.668", &error); /* 35 ft */
  g_assert_no_error (error);
  expect_capacity (story, (double) NAN);
  set (story, LB_SETTING_CRANE_CHART, "radius ft,capacity lb\n30,42000\n40,28500\n", &error);
  g_assert_no_error (error);
  expect_capacity (story, 28500);
  g_assert_false (
    set (story, LB_SETTING_CRANE_CHART, "radius ft,capacity lb\n30,1\n40,2\n", &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "Line 3, column 2 (capacity lb)"));
  expect_capacity (story, 28500);
  g_assert_true (set (story, LB_SETTING_CRANE_CHART, "", NULL));
  expect_capacity (story, (double) NAN);
}

/* The clay of docs/methods.md, "Grip of the ground": 18,648 lb. */
static void
test_ground (Story *story, gconstpointer data)
{
  LbCutPlan plan = plan_of (story);

  g_assert_false (plan.may_come_whole);
  g_assert_true (lb_cut_plan_tells (&plan, LB_FIGURE_WHOLE_PULL));
  g_assert_true (
    set (story, LB_SETTING_GROUND,
         "to (ft),soil,strength (psf),in water (pcf)\n10,clay,400,38\n20,clay,400,38\n", NULL));
  plan = plan_of (story);
  g_assert_cmpfloat_with_epsilon (plan.whole.grip_n.likely / POUND, 18648, 1);
  g_assert_cmpfloat_with_epsilon (plan.figures[LB_FIGURE_WHOLE_PULL].range.likely,
                                  plan.whole.grip_n.likely + plan.whole.weight_n.likely, 1e-6);

  /* Ends above the toe: said, not guessed. */
  g_assert_true (set (story, LB_SETTING_GROUND,
                      "to (ft),soil,strength (psf),in water (pcf)\n19,clay,400,38\n", NULL));
  plan = plan_of (story);
  g_assert_true (isnan (plan.figures[LB_FIGURE_WHOLE_PULL].range.likely));
  g_assert_cmpfloat_with_epsilon (plan.whole.known_m, 19 * FOOT, 1e-9);
  g_assert_true (set (story, LB_SETTING_GROUND, "", NULL));
  plan = plan_of (story);
  g_assert_false (plan.may_come_whole);
}

static void
test_soils (void)
{
  g_autoptr (GError) error = NULL;
  LbGround ground;

  g_assert_true (lb_ground_from_text ("To [m],Soil,Strength kPa,In Water kN/m3\n"
                                      "2,Clay,20,6\n"
                                      "3.5,medium dense sand-silt,,9\n"
                                      "9,friction,35,9.80665\n",
                                      &ground, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (ground.n_layers, ==, 3);
  g_assert_cmpfloat (ground.layers[1].from_m, ==, 2);
  g_assert_cmpint (ground.layers[1].soil, ==, LB_SOIL_SAND);
  g_assert_cmpint (ground.layers[1].sand, ==, LB_SAND_SILT_MEDIUM);
  g_assert_cmpint (ground.layers[2].soil, ==, LB_SOIL_OWN);
  g_assert_cmpfloat_with_epsilon (ground.layers[2].strength_pa, 35e3, 1e-9);
  g_assert_cmpfloat_with_epsilon (ground.layers[2].buoyant_kg_per_m3, 1000, 1e-9);

  /* Every word of the list is one that is read. */
  for (guint i = 0; i < LB_N_SOIL_WORDS; i++) {
    const char *word = lb_soil_word (i);
    const gboolean is_sand = i > 0 && i <= LB_N_SANDS;
    g_autofree char *text = g_strdup_printf ("to m,soil,strength kPa,in water kg/m3\n2,%s,%s,900\n",
                                             word, is_sand ? "" : "20");

    g_assert_true (lb_ground_from_text (text, &ground, NULL));
  }
}

/* The job's own causes stand in the place of those built in, and go again. */
static void
expect_causes (Story *story, const char *joined)
{
  g_autoptr (LbLedger) ledger = fixture_read (story->book);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_auto (GStrv) causes = lb_delay_causes (fold);
  g_autofree char *list = g_strjoinv (";", causes);

  g_assert_cmpstr (list, ==, joined);
}

static void
test_delay_causes (Story *story, gconstpointer data)
{
  static const char *const wrong[][2] = {
    { "cause\n", "0 lines" },
    { "reason\nice\n", "first line" },
    { "cause\nice\n\nIce\n", "Line 4, column 1 (cause): “Ice” stands in the list already" },
    { "cause\nice,10\n", "2 cells" },
  };
  g_autofree char *built_in = g_strjoinv (";", (char **) lb_shift_words (LB_WORDS_DELAY));

  expect_causes (story, built_in);
  g_assert_true (set (story, LB_SETTING_DELAY_CAUSES, "cause\nice\n crane away \n", NULL));
  expect_causes (story, "ice;crane away");
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++) {
    g_autoptr (GError) error = NULL;

    g_assert_false (set (story, LB_SETTING_DELAY_CAUSES, wrong[i][0], &error));
    g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
    g_assert_nonnull (strstr (error->message, wrong[i][1]));
  }
  expect_causes (story, "ice;crane away");
  g_assert_true (set (story, LB_SETTING_DELAY_CAUSES, "", NULL));
  expect_causes (story, built_in);
}

typedef struct
{
  const char *name, *text, *said;
} Refusal;

#define HEAD "to ft,soil,strength psf,in water pcf\n"

static const Refusal refusals[] = {
  { "heading-alone", HEAD, "0 lines" },
  { "no-heading", "20,clay,400,38\n", "first line" },
  { "no-unit", "to,soil,strength psf,in water pcf\n20,clay,400,38\n", "first line" },
  { "unit", "to ft,soil,strength psi,in water pcf\n20,clay,400,38\n", "first line" },
  { "soil", HEAD "20,loam,400,38\n", "Line 2, column 2 (soil): “loam”" },
  { "strength", HEAD "20,clay,,38\n", "Line 2, column 3" },
  { "sand-with-strength", HEAD "20,dense sand,400,38\n", "Line 2, column 3" },
  { "depth", HEAD "twenty,clay,400,38\n", "“twenty”" },
  { "depth-zero", HEAD "0,clay,400,38\n", "Line 2: The layer does not end below" },
  { "depths-crossed", HEAD "20,clay,400,38\n10,clay,400,38\n", "Line 3: The layer does not end" },
  { "too-strong", HEAD "20,clay,4000000,38\n", "no strength" },
  { "no-weight", HEAD "20,clay,400,0\n", "no weight in water" },
  { "short-row", HEAD "20,clay,400\n", "Line 2 has 3 cells" },
};

static void
test_refusal (gconstpointer data)
{
  const Refusal *refusal = data;
  g_autoptr (GError) error = NULL;
  LbGround ground = { .n_layers = 7 };

  g_assert_false (lb_ground_from_text (refusal->text, &ground, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, refusal->said));
  g_assert_cmpuint (ground.n_layers, ==, 7);
}

static void
test_most_layers (void)
{
  g_autoptr (GString) text = g_string_new (HEAD);
  LbGround ground;

  for (guint i = 1; i <= LB_SOIL_LAYERS_MAX; i++)
    g_string_append_printf (text, "%u,clay,400,38\n", i);
  g_assert_true (lb_ground_from_text (text->str, &ground, NULL));
  g_string_append (text, "99,clay,400,38\n");
  g_assert_false (lb_ground_from_text (text->str, &ground, NULL));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name, function) \
  g_test_add ("/setting-table/" name, Story, NULL, story_begin, function, story_end)
  ADD ("chart", test_chart);
  ADD ("ground", test_ground);
  ADD ("delay-causes", test_delay_causes);
  g_test_add_func ("/setting-table/soils", test_soils);
  g_test_add_func ("/setting-table/most-layers", test_most_layers);
  for (gsize i = 0; i < G_N_ELEMENTS (refusals); i++) {
    g_autofree char *path = g_strconcat ("/setting-table/refuse/", refusals[i].name, NULL);

    g_test_add_data_func (path, &refusals[i], test_refusal);
  }

  return g_test_run ();
}
