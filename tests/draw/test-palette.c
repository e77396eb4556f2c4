/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * Contrast: WCAG 2.2, success criteria 1.4.3 (text, 4.5:1), 1.4.6 (enhanced, 7:1) and 1.4.11
 * (graphics, 3:1). Colour blindness: Machado, Oliveira and Fernandes, "A Physiologically-based
 * Model for Simulation of Color Vision Deficiency" (2009), matrices at severity 1.0, on linear
 * sRGB. Difference: CIE 1976 ΔE, from L*a*b* under D65 (CIE 15).
 */
#include "draw/palette.h"

#include <math.h>

static const LbInk STEPS[] = {
  LB_INK_STANDING, LB_INK_CLEANED, LB_INK_SEVERED, LB_INK_RIGGED, LB_INK_PULLED,
};

static gboolean
is_high_contrast (guint kind)
{
  return kind == LB_PALETTE_HIGH_CONTRAST || kind == LB_PALETTE_HIGH_CONTRAST_DARK;
}

static void
assert_contrast (guint kind, LbInk ground, LbInk ink, double least)
{
  const LbPalette *const palette = lb_palette ((LbPaletteKind) kind);
  const double contrast = lb_colour_contrast (&palette->inks[ground], &palette->inks[ink]);
  if (contrast < least)
    g_test_message ("palette %u: ink %d on %d has %.2f, wants %.1f", kind, ink, ground, contrast,
                    least);
  g_assert_cmpfloat (contrast, >=, least);
}

/* Ratios of the Okabe-Ito palette, published to two decimals. */
static void
test_formula (void)
{
  static const struct
  {
    guint32 rgb;
    double on_white, on_black;
  } CASES[] = {
    { 0x000000, 21.00, 1.00 }, { 0xE69F00, 2.25, 9.32 },  { 0x56B4E9, 2.31, 9.10 },
    { 0x009E73, 3.42, 6.14 },  { 0xF0E442, 1.32, 15.88 }, { 0x0072B2, 5.19, 4.05 },
    { 0xD55E00, 3.87, 5.43 },  { 0xCC79A7, 3.06, 6.86 },  { 0x999999, 2.85, 7.37 },
  };
  const LbColour white = { 1, 1, 1, 1 }, black = { 0, 0, 0, 1 };
  for (gsize i = 0; i < G_N_ELEMENTS (CASES); i++) {
    const LbColour colour = { (CASES[i].rgb >> 16 & 0xff) / 255.0,
                              (CASES[i].rgb >> 8 & 0xff) / 255.0, (CASES[i].rgb & 0xff) / 255.0,
                              1 };
    g_assert_cmpfloat_with_epsilon (lb_colour_contrast (&colour, &white), CASES[i].on_white,
                                    0.0051);
    g_assert_cmpfloat_with_epsilon (lb_colour_contrast (&black, &colour), CASES[i].on_black,
                                    0.0051);
  }
}

static void
test_text (void)
{
  static const LbInk GROUNDS[] = { LB_INK_PAPER, LB_INK_WATER, LB_INK_MUD };
  for (guint kind = 0; kind < LB_N_PALETTES; kind++) {
    const double least = is_high_contrast (kind) ? 7 : 4.5;
    for (gsize i = 0; i < G_N_ELEMENTS (GROUNDS); i++) {
      assert_contrast (kind, GROUNDS[i], LB_INK_TEXT, least);
      assert_contrast (kind, GROUNDS[i], LB_INK_DIM_TEXT, least);
    }
    assert_contrast (kind, LB_INK_STEEL, LB_INK_ON_STEP, least);
    assert_contrast (kind, LB_INK_HEAT, LB_INK_ON_STEP, least);
    /* The side view writes "cut" in it on the water. */
    assert_contrast (kind, LB_INK_WATER, LB_INK_HEAT, 4.5);
  }
}

static void
test_graphics (void)
{
  static const LbInk INKS[] = {
    LB_INK_LINE,   LB_INK_FAINT, LB_INK_STANDING, LB_INK_CLEANED, LB_INK_SEVERED, LB_INK_RIGGED,
    LB_INK_PULLED, LB_INK_FLAG,  LB_INK_CONCRETE, LB_INK_STEEL,   LB_INK_HEAT,    LB_INK_SELECT,
  };
  for (guint kind = 0; kind < LB_N_PALETTES; kind++) {
    const double least = is_high_contrast (kind) ? 4.5 : 3;
    for (gsize i = 0; i < G_N_ELEMENTS (INKS); i++) {
      assert_contrast (kind, LB_INK_PAPER, INKS[i], least);
      assert_contrast (kind, LB_INK_WATER, INKS[i], least);
    }
    /* The mudline and the sparks that reach it. */
    assert_contrast (kind, LB_INK_MUD, LB_INK_LINE, 3);
    assert_contrast (kind, LB_INK_MUD, LB_INK_HEAT, 3);
  }
}

static const double SIGHTS[][3][3] = {
  { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } },
  { { 0.152286, 1.052583, -0.204868 },
    { 0.114503, 0.786281, 0.099216 },
    { -0.003882, -0.048116, 1.051998 } }, /* protanopia */
  { { 0.367322, 0.860646, -0.227968 },
    { 0.280085, 0.672501, 0.047413 },
    { -0.011820, 0.042940, 0.968881 } }, /* deuteranopia */
  { { 1.255528, -0.076749, -0.178779 },
    { -0.078411, 0.930809, 0.147602 },
    { 0.004733, 0.691367, 0.303900 } }, /* tritanopia */
};

