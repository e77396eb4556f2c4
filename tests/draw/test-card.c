/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cut card on paper: all that must be said can be read out of the PDF, in letters that can be
 * read, nothing is drawn off the sheet, and it is all grey. Worst cases on purpose: sixty bars, a mark of forty letters. */
#include "draw/plan-words.h"
#include "draw/voice-text.h"
#include "page-reader.h"
#include "sample-job.h"
#include "trade/cut-steps.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#define INCH 0.0254

typedef struct
{
  LbVoice voice;
  const LbFold *fold;
  guint pile;
} Sheet;

static void
draw_card (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  const Sheet *const sheet = data;
  lb_card_draw (cr, &sheet->voice, sheet->fold, lb_fold_basis (sheet->fold), sheet->pile, width,
                height);
}

/* In the three boxes. */
static const LbFigureId ON_CARD[] = {
  LB_FIGURE_REGULATOR, LB_FIGURE_HOSE_LOSS, LB_FIGURE_OXYGEN,      LB_FIGURE_CYLINDERS,
  LB_FIGURE_LEAD_DROP, LB_FIGURE_CUT_DEPTH, LB_FIGURE_PNEUMO,      LB_FIGURE_NO_STOP,
  LB_FIGURE_BURN,      LB_FIGURE_DIVES,     LB_FIGURE_TRUE_LENGTH, LB_FIGURE_MASS_IN_WATER,
  LB_FIGURE_HOOK_LOAD, LB_FIGURE_SLING,
};

/* The bars in their order with the minutes run up, the hook right before its bar, the dives. */
static void
assert_card_has_steps (const char *squeezed, const Sheet *sheet, const LbCutPlan *plan)
{
  const LbPile *const pile = &sheet->fold->piles[sheet->pile];
  LbCutSteps steps;
  const gboolean has_steps = lb_cut_steps_reckon (pile, lb_fold_basis (sheet->fold), plan, &steps);
  g_autoptr (GString) table = g_string_new (NULL);
  const gboolean is_narrow = steps.n_steps >= 29;
  const gboolean is_wide = steps.n_steps + steps.n_dives < 12;

  g_assert_cmpuint (page_count (squeezed, "HOOK TENSION ON"), ==,
                    has_steps && plan->hold_missing == NULL && plan->hold.rig_before > 0);
  if (!has_steps) {
    g_assert_false (page_has (squeezed, "Each bar:"));
    return;
  }
  for (gsize i = 0; i < steps.n_steps; i++) {
    const LbCutStep *const step = &steps.steps[i];
    g_autofree char *place = lb_ordinal_text ((guint) i + 1);
    g_autofree char *takes = lb_voice_number (&sheet->voice, step->takes_s / 60, 1);
    g_autofree char *total = lb_voice_number (&sheet->voice, step->total_s / 60, 0);
    g_string_assign (table, "");
    if (step->needs_hook)
      g_string_append (table, "HOOK TENSION ON");
    g_string_append_printf (table, "%s %u", is_narrow ? "" : place, step->bar + 1u);
    if (is_wide)
      g_string_append (table, takes);
    g_string_append (table, total);
    if (step->changes_cylinder)
      g_string_append_printf (table, is_narrow ? "%u" : "cyl. %u", step->cylinder);
    page_assert_has (squeezed, table->str);
  }
  g_assert_true (page_has (squeezed, "Dive 2") == (steps.n_dives > 1));
}

