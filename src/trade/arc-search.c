/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Dynamic programming over arcs. What the bars left carry depends on which are gone and not on
 * the way there, and what is gone is an arc: n starts by n lengths, so at most 3600 states instead
 * of n 2ⁿ⁻² ways. An arc came from one shorter by a bar at its clockwise end or at the other.
 *
 * Two passes, since a greatest value and a count cannot be made least together in one: keeping the
 * lower peak so far can throw away a way with fewer turns that ends with the same peak.
 *
 * 1. survey() goes layer by layer, a layer being all arcs of one length, and finds how far the
 *    rule lets anybody go and the least peak with which that can be done.
 * 2. settle() goes over the arcs that are within that peak and counts hinges, turns and the rank
 *    of the beginning, which add up, so that the best way to an arc is the best way to one of the
 *    two before it and a step. The way itself is read backwards from the counts.
 *
 * Utilisations that differ by rounding alone are one: mirror images must tie.
 *
 * Invariants:
 * 1. A state's utilisation is reckoned once, in survey(), from running sums and one run of bars.
 * 2. settle() visits only states that survey() reached.
 * 3. No memory is taken; some 60 kB of stack.
 */
#include "trade/arc-search.h"

#include <math.h>

/* Utilisations closer than this, relative, are the same: sums of rounding stay far below. */
#define SAME_PEAK 1e-9

/* Counts packed into one number, the gravest highest: at most 60 of each. */
#define A_TURN       (1u << 7)
#define A_HINGE      (1u << 14)
#define OUT_OF_REACH G_MAXUINT32

enum {
  CLOCKWISE,
  BACKWARD,
  N_ENDS,
};

typedef struct
{
  const LbArcRing *ring;
  const LbArcRule *rule;
  LbArc from;
  guint first_layer;                                  /* bars gone in the arcs to begin with */
  guint last_layer;                                   /* as far as anybody gets */
  double peak;                                        /* least of those who do */
  double use[LB_BARS_MAX + 1][LB_BARS_MAX];           /* utilisation by bars gone and start */
  guint32 cost[LB_BARS_MAX + 1][LB_BARS_MAX][N_ENDS]; /* by the end the last bar went at */
} Search;

/* A way so far. */
typedef struct
{
  gboolean is_open;
  guint n_hinges;
  double peak;
} Way;

void
lb_arc_ring_init (LbArcRing *ring,
                  const LbPoint *places,
                  guint n,
                  const LbPoint *kept,
                  guint n_kept)
{
  g_return_if_fail (ring);
  g_return_if_fail (n + n_kept <= LB_BARS_MAX);

  ring->n = n;
  ring->n_kept = n_kept;
  ring->before[0] = (LbBarSums){ 0 };
  for (guint i = 0; i < 2 * n; i++) {
    ring->places[i] = places[i % n];
    ring->before[i + 1] = lb_bar_sums_add (ring->before[i], ring->places[i]);
  }
  ring->all = ring->before[n];
  for (guint i = 0; i < n_kept; i++) {
    ring->kept[i] = kept[i];
    ring->all = lb_bar_sums_add (ring->all, kept[i]);
  }
}

/* Of what an arc leaves; INFINITY for a hinge. */
static double
utilisation (const Search *self, guint start, guint n_gone)
{
  const LbArcRing *ring = self->ring;
  const LbBarSums gone = lb_bar_sums_less (ring->before[start + n_gone], ring->before[start]);
  const LbBarSums left = lb_bar_sums_less (ring->all, gone);
  LbBarPeak peak = { 0 };
  LbBarField field;

  lb_bar_field_reckon (&self->rule->section, &left, &self->rule->load, &field);
  if (field.is_hinge)
    return (double) INFINITY;

  peak = lb_bar_field_peak (&field, ring->places + start + n_gone, ring->n - n_gone, peak);
  peak = lb_bar_field_peak (&field, ring->kept, ring->n_kept, peak);
  return lb_hold_utilisation (&self->rule->measure, peak);
}

/* Whether the search may begin at an arc of the first layer. */
static gboolean
is_beginning (const Search *self, guint start)
{
  return self->from.n_gone == 0 || start == self->from.start;
}

static Way
better (Way a, Way b)
{
  if (!a.is_open || !b.is_open)
    return a.is_open ? a : b;
  if (a.n_hinges != b.n_hinges)
    return a.n_hinges < b.n_hinges ? a : b;
  return a.peak <= b.peak ? a : b;
}

