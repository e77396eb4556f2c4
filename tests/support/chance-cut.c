/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "chance-cut.h"

#include <math.h>

#define INCH 0.0254

static gboolean
one_in (GRand *rand, gint32 n)
{
  return g_rand_int_range (rand, 0, n) == 0;
}

void
lb_chance_cut (LbChanceCut *cut, GRand *rand)
{
  static const char *const bars[] = { "#4", "#8", "#11", "#18", "1/2 in strand 270" };
  LbPile *pile = &cut->pile;

  *cut = (LbChanceCut){ 0 };
  lb_pile_init (pile);
  pile->unsaid = 0;
  pile->mark = "X1";
  pile->outline.shape = (LbShape) g_rand_int_range (rand, LB_SHAPE_SQUARE, LB_SHAPE_ROUND + 1);
  pile->outline.width_m = g_rand_double_range (rand, 10, 60) * INCH;
  if (one_in (rand, 2))
    pile->outline.void_m = 0.5 * pile->outline.width_m;
  if (one_in (rand, 4))
    pile->tip_width_m = g_rand_double_range (rand, 0.4, 1) * pile->outline.width_m;
  if (one_in (rand, 2))
    pile->toe_m = g_rand_double_range (rand, -110, -70);
  if (!one_in (rand, 6))
    pile->bar = lb_bar_find (bars[g_rand_int_range (rand, 0, G_N_ELEMENTS (bars))]);
  if (!one_in (rand, 6))
    pile->n_bars = (guint) g_rand_int_range (rand, 1, LB_BARS_MAX + 1);
  if (one_in (rand, 2))
    pile->batter = g_rand_double_range (rand, 0, 0.5);
  pile->bearing_rad = g_rand_double_range (rand, 0, 2 * G_PI);
  if (!one_in (rand, 8))
    pile->head_m = g_rand_double_range (rand, -10, 10);
  if (!one_in (rand, 8))
    pile->cut_m = g_rand_double_range (rand, -70, 10);
  pile->concrete = (LbConcreteLeft) g_rand_int_range (rand, 0, LB_N_CONCRETE_LEFT);
  /* Half of them whole. */
  if (one_in (rand, 2))
    cut->burned = lb_bar_set_all (pile->n_bars) & g_rand_int (rand);
  if (one_in (rand, 4))
    cut->n_unplaced = 1;

  lb_assumptions_init (&cut->assumptions);
  for (int id = 0; id < LB_N_ASSUMPTIONS; id++) {
    const LbAssumption *row = lb_assumption ((LbAssumptionId) id);

    if (one_in (rand, 4))
      cut->assumptions.value[id] = g_rand_double_range (rand, row->least, row->most);
  }
}