static double
linear (double channel)
{
  return channel <= 0.04045 ? channel / 12.92 : pow ((channel + 0.055) / 1.055, 2.4);
}

static double
lab_curve (double t)
{
  return t > 216.0 / 24389 ? cbrt (t) : (24389.0 / 27 * t + 16) / 116;
}

static void
seen_lab (const LbColour *colour, gsize sight, double lab[3])
{
  const double rgb[] = { linear (colour->r), linear (colour->g), linear (colour->b) };
  double seen[3];
  for (int i = 0; i < 3; i++) {
    const double *const row = SIGHTS[sight][i];
    seen[i] = CLAMP (row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2], 0, 1);
  }
  const double x = 0.4124564 * seen[0] + 0.3575761 * seen[1] + 0.1804375 * seen[2];
  const double y = 0.2126729 * seen[0] + 0.7151522 * seen[1] + 0.0721750 * seen[2];
  const double z = 0.0193339 * seen[0] + 0.1191920 * seen[1] + 0.9503041 * seen[2];
  const double fx = lab_curve (x / 0.95047), fy = lab_curve (y), fz = lab_curve (z / 1.08883);
  lab[0] = 116 * fy - 16;
  lab[1] = 500 * (fx - fy);
  lab[2] = 200 * (fy - fz);
}

static void
test_colour_blindness (void)
{
  static const double LEAST_DELTA_E = 10;
  for (guint kind = 0; kind < LB_N_PALETTES; kind++) {
    const LbPalette *const palette = lb_palette ((LbPaletteKind) kind);
    for (gsize sight = 0; sight < G_N_ELEMENTS (SIGHTS); sight++) {
      for (gsize i = 0; i < G_N_ELEMENTS (STEPS); i++) {
        for (gsize j = i + 1; j < G_N_ELEMENTS (STEPS); j++) {
          double one[3], other[3];
          seen_lab (&palette->inks[STEPS[i]], sight, one);
          seen_lab (&palette->inks[STEPS[j]], sight, other);
          const double delta = hypot (hypot (one[0] - other[0], one[1] - other[1]),
                                      one[2] - other[2]);
          if (delta < LEAST_DELTA_E)
            g_test_message ("palette %u, sight %zu: steps %zu and %zu", kind, sight, i, j);
          g_assert_cmpfloat (delta, >=, LEAST_DELTA_E);
        }
      }
    }
  }
}

/* Light, half and full are told apart by every eye, by lightness alone, and what is written on a fill
 * can be read. */
static void
test_ramp (void)
{
  static const double LEAST_LIGHTNESS = 15; /* L* apart */
  enum {
    N_PARTS = 50
  };
  for (guint kind = 0; kind < LB_N_PALETTES; kind++) {
    const LbPalette *const palette = lb_palette ((LbPaletteKind) kind);
    for (gsize sight = 0; sight < G_N_ELEMENTS (SIGHTS); sight++) {
      double lightness[3];
      for (int i = 0; i < 3; i++) {
        const LbColour fill = lb_palette_ramp (palette, i / 2.0);
        double lab[3];
        seen_lab (&fill, sight, lab);
        lightness[i] = lab[0];
      }
      g_assert_cmpfloat (fabs (lightness[1] - lightness[0]), >=, LEAST_LIGHTNESS);
      g_assert_cmpfloat (fabs (lightness[2] - lightness[1]), >=, LEAST_LIGHTNESS);
      g_assert_true ((lightness[1] > lightness[0]) == (lightness[2] > lightness[1]));
    }
    for (int i = 0; i <= N_PARTS; i++) {
      const LbColour fill = lb_palette_ramp (palette, (double) i / N_PARTS);
      const LbColour on_fill = lb_colour_on (&fill);
      g_assert_cmpfloat (lb_colour_contrast (&fill, &on_fill), >=, 4.5);
    }
    /* More than all is drawn as all. */
    const LbColour full = lb_palette_ramp (palette, 1), over = lb_palette_ramp (palette, 3);
    g_assert_cmpfloat (lb_colour_contrast (&full, &over), ==, 1);
  }
}

/* On paper there are no colours at all: tone is all that is left beside the shape. */
static void
test_print_is_grey (void)
{
  const LbPalette *const palette = lb_palette (LB_PALETTE_PRINT);
  for (gsize i = 0; i < LB_N_INKS; i++) {
    g_assert_cmpfloat (palette->inks[i].r, ==, palette->inks[i].g);
    g_assert_cmpfloat (palette->inks[i].g, ==, palette->inks[i].b);
  }
  g_assert_cmpfloat (palette->inks[LB_INK_PAPER].r, ==, 1);
  g_assert_cmpfloat (palette->inks[LB_INK_WATER].r, ==, 1);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/palette/formula", test_formula);
  g_test_add_func ("/palette/text", test_text);
  g_test_add_func ("/palette/graphics", test_graphics);
  g_test_add_func ("/palette/colour-blindness", test_colour_blindness);
  g_test_add_func ("/palette/ramp", test_ramp);
  g_test_add_func ("/palette/print-is-grey", test_print_is_grey);
  return g_test_run ();
}
