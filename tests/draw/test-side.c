/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/picture.h"
#include "draw/side.h"

#include <glib/gstdio.h>
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

/* Which facts of the pile are left out. */
typedef enum {
  LACKS_HEAD = 1 << 0,
  LACKS_MUDLINE = 1 << 1,
  LACKS_CUT = 1 << 2,
  LACKS_WATER = 1 << 3,
  LACKS_WIDTH = 1 << 4,
  LACKS_BARS = 1 << 5,
} Lacks;

#define ALL_LACKS (1u << 6)

typedef struct
{
  LbPile pile;
  LbCutPlan plan;
  LbSide side;
} Case;

static void
case_init (Case *it, guint lacks, LbStep step, double batter)
{
  LbAssumptions assumptions;
  lb_assumptions_init (&assumptions);
  lb_pile_init (&it->pile);
  it->pile.unsaid = 0;
  it->pile.outline = (LbOutline){ LB_SHAPE_OCTAGON, lacks & LACKS_WIDTH ? 0 : 0.4064, 0 };
  it->pile.n_bars = lacks & LACKS_BARS ? 0 : 8;
  it->pile.bar = lb_bar_find ("#8");
  it->pile.batter = batter;
  it->pile.head_m = lacks & LACKS_HEAD ? (double) NAN : 2.5;
  it->pile.mudline_m = lacks & LACKS_MUDLINE ? (double) NAN : -8;
  reckon (&it->pile, step >= LB_STEP_SEVERED ? lb_bar_set_all (8) : 0, 0, &assumptions, &it->plan);
  it->side = (LbSide){ &it->pile, &it->plan, lacks & LACKS_WATER ? (double) NAN : 0.9,
                       lacks & LACKS_CUT ? (double) NAN : -7.5, step };
}

