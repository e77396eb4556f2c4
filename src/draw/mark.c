/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * The marks of the plan. One idea rules them: ink is work left. From standing to pulled each mark
 * lays down less ink on the page than the one before, whatever its colour, so that the pier fades
 * as the job goes (tests/draw/test-mark measures it). The steps differ by shape first:
 *
 *   standing  solid          cleaned  heavy outline, core, arc of bars left
 *   severed   two halves     rigged   thin outline, sling line and loop
 *   pulled    thin dashes
 *
 * All is drawn about the origin in user units. Widths are whole units wherever the mark is large
 * enough, and gaps are even ones, so that edges fall on pixels when the origin does. Under
 * DOTS_BELOW nothing of that can be seen, and the mark becomes a square of whole pixels.
 */
#include "draw/mark.h"

#include <math.h>

static const double DOTS_BELOW =
  6; /* units across; from trials on a screen, below it shapes blur */

/* tan (22.5°): half a side of an octagon, by half its width across flats. */
static const double OCTAGON_HALF_SIDE = 0.41421356237309503;

/* A whole number of units, at least @least. */
static double
whole (double width, double least)
{
  return MAX (round (width), least);
}

static void
outline_path (cairo_t *cr, LbShape shape, double radius)
{
  const double half_side = OCTAGON_HALF_SIDE * radius;
  switch (shape) {
  case LB_SHAPE_SQUARE:
    cairo_rectangle (cr, -radius, -radius, 2 * radius, 2 * radius);
    break;
  case LB_SHAPE_OCTAGON:
    cairo_move_to (cr, -half_side, -radius);
    cairo_line_to (cr, half_side, -radius);
    cairo_line_to (cr, radius, -half_side);
    cairo_line_to (cr, radius, half_side);
    cairo_line_to (cr, half_side, radius);
    cairo_line_to (cr, -half_side, radius);
    cairo_line_to (cr, -radius, half_side);
    cairo_line_to (cr, -radius, -half_side);
    cairo_close_path (cr);
    break;
  case LB_SHAPE_ROUND:
    cairo_new_sub_path (cr);
    cairo_arc (cr, 0, 0, radius, 0, 2 * G_PI);
    cairo_close_path (cr);
    break;
  default:
    g_assert_not_reached ();
  }
}

/* The part of the outline over (@side −1) or under (+1) a gap of twice @half_gap. */
static void
half_path (cairo_t *cr, LbShape shape, double radius, double half_gap, double side)
{
  const double half_side = OCTAGON_HALF_SIDE * radius;
  const double shoulder = MAX (half_side, half_gap);
  switch (shape) {
  case LB_SHAPE_SQUARE:
    cairo_rectangle (cr, -radius, side < 0 ? -radius : half_gap, 2 * radius, radius - half_gap);
    break;
  case LB_SHAPE_OCTAGON:
    cairo_move_to (cr, -radius, side * half_gap);
    cairo_line_to (cr, -radius, side * shoulder);
    cairo_line_to (cr, -half_side, side * radius);
    cairo_line_to (cr, half_side, side * radius);
    cairo_line_to (cr, radius, side * shoulder);
    cairo_line_to (cr, radius, side * half_gap);
    cairo_close_path (cr);
    break;
  case LB_SHAPE_ROUND: {
    const double from = asin (half_gap / radius);
    cairo_new_sub_path (cr);
    if (side > 0)
      cairo_arc (cr, 0, 0, radius, from, G_PI - from);
    else
      cairo_arc (cr, 0, 0, radius, G_PI + from, 2 * G_PI - from);
    cairo_close_path (cr);
    break;
  }
  default:
    g_assert_not_reached ();
  }
}

static double
outline_perimeter (LbShape shape, double radius)
{
  switch (shape) {
  case LB_SHAPE_SQUARE:
    return 8 * radius;
  case LB_SHAPE_OCTAGON:
    return 16 * OCTAGON_HALF_SIDE * radius;
  case LB_SHAPE_ROUND:
    return 2 * G_PI * radius;
  default:
    g_assert_not_reached ();
  }
}

static void
draw_standing (cairo_t *cr, const LbPalette *palette, const LbMark *mark, double size)
{
  outline_path (cr, mark->shape, size / 2);
  lb_ink_set (cr, palette, LB_INK_STANDING);
  cairo_fill (cr);
}

