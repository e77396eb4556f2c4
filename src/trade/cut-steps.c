/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/cut-steps.h"

#include "trade/cylinder.h"

#include <math.h>

/* A sum of equal shares may exceed a whole by this and still be that whole: rounding. */
#define SHARE_SLACK 1e-9

/* Which of full cylinders is on line when so much gas is used. */
static guint
cylinder_for (double used_m3, double usable_m3)
{
  const double n = lb_cylinders_needed (used_m3 * (1 - SHARE_SLACK), usable_m3, usable_m3);

  return n >= 1 && n <= G_MAXINT ? (guint) n : 0;
}

/* A bar that would run over what one dive leaves is begun in the next; one that is longer than a whole
 * dive has one of its own. */
static void
share_dives (double burning_s, LbCutSteps *steps)
{
  double in_dive_s = 0;

  steps->n_dives = 0;
  if (!isfinite (burning_s))
    return;
  for (gsize i = 0; i < steps->n_steps; i++) {
    LbCutStep *step = &steps->steps[i];

    if (isnan (step->takes_s))
      return;
    step->starts_dive = i > 0 && in_dive_s + step->takes_s > burning_s * (1 + SHARE_SLACK);
    if (i == 0 || step->starts_dive) {
      in_dive_s = 0;
      steps->n_dives++;
    }
    in_dive_s += step->takes_s;
    step->dive = steps->n_dives;
  }
}

gboolean
lb_cut_steps_reckon (const LbPile *pile,
                     const LbCutBasis *basis,
                     const LbCutPlan *plan,
                     LbCutSteps *out_steps)
{
  g_return_val_if_fail (pile, FALSE);
  g_return_val_if_fail (basis, FALSE);
  g_return_val_if_fail (plan, FALSE);
  g_return_val_if_fail (out_steps, FALSE);

  const double n_left = plan->figures[LB_FIGURE_BARS_LEFT].range.likely;
  const gsize n = plan->n_order;
  const gboolean is_strand = pile->bar && pile->bar->kind == LB_BAR_STRAND;

  *out_steps = (LbCutSteps){ 0 };
  /* More places than bars left: some are gone, and nobody knows which. */
  if (n == 0 || is_strand || (double) n > n_left)
    return FALSE;

  const double burn_s = plan->figures[LB_FIGURE_BURN].range.likely;
  const double oxygen_m3 = plan->figures[LB_FIGURE_OXYGEN].range.likely;
  const gboolean has_hold = plan->hold_missing == NULL && plan->hold.rig_before > 0;
  guint on_line = 1;

  out_steps->n_steps = n;
  for (gsize i = 0; i < n; i++) {
    const double part = (double) (i + 1) / (double) n;
    const guint cylinder = cylinder_for (oxygen_m3 * part, basis->cylinder_gas_m3);

    out_steps->steps[i] = (LbCutStep){
      .bar = plan->order[i],
      .takes_s = burn_s / (double) n,
      .total_s = burn_s * part,
      .cylinder = cylinder,
      .changes_cylinder = cylinder > on_line,
      .needs_hook = has_hold && i + 1 == plan->hold.rig_before,
    };
    on_line = cylinder;
  }
  share_dives (lb_cut_plan_burning_time (plan, basis->assumptions), out_steps);
  return TRUE;
}
