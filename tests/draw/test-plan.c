/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/plan.h"
#include "sample-job.h"

#include <math.h>

/* A grid of @n_bents by @n_rows, a bent and a row every @pitch_m, turned by @turn_rad. */
typedef struct
{
  LbFold fold;
  char *names[64];
} Pier;

static void
pier_init (Pier *pier, guint n_bents, guint n_rows, double pitch_m, double turn_rad)
{
  *pier = (Pier){ .fold = { .n_piles = n_bents * n_rows } };
  pier->fold.piles = g_new0 (LbPile, pier->fold.n_piles + 1);
  pier->fold.states = g_new0 (LbPileState, pier->fold.n_piles + 1);
  for (guint i = 0; i < MAX (n_bents, n_rows); i++)
    pier->names[i] = g_strdup_printf ("%u", i + 1);
  for (guint i = 0; i < pier->fold.n_piles; i++) {
    LbPile *const pile = &pier->fold.piles[i];
    const double x = i % n_bents * pitch_m, y = i / n_bents * pitch_m;
    lb_pile_init (pile);
    pile->unsaid = 0;
    pile->bent = pier->names[i % n_bents];
    pile->row = pier->names[i / n_bents];
    pile->mark = pile->bent;
    pile->outline.width_m = 0.4;
    pile->x_m = x * cos (turn_rad) - y * sin (turn_rad);
    pile->y_m = x * sin (turn_rad) + y * cos (turn_rad);
  }
}

static void
pier_clear (Pier *pier)
{
  for (gsize i = 0; i < G_N_ELEMENTS (pier->names); i++)
    g_free (pier->names[i]);
  g_free (pier->fold.piles);
  g_free (pier->fold.states);
}

static void
test_round_trip (void)
{
  const LbPlanView view = { 120.5, -33.25, 7.5 };
  for (double x = -50; x <= 1500; x += 77) {
    LbPoint place, back;
    lb_plan_from_page (&view, 1389, 868, x, x / 3, &place);
    lb_plan_to_page (&view, 1389, 868, place.x, place.y, &back);
    g_assert_cmpfloat_with_epsilon (back.x, x, 1e-9);
    g_assert_cmpfloat_with_epsilon (back.y, x / 3, 1e-9);
  }
  LbPoint north;
  lb_plan_to_page (&view, 200, 100, 120.5, -32.25, &north);
  g_assert_cmpfloat (north.x, ==, 100);
  g_assert_cmpfloat (north.y, ==, 50 - 7.5);
}

static void
test_fit (void)
{
  static const double TURNS[] = { 0, 0.3, G_PI / 2, 2.5 };
  for (gsize t = 0; t < G_N_ELEMENTS (TURNS); t++) {
    Pier pier;
    pier_init (&pier, 12, 7, 3, TURNS[t]);
    g_autoptr (LbPlan) plan = lb_plan_new (&pier.fold);
    const LbPlanView view = lb_plan_fit (plan, 800, 600, 40);
    double least = INFINITY;
    for (gsize i = 0; i < plan->n_deck; i++) {
      LbPoint at;
      lb_plan_to_page (&view, 800, 600, plan->deck[i].x, plan->deck[i].y, &at);
      least = MIN (least, MIN (MIN (at.x, 800 - at.x), MIN (at.y, 600 - at.y)));
    }
    /* Nothing past the margin, and something right at it. */
    g_assert_cmpfloat_with_epsilon (least, 40, 1e-6);
    pier_clear (&pier);
  }
}

