/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cut card and the daily report on paper: all that must be said can be read out of the PDF,
 * nothing is drawn off the sheet, and it is all grey. Worst cases on purpose: sixty bars, a mark
 * of forty letters, a day on which every pile was worked. */
#include "book/day-accounts.h"
#include "draw/page.h"
#include "draw/picture.h"
#include "draw/plan-words.h"
#include "draw/voice-text.h"
#include "sample-job.h"
#include "trade/cut-steps.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#define INCH 0.0254
#define FOOT 0.3048

typedef struct
{
  LbVoice voice;
  const LbLedger *ledger;
  const LbFold *fold;
  guint pile;
  guint32 day;
} Sheet;

static void
draw_card (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  const Sheet *const sheet = data;
  lb_card_draw (cr, &sheet->voice, sheet->fold, lb_fold_basis (sheet->fold), sheet->pile, width,
                height);
}

static void
draw_report (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  const Sheet *const sheet = data;
  g_autoptr (LbDayAccount) account = lb_day_account_new (sheet->ledger, sheet->fold, sheet->day);
  lb_day_report_draw (cr, &sheet->voice, account, page, width, height);
}

/* Text without any white space, since lines break where they like. */
static char *
squeeze (const char *text)
{
  GString *const squeezed = g_string_new (NULL);
  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at)) {
    const gunichar c = g_utf8_get_char (at);
    if (!g_unichar_isspace (c) && c != 0x0c)
      g_string_append_unichar (squeezed, c);
  }
  return g_string_free (squeezed, FALSE);
}

