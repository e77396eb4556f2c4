/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/pile-hold.h"

#include "trade/cut-plan.h"
#include "trade/msgid.h"
#include "trade/pile-bars.h"
#include "trade/pile-taper.h"

#include <math.h>
#include <string.h>

/* The part above the cut, without the hook. */
static LbStub
stub_of (const LbPile *pile, const LbAssumptions *assumptions)
{
  const double *value = assumptions->value;
  const double cut_m = lb_pile_cut_elevation (pile, assumptions);
  const double length_m = lb_batter_true_length (pile->batter, pile->head_m - cut_m);
  const double under_m = lb_batter_true_length (pile->batter,
                                                MAX (value[LB_ASSUME_WATER_LEVEL] - cut_m, 0));

  return (LbStub){
    .outline = pile->outline,
    .cut_width_m = lb_pile_end_width (pile, cut_m),
    .length_m = length_m,
    .lean_rad = lb_batter_angle (pile->batter),
    .submerged_m = MIN (under_m, length_m),
    .concrete_kg_per_m3 = value[LB_ASSUME_CONCRETE_DENSITY],
    .water_kg_per_m3 = value[LB_ASSUME_WATER_DENSITY],
    .growth_m = value[LB_ASSUME_GROWTH_THICKNESS],
    .growth_kg_per_m3 = value[LB_ASSUME_GROWTH_DENSITY],
    .current_m_s = value[LB_ASSUME_CURRENT],
    .drag_coefficient = lb_drag_coefficient (pile->outline.shape)->value,
  };
}

/* The order found before the first bar was burned, as long as the burner keeps to it: else each bar
 * burned could send him to the other side. When others are burned, the best of those left. */
static gsize
best_order (const LbBurnCase *burn, LbBarSet gone, guint8 order[LB_BARS_MAX])
{
  const LbBarSet all = lb_bar_set_all (burn->cut->n_bars) & ~(gone & ~burn->left);
  const gsize n_gone = lb_bar_set_count (all & ~burn->left);
  LbBurnCase whole = *burn;
  LbBarSet first = 0;
  gsize n;

  if (n_gone == 0)
    return lb_burn_order_best (burn, order);
  whole.left = all;
  n = lb_burn_order_best (&whole, order);
  for (gsize i = 0; i < n_gone && i < n; i++)
    first |= LB_BAR (order[i]);
  if (n == 0 || first != (all & ~burn->left))
    return lb_burn_order_best (burn, order);
  memmove (order, order + n_gone, n - n_gone);
  return n - n_gone;
}

/* The pile's own choice of an order; 0 when it is typed and is not of the bars left. */
static gsize
choose_order (const LbPile *pile, const LbBurnCase *burn, LbBarSet gone, guint8 order[LB_BARS_MAX])
{
  guint8 typed[LB_BARS_MAX];
  gsize n_typed, n = 0;

  if (strcmp (pile->order, LB_ORDER_BEST) == 0)
    return best_order (burn, gone, order);
  if (g_ascii_strcasecmp (pile->order, LB_ORDER_HIGH_SIDE) == 0)
    return lb_burn_order_from_side (burn, order);
  if (!lb_bar_numbers_from_text (pile->order, typed, &n_typed, NULL))
    return 0;
  /* Those burned since it was typed drop out. */
  for (gsize i = 0; i < n_typed; i++)
    if (burn->left & LB_BAR (typed[i]))
      order[n++] = typed[i];
  return n;
}

/* The bared cut of a pile, and where its bars stand. */
static LbCut
cut_of (const LbPile *pile, const LbPoint *places, const LbCutBasis *basis)
{
  const double *value = basis->assumptions->value;

  return (LbCut){
    .places = places,
    .n_bars = pile->n_bars,
    .bar = pile->bar,
    .concrete = pile->concrete,
    .gap_m = value[LB_ASSUME_CUT_GAP],
    .yield_pa = basis->yield_pa,
    .factor = value[LB_ASSUME_HOLD_FACTOR],
    .effective_length = value[LB_ASSUME_BARE_LENGTH],
  };
}

/* Bars of the usual ring stand about where they are taken to, whatever the inset; those that somebody
 * said may stand anywhere by a slip of the keyboard. */
static gboolean
are_beyond_section (const LbPile *pile, const LbAssumptions *assumptions, const LbPoint *places)
{
  const LbOutline at_cut = lb_pile_outline_at (pile, lb_pile_cut_elevation (pile, assumptions));

  return pile->bar_places[0] != '\0' && pile->bar &&
         lb_bars_fit (&at_cut, places, pile->n_bars, pile->bar->diameter_m, NULL) != LB_BARS_FIT;
}

