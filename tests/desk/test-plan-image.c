/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The plan on the screen looks like the plan on paper: sprites against cairo, and the blitted image
 * against lb_plan_draw(). */
#include "desk/plan/plan-image.h"
#include "desk/plan/sprite.h"

#include <math.h>
#include <string.h>

#define WIDTH  640
#define HEIGHT 480

static LbPixels
pixels_of (cairo_surface_t *image)
{
  cairo_surface_flush (image);
  return (LbPixels){
    .pixels = (guint32 *) (gpointer) cairo_image_surface_get_data (image),
    .stride = cairo_image_surface_get_stride (image) / (int) sizeof (guint32),
    .width = cairo_image_surface_get_width (image),
    .height = cairo_image_surface_get_height (image),
  };
}

static int
channel (guint32 pixel, int shift)
{
  return (int) (pixel >> shift & 0xff);
}

static int
difference (guint32 one, guint32 other)
{
  int most = 0;

  for (int shift = 0; shift < 32; shift += 8)
    most = MAX (most, abs (channel (one, shift) - channel (other, shift)));
  return most;
}

/* Pixels that differ by more than @levels. */
static guint
count_different (cairo_surface_t *one, cairo_surface_t *other, int levels)
{
  const LbPixels a = pixels_of (one), b = pixels_of (other);
  guint n = 0;

  g_assert_cmpint (a.width, ==, b.width);
  g_assert_cmpint (a.height, ==, b.height);
  for (int y = 0; y < a.height; y++)
    for (int x = 0; x < a.width; x++)
      n += difference (a.pixels[y * a.stride + x], b.pixels[y * b.stride + x]) > levels;
  return n;
}

static cairo_surface_t *
new_image (int width, int height)
{
  return cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
}

/* Something with clear, solid and half-covered pixels, about (20, 20). */
static void
draw_blob (cairo_t *cr)
{
  cairo_arc (cr, 0, 0, 15.3, 0, 2 * G_PI);
  cairo_set_source_rgba (cr, 0.8, 0.3, 0.1, 1);
  cairo_fill_preserve (cr);
  cairo_set_source_rgba (cr, 0.1, 0.1, 0.6, 0.55);
  cairo_set_line_width (cr, 3.7);
  cairo_stroke (cr);
}

static void
test_sprite_is_what_cairo_paints (void)
{
  static const int PLACES[][2] = { { 50, 40 }, { 0, 0 },     { 99, 79 },   { -10, 30 },
                                   { 60, 90 }, { 300, 300 }, { -50, -50 }, { 100, 40 } };
  cairo_surface_t *blob = new_image (40, 40);
  cairo_t *cr = cairo_create (blob);
  g_autoptr (LbSprite) sprite = NULL;

  cairo_translate (cr, 20, 20);
  draw_blob (cr);
  cairo_destroy (cr);
  sprite = lb_sprite_new (blob, 20, 20);

  for (gsize i = 0; i < G_N_ELEMENTS (PLACES); i++) {
    cairo_surface_t *painted = new_image (100, 80), *blitted = new_image (100, 80);
    cairo_surface_t *images[] = { painted, blitted };
    LbPixels on;

    for (gsize k = 0; k < G_N_ELEMENTS (images); k++) {
      cr = cairo_create (images[k]);
      cairo_set_source_rgba (cr, 0.9, 0.95, 0.4, 1);
      cairo_paint (cr);
      if (k == 0) {
        cairo_set_source_surface (cr, blob, PLACES[i][0] - 20, PLACES[i][1] - 20);
        cairo_paint (cr);
      }
      cairo_destroy (cr);
    }
    on = pixels_of (blitted);
    lb_sprite_blit (sprite, &on, PLACES[i][0], PLACES[i][1]);
    cairo_surface_mark_dirty (blitted);
    g_assert_cmpuint (count_different (painted, blitted, 0), ==, 0);
    cairo_surface_destroy (painted);
    cairo_surface_destroy (blitted);
  }
  cairo_surface_destroy (blob);
}

static void
test_empty_sprite (void)
{
  cairo_surface_t *clear = new_image (7, 5), *image = new_image (9, 9);
  g_autoptr (LbSprite) sprite = lb_sprite_new (clear, 3, 2);
  LbPixels on = pixels_of (image);

  lb_sprite_blit (sprite, &on, 4, 4);
  cairo_surface_mark_dirty (image);
  for (int i = 0; i < 9 * 9; i++)
    g_assert_cmpuint (on.pixels[i / 9 * on.stride + i % 9], ==, 0);
  cairo_surface_destroy (clear);
  cairo_surface_destroy (image);
}

/* Every step in every shape, leaning every way, with flags and strand; 3 m apart, so that at whole
 * px a metre all marks lie on whole pixels. */
typedef struct
{
  LbPlanPile piles[60];
  LbPoint deck[4];
  LbPlan plan;
} Scene;