static void
test_pitch_and_deck (void)
{
  Pier pier;
  pier_init (&pier, 12, 7, 3, 0.4);
  /* A pile far out moves neither. */
  pier.fold.piles[0].x_m -= 500;
  pier.fold.piles[0].bent = "";
  g_autoptr (LbPlan) plan = lb_plan_new (&pier.fold);
  g_assert_cmpfloat_with_epsilon (plan->pitch_m, 3, 1e-9);
  g_assert_cmpfloat (plan->left_m, <, -490);
  for (gsize i = 0; i < plan->n_deck; i++)
    g_assert_cmpfloat (plan->deck[i].x, >, -50);
  /* Every pile of the grid lies well inside the deck: left of each edge, walking round it. */
  for (gsize i = 1; i < plan->n_piles; i++) {
    for (gsize k = 0; k < plan->n_deck; k++) {
      const LbPoint a = plan->deck[k], b = plan->deck[(k + 1) % plan->n_deck];
      const double area = (b.x - a.x) * (plan->piles[i].y_m - a.y) -
                          (b.y - a.y) * (plan->piles[i].x_m - a.x);
      g_assert_cmpfloat (area / hypot (b.x - a.x, b.y - a.y), >, 1);
    }
  }
  pier_clear (&pier);
}

/* A rectangle of piles has a deck of four corners, however it is turned. */
static void
test_deck_of_a_rectangle (void)
{
  for (double turn = 0; turn < 3; turn += 0.37) {
    Pier pier;
    pier_init (&pier, 6, 4, 3, turn);
    g_autoptr (LbPlan) plan = lb_plan_new (&pier.fold);
    g_assert_cmpuint (plan->n_deck, ==, 4);
    pier_clear (&pier);
  }
}

static void
test_few_piles (void)
{
  static const guint COUNTS[][2] = { { 0, 1 }, { 1, 1 }, { 2, 1 }, { 1, 5 } };
  for (gsize c = 0; c < G_N_ELEMENTS (COUNTS); c++) {
    Pier pier;
    pier_init (&pier, COUNTS[c][0], COUNTS[c][1], 3, 0);
    g_autoptr (LbPlan) plan = lb_plan_new (&pier.fold);
    const LbPlanView view = lb_plan_fit (plan, 300, 200, 20);
    g_assert_true (isfinite (view.px_per_m) && view.px_per_m > 0);
    g_assert_cmpuint (plan->n_deck, ==, COUNTS[c][0] == 0 ? 0 : 4);
    pier_clear (&pier);
  }
}

/* All bents on one line outside the deck, all rows on another, the two square to each other. */
static void
test_axes (void)
{
  for (double turn = 0; turn < 6.2; turn += 0.31) {
    Pier pier;
    pier_init (&pier, 8, 5, 3, turn);
    g_autoptr (LbPlan) plan = lb_plan_new (&pier.fold);
    g_assert_cmpuint (plan->n_axes, ==, 8 + 5);
    const LbPoint bents = plan->axes[0].away, rows = plan->axes[12].away;
    g_assert_cmpfloat_with_epsilon (bents.x * rows.x + bents.y * rows.y, 0, 1e-9);
    for (gsize i = 0; i < plan->n_axes; i++) {
      const LbPlanAxis *const axis = &plan->axes[i], *const first = &plan->axes[i < 8 ? 0 : 12];
      g_assert_cmpint (axis->is_row, ==, i >= 8);
      const double off = (axis->x_m - first->x_m) * first->away.x +
                         (axis->y_m - first->y_m) * first->away.y;
      g_assert_cmpfloat_with_epsilon (off, 0, 1e-9);
      for (gsize p = 0; p < plan->n_piles; p++) {
        const double beyond = (axis->x_m - plan->piles[p].x_m) * axis->away.x +
                              (axis->y_m - plan->piles[p].y_m) * axis->away.y;
        g_assert_cmpfloat (beyond, >, 1);
      }
      /* Up or left on the page, never below or to the right. */
      g_assert_true (axis->away.y > 0.7 || axis->away.x < -0.7);
    }
    pier_clear (&pier);
  }
}

