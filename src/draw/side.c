/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * One pile from the side, drawn square to its lean, which points to the right.
 *
 *  1. One scale both ways: the batter on the page is the pile's own.
 *  2. What is cut loose above the cut (the piece) is told from what stays below (the stub) by
 *     tone and hatch, and by the gap once it is severed.
 *  3. Molten metal falls straight down from the cut: on the side the pile leans to, since there
 *     the stub draws back under it. The umbilical and the leads come down on the other side.
 *
 * The layout is side-layout.c, the words are side-words.c.
 */
#include "draw/side-private.h"

#include <math.h>

static const double CORNER_PX = 8;

/* A frame on the pile's axis: x to the lean side, y down along the axis, origin at an
 * elevation. */
static void
to_axis (cairo_t *cr, const LbSideLayout *layout, double elevation_m)
{
  cairo_translate (cr, lb_side_axis_x (layout, elevation_m), lb_side_y (layout, elevation_m));
  cairo_rotate (cr, layout->angle);
}

/* From the axis' elevation, down along it. */
static double
along (const LbSideLayout *layout, double from_m, double to_m)
{
  return (from_m - to_m) * layout->scale / cos (layout->angle);
}

static void
rounded_page (cairo_t *cr, double width, double height)
{
  const double r = MIN (CORNER_PX, MIN (width, height) / 2);
  cairo_new_sub_path (cr);
  cairo_arc (cr, width - r, r, r, -G_PI / 2, 0);
  cairo_arc (cr, width - r, height - r, r, 0, G_PI / 2);
  cairo_arc (cr, r, height - r, r, G_PI / 2, G_PI);
  cairo_arc (cr, r, r, r, G_PI, 3 * G_PI / 2);
  cairo_close_path (cr);
}

static void
wave_path (cairo_t *cr, double width, double y)
{
  static const double LENGTH = 34, CREST = 1.8;
  const double n = MAX (round (width / LENGTH), 1), step = width / n;
  cairo_move_to (cr, 0, y);
  for (int i = 0; i < (int) n; i++) {
    const double x = i * step;
    cairo_curve_to (cr, x + step * 0.18, y - CREST * 1.6, x + step * 0.32, y - CREST * 1.6,
                    x + step * 0.5, y);
    cairo_curve_to (cr, x + step * 0.68, y + CREST * 1.6, x + step * 0.82, y + CREST * 1.6,
                    x + step, y);
  }
}

static void
draw_water (cairo_t *cr, const LbPalette *palette, const LbSideLayout *layout)
{
  lb_ink_set (cr, palette, LB_INK_PAPER);
  cairo_paint (cr);
  if (!layout->has_water) {
    lb_ink_set (cr, palette, LB_INK_WATER);
    cairo_paint (cr);
    return;
  }
  const double y = lb_side_y (layout, layout->water_m);
  wave_path (cr, layout->width, y);
  cairo_line_to (cr, layout->width, layout->height);
  cairo_line_to (cr, 0, layout->height);
  cairo_close_path (cr);
  lb_ink_set (cr, palette, LB_INK_WATER);
  cairo_fill (cr);
  wave_path (cr, layout->width, y);
  lb_ink_set (cr, palette, LB_INK_SELECT);
  cairo_set_line_width (cr, 1.25);
  cairo_stroke (cr);
}

/* Short strokes under the mudline, in rows that thin out downward, as ground is drawn. */
static void
draw_mud (cairo_t *cr, const LbPalette *palette, const LbSideLayout *layout)
{
  if (!layout->has_mudline)
    return;
  const double y = lb_side_y (layout, layout->mudline_m);
  lb_ink_set (cr, palette, LB_INK_MUD);
  cairo_rectangle (cr, 0, y, layout->width, layout->height - y);
  cairo_fill (cr);

  static const double ACROSS = 11, LENGTH = 7;
  for (double x = -LENGTH; x < layout->width; x += ACROSS) {
    cairo_move_to (cr, x + LENGTH, y);
    cairo_line_to (cr, x, y + LENGTH);
  }
  lb_ink_set_alpha (cr, palette, LB_INK_LINE, 0.55);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
  lb_ink_set (cr, palette, LB_INK_LINE);
  cairo_set_line_width (cr, 1.5);
  cairo_move_to (cr, 0, y);
  cairo_line_to (cr, layout->width, y);
  cairo_stroke (cr);
}

