/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * The section at the cut, seen from above.
 *
 *  1. The lean points up the page, or north does for a plumb pile, as lb_pile_bars_place() has it;
 *     only y is turned over, since it grows down the page. Clockwise stays clockwise. A needle at
 *     the foot shows where north is.
 *  2. All is at one scale; only a bar is drawn larger than life when it could not be touched or
 *     read, and never so large that it meets its neighbour.
 *  3. A bar's number is its own, as crews mark it round the pile, and never changes: what is
 *     recorded, said and printed of it goes by that number. When it is burned is the second
 *     thing: an ordinal on its way to the centre. Where the discs are too small for their numbers,
 *     these stand outside the outline, each on the way out from the centre through its bar, or within
 *     it where another bar stands on that way.
 *     Else the per cent of what it may bear, when they are asked for, stand there.
 *  4. Where things lie does not depend on the voice, so that the pointer needs none; the words
 *     are made to fit the bands kept for them.
 */
#include "draw/plan-words.h"
#include "draw/section-private.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
outline_path (cairo_t *cr, const LbSectionLayout *layout)
{
  LbPoint corners[LB_OUTLINE_CORNERS_MAX];
  const gsize n = lb_outline_corners (&layout->outline, corners);
  for (gsize i = 0; i < n; i++) {
    cairo_line_to (cr, layout->centre.x + corners[i].x * layout->scale,
                   layout->centre.y - corners[i].y * layout->scale);
  }
  if (n == 0)
    cairo_arc (cr, layout->centre.x, layout->centre.y, layout->radius, 0, 2 * G_PI);
  cairo_close_path (cr);
}

static void
draw_concrete (cairo_t *cr, const LbPalette *palette, const LbSectionLayout *layout)
{
  outline_path (cr, layout);
  if (layout->outline.void_m > 0) {
    cairo_new_sub_path (cr);
    cairo_arc_negative (cr, layout->centre.x, layout->centre.y,
                        layout->outline.void_m / 2 * layout->scale, 2 * G_PI, 0);
    cairo_close_path (cr);
  }
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  lb_ink_set_alpha (cr, palette, LB_INK_CONCRETE, 0.2);
  cairo_fill_preserve (cr);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_WINDING);
  lb_ink_set (cr, palette, LB_INK_LINE);
  cairo_set_line_width (cr, 1.5);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_stroke (cr);
}

/* A bar is a disc. A strand is seven wires: six round one, so its edge is scalloped. */
static void
bar_path (cairo_t *cr, LbPoint at, double radius, gboolean is_stranded)
{
  if (!is_stranded) {
    cairo_new_sub_path (cr);
    cairo_arc (cr, at.x, at.y, radius, 0, 2 * G_PI);
    return;
  }
  const double wire = radius * 0.36;
  for (int i = 0; i < 6; i++) {
    const double angle = i * G_PI / 3;
    cairo_new_sub_path (cr);
    cairo_arc (cr, at.x + (radius - wire) * cos (angle), at.y + (radius - wire) * sin (angle), wire,
               0, 2 * G_PI);
  }
  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, radius * 0.68, 0, 2 * G_PI);
}

static void
draw_burned (cairo_t *cr, const LbPalette *palette, LbPoint at, double radius)
{
  const double perimeter = 2 * G_PI * radius;
  const double n = MAX (round (perimeter / 5), 5);
  const double dashes[] = { perimeter / n * 0.55, perimeter / n * 0.45 };
  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, radius - 0.5, 0, 2 * G_PI);
  lb_ink_set (cr, palette, LB_INK_FAINT);
  cairo_set_line_width (cr, 1);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

/* Strokes toward the middle from four sides of where a bar was that somebody found gone; its number
 * stands between them when @inner leaves room. */
