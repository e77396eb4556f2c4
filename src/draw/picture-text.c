/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/picture-text.h"

const LbVoice LB_VOICE_PLAIN = {
  .units = LB_UNITS_US,
  .numbers = { .decimal_point = ".", .thousands = "" },
  .font = "Sans",
  .scale = 1,
};

/* Hinted metrics differ between an image and a page, and with them the line breaks: so glyphs
 * stand where the outlines say, on every target. */
static PangoLayout *
lay_out (cairo_t *cr,
         const LbVoice *voice,
         const char *text,
         double size,
         gboolean is_bold,
         double width)
{
  PangoLayout *const layout = pango_cairo_create_layout (cr);
  PangoContext *const context = pango_layout_get_context (layout);
  cairo_font_options_t *const options = cairo_font_options_create ();
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_context_set_round_glyph_positions (context, FALSE);

  g_autoptr (PangoFontDescription) font = pango_font_description_new ();
  pango_font_description_set_family (font, voice->font);
  pango_font_description_set_weight (font, is_bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size (font, size * voice->scale * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_text (layout, text, -1);
  if (width > 0) {
    pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
    pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  }
  return layout;
}

static void
get_size (PangoLayout *layout, double *out_width, double *out_height)
{
  int width, height;
  pango_layout_get_size (layout, &width, &height);
  if (out_width != NULL)
    *out_width = (double) width / PANGO_SCALE;
  if (out_height != NULL)
    *out_height = (double) height / PANGO_SCALE;
}

double
lb_text_show (cairo_t *cr,
              const LbVoice *voice,
              const char *text,
              double size,
              gboolean is_bold,
              LbAlign align,
              double x,
              double y,
              double width)
{
  static const PangoAlignment alignments[] = {
    [LB_ALIGN_START] = PANGO_ALIGN_LEFT,
    [LB_ALIGN_MIDDLE] = PANGO_ALIGN_CENTER,
    [LB_ALIGN_END] = PANGO_ALIGN_RIGHT,
  };
  static const double shares[] = {
    [LB_ALIGN_START] = 0,
    [LB_ALIGN_MIDDLE] = 0.5,
    [LB_ALIGN_END] = 1,
  };

  g_autoptr (PangoLayout) layout = lay_out (cr, voice, text, size, is_bold, width);
  pango_layout_set_alignment (layout, alignments[align]);
  double text_width, height;
  get_size (layout, &text_width, &height);
  cairo_move_to (cr, x - shares[align] * (width > 0 ? width : text_width), y);
  pango_cairo_show_layout (cr, layout);
  cairo_new_path (cr);
  return height;
}

void
lb_text_measure (cairo_t *cr,
                 const LbVoice *voice,
                 const char *text,
                 double size,
                 gboolean is_bold,
                 double width,
                 double *out_width,
                 double *out_height)
{
  g_autoptr (PangoLayout) layout = lay_out (cr, voice, text, size, is_bold, width);
  get_size (layout, out_width, out_height);
}
