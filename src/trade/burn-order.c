/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Orders of burning: made, and weighed.
 *
 * The ring is the bars left in their order round the middle of the pile, so bars already gone and
 * pinned ones are passed over: a neighbour is the next bar that the burner comes to. Of bars in line
 * from the middle, as two rings have them, the outer one is met first on the way clockwise, or else on
 * the way back: that makes two rings of them, and both are searched, so that a pile and its mirror
 * image are cut alike. The search itself is in arc-search.c; here it is asked three times: without the
 * hook as far as the bars hold, from there with the hook to the end, and over the pinned bars.
 *
 * Weighing takes any order and knows rings only to count jumps. It adds up from the last bar
 * back, so that no sum is ever a difference.
 *
 * Invariants:
 * 1. An order holds each bar left once.
 * 2. Pinned bars are last, and the hook holds before the first of them.
 * 3. The hook holds before the step that leaves a hinge, so at the latest before the third bar
 *    from the end, whatever the load.
 */
#include "trade/burn-order.h"

#include "trade/arc-search.h"
#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

/* Two bars closer than this round the ring, in the measure of clockwise(), stand in line from the
 * middle; far below what parts neighbours, far above what sine and cosine leave over. */
#define SAME_PLACE 1e-6
/* Utilisations closer than this, relative, are the same, as in arc-search.c. */
#define SAME_PEAK 1e-9

/* --- Rings -------------------------------------------------------------------------------- */

/* How far round from +y, 0 to 4: rises with the angle and needs no arc tangent. */
static double
clockwise (LbPoint place)
{
  const double sum = fabs (place.x) + fabs (place.y);

  if (!(sum > 0))
    return 0;
  return place.x >= 0 ? 1 - place.y / sum : 3 + place.y / sum;
}

/* Which of bars in line from the middle is met first on the way clockwise. */
typedef enum {
  OUTER_FIRST,
  INNER_FIRST,
} InLine;

static gboolean
comes_first (InLine in_line, LbPoint place, LbPoint other)
{
  const double outward = hypot (place.x, place.y) - hypot (other.x, other.y);

  return in_line == OUTER_FIRST ? outward > 0 : outward < 0;
}

/* The bars of @set in their order round the pile. */
static guint
ring_of (const LbCut *cut, LbBarSet set, InLine in_line, guint8 ring[LB_BARS_MAX])
{
  double around[LB_BARS_MAX];
  guint n = 0;

  for (guint bar = 0; bar < cut->n_bars; bar++) {
    if ((set & LB_BAR (bar)) == 0)
      continue;

    const LbPoint place = cut->places[bar];
    const double at = clockwise (place);
    guint to = n++;

    for (; to > 0; to--) {
      const LbPoint other = cut->places[ring[to - 1]];
      const double ahead = at - around[to - 1];

      if (ahead > SAME_PLACE || (ahead >= -SAME_PLACE && !comes_first (in_line, place, other)))
        break;
      around[to] = around[to - 1];
      ring[to] = ring[to - 1];
    }
    around[to] = at;
    ring[to] = (guint8) bar;
  }
  return n;
}

/* As lb_bar_ring_order() for a pile whose high side is the side to begin on. */
static gsize
order_from_side (const LbBurnCase *burn, LbBarSet set, guint8 order[LB_BARS_MAX])
{
  const double s = sin (burn->side_rad), c = cos (burn->side_rad);
  LbPoint turned[LB_BARS_MAX];

  for (guint bar = 0; bar < burn->cut->n_bars; bar++) {
    const LbPoint place = burn->cut->places[bar];

    turned[bar] = (LbPoint){
      .x = place.y * s - place.x * c,
      .y = -place.x * s - place.y * c,
    };
  }
  return lb_bar_ring_order (turned, burn->cut->n_bars, set, order);
}

static LbBarSet
all_left (const LbBurnCase *burn)
{
  return burn->left & lb_bar_set_all (burn->cut->n_bars);
}

gsize
lb_burn_order_from_side (const LbBurnCase *burn, guint8 order[LB_BARS_MAX])
{
  g_return_val_if_fail (burn, 0);
  g_return_val_if_fail (order, 0);

  const LbBarSet left = all_left (burn);
  const gsize n_free = order_from_side (burn, left & ~burn->pinned, order);
  guint8 last[LB_BARS_MAX];
  const gsize n_last = order_from_side (burn, left & burn->pinned, last);

  for (gsize i = 0; i < n_last; i++)
    order[n_free + i] = last[i];
  return n_free + n_last;
}

/* --- The best ----------------------------------------------------------------------------- */