static void
test_pile_at (void)
{
  Pier pier;
  pier_init (&pier, 6, 4, 3, 0.2);
  g_autoptr (LbPlan) plan = lb_plan_new (&pier.fold);
  const LbPlanView view = lb_plan_fit (plan, 500, 400, 30);
  for (gsize i = 0; i < plan->n_piles; i++) {
    LbPoint at;
    lb_plan_to_page (&view, 500, 400, plan->piles[i].x_m, plan->piles[i].y_m, &at);
    const double edge = lb_plan_mark_size (plan, &view, i) / 2;
    g_assert_cmpint (lb_plan_pile_at (plan, &view, 500, 400, at.x, at.y, 0), ==, (int) i);
    g_assert_cmpint (lb_plan_pile_at (plan, &view, 500, 400, at.x + edge + 3, at.y, 4), ==,
                     (int) i);
    g_assert_cmpint (lb_plan_pile_at (plan, &view, 500, 400, at.x + edge + 3, at.y, 2), ==, -1);
  }
  pier_clear (&pier);
}

static void
test_neighbour (void)
{
  Pier pier;
  pier_init (&pier, 6, 4, 3, 0);
  g_autoptr (LbPlan) plan = lb_plan_new (&pier.fold);
  const int from = 6 + 2;
  g_assert_cmpint (lb_plan_neighbour (plan, from, 0), ==, from + 6);
  g_assert_cmpint (lb_plan_neighbour (plan, from, G_PI / 2), ==, from + 1);
  g_assert_cmpint (lb_plan_neighbour (plan, from, G_PI), ==, from - 6);
  g_assert_cmpint (lb_plan_neighbour (plan, from, 3 * G_PI / 2), ==, from - 1);
  g_assert_cmpint (lb_plan_neighbour (plan, 0, G_PI), ==, -1);
  g_assert_cmpint (lb_plan_neighbour (plan, 23, 0), ==, -1);
  g_assert_cmpint (lb_plan_neighbour (plan, -1, 0), ==, 0);
  pier_clear (&pier);
}

static void
test_sizes (void)
{
  Pier pier;
  pier_init (&pier, 6, 4, 3, 0);
  pier.fold.piles[1].batter = 0.25;
  pier.fold.piles[1].head_m = 2;
  pier.fold.piles[1].mudline_m = -8;
  g_autoptr (LbPlan) plan = lb_plan_new (&pier.fold);
  LbPlanView view = { 0, 0, 0.01 };
  double before = 0;
  for (; view.px_per_m < 1000; view.px_per_m *= 1.3) {
    const double size = lb_plan_mark_size (plan, &view, 0);
    g_assert_cmpfloat (size, >=, before);
    g_assert_cmpfloat (size, >=, 0.4 * view.px_per_m);
    /* Marks of neighbours never touch. */
    if (view.px_per_m > 1)
      g_assert_cmpfloat (size, <, 3 * view.px_per_m);
    before = size;
    g_assert_cmpfloat (lb_plan_arrow_length (plan, &view, 0), ==, 0);
  }
  /* At scale: from the outline's edge to where the axis is at the mudline's height. */
  view.px_per_m = 100;
  g_assert_cmpfloat_with_epsilon (lb_plan_arrow_length (plan, &view, 1), 250 - 20, 1e-9);
  pier_clear (&pier);
}

/* Each pile of the plan is the fold's, and what is folded is what is drawn. */
static void
test_follows_the_fold (void)
{
  g_autoptr (LbLedger) ledger = sample_job_new (12);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_autoptr (LbPlan) plan = lb_plan_new (fold);
  guint counts[LB_N_STEPS] = { 0 };
  g_assert_cmpuint (plan->n_piles, ==, fold->n_piles);
  for (gsize i = 0; i < plan->n_piles; i++) {
    counts[plan->piles[i].mark.step]++;
    g_assert_cmpstr (plan->piles[i].label, ==, fold->piles[i].mark);
    if (plan->piles[i].mark.step != LB_STEP_CLEANED)
      g_assert_true (isnan (plan->piles[i].mark.share_left));
  }
  for (int step = 0; step < LB_N_STEPS; step++)
    g_assert_cmpuint (counts[step], ==, fold->n_by_step[step]);
}

