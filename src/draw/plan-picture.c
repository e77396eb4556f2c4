/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * The plan as a picture: water, deck, bents and rows, marks with their arrows and names, legend.
 * Whatever the target, the order is the same: ground, arrows, marks, names. Arrows lie under the
 * marks, so that where piles crowd the marks stay whole.
 */
#include "draw/plan-axes.h"
#include "draw/plan.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Looks, from trials on screen and paper. */
static const double NAMES_FROM_PITCH_PX = 40;
static const double EDGE_PX = 18; /* scale bar and north arrow from the page's edge */
static const double NORTH_PX = 44;
static const double SCALE_BAR_PX = 150;

/* Whether a wave here would run into the pier or the names of its bents and rows. */
static gboolean
is_open_water (const LbPlan *plan,
               const LbPlanView *view,
               double width,
               double height,
               double x,
               double y)
{
  static const double OFF_PX = 44;
  LbPoint top_left, bottom_right;
  lb_plan_to_page (view, width, height, plan->left_m, plan->top_m, &top_left);
  lb_plan_to_page (view, width, height, plan->right_m, plan->bottom_m, &bottom_right);
  return x < top_left.x - OFF_PX || x > bottom_right.x + OFF_PX || y < top_left.y - OFF_PX ||
         y > bottom_right.y + OFF_PX;
}

/* A few short waves, on a lattice that moves with the plan: they say water and nothing more. */
static void
draw_waves (cairo_t *cr,
            const LbPalette *palette,
            const LbPlan *plan,
            const LbPlanView *view,
            double width,
            double height)
{
  static const double ACROSS = 168, DOWN = 92, HALF = 13, CREST = 3;
  const double left = fmod (-view->centre_x_m * view->px_per_m + width / 2, ACROSS);
  const double top = fmod (view->centre_y_m * view->px_per_m + height / 2, 2 * DOWN);
  const int n_down = (int) (height / DOWN) + 4, n_across = (int) (width / ACROSS) + 3;

  for (int row = 0; row < n_down; row++) {
    for (int column = 0; column < n_across; column++) {
      const double x = left + ACROSS * (column - 1 + (row % 2 == 0 ? 0 : 0.5));
      const double y = top + DOWN * (row - 2);
      if (!is_open_water (plan, view, width, height, x, y))
        continue;
      cairo_move_to (cr, x - HALF, y);
      cairo_curve_to (cr, x - HALF * 0.6, y - CREST, x - HALF * 0.4, y - CREST, x, y);
      cairo_curve_to (cr, x + HALF * 0.4, y + CREST, x + HALF * 0.6, y + CREST, x + HALF, y);
    }
  }
  lb_ink_set (cr, palette, LB_INK_HAIR);
  cairo_set_line_width (cr, 1.25);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_stroke (cr);
}