static void
survey (Search *self, double peak_before)
{
  const guint n = self->ring->n;
  Way layers[2][LB_BARS_MAX];

  for (guint n_gone = self->first_layer; n_gone <= n; n_gone++) {
    const Way *before = layers[(n_gone + 1) % 2];
    Way *now = layers[n_gone % 2];
    Way best = { .is_open = FALSE };

    for (guint start = 0; start < n; start++) {
      Way way = { .is_open = is_beginning (self, start), .peak = peak_before };

      if (n_gone > self->first_layer)
        way = better (before[start], before[(start + 1) % n]);
      if (way.is_open && n_gone > self->from.n_gone) {
        const double use = utilisation (self, start, n_gone);

        self->use[n_gone][start] = use;
        if (isinf (use))
          way.n_hinges++;
        else
          way.peak = MAX (way.peak, use);
        way.is_open = use <= self->rule->limit;
      }
      now[start] = way;
      best = better (best, way);
    }
    if (!best.is_open)
      break;
    self->last_layer = n_gone;
    self->peak = best.peak;
  }
}

static gboolean
is_within_peak (const Search *self, guint start, guint n_gone)
{
  const double use = self->use[n_gone][start];

  return use <= self->rule->limit && (isinf (use) || use <= self->peak * (1 + SAME_PEAK));
}

/* The cost of an arc whose last bar went at @end, from the arc without that bar. */
static guint32
cost_through (const guint32 before[N_ENDS], int end)
{
  const guint32 straight = before[end], turned = before[!end];

  return MIN (straight, turned == OUT_OF_REACH ? turned : turned + A_TURN);
}

static guint
start_before (const Search *self, guint start, int end)
{
  return end == CLOCKWISE ? start : (start + 1) % self->ring->n;
}

/* Of an arc to begin with. */
static guint32
cost_to_begin (const Search *self, guint start, int end)
{
  const LbArc *from = &self->from;

  if (from->n_gone > 0) {
    /* A single bar gone has both its ends open, and neither is a turn. */
    const gboolean is_end = from->n_gone == 1 || (end == CLOCKWISE) == from->is_clockwise;

    return is_beginning (self, start) && is_end ? 0 : OUT_OF_REACH;
  }
  if (!is_within_peak (self, start, 1))
    return OUT_OF_REACH;
  return self->ring->rank[start] + (isinf (self->use[1][start]) ? A_HINGE : 0);
}

static void
settle (Search *self)
{
  const guint n = self->ring->n;

  for (guint start = 0; start < n; start++) {
    for (int end = 0; end < N_ENDS; end++)
      self->cost[self->first_layer][start][end] = cost_to_begin (self, start, end);
  }

  for (guint n_gone = self->first_layer + 1; n_gone <= self->last_layer; n_gone++) {
    for (guint start = 0; start < n; start++) {
      for (int end = 0; end < N_ENDS; end++) {
        const guint from = start_before (self, start, end);
        guint32 cost = cost_through (self->cost[n_gone - 1][from], end);

        if (cost != OUT_OF_REACH && !is_within_peak (self, start, n_gone))
          cost = OUT_OF_REACH;
        if (cost != OUT_OF_REACH && isinf (self->use[n_gone][start]))
          cost += A_HINGE;
        self->cost[n_gone][start][end] = cost;
      }
    }
  }
}

/* Reads the way backwards. */
static LbArc
trace (const Search *self, guint8 *positions)
{
  const guint n = self->ring->n;
  guint start = 0;
  int end = CLOCKWISE;

  /* Of equals the first, and clockwise before backward. */
  for (int e = 0; e < N_ENDS; e++) {
    for (guint s = 0; s < n; s++) {
      if (self->cost[self->last_layer][s][e] < self->cost[self->last_layer][start][end]) {
        start = s;
        end = e;
      }
    }
  }

  const LbArc reached = { .start = start,
                          .n_gone = self->last_layer,
                          .is_clockwise = end == CLOCKWISE };

  for (guint n_gone = self->last_layer; n_gone > self->from.n_gone; n_gone--) {
    positions[n_gone - 1 - self->from.n_gone] =
      (guint8) (end == CLOCKWISE ? (start + n_gone - 1) % n : start);
    if (n_gone == self->first_layer)
      break;
    start = start_before (self, start, end);

    const guint32 *cost = self->cost[n_gone - 1][start];

    if (cost_through (cost, end) != cost[end])
      end = !end;
  }
  return reached;
}

LbArc
lb_arc_search (const LbArcRing *ring,
               const LbArcRule *rule,
               LbArc from,
               guint8 positions[LB_BARS_MAX])
{
  g_return_val_if_fail (ring, from);
  g_return_val_if_fail (rule, from);
  g_return_val_if_fail (from.n_gone <= ring->n, from);

  Search self;

  self.ring = ring;
  self.rule = rule;
  self.from = from;
  self.first_layer = MAX (from.n_gone, 1);
  self.last_layer = from.n_gone;
  self.peak = 0;

  const double at_first = utilisation (&self, from.start, from.n_gone);

  if (from.n_gone == ring->n || !(at_first <= rule->limit))
    return from;

  survey (&self, isinf (at_first) ? 0 : at_first);
  if (self.last_layer == from.n_gone)
    return from;
  settle (&self);
  return trace (&self, positions);
}
