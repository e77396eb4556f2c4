/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * The colours. They were chosen by computation: hues near slate, amber, burnt orange, violet and
 * teal, then moved in lightness until every one reached its contrast on paper and on water, and
 * every two steps stayed apart under simulated colour blindness. tests/draw/test-palette holds
 * them to it, so a colour may be changed as long as that test passes.
 *
 * Severed is darker than cleaned in the light styles and the other way round in the dark ones:
 * that difference in lightness is what tells amber from orange to a red-blind reader.
 */
#include "draw/palette.h"

#include <math.h>

#define RGB(hex)                                                                        \
  {                                                                                     \
    ((hex) >> 16 & 0xff) / 255.0, ((hex) >> 8 & 0xff) / 255.0, ((hex) &0xff) / 255.0, 1 \
  }

static const LbPalette PALETTES[LB_N_PALETTES] = {
  [LB_PALETTE_LIGHT] = {
    .inks = {
      [LB_INK_PAPER] = RGB (0xffffff),
      [LB_INK_WATER] = RGB (0xe8f1f4),
      [LB_INK_TEXT] = RGB (0x1f2830),
      [LB_INK_DIM_TEXT] = RGB (0x4d5963),
      [LB_INK_LINE] = RGB (0x3f4c58),
      [LB_INK_FAINT] = RGB (0x78858f),
      [LB_INK_HAIR] = RGB (0xc0d2d8),
      [LB_INK_STANDING] = RGB (0x3b4652),
      [LB_INK_CLEANED] = RGB (0xb67800),
      [LB_INK_SEVERED] = RGB (0xb43f00),
      [LB_INK_RIGGED] = RGB (0x6a3a98),
      [LB_INK_PULLED] = RGB (0x78868f),
      [LB_INK_FLAG] = RGB (0xb0125a),
      [LB_INK_CONCRETE] = RGB (0x7f878d),
      [LB_INK_MUD] = RGB (0xe2d5bd),
      [LB_INK_STEEL] = RGB (0x3b4652),
      [LB_INK_HEAT] = RGB (0xb43f00),
      [LB_INK_SELECT] = RGB (0x0a7a75),
      [LB_INK_ON_STEP] = RGB (0xffffff),
    },
  },
  [LB_PALETTE_DARK] = {
    .inks = {
      [LB_INK_PAPER] = RGB (0x1e262c),
      [LB_INK_WATER] = RGB (0x12222b),
      [LB_INK_TEXT] = RGB (0xeef3f5),
      [LB_INK_DIM_TEXT] = RGB (0xa9b7c0),
      [LB_INK_LINE] = RGB (0xb9c6cf),
      [LB_INK_FAINT] = RGB (0x7d8d98),
      [LB_INK_HAIR] = RGB (0x2c434f),
      [LB_INK_STANDING] = RGB (0xe3eaee),
      [LB_INK_CLEANED] = RGB (0xf6bb4a),
      [LB_INK_SEVERED] = RGB (0xff7438),
      [LB_INK_RIGGED] = RGB (0xb48cf2),
      [LB_INK_PULLED] = RGB (0x82929d),
      [LB_INK_FLAG] = RGB (0xff7ab0),
      [LB_INK_CONCRETE] = RGB (0x8d969c),
      [LB_INK_MUD] = RGB (0x3a3226),
      [LB_INK_STEEL] = RGB (0xd5dee4),
      [LB_INK_HEAT] = RGB (0xff8a4f),
      [LB_INK_SELECT] = RGB (0x4ecdc0),
      [LB_INK_ON_STEP] = RGB (0x12222b),
    },
  },
  [LB_PALETTE_PRINT] = {
    .inks = {
      [LB_INK_PAPER] = RGB (0xffffff),
      [LB_INK_WATER] = RGB (0xffffff),
      [LB_INK_TEXT] = RGB (0x000000),
      [LB_INK_DIM_TEXT] = RGB (0x404040),
      [LB_INK_LINE] = RGB (0x262626),
      [LB_INK_FAINT] = RGB (0x808080),
      [LB_INK_HAIR] = RGB (0xc8c8c8),
      [LB_INK_STANDING] = RGB (0x121212),
      [LB_INK_CLEANED] = RGB (0x333333),
      [LB_INK_SEVERED] = RGB (0x6a6a6a),
      [LB_INK_RIGGED] = RGB (0x4e4e4e),
      [LB_INK_PULLED] = RGB (0x888888),
      [LB_INK_FLAG] = RGB (0x000000),
      [LB_INK_CONCRETE] = RGB (0x8a8a8a),
      [LB_INK_MUD] = RGB (0xe6e6e6),
      [LB_INK_STEEL] = RGB (0x2a2a2a),
      [LB_INK_HEAT] = RGB (0x3c3c3c),
      [LB_INK_SELECT] = RGB (0x000000),
      [LB_INK_ON_STEP] = RGB (0xffffff),
    },
  },
  [LB_PALETTE_HIGH_CONTRAST] = {
    .inks = {
      [LB_INK_PAPER] = RGB (0xffffff),
      [LB_INK_WATER] = RGB (0xf2f8fa),
      [LB_INK_TEXT] = RGB (0x000000),
      [LB_INK_DIM_TEXT] = RGB (0x2d363d),
      [LB_INK_LINE] = RGB (0x14191d),
      [LB_INK_FAINT] = RGB (0x59646c),
      [LB_INK_HAIR] = RGB (0xa9bbc2),
      [LB_INK_STANDING] = RGB (0x10161b),
      [LB_INK_CLEANED] = RGB (0x8f5c00),
      [LB_INK_SEVERED] = RGB (0x8c2400),
      [LB_INK_RIGGED] = RGB (0x5a2394),
      [LB_INK_PULLED] = RGB (0x606c75),
      [LB_INK_FLAG] = RGB (0x8f0046),
      [LB_INK_CONCRETE] = RGB (0x656d73),
      [LB_INK_MUD] = RGB (0xeee2cc),
      [LB_INK_STEEL] = RGB (0x10161b),
      [LB_INK_HEAT] = RGB (0x8c2400),
      [LB_INK_SELECT] = RGB (0x005c57),
      [LB_INK_ON_STEP] = RGB (0xffffff),
    },
  },
  [LB_PALETTE_HIGH_CONTRAST_DARK] = {
    .inks = {
      [LB_INK_PAPER] = RGB (0x05090b),
      [LB_INK_WATER] = RGB (0x000c12),
      [LB_INK_TEXT] = RGB (0xffffff),
      [LB_INK_DIM_TEXT] = RGB (0xd6e0e6),
      [LB_INK_LINE] = RGB (0xe8eff3),
      [LB_INK_FAINT] = RGB (0x9caab4),
      [LB_INK_HAIR] = RGB (0x3c5765),
      [LB_INK_STANDING] = RGB (0xffffff),
      [LB_INK_CLEANED] = RGB (0xffc552),
      [LB_INK_SEVERED] = RGB (0xff8e52),
      [LB_INK_RIGGED] = RGB (0xcfaeff),
      [LB_INK_PULLED] = RGB (0x97a6b0),
      [LB_INK_FLAG] = RGB (0xff9cc6),
      [LB_INK_CONCRETE] = RGB (0xa6afb5),
      [LB_INK_MUD] = RGB (0x241e14),
      [LB_INK_STEEL] = RGB (0xffffff),
      [LB_INK_HEAT] = RGB (0xff9c66),
      [LB_INK_SELECT] = RGB (0x62e6d8),
      [LB_INK_ON_STEP] = RGB (0x000000),
    },
  },
};