static void
draw_cross (cairo_t *cr, const LbPalette *palette, LbPoint at, double inner, double outer)
{
  for (int arm = 0; arm < 4; arm++) {
    const double angle = G_PI_4 + arm * G_PI_2;
    cairo_move_to (cr, at.x + inner * cos (angle), at.y + inner * sin (angle));
    cairo_line_to (cr, at.x + outer * cos (angle), at.y + outer * sin (angle));
  }
  lb_ink_set (cr, palette, LB_INK_FAINT);
  cairo_set_line_width (cr, 2);
  cairo_stroke (cr);
}

/* A number within its bar; those that stand outside are words (section-words.c). */
static void
draw_number (cairo_t *cr,
             const LbVoice *voice,
             const LbSectionLayout *layout,
             guint bar,
             const LbColour *ink)
{
  if (layout->has_numbers_outside)
    return;
  const LbVoice plain = lb_section_plain_voice (voice);
  const guint number = bar + 1;
  g_autofree char *text = g_strdup_printf ("%u", number);
  const double size = MIN (layout->bar_radius * (number > 9 ? 1.0 : 1.25), 22);
  const LbPoint at = layout->bars[bar];
  double text_height;
  lb_text_measure (cr, &plain, text, size, TRUE, 0, NULL, &text_height);
  cairo_set_source_rgb (cr, ink->r, ink->g, ink->b);
  lb_text_show (cr, &plain, text, size, TRUE, LB_ALIGN_MIDDLE, at.x, at.y - text_height / 2, 0);
}

/* Outside the bar where there is room between two, else on its rim. */
static void
draw_hold_ring (cairo_t *cr, const LbPalette *palette, const LbSectionLayout *layout, guint bar)
{
  static const double OFF = 2.5, WIDTH = 2;
  const LbPoint at = layout->bars[bar];
  const double width = layout->has_rings ? WIDTH : MIN (WIDTH, layout->bar_radius * 0.5);
  const double radius = layout->has_rings ? layout->bar_radius + OFF
                                          : layout->bar_radius - width / 2;
  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, radius, 0, 2 * G_PI);
  lb_ink_set (cr, palette, LB_INK_RIGGED);
  cairo_set_line_width (cr, width);
  cairo_stroke (cr);
}

/* The next one to burn is hot; its ordinal says the same. */
static gboolean
is_next_bar (const LbSection *section, guint bar)
{
  return section->n_done < section->plan->n_order && section->plan->order[section->n_done] == bar &&
         lb_section_tells_order (section->pile);
}

/* Filled by what it bears, the rim saying what a plain bar's fill says. */
static void
draw_loaded_bar (cairo_t *cr,
                 const LbPalette *palette,
                 const LbVoice *voice,
                 const LbSection *section,
                 const LbSectionLayout *layout,
                 guint bar)
{
  static const double RIM = 1, HEAVY_RIM = 2.5;
  const double share = section->shares->share[bar];
  const gboolean is_over = share > 1;
  const LbColour fill = isnan (share) ? palette->inks[LB_INK_STEEL]
                                      : lb_palette_ramp (palette, share);
  const LbColour on_fill = lb_colour_on (&fill);
  const double rim = is_over || is_next_bar (section, bar) ? HEAVY_RIM : RIM;
  cairo_new_sub_path (cr);
  cairo_arc (cr, layout->bars[bar].x, layout->bars[bar].y, layout->bar_radius - rim / 2, 0,
             2 * G_PI);
  cairo_set_source_rgb (cr, fill.r, fill.g, fill.b);
  cairo_fill_preserve (cr);
  lb_ink_set (cr, palette, is_over ? LB_INK_FLAG : rim > RIM ? LB_INK_HEAT : LB_INK_LINE);
  cairo_set_line_width (cr, rim);
  cairo_stroke (cr);
  draw_number (cr, voice, layout, bar, &on_fill);
}