static void
assert_card_says_all (const char *squeezed, const Sheet *sheet)
{
  const LbFold *const fold = sheet->fold;
  const LbPile *const pile = &fold->piles[sheet->pile];
  const LbPileState *const state = &fold->states[sheet->pile];
  LbCutPlan plan;
  lb_cut_plan_reckon (pile, state->burned, state->gone, state->n_unplaced, lb_fold_basis (fold),
                      &plan);

  page_assert_has (squeezed, pile->mark);
  page_assert_has (squeezed, fold->name);
  page_assert_has (squeezed, "CUT CARD");
  page_assert_has (squeezed, "The diving supervisor’s word stands above this card.");
  g_autofree char *pile_text = lb_pile_text (&sheet->voice, pile);
  g_autofree char *state_text = lb_pile_state_text (pile, state);
  page_assert_has (squeezed, pile_text);
  page_assert_has (squeezed, state_text);
  for (gsize i = 0; i < G_N_ELEMENTS (ON_CARD); i++) {
    const LbFigureId id = ON_CARD[i];
    g_autofree char *value = lb_figure_text (&sheet->voice, &plan, id);
    g_autofree char *range = lb_figure_range_text (&sheet->voice, &plan, id);
    g_autofree char *why = lb_figure_reason_text (&sheet->voice, pile, &fold->assumptions, &plan,
                                                  id);
    page_assert_has (squeezed, lb_figure_title (id));
    page_assert_has (squeezed, value);
    if (range != NULL)
      page_assert_has (squeezed, range);
    if (isnan (plan.figures[id].range.likely) || id == LB_FIGURE_REGULATOR)
      page_assert_has (squeezed, why);
  }
  page_assert_has (squeezed, "On the hook while burning");
  g_assert_cmpuint (plan.n_cautions, >, 0);
  for (gsize i = 0; i < plan.n_cautions; i++) {
    g_autofree char *caution = lb_caution_text (&sheet->voice, pile, &fold->assumptions, &plan, i);
    page_assert_has (squeezed, caution);
  }
  page_assert_has (squeezed, "Diving supervisor");
  page_assert_has (squeezed, "Rigger");
  page_assert_has (squeezed, "a licensed engineer what the bars may bear");
  assert_card_has_steps (squeezed, sheet, &plan);
}

/* Four piles that are hard on the card, after the sample's own. */
static LbLedger *
make_hard_piles (void)
{
  LbLedger *const ledger = sample_job_new (3);
  const guint bare = sample_job_add_pile (ledger, "X1");
  const guint full = sample_job_add_pile (ledger, "NORTHERNMOSTDOLPHINPILEWITHALONGLONGNAME");
  const guint strand = sample_job_add_pile (ledger, "D 12");
  const guint deep = sample_job_add_pile (ledger, "D 13");
  LbPile *const piles = (LbPile *) (gpointer) ledger->piles->data;
  g_assert_cmpstr (piles[bare].mark, ==, "X1");

  piles[full] = piles[0];
  piles[full].mark = "NORTHERNMOSTDOLPHINPILEWITHALONGLONGNAME";
  piles[full].outline =
    (LbOutline){ .shape = LB_SHAPE_SQUARE, .width_m = 54 * INCH, .void_m = 30 * INCH };
  piles[full].bar = lb_bar_find ("#18");
  piles[full].n_bars = LB_BARS_MAX;
  piles[full].note = "Cracked under the cap, cover spalled on the north face, cable hanging from "
                     "the fender: look at it from the barge before anybody goes near. Cracked "
                     "again below the water line.";
  piles[strand] = piles[full];
  piles[strand].mark = "D 12";
  piles[strand].bar = lb_bar_find ("1/2 in strand 270");
  piles[deep] = piles[full];
  piles[deep].mark = "D 13";
  piles[deep].cut_m = -80;
  piles[deep].mudline_m = -81;
  return ledger;
}

static void
test_card (void)
{
  static const LbUnits UNITS[] = { LB_UNITS_US, LB_UNITS_METRIC };
  g_autoptr (LbLedger) ledger = make_hard_piles ();
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  /* The sample's first, one with three bars gone, and the four hard ones. */
  const guint piles[] = {
    0, 6, fold->n_piles - 4, fold->n_piles - 3, fold->n_piles - 2, fold->n_piles - 1
  };
  g_assert_cmpuint (fold->states[6].n_left, ==, 5);
  for (gsize i = 0; i < G_N_ELEMENTS (piles); i++) {
    for (LbPaper paper = LB_PAPER_LETTER; paper <= LB_PAPER_A4; paper++) {
      Sheet sheet = {
        .voice = LB_VOICE_PLAIN,
        .fold = fold,
        .pile = piles[i],
      };
      sheet.voice.units = UNITS[paper];
      page_assert_on_sheet (draw_card, 0, paper, &sheet);
      page_assert_grey (draw_card, 0, paper, &sheet);
      g_autofree char *squeezed = page_read (draw_card, paper, 1, &sheet);
      if (squeezed != NULL)
        assert_card_says_all (squeezed, &sheet);
    }
  }
}