/* A broken face across the pile, from its left side to its right, @tooth up and down. */
static void
broken_path (cairo_t *cr, double half, double y, double tooth)
{
  static const double SHARES[] = { -1, -0.62, -0.3, 0.12, 0.45, 0.72, 1 };
  static const double TEETH[] = { 0.1, -0.8, 0.7, -0.5, 0.9, -0.7, 0.2 };
  for (gsize i = 0; i < G_N_ELEMENTS (SHARES); i++)
    cairo_line_to (cr, half * SHARES[i], y + tooth * TEETH[i]);
}

/* A length of pile between two elevations; an end that is broken gets a jagged face. */
static void
draw_length (cairo_t *cr,
             const LbPalette *palette,
             const LbSideLayout *layout,
             double from_m,
             double to_m,
             double from_gap,
             double to_gap,
             gboolean is_stub)
{
  const double near = lb_side_half_px (layout, from_m), far = lb_side_half_px (layout, to_m);
  const double half = MAX (near, far), tooth = MIN (half * 0.35, 3.5);
  cairo_save (cr);
  to_axis (cr, layout, from_m);
  const double end = along (layout, from_m, to_m) - to_gap;
  if (end <= from_gap) {
    cairo_restore (cr);
    return;
  }
  cairo_new_path (cr);
  if (from_gap > 0) {
    broken_path (cr, near, from_gap, tooth);
  } else {
    cairo_move_to (cr, -near, 0);
    cairo_line_to (cr, near, 0);
  }
  cairo_line_to (cr, far, end);
  if (to_gap > 0)
    broken_path (cr, -far, end, tooth);
  else
    cairo_line_to (cr, -far, end);
  cairo_close_path (cr);

  lb_ink_set (cr, palette, LB_INK_PAPER);
  cairo_fill_preserve (cr);
  lb_ink_set_alpha (cr, palette, LB_INK_CONCRETE, is_stub ? 0.35 : 0.9);
  cairo_fill_preserve (cr);
  if (is_stub) {
    cairo_save (cr);
    cairo_clip_preserve (cr);
    cairo_path_t *const outline = cairo_copy_path (cr);
    cairo_new_path (cr);
    for (double y = from_gap - 2 * half; y < end + 2 * half && y < 4000; y += 5) {
      cairo_move_to (cr, -half, y + half);
      cairo_line_to (cr, half, y - half);
    }
    lb_ink_set (cr, palette, LB_INK_CONCRETE);
    cairo_set_line_width (cr, 1);
    cairo_stroke (cr);
    cairo_append_path (cr, outline);
    cairo_path_destroy (outline);
    cairo_restore (cr);
  }
  lb_ink_set (cr, palette, LB_INK_LINE);
  cairo_set_line_width (cr, 1.25);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* The bars that bridge the broken concrete. */
static void
draw_bare_bars (cairo_t *cr,
                const LbPalette *palette,
                const LbSide *side,
                const LbSideLayout *layout,
                double gap)
{
  const guint n_left = (guint) side->plan->n_order;
  /* Seen from the side the ring's bars stand behind one another: half of them can be told. */
  const guint most = (guint) CLAMP (layout->half_px * 2 / 4, 2, 8);
  const guint n = CLAMP ((n_left + 1) / 2, 1, most);
  cairo_save (cr);
  to_axis (cr, layout, layout->cut_m);
  for (guint i = 0; i < n; i++) {
    const double share = n == 1 ? 0 : 2.0 * i / (n - 1) - 1;
    const double x = share * layout->half_px * 0.68;
    cairo_move_to (cr, x, -gap - 1);
    cairo_line_to (cr, x, gap + 1);
  }
  lb_ink_set (cr, palette, LB_INK_STEEL);
  cairo_set_line_width (cr, CLAMP (layout->half_px * 0.16, 1.25, 3));
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_ghost (cairo_t *cr, const LbPalette *palette, const LbSideLayout *layout)
{
  static const double DASHES[] = { 5, 4 };
  cairo_save (cr);
  to_axis (cr, layout, layout->head_m);
  const double end = along (layout, layout->head_m, layout->foot_m);
  cairo_move_to (cr, -layout->head_half_px, 0);
  cairo_line_to (cr, layout->head_half_px, 0);
  cairo_line_to (cr, layout->foot_half_px, end);
  cairo_line_to (cr, -layout->foot_half_px, end);
  cairo_close_path (cr);
  lb_ink_set (cr, palette, LB_INK_PULLED);
  cairo_set_line_width (cr, 1.25);
  cairo_set_dash (cr, DASHES, G_N_ELEMENTS (DASHES), 0);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* The cut as it will be made, level across the axis. */
static void
draw_cut_line (cairo_t *cr, const LbPalette *palette, const LbSideLayout *layout)
{
  static const double DASHES[] = { 4, 2.5 };
  const double out = layout->half_px + 6;
  cairo_save (cr);
  to_axis (cr, layout, layout->cut_m);
  cairo_move_to (cr, -out, 0);
  cairo_line_to (cr, out, 0);
  lb_ink_set (cr, palette, LB_INK_HEAT);
  cairo_set_line_width (cr, 1.75);
  cairo_set_dash (cr, DASHES, G_N_ELEMENTS (DASHES), 0);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* Slag: sparks straight down from the low side of the cut, spreading a little, to the mud. */
static void
draw_slag (cairo_t *cr, const LbPalette *palette, const LbSide *side, const LbSideLayout *layout)
{
  const double from = lb_side_y (layout, layout->cut_m);
  const double to = MIN (
    layout->has_mudline ? lb_side_y (layout, layout->mudline_m) : layout->height, layout->height);
  const double fall = to - from;
  if (fall < 4)
    return;
  const double spread = CLAMP (fall * 0.35, 3, LB_SIDE_SLAG_SPREAD_PX);
  const double edge = layout->half_px * cos (layout->angle);
  for (int sign = side->plan->is_battered ? 1 : -1; sign <= 1; sign += 2) {
    const double x = lb_side_axis_x (layout, layout->cut_m) + sign * edge;
    cairo_move_to (cr, x - sign * MIN (edge, 4), from + 1);
    cairo_line_to (cr, x + sign * 1, from + 1);
    cairo_line_to (cr, x + sign * spread, to);
    cairo_line_to (cr, x - sign * MIN (edge, 4), to);
    cairo_close_path (cr);
    lb_ink_set_alpha (cr, palette, LB_INK_HEAT, 0.18);
    cairo_fill (cr);
    /* Sparks at fixed places: the picture is the same each time. */
    static const double SPARKS[][2] = { { 0.1, 0.18 },  { 0.5, 0.34 },  { 0.15, 0.5 },
                                        { 0.75, 0.62 }, { 0.35, 0.78 }, { 0.85, 0.92 },
                                        { 0.1, 0.95 } };
    for (gsize i = 0; i < G_N_ELEMENTS (SPARKS); i++) {
      const double down = SPARKS[i][1] * fall;
      cairo_new_sub_path (cr);
      cairo_arc (cr, x + sign * SPARKS[i][0] * spread * SPARKS[i][1], from + down, 1.1, 0,
                 2 * G_PI);
    }
    lb_ink_set (cr, palette, LB_INK_HEAT);
    cairo_fill (cr);
  }
}

/* Umbilical and leads: down from the surface on the high side to the burner at the cut. */
static void
draw_leads (cairo_t *cr, const LbPalette *palette, const LbSideLayout *layout)
{
  const double cut_y = lb_side_y (layout, layout->cut_m);
  const double water_y = lb_side_y (layout, layout->water_m);
  const double end_x = lb_side_axis_x (layout, layout->cut_m) - layout->half_px - 7;
  const double drop = cut_y - water_y, start_x = layout->leads_x;
  cairo_move_to (cr, start_x, water_y);
  cairo_curve_to (cr, start_x - 3, water_y + drop * 0.4, start_x + 6, water_y + drop * 0.75,
                  start_x, cut_y - 6);
  cairo_curve_to (cr, start_x - 1, cut_y + 1, end_x - 4, cut_y + 2, end_x, cut_y);
  lb_ink_set (cr, palette, LB_INK_SELECT);
  cairo_set_line_width (cr, 2);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_stroke (cr);
  cairo_arc (cr, end_x, cut_y, 2.5, 0, 2 * G_PI);
  cairo_fill (cr);
}

/* Sling round the head and its line up off the page. */
static void
draw_sling (cairo_t *cr, const LbPalette *palette, const LbSideLayout *layout)
{
  const double half = layout->head_half_px, down = MIN (2 * half, 10);
  cairo_save (cr);
  to_axis (cr, layout, layout->head_m);
  lb_ink_set (cr, palette, LB_INK_RIGGED);
  cairo_set_line_width (cr, 2.5);
  cairo_move_to (cr, -half - 1, down);
  cairo_line_to (cr, half + 1, down);
  cairo_stroke (cr);
  double left_x = -half, left_y = down, right_x = half, right_y = down;
  cairo_user_to_device (cr, &left_x, &left_y);
  cairo_user_to_device (cr, &right_x, &right_y);
  cairo_restore (cr);
  cairo_device_to_user (cr, &left_x, &left_y);
  cairo_device_to_user (cr, &right_x, &right_y);
  const double hook_x = lb_side_axis_x (layout, layout->head_m);
  const double hook_y = MAX (lb_side_y (layout, layout->head_m) - MAX (half * 1.6, 10), 4);
  lb_ink_set (cr, palette, LB_INK_RIGGED);
  cairo_set_line_width (cr, 1.5);
  cairo_move_to (cr, left_x, left_y);
  cairo_line_to (cr, hook_x, hook_y);
  cairo_line_to (cr, right_x, right_y);
  cairo_stroke (cr);
  cairo_move_to (cr, hook_x, hook_y);
  cairo_line_to (cr, hook_x, 0);
  cairo_stroke (cr);
  cairo_arc (cr, hook_x, hook_y, 3, 0, 2 * G_PI);
  cairo_fill (cr);
}

static void
draw_pile (cairo_t *cr, const LbPalette *palette, const LbSide *side, const LbSideLayout *layout)
{
  if (side->step == LB_STEP_PULLED) {
    draw_ghost (cr, palette, layout);
    return;
  }
  const gboolean has_piece = layout->has_cut && layout->cut_m < layout->head_m;
  if (!has_piece) {
    draw_length (cr, palette, layout, layout->head_m, layout->foot_m, 0, 0, FALSE);
    return;
  }
  const gboolean is_through = side->step == LB_STEP_SEVERED ||
                              (side->step == LB_STEP_RIGGED && side->plan->n_order == 0);
  const gboolean is_bare = side->step == LB_STEP_CLEANED ||
                           (side->step == LB_STEP_RIGGED && !is_through);
  const double gap = side->step == LB_STEP_STANDING ? 0 : CLAMP (layout->half_px * 0.7, 4, 14);
  draw_length (cr, palette, layout, layout->head_m, layout->cut_m, 0, gap, FALSE);
  draw_length (cr, palette, layout, layout->cut_m, layout->foot_m, gap, 0, TRUE);
  if (is_bare)
    draw_bare_bars (cr, palette, side, layout, gap);
  if (!is_through)
    draw_cut_line (cr, palette, layout);
}

void
lb_side_draw (cairo_t *cr,
              const LbPalette *palette,
              const LbVoice *voice,
              const LbSide *side,
              double width,
              double height)
{
  LbSideLayout layout;
  lb_side_lay_out (side, voice, width, height, &layout);

  cairo_save (cr);
  cairo_new_path (cr);
  rounded_page (cr, width, height);
  cairo_clip (cr);
  draw_water (cr, palette, &layout);
  draw_mud (cr, palette, &layout);
  if (layout.is_to_burn)
    draw_slag (cr, palette, side, &layout);
  draw_pile (cr, palette, side, &layout);
  if (side->step == LB_STEP_RIGGED)
    draw_sling (cr, palette, &layout);
  if (layout.has_leads)
    draw_leads (cr, palette, &layout);
  lb_side_draw_words (cr, palette, voice, side, &layout);
  cairo_restore (cr);

  cairo_save (cr);
  rounded_page (cr, width, height);
  lb_ink_set (cr, palette, LB_INK_HAIR);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
  cairo_restore (cr);
}
