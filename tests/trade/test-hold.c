/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/hold.h"

#include "bared-cut.h"
#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

#define INCH     0.0254
#define SEED     19380401
#define N_TRIALS 60
#define N_MOST   24

static LbHold
hold_of (const LbBaredCut *pile, const LbStubLoad *load)
{
  g_autoptr (GError) error = NULL;
  LbHold hold;

  g_assert_true (lb_hold_reckon (&pile->cut, pile->burn.left, load, &hold, &error));
  g_assert_no_error (error);
  return hold;
}

/* --- Of any pile --------------------------------------------------------------------------- */

/* The stresses add up to the force and to both moments; what the bars' own thickness carries is
 * their second moment times the slope. */
static void
test_balance (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);
  guint n_held = 0;

  for (int trial = 0; trial < N_TRIALS; trial++) {
    LbBaredCut pile;

    lb_bared_cut_chance (&pile, random, N_MOST);

    const LbStubLoad load = lb_bared_cut_load (&pile.stub, pile.stub.hook_share);
    const LbHold hold = hold_of (&pile, &load);
    const LbBarSection section = lb_bar_section (pile.cut.bar, pile.cut.gap_m);
    double force = 0, about_x = 0, about_y = 0, size = 0;

    if (hold.is_hinge)
      continue;
    n_held++;
    for (guint bar = 0; bar < pile.cut.n_bars; bar++) {
      if ((pile.burn.left & LB_BAR (bar)) == 0)
        continue;

      const double carried = hold.base_pa[bar] * section.area_m2;

      force += carried;
      about_x += carried * pile.places[bar].y + section.inertia_m4 * hold.field.slope_pa_m.y;
      about_y += carried * pile.places[bar].x + section.inertia_m4 * hold.field.slope_pa_m.x;
      size += fabs (carried) * hypot (pile.places[bar].x, pile.places[bar].y);
    }
    g_assert_cmpfloat_with_epsilon (force, load.axial_n, 1e-9 * fabs (load.axial_n));
    g_assert_cmpfloat_with_epsilon (about_x, load.moment_nm, 1e-9 * size);
    g_assert_cmpfloat_with_epsilon (about_y, 0, 1e-9 * size);
  }
  g_assert_cmpuint (n_held, >, N_TRIALS / 2);
}

/* A pile and its mirror image hold alike, bar for bar. */
static void
test_mirror (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);

  for (int trial = 0; trial < N_TRIALS; trial++) {
    LbBaredCut pile;

    lb_bared_cut_chance (&pile, random, N_MOST);

    const LbStubLoad load = lb_bared_cut_load (&pile.stub, pile.stub.hook_share);
    const LbHold once = hold_of (&pile, &load);

    for (guint bar = 0; bar < pile.cut.n_bars; bar++)
      pile.places[bar].x = -pile.places[bar].x;

    const LbHold mirrored = hold_of (&pile, &load);

    g_assert_true (mirrored.is_hinge == once.is_hinge);
    for (guint bar = 0; bar < pile.cut.n_bars && !once.is_hinge; bar++) {
      if (pile.burn.left & LB_BAR (bar))
        g_assert_cmpfloat_with_epsilon (mirrored.peak_pa[bar], once.peak_pa[bar],
                                        1e-9 * once.greatest_pa);
    }
  }
}

static void
test_no_load_no_stress (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);

  for (int trial = 0; trial < N_TRIALS; trial++) {
    LbBaredCut pile;
    const LbStubLoad nothing = { 0 };

    lb_bared_cut_chance (&pile, random, N_MOST);

    const LbHold hold = hold_of (&pile, &nothing);

    if (hold.is_hinge)
      continue;
    g_assert_cmpfloat (hold.greatest_pa, ==, 0);
    g_assert_cmpfloat (hold.utilisation, ==, 0);
    g_assert_cmpfloat (hold.buckling_share, ==, 0);
    g_assert_true (pile.burn.left & LB_BAR (hold.governing));
  }
}

/* With all its bars a pile never holds better for leaning more, as long as they are in balance: more
 * bars toward the lean, and a little of it eases them. */
static void
test_more_lean_never_helps (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);

  guint n_tried = 0;

  for (int trial = 0; trial < N_TRIALS; trial++) {
    LbBaredCut pile;
    double last = 0;

    lb_bared_cut_chance (&pile, random, N_MOST);
    pile.burn.left = lb_bar_set_all (pile.cut.n_bars);
    pile.stub.hook_share = 0;
    n_tried += pile.is_balanced;
    for (int degrees = 0; degrees <= 20 && pile.is_balanced; degrees++) {
      pile.stub.lean_rad = degrees * G_PI / 180;

      const LbStubLoad load = lb_bared_cut_load (&pile.stub, pile.stub.hook_share);
      const LbHold hold = hold_of (&pile, &load);

      if (hold.is_hinge) /* whatever it leans */
        break;
      g_assert_cmpfloat (hold.utilisation, >=, last);
      last = hold.utilisation;
    }
  }
  g_assert_cmpuint (n_tried, >, N_TRIALS / 2);
}

