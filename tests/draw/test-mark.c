/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/mark.h"

#include <math.h>

/* A square of grey values, 0 black to 1 white, with the mark in its middle. */
typedef struct
{
  int side;
  double *grey;
} Picture;

static Picture
picture_of (LbPaletteKind kind, const LbMark *mark, double size)
{
  const LbPalette *const palette = lb_palette (kind);
  const int side = 2 * (int) ceil (size * 1.25) + 4;
  cairo_surface_t *const surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, side, side);
  cairo_t *const cr = cairo_create (surface);
  lb_ink_set (cr, palette, LB_INK_PAPER);
  cairo_paint (cr);
  cairo_translate (cr, side / 2, side / 2);
  lb_mark_draw (cr, palette, mark, size);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);

  Picture picture = { side, g_new (double, side *side) };
  const guchar *const data = cairo_image_surface_get_data (surface);
  const int stride = cairo_image_surface_get_stride (surface);
  for (int y = 0; y < side; y++) {
    for (int x = 0; x < side; x++) {
      const guint32 pixel = *(const guint32 *) (const void *) (data + y * stride + x * 4);
      picture.grey[y * side + x] = (0.2126 * (pixel >> 16 & 0xff) + 0.7152 * (pixel >> 8 & 0xff) +
                                    0.0722 * (pixel & 0xff)) /
                                   255;
    }
  }
  cairo_surface_destroy (surface);
  return picture;
}

/* Ink laid down, in pixels of black. */
static double
ink_of (LbPaletteKind kind, LbShape shape, LbStep step, double share_left, double size)
{
  const LbMark mark = { .shape = shape, .step = step, .share_left = share_left };
  const Picture picture = picture_of (kind, &mark, size);
  double ink = 0;
  for (int i = 0; i < picture.side * picture.side; i++)
    ink += 1 - picture.grey[i];
  g_free (picture.grey);
  return ink;
}

/* The one idea of the plan: from step to step less ink, in colour and in print. */
static void
test_ink_is_work_left (void)
{
  static const LbPaletteKind KINDS[] = { LB_PALETTE_LIGHT, LB_PALETTE_PRINT,
                                         LB_PALETTE_HIGH_CONTRAST };
  static const double SHARES[] = { (double) NAN, 1 };
  for (gsize k = 0; k < G_N_ELEMENTS (KINDS); k++) {
    for (int shape = 0; shape < LB_N_SHAPES; shape++) {
      for (gsize share = 0; share < G_N_ELEMENTS (SHARES); share++) {
        double before = INFINITY;
        for (int step = 0; step < LB_N_STEPS; step++) {
          const double ink = ink_of (KINDS[k], (LbShape) shape, (LbStep) step, SHARES[share], 28);
          g_test_message ("palette %d shape %d step %d arc %zu: %.0f", KINDS[k], shape, step, share,
                          ink);
          g_assert_cmpfloat (ink, <, before * 0.97);
          before = ink;
        }
      }
    }
  }
}

/* The share of pixels within the smaller mark's reach that differ by a fifth of black or more. */
static double
difference (const LbMark *one, const LbMark *other, double size)
{
  const Picture a = picture_of (LB_PALETTE_PRINT, one, size);
  const Picture b = picture_of (LB_PALETTE_PRINT, other, size);
  guint n = 0;
  for (int i = 0; i < a.side * a.side; i++)
    n += fabs (a.grey[i] - b.grey[i]) >= 0.2;
  g_free (a.grey);
  g_free (b.grey);
  return n / (size * size);
}

static void
test_told_apart_in_grey (void)
{
  static const double SIZES[] = { 4, 8, 14, 28 };
  for (gsize s = 0; s < G_N_ELEMENTS (SIZES); s++) {
    for (int shape = 0; shape < LB_N_SHAPES; shape++) {
      for (int i = 0; i < LB_N_STEPS; i++) {
        for (int j = i + 1; j < LB_N_STEPS; j++) {
          const LbMark one = { .shape = (LbShape) shape, .step = (LbStep) i, .share_left = 0.5 };
          const LbMark other = { .shape = (LbShape) shape, .step = (LbStep) j, .share_left = 0.5 };
          const double apart = difference (&one, &other, SIZES[s]);
          if (apart < 0.12)
            g_test_message ("%g px, shape %d: %d and %d differ by %.2f", SIZES[s], shape, i, j,
                            apart);
          g_assert_cmpfloat (apart, >=, 0.12);
        }
      }
    }
  }
}

