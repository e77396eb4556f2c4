/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * The geometry of the plan: made once a change, then only read.
 *
 *  1. Pile i of the plan is pile i of the fold; nothing is left out.
 *  2. All is in metres on the job's grid, x east and y north; pages have y down.
 *  3. The pitch is the median distance from a pile to its nearest neighbour: one dolphin of close
 *     piles, or one pile far out, does not move it. Piles in one place do not count.
 *  4. The deck is the hull of the piles that stand in a bent and a row, with a margin; of all the
 *     piles when none do. Its corners run counter-clockwise and are few.
 *
 * Neighbours are found through a grid of cells with a few piles each, so 100,000 piles take
 * a time that grows with their number.
 */
#include "draw/plan.h"
#include "draw/plan-axes.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Taken for the pitch when it cannot be told: 10 ft, a usual distance between pile bents (common
 * practice). */
static const double USUAL_PITCH_M = 3.048;

/* Looks, from trials on screen and paper. */
static const double READABLE_PX = 24;         /* a mark is not smaller when the pitch allows */
static const double READABLE_OF_PITCH = 0.58; /* and never more of the pitch, but to scale */
static const double LEAST_PX = 2;
static const double DECK_MARGIN_OF_PITCH = 0.62;

static const double SAME_PLACE_M = 1e-6; /* two piles nearer than that are one place */
static const gsize MOST_RINGS = 3;       /* of cells, to look for neighbours in */
static const double NEXT_OF_PITCH = 1.5; /* how far off the next pile of a line may be */

/* Whether the way from @o by @a to @b turns left there, by more than a survey's error could make
 * it: rows are not straight to the millimetre, and a deck needs few corners. */
static gboolean
turns_left (LbPoint o, LbPoint a, LbPoint b)
{
  static const double LEAST_TURN = 1e-3; /* sine; 3 cm on 30 m */
  const double cross = (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
  return cross > LEAST_TURN * hypot (a.x - o.x, a.y - o.y) * hypot (b.x - o.x, b.y - o.y);
}

static int
compare_points (gconstpointer a, gconstpointer b)
{
  const LbPoint *const p = a, *const q = b;
  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  return (p->y > q->y) - (p->y < q->y);
}

/* Convex hull, counter-clockwise, by Andrew's monotone chain; sorts @points. */
static GArray *
find_hull (GArray *points)
{
  GArray *const hull = g_array_new (FALSE, FALSE, sizeof (LbPoint));
  g_array_sort (points, compare_points);
  for (int chain = 0; chain < 2; chain++) {
    const guint base = hull->len;
    for (guint i = 0; i < points->len; i++) {
      const guint at = chain == 0 ? i : points->len - 1 - i;
      const LbPoint point = g_array_index (points, LbPoint, at);
      while (hull->len >= base + 2 &&
             !turns_left (g_array_index (hull, LbPoint, hull->len - 2),
                          g_array_index (hull, LbPoint, hull->len - 1), point))
        g_array_set_size (hull, hull->len - 1);
      g_array_append_val (hull, point);
    }
    if (hull->len > base + 1)
      g_array_set_size (hull, hull->len - 1); /* the other chain begins with it */
  }
  if (hull->len == 2 &&
      compare_points (&g_array_index (hull, LbPoint, 0), &g_array_index (hull, LbPoint, 1)) == 0)
    g_array_set_size (hull, 1);
  return hull;
}

static LbPoint
unit_between (LbPoint from, LbPoint to)
{
  const double dx = to.x - from.x, dy = to.y - from.y;
  const double length = hypot (dx, dy);
  return (LbPoint){ dx / length, dy / length };
}

/* Moves every edge of a counter-clockwise polygon out by @margin. Corners are mitred; where that
 * would reach further than √2 margins, they are cut off square to the corner. */
static GArray *
grow (const GArray *hull, double margin)
{
  GArray *const grown = g_array_new (FALSE, FALSE, sizeof (LbPoint));
  const guint n = hull->len;
  for (guint i = 0; i < n; i++) {
    const LbPoint before = g_array_index (hull, LbPoint, (i + n - 1) % n);
    const LbPoint at = g_array_index (hull, LbPoint, i);
    const LbPoint after = g_array_index (hull, LbPoint, (i + 1) % n);
    const LbPoint in = unit_between (before, at), out = unit_between (at, after);
    const LbPoint normal_in = { in.y, -in.x }, normal_out = { out.y, -out.x };
    const double mitre = margin / (1 + normal_in.x * normal_out.x + normal_in.y * normal_out.y);
    if (mitre <= margin * 1.0001) {
      const LbPoint corner = { at.x + mitre * (normal_in.x + normal_out.x),
                               at.y + mitre * (normal_in.y + normal_out.y) };
      g_array_append_val (grown, corner);
      continue;
    }
    const LbPoint corners[] = {
      { at.x + margin * (normal_in.x + in.x), at.y + margin * (normal_in.y + in.y) },
      { at.x + margin * (normal_out.x - out.x), at.y + margin * (normal_out.y - out.y) },
    };
    g_array_append_vals (grown, corners, G_N_ELEMENTS (corners));
  }
  return grown;
}

static void
find_deck (LbPlan *plan, const LbFold *fold, double margin_m)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (LbPoint));
  for (int pass = 0; pass < 2 && points->len == 0; pass++) {
    for (gsize i = 0; i < plan->n_piles; i++) {
      const LbPile *const pile = &fold->piles[i];
      const LbPoint point = { plan->piles[i].x_m, plan->piles[i].y_m };
      if (pass == 1 || (pile->bent[0] != '\0' && pile->row[0] != '\0'))
        g_array_append_val (points, point);
    }
  }
  if (points->len == 0)
    return;
  g_autoptr (GArray) hull = find_hull (points);
  if (hull->len == 1) {
    /* The smallest edge that has a direction: it grows into a square. */
    LbPoint other = g_array_index (hull, LbPoint, 0);
    other.x += margin_m * 1e-3;
    g_array_append_val (hull, other);
  }
  GArray *const deck = grow (hull, margin_m);
  plan->n_deck = deck->len;
  plan->deck = (LbPoint *) (void *) g_array_free (deck, FALSE);
}

