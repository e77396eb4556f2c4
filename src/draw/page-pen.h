/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/palette.h"
#include "draw/picture-text.h"

G_BEGIN_DECLS

/* What writes a page. The same code measures a page and draws it: with @is_drawing off nothing
 * is put down, and every height comes out the same. */
typedef struct
{
  cairo_t *cr;
  const LbPalette *palette;
  LbVoice voice; /* at scale 1: paper has sizes of its own */
  gboolean is_drawing;
} LbPagePen;

typedef struct
{
  double size;
  gboolean is_bold;
  LbInk ink;
} LbPageStyle;

/* A pen that only measures, on a surface of its own; free it with lb_page_pen_clear(). */
void lb_page_pen_init_measuring (LbPagePen *pen, const LbVoice *voice);
void lb_page_pen_init_drawing (LbPagePen *pen, cairo_t *cr, const LbVoice *voice);
void lb_page_pen_clear (LbPagePen *pen);

/* @y: top of the text. Wraps at @width when over 0. Returns the height. */
double lb_page_pen_text (const LbPagePen *pen,
                         const LbPageStyle *style,
                         LbAlign align,
                         double x,
                         double y,
                         double width,
                         const char *text);

/* Of one line. */
double lb_page_pen_width (const LbPagePen *pen, const LbPageStyle *style, const char *text);

/* The largest size up to the style's, and not under @least, at which @text stays on one line. */
double lb_page_pen_fit (const LbPagePen *pen,
                        const LbPageStyle *style,
                        double least,
                        double width,
                        const char *text);

void lb_page_pen_rule (const LbPagePen *pen, LbInk ink, double line, double x, double y, double to);

/* An empty square to tick, its corner at @x, @y. */
void lb_page_pen_box (const LbPagePen *pen, double x, double y, double side);

/* A line to write on with its name before it, over all of @width. */
void lb_page_pen_blank (const LbPagePen *pen, double x, double y, double width, const char *name);

G_END_DECLS