/* Bars left as a share of the ring, clockwise from the top; what is burned is a hair. */
static void
draw_bars_arc (cairo_t *cr, const LbPalette *palette, double share, double size)
{
  const double width = MAX (size * 0.06, 1.5);
  const double radius = size / 2 + whole (size * 0.08, 1) + width / 2 + size * 0.04;

  cairo_set_line_width (cr, 1);
  lb_ink_set (cr, palette, LB_INK_HAIR);
  cairo_arc (cr, 0, 0, radius, 0, 2 * G_PI);
  cairo_stroke (cr);
  if (share <= 0)
    return;
  cairo_set_line_width (cr, width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  lb_ink_set (cr, palette, LB_INK_CLEANED);
  cairo_arc (cr, 0, 0, radius, -G_PI / 2, -G_PI / 2 + 2 * G_PI * MIN (share, 1));
  cairo_stroke (cr);
}

static void
draw_cleaned (cairo_t *cr, const LbPalette *palette, const LbMark *mark, double size)
{
  const double radius = size / 2;
  const double width = whole (size * 0.18, 2);

  outline_path (cr, mark->shape, radius - width / 2);
  lb_ink_set (cr, palette, LB_INK_PAPER);
  cairo_fill_preserve (cr);
  cairo_set_line_width (cr, width);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  lb_ink_set (cr, palette, LB_INK_STANDING);
  cairo_stroke (cr);

  outline_path (cr, mark->shape, MAX (size * 0.16, 1));
  lb_ink_set (cr, palette, LB_INK_CLEANED);
  cairo_fill (cr);
  if (!isnan (mark->share_left))
    draw_bars_arc (cr, palette, mark->share_left, size);
}

static void
draw_severed (cairo_t *cr, const LbPalette *palette, const LbMark *mark, double size)
{
  const double radius = size / 2;
  const double half_gap = whole (size * 0.165, 1);

  half_path (cr, mark->shape, radius, half_gap, -1);
  half_path (cr, mark->shape, radius, half_gap, 1);
  lb_ink_set (cr, palette, LB_INK_SEVERED);
  cairo_fill (cr);
}

static void
draw_rigged (cairo_t *cr, const LbPalette *palette, const LbMark *mark, double size)
{
  const double width = whole (size * 0.07, 1.25);
  const double loop = MAX (size * 0.12, 1.75);
  const double loop_y = -1.08 * size + loop + width / 2;

  lb_ink_set (cr, palette, LB_INK_RIGGED);
  cairo_set_line_width (cr, width);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  outline_path (cr, mark->shape, size / 2 - width / 2);
  cairo_stroke (cr);
  cairo_move_to (cr, 0, 0);
  cairo_line_to (cr, 0, loop_y + loop);
  cairo_stroke (cr);
  cairo_arc (cr, 0, loop_y, loop, 0, 2 * G_PI);
  cairo_stroke (cr);
  cairo_arc (cr, 0, 0, MAX (size * 0.08, 1.25), 0, 2 * G_PI);
  cairo_fill (cr);
}

static void
draw_pulled (cairo_t *cr, const LbPalette *palette, const LbMark *mark, double size)
{
  const double width = whole (size * 0.05, 1);
  const double radius = size / 2 - width / 2;
  const double perimeter = outline_perimeter (mark->shape, radius);
  /* A whole number of dashes, a multiple of the corners, so that all sides look alike. */
  const double n = 8 * MAX (round (perimeter / (8 * MAX (size * 0.2, 4))), 1);
  const double dashes[] = { perimeter / n * 0.56, perimeter / n * 0.44 };

  lb_ink_set (cr, palette, LB_INK_PULLED);
  cairo_set_line_width (cr, width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), dashes[0] / 2);
  outline_path (cr, mark->shape, radius);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

/* A pennant on a staff, off the upper right corner. */
static void
draw_flag (cairo_t *cr, const LbPalette *palette, double size)
{
  const double height = CLAMP (size * 0.36, 4, 14);
  const double x = size * 0.46;
  const double top = -size * 0.5 - height * 0.5;

  for (int pass = 0; pass < 2; pass++) {
    cairo_move_to (cr, x, top + height * 1.5);
    cairo_line_to (cr, x, top);
    cairo_line_to (cr, x + height, top + height * 0.42);
    cairo_line_to (cr, x, top + height * 0.84);
    if (pass == 0) {
      cairo_set_line_width (cr, MAX (size * 0.14, 2.5));
      cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
      lb_ink_set (cr, palette, LB_INK_PAPER);
      cairo_stroke (cr);
    } else {
      lb_ink_set (cr, palette, LB_INK_FLAG);
      cairo_fill_preserve (cr);
      cairo_set_line_width (cr, MAX (size * 0.06, 1));
      cairo_stroke (cr);
    }
  }
}

/* Two short strokes at the lower left: a strand is stressed and whips. */
static void
draw_strand_ticks (cairo_t *cr, const LbPalette *palette, double size)
{
  const double length = CLAMP (size * 0.26, 3, 9);
  const double step = CLAMP (size * 0.14, 2, 4);

  lb_ink_set (cr, palette, LB_INK_LINE);
  cairo_set_line_width (cr, CLAMP (size * 0.07, 1, 2));
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  for (int i = 0; i < 2; i++) {
    const double x = -size * 0.74 + i * step;
    const double y = size * 0.58 + i * step;
    cairo_move_to (cr, x, y + length / 2);
    cairo_line_to (cr, x + length, y - length / 2);
  }
  cairo_stroke (cr);
}

/* What is left of a mark too small to show its shape: whole pixels. */
static void
draw_dot (cairo_t *cr, const LbPalette *palette, const LbMark *mark, double size)
{
  const double side = MAX (round (size), 2);
  double x = -floor (side / 2), y = x;
  cairo_user_to_device (cr, &x, &y);
  x = round (x);
  y = round (y);
  cairo_device_to_user (cr, &x, &y);

  switch (mark->step) {
  case LB_STEP_STANDING:
    lb_ink_set (cr, palette, LB_INK_STANDING);
    cairo_rectangle (cr, x, y, side, side);
    cairo_fill (cr);
    break;
  case LB_STEP_CLEANED:
    lb_ink_set (cr, palette, LB_INK_STANDING);
    cairo_rectangle (cr, x, y, side, side);
    cairo_fill (cr);
    if (side < 3)
      break;
    lb_ink_set (cr, palette, LB_INK_PAPER);
    cairo_rectangle (cr, x + 1, y + 1, side - 2, side - 2);
    cairo_fill (cr);
    if (side < 5)
      break;
    lb_ink_set (cr, palette, LB_INK_CLEANED);
    cairo_rectangle (cr, x + floor (side / 2), y + floor (side / 2), 1, 1);
    cairo_fill (cr);
    break;
  case LB_STEP_SEVERED:
    lb_ink_set (cr, palette, LB_INK_SEVERED);
    cairo_rectangle (cr, x, y, side, floor (side / 2) - (side > 3 ? 1 : 0));
    cairo_rectangle (cr, x, y + ceil (side / 2), side, floor (side / 2));
    cairo_fill (cr);
    break;
  case LB_STEP_RIGGED:
    lb_ink_set (cr, palette, LB_INK_RIGGED);
    cairo_rectangle (cr, x + floor ((side - 1) / 2), y, 1, side);
    cairo_rectangle (cr, x, y + side - 1, side, 1);
    cairo_fill (cr);
    break;
  case LB_STEP_PULLED:
    lb_ink_set (cr, palette, LB_INK_PULLED);
    cairo_rectangle (cr, x + floor (side / 2), y + floor (side / 2), 1, 1);
    cairo_fill (cr);
    break;
  default:
    g_assert_not_reached ();
  }
}

void
lb_mark_draw (cairo_t *cr, const LbPalette *palette, const LbMark *mark, double size)
{
  g_return_if_fail (size > 0);

  cairo_save (cr);
  cairo_new_path (cr);
  if (size < DOTS_BELOW) {
    draw_dot (cr, palette, mark, size);
    cairo_restore (cr);
    return;
  }
  switch (mark->step) {
  case LB_STEP_STANDING:
    draw_standing (cr, palette, mark, size);
    break;
  case LB_STEP_CLEANED:
    draw_cleaned (cr, palette, mark, size);
    break;
  case LB_STEP_SEVERED:
    draw_severed (cr, palette, mark, size);
    break;
  case LB_STEP_RIGGED:
    draw_rigged (cr, palette, mark, size);
    break;
  case LB_STEP_PULLED:
    draw_pulled (cr, palette, mark, size);
    break;
  default:
    g_assert_not_reached ();
  }
  if (mark->is_strand && mark->step != LB_STEP_PULLED)
    draw_strand_ticks (cr, palette, size);
  if (mark->has_flag)
    draw_flag (cr, palette, size);
  cairo_restore (cr);
}

void
lb_lean_arrow_draw (cairo_t *cr,
                    const LbPalette *palette,
                    LbStep step,
                    double size,
                    double length_px,
                    double angle_rad)
{
  if (length_px <= 0)
    return;
  /* Over a rigged mark stands its sling loop: an arrow that way begins above it. */
  const double reach = fabs (remainder (angle_rad, 2 * G_PI)) < 0.4 && step == LB_STEP_RIGGED
                         ? 1.1 * size
                         : size / 2;
  const double start = reach + 1;
  const double end = reach + length_px;
  const double head = CLAMP (length_px * 0.36, 2.5, 6);

  cairo_save (cr);
  cairo_new_path (cr);
  cairo_rotate (cr, angle_rad);
  lb_ink_set (cr, palette, step == LB_STEP_PULLED ? LB_INK_FAINT : LB_INK_LINE);
  cairo_set_line_width (cr, CLAMP (size * 0.06, 1, 1.75));
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_move_to (cr, 0, -start);
  cairo_line_to (cr, 0, -end + 1);
  cairo_stroke (cr);
  cairo_move_to (cr, -head * 0.7, -end + head);
  cairo_line_to (cr, 0, -end);
  cairo_line_to (cr, head * 0.7, -end + head);
  cairo_stroke (cr);
  cairo_restore (cr);
}
