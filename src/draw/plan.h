/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"
#include "draw/mark.h"
#include "draw/picture-text.h"

G_BEGIN_DECLS

/* The pier seen from above as flat arrays in metres; made once a change, drawn by every painter
 * (canvas, paper, file). */
typedef struct
{
  double x_m, y_m;
  double width_m;
  double batter, bearing_rad;
  double lean_m; /* head out of plumb over the pile's height, for the arrow */
  LbPoint crowd; /* mean direction to piles much nearer than the pitch, 0 long for none */
  int name_side; /* 0: the name goes under the mark; 1, -1: right, left of it */
  LbMark mark;
  const char *label; /* borrowed */
} LbPlanPile;

/* A label beside a line of piles: a bent's number over it, a row's letter left of it. The place
 * is on the deck's edge; on the page the label stands off it along the unit vector @away. */
typedef struct
{
  double x_m, y_m;
  LbPoint away; /* x east, y north */
  gboolean is_row;
  char *text; /* the bare name: "7" */
} LbPlanAxis;

typedef struct
{
  gsize n_piles;
  LbPlanPile *piles; /* same index as the fold's */
  gsize n_axes;
  LbPlanAxis *axes; /* straight lines of piles that share a bent or a row */
  gsize n_deck;
  LbPoint *deck;  /* outline of the deck: hull of the piles with a margin */
  double pitch_m; /* typical distance to the nearest pile; sets the least readable size */
  double left_m, right_m, bottom_m, top_m; /* bounds with margin */
} LbPlan;

/**
 * lb_plan_new:
 *
 * Borrows strings of @fold, which must outlive it. Every pile has a place: the book takes none
 * without.
 */
LbPlan *lb_plan_new (const LbFold *fold);
void lb_plan_free (LbPlan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbPlan, lb_plan_free)

/* Where the plan lies on the page: page = origin + scale × (x − centre), y turned over. North up. */
typedef struct
{
  double centre_x_m, centre_y_m; /* shown in the middle of the page */
  double px_per_m;
} LbPlanView;

LbPlanView lb_plan_fit (const LbPlan *plan, double width, double height, double margin);
void lb_plan_to_page (const LbPlanView *view,
                      double width,
                      double height,
                      double x_m,
                      double y_m,
                      LbPoint *out);
void lb_plan_from_page (const LbPlanView *view,
                        double width,
                        double height,
                        double x,
                        double y,
                        LbPoint *out_m);

/* Size of a pile's outline on the page: to scale, never under a readable least that the pitch
 * allows. */
double lb_plan_mark_size (const LbPlan *plan, const LbPlanView *view, gsize i);

/* Length of its lean arrow beyond the outline, 0 for none: to scale above a zoom, else symbolic. */
double lb_plan_arrow_length (const LbPlan *plan, const LbPlanView *view, gsize i);

/* Nearest pile whose mark is within @reach_px of a place on the page, -1 for none. */
int lb_plan_pile_at (const LbPlan *plan,
                     const LbPlanView *view,
                     double width,
                     double height,
                     double x,
                     double y,
                     double reach_px);

/* The next pile from @from in the direction of @angle_rad (clockwise from page top): the nearest
 * within 45° of it; -1 for none. */
int lb_plan_neighbour (const LbPlan *plan, int from, double angle_rad);

/* Draws all but the marks: water, deck, bents and rows, north arrow, scale bar; the first three,
 * which move with the plan, and the last two, which stay at the page's foot, also by themselves. */
void lb_plan_draw_ground (cairo_t *cr,
                          const LbPalette *palette,
                          const LbVoice *voice,
                          const LbPlan *plan,
                          const LbPlanView *view,
                          double width,
                          double height);
void lb_plan_draw_water (cairo_t *cr,
                         const LbPalette *palette,
                         const LbVoice *voice,
                         const LbPlan *plan,
                         const LbPlanView *view,
                         double width,
                         double height);
void lb_plan_draw_guides (cairo_t *cr,
                          const LbPalette *palette,
                          const LbVoice *voice,
                          const LbPlanView *view,
                          double width,
                          double height);

/* Font size of the piles' names. */
#define LB_PLAN_NAME_SIZE 10.0

/* Whether the piles stand far enough apart on the page for their names. */
gboolean lb_plan_has_names (const LbPlan *plan, const LbPlanView *view, const LbVoice *voice);

/* Where a pile's name stands: @out is the top of the text from the mark's centre, and the name is
 * aligned there as returned. */
LbAlign lb_plan_name_place (const LbPlan *plan, const LbPlanView *view, gsize i, LbPoint *out);

/* The whole picture as vectors, for paper and files; also what the canvas must look like.
 * @shown: (nullable): one a pile, FALSE leaves it out (legend filter). */
void lb_plan_draw (cairo_t *cr,
                   const LbPalette *palette,
                   const LbVoice *voice,
                   const LbPlan *plan,
                   const LbPlanView *view,
                   const gboolean *shown,
                   double width,
                   double height);

/* Legend and plan together, as a picture of its own. */
void lb_plan_draw_sheet (cairo_t *cr,
                         const LbPalette *palette,
                         const LbVoice *voice,
                         const LbFold *fold,
                         double width,
                         double height);

/* Legend with counts on one line (or as many as needed) from @x, @y; returns its height. */
double lb_plan_draw_legend (cairo_t *cr,
                            const LbPalette *palette,
                            const LbVoice *voice,
                            const guint n_by_step[LB_N_STEPS],
                            double x,
                            double y,
                            double width);

G_END_DECLS