static void
draw_gone_bar (cairo_t *cr,
               const LbPalette *palette,
               const LbVoice *voice,
               const LbSection *section,
               const LbSectionLayout *layout,
               guint bar)
{
  if (section->plan->gone & LB_BAR (bar))
    draw_cross (cr, palette, layout->bars[bar],
                layout->has_numbers_outside ? 0 : layout->bar_radius * 0.6, layout->bar_radius);
  else
    draw_burned (cr, palette, layout->bars[bar], layout->bar_radius);
  draw_number (cr, voice, layout, bar, &palette->inks[LB_INK_DIM_TEXT]);
  if (bar != section->going || !(section->going_left > 0))
    return;
  bar_path (cr, layout->bars[bar], layout->bar_radius, FALSE);
  lb_ink_set_alpha (cr, palette, LB_INK_HEAT, section->going_left);
  cairo_fill (cr);
}

static void
draw_bar (cairo_t *cr,
          const LbPalette *palette,
          const LbVoice *voice,
          const LbSection *section,
          const LbSectionLayout *layout,
          guint bar)
{
  if (section->burned & LB_BAR (bar)) {
    draw_gone_bar (cr, palette, voice, section, layout, bar);
    return;
  }
  if (section->shares != NULL) {
    draw_loaded_bar (cr, palette, voice, section, layout, bar);
  } else {
    /* Without room for a ring about it, a bar kept until the hook is on is hollow. */
    const gboolean is_hollow = lb_section_is_hold_bar (section->plan, bar) && !layout->has_rings;
    bar_path (cr, layout->bars[bar], layout->bar_radius, !lb_section_tells_order (section->pile));
    lb_ink_set (cr, palette,
                is_hollow                    ? LB_INK_PAPER
                : is_next_bar (section, bar) ? LB_INK_HEAT
                                             : LB_INK_STEEL);
    cairo_fill (cr);
    draw_number (cr, voice, layout, bar, &palette->inks[is_hollow ? LB_INK_TEXT : LB_INK_ON_STEP]);
  }
  if (lb_section_is_hold_bar (section->plan, bar))
    draw_hold_ring (cr, palette, layout, bar);
}

static void
draw_bars (cairo_t *cr,
           const LbPalette *palette,
           const LbVoice *voice,
           const LbSection *section,
           const LbSectionLayout *layout)
{
  for (guint i = 0; i < layout->n_bars; i++)
    draw_bar (cr, palette, voice, section, layout, i);
  lb_section_draw_bar_words (cr, palette, voice, section, layout);
  if (section->focus >= 0 && (guint) section->focus < layout->n_bars) {
    const LbPoint at = layout->bars[section->focus];
    cairo_new_sub_path (cr);
    cairo_arc (cr, at.x, at.y, layout->bar_radius + 2, 0, 2 * G_PI);
    lb_ink_set (cr, palette, LB_INK_SELECT);
    cairo_set_line_width (cr, 2.5);
    cairo_stroke (cr);
  }
}

/* Words of one line, made smaller where the band or the page is too narrow for them; returns how
 * wide they are. */
static double
draw_fitted (cairo_t *cr,
             const LbVoice *voice,
             const char *text,
             double size,
             double x,
             double y,
             double width,
             double height)
{
  double text_width, text_height;
  lb_text_measure (cr, voice, text, size, FALSE, 0, &text_width, &text_height);
  const double fit = MIN (MIN (width / text_width, height / text_height), 1);
  lb_text_show (cr, voice, text, size * fit, FALSE, LB_ALIGN_MIDDLE, x,
                y + (height - text_height * fit) / 2, 0);
  return text_width * fit;
}