const LbPalette *
lb_palette (LbPaletteKind kind)
{
  g_return_val_if_fail (kind < LB_N_PALETTES, &PALETTES[LB_PALETTE_LIGHT]);

  return &PALETTES[kind];
}

void
lb_ink_set (cairo_t *cr, const LbPalette *palette, LbInk ink)
{
  lb_ink_set_alpha (cr, palette, ink, 1);
}

void
lb_ink_set_alpha (cairo_t *cr, const LbPalette *palette, LbInk ink, double alpha)
{
  const LbColour *const colour = &palette->inks[ink];
  cairo_set_source_rgba (cr, colour->r, colour->g, colour->b, colour->a * alpha);
}

/* Relative luminance of an sRGB colour: WCAG 2.2, definition of the same name. */
static double
linear (double channel)
{
  return channel <= 0.04045 ? channel / 12.92 : pow ((channel + 0.055) / 1.055, 2.4);
}

static double
luminance (const LbColour *colour)
{
  return 0.2126 * linear (colour->r) + 0.7152 * linear (colour->g) + 0.0722 * linear (colour->b);
}

double
lb_colour_contrast (const LbColour *one, const LbColour *other)
{
  const double a = luminance (one) + 0.05;
  const double b = luminance (other) + 0.05;
  return a > b ? a / b : b / a;
}

LbColour
lb_palette_ramp (const LbPalette *palette, double share)
{
  const LbColour *const from = &palette->inks[LB_INK_PAPER];
  const LbColour *const to = &palette->inks[LB_INK_HEAT];
  const double part = CLAMP (share, 0, 1);
  return (LbColour){
    .r = from->r + (to->r - from->r) * part,
    .g = from->g + (to->g - from->g) * part,
    .b = from->b + (to->b - from->b) * part,
    .a = 1,
  };
}

LbColour
lb_colour_on (const LbColour *ground)
{
  const LbColour black = { 0, 0, 0, 1 };
  const LbColour white = { 1, 1, 1, 1 };
  return lb_colour_contrast (ground, &black) > lb_colour_contrast (ground, &white) ? black : white;
}