/* Nothing depends on the units that people typed. */
static void
test_units_round_trip (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);

  for (int trial = 0; trial < N_TRIALS; trial++) {
    LbBaredCut pile;

    lb_bared_cut_chance (&pile, random, N_MOST);

    const LbStubLoad load = lb_bared_cut_load (&pile.stub, pile.stub.hook_share);
    const LbHold once = hold_of (&pile, &load);
    const struct
    {
      double *value;
      LbQuantity quantity;
    } typed[] = {
      { &pile.stub.length_m, LB_QUANTITY_LENGTH },
      { &pile.stub.outline.width_m, LB_QUANTITY_SIZE },
      { &pile.stub.current_m_s, LB_QUANTITY_SPEED },
      { &pile.stub.concrete_kg_per_m3, LB_QUANTITY_DENSITY },
      { &pile.stub.lean_rad, LB_QUANTITY_ANGLE },
      { &pile.cut.gap_m, LB_QUANTITY_SIZE },
      { &pile.cut.yield_pa, LB_QUANTITY_STRESS },
    };

    for (gsize i = 0; i < G_N_ELEMENTS (typed); i++) {
      const double shown = lb_quantity_from_si (typed[i].quantity, LB_UNITS_US, *typed[i].value);

      *typed[i].value = lb_quantity_to_si (typed[i].quantity, LB_UNITS_US, shown);
    }

    const LbStubLoad again_load = lb_bared_cut_load (&pile.stub, pile.stub.hook_share);
    const LbHold again = hold_of (&pile, &again_load);

    g_assert_true (again.is_hinge == once.is_hinge);
    if (!once.is_hinge)
      g_assert_cmpfloat_with_epsilon (again.utilisation, once.utilisation, 1e-9 * once.utilisation);
  }
}

/* The worst bearing is worse than any that is tried, and nearly met by one of them. */
static void
test_worst_bearing (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);

  for (int trial = 0; trial < N_TRIALS; trial++) {
    LbBaredCut pile;

    lb_bared_cut_chance (&pile, random, N_MOST);

    const LbStubLoad load = lb_bared_cut_load (&pile.stub, pile.stub.hook_share);
    const LbHold hold = hold_of (&pile, &load);

    for (guint bar = 0; bar < pile.cut.n_bars && !hold.is_hinge; bar++) {
      const LbBarField *field = &hold.field;
      const double worst = lb_bar_field_drag (field, pile.places[bar]);
      const double x = pile.places[bar].x - field->centroid.x;
      const double y = pile.places[bar].y - field->centroid.y;
      const double determinant = field->inertia_xx_m4 * field->inertia_yy_m4 -
                                 field->inertia_xy_m4 * field->inertia_xy_m4;
      double greatest = 0;

      for (int degree = 0; degree < 360; degree++) {
        const double m_x = load.drag_nm * sin (degree * G_PI / 180);
        const double m_y = load.drag_nm * cos (degree * G_PI / 180);
        const double slope_x = field->inertia_yy_m4 * m_x - field->inertia_xy_m4 * m_y;
        const double slope_y = field->inertia_xx_m4 * m_y - field->inertia_xy_m4 * m_x;

        greatest = MAX (greatest, (slope_x * x + slope_y * y) / determinant);
      }
      g_assert_cmpfloat (greatest, <=, worst * (1 + 1e-9));
      g_assert_cmpfloat (greatest, >=, worst * 0.999);
    }
  }
}

/* --- Single cases -------------------------------------------------------------------------- */

static void
test_hinges (void)
{
  LbBaredCut pile;
  const struct
  {
    LbBarSet left;
    gboolean is_hinge;
  } cases[] = {
    { 0, TRUE },
    { LB_BAR (3), TRUE },
    { LB_BAR (0) | LB_BAR (4), TRUE },
    /* A face of the square, and its middle line. */
    { LB_BAR (7) | LB_BAR (0) | LB_BAR (1), TRUE },
    { LB_BAR (2) | LB_BAR (6), TRUE },
    /* Three that are not in line. */
    { LB_BAR (7) | LB_BAR (0) | LB_BAR (2), FALSE },
  };

  lb_bared_cut_init (&pile, LB_SHAPE_SQUARE, 16 * INCH, 8, "#8");
  const LbStubLoad load = lb_bared_cut_load (&pile.stub, pile.stub.hook_share);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    pile.burn.left = cases[i].left;

    const LbHold hold = hold_of (&pile, &load);

    g_assert_true (hold.is_hinge == cases[i].is_hinge);
    g_assert_true (isnan (hold.utilisation) == cases[i].is_hinge);
    g_assert_true (isnan (hold.greatest_pa) == cases[i].is_hinge);
    g_assert_cmpuint (hold.n_left, ==, lb_bar_set_count (cases[i].left));
  }

  /* A line may stand askew, or all bars in one spot, and is still a hinge. */
  for (guint bar = 0; bar < 8; bar++)
    pile.places[bar] = (LbPoint){ .x = 0.1 + 0.03 * bar, .y = -0.2 + 0.05 * bar };
  pile.burn.left = lb_bar_set_all (8);
  g_assert_true (hold_of (&pile, &load).is_hinge);
  memset (pile.places, 0, sizeof pile.places);
  g_assert_true (hold_of (&pile, &load).is_hinge);
}