/* The picture without some piles has less ink; the whole has marks where the piles are. */
static void
test_draw (void)
{
  g_autoptr (LbLedger) ledger = sample_job_new (12);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_autoptr (LbPlan) plan = lb_plan_new (fold);
  const LbPlanView view = lb_plan_fit (plan, 700, 500, 60);
  g_autofree gboolean *none = g_new0 (gboolean, fold->n_piles);
  guint64 ink[2];
  for (int pass = 0; pass < 2; pass++) {
    cairo_surface_t *const surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 700, 500);
    cairo_t *const cr = cairo_create (surface);
    lb_plan_draw (cr, lb_palette (LB_PALETTE_PRINT), &LB_VOICE_PLAIN, plan, &view,
                  pass == 0 ? NULL : none, 700, 500);
    const double used = lb_plan_draw_legend (cr, lb_palette (LB_PALETTE_PRINT), &LB_VOICE_PLAIN,
                                             fold->n_by_step, 10, 10, 200);
    g_assert_cmpfloat (used, >, 40);
    g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
    cairo_destroy (cr);
    cairo_surface_flush (surface);
    const guchar *const data = cairo_image_surface_get_data (surface);
    ink[pass] = 0;
    for (gsize i = 0; i < 700 * 500; i++)
      ink[pass] += 255u - data[i * 4 + 1];
    cairo_surface_destroy (surface);
  }
  g_assert_cmpuint (ink[0], >, ink[1] * 3 / 2);
}

/* Where bents stand apart and their piles close, as in most piers, a name never lies where the next
 * pile of its bent is; where all stand alike there is no better place than under the mark. */
static void
test_names_keep_clear (void)
{
  for (double turn = -0.5; turn < 0.6; turn += 0.25) {
    Pier pier;
    pier_init (&pier, 6, 8, 2, turn);
    for (guint i = 0; i < pier.fold.n_piles; i++) {
      const double x = i % 6 * 5.0, y = i / 6 * 2.0;
      pier.fold.piles[i].x_m = x * cos (turn) - y * sin (turn);
      pier.fold.piles[i].y_m = x * sin (turn) + y * cos (turn);
    }
    g_autoptr (LbPlan) plan = lb_plan_new (&pier.fold);
    /* The first zoom with names, where the room is least. */
    LbPlanView view = lb_plan_fit (plan, 800, 600, 40);
    for (view.px_per_m = 1; !lb_plan_has_names (plan, &view, &LB_VOICE_PLAIN);)
      view.px_per_m *= 1.02;
    for (gsize i = 0; i < plan->n_piles; i++) {
      LbPoint name;
      const LbAlign align = lb_plan_name_place (plan, &view, i, &name);
      const double width = 3 * LB_PLAN_NAME_SIZE, height = LB_PLAN_NAME_SIZE * 1.35;
      const double left = align == LB_ALIGN_START ? name.x
                          : align == LB_ALIGN_END ? name.x - width
                                                  : name.x - width / 2;
      for (gsize j = 0; j < plan->n_piles; j++) {
        const double x = (plan->piles[j].x_m - plan->piles[i].x_m) * view.px_per_m;
        const double y = (plan->piles[i].y_m - plan->piles[j].y_m) * view.px_per_m;
        const double half = lb_plan_mark_size (plan, &view, j) / 2;
        g_assert_true (x + half <= left || x - half >= left + width || y + half <= name.y ||
                       y - half >= name.y + height);
      }
    }
    pier_clear (&pier);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/round-trip", test_round_trip);
  g_test_add_func ("/plan/fit", test_fit);
  g_test_add_func ("/plan/pitch-and-deck", test_pitch_and_deck);
  g_test_add_func ("/plan/deck-of-a-rectangle", test_deck_of_a_rectangle);
  g_test_add_func ("/plan/few-piles", test_few_piles);
  g_test_add_func ("/plan/axes", test_axes);
  g_test_add_func ("/plan/pile-at", test_pile_at);
  g_test_add_func ("/plan/neighbour", test_neighbour);
  g_test_add_func ("/plan/sizes", test_sizes);
  g_test_add_func ("/plan/follows-the-fold", test_follows_the_fold);
  g_test_add_func ("/plan/names-keep-clear", test_names_keep_clear);
  g_test_add_func ("/plan/draw", test_draw);
  return g_test_run ();
}
