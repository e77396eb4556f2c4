/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cautions of a plan in words: the right figures in them, no hole, and no more than the card has
 * room for. */
#include "chance-cut.h"
#include "draw/plan-words.h"
#include "sample-job.h"
#include "trade/plan-cautions.h"

#include <math.h>
#include <string.h>

#define INCH 0.0254

/* Of a column of the card, in points, at the size of its words. */
#define COLUMN_PT 255
#define WORDS_PT  8.5
#define MOST_ROWS 4.1

/* What the pile's plan says under @key; to be freed, NULL when nothing. */
static char *
said (const LbPile *pile,
      guint n_unplaced,
      const LbAssumptions *assumptions,
      const LbCautionRow *crew,
      const char *key)
{
  LbCutBasis basis = lb_cut_basis (assumptions);
  LbCutPlan plan;

  basis.crew_rows = crew;
  basis.n_crew_rows = crew != NULL ? 1 : 0;
  lb_cut_plan_reckon (pile, 0, 0, n_unplaced, &basis, &plan);
  for (gsize i = 0; i < plan.n_cautions; i++)
    if (g_str_equal (plan.cautions[i]->key, key))
      return lb_caution_text (&LB_VOICE_PLAIN, pile, assumptions, &plan, i);
  return NULL;
}

static void
assert_says (const LbPile *pile,
             const LbAssumptions *assumptions,
             const char *key,
             const char *part)
{
  g_autofree char *text = said (pile, 0, assumptions, NULL, key);
  if (text == NULL || strstr (text, part) == NULL)
    g_error ("%s: “%s” does not say “%s”", key, text, part);
}

static void
test_figures_in_words (void)
{
  LbPile pile = sample_known_pile ();
  LbAssumptions assumptions;
  lb_assumptions_init (&assumptions);

  assert_says (&pile, &assumptions, "slag-side",
               "Umbilical and leads to the north: slag falls south, under the lean.");
  assert_says (&pile, &assumptions, "under-lean", "the south side");
  assert_says (&pile, &assumptions, "rig-now", "before the next bar");
  assert_says (&pile, &assumptions, "submerged-lift", " lb at the hook");
  /* 10.37 × 400 ft × 150 A / 105 600 circular mils. */
  assert_says (&pile, &assumptions, "leads-assumed",
               "the 400 ft taken for granted would lose 5.9 V, more than the 4 V they may");
  assumptions.is_own[LB_ASSUME_LEAD_LENGTH] = TRUE;
  assert_says (&pile, &assumptions, "lead-drop", "lose 5.9 V, more than the 4 V they may");

  /* 42.26 ft of 1.4728 sq ft at 160 lb/cu ft and 400 lb of rigging, the heavy end: 10359 lb. */
  assumptions.value[LB_ASSUME_CRANE_CAPACITY] = 5000;
  assert_says (&pile, &assumptions, "capacity-near", "Up to 10359 lb is 94%");
  assumptions.value[LB_ASSUME_CRANE_CAPACITY] = 4600;
  assert_says (&pile, &assumptions, "capacity-over", "more than the crane’s 10141 lb");
  assumptions.value[LB_ASSUME_SLING_RATING] = 2600;
  assert_says (&pile, &assumptions, "sling-over",
               "up to 5981 lb a leg is more than the sling’s 5732 lb");
  assumptions.value[LB_ASSUME_TRIM] = 5.5 * G_PI / 180;
  assert_says (&pile, &assumptions, "list-over", "list or trim of 5.5° is over the limit of 5°");
  assumptions.value[LB_ASSUME_BED] = LB_ASSUME_BED_MUD;
  assert_says (&pile, &assumptions, "mud", "mud may add 2988 lb");

  /* Where only a count is known nothing can be said of a bar, but atan (1/4) = 14.04°. */
  g_autofree char *lean = said (&pile, 1, &assumptions, NULL, "rig-first");
  g_assert_nonnull (strstr (lean, "Leans 14° to the south"));

  /* 18 min at the pile, 10 of each dive spent on the way: two of 20 min. */
  assumptions.value[LB_ASSUME_DIVE_LIMIT] = 20 * 60;
  assert_says (&pile, &assumptions, "several-dives",
               "Dives to plan: 2. 18 min at the pile, no dive over 20 min.");
  assumptions.value[LB_ASSUME_DIVE_LIMIT] = 40 * 60;
  assert_says (&pile, &assumptions, "spare-dives",
               "no dive over 40 min. Dives to have in hand: 2.");
  assumptions.value[LB_ASSUME_DIVE_LIMIT] = 10 * 60;
  assert_says (&pile, &assumptions, "past-limit", "18 min at the pile, and a dive of 10 min");
  assumptions.value[LB_ASSUME_CURRENT] = 1.5 * 1852 / 3600;
  assert_says (&pile, &assumptions, "current-over", "1.5 kn is over this job’s limit of 1 kn");

  pile.outline = (LbOutline){ .shape = LB_SHAPE_ROUND, .width_m = 54 * INCH, .void_m = 44 * INCH };
  assert_says (&pile, &assumptions, "void-gas", "Vent the 44 in void");
}