/* Over the outline: an arrow up the page where the pile leans that way, and the words for it. */
static void
draw_lean (cairo_t *cr,
           const LbPalette *palette,
           const LbVoice *voice,
           const LbSection *section,
           const LbSectionLayout *layout,
           double width)
{
  static const double SIZE = 11, HEAD = 3.5, ROOM = 12;
  const double x = layout->centre.x, y = layout->title, height = layout->lean - 2;
  lb_ink_set (cr, palette, LB_INK_DIM_TEXT);
  if (!section->plan->is_battered) {
    draw_fitted (cr, voice, section->plan->is_lean_known ? _ ("plumb") : _ ("lean not known"), SIZE,
                 x, y, width - 4, height);
    return;
  }
  const LbCompass side = lb_compass_nearest (section->pile->bearing_rad);
  g_autofree char *words = g_strdup_printf (_ ("leans %s"),
                                            g_dgettext (GETTEXT_PACKAGE, lb_compass_name (side)));
  const double half =
    draw_fitted (cr, voice, words, SIZE, x + ROOM / 2, y, width - 4 - ROOM, height) / 2;
  const double arrow_x = x + ROOM / 2 - half - ROOM + HEAD;
  const double from = y + height - 1, to = y + 2;
  lb_ink_set (cr, palette, LB_INK_LINE);
  cairo_set_line_width (cr, 1.5);
  cairo_move_to (cr, arrow_x, from);
  cairo_line_to (cr, arrow_x, to);
  cairo_move_to (cr, arrow_x - HEAD, to + HEAD);
  cairo_line_to (cr, arrow_x, to);
  cairo_line_to (cr, arrow_x + HEAD, to + HEAD);
  cairo_stroke (cr);
}

/* At the foot: a needle to the north, its letter upright however it is turned. */
static void
draw_north (cairo_t *cr,
            const LbPalette *palette,
            const LbVoice *voice,
            const LbSection *section,
            const LbSectionLayout *layout,
            double height)
{
  /* Shares of half the band. */
  static const double LETTER = 0.7, TIP = 0.35, TAIL = -0.8, NOTCH = -0.55, WING = 0.28;
  const LbVoice plain = lb_section_plain_voice (voice);
  const char *const letter = C_ ("north arrow", "N");
  const double half = layout->foot / 2;
  const LbPoint at = { layout->centre.x, height - half };
  const LbPoint north = lb_section_north (section);
  double letter_height;

  cairo_save (cr);
  cairo_translate (cr, at.x, at.y);
  cairo_scale (cr, half, half);
  cairo_rotate (cr, atan2 (north.x, -north.y));
  cairo_move_to (cr, 0, -TIP);
  cairo_line_to (cr, WING, -TAIL);
  cairo_line_to (cr, 0, -NOTCH);
  cairo_line_to (cr, -WING, -TAIL);
  cairo_close_path (cr);
  cairo_restore (cr);
  lb_ink_set (cr, palette, LB_INK_LINE);
  cairo_fill (cr);

  const double size = half * 0.65;
  lb_text_measure (cr, &plain, letter, size, TRUE, 0, NULL, &letter_height);
  lb_ink_set (cr, palette, LB_INK_TEXT);
  lb_text_show (cr, &plain, letter, size, TRUE, LB_ALIGN_MIDDLE, at.x + north.x * half * LETTER,
                at.y + north.y * half * LETTER - letter_height / 2, 0);
}

/* At the foot, beside the needle: what the crosses mean. */
static void
draw_gone_legend (cairo_t *cr,
                  const LbPalette *palette,
                  const LbVoice *voice,
                  const LbSectionLayout *layout,
                  double height)
{
  static const double SIZE = 11, CROSS = 5, GAP = 4;
  const double band = layout->foot / 2, y = height - layout->foot / 2;
  const double room = layout->centre.x - band - 2 * CROSS - 3 * GAP;
  double text_width, text_height;
  draw_cross (cr, palette, (LbPoint){ GAP + CROSS, y }, 0, CROSS);
  lb_text_measure (cr, voice, _ ("found gone"), SIZE, FALSE, 0, &text_width, &text_height);
  const double fit = MIN (room / text_width, 1);
  lb_ink_set (cr, palette, LB_INK_DIM_TEXT);
  lb_text_show (cr, voice, _ ("found gone"), SIZE * fit, FALSE, LB_ALIGN_START, 2 * GAP + 2 * CROSS,
                y - text_height * fit / 2, 0);
}