static void
draw_deck (cairo_t *cr,
           const LbPalette *palette,
           const LbPlan *plan,
           const LbPlanView *view,
           double width,
           double height)
{
  static const double DASHES[] = { 7, 4 };
  if (plan->n_deck == 0)
    return;
  for (gsize i = 0; i < plan->n_deck; i++) {
    LbPoint at;
    lb_plan_to_page (view, width, height, plan->deck[i].x, plan->deck[i].y, &at);
    cairo_line_to (cr, at.x, at.y);
  }
  cairo_close_path (cr);
  lb_ink_set_alpha (cr, palette, LB_INK_PAPER, 0.45);
  cairo_fill_preserve (cr);
  lb_ink_set (cr, palette, LB_INK_HAIR);
  cairo_set_line_width (cr, 1.5);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_dash (cr, DASHES, G_N_ELEMENTS (DASHES), 0);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

void
lb_plan_draw_water (cairo_t *cr,
                    const LbPalette *palette,
                    const LbVoice *voice,
                    const LbPlan *plan,
                    const LbPlanView *view,
                    double width,
                    double height)
{
  cairo_save (cr);
  cairo_new_path (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip_preserve (cr);
  lb_ink_set (cr, palette, LB_INK_WATER);
  cairo_fill (cr);
  /* On white paper there is no water to be seen, and waves would be dirt. */
  const gboolean has_water = lb_colour_contrast (&palette->inks[LB_INK_WATER],
                                                 &palette->inks[LB_INK_PAPER]) > 1.01;
  if (has_water)
    draw_waves (cr, palette, plan, view, width, height);
  draw_deck (cr, palette, plan, view, width, height);
  lb_plan_draw_axes (cr, palette, voice, plan, view, width, height);
  cairo_restore (cr);
}

/* Ground for what lies over the plan, so that it can be read wherever the plan is moved; opaque,
 * since the least rounding of a blend would show as a seam in the water. */
static void
draw_pane (cairo_t *cr, const LbPalette *palette, double x, double y, double width, double height)
{
  static const double CORNER = 8;
  cairo_new_sub_path (cr);
  cairo_arc (cr, x + width - CORNER, y + CORNER, CORNER, -G_PI / 2, 0);
  cairo_arc (cr, x + width - CORNER, y + height - CORNER, CORNER, 0, G_PI / 2);
  cairo_arc (cr, x + CORNER, y + height - CORNER, CORNER, G_PI / 2, G_PI);
  cairo_arc (cr, x + CORNER, y + CORNER, CORNER, G_PI, 3 * G_PI / 2);
  cairo_close_path (cr);
  lb_ink_set (cr, palette, LB_INK_WATER);
  cairo_fill (cr);
}

void
lb_plan_draw_guides (cairo_t *cr,
                     const LbPalette *palette,
                     const LbVoice *voice,
                     const LbPlanView *view,
                     double width,
                     double height)
{
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  const double longest = MIN (SCALE_BAR_PX, width * 0.4);
  const double pane = LB_PLAN_NAME_SIZE * voice->scale * 1.6 + 14;
  draw_pane (cr, palette, EDGE_PX - 8, height - EDGE_PX - pane + 8, longest + 48 * voice->scale,
             pane);
  draw_pane (cr, palette, width - EDGE_PX - NORTH_PX * 0.6 - 6, height - EDGE_PX - NORTH_PX - 8,
             NORTH_PX * 0.6 + 12, NORTH_PX + 16);
  lb_plan_draw_scale_bar (cr, palette, voice, view, EDGE_PX, height - EDGE_PX, longest);
  lb_plan_draw_north (cr, palette, voice, width - EDGE_PX - NORTH_PX * 0.3,
                      height - EDGE_PX - NORTH_PX / 2, NORTH_PX);
  cairo_restore (cr);
}

void
lb_plan_draw_ground (cairo_t *cr,
                     const LbPalette *palette,
                     const LbVoice *voice,
                     const LbPlan *plan,
                     const LbPlanView *view,
                     double width,
                     double height)
{
  lb_plan_draw_water (cr, palette, voice, plan, view, width, height);
  lb_plan_draw_guides (cr, palette, voice, view, width, height);
}

gboolean
lb_plan_has_names (const LbPlan *plan, const LbPlanView *view, const LbVoice *voice)
{
  return plan->pitch_m * view->px_per_m >= NAMES_FROM_PITCH_PX * voice->scale;
}

static const double NAME_HEIGHT = LB_PLAN_NAME_SIZE * 1.35;

/* Off the mark to the side that has no neighbours: where piles stand close, as in a dolphin. */
static LbAlign
crowded_name_place (LbPoint crowd, double size, LbPoint *out)
{
  const double off = size * 0.5 + 4;
  out->x = -crowd.x * off;
  out->y = crowd.y * off - NAME_HEIGHT / 2;
  if (fabs (crowd.x) >= 0.35)
    return crowd.x > 0 ? LB_ALIGN_END : LB_ALIGN_START;
  out->x = 0;
  out->y += crowd.y > 0 ? NAME_HEIGHT / 2 : -NAME_HEIGHT / 2;
  return LB_ALIGN_MIDDLE;
}

/* Under its mark, or beside the arrow where one points down through that place; beside the mark in
 * a line of piles that runs down the page, where the next one stands there. */
LbAlign
lb_plan_name_place (const LbPlan *plan, const LbPlanView *view, gsize i, LbPoint *out)
{
  static const double BESIDE_PX = 5;
  const LbPlanPile *const pile = &plan->piles[i];
  const double size = lb_plan_mark_size (plan, view, i);
  if (hypot (pile->crowd.x, pile->crowd.y) > 0.5)
    return crowded_name_place (pile->crowd, size, out);
  const double off = size * 0.5 + MAX (size * 0.3, 4);
  if (pile->name_side != 0) {
    *out = (LbPoint){ pile->name_side * off, -NAME_HEIGHT / 2 };
    return pile->name_side > 0 ? LB_ALIGN_START : LB_ALIGN_END;
  }
  *out = (LbPoint){ 0, off };
  if (lb_plan_arrow_length (plan, view, i) <= 0 || cos (pile->bearing_rad) > -0.6)
    return LB_ALIGN_MIDDLE;

  const gboolean is_to_the_right = sin (pile->bearing_rad) > 0.05;
  out->x = is_to_the_right ? -BESIDE_PX : BESIDE_PX;
  return is_to_the_right ? LB_ALIGN_END : LB_ALIGN_START;
}

static gboolean
is_on_page (LbPoint at, double width, double height, double reach)
{
  return at.x > -reach && at.y > -reach && at.x < width + reach && at.y < height + reach;
}

void
lb_plan_draw (cairo_t *cr,
              const LbPalette *palette,
              const LbVoice *voice,
              const LbPlan *plan,
              const LbPlanView *view,
              const gboolean *shown,
              double width,
              double height)
{
  typedef enum {
    PASS_ARROWS,
    PASS_MARKS,
    PASS_NAMES,
  } Pass;
  const Pass last = lb_plan_has_names (plan, view, voice) ? PASS_NAMES : PASS_MARKS;

  lb_plan_draw_ground (cr, palette, voice, plan, view, width, height);
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  for (Pass pass = PASS_ARROWS; pass <= last; pass++) {
    for (gsize i = 0; i < plan->n_piles; i++) {
      if (shown != NULL && !shown[i])
        continue;
      const LbPlanPile *const pile = &plan->piles[i];
      const double size = lb_plan_mark_size (plan, view, i);
      const double arrow = lb_plan_arrow_length (plan, view, i);
      LbPoint at;
      lb_plan_to_page (view, width, height, pile->x_m, pile->y_m, &at);
      if (!is_on_page (at, width, height, size * 1.1 + arrow + LB_PLAN_NAME_SIZE * 2))
        continue;
      if (pass == PASS_NAMES) {
        LbPoint place;
        const LbAlign align = lb_plan_name_place (plan, view, i, &place);
        lb_ink_set (cr, palette, LB_INK_DIM_TEXT);
        lb_text_show (cr, voice, pile->label, LB_PLAN_NAME_SIZE, FALSE, align, at.x + place.x,
                      at.y + place.y, 0);
        continue;
      }
      cairo_save (cr);
      cairo_translate (cr, at.x, at.y);
      if (pass == PASS_ARROWS)
        lb_lean_arrow_draw (cr, palette, pile->mark.step, size, arrow, pile->bearing_rad);
      else
        lb_mark_draw (cr, palette, &pile->mark, size);
      cairo_restore (cr);
    }
  }
  cairo_restore (cr);
}

double
lb_plan_draw_legend (cairo_t *cr,
                     const LbPalette *palette,
                     const LbVoice *voice,
                     const guint n_by_step[LB_N_STEPS],
                     double x,
                     double y,
                     double width)
{
  static const char *const NAMES[LB_N_STEPS] = {
    [LB_STEP_STANDING] = N_ ("Standing"), [LB_STEP_CLEANED] = N_ ("Cleaned"),
    [LB_STEP_SEVERED] = N_ ("Severed"),   [LB_STEP_RIGGED] = N_ ("Rigged"),
    [LB_STEP_PULLED] = N_ ("Pulled"),
  };
  static const double SIZE = 12, MARK_PX = 18, AFTER_MARK = 10, AFTER_NAME = 7, BETWEEN = 26;
  double text_height;
  lb_text_measure (cr, voice, "0", SIZE, TRUE, 0, NULL, &text_height);
  /* Room over the mark for the loop of a rigged one, and round it for the arc of a cleaned one. */
  const double line = MAX (text_height, MARK_PX * 1.7) + 4;
  const double side = MARK_PX * 0.75;
  double at = x, middle = y + line * 0.6;

  for (int step = 0; step < LB_N_STEPS; step++) {
    const LbMark mark = { .shape = LB_SHAPE_OCTAGON, .step = (LbStep) step, .share_left = 0.7 };
    const char *const name = g_dgettext (GETTEXT_PACKAGE, NAMES[step]);
    g_autofree char *count = g_strdup_printf ("%u", n_by_step[step]);
    double name_width, count_width;
    lb_text_measure (cr, voice, name, SIZE, FALSE, 0, &name_width, NULL);
    lb_text_measure (cr, voice, count, SIZE, TRUE, 0, &count_width, NULL);
    const double entry = 2 * side + AFTER_MARK + name_width + AFTER_NAME + count_width;
    if (at > x && at + entry > x + width) {
      at = x;
      middle += line;
    }
    cairo_save (cr);
    cairo_translate (cr, round (at + side), round (middle));
    lb_mark_draw (cr, palette, &mark, MARK_PX);
    cairo_restore (cr);
    double text_x = at + 2 * side + AFTER_MARK;
    lb_ink_set (cr, palette, LB_INK_TEXT);
    lb_text_show (cr, voice, name, SIZE, FALSE, LB_ALIGN_START, text_x, middle - text_height / 2,
                  0);
    text_x += name_width + AFTER_NAME;
    lb_text_show (cr, voice, count, SIZE, TRUE, LB_ALIGN_START, text_x, middle - text_height / 2,
                  0);
    at += entry + BETWEEN;
  }
  return middle + line * 0.4 - y;
}

/* About the legend, and for the names of bents and rows. */
#define SHEET_MARGIN 18.0
#define NAMES_MARGIN 56.0

void
lb_plan_draw_sheet (cairo_t *cr,
                    const LbPalette *palette,
                    const LbVoice *voice,
                    const LbFold *fold,
                    double width,
                    double height)
{
  g_autoptr (LbPlan) plan = lb_plan_new (fold);
  const double legend = SHEET_MARGIN + lb_plan_draw_legend (cr, palette, voice, fold->n_by_step,
                                                            SHEET_MARGIN, SHEET_MARGIN / 2,
                                                            width - 2 * SHEET_MARGIN);
  const LbPlanView view = lb_plan_fit (plan, width, height - legend, NAMES_MARGIN);

  cairo_save (cr);
  cairo_translate (cr, 0, legend);
  cairo_rectangle (cr, 0, 0, width, height - legend);
  cairo_clip (cr);
  lb_plan_draw (cr, palette, voice, plan, &view, NULL, width, height - legend);
  cairo_restore (cr);
}
