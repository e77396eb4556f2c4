/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bared-cut.h"

#include "trade/steel.h"

#include <math.h>

#define INCH 0.0254

LbStubLoad
lb_bared_cut_load (const LbStub *stub, double hook_share)
{
  g_autoptr (GError) error = NULL;
  LbStub with_hook = *stub;
  LbStubLoad load;

  with_hook.hook_share = hook_share;
  g_assert_true (lb_stub_load_reckon (&with_hook, &load, &error));
  g_assert_no_error (error);
  return load;
}

void
lb_bared_cut_init (LbBaredCut *self, LbShape shape, double width_m, guint n_bars, const char *bar)
{
  *self = (LbBaredCut){ .layout = LB_BAR_LAYOUT_USUAL, .is_balanced = TRUE };
  self->stub = (LbStub){
    .outline = { .shape = shape, .width_m = width_m },
    .length_m = 6,
    .lean_rad = atan (1.0 / 6),
    .submerged_m = 6,
    .concrete_kg_per_m3 = 2480,
    .water_kg_per_m3 = 1025,
    .growth_kg_per_m3 = 1360,
    .current_m_s = 0.5,
    .drag_coefficient = lb_drag_coefficient (shape)->value,
  };
  lb_bar_ring_place (&self->stub.outline, 3 * INCH, n_bars, self->places);
  self->cut = (LbCut){
    .places = self->places,
    .n_bars = n_bars,
    .bar = lb_bar_find (bar),
    .gap_m = 6 * INCH,
    .yield_pa = lb_steel_for_year (1938)->grade->yield_pa,
    .factor = 3,
    .effective_length = 1,
  };
  self->burn = (LbBurnCase){
    .cut = &self->cut,
    .left = lb_bar_set_all (n_bars),
    .side_rad = G_PI,
    .slack = lb_bared_cut_load (&self->stub, 0),
    .held = lb_bared_cut_load (&self->stub, 0.5),
  };
}

/* A way to stand that @n_most bars allow. */
static LbBarLayout
chance_layout (GRand *rand, LbShape shape, double width_m, guint n_most)
{
  const guint n_faces = lb_shape_faces (shape);
  LbBarLayout layout = {
    .kind = (LbBarLayoutKind) g_rand_int_range (rand, 0, LB_BAR_LAYOUT_GIVEN + 1),
    .inner_inset_m = g_rand_double_range (rand, 5, 5.8) * INCH,
  };

  switch (layout.kind) {
  case LB_BAR_LAYOUT_USUAL:
    break;
  case LB_BAR_LAYOUT_ON_FACES:
  case LB_BAR_LAYOUT_BETWEEN_CORNERS: {
    const guint most = n_faces > 0 ? n_most / n_faces : 0;

    if (most == 0) {
      layout.kind = LB_BAR_LAYOUT_USUAL;
      break;
    }
    layout.n_on_face = (guint) g_rand_int_range (rand, 1, (gint32) most + 1) +
                       (layout.kind == LB_BAR_LAYOUT_ON_FACES);
    break;
  }
  case LB_BAR_LAYOUT_TWO_RINGS:
    layout.n_outer = (guint) g_rand_int_range (rand, 2, (gint32) n_most);
    layout.n_inner = (guint) g_rand_int_range (rand, 1, (gint32) (n_most - layout.n_outer) + 1);
    break;
  case LB_BAR_LAYOUT_GIVEN:
    layout.n_given = (guint) g_rand_int_range (rand, 3, (gint32) n_most + 1);
    for (guint i = 0; i < layout.n_given; i++) {
      layout.given[i].x = g_rand_double_range (rand, -0.4, 0.4) * width_m;
      layout.given[i].y = g_rand_double_range (rand, -0.4, 0.4) * width_m;
    }
    break;
  }
  return layout;
}

void
lb_bared_cut_chance (LbBaredCut *self, GRand *rand, guint n_most)
{
  static const char *const sizes[] = { "#6", "#8", "#11", "1 in sq", "#18" };
  const LbShape shape = (LbShape) g_rand_int_range (rand, 0, LB_N_SHAPES);
  const double width_m = g_rand_double_range (rand, 0.3, 0.6);
  const guint n_usual = (guint) g_rand_int_range (rand, 3, (gint32) n_most + 1);
  const LbBarLayout layout = chance_layout (rand, shape, width_m, n_most);
  const guint n_wanted = lb_bar_layout_count (&layout, shape);
  const guint n_bars = n_wanted > 0 ? n_wanted : n_usual;

  lb_bared_cut_init (self, shape, width_m, n_bars,
                     sizes[g_rand_int_range (rand, 0, G_N_ELEMENTS (sizes))]);
  self->layout = layout.kind;
  /* A single bar is no ring. */
  self->is_balanced = layout.kind != LB_BAR_LAYOUT_GIVEN && layout.n_inner != 1;
  lb_bar_layout_place (&layout, &self->stub.outline, 3 * INCH, n_bars, self->places);
  if (g_rand_boolean (rand))
    self->stub.outline.void_m = g_rand_double_range (rand, 0.1, 0.4) * width_m;
  if (g_rand_boolean (rand))
    self->stub.cut_width_m = g_rand_double_range (rand, 0.7, 1) * width_m;
  self->stub.length_m = g_rand_double_range (rand, 1, 8);
  self->stub.submerged_m = self->stub.length_m * g_rand_double (rand);
  self->stub.lean_rad = atan (g_rand_double_range (rand, 0, 1.0 / 5));
  self->stub.current_m_s = g_rand_double_range (rand, 0, 0.8);
  self->cut.gap_m = g_rand_double_range (rand, 0.05, 0.2);
  self->burn.side_rad = g_rand_double_range (rand, 0, 2 * G_PI);
  self->burn.slack = lb_bared_cut_load (&self->stub, 0);
  self->stub.hook_share = g_rand_double (rand);
  self->burn.held = lb_bared_cut_load (&self->stub, self->stub.hook_share);
  if (g_rand_boolean (rand))
    self->burn.left &= g_rand_int (rand) | 7;
}