static void
test_flag_and_strand_show (void)
{
  static const double SIZES[] = { 8, 14, 28 };
  for (gsize s = 0; s < G_N_ELEMENTS (SIZES); s++) {
    for (int step = 0; step < LB_N_STEPS; step++) {
      const LbMark plain = { .shape = LB_SHAPE_OCTAGON, .step = (LbStep) step, .share_left = NAN };
      LbMark flagged = plain, strand = plain;
      flagged.has_flag = TRUE;
      strand.is_strand = TRUE;
      g_assert_cmpfloat (difference (&plain, &flagged, SIZES[s]), >, 0.05);
      if (step != LB_STEP_PULLED)
        g_assert_cmpfloat (difference (&plain, &strand, SIZES[s]), >, 0.02);
      else
        g_assert_cmpfloat (difference (&plain, &strand, SIZES[s]), ==, 0);
    }
  }
}

/* The desk makes sprites of this reach. */
static void
test_stays_within_reach (void)
{
  for (double size = 3; size <= 40; size += 1) {
    for (int step = 0; step < LB_N_STEPS; step++) {
      const LbMark mark = { LB_SHAPE_SQUARE, (LbStep) step, 1, TRUE, TRUE };
      const Picture picture = picture_of (LB_PALETTE_PRINT, &mark, size);
      const double centre = picture.side / 2, reach = 1.1 * MAX (size, 6) + 1;
      for (int y = 0; y < picture.side; y++) {
        for (int x = 0; x < picture.side; x++) {
          const double away = MAX (fabs (x + 0.5 - centre), fabs (y + 0.5 - centre));
          if (away > reach)
            g_assert_cmpfloat (picture.grey[y * picture.side + x], >, 0.999);
        }
      }
      g_free (picture.grey);
    }
  }
}

/* An arrow of the lean lies on its own side of the mark, whichever way it points. */
static void
test_arrow_points (void)
{
  const int side = 80;
  for (int quarter = 0; quarter < 4; quarter++) {
    cairo_surface_t *const surface = cairo_image_surface_create (CAIRO_FORMAT_A8, side, side);
    cairo_t *const cr = cairo_create (surface);
    cairo_translate (cr, side / 2, side / 2);
    lb_lean_arrow_draw (cr, lb_palette (LB_PALETTE_PRINT), LB_STEP_STANDING, 20, 18,
                        quarter * G_PI / 2);
    cairo_destroy (cr);
    cairo_surface_flush (surface);
    const guchar *const data = cairo_image_surface_get_data (surface);
    const int stride = cairo_image_surface_get_stride (surface);
    double x_sum = 0, y_sum = 0, n = 0;
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        x_sum += (x + 0.5 - side / 2) * data[y * stride + x];
        y_sum += (y + 0.5 - side / 2) * data[y * stride + x];
        n += data[y * stride + x];
      }
    }
    g_assert_cmpfloat (n, >, 0);
    g_assert_cmpfloat (x_sum / n * sin (quarter * G_PI / 2) - y_sum / n * cos (quarter * G_PI / 2),
                       >, 10);
    cairo_surface_destroy (surface);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mark/ink-is-work-left", test_ink_is_work_left);
  g_test_add_func ("/mark/told-apart-in-grey", test_told_apart_in_grey);
  g_test_add_func ("/mark/flag-and-strand-show", test_flag_and_strand_show);
  g_test_add_func ("/mark/stays-within-reach", test_stays_within_reach);
  g_test_add_func ("/mark/arrow-points", test_arrow_points);
  return g_test_run ();
}