static void
scene_init (Scene *scene)
{
  static const char *const NAMES[] = { "A1", "B22", "RG7", "Ø4" };

  *scene = (Scene){ .deck = { { -2, -2 }, { 29, -2 }, { 29, 17 }, { -2, 17 } } };
  for (int i = 0; i < 60; i++)
    scene->piles[i] = (LbPlanPile){
      .x_m = 3.0 * (i % 10),
      .y_m = 3.0 * (i / 10),
      .width_m = i % 4 == 0 ? 0.5 : 0.4,
      .batter = i % 5 == 0 ? 0 : 1 / 6.0,
      .bearing_rad = i * 0.41,
      .lean_m = 1.2,
      .mark = {
        .shape = (LbShape) (i % LB_N_SHAPES),
        .step = (LbStep) (i / LB_N_SHAPES % LB_N_STEPS),
        .share_left = i % 8 / 8.0,
        .has_flag = i % 7 == 3,
        .is_strand = i % 11 == 5,
      },
      .label = NAMES[i % G_N_ELEMENTS (NAMES)],
    };
  scene->plan = (LbPlan){
    .n_piles = G_N_ELEMENTS (scene->piles),
    .piles = scene->piles,
    .n_deck = G_N_ELEMENTS (scene->deck),
    .deck = scene->deck,
    .pitch_m = 3,
    .left_m = -2,
    .right_m = 29,
    .bottom_m = -2,
    .top_m = 17,
  };
}

static cairo_surface_t *
draw_as_paper (const LbPlan *plan, const LbPlanView *view, const gboolean *shown, int scale)
{
  cairo_surface_t *image = new_image (WIDTH * scale, HEIGHT * scale);
  cairo_t *cr = cairo_create (image);

  cairo_scale (cr, scale, scale);
  lb_plan_draw (cr, lb_palette (LB_PALETTE_LIGHT), &LB_VOICE_PLAIN, plan, view, shown, WIDTH,
                HEIGHT);
  cairo_destroy (cr);
  return image;
}

static cairo_surface_t *
draw_as_screen (LbPlanImage *image,
                const LbPlan *plan,
                const LbPlanView *view,
                const gboolean *shown,
                int scale)
{
  return lb_plan_image_draw (image, lb_palette (LB_PALETTE_LIGHT), &LB_VOICE_PLAIN, plan, view,
                             shown, WIDTH, HEIGHT, scale);
}

/* Means over blocks of 8 px, which a shift of half a pixel moves little; how far the worst is off. */
static double
worst_block (cairo_surface_t *one, cairo_surface_t *other)
{
  const LbPixels a = pixels_of (one), b = pixels_of (other);
  double worst = 0;

  for (int top = 0; top + 8 <= a.height; top += 8)
    for (int left = 0; left + 8 <= a.width; left += 8)
      for (int shift = 0; shift < 24; shift += 8) {
        int sum = 0;

        for (int y = top; y < top + 8; y++)
          for (int x = left; x < left + 8; x++)
            sum += channel (a.pixels[y * a.stride + x], shift) -
                   channel (b.pixels[y * b.stride + x], shift);
        worst = MAX (worst, fabs (sum / 64.0));
      }
  return worst;
}

/* Views in which every pile lies on a whole pixel: near enough for names, and not. */
static const LbPlanView WHOLE_VIEW = { .centre_x_m = 14, .centre_y_m = 7, .px_per_m = 20 };
static const LbPlanView NAMELESS_VIEW = { .centre_x_m = 14, .centre_y_m = 7, .px_per_m = 12 };

/* Marks that lie on whole pixels are the very same. */
static void
test_marks_are_the_same (gconstpointer data)
{
  const int scale = GPOINTER_TO_INT (data);
  Scene scene;
  g_autoptr (LbPlanImage) image = lb_plan_image_new ();
  cairo_surface_t *paper, *screen;

  scene_init (&scene);
  for (int i = 0; i < 60; i++)
    scene.piles[i].batter = 0;
  g_assert_false (lb_plan_has_names (&scene.plan, &NAMELESS_VIEW, &LB_VOICE_PLAIN));
  paper = draw_as_paper (&scene.plan, &NAMELESS_VIEW, NULL, scale);
  screen = draw_as_screen (image, &scene.plan, &NAMELESS_VIEW, NULL, scale);
  g_assert_cmpuint (count_different (paper, screen, 2), ==, 0);
  cairo_surface_destroy (paper);
}