/* The picture in grey, 0 black; to be freed. */
static guchar *
picture_of (const LbSide *side, const LbVoice *voice, int width, int height)
{
  cairo_surface_t *const surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *const cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  lb_side_draw (cr, lb_palette (LB_PALETTE_PRINT), voice, side, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  guchar *const grey = g_new (guchar, width * height);
  const guchar *const data = cairo_image_surface_get_data (surface);
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      grey[y * width + x] = data[y * cairo_image_surface_get_stride (surface) + x * 4 + 1];
  cairo_surface_destroy (surface);
  return grey;
}

static guint
count_ink (const guchar *grey, int width, int left, int right, int top, int bottom)
{
  guint n = 0;
  for (int y = top; y < bottom; y++)
    for (int x = left; x < right; x++)
      n += grey[y * width + x] < 160;
  return n;
}

/* Whatever is not known, there is a picture with something in it. */
static void
test_missing_facts (void)
{
  LbVoice large = LB_VOICE_PLAIN;
  large.scale = 2;
  for (guint lacks = 0; lacks < ALL_LACKS; lacks++) {
    for (int step = 0; step < LB_N_STEPS; step++) {
      Case it;
      case_init (&it, lacks, (LbStep) step, 0.25);
      g_autofree guchar *small = picture_of (&it.side, &LB_VOICE_PLAIN, 190, 240);
      g_autofree guchar *spoken = picture_of (&it.side, &large, 190, 240);
      g_assert_cmpuint (count_ink (small, 190, 0, 190, 0, 240), >, 300);
      g_assert_cmpuint (count_ink (spoken, 190, 0, 190, 0, 240), >, 300);
    }
  }
}

/* What is not known leaves a sentence, and takes its own figures out: the picture changes. */
static void
test_unknown_is_said (void)
{
  static const guint FACTS[] = { LACKS_HEAD, LACKS_MUDLINE, LACKS_CUT, LACKS_WATER };
  Case whole;
  case_init (&whole, 0, LB_STEP_STANDING, 0);
  g_autofree guchar *known = picture_of (&whole.side, &LB_VOICE_PLAIN, 190, 240);
  for (gsize i = 0; i < G_N_ELEMENTS (FACTS); i++) {
    Case it;
    case_init (&it, FACTS[i], LB_STEP_STANDING, 0);
    g_autofree guchar *grey = picture_of (&it.side, &LB_VOICE_PLAIN, 190, 240);
    guint n = 0;
    for (int p = 0; p < 190 * 240; p++)
      n += ABS (grey[p] - known[p]) > 60;
    g_assert_cmpuint (n, >, 100);
  }
}

/* Steps change the picture, and what is pulled is the lightest. */
static void
test_steps (void)
{
  guint ink[LB_N_STEPS];
  for (int step = 0; step < LB_N_STEPS; step++) {
    Case it;
    case_init (&it, 0, (LbStep) step, 0.1);
    g_autofree guchar *grey = picture_of (&it.side, &LB_VOICE_PLAIN, 600, 700);
    ink[step] = count_ink (grey, 600, 0, 600, 0, 700);
    for (int before = 0; before < step; before++)
      g_assert_cmpuint (ink[step], !=, ink[before]);
  }
  for (int step = 0; step < LB_STEP_PULLED; step++)
    g_assert_cmpuint (ink[LB_STEP_PULLED], <, ink[step]);
}

/* The head of a leaning pile stands to the right of its foot, by the batter; a plumb one in the
 * middle. Looked for where the pile alone is: above the water and in the mud. */
static double
dark_middle (const guchar *grey, int width, int top, int bottom)
{
  double sum = 0, n = 0;
  for (int y = top; y < bottom; y++) {
    for (int x = width / 5; x < width * 4 / 5; x++) {
      if (grey[y * width + x] < 180) {
        sum += x;
        n++;
      }
    }
  }
  g_assert_cmpfloat (n, >, 0);
  return sum / n;
}

static void
test_lean (void)
{
  Case plumb, lean;
  case_init (&plumb, LACKS_BARS, LB_STEP_STANDING, 0);
  case_init (&lean, LACKS_BARS, LB_STEP_STANDING, 0.2);
  g_autofree guchar *upright = picture_of (&plumb.side, &LB_VOICE_PLAIN, 600, 700);
  g_autofree guchar *leaning = picture_of (&lean.side, &LB_VOICE_PLAIN, 600, 700);
  g_assert_cmpfloat_with_epsilon (dark_middle (upright, 600, 300, 420), 300, 3);
  /* At scale: over the same height the axis moves by the batter. */
  const double moved = dark_middle (leaning, 600, 300, 320) - dark_middle (leaning, 600, 400, 420);
  g_assert_cmpfloat_with_epsilon (moved, 100 * 0.2, 3);
}

typedef struct
{
  const LbSide *side;
  const LbVoice *voice;
} Page;

static void
draw_page (cairo_t *cr, gsize number, double width, double height, gpointer data)
{
  const Page *const page = data;
  lb_side_draw (cr, lb_palette (LB_PALETTE_PRINT), page->voice, page->side, width, height);
}

/* Words that are wider than their column, as large text and other tongues make them, grow smaller;
 * they are not broken. */
static void
test_words_stay_whole (void)
{
  static const double SCALES[] = { 1, 1.5, 2 };
  g_autofree char *program = g_find_program_in_path ("pdftotext");
  if (program == NULL) {
    g_test_fail_printf ("pdftotext is missing: sh src/set-up test");
    return;
  }
  for (gsize s = 0; s < G_N_ELEMENTS (SCALES); s++) {
    g_autoptr (GError) error = NULL;
    g_autofree char *folder = g_dir_make_tmp ("lb-side-XXXXXX", &error);
    g_assert_no_error (error);
    g_autofree char *path = g_build_filename (folder, "side.pdf", NULL);
    LbVoice voice = LB_VOICE_PLAIN;
    voice.scale = SCALES[s];
    Case it;
    case_init (&it, 0, LB_STEP_CLEANED, 0.125);
    Page page = { &it.side, &voice };
    lb_picture_write (path, 165, 230 * SCALES[s], 1, "side", draw_page, &page, &error);
    g_assert_no_error (error);
    char *arguments[] = { program, (char *) "-raw", path, (char *) "-", NULL };
    g_autofree char *text = NULL;
    g_spawn_sync (NULL, arguments, NULL, G_SPAWN_DEFAULT, NULL, NULL, &text, NULL, NULL, &error);
    g_assert_no_error (error);
    static const char *const WORDS[] = {
      "water", "head", "leads", "cut", "slag", "falls", "mudline"
    };
    for (gsize w = 0; w < G_N_ELEMENTS (WORDS); w++) {
      if (strstr (text, WORDS[w]) == NULL)
        g_error ("at scale %g “%s” is not whole in “%s”", SCALES[s], WORDS[w], text);
    }
    g_remove (path);
    g_rmdir (folder);
  }
}

/* All over the page's corners, even a page too small for words is drawn. */
static void
test_sizes (void)
{
  static const int PAGES[][2] = { { 20, 20 }, { 60, 200 }, { 400, 120 }, { 600, 700 } };
  static const double BATTERS[] = { 0, 1.0 / 12, 0.25, 1 };
  for (gsize p = 0; p < G_N_ELEMENTS (PAGES); p++) {
    for (gsize b = 0; b < G_N_ELEMENTS (BATTERS); b++) {
      Case it;
      case_init (&it, 0, LB_STEP_CLEANED, BATTERS[b]);
      g_autofree guchar *grey = picture_of (&it.side, &LB_VOICE_PLAIN, PAGES[p][0], PAGES[p][1]);
      g_assert_cmpuint (count_ink (grey, PAGES[p][0], 0, PAGES[p][0], 0, PAGES[p][1]), >, 10);
    }
  }
}

/* How much of a band across the page two pictures differ in. */
static guint
count_different (const guchar *one, const guchar *other, int width, int top, int bottom)
{
  guint n = 0;
  for (int i = top * width; i < bottom * width; i++)
    n += one[i] != other[i];
  return n;
}

/* A tapered pile gets narrower down the page, from the width that an even one has at the head. */
static void
test_taper (void)
{
  enum {
    WIDTH = 300,
    HEIGHT = 300
  };
  Case even, tapered;
  case_init (&even, LACKS_BARS, LB_STEP_STANDING, 0);
  case_init (&tapered, LACKS_BARS, LB_STEP_STANDING, 0);
  even.pile.outline.width_m = tapered.pile.outline.width_m = 1.2;
  even.pile.toe_m = tapered.pile.toe_m = -16;
  tapered.pile.tip_width_m = 0.4;

  g_autofree guchar *one = picture_of (&even.side, &LB_VOICE_PLAIN, WIDTH, HEIGHT);
  g_autofree guchar *other = picture_of (&tapered.side, &LB_VOICE_PLAIN, WIDTH, HEIGHT);
  guint before = count_different (one, other, WIDTH, 40, 60);
  for (int top = 80; top <= 200; top += 40) {
    const guint here = count_different (one, other, WIDTH, top, top + 20);
    g_assert_cmpuint (here, >, before);
    before = here;
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/side/missing-facts", test_missing_facts);
  g_test_add_func ("/side/unknown-is-said", test_unknown_is_said);
  g_test_add_func ("/side/steps", test_steps);
  g_test_add_func ("/side/lean", test_lean);
  g_test_add_func ("/side/words-stay-whole", test_words_stay_whole);
  g_test_add_func ("/side/sizes", test_sizes);
  g_test_add_func ("/side/taper", test_taper);
  return g_test_run ();
}
