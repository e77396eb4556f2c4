/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  double r, g, b, a;
} LbColour;

/* Every colour of a picture by what it means. Graphics reach 3:1 and text 4.5:1 against what
 * they stand on, and the steps stay apart under simulated red, green and blue blindness
 * (tests/draw/test-palette). The shape always says the same. */
typedef enum {
  LB_INK_PAPER, /* ground of charts, cards, legend */
  LB_INK_WATER, /* ground of the plan, water of the side view */
  LB_INK_TEXT,
  LB_INK_DIM_TEXT,
  LB_INK_LINE,  /* outlines, axes */
  LB_INK_FAINT, /* grid lines, pulled outlines: 3:1 still */
  LB_INK_HAIR,  /* decoration only: deck outline, chart grid; no meaning of its own */
  LB_INK_STANDING,
  LB_INK_CLEANED,
  LB_INK_SEVERED,
  LB_INK_RIGGED,
  LB_INK_PULLED,
  LB_INK_FLAG, /* something wrong */
  LB_INK_CONCRETE,
  LB_INK_MUD,
  LB_INK_STEEL,   /* a bar */
  LB_INK_HEAT,    /* cut line, slag */
  LB_INK_SELECT,  /* selection and focus */
  LB_INK_ON_STEP, /* text on steel, heat or a step's fill, but for cleaned */
} LbInk;

#define LB_N_INKS (LB_INK_ON_STEP + 1)

typedef enum {
  LB_PALETTE_LIGHT,
  LB_PALETTE_DARK,
  LB_PALETTE_PRINT, /* white ground, told apart in black and white */
  LB_PALETTE_HIGH_CONTRAST,
  LB_PALETTE_HIGH_CONTRAST_DARK,
} LbPaletteKind;

#define LB_N_PALETTES (LB_PALETTE_HIGH_CONTRAST_DARK + 1)

typedef struct
{
  LbColour inks[LB_N_INKS];
} LbPalette;

const LbPalette *lb_palette (LbPaletteKind kind);
void lb_ink_set (cairo_t *cr, const LbPalette *palette, LbInk ink);
void lb_ink_set_alpha (cairo_t *cr, const LbPalette *palette, LbInk ink, double alpha);

/* The fill for @share, 0 to 1 and more, of what a thing may bear: from the paper to the heat by
 * lightness alone, so that no eye needs its hue (tests/draw/test-palette). */
LbColour lb_palette_ramp (const LbPalette *palette, double share);

/* Black or white, whichever is read better on @ground: at least 4.5:1 on any. */
LbColour lb_colour_on (const LbColour *ground);

/* WCAG 2.2 contrast ratio of two opaque colours, 1 to 21. */
double lb_colour_contrast (const LbColour *one, const LbColour *other);

G_END_DECLS