/* What pdftotext says of the pages; NULL without it. */
static char *
run_pdftotext (LbPictureFunc func, LbPaper paper, gsize n_pages, Sheet *sheet, const char *option)
{
  g_autofree char *program = g_find_program_in_path ("pdftotext");
  if (program == NULL) {
    g_test_fail_printf ("pdftotext is missing: sh src/set-up test");
    return NULL;
  }
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("lb-pages-XXXXXX", &error);
  g_assert_no_error (error);
  g_autofree char *path = g_build_filename (folder, "page.pdf", NULL);
  double width, height;
  lb_paper_size (paper, &width, &height);
  lb_picture_write (path, width, height, n_pages, "page", func, sheet, &error);
  g_assert_no_error (error);
  char *arguments[] = { program, (char *) option, path, (char *) "-", NULL };
  char *text = NULL;
  int status;
  g_spawn_sync (NULL, arguments, NULL, G_SPAWN_DEFAULT, NULL, NULL, &text, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_true (g_spawn_check_wait_status (status, NULL));
  g_remove (path);
  g_rmdir (folder);
  return text;
}

/* What a reader of the PDF finds, in the order it was written. */
static char *
read_pdf (LbPictureFunc func, LbPaper paper, gsize n_pages, Sheet *sheet)
{
  g_autofree char *text = run_pdftotext (func, paper, n_pages, sheet, "-raw");
  return text != NULL ? squeeze (text) : NULL;
}

static gboolean
has (const char *squeezed, const char *part)
{
  g_autofree char *wanted = squeeze (part);
  return strstr (squeezed, wanted) != NULL;
}

static void
assert_has (const char *squeezed, const char *part)
{
  if (!has (squeezed, part))
    g_error ("the page does not say “%s”", part);
}

static guint
count (const char *squeezed, const char *part)
{
  g_autofree char *wanted = squeeze (part);
  guint n = 0;
  for (const char *at = squeezed; (at = strstr (at, wanted)) != NULL; at += strlen (wanted))
    n++;
  return n;
}

static void
assert_on_sheet (LbPictureFunc func, gsize page, LbPaper paper, Sheet *sheet)
{
  cairo_surface_t *const ink = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *const cr = cairo_create (ink);
  double paper_w, paper_h, x, y, width, height;
  lb_paper_size (paper, &paper_w, &paper_h);
  func (cr, page, paper_w, paper_h, sheet);
  cairo_recording_surface_ink_extents (ink, &x, &y, &width, &height);
  g_assert_cmpfloat (x, >=, -0.01);
  g_assert_cmpfloat (y, >=, -0.01);
  /* Extents are whole units: one over is the paper's own fraction. */
  g_assert_cmpfloat (x + width, <=, ceil (paper_w));
  g_assert_cmpfloat (y + height, <=, ceil (paper_h));
  cairo_destroy (cr);
  cairo_surface_destroy (ink);
}

/* Grey all over, and the margin of the sheet left white. */
static void
assert_grey_in_margins (LbPictureFunc func, gsize page, LbPaper paper, Sheet *sheet)
{
  double paper_w, paper_h;
  lb_paper_size (paper, &paper_w, &paper_h);
  const int width = (int) ceil (paper_w);
  const int height = (int) ceil (paper_h);
  const int margin = 23; /* but for half of a line on the very margin */
  cairo_surface_t *const image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *const cr = cairo_create (image);
  func (cr, page, width, height, sheet);
  cairo_surface_flush (image);
  const guchar *const data = cairo_image_surface_get_data (image);
  const int stride = cairo_image_surface_get_stride (image);
  guint n_dark = 0;
  for (int y = 0; y < height; y++) {
    for (int x = 0; x < width; x++) {
      const guint32 pixel = *(const guint32 *) (gconstpointer) (data + y * stride + 4 * x) &
                            0xffffff;
      g_assert_cmpuint (pixel & 0xff, ==, pixel >> 8 & 0xff);
      g_assert_cmpuint (pixel & 0xff, ==, pixel >> 16);
      if (x < margin || y < margin || x >= width - margin || y >= height - margin)
        g_assert_cmphex (pixel, ==, 0xffffff);
      n_dark += pixel < 0x808080;
    }
  }
  g_assert_cmpuint (n_dark, >, 1000);
  cairo_destroy (cr);
  cairo_surface_destroy (image);
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

  g_assert_cmpuint (count (squeezed, "HOOK TENSION ON"), ==,
                    has_steps && plan->hold_missing == NULL && plan->hold.rig_before > 0);
  if (!has_steps) {
    g_assert_false (has (squeezed, "Each bar:"));
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
    assert_has (squeezed, table->str);
  }
  g_assert_true (has (squeezed, "Dive 2") == (steps.n_dives > 1));
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

  assert_has (squeezed, pile->mark);
  assert_has (squeezed, fold->name);
  assert_has (squeezed, "CUT CARD");
  assert_has (squeezed, "The diving supervisor’s word stands above this card.");
  g_autofree char *pile_text = lb_pile_text (&sheet->voice, pile);
  g_autofree char *state_text = lb_pile_state_text (pile, state);
  assert_has (squeezed, pile_text);
  assert_has (squeezed, state_text);
  for (gsize i = 0; i < G_N_ELEMENTS (ON_CARD); i++) {
    const LbFigureId id = ON_CARD[i];
    g_autofree char *value = lb_figure_text (&sheet->voice, &plan, id);
    g_autofree char *range = lb_figure_range_text (&sheet->voice, &plan, id);
    g_autofree char *why = lb_figure_reason_text (&sheet->voice, pile, &fold->assumptions, &plan,
                                                  id);
    assert_has (squeezed, lb_figure_title (id));
    assert_has (squeezed, value);
    if (range != NULL)
      assert_has (squeezed, range);
    if (isnan (plan.figures[id].range.likely) || id == LB_FIGURE_REGULATOR)
      assert_has (squeezed, why);
  }
  assert_has (squeezed, "On the hook while burning");
  g_assert_cmpuint (plan.n_cautions, >, 0);
  for (gsize i = 0; i < plan.n_cautions; i++) {
    g_autofree char *caution = lb_caution_text (&sheet->voice, pile, &fold->assumptions, &plan, i);
    assert_has (squeezed, caution);
  }
  assert_has (squeezed, "Diving supervisor");
  assert_has (squeezed, "Rigger");
  assert_has (squeezed, "a licensed engineer what the bars may bear");
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
        .ledger = ledger,
        .fold = fold,
        .pile = piles[i],
      };
      sheet.voice.units = UNITS[paper];
      assert_on_sheet (draw_card, 0, paper, &sheet);
      assert_grey_in_margins (draw_card, 0, paper, &sheet);
      g_autofree char *squeezed = read_pdf (draw_card, paper, 1, &sheet);
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
  g_autofree char *boxes = run_pdftotext (draw_card, paper, 1, sheet, "-bbox");
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
        .ledger = ledger,
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

static gsize
n_pages_of (const Sheet *sheet, LbPaper paper)
{
  double width, height;
  lb_paper_size (paper, &width, &height);
  g_autoptr (LbDayAccount) account = lb_day_account_new (sheet->ledger, sheet->fold, sheet->day);
  return lb_day_report_n_pages (&sheet->voice, account, width, height);
}

static void
assert_report_on_sheets (Sheet *sheet)
{
  for (LbPaper paper = LB_PAPER_LETTER; paper <= LB_PAPER_A4; paper++) {
    const gsize n_pages = n_pages_of (sheet, paper);
    for (gsize page = 0; page < n_pages; page++) {
      assert_on_sheet (draw_report, page, paper, sheet);
      assert_grey_in_margins (draw_report, page, paper, sheet);
    }
  }
}

static void
test_report (void)
{
  g_autoptr (LbLedger) ledger = sample_job_new (3);
  const int shift = 2;
  const LbEntry slip = {
    SAMPLE_ENTRY (LB_ENTRY_NOTE, shift),
    .note = "Written into the wrong shift.",
  };
  LbEntry back = { SAMPLE_ENTRY (LB_ENTRY_TAKE_BACK, shift) };
  back.of = sample_job_add (ledger, &slip);
  sample_job_add (ledger, &back);
  const LbEntry broke = {
    .kind = LB_ENTRY_BROKEN,
    .shift = shift,
    .pile = 9,
    .amount = -6,
  };
  sample_job_add (ledger, &broke);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  Sheet sheet = {
    .voice = LB_VOICE_PLAIN,
    .ledger = ledger,
    .fold = fold,
    .day = lb_ledger_shift (ledger, (guint) shift)->day,
  };
  assert_report_on_sheets (&sheet);
  const gsize n_pages = n_pages_of (&sheet, LB_PAPER_LETTER);
  g_assert_cmpuint (n_pages, <=, 2);
  g_autofree char *text = read_pdf (draw_report, LB_PAPER_LETTER, n_pages, &sheet);
  if (text == NULL)
    return;

  assert_has (text, "Sample Wharf");
  assert_has (text, "Thu 16 Jul 2026");
  assert_has (text, "2026-07-16");
  assert_has (text, "Day shift, opened by superintendent");
  /* The third day's two piles are the fifth and sixth: E1, A2. */
  assert_has (text, "E1 cleaned, severed, rigged, pulled 8 (1–8) 9 min");
  assert_has (text, "A2 cleaned, severed, rigged, pulled 8 (1–8) 9 min");
  assert_has (text, "E2 broke: stub left");
  assert_has (text, "Broke: a stub is left with its head at -19.7 ft");
  /* 31 ft: 232 min at 35 ft; 44 ft: 125 min at 45 ft, overrun by ten. */
  assert_has (text, "diver 1 31 ft 07:10 08:32 08:34 82 of 232 min");
  assert_has (text, "diver 2 44 ft 09:05 11:20 11:22 135 min: PAST the limit of 125");
  assert_has (text, "No checks were ticked before the dives of this day.");
  assert_has (text, "current 1 45 min waited for slack");
  assert_has (text, "collet 1 10 min leak at the O-ring, changed");
  assert_has (text, "Wind: 12 kn from the south-west");
  assert_has (text, "Barge moved to the next bent at noon.");
  /* Two a day, three days; sixteen bars a day and three of the next. */
  assert_has (text, "Piles pulled 2 6");
  assert_has (text, "6 of 40 piles are out.");
  assert_has (text, "Diving supervisor");
  assert_has (text, "Not signed: this is a draft.");
  /* The overrun stands among what does not fit together, and nobody has answered it. */
  assert_has (text, "What does not fit together");
  assert_has (text, "Not answered.");
  g_assert_false (has (text, "wrong shift"));
  g_assert_cmpuint (count (text, "None recorded."), ==, 0);
}

/* A dive from two hours up is held against what the first one left, 163 - 85 = 78 min (U.S. Navy
 * Diving Manual, revision 7), and the gaps of each are named. */
static void
test_second_dive (void)
{
  g_autoptr (LbLedger) ledger = sample_job_new (1);
  const LbEntry entries[] = {
    { .kind = LB_ENTRY_CHECK,
      .pile = 0,
      .what = "gloves",
      .amount = 1,
      .start_us = sample_time_us (0, 12, 0) },
    { .kind = LB_ENTRY_CHECK,
      .pile = 0,
      .what = "rig-before",
      .amount = 0,
      .start_us = sample_time_us (0, 12, 0) },
    { .kind = LB_ENTRY_CHECK,
      .pile = 0,
      .what = "of-a-later-table",
      .amount = 0,
      .start_us = sample_time_us (0, 12, 0) },
    { .kind = LB_ENTRY_DIVE,
      .pile = 0,
      .what = "diver 3",
      .amount = 39 * FOOT,
      .start_us = sample_time_us (0, 12, 0),
      .end_us = sample_time_us (0, 13, 40),
      .up_us = sample_time_us (0, 13, 42) },
    { .kind = LB_ENTRY_DIVE,
      .pile = 0,
      .what = "diver 3",
      .amount = 39 * FOOT,
      .start_us = sample_time_us (0, 15, 42),
      .end_us = sample_time_us (0, 16, 42),
      .up_us = sample_time_us (0, 16, 44) },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++)
    sample_job_add (ledger, &entries[i]);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  Sheet sheet = {
    .voice = LB_VOICE_PLAIN,
    .ledger = ledger,
    .fold = fold,
    .day = sample_job_first_day (),
  };
  g_autofree char *text = read_pdf (draw_report, LB_PAPER_LETTER,
                                    n_pages_of (&sheet, LB_PAPER_LETTER), &sheet);
  if (text == NULL)
    return;
  assert_has (text, "100 of 163 min");
  assert_has (text, "60 + 85 of 163 min");
  assert_has (text, "diver 3, 12:00: 1 of 3 checks ticked; not: Hook tension on before bar …; "
                    "of-a-later-table");
  assert_has (text, "diver 3, 15:42: No checks ticked");
  assert_has (text, "diver 1, 07:10: no pile is on record, so no checks");
}

static void
test_empty_report (void)
{
  g_autoptr (LbLedger) ledger = sample_job_new (1);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  Sheet sheet = {
    .voice = LB_VOICE_PLAIN,
    .ledger = ledger,
    .fold = fold,
    .day = sample_job_first_day () + 40,
  };
  assert_report_on_sheets (&sheet);
  g_autofree char *text = read_pdf (draw_report, LB_PAPER_A4, 1, &sheet);
  if (text == NULL)
    return;
  assert_has (text, "No shift on this day.");
  g_assert_cmpuint (count (text, "None recorded."), ==, 6);
}

/* Every pile of the pier on one day, with a note that would fill pages by itself. */
static void
test_long_report (void)
{
  g_autoptr (LbLedger) ledger = sample_job_new (1);
  g_autofree char *long_note = g_strnfill (3000, 'x');
  for (guint i = 0; i < ledger->piles->len; i++) {
    const LbEntry note = {
      .kind = LB_ENTRY_NOTE,
      .pile = (int) i,
      .note = i == 7 ? long_note : "slow: hard growth, switch wet, rods short, current early",
    };
    sample_job_add (ledger, &note);
    const LbEntry dive = {
      .kind = LB_ENTRY_DIVE,
      .pile = (int) i,
      .what = "diver 3",
      .amount = NAN,
    };
    sample_job_add (ledger, &dive);
  }
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  Sheet sheet = {
    .voice = LB_VOICE_PLAIN,
    .ledger = ledger,
    .fold = fold,
    .day = sample_job_first_day (),
  };
  assert_report_on_sheets (&sheet);
  const gsize n_pages = n_pages_of (&sheet, LB_PAPER_LETTER);
  g_assert_cmpuint (n_pages, >=, 3);
  g_autofree char *text = read_pdf (draw_report, LB_PAPER_LETTER, n_pages, &sheet);
  if (text == NULL)
    return;
  for (guint i = 0; i < fold->n_piles; i++)
    assert_has (text, fold->piles[i].mark);
  g_assert_cmpuint (count (text, "slow: hard growth"), ==, fold->n_piles - 1);
  g_assert_cmpuint (count (text, "no limit to compare with"), ==, fold->n_piles);
  g_assert_cmpuint (count (text, "daily production report, continued"), ==, n_pages - 1);
  for (gsize page = 1; page <= n_pages; page++) {
    g_autofree char *number = g_strdup_printf ("Page %zu of %zu", page, n_pages);
    g_assert_cmpuint (count (text, number), ==, 1);
  }
  assert_has (text, "xxx…");
}

static void
test_paper (void)
{
  LbPaper paper = LB_PAPER_LETTER;
  double width, height;
  g_assert_true (lb_paper_from_name ("A4", &paper));
  g_assert_cmpint (paper, ==, LB_PAPER_A4);
  lb_paper_size (paper, &width, &height);
  /* 210 by 297 mm */
  g_assert_cmpfloat_with_epsilon (width / 72 * 25.4, 210, 0.01);
  g_assert_cmpfloat_with_epsilon (height / 72 * 25.4, 297, 0.01);
  g_assert_true (lb_paper_from_name ("letter", &paper));
  lb_paper_size (paper, &width, &height);
  g_assert_cmpfloat (width, ==, 8.5 * 72);
  g_assert_cmpfloat (height, ==, 11.0 * 72);
  g_assert_false (lb_paper_from_name ("foolscap", &paper));
  g_assert_cmpint (paper, ==, LB_PAPER_LETTER);
}

int
main (int argc, char *argv[])
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/pages/paper", test_paper);
  g_test_add_func ("/draw/pages/card", test_card);
  g_test_add_func ("/draw/pages/card-can-be-read", test_card_can_be_read);
  g_test_add_func ("/draw/pages/card-size", test_card_keeps_its_size);
  g_test_add_func ("/draw/pages/report", test_report);
  g_test_add_func ("/draw/pages/second-dive", test_second_dive);
  g_test_add_func ("/draw/pages/empty-report", test_empty_report);
  g_test_add_func ("/draw/pages/long-report", test_long_report);
  return g_test_run ();
}