typedef struct
{
  gsize n_across, n_up;
  double left, bottom, cell;
  guint *starts; /* of each cell's run in @members, one more at the end */
  guint *members;
} Cells;

static gsize
cell_of (const Cells *cells, const LbPlanPile *pile)
{
  const gsize across = (gsize) ((pile->x_m - cells->left) / cells->cell);
  const gsize up = (gsize) ((pile->y_m - cells->bottom) / cells->cell);
  return MIN (up, cells->n_up - 1) * cells->n_across + MIN (across, cells->n_across - 1);
}

/* About two piles a cell, by counting. */
static void
cells_init (Cells *cells, const LbPlan *plan)
{
  const double across_m = plan->right_m - plan->left_m, up_m = plan->top_m - plan->bottom_m;
  const double n_cells = (double) plan->n_piles / 2 + 1;
  /* Neither side may have more cells than piles, or one far pile would ask for millions. */
  cells->cell = MAX (sqrt (across_m * up_m / n_cells), MAX (across_m, up_m) / n_cells);
  if (cells->cell <= 0)
    cells->cell = 1;
  cells->left = plan->left_m;
  cells->bottom = plan->bottom_m;
  cells->n_across = (gsize) (across_m / cells->cell) + 1;
  cells->n_up = (gsize) (up_m / cells->cell) + 1;
  cells->starts = g_new0 (guint, cells->n_across * cells->n_up + 1);
  cells->members = g_new (guint, plan->n_piles);
  for (gsize i = 0; i < plan->n_piles; i++)
    cells->starts[cell_of (cells, &plan->piles[i]) + 1]++;
  for (gsize i = 0; i < cells->n_across * cells->n_up; i++)
    cells->starts[i + 1] += cells->starts[i];
  guint *const next = g_memdup2 (cells->starts, cells->n_across * cells->n_up * sizeof (guint));
  for (gsize i = 0; i < plan->n_piles; i++)
    cells->members[next[cell_of (cells, &plan->piles[i])]++] = (guint) i;
  g_free (next);
}

static void
cells_clear (Cells *cells)
{
  g_free (cells->starts);
  g_free (cells->members);
}