/* Sets up the search over the bars of @set while those of @kept hold. */
static void
prepare (const LbBurnCase *burn,
         LbBarSet set,
         LbBarSet kept,
         InLine in_line,
         guint8 bars[LB_BARS_MAX],
         LbArcRing *ring)
{
  const LbPoint *places = burn->cut->places;
  LbPoint ring_places[LB_BARS_MAX], kept_places[LB_BARS_MAX];
  guint8 wished[LB_BARS_MAX], rank_of_bar[LB_BARS_MAX];
  const guint n = ring_of (burn->cut, set, in_line, bars);
  guint n_kept = 0;

  for (guint i = 0; i < n; i++)
    ring_places[i] = places[bars[i]];
  for (guint bar = 0; bar < burn->cut->n_bars; bar++) {
    if (kept & LB_BAR (bar))
      kept_places[n_kept++] = places[bar];
  }
  lb_arc_ring_init (ring, ring_places, n, kept_places, n_kept);

  order_from_side (burn, set, wished);
  for (guint i = 0; i < n; i++)
    rank_of_bar[wished[i]] = (guint8) i;
  for (guint i = 0; i < n; i++)
    ring->rank[i] = rank_of_bar[bars[i]];
}

static LbArcRule
rule_of (const LbBurnCase *burn, const LbStubLoad *load, double limit)
{
  return (LbArcRule){
    .section = lb_bar_section (burn->cut->bar, burn->cut->gap_m),
    .measure = lb_hold_measure (burn->cut),
    .load = *load,
    .limit = limit,
  };
}

static gsize
best_along (const LbBurnCase *burn, InLine in_line, guint8 order[LB_BARS_MAX])
{
  const LbBarSet pinned = all_left (burn) & burn->pinned;
  const LbBarSet loose = all_left (burn) & ~burn->pinned;
  const LbArcRule slack = rule_of (burn, &burn->slack, 1);
  const LbArcRule held = rule_of (burn, &burn->held, (double) INFINITY);
  guint8 bars[LB_BARS_MAX], positions[LB_BARS_MAX];
  LbArcRing ring;
  gsize n = 0;

  prepare (burn, loose, pinned, in_line, bars, &ring);

  const LbArc hold_point = lb_arc_search (&ring, &slack, (LbArc){ 0 }, positions);

  lb_arc_search (&ring, &held, hold_point, positions + hold_point.n_gone);
  for (guint i = 0; i < ring.n; i++)
    order[n++] = bars[positions[i]];

  if (pinned) {
    prepare (burn, pinned, 0, in_line, bars, &ring);
    lb_arc_search (&ring, &held, (LbArc){ 0 }, positions);
    for (guint i = 0; i < ring.n; i++)
      order[n++] = bars[positions[i]];
  }
  return n;
}

static gboolean
has_bars_in_line (const LbBurnCase *burn)
{
  guint8 one[LB_BARS_MAX], other[LB_BARS_MAX];
  const guint n = ring_of (burn->cut, all_left (burn), OUTER_FIRST, one);

  ring_of (burn->cut, all_left (burn), INNER_FIRST, other);
  return memcmp (one, other, n) != 0;
}

static guint
count_hinges (const LbBurnOrder *order)
{
  guint n_hinges = 0;

  for (gsize i = 0; i < order->n_steps; i++)
    n_hinges += order->steps[i].is_hinge;
  return n_hinges;
}

static gsize
count_free (const LbBurnOrder *order)
{
  return order->rig_before > 0 ? order->rig_before - 1 : order->n_steps;
}

/* By what arc-search.h goes by, the changes of end left out. */
static gboolean
is_better (const LbBurnOrder *order, const LbBurnOrder *than)
{
  const double slack = order->slack_utilisation - than->slack_utilisation;

  if (count_free (order) != count_free (than))
    return count_free (order) > count_free (than);
  if (fabs (slack) > SAME_PEAK * than->slack_utilisation)
    return slack < 0;
  if (count_hinges (order) != count_hinges (than))
    return count_hinges (order) < count_hinges (than);
  return order->held_utilisation < than->held_utilisation * (1 - SAME_PEAK);
}

gsize
lb_burn_order_best (const LbBurnCase *burn, guint8 order[LB_BARS_MAX])
{
  g_return_val_if_fail (burn, 0);
  g_return_val_if_fail (order, 0);

  if (!lb_cut_check (burn->cut, NULL))
    return 0;

  const gsize n = best_along (burn, OUTER_FIRST, order);

  if (has_bars_in_line (burn)) {
    guint8 other[LB_BARS_MAX];
    LbBurnOrder weighed, other_weighed;

    best_along (burn, INNER_FIRST, other);
    if (lb_burn_order_weigh (burn, order, n, &weighed, NULL) &&
        lb_burn_order_weigh (burn, other, n, &other_weighed, NULL) &&
        is_better (&other_weighed, &weighed))
      memcpy (order, other, n);
  }
  return n;
}

/* --- Weighing ----------------------------------------------------------------------------- */

static gboolean
check_order (const LbBurnCase *burn, const guint8 *order, gsize n, GError **error)
{
  LbBarSet missing = all_left (burn);

  for (gsize i = 0; i < n; i++) {
    const guint bar = order[i];

    if (bar >= burn->cut->n_bars || (all_left (burn) & LB_BAR (bar)) == 0) {
      g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                   "Bar %u is not among the bars left", bar + 1);
      return FALSE;
    }
    if ((missing & LB_BAR (bar)) == 0) {
      g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, "Bar %u comes twice in the order",
                   bar + 1);
      return FALSE;
    }
    missing &= ~LB_BAR (bar);
  }
  for (guint bar = 0; bar < burn->cut->n_bars; bar++) {
    if (missing & LB_BAR (bar)) {
      g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, "Bar %u is left out of the order",
                   bar + 1);
      return FALSE;
    }
  }
  return TRUE;
}

