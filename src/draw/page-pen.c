/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/page-pen.h"

#define BLANK_SIZE 9.0

static void
init (LbPagePen *pen, cairo_t *cr, const LbVoice *voice)
{
  *pen = (LbPagePen){
    .cr = cr,
    .palette = lb_palette (LB_PALETTE_PRINT),
    .voice = *voice,
  };
  pen->voice.scale = 1;
}

void
lb_page_pen_init_measuring (LbPagePen *pen, const LbVoice *voice)
{
  cairo_surface_t *const scratch = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  init (pen, cairo_create (scratch), voice);
  cairo_surface_destroy (scratch);
}

void
lb_page_pen_init_drawing (LbPagePen *pen, cairo_t *cr, const LbVoice *voice)
{
  init (pen, cairo_reference (cr), voice);
  pen->is_drawing = TRUE;
}

void
lb_page_pen_clear (LbPagePen *pen)
{
  g_clear_pointer (&pen->cr, cairo_destroy);
}

double
lb_page_pen_text (const LbPagePen *pen,
                  const LbPageStyle *style,
                  LbAlign align,
                  double x,
                  double y,
                  double width,
                  const char *text)
{
  if (pen->is_drawing) {
    lb_ink_set (pen->cr, pen->palette, style->ink);
    return lb_text_show (pen->cr, &pen->voice, text, style->size, style->is_bold, align, x, y,
                         width);
  }
  double text_w, text_h;
  lb_text_measure (pen->cr, &pen->voice, text, style->size, style->is_bold, width, &text_w,
                   &text_h);
  return text_h;
}

double
lb_page_pen_width (const LbPagePen *pen, const LbPageStyle *style, const char *text)
{
  double width, height;
  lb_text_measure (pen->cr, &pen->voice, text, style->size, style->is_bold, 0, &width, &height);
  return width;
}

double
lb_page_pen_fit (const LbPagePen *pen,
                 const LbPageStyle *style,
                 double least,
                 double width,
                 const char *text)
{
  const double text_w = lb_page_pen_width (pen, style, text);
  if (text_w <= width)
    return style->size;
  return MAX (least, style->size * width / text_w);
}

void
lb_page_pen_rule (const LbPagePen *pen, LbInk ink, double line, double x, double y, double to)
{
  if (!pen->is_drawing)
    return;
  lb_ink_set (pen->cr, pen->palette, ink);
  cairo_set_line_width (pen->cr, line);
  cairo_move_to (pen->cr, x, y);
  cairo_line_to (pen->cr, to, y);
  cairo_stroke (pen->cr);
}

void
lb_page_pen_box (const LbPagePen *pen, double x, double y, double side)
{
  if (!pen->is_drawing)
    return;
  lb_ink_set (pen->cr, pen->palette, LB_INK_LINE);
  cairo_set_line_width (pen->cr, 0.8);
  cairo_rectangle (pen->cr, x, y, side, side);
  cairo_stroke (pen->cr);
}

void
lb_page_pen_blank (const LbPagePen *pen, double x, double y, double width, const char *name)
{
  const LbPageStyle style = { .size = BLANK_SIZE, .ink = LB_INK_TEXT };
  double name_w, name_h;
  lb_text_measure (pen->cr, &pen->voice, name, style.size, FALSE, 0, &name_w, &name_h);
  lb_page_pen_text (pen, &style, LB_ALIGN_START, x, y, 0, name);
  lb_page_pen_rule (pen, LB_INK_LINE, 0.7, x + name_w + 4, y + name_h, x + width);
}