/* Indices of the piles in the cells up to @rings round pile i's own, itself among them. */
static void
gather_near (const Cells *cells, const LbPlan *plan, gsize i, gsize rings, GArray *out)
{
  const gsize home = cell_of (cells, &plan->piles[i]);
  const gsize across = home % cells->n_across, up = home / cells->n_across;
  const gsize left = across - MIN (across, rings), bottom = up - MIN (up, rings);
  const gsize right = MIN (across + rings, cells->n_across - 1);
  const gsize top = MIN (up + rings, cells->n_up - 1);
  g_array_set_size (out, 0);
  for (gsize row = bottom; row <= top; row++) {
    /* The cells of a row follow one another, and so do their members. */
    const guint from = cells->starts[row * cells->n_across + left];
    const guint to = cells->starts[row * cells->n_across + right + 1];
    g_array_append_vals (out, &cells->members[from], to - from);
  }
}

static double
squared (double x, double y)
{
  return x * x + y * y;
}

static double
squared_distance (const LbPlan *plan, gsize i, gsize j)
{
  return squared (plan->piles[j].x_m - plan->piles[i].x_m, plan->piles[j].y_m - plan->piles[i].y_m);
}

/* Distance to the nearest other place with a pile, NAN for none within a few cells. */
static double
nearest_distance (const Cells *cells, const LbPlan *plan, gsize i, GArray *near)
{
  double nearest = INFINITY; /* squared */
  for (gsize rings = 1;
       rings <= MOST_RINGS && nearest > squared ((double) (rings - 1) * cells->cell, 0); rings++)
  {
    gather_near (cells, plan, i, rings, near);
    for (guint k = 0; k < near->len; k++) {
      const double distance = squared_distance (plan, i, g_array_index (near, guint, k));
      if (distance > squared (SAME_PLACE_M, 0))
        nearest = MIN (nearest, distance);
    }
  }
  return isinf (nearest) ? (double) NAN : sqrt (nearest);
}

/* The mean direction to those of @near that stand much nearer than the pitch. */
static LbPoint
find_crowd (const LbPlan *plan, gsize i, const GArray *near)
{
  static const double NEAR_OF_PITCH = 0.7;
  const double least = squared (SAME_PLACE_M, 0), most = squared (NEAR_OF_PITCH * plan->pitch_m, 0);
  LbPoint sum = { 0, 0 };
  guint n = 0;
  for (guint k = 0; k < near->len; k++) {
    const guint j = g_array_index (near, guint, k);
    const double square = squared_distance (plan, i, j);
    if (square <= least || square > most)
      continue;
    const double distance = sqrt (square);
    sum.x += (plan->piles[j].x_m - plan->piles[i].x_m) / distance;
    sum.y += (plan->piles[j].y_m - plan->piles[i].y_m) / distance;
    n++;
  }
  const double length = hypot (sum.x, sum.y);
  return n == 0 || length < 0.1 ? (LbPoint){ 0, 0 } : (LbPoint){ sum.x / length, sum.y / length };
}

/* Whether one of @near stands on that side, no farther than the next one of a line does. */
static gboolean
has_next (const LbPlan *plan, gsize i, const GArray *near, LbPoint side)
{
  const double most = squared (NEXT_OF_PITCH * plan->pitch_m, 0);
  for (guint k = 0; k < near->len; k++) {
    const guint j = g_array_index (near, guint, k);
    const double x = plan->piles[j].x_m - plan->piles[i].x_m;
    const double y = plan->piles[j].y_m - plan->piles[i].y_m;
    const double along = x * side.x + y * side.y, across = fabs (x * side.y - y * side.x);
    if (along > SAME_PLACE_M && along > across && squared (x, y) <= most)
      return TRUE;
  }
  return FALSE;
}