/* The bar in the words is the one of the plan, by its number on the section. */
static void
test_bar_in_words (void)
{
  LbPile pile = sample_known_pile ();
  LbAssumptions assumptions;
  LbCutPlan plan;
  lb_assumptions_init (&assumptions);
  pile.batter = 0;
  assumptions.value[LB_ASSUME_CURRENT] = 0;

  const LbCutBasis basis = lb_cut_basis (&assumptions);
  lb_cut_plan_reckon (&pile, 0, 0, 0, &basis, &plan);
  g_autofree char *bar = g_strdup_printf ("Hook tension on before bar %u: ",
                                          plan.order[plan.hold.rig_before - 1] + 1u);
  assert_says (&pile, &assumptions, "rig-before", bar);
}

static void
test_crew_row (void)
{
  const LbCautionRow crew = { "our-lean", LB_SEVERITY_NOTE, LB_WHEN_BATTERED,
                              "Look {lean-side}: {lean}.", "our rigger" };
  const LbPile pile = sample_known_pile ();
  LbAssumptions assumptions;
  lb_assumptions_init (&assumptions);
  g_autofree char *text = said (&pile, 0, &assumptions, &crew, "our-lean");
  g_assert_cmpstr (text, ==, "Look south: 14°.");
}

static void
assert_fits (cairo_t *cr, const LbVoice *voice, const char *text)
{
  double width, line_h, height;
  lb_text_measure (cr, voice, "0", WORDS_PT, TRUE, COLUMN_PT, &width, &line_h);
  lb_text_measure (cr, voice, text, WORDS_PT, TRUE, COLUMN_PT, &width, &height);
  g_test_message ("%s", text);
  g_assert_cmpfloat (height, <=, MOST_ROWS * line_h);
}

/* Whatever the pile: all blanks are filled with figures, and the card has room for the words. */
static void
test_any_pile (void)
{
  cairo_surface_t *const surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *const cr = cairo_create (surface);
  g_autoptr (GRand) rand = g_rand_new_with_seed (32);
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint trial = 0; trial < 60; trial++) {
    LbChanceCut cut;
    LbCutPlan plan;
    LbVoice voice = LB_VOICE_PLAIN;
    lb_chance_cut (&cut, rand);
    voice.units = trial % 2 == 0 ? LB_UNITS_US : LB_UNITS_METRIC;
    const LbCutBasis basis = lb_cut_basis (&cut.assumptions);
    lb_cut_plan_reckon (&cut.pile, cut.burned, 0, cut.n_unplaced, &basis, &plan);
    for (gsize i = 0; i < plan.n_cautions; i++) {
      g_autofree char *text = lb_caution_text (&voice, &cut.pile, &cut.assumptions, &plan, i);
      assert_fits (cr, &voice, text);
      g_assert_null (strpbrk (text, "{}"));
      g_assert_null (strstr (text, "–"));
      g_assert_true (g_str_has_suffix (text, "."));
      g_hash_table_add (seen, (gpointer) plan.cautions[i]->key);
    }
  }
  /* The trials reached all but a few of what a job can raise. */
  g_assert_cmpuint (g_hash_table_size (seen), >, 35);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* The rows too that no job raises yet. */
static void
test_every_row_fits (void)
{
  cairo_surface_t *const surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *const cr = cairo_create (surface);
  const char *values[LB_N_CAUTION_BLANKS];
  gsize n_rows;
  const LbCautionRow *rows = lb_caution_rows (&n_rows);

  for (guint blank = 0; blank < LB_N_CAUTION_BLANKS; blank++)
    values[blank] = "123,456 lb";
  for (gsize i = 0; i < n_rows; i++) {
    g_autofree char *text = lb_caution_words_fill (rows[i].words, values);
    assert_fits (cr, &LB_VOICE_PLAIN, text);
  }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/caution-words/figures", test_figures_in_words);
  g_test_add_func ("/draw/caution-words/bar", test_bar_in_words);
  g_test_add_func ("/draw/caution-words/crew-row", test_crew_row);
  g_test_add_func ("/draw/caution-words/any-pile", test_any_pile);
  g_test_add_func ("/draw/caution-words/every-row-fits", test_every_row_fits);
  return g_test_run ();
}