/* Names start on fractions of a pixel and arrows are rounded: nowhere by much. */
static void
test_image_is_the_plan (gconstpointer data)
{
  const int scale = GPOINTER_TO_INT (data);
  Scene scene;
  g_autoptr (LbPlanImage) image = lb_plan_image_new ();
  cairo_surface_t *paper, *screen, *without;
  LbPlan empty;

  scene_init (&scene);
  g_assert_true (lb_plan_has_names (&scene.plan, &WHOLE_VIEW, &LB_VOICE_PLAIN));
  paper = draw_as_paper (&scene.plan, &WHOLE_VIEW, NULL, scale);
  screen = draw_as_screen (image, &scene.plan, &WHOLE_VIEW, NULL, scale);
  g_assert_cmpfloat (worst_block (paper, screen), <, 32);

  /* The measure can see: a plan without its piles is far from it. */
  empty = scene.plan;
  empty.n_piles = 0;
  without = draw_as_paper (&empty, &WHOLE_VIEW, NULL, scale);
  g_assert_cmpfloat (worst_block (without, screen), >, 60);
  cairo_surface_destroy (paper);
  cairo_surface_destroy (without);
}

static void
test_any_view (void)
{
  Scene scene;
  g_autoptr (LbPlanImage) image = lb_plan_image_new ();
  LbPlanView view = { .centre_x_m = 13.37, .centre_y_m = 6.9, .px_per_m = 17.31 };

  scene_init (&scene);
  for (int step = 0; step < 12; step++) {
    cairo_surface_t *paper = draw_as_paper (&scene.plan, &view, NULL, 1);
    cairo_surface_t *screen = draw_as_screen (image, &scene.plan, &view, NULL, 1);

    g_assert_cmpfloat (worst_block (paper, screen), <, 48);
    cairo_surface_destroy (paper);
    /* Pans by whole pixels, past the margin of the kept ground, then zooms. */
    view.centre_x_m += 37 / view.px_per_m;
    view.centre_y_m -= 11 / view.px_per_m;
    if (step % 4 == 3)
      view.px_per_m *= 1.37;
  }
}

static void
test_filter_leaves_out (void)
{
  Scene scene;
  g_autoptr (LbPlanImage) image = lb_plan_image_new ();
  gboolean shown[60];
  cairo_surface_t *paper, *screen;

  scene_init (&scene);
  for (int i = 0; i < 60; i++)
    shown[i] = scene.piles[i].mark.step == LB_STEP_SEVERED;
  draw_as_screen (image, &scene.plan, &WHOLE_VIEW, NULL, 1);
  screen = draw_as_screen (image, &scene.plan, &WHOLE_VIEW, shown, 1);
  paper = draw_as_paper (&scene.plan, &WHOLE_VIEW, shown, 1);
  g_assert_cmpfloat (worst_block (paper, screen), <, 32);
  cairo_surface_destroy (paper);
}

static void
test_follows_the_plan (void)
{
  Scene scene;
  g_autoptr (LbPlanImage) image = lb_plan_image_new ();
  cairo_surface_t *paper, *screen;

  scene_init (&scene);
  draw_as_screen (image, &scene.plan, &WHOLE_VIEW, NULL, 1);
  for (int i = 0; i < 60; i++)
    scene.piles[i].mark.step = LB_STEP_PULLED;
  lb_plan_image_forget_plan (image);
  screen = draw_as_screen (image, &scene.plan, &WHOLE_VIEW, NULL, 1);
  paper = draw_as_paper (&scene.plan, &WHOLE_VIEW, NULL, 1);
  g_assert_cmpfloat (worst_block (paper, screen), <, 32);
  cairo_surface_destroy (paper);
}

static void
test_pages_take_turns (void)
{
  Scene scene;
  g_autoptr (LbPlanImage) image = lb_plan_image_new ();
  cairo_surface_t *first, *second;

  scene_init (&scene);
  first = draw_as_screen (image, &scene.plan, &WHOLE_VIEW, NULL, 1);
  second = draw_as_screen (image, &scene.plan, &WHOLE_VIEW, NULL, 1);
  g_assert_true (first != second);
  g_assert_true (first == draw_as_screen (image, &scene.plan, &WHOLE_VIEW, NULL, 1));
  g_assert_cmpuint (count_different (first, second, 0), ==, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/sprite/is-what-cairo-paints", test_sprite_is_what_cairo_paints);
  g_test_add_func ("/sprite/empty", test_empty_sprite);
  g_test_add_data_func ("/plan-image/marks-are-the-same", GINT_TO_POINTER (1),
                        test_marks_are_the_same);
  g_test_add_data_func ("/plan-image/marks-are-the-same-at-twice", GINT_TO_POINTER (2),
                        test_marks_are_the_same);
  g_test_add_data_func ("/plan-image/is-the-plan", GINT_TO_POINTER (1), test_image_is_the_plan);
  g_test_add_data_func ("/plan-image/is-the-plan-at-twice", GINT_TO_POINTER (2),
                        test_image_is_the_plan);
  g_test_add_func ("/plan-image/any-view", test_any_view);
  g_test_add_func ("/plan-image/filter-leaves-out", test_filter_leaves_out);
  g_test_add_func ("/plan-image/follows-the-plan", test_follows_the_plan);
  g_test_add_func ("/plan-image/pages-take-turns", test_pages_take_turns);

  return g_test_run ();
}