/* Whatever is not there must not be in the sums. */
static void
test_gone_bars (void)
{
  LbBaredCut pile;

  lb_bared_cut_init (&pile, LB_SHAPE_SQUARE, 16 * INCH, 8, "#8");
  const LbStubLoad load = lb_bared_cut_load (&pile.stub, pile.stub.hook_share);

  pile.burn.left &= ~LB_BAR (2);
  const LbHold hold = hold_of (&pile, &load);
  g_assert_true (isnan (hold.base_pa[2]) && isnan (hold.peak_pa[2]) && isnan (hold.peak_pa[8]));
  pile.places[2] = (LbPoint){ .x = 40, .y = -3 };
  g_assert_cmpfloat (hold_of (&pile, &load).greatest_pa, ==, hold.greatest_pa);

  /* Bars of the set that the pile does not have are not there either. */
  pile.burn.left |= LB_BAR (30);
  g_assert_cmpuint (hold_of (&pile, &load).n_left, ==, 7);
}

/* Shear bends a bar held at both faces with V / n × gap / 2; nothing else here loads it. */
static void
test_shear_in_the_gap (void)
{
  LbBaredCut pile;
  const LbStubLoad load = { .shear_n = 8000 };

  lb_bared_cut_init (&pile, LB_SHAPE_ROUND, 16 * INCH, 8, "#8");

  const double modulus = G_PI * pow (1 * INCH, 3) / 32;
  const LbHold once = hold_of (&pile, &load);

  g_assert_cmpfloat_with_epsilon (once.greatest_pa, 1000 * 3 * INCH / modulus, 1e-3);
  pile.cut.gap_m *= 2;
  g_assert_cmpfloat_with_epsilon (hold_of (&pile, &load).greatest_pa, 2 * once.greatest_pa, 1e-3);
  pile.cut.gap_m = 0;
  g_assert_cmpfloat (hold_of (&pile, &load).greatest_pa, ==, 0);

  /* A square bar the worst way round: over its corners. */
  lb_bared_cut_init (&pile, LB_SHAPE_ROUND, 16 * INCH, 8, "1 in sq");
  const double over_corners = pow (1 * INCH, 3) / (6 * G_SQRT2);
  g_assert_cmpfloat_with_epsilon (hold_of (&pile, &load).greatest_pa,
                                  1000 * 3 * INCH / over_corners, 1e-3);
}

/* Over a long gap the bar buckles before it yields, and only in compression. */
static void
test_buckling (void)
{
  LbBaredCut pile;
  LbStubLoad load = { .axial_n = 8000 };

  lb_bared_cut_init (&pile, LB_SHAPE_ROUND, 16 * INCH, 8, "#6");
  pile.cut.gap_m = 2;

  const double euler = lb_bar_euler_load (pile.cut.bar, 2, 1);
  const LbHold pressed = hold_of (&pile, &load);

  g_assert_cmpfloat_with_epsilon (pressed.buckling_share, 1000 / euler, 1e-12);
  g_assert_cmpfloat_with_epsilon (pressed.utilisation, 3 * pressed.buckling_share, 1e-12);

  load.axial_n = -8000;
  const LbHold pulled = hold_of (&pile, &load);
  g_assert_cmpfloat (pulled.buckling_share, ==, 0);
  g_assert_cmpfloat_with_epsilon (pulled.utilisation, pulled.greatest_pa * 3 / pile.cut.yield_pa,
                                  1e-12);

  /* No gap, no buckling. */
  pile.cut.gap_m = 0;
  load.axial_n = 8000;
  g_assert_cmpfloat (hold_of (&pile, &load).buckling_share, ==, 0);
}