/* In the middle, that there is nothing to draw there. */
static void
draw_bars_unknown (cairo_t *cr,
                   const LbPalette *palette,
                   const LbVoice *voice,
                   const LbSectionLayout *layout)
{
  const char *const words = _ ("bars not known");
  const double width = layout->radius * 1.5;
  double text_height;
  lb_text_measure (cr, voice, words, 11, FALSE, width, NULL, &text_height);
  lb_ink_set (cr, palette, LB_INK_TEXT);
  lb_text_show (cr, voice, words, 11, FALSE, LB_ALIGN_MIDDLE, layout->centre.x,
                layout->centre.y - text_height / 2, width);
}

gboolean
lb_section_tells_order (const LbPile *pile)
{
  return pile->bar == NULL || pile->bar->kind != LB_BAR_STRAND;
}

LbPoint
lb_section_north (const LbSection *section)
{
  /* Up the page is the bearing of the lean, and bearings go clockwise. */
  const double up = section->plan->is_battered ? section->pile->bearing_rad : 0;
  return (LbPoint){ -sin (up), -cos (up) };
}

void
lb_section_draw (cairo_t *cr,
                 const LbPalette *palette,
                 const LbVoice *voice,
                 const LbSection *section,
                 double width,
                 double height)
{
  LbSectionLayout layout;
  lb_section_lay_out (section, width, height, &layout);
  cairo_save (cr);
  cairo_new_path (cr);
  lb_ink_set (cr, palette, LB_INK_DIM_TEXT);
  const gboolean has_width = section->plan->outline.width_m > 0;
  draw_fitted (cr, voice, has_width ? _ ("section, looking down") : _ ("section, width not known"),
               11, width / 2, 0, width - 4, layout.title - 2);
  draw_concrete (cr, palette, &layout);
  draw_bars (cr, palette, voice, section, &layout);
  if (layout.n_bars == 0)
    draw_bars_unknown (cr, palette, voice, &layout);
  draw_lean (cr, palette, voice, section, &layout, width);
  draw_north (cr, palette, voice, section, &layout, height);
  if (section->plan->gone != 0)
    draw_gone_legend (cr, palette, voice, &layout, height);
  cairo_restore (cr);
}

void
lb_section_legend_draw (cairo_t *cr,
                        const LbPalette *palette,
                        const LbVoice *voice,
                        double width,
                        double height)
{
  static const double SIZE = 9, STRIP = 8, EDGE = 14;
  enum {
    N_PARTS = 40,
    N_MARKS = 3
  };
  const double words_width = width * 0.42;
  const double left = words_width + EDGE, strip_width = width - left - EDGE;
  double text_height;
  lb_text_measure (cr, voice, _ ("Of what the bars may bear:"), SIZE, FALSE, words_width, NULL,
                   &text_height);
  lb_ink_set (cr, palette, LB_INK_DIM_TEXT);
  lb_text_show (cr, voice, _ ("Of what the bars may bear:"), SIZE, FALSE, LB_ALIGN_START, 0,
                MAX ((height - text_height) / 2, 0), words_width);

  for (int i = 0; i < N_PARTS; i++) {
    const LbColour fill = lb_palette_ramp (palette, (i + 0.5) / N_PARTS);
    cairo_set_source_rgb (cr, fill.r, fill.g, fill.b);
    cairo_rectangle (cr, left + strip_width * i / N_PARTS, 1, strip_width / N_PARTS + 0.5, STRIP);
    cairo_fill (cr);
  }
  lb_ink_set (cr, palette, LB_INK_LINE);
  cairo_set_line_width (cr, 1);
  cairo_rectangle (cr, left, 1, strip_width, STRIP);
  cairo_stroke (cr);
  lb_ink_set (cr, palette, LB_INK_DIM_TEXT);
  for (int i = 0; i < N_MARKS; i++) {
    const double share = (double) i / (N_MARKS - 1);
    g_autofree char *text = lb_voice_quantity (voice, LB_QUANTITY_SHARE, share);
    lb_text_show (cr, voice, text, SIZE, FALSE, LB_ALIGN_MIDDLE, left + strip_width * share,
                  STRIP + 3, 0);
  }
}
