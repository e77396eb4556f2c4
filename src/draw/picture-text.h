/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/quantity.h"

#include <cairo.h>
#include <pango/pangocairo.h>

G_BEGIN_DECLS

/* How a picture speaks: units, numbers, fonts. Passed to everything that draws words. */
typedef struct
{
  LbUnits units;
  LbNumberStyle numbers;
  const char *font; /* Pango family, "Cantarell" or "Sans"; borrowed */
  double scale;     /* 1 for ordinary text, up to 2 for large text */
} LbVoice;

/* US customary, plain numbers, "Sans", 1. */
extern const LbVoice LB_VOICE_PLAIN;

typedef enum {
  LB_ALIGN_START,
  LB_ALIGN_MIDDLE,
  LB_ALIGN_END,
} LbAlign;

/**
 * lb_text_show:
 * @size: of the font in user units, before the voice's scale
 * @width: wraps there when over 0, else one line
 * @y: top of the text
 *
 * Draws in the present source colour. Font metrics are unhinted, so that screen and paper break
 * lines alike. Returns the height used.
 */
double lb_text_show (cairo_t *cr,
                     const LbVoice *voice,
                     const char *text,
                     double size,
                     gboolean is_bold,
                     LbAlign align,
                     double x,
                     double y,
                     double width);

/* Its size without drawing it. */
void lb_text_measure (cairo_t *cr,
                      const LbVoice *voice,
                      const char *text,
                      double size,
                      gboolean is_bold,
                      double width,
                      double *out_width,
                      double *out_height);

G_END_DECLS