/* Utilisation is measured by yield over the factor. */
static void
test_factor (void)
{
  LbBaredCut pile;

  lb_bared_cut_init (&pile, LB_SHAPE_OCTAGON, 16 * INCH, 8, "#8");
  const LbStubLoad load = lb_bared_cut_load (&pile.stub, pile.stub.hook_share);

  const LbHold hold = hold_of (&pile, &load);
  g_assert_cmpfloat_with_epsilon (hold.utilisation, hold.greatest_pa * 3 / pile.cut.yield_pa,
                                  1e-12);
  g_assert_cmpfloat (hold.peak_pa[hold.governing], ==, hold.greatest_pa);

  pile.cut.factor = 1.5;
  g_assert_cmpfloat_with_epsilon (hold_of (&pile, &load).utilisation, hold.utilisation / 2, 1e-12);
}

static void
test_concrete_left (void)
{
  LbBaredCut pile;
  LbConcreteLeft found;

  lb_bared_cut_init (&pile, LB_SHAPE_OCTAGON, 16 * INCH, 8, "#8");
  const LbStubLoad load = lb_bared_cut_load (&pile.stub, pile.stub.hook_share);
  for (int left = 0; left < LB_N_CONCRETE_LEFT; left++) {
    pile.cut.concrete = (LbConcreteLeft) left;
    g_assert_true (hold_of (&pile, &load).is_lower_bound == (left != LB_CONCRETE_NONE));
    g_assert_true (
      lb_concrete_left_from_name (lb_concrete_left_name ((LbConcreteLeft) left), &found));
    g_assert_cmpint (found, ==, left);
  }
  g_assert_true (lb_concrete_left_from_name ("One Side", &found));
  g_assert_cmpint (found, ==, LB_CONCRETE_ONE_SIDE);
  g_assert_false (lb_concrete_left_from_name ("half", &found));
}

static void
test_applies (void)
{
  gsize n;
  const LbBar *bars = lb_bar_table (&n);

  g_assert_false (lb_hold_applies (NULL));
  for (gsize i = 0; i < n; i++)
    g_assert_true (lb_hold_applies (&bars[i]) == (bars[i].kind != LB_BAR_STRAND));
}

static void
test_refused (void)
{
  const struct
  {
    const char *bar;
    double gap_m, yield_pa, factor, effective_length;
    int code;
  } cases[] = {
    { "1/2 in strand 270", 0.15, 2e8, 3, 1, LB_TRADE_ERROR_DOMAIN },
    { NULL, 0.15, 2e8, 3, 1, LB_TRADE_ERROR_INCOMPLETE },
    { "#8", (double) NAN, 2e8, 3, 1, LB_TRADE_ERROR_INCOMPLETE },
    { "#8", -0.1, 2e8, 3, 1, LB_TRADE_ERROR_DOMAIN },
    { "#8", 0.15, 0, 3, 1, LB_TRADE_ERROR_DOMAIN },
    { "#8", 0.15, 2e8, 0.9, 1, LB_TRADE_ERROR_DOMAIN },
    { "#8", 0.15, 2e8, 3, 0, LB_TRADE_ERROR_DOMAIN },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (GError) error = NULL;
    const LbStubLoad load = { .axial_n = 1000 };
    LbHold hold = { .n_left = 7 };
    LbBaredCut pile;

    lb_bared_cut_init (&pile, LB_SHAPE_SQUARE, 0.4, 8, "#8");
    pile.cut.bar = cases[i].bar ? lb_bar_find (cases[i].bar) : NULL;
    pile.cut.gap_m = cases[i].gap_m;
    pile.cut.yield_pa = cases[i].yield_pa;
    pile.cut.factor = cases[i].factor;
    pile.cut.effective_length = cases[i].effective_length;
    g_assert_false (lb_hold_reckon (&pile.cut, pile.burn.left, &load, &hold, &error));
    g_assert_error (error, LB_TRADE_ERROR, cases[i].code);
    g_assert_cmpuint (hold.n_left, ==, 7);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/hold/balance", test_balance);
  g_test_add_func ("/trade/hold/mirror", test_mirror);
  g_test_add_func ("/trade/hold/no-load-no-stress", test_no_load_no_stress);
  g_test_add_func ("/trade/hold/more-lean-never-helps", test_more_lean_never_helps);
  g_test_add_func ("/trade/hold/units-round-trip", test_units_round_trip);
  g_test_add_func ("/trade/hold/worst-bearing", test_worst_bearing);
  g_test_add_func ("/trade/hold/hinges", test_hinges);
  g_test_add_func ("/trade/hold/gone-bars", test_gone_bars);
  g_test_add_func ("/trade/hold/shear-in-the-gap", test_shear_in_the_gap);
  g_test_add_func ("/trade/hold/buckling", test_buckling);
  g_test_add_func ("/trade/hold/factor", test_factor);
  g_test_add_func ("/trade/hold/concrete-left", test_concrete_left);
  g_test_add_func ("/trade/hold/applies", test_applies);
  g_test_add_func ("/trade/hold/refused", test_refused);
  return g_test_run ();
}