/* A word as it stands on the page. */
typedef struct
{
  double left, top, right, bottom;
  char *text;
} Word;

static void
clear_word (gpointer word)
{
  g_free (((Word *) word)->text);
}

static double
read_side (const char *at, const char *name)
{
  const char *const side = strstr (at, name);
  g_assert_nonnull (side);
  return g_ascii_strtod (side + strlen (name), NULL);
}

static GArray *
read_words (const char *boxes)
{
  GArray *const words = g_array_new (FALSE, FALSE, sizeof (Word));
  g_array_set_clear_func (words, clear_word);
  for (const char *at = boxes; (at = strstr (at, "<word ")) != NULL; at++) {
    const char *const text = strchr (at, '>') + 1;
    const Word word = {
      .left = read_side (at, "xMin=\""),
      .top = read_side (at, "yMin=\""),
      .right = read_side (at, "xMax=\""),
      .bottom = read_side (at, "yMax=\""),
      .text = g_strndup (text, strcspn (text, "<")),
    };
    g_array_append_val (words, word);
  }
  return words;
}

/* The least height of the words that pass @is_wanted. */
static double
least_height (GArray *words, gboolean (*is_wanted) (const Word *word))
{
  double least = INFINITY;
  for (guint i = 0; i < words->len; i++) {
    const Word *const word = &g_array_index (words, Word, i);
    if (is_wanted == NULL || is_wanted (word))
      least = MIN (least, word->bottom - word->top);
  }
  return least;
}

/* In the footer, at 8 pt whatever the rest is. */
static gboolean
is_small_print (const Word *word)
{
  return g_str_equal (word->text, "estimates.");
}

/* Nothing lies over anything else: less than half a line, for the boxes have room for accents. */
static void
assert_apart (GArray *words)
{
  for (guint i = 0; i < words->len; i++) {
    const Word *const a = &g_array_index (words, Word, i);
    for (guint k = i + 1; k < words->len; k++) {
      const Word *const b = &g_array_index (words, Word, k);
      const double height = MIN (a->bottom - a->top, b->bottom - b->top);
      if (MIN (a->right, b->right) - MAX (a->left, b->left) > 1 &&
          MIN (a->bottom, b->bottom) - MAX (a->top, b->top) > height / 2)
        g_error ("“%s” and “%s” lie over each other", a->text, b->text);
    }
  }
}

/* Bars and minutes of the order: bold numbers within the table, the only ones that follow a box. */
static double
least_step_height (GArray *words, const LbCutSteps *steps)
{
  double least = INFINITY;
  for (gsize i = 0; i < steps->n_steps; i++) {
    g_autofree char *bar = g_strdup_printf ("%u", steps->steps[i].bar + 1u);
    double tallest = 0;
    for (guint k = 0; k < words->len; k++) {
      const Word *const word = &g_array_index (words, Word, k);
      if (g_str_equal (word->text, bar))
        tallest = MAX (tallest, word->bottom - word->top);
    }
    least = MIN (least, tallest);
  }
  return least;
}

/* Nothing on a card is under 8 pt, the size of the footer's sentences, nor over another word; the order
 * is at 11 pt at least. */
static void
assert_card_is_readable (Sheet *sheet, LbPaper paper)
{
  const LbPile *const pile = &sheet->fold->piles[sheet->pile];
  const LbPileState *const state = &sheet->fold->states[sheet->pile];
  const LbCutBasis *const basis = lb_fold_basis (sheet->fold);
  g_autofree char *boxes = page_to_text (draw_card, paper, 1, sheet, "-bbox");
  LbCutPlan plan;
  LbCutSteps steps;
  if (boxes == NULL)
    return;
  g_autoptr (GArray) words = read_words (boxes);
  const double small_print = least_height (words, is_small_print);
  g_test_message ("%s on paper %d", pile->mark, (int) paper);
  g_assert_cmpfloat (small_print, <, 20);
  g_assert_cmpfloat (least_height (words, NULL), >=, 0.97 * small_print);
  assert_apart (words);
  lb_cut_plan_reckon (pile, state->burned, state->gone, state->n_unplaced, basis, &plan);
  if (lb_cut_steps_reckon (pile, basis, &plan, &steps))
    g_assert_cmpfloat (least_step_height (words, &steps), >=, 0.97 * 11 / 8 * small_print);
}

