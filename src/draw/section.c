/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * The section at the cut, seen from above.
 *
 *  1. The lean points down the page, so the drawing is the plan of the bars (lb_bar_ring_place)
 *     turned half round: the page's x is −x and, y being down there, its y is y. Nothing is
 *     mirrored: clockwise stays clockwise.
 *  2. All is at one scale; only a bar is drawn larger than life when it could not be touched or
 *     read, and never so large that it meets its neighbour.
 *  3. Where the discs are too small for their numbers, the numbers stand outside the outline,
 *     each on the way out from the centre through its bar.
 *  4. Where things lie does not depend on the voice, so that the pointer needs none; the words
 *     are made to fit the bands kept for them.
 */
#include "draw/section.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Drawn for a pile whose width is not known: 16 in, a usual one (common practice). */
static const double USUAL_WIDTH_M = 0.4064;
static const double USUAL_BAR_M = 0.0254; /* and a #8 bar */

static const double READABLE_RADIUS = 10;   /* of a disc with its number inside */
static const double NUMBER_INSIDE_FROM = 7; /* smaller ones have it outside */
static const double LEAST_RADIUS = 2;
static const double REACH_PX = 14; /* of a finger, see the header */

typedef struct
{
  LbPoint centre;
  double scale;       /* px per m */
  double radius;      /* half the outline's width, px */
  double top, bottom; /* height of the bands for words */
  double bar_radius;
  gboolean has_numbers_outside;
  guint n_bars;
  LbPoint bars[LB_BARS_MAX]; /* on the page */
  LbOutline outline;
} Layout;

static double
distance (LbPoint a, LbPoint b)
{
  return hypot (a.x - b.x, a.y - b.y);
}

/* The outline and places to draw: the pile's, or usual ones for a width not known. */
static void
find_places (const LbSection *section, Layout *layout, LbPoint places[LB_BARS_MAX])
{
  const LbPile *const pile = section->pile;
  layout->outline = pile->outline;
  layout->n_bars = MIN (pile->n_bars, LB_BARS_MAX);
  if (pile->outline.width_m <= 0)
    layout->outline.width_m = USUAL_WIDTH_M;
  if (layout->n_bars > 0)
    lb_bar_ring_place (&layout->outline,
                       MIN (lb_pile_bar_inset (pile), layout->outline.width_m * 0.45),
                       layout->n_bars, places);
}

/* Half the least distance between two bars on the page; with at most 60 of them, by all pairs. */
static double
half_spacing (const Layout *layout)
{
  double least = INFINITY;
  for (guint i = 0; i < layout->n_bars; i++)
    for (guint j = i + 1; j < layout->n_bars; j++)
      least = MIN (least, distance (layout->bars[i], layout->bars[j]) / 2);
  return least;
}

static void
place_bars (Layout *layout, const LbPoint places[LB_BARS_MAX], double bar_m)
{
  layout->scale = 2 * layout->radius / layout->outline.width_m;
  for (guint i = 0; i < layout->n_bars; i++) {
    layout->bars[i] = (LbPoint){ layout->centre.x - places[i].x * layout->scale,
                                 layout->centre.y + places[i].y * layout->scale };
  }
  const double wanted = MAX (bar_m / 2 * layout->scale, READABLE_RADIUS);
  /* Not over the face, nor into the void, nor onto the next bar. */
  double room = MIN (half_spacing (layout) - 1, layout->radius * 0.3);
  for (guint i = 0; i < layout->n_bars; i++) {
    const double to_void = distance (layout->bars[i], layout->centre) -
                           layout->outline.void_m / 2 * layout->scale;
    room = MIN (room, to_void - 2);
  }
  layout->bar_radius = MAX (MIN (wanted, room), LEAST_RADIUS);
}

static void
lay_out (const LbSection *section, double width, double height, Layout *layout)
{
  static const double NUMBER_BAND = 13; /* outside the outline */
  LbPoint places[LB_BARS_MAX];
  find_places (section, layout, places);
  const LbBar *const bar = section->pile->bar;
  const double bar_m = bar != NULL ? bar->diameter_m : USUAL_BAR_M;

  layout->top = CLAMP (height * 0.11, 16, 30);
  layout->bottom = CLAMP (height * 0.19, 30, 46);
  layout->centre = (LbPoint){ width / 2, (height - layout->bottom + layout->top) / 2 };
  layout->radius = MAX (MIN (width, height - layout->top - layout->bottom) / 2 - 5, 4);
  layout->has_numbers_outside = FALSE;
  place_bars (layout, places, bar_m);
  if (layout->n_bars > 0 && layout->bar_radius < NUMBER_INSIDE_FROM) {
    layout->has_numbers_outside = TRUE;
    layout->radius = MAX (layout->radius - NUMBER_BAND, 4);
    place_bars (layout, places, bar_m);
  }
}

