/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/section.h"

#include <math.h>

static void
reckon (const LbPile *pile,
        LbBarSet burned,
        guint n_unplaced,
        const LbAssumptions *assumptions,
        LbCutPlan *out_plan)
{
  const LbCutBasis basis = lb_cut_basis (assumptions);

  lb_cut_plan_reckon (pile, burned, 0, n_unplaced, &basis, out_plan);
}

typedef struct
{
  LbPile pile;
  LbCutPlan plan;
  LbSection section;
} Case;

static void
case_init (Case *it, LbShape shape, guint n_bars, LbBarSet burned)
{
  LbAssumptions assumptions;
  lb_assumptions_init (&assumptions);
  lb_pile_init (&it->pile);
  it->pile.unsaid = 0;
  it->pile.outline = (LbOutline){ shape, 0.4064, 0 };
  it->pile.n_bars = n_bars;
  it->pile.bar = lb_bar_find ("#8");
  it->pile.batter = 0.25;
  it->pile.bearing_rad = G_PI;
  reckon (&it->pile, burned, 0, &assumptions, &it->plan);
  it->section = (LbSection){ &it->pile, &it->plan, burned, -1 };
}

static const guint BARS[] = { 4, 5, 8, 12, 16, 20, 24, 60 };
static const double PAGES[] = { 160, 190, 220, 400 };

/* Every bar answers where it is drawn, and half a reach beside it unless another is nearer. */
static void
test_bar_at (void)
{
  for (int shape = 0; shape < LB_N_SHAPES; shape++) {
    for (gsize b = 0; b < G_N_ELEMENTS (BARS); b++) {
      for (gsize p = 0; p < G_N_ELEMENTS (PAGES); p++) {
        Case it;
        case_init (&it, (LbShape) shape, BARS[b], 0);
        for (guint bar = 0; bar < BARS[b]; bar++) {
          const LbPoint at = lb_section_bar_place (&it.section, PAGES[p], PAGES[p], bar);
          g_assert_cmpint (lb_section_bar_at (&it.section, PAGES[p], PAGES[p], at.x, at.y), ==,
                           (int) bar);
          g_assert_true (at.x > 0 && at.y > 0 && at.x < PAGES[p] && at.y < PAGES[p]);
        }
        g_assert_cmpint (lb_section_bar_at (&it.section, PAGES[p], PAGES[p], 1, 1), ==, -1);
      }
    }
  }
}

static void
test_reach_of_a_finger (void)
{
  Case it;
  case_init (&it, LB_SHAPE_SQUARE, 4, 0);
  for (guint bar = 0; bar < 4; bar++) {
    const LbPoint at = lb_section_bar_place (&it.section, 200, 200, bar);
    for (double angle = 0; angle < 6; angle += 0.5) {
      g_assert_cmpint (lb_section_bar_at (&it.section, 200, 200, at.x + 13.9 * cos (angle),
                                          at.y + 13.9 * sin (angle)),
                       ==, (int) bar);
    }
  }
}

/* The first to burn is on the high side, down the page; the last on the lean, up the page. */
static void
test_lean_points_up (void)
{
  for (int shape = 0; shape < LB_N_SHAPES; shape++) {
    Case it;
    case_init (&it, (LbShape) shape, 8, 0);
    const guint first = it.plan.order[0], last = it.plan.order[it.plan.n_order - 1];
    g_assert_cmpfloat (lb_section_bar_place (&it.section, 200, 200, first).y, >,
                       lb_section_bar_place (&it.section, 200, 200, last).y);
    /* Bar 1 is the first at or right of the middle of the top. */
    const LbPoint one = lb_section_bar_place (&it.section, 200, 200, 0);
    for (guint bar = 1; bar < 8; bar++)
      g_assert_cmpfloat (one.y, <=, lb_section_bar_place (&it.section, 200, 200, bar).y + 1e-9);
    g_assert_cmpfloat (one.x, >=, 100 - 1e-9);
  }
}