/* What one load does to the bars at @places. */
static LbBurnStress
stress_of (const LbArcRule *rule, const LbBarSums *sums, const LbPoint *places, gsize n)
{
  LbBarField field;

  lb_bar_field_reckon (&rule->section, sums, &rule->load, &field);
  if (field.is_hinge)
    return (LbBurnStress){ .peak_pa = (double) NAN, .utilisation = (double) NAN };

  const LbBarPeak peak = lb_bar_field_peak (&field, places, n, (LbBarPeak){ 0 });

  return (LbBurnStress){
    .peak_pa = peak.stress_pa,
    .utilisation = lb_hold_utilisation (&rule->measure, peak),
  };
}

/* Bars burned with neither neighbour gone, once there are bars gone. */
static guint
count_jumps_along (const LbBurnCase *burn, InLine in_line, const guint8 *order, gsize n)
{
  guint8 ring[LB_BARS_MAX], position[LB_BARS_MAX];
  const guint n_ring = ring_of (burn->cut, all_left (burn) & ~burn->pinned, in_line, ring);
  LbBarSet gone = 0;
  guint n_jumps = 0;

  for (guint i = 0; i < n_ring; i++)
    position[ring[i]] = (guint8) i;
  for (gsize i = 0; i < n; i++) {
    if (burn->pinned & LB_BAR (order[i]))
      continue;

    const guint at = position[order[i]];
    const LbBarSet beside = LB_BAR ((at + 1) % n_ring) | LB_BAR ((at + n_ring - 1) % n_ring);

    n_jumps += gone != 0 && (gone & beside) == 0;
    gone |= LB_BAR (at);
  }
  return n_jumps;
}

static guint
count_jumps (const LbBurnCase *burn, const guint8 *order, gsize n)
{
  const guint n_jumps = count_jumps_along (burn, OUTER_FIRST, order, n);

  return n_jumps == 0 ? 0 : MIN (n_jumps, count_jumps_along (burn, INNER_FIRST, order, n));
}

static gboolean
is_held_up (const LbBurnStress *stress)
{
  /* Not so for NAN, which is a hinge. */
  return stress->utilisation <= 1;
}

gboolean
lb_burn_order_weigh (const LbBurnCase *burn,
                     const guint8 *order,
                     gsize n,
                     LbBurnOrder *out_order,
                     GError **error)
{
  g_return_val_if_fail (burn, FALSE);
  g_return_val_if_fail (order || n == 0, FALSE);
  g_return_val_if_fail (out_order, FALSE);

  if (!lb_cut_check (burn->cut, error) || !check_order (burn, order, n, error))
    return FALSE;

  const LbArcRule slack = rule_of (burn, &burn->slack, 1);
  const LbArcRule held = rule_of (burn, &burn->held, (double) INFINITY);
  LbBurnOrder weighed = {
    .n_steps = n,
    .n_jumps = count_jumps (burn, order, n),
    .is_lower_bound = burn->cut->concrete != LB_CONCRETE_NONE,
  };
  /* The last to go first, so that what each step leaves is the beginning of the list. */
  LbPoint places[LB_BARS_MAX] = { 0 };
  LbBarSums sums = { 0 };

  for (gsize n_left = 0; n_left < n; n_left++) {
    const guint8 bar = order[n - 1 - n_left];
    LbBurnStep *step = &weighed.steps[n - 1 - n_left];

    step->bar = bar;
    step->n_left = (guint8) n_left;
    step->slack = stress_of (&slack, &sums, places, n_left);
    step->held = stress_of (&held, &sums, places, n_left);
    step->is_hinge = isnan (step->slack.utilisation);
    places[n_left] = burn->cut->places[bar];
    sums = lb_bar_sums_add (sums, places[n_left]);
  }
  weighed.as_it_stands = stress_of (&slack, &sums, places, n);
  weighed.stands = is_held_up (&weighed.as_it_stands);
  weighed.slack_utilisation = weighed.as_it_stands.utilisation;

  gboolean is_on_hook = !weighed.stands;
  LbBurnStress held_before = stress_of (&held, &sums, places, n);

  for (gsize i = 0; i < n; i++) {
    const LbBurnStep *step = &weighed.steps[i];

    is_on_hook |= !is_held_up (&step->slack) || (burn->pinned & LB_BAR (step->bar)) != 0;
    if (is_on_hook) {
      if (weighed.rig_before == 0) {
        weighed.rig_before = i + 1;
        weighed.held_utilisation = fmax (held_before.utilisation, 0);
      }
      weighed.hold |= LB_BAR (step->bar);
      /* Of a number and NAN, which is a hinge, the number. */
      weighed.held_utilisation = fmax (weighed.held_utilisation, step->held.utilisation);
    } else {
      weighed.slack_utilisation = MAX (weighed.slack_utilisation, step->slack.utilisation);
    }
    held_before = step->held;
  }
  *out_order = weighed;
  return TRUE;
}