static void
outline_path (cairo_t *cr, const Layout *layout)
{
  LbPoint corners[LB_OUTLINE_CORNERS_MAX];
  const gsize n = lb_outline_corners (&layout->outline, corners);
  for (gsize i = 0; i < n; i++) {
    cairo_line_to (cr, layout->centre.x - corners[i].x * layout->scale,
                   layout->centre.y + corners[i].y * layout->scale);
  }
  if (n == 0)
    cairo_arc (cr, layout->centre.x, layout->centre.y, layout->radius, 0, 2 * G_PI);
  cairo_close_path (cr);
}

static void
draw_concrete (cairo_t *cr, const LbPalette *palette, const Layout *layout)
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
bar_path (cairo_t *cr, LbPoint at, double radius, gboolean is_strand)
{
  if (!is_strand) {
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

/* Outside, the number stands where the way from the centre through the bar leaves a like outline
 * a little larger. */
static LbPoint
number_place (const Layout *layout, guint bar)
{
  static const double OFF = 9;
  const LbPoint at = layout->bars[bar];
  if (!layout->has_numbers_outside)
    return at;
  const double dx = at.x - layout->centre.x, dy = at.y - layout->centre.y;
  const double reach = layout->outline.shape == LB_SHAPE_SQUARE ? MAX (fabs (dx), fabs (dy))
                                                                : hypot (dx, dy);
  const double stretch = reach > 0 ? (layout->radius + OFF) / reach : 1;
  return (LbPoint){ layout->centre.x + dx * stretch, layout->centre.y + dy * stretch };
}

static void
draw_number (cairo_t *cr,
             const LbPalette *palette,
             const LbVoice *voice,
             const Layout *layout,
             guint bar,
             guint number)
{
  /* The number is part of the drawing and grows with it, not with the text. */
  LbVoice plain = *voice;
  plain.scale = 1;
  g_autofree char *text = g_strdup_printf ("%u", number);
  const double digits = number > 9 ? 1.0 : 1.25;
  const double size = layout->has_numbers_outside ? 8.5 : MIN (layout->bar_radius * digits, 13);
  const LbPoint at = number_place (layout, bar);
  double text_height;
  lb_text_measure (cr, &plain, text, size, TRUE, 0, NULL, &text_height);
  lb_ink_set (cr, palette, layout->has_numbers_outside ? LB_INK_TEXT : LB_INK_ON_STEP);
  lb_text_show (cr, &plain, text, size, TRUE, LB_ALIGN_MIDDLE, at.x, at.y - text_height / 2, 0);
}

static void
draw_bars (cairo_t *cr,
           const LbPalette *palette,
           const LbVoice *voice,
           const LbSection *section,
           const Layout *layout)
{
  const gboolean is_strand = section->pile->bar != NULL &&
                             section->pile->bar->kind == LB_BAR_STRAND;
  for (guint i = 0; i < layout->n_bars; i++) {
    if (section->burned & LB_BAR (i))
      draw_burned (cr, palette, layout->bars[i], layout->bar_radius);
  }
  for (gsize k = 0; k < section->plan->n_order; k++) {
    const guint bar = section->plan->order[k];
    if (bar >= layout->n_bars || (section->burned & LB_BAR (bar)))
      continue;
    bar_path (cr, layout->bars[bar], layout->bar_radius, is_strand);
    /* The next one to burn is hot; its number says the same. Stressed strands get no order: no
     * bar rule holds for them. */
    lb_ink_set (cr, palette, k == 0 && !is_strand ? LB_INK_HEAT : LB_INK_STEEL);
    cairo_fill (cr);
    if (!is_strand)
      draw_number (cr, palette, voice, layout, bar, (guint) k + 1);
  }
  if (section->focus >= 0 && (guint) section->focus < layout->n_bars) {
    const LbPoint at = layout->bars[section->focus];
    cairo_arc (cr, at.x, at.y, layout->bar_radius + 2, 0, 2 * G_PI);
    lb_ink_set (cr, palette, LB_INK_SELECT);
    cairo_set_line_width (cr, 2.5);
    cairo_stroke (cr);
  }
}

/* Words of one line, made smaller where the band or the page is too narrow for them. */
static void
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
}

/* Down the page: the lean, or north for a plumb pile. */
static void
draw_direction (cairo_t *cr,
                const LbPalette *palette,
                const LbVoice *voice,
                const LbSection *section,
                const Layout *layout,
                double width,
                double height)
{
  static const double HEAD = 4, ARROW = 12, SIZE = 11;
  const double x = layout->centre.x;
  const double from = height - layout->bottom + 2, to = from + ARROW;
  lb_ink_set (cr, palette, LB_INK_LINE);
  cairo_set_line_width (cr, 1.5);
  cairo_move_to (cr, x, from);
  cairo_line_to (cr, x, to - 1);
  cairo_stroke (cr);
  cairo_move_to (cr, x - HEAD, to - HEAD);
  cairo_line_to (cr, x, to);
  cairo_line_to (cr, x + HEAD, to - HEAD);
  cairo_stroke (cr);

  g_autofree char *words = NULL;
  if (section->plan->is_battered) {
    const LbCompass side = lb_compass_nearest (section->pile->bearing_rad);
    words = g_strdup_printf (_ ("leans %s"), g_dgettext (GETTEXT_PACKAGE, lb_compass_name (side)));
  } else {
    words = g_strdup (g_dgettext (GETTEXT_PACKAGE, lb_compass_name (LB_COMPASS_N)));
  }
  lb_ink_set (cr, palette, LB_INK_DIM_TEXT);
  draw_fitted (cr, voice, words, SIZE, x, to + 1, width - 4, height - to - 2);
}

/* In the middle, that there is nothing to draw there. */
static void
draw_bars_unknown (cairo_t *cr,
                   const LbPalette *palette,
                   const LbVoice *voice,
                   const Layout *layout)
{
  const char *const words = _ ("bars not known");
  const double width = layout->radius * 1.5;
  double text_height;
  lb_text_measure (cr, voice, words, 11, FALSE, width, NULL, &text_height);
  lb_ink_set (cr, palette, LB_INK_TEXT);
  lb_text_show (cr, voice, words, 11, FALSE, LB_ALIGN_MIDDLE, layout->centre.x,
                layout->centre.y - text_height / 2, width);
}

void
lb_section_draw (cairo_t *cr,
                 const LbPalette *palette,
                 const LbVoice *voice,
                 const LbSection *section,
                 double width,
                 double height)
{
  Layout layout;
  lay_out (section, width, height, &layout);
  cairo_save (cr);
  cairo_new_path (cr);
  lb_ink_set (cr, palette, LB_INK_DIM_TEXT);
  const gboolean has_width = section->pile->outline.width_m > 0;
  draw_fitted (cr, voice, has_width ? _ ("section, looking down") : _ ("section, width not known"),
               11, width / 2, 0, width - 4, layout.top - 2);
  draw_concrete (cr, palette, &layout);
  draw_bars (cr, palette, voice, section, &layout);
  if (layout.n_bars == 0)
    draw_bars_unknown (cr, palette, voice, &layout);
  draw_direction (cr, palette, voice, section, &layout, width, height);
  cairo_restore (cr);
}

int
lb_section_bar_at (const LbSection *section, double width, double height, double x, double y)
{
  Layout layout;
  lay_out (section, width, height, &layout);
  const double reach = MAX (REACH_PX, layout.bar_radius + 2);
  int nearest = -1;
  double nearest_px = INFINITY;
  for (guint i = 0; i < layout.n_bars; i++) {
    const double away = distance (layout.bars[i], (LbPoint){ x, y });
    if (away <= reach && away < nearest_px) {
      nearest = (int) i;
      nearest_px = away;
    }
  }
  return nearest;
}

LbPoint
lb_section_bar_place (const LbSection *section, double width, double height, guint bar)
{
  Layout layout;
  lay_out (section, width, height, &layout);
  g_return_val_if_fail (bar < layout.n_bars, layout.centre);

  return layout.bars[bar];
}
