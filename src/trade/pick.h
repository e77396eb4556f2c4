/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Where to pick up a straight piece, how it bends, and into how many lengths to cut it. */
#define LB_PICKS_MAX 4

typedef enum {
  LB_PICK_PRINTED, /* FDOT Design Standards, index 20600 (2012) */
  LB_PICK_THEORY,  /* overhang and inside bend alike: the least bending there is */
} LbPickRule;

/**
 * lb_pick_points:
 * @n_points: 1 to %LB_PICKS_MAX
 * @out_at_m: (out): from one end, rising; untouched on failure
 *
 * One point upends the piece, its far end on the ground. Three and four share the load only over
 * sheaves that make them equal.
 */
gboolean lb_pick_points (LbPickRule rule,
                         guint n_points,
                         double length_m,
                         double out_at_m[LB_PICKS_MAX],
                         GError **error);

/**
 * lb_pick_moment:
 * @weight_n_per_m: along the piece, in air
 * @n_points: 1 or 2
 * @overhang_m: from the end to the pick, at both ends when there are two; 0 to half the length
 * @out_moment_nm: (out): the greatest, lying level; untouched on failure
 *
 * One pick is reckoned with the far end still on the ground.
 */
gboolean lb_pick_moment (double weight_n_per_m,
                         double length_m,
                         guint n_points,
                         double overhang_m,
                         double *out_moment_nm,
                         GError **error);

#define LB_LENGTHS_MAX 50

typedef struct
{
  guint n;
  double length_m; /* of each */
  double load_n;   /* of each at the hook, rigging counted */
} LbLengths;

/**
 * lb_pick_lengths:
 * @limit_n: what the hook may carry, rigging counted
 *
 * The fewest equal lengths none of which is over @limit_n.
 *
 * Returns: %FALSE when the rigging alone is over the limit, more than %LB_LENGTHS_MAX would be
 *   needed, or a number makes no sense; @out_lengths is untouched then
 */
gboolean lb_pick_lengths (double weight_n_per_m,
                          double length_m,
                          double rigging_n,
                          double limit_n,
                          LbLengths *out_lengths,
                          GError **error);

G_END_DECLS