/* What is to be weighed; @burn borrows @cut. A reason when nothing can be said, as a msgid. */
static const char *
prepare (const LbPile *pile,
         const LbPoint *places,
         LbBarSet burned,
         const LbCutBasis *basis,
         LbCut *cut,
         LbBurnCase *burn)
{
  LbStub stub = stub_of (pile, basis->assumptions);

  *cut = cut_of (pile, places, basis);
  *burn = (LbBurnCase){
    .cut = cut,
    .left = lb_bar_set_all (pile->n_bars) & ~burned,
    .pinned = pile->pinned & lb_bar_set_all (pile->n_bars) & ~burned,
    .side_rad = G_PI,
  };
  if (burn->left == 0)
    return N_ ("No bar is left.");
  if (are_beyond_section (pile, basis->assumptions, places))
    return N_ (
      "The bars on record do not fit in the section: correct the bar places, the bar size or "
      "the width.");
  if (!lb_stub_load_reckon (&stub, &burn->slack, NULL))
    return N_ ("The weight above the cut cannot be told from what is on record.");
  stub.hook_share = basis->assumptions->value[LB_ASSUME_HOOK_SHARE];
  if (!lb_stub_load_reckon (&stub, &burn->held, NULL) || !lb_cut_check (cut, NULL))
    return N_ ("The bars in the cut cannot be reckoned from what is on record.");
  return NULL;
}

const char *
lb_pile_hold_reckon (const LbPile *pile,
                     const LbPoint *places,
                     LbBarSet burned,
                     LbBarSet gone,
                     guint n_burned_unplaced,
                     const LbCutBasis *basis,
                     LbBurnOrder *out_order)
{
  g_return_val_if_fail (pile, NULL);
  g_return_val_if_fail (places, NULL);
  g_return_val_if_fail (basis, NULL);
  g_return_val_if_fail (out_order, NULL);

  LbCut cut;
  LbBurnCase burn;
  guint8 order[LB_BARS_MAX];
  const char *reason = lb_figure_missing (LB_FIGURE_RIG_BEFORE, pile);

  if (reason != NULL)
    return reason;
  if (pile->bar && !lb_hold_applies (pile->bar))
    return N_ ("Strand is stressed before the stub hangs on it: bar rules say nothing of it.");
  if (n_burned_unplaced > 0)
    return N_ ("Which bars are burned is not on record, only how many.");

  reason = prepare (pile, places, burned, basis, &cut, &burn);
  if (reason != NULL)
    return reason;

  const gsize n = choose_order (pile, &burn, gone, order);

  if (n == 0 || !lb_burn_order_weigh (&burn, order, n, out_order, NULL))
    return N_ ("The order on record is not one of the bars left: correct it.");
  return NULL;
}

gboolean
lb_pile_hold_weigh (const LbPile *pile,
                    const LbPoint *places,
                    LbBarSet burned,
                    const guint8 *order,
                    gsize n,
                    const LbCutBasis *basis,
                    LbBurnOrder *out_order)
{
  g_return_val_if_fail (pile, FALSE);
  g_return_val_if_fail (places, FALSE);
  g_return_val_if_fail (order, FALSE);
  g_return_val_if_fail (basis, FALSE);
  g_return_val_if_fail (out_order, FALSE);

  LbCut cut;
  LbBurnCase burn;

  return prepare (pile, places, burned, basis, &cut, &burn) == NULL &&
         lb_burn_order_weigh (&burn, order, n, out_order, NULL);
}

gboolean
lb_pile_hold_shares (const LbPile *pile,
                     const LbPoint *places,
                     LbBarSet burned,
                     const LbCutBasis *basis,
                     const LbBurnOrder *order,
                     gsize n_done,
                     LbBarShares *out_shares)
{
  g_return_val_if_fail (pile, FALSE);
  g_return_val_if_fail (places, FALSE);
  g_return_val_if_fail (basis, FALSE);
  g_return_val_if_fail (order && n_done <= order->n_steps, FALSE);
  g_return_val_if_fail (out_shares, FALSE);

  const LbCut cut = cut_of (pile, places, basis);
  const gboolean is_held = order->rig_before > 0 && n_done >= order->rig_before;
  LbBarShares shares = {
    .left = lb_bar_set_all (pile->n_bars) & ~burned,
    .is_held = is_held,
    .greatest = (double) NAN,
  };
  LbStub stub = stub_of (pile, basis->assumptions);
  LbStubLoad load;
  LbHold hold;

  for (gsize i = 0; i < n_done; i++)
    shares.left &= ~LB_BAR (order->steps[i].bar);
  stub.hook_share = is_held ? basis->assumptions->value[LB_ASSUME_HOOK_SHARE] : 0;
  if (!lb_stub_load_reckon (&stub, &load, NULL) ||
      !lb_hold_reckon (&cut, shares.left, &load, &hold, NULL))
    return FALSE;

  const LbHoldMeasure measure = lb_hold_measure (&cut);

  shares.is_hinge = hold.is_hinge;
  for (guint i = 0; i < pile->n_bars; i++) {
    const LbBarPeak peak = {
      .stress_pa = hold.peak_pa[i],
      .compression_pa = hold.base_pa[i] + lb_bar_field_drag (&hold.field, places[i]),
    };
    const gboolean is_known = !hold.is_hinge && (shares.left & LB_BAR (i));

    shares.share[i] = is_known ? lb_hold_utilisation (&measure, peak) : (double) NAN;
    if (is_known && !(shares.share[i] <= shares.greatest)) {
      shares.greatest = shares.share[i];
      shares.governing = (guint8) i;
    }
  }
  *out_shares = shares;
  return TRUE;
}