/* In a line of piles down the page a name goes to the side, away from the pile's arrow. */
static int
find_name_side (const LbPlan *plan, gsize i, const GArray *near)
{
  static const LbPoint DOWN = { 0, -1 }, RIGHT = { 1, 0 }, LEFT = { -1, 0 };
  const LbPlanPile *const pile = &plan->piles[i];
  if (!has_next (plan, i, near, DOWN))
    return 0;
  const gboolean can_right = !has_next (plan, i, near, RIGHT);
  const gboolean can_left = !has_next (plan, i, near, LEFT);
  const gboolean is_arrow_right = pile->batter > 0 && sin (pile->bearing_rad) > 0.3;
  if (can_right && !(is_arrow_right && can_left))
    return 1;
  return can_left ? -1 : 0;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  const double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

static void
measure_neighbours (LbPlan *plan)
{
  Cells cells;
  cells_init (&cells, plan);
  g_autoptr (GArray) near = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autofree double *distances = g_new (double, plan->n_piles);
  gsize n = 0;
  for (gsize i = 0; i < plan->n_piles; i++) {
    const double distance = nearest_distance (&cells, plan, i, near);
    if (!isnan (distance))
      distances[n++] = distance;
  }
  if (n > 0) {
    qsort (distances, n, sizeof *distances, compare_doubles);
    plan->pitch_m = distances[n / 2];
  }
  const gsize rings = (gsize) CLAMP (ceil (NEXT_OF_PITCH * plan->pitch_m / cells.cell), 1,
                                     (double) MOST_RINGS);
  for (gsize i = 0; i < plan->n_piles; i++) {
    gather_near (&cells, plan, i, rings, near);
    plan->piles[i].crowd = find_crowd (plan, i, near);
    plan->piles[i].name_side = find_name_side (plan, i, near);
  }
  cells_clear (&cells);
}

static void
take_into_bounds (LbPlan *plan, double x_m, double y_m)
{
  plan->left_m = MIN (plan->left_m, x_m);
  plan->right_m = MAX (plan->right_m, x_m);
  plan->bottom_m = MIN (plan->bottom_m, y_m);
  plan->top_m = MAX (plan->top_m, y_m);
}

static void
fill_pile (LbPlanPile *out, const LbPile *pile, const LbPileState *state)
{
  const double height_m = pile->head_m - pile->mudline_m;
  const gboolean shows_bars = state->step == LB_STEP_CLEANED && pile->n_bars > 0;
  *out = (LbPlanPile){
    .x_m = pile->x_m,
    .y_m = pile->y_m,
    .width_m = pile->outline.width_m,
    .batter = pile->batter,
    .bearing_rad = pile->bearing_rad,
    .lean_m = isfinite (height_m) ? pile->batter * MAX (height_m, 0) : 0,
    .mark = {
      .shape = pile->outline.shape,
      .step = state->step,
      .share_left = shows_bars ? (double) state->n_left / pile->n_bars : (double) NAN,
      .has_flag = state->flags != 0,
      .is_strand = pile->bar != NULL && pile->bar->kind == LB_BAR_STRAND,
    },
    .label = pile->mark,
  };
}

LbPlan *
lb_plan_new (const LbFold *fold)
{
  g_return_val_if_fail (fold != NULL, NULL);

  LbPlan *const plan = g_new0 (LbPlan, 1);
  plan->n_piles = fold->n_piles;
  plan->piles = g_new (LbPlanPile, fold->n_piles);
  plan->left_m = plan->bottom_m = INFINITY;
  plan->right_m = plan->top_m = -INFINITY;
  for (gsize i = 0; i < plan->n_piles; i++) {
    fill_pile (&plan->piles[i], &fold->piles[i], &fold->states[i]);
    take_into_bounds (plan, plan->piles[i].x_m, plan->piles[i].y_m);
  }
  if (plan->n_piles == 0)
    plan->left_m = plan->right_m = plan->bottom_m = plan->top_m = 0;

  plan->pitch_m = USUAL_PITCH_M;
  if (plan->n_piles > 0)
    measure_neighbours (plan);
  const double margin_m = plan->pitch_m * DECK_MARGIN_OF_PITCH;
  plan->left_m -= margin_m;
  plan->right_m += margin_m;
  plan->bottom_m -= margin_m;
  plan->top_m += margin_m;
  find_deck (plan, fold, margin_m);
  for (gsize i = 0; i < plan->n_deck; i++)
    take_into_bounds (plan, plan->deck[i].x, plan->deck[i].y);
  lb_plan_find_axes (plan, fold);
  return plan;
}

void
lb_plan_free (LbPlan *plan)
{
  if (plan == NULL)
    return;
  for (gsize i = 0; i < plan->n_axes; i++)
    g_free (plan->axes[i].text);
  g_free (plan->axes);
  g_free (plan->deck);
  g_free (plan->piles);
  g_free (plan);
}

LbPlanView
lb_plan_fit (const LbPlan *plan, double width, double height, double margin)
{
  const double across_m = plan->right_m - plan->left_m, up_m = plan->top_m - plan->bottom_m;
  return (LbPlanView){
    .centre_x_m = (plan->left_m + plan->right_m) / 2,
    .centre_y_m = (plan->bottom_m + plan->top_m) / 2,
    .px_per_m = MIN (MAX (width - 2 * margin, 1) / across_m, MAX (height - 2 * margin, 1) / up_m),
  };
}

void
lb_plan_to_page (const LbPlanView *view,
                 double width,
                 double height,
                 double x_m,
                 double y_m,
                 LbPoint *out)
{
  out->x = width / 2 + (x_m - view->centre_x_m) * view->px_per_m;
  out->y = height / 2 - (y_m - view->centre_y_m) * view->px_per_m;
}

void
lb_plan_from_page (const LbPlanView *view,
                   double width,
                   double height,
                   double x,
                   double y,
                   LbPoint *out_m)
{
  out_m->x = view->centre_x_m + (x - width / 2) / view->px_per_m;
  out_m->y = view->centre_y_m - (y - height / 2) / view->px_per_m;
}

double
lb_plan_mark_size (const LbPlan *plan, const LbPlanView *view, gsize i)
{
  const double readable = MIN (READABLE_PX, READABLE_OF_PITCH * plan->pitch_m * view->px_per_m);
  return MAX (MAX (plan->piles[i].width_m * view->px_per_m, readable), LEAST_PX);
}

double
lb_plan_arrow_length (const LbPlan *plan, const LbPlanView *view, gsize i)
{
  static const double LEAST_MARK_PX = 8; /* under it an arrow hides what it belongs to */
  const LbPlanPile *const pile = &plan->piles[i];
  const double size = lb_plan_mark_size (plan, view, i);
  if (pile->batter <= 0 || size < LEAST_MARK_PX)
    return 0;
  const double symbolic = 0.8 * size;
  const gboolean is_to_scale = pile->width_m * view->px_per_m >= size;
  return is_to_scale ? MAX (pile->lean_m * view->px_per_m - size / 2, symbolic) : symbolic;
}

int
lb_plan_pile_at (const LbPlan *plan,
                 const LbPlanView *view,
                 double width,
                 double height,
                 double x,
                 double y,
                 double reach_px)
{
  int nearest = -1;
  double nearest_px = INFINITY;
  for (gsize i = 0; i < plan->n_piles; i++) {
    LbPoint at;
    lb_plan_to_page (view, width, height, plan->piles[i].x_m, plan->piles[i].y_m, &at);
    const double distance = hypot (at.x - x, at.y - y);
    if (distance < nearest_px && distance <= lb_plan_mark_size (plan, view, i) / 2 + reach_px) {
      nearest = (int) i;
      nearest_px = distance;
    }
  }
  return nearest;
}

int
lb_plan_neighbour (const LbPlan *plan, int from, double angle_rad)
{
  /* Piles of a surveyed row do not stand on one line to the millimetre: two that are as near
   * within a hundredth are told apart by direction. */
  static const double AS_NEAR = 1.01;

  if (from < 0 || (gsize) from >= plan->n_piles)
    return plan->n_piles > 0 ? 0 : -1;
  const LbPoint direction = { sin (angle_rad), cos (angle_rad) };
  int best = -1;
  double best_distance = INFINITY, best_along = 0;
  for (gsize i = 0; i < plan->n_piles; i++) {
    const double dx = plan->piles[i].x_m - plan->piles[from].x_m;
    const double dy = plan->piles[i].y_m - plan->piles[from].y_m;
    const double distance = hypot (dx, dy);
    if (distance < SAME_PLACE_M)
      continue;
    const double along = (dx * direction.x + dy * direction.y) / distance;
    if (along < G_SQRT2 / 2 - 1e-9)
      continue;
    const gboolean is_nearer = distance * AS_NEAR < best_distance;
    const gboolean is_as_near = distance < best_distance * AS_NEAR;
    if (is_nearer || (is_as_near && along > best_along)) {
      best = (int) i;
      best_distance = distance;
      best_along = along;
    }
  }
  return best;
}