/* North is where it is on a page that has the lean on top: right of a lean to the west. */
static void
test_north (void)
{
  static const struct
  {
    double batter, bearing_rad, x, y;
  } cases[] = {
    { 0.25, 0, 0, -1 },
    { 0.25, G_PI / 2, -1, 0 },
    { 0.25, G_PI, 0, 1 },
    { 0.25, 3 * G_PI / 2, 1, 0 },
    { 0, 0, 0, -1 },
    /* A bearing that is left of a pile that stands plumb. */
    { 0, G_PI, 0, -1 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    Case it;
    LbAssumptions assumptions;
    lb_assumptions_init (&assumptions);
    case_init (&it, LB_SHAPE_SQUARE, 8, 0);
    it.pile.batter = cases[i].batter;
    it.pile.bearing_rad = cases[i].bearing_rad;
    reckon (&it.pile, 0, 0, &assumptions, &it.plan);
    const LbPoint north = lb_section_north (&it.section);
    g_assert_cmpfloat_with_epsilon (north.x, cases[i].x, 1e-9);
    g_assert_cmpfloat_with_epsilon (north.y, cases[i].y, 1e-9);
  }
}

/* Seen from above, clockwise on the page as in the numbers: turned, not mirrored. */
static void
test_clockwise (void)
{
  Case it;
  case_init (&it, LB_SHAPE_ROUND, 8, 0);
  double area = 0;
  for (guint bar = 0; bar < 8; bar++) {
    const LbPoint a = lb_section_bar_place (&it.section, 200, 200, bar);
    const LbPoint b = lb_section_bar_place (&it.section, 200, 200, (bar + 1) % 8);
    area += a.x * b.y - b.x * a.y;
  }
  g_assert_cmpfloat (area, >, 0); /* y down: clockwise is positive */
}

static cairo_surface_t *
picture_of (const LbSection *section, double page)
{
  const int side = (int) page;
  cairo_surface_t *const surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, side, side);
  cairo_t *const cr = cairo_create (surface);
  const LbPalette *const palette = lb_palette (LB_PALETTE_PRINT);
  lb_ink_set (cr, palette, LB_INK_PAPER);
  cairo_paint (cr);
  lb_section_draw (cr, palette, &LB_VOICE_PLAIN, section, page, page);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

/* The ink in a square about a place. */
static guint64
ink_about (cairo_surface_t *surface, int x, int y, int reach)
{
  const guchar *const data = cairo_image_surface_get_data (surface);
  const int side = cairo_image_surface_get_width (surface);
  guint64 ink = 0;
  for (int j = MAX (y - reach, 0); j < MIN (y + reach, side); j++)
    for (int i = MAX (x - reach, 0); i < MIN (x + reach, side); i++)
      ink += 255u - data[j * cairo_image_surface_get_stride (surface) + i * 4 + 1];
  return ink;
}

static guint64
ink_of (const LbSection *section, double page)
{
  cairo_surface_t *const surface = picture_of (section, page);
  const guint64 ink = ink_about (surface, (int) page / 2, (int) page / 2, (int) page);
  cairo_surface_destroy (surface);
  return ink;
}

/* A bar is called by one number from the first to the last: burning others changes its ordinal,
 * never what stands in it. */
static void
test_numbers_stay (void)
{
  static const guint COUNTS[] = { 8, 12, 16 };
  for (gsize c = 0; c < G_N_ELEMENTS (COUNTS); c++) {
    Case before, after;
    case_init (&before, LB_SHAPE_SQUARE, COUNTS[c], 0);
    case_init (&after, LB_SHAPE_SQUARE, COUNTS[c], LB_BAR (before.plan.order[0]));
    cairo_surface_t *const old = picture_of (&before.section, 300);
    cairo_surface_t *const now = picture_of (&after.section, 300);
    for (gsize i = 2; i < before.plan.n_order; i++) {
      const LbPoint at = lb_section_bar_place (&before.section, 300, 300, before.plan.order[i]);
      g_assert_cmpuint (ink_about (old, (int) at.x, (int) at.y, 6), ==,
                        ink_about (now, (int) at.x, (int) at.y, 6));
    }
    /* And the two bars that are another thing now look it. */
    for (gsize i = 0; i < 2; i++) {
      const LbPoint at = lb_section_bar_place (&before.section, 300, 300, before.plan.order[i]);
      g_assert_cmpuint (ink_about (old, (int) at.x, (int) at.y, 6), !=,
                        ink_about (now, (int) at.x, (int) at.y, 6));
    }
    cairo_surface_destroy (old);
    cairo_surface_destroy (now);
  }
}

/* Bar by bar the section loses ink, as the marks of the plan do. */
static void
test_burning_takes_ink (void)
{
  static const guint COUNTS[] = { 4, 8, 16 };
  for (gsize c = 0; c < G_N_ELEMENTS (COUNTS); c++) {
    guint64 before = G_MAXUINT64;
    LbBarSet burned = 0;
    for (guint bar = 0; bar <= COUNTS[c]; bar++) {
      Case it;
      case_init (&it, LB_SHAPE_OCTAGON, COUNTS[c], burned);
      const guint64 ink = ink_of (&it.section, 200);
      g_assert_cmpuint (ink, <, before);
      before = ink;
      burned |= LB_BAR (bar);
    }
  }
}

/* A bar found gone does not look like one that was burned, and the foot says what it is. */
static void
test_found_gone (void)
{
  Case burned, gone;
  case_init (&burned, LB_SHAPE_OCTAGON, 8, LB_BAR (2) | LB_BAR (5));
  gone = burned;
  gone.section.pile = &gone.pile;
  gone.section.plan = &gone.plan;
  gone.plan.gone = LB_BAR (2);
  cairo_surface_t *const one = picture_of (&burned.section, 300);
  cairo_surface_t *const other = picture_of (&gone.section, 300);
  const LbPoint changed = lb_section_bar_place (&burned.section, 300, 300, 2);
  const LbPoint same = lb_section_bar_place (&burned.section, 300, 300, 5);
  g_assert_cmpuint (ink_about (one, (int) changed.x, (int) changed.y, 14), !=,
                    ink_about (other, (int) changed.x, (int) changed.y, 14));
  g_assert_cmpuint (ink_about (one, (int) same.x, (int) same.y, 14), ==,
                    ink_about (other, (int) same.x, (int) same.y, 14));
  g_assert_cmpuint (ink_about (one, 40, 278, 14), <, ink_about (other, 40, 278, 14));
  cairo_surface_destroy (one);
  cairo_surface_destroy (other);
}

/* Strand has numbers and no order: the one that bars would begin with looks like the others. */
static void
test_strand_has_no_order (void)
{
  Case it;
  case_init (&it, LB_SHAPE_SQUARE, 8, 0);
  g_assert_true (lb_section_tells_order (&it.pile));
  it.pile.bar = lb_bar_find ("1/2 in strand 270");
  g_assert_nonnull (it.pile.bar);
  g_assert_cmpint (it.pile.bar->kind, ==, LB_BAR_STRAND);
  g_assert_false (lb_section_tells_order (&it.pile));
  const guint64 ink = ink_of (&it.section, 300);
  it.plan.n_order = 0;
  g_assert_cmpuint (ink_of (&it.section, 300), ==, ink);
}

/* Bars whose load is told lie on the page, apart from each other, and answer where they are drawn. */
static void
test_shares_have_room (void)
{
  for (int shape = 0; shape < LB_N_SHAPES; shape++) {
    for (gsize b = 0; b < G_N_ELEMENTS (BARS); b++) {
      for (gsize p = 0; p < G_N_ELEMENTS (PAGES); p++) {
        LbBarShares shares = { .left = lb_bar_set_all (BARS[b]) };
        Case it;
        case_init (&it, (LbShape) shape, BARS[b], 0);
        it.section.shares = &shares;
        for (guint bar = 0; bar < BARS[b]; bar++) {
          const LbPoint at = lb_section_bar_place (&it.section, PAGES[p], PAGES[p], bar);
          g_assert_cmpint (lb_section_bar_at (&it.section, PAGES[p], PAGES[p], at.x, at.y), ==,
                           (int) bar);
          g_assert_true (at.x > 0 && at.y > 0 && at.x < PAGES[p] && at.y < PAGES[p]);
        }
      }
    }
  }
}

/* A ring of ink within the disc of @bar, clear of its rim and of its number. */
static guint64
fill_ink (const LbSection *section, guint bar)
{
  static const double PAGE = 400;
  cairo_surface_t *const surface = picture_of (section, PAGE);
  const LbPoint at = lb_section_bar_place (section, PAGE, PAGE, bar);
  guint64 ink = 0;
  for (int i = 0; i < 8; i++)
    ink += ink_about (surface, (int) (at.x + 15 * cos (i * G_PI / 4)),
                      (int) (at.y + 15 * sin (i * G_PI / 4)), 1);
  cairo_surface_destroy (surface);
  return ink;
}

static void
test_more_load_more_ink (void)
{
  LbBarShares shares = { .left = lb_bar_set_all (8) };
  Case it;
  case_init (&it, LB_SHAPE_SQUARE, 8, 0);
  it.section.shares = &shares;
  guint64 before = fill_ink (&it.section, 2);
  const guint64 other = fill_ink (&it.section, 5);
  for (int part = 1; part <= 4; part++) {
    shares.share[2] = part / 4.0;
    const guint64 ink = fill_ink (&it.section, 2);
    g_assert_cmpuint (ink, >, before);
    g_assert_cmpuint (fill_ink (&it.section, 5), ==, other);
    before = ink;
  }
  /* Over all of it only the rim and the number can say more: and they do. */
  const guint64 full = ink_of (&it.section, 400);
  shares.share[2] = 1.5;
  g_assert_cmpuint (ink_of (&it.section, 400), >, full);
}

/* Looking ahead is what the section would be once the bars are burned, but for the ordinals, which
 * stay those of the whole order. */
static void
test_steps_ahead (void)
{
  Case it;
  case_init (&it, LB_SHAPE_OCTAGON, 8, 0);
  const guint first = it.plan.order[0], second = it.plan.order[1];
  const guint64 first_ink = fill_ink (&it.section, first);
  const guint64 second_ink = fill_ink (&it.section, second);
  g_assert_cmpuint (first_ink, !=, second_ink); /* the next one is hot, steel is not */
  it.section.burned = LB_BAR (first);
  it.section.n_done = 1;
  g_assert_cmpuint (fill_ink (&it.section, second), ==, first_ink);
  const guint64 gone = fill_ink (&it.section, first);
  g_assert_cmpuint (gone, <, first_ink);
  /* Just going, it is still to be seen. */
  it.section.going = first;
  it.section.going_left = 0.5;
  g_assert_cmpuint (fill_ink (&it.section, first), >, gone);
}

static void
test_legend (void)
{
  for (guint kind = 0; kind < LB_N_PALETTES; kind++) {
    cairo_surface_t *const ink = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
    cairo_t *const cr = cairo_create (ink);
    double x, y, width, height;
    lb_section_legend_draw (cr, lb_palette ((LbPaletteKind) kind), &LB_VOICE_PLAIN, 330, 24);
    cairo_recording_surface_ink_extents (ink, &x, &y, &width, &height);
    g_assert_true (x >= -1 && y >= -1 && x + width <= 331 && y + height <= 26);
    g_assert_cmpfloat (width, >, 250);
    cairo_destroy (cr);
    cairo_surface_destroy (ink);
  }
}

static void
test_focus_shows (void)
{
  Case it;
  case_init (&it, LB_SHAPE_OCTAGON, 8, 0);
  const guint64 plain = ink_of (&it.section, 200);
  it.section.focus = 3;
  g_assert_cmpuint (ink_of (&it.section, 200), >, plain + 255 * 20);
}

static void
test_unknown_facts (void)
{
  Case it;
  case_init (&it, LB_SHAPE_SQUARE, 0, 0);
  g_assert_cmpint (lb_section_bar_at (&it.section, 200, 200, 100, 100), ==, -1);
  g_assert_cmpuint (ink_of (&it.section, 200), >, 255 * 100);
  case_init (&it, LB_SHAPE_ROUND, 8, 0);
  it.pile.outline.width_m = 0;
  it.pile.bar = NULL;
  g_assert_cmpuint (ink_of (&it.section, 200), >, 255 * 100);
  const LbPoint at = lb_section_bar_place (&it.section, 200, 200, 5);
  g_assert_cmpint (lb_section_bar_at (&it.section, 200, 200, at.x, at.y), ==, 5);
  /* A page too small for anything is no reason to fail. */
  g_assert_cmpuint (ink_of (&it.section, 20), >, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/section/bar-at", test_bar_at);
  g_test_add_func ("/section/reach-of-a-finger", test_reach_of_a_finger);
  g_test_add_func ("/section/lean-points-up", test_lean_points_up);
  g_test_add_func ("/section/north", test_north);
  g_test_add_func ("/section/clockwise", test_clockwise);
  g_test_add_func ("/section/numbers-stay", test_numbers_stay);
  g_test_add_func ("/section/burning-takes-ink", test_burning_takes_ink);
  g_test_add_func ("/section/found-gone", test_found_gone);
  g_test_add_func ("/section/strand-has-no-order", test_strand_has_no_order);
  g_test_add_func ("/section/shares-have-room", test_shares_have_room);
  g_test_add_func ("/section/more-load-more-ink", test_more_load_more_ink);
  g_test_add_func ("/section/steps-ahead", test_steps_ahead);
  g_test_add_func ("/section/legend", test_legend);
  g_test_add_func ("/section/focus-shows", test_focus_shows);
  g_test_add_func ("/section/unknown-facts", test_unknown_facts);
  return g_test_run ();
}