static void
test_card_can_be_read (void)
{
  g_autoptr (LbLedger) ledger = sample_job_new (1);
  const guint first = sample_job_add_pile (ledger, "R 1");
  static const guint N_MADE = 6;
  for (guint i = 1; i < N_MADE; i++)
    sample_job_add_pile (ledger, "R");
  LbPile *const piles = (LbPile *) (gpointer) ledger->piles->data;
  for (guint i = first; i < first + N_MADE; i++) {
    piles[i] = piles[0];
    piles[i].outline = (LbOutline){ .shape = LB_SHAPE_SQUARE, .width_m = 36 * INCH };
  }
  piles[first].n_bars = 24;
  piles[first].batter = 0.125;
  piles[first].bearing_rad = G_PI / 4;
  piles[first + 1].n_bars = 20;
  piles[first + 1].outline.void_m = 18 * INCH;
  piles[first + 1].batter = 0;
  piles[first + 2].n_bars = 16;
  piles[first + 2].bar = lb_bar_find ("1/2 in strand 270");
  lb_pile_init (&piles[first + 3]);
  piles[first + 3].mark = "nothing";
  /* The most bars, every caution that such a pile can raise, three days of dives. */
  piles[first + 4].outline =
    (LbOutline){ .shape = LB_SHAPE_SQUARE, .width_m = 54 * INCH, .void_m = 30 * INCH };
  piles[first + 4].bar = lb_bar_find ("#18");
  piles[first + 4].n_bars = LB_BARS_MAX;
  piles[first + 4].batter = 0.25;
  piles[first + 4].bearing_rad = 1.25 * G_PI;
  piles[first + 5] = piles[first + 4];
  piles[first + 5].n_bars = 36;
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  const guint shown[] = { 0, first, first + 1, first + 2, first + 3, first + 4, first + 5 };
  for (gsize i = 0; i < G_N_ELEMENTS (shown); i++) {
    for (LbPaper paper = LB_PAPER_LETTER; paper <= LB_PAPER_A4; paper++) {
      Sheet sheet = {
        .voice = LB_VOICE_PLAIN,
        .fold = fold,
        .pile = shown[i],
      };
      sheet.voice.units = paper == LB_PAPER_A4 ? LB_UNITS_METRIC : LB_UNITS_US;
      assert_card_is_readable (&sheet, paper);
    }
  }
}

/* Large text on the screen does not change paper. */
static void
test_card_keeps_its_size (void)
{
  g_autoptr (LbLedger) ledger = sample_job_new (1);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  guchar *bytes[2];
  gsize n = 0;
  for (gsize i = 0; i < 2; i++) {
    cairo_surface_t *const image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 612, 792);
    cairo_t *const cr = cairo_create (image);
    LbVoice voice = LB_VOICE_PLAIN;
    voice.scale = 1.0 + (double) i;
    lb_card_draw (cr, &voice, fold, lb_fold_basis (fold), 2, 612, 792);
    cairo_surface_flush (image);
    n = (gsize) cairo_image_surface_get_stride (image) * 792;
    bytes[i] = g_memdup2 (cairo_image_surface_get_data (image), n);
    cairo_destroy (cr);
    cairo_surface_destroy (image);
  }
  g_assert_cmpmem (bytes[0], n, bytes[1], n);
  g_free (bytes[0]);
  g_free (bytes[1]);
}

int
main (int argc, char *argv[])
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/card/says-all", test_card);
  g_test_add_func ("/draw/card/can-be-read", test_card_can_be_read);
  g_test_add_func ("/draw/card/size", test_card_keeps_its_size);
  return g_test_run ();
}
