/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which rows of the table of cautions one cut raises.
 *
 * A row names a condition of a fixed list (caution-when.h); here each of them is told from the pile's
 * facts, the assumptions and the figures of the plan, once a plan. The rows that follow from the pile
 * come first, those that hold at nearly every cut after them, so that what is peculiar to this pile is
 * not lost among what everybody knows; each of the two parts has the gravest first, and a crew's own
 * rows after those built in that are as grave.
 *
 * Invariants:
 * 1. A condition holds only if all the figures are known that it promises to its words.
 * 2. No memory is taken. */
#include "trade/plan-cautions.h"

#include "trade/critical-lift.h"
#include "trade/cylinder.h"
#include "trade/lead-drop.h"

#include <math.h>

/* A diver at the cut is half in the water when the surface is about so near to it: common practice. */
#define SPLASH_HALF 1.0 /* m */
/* Legs under this from level want care: ASME B30.9. */
#define SLING_FLAT (45 * G_PI / 180)

typedef struct
{
  const LbPile *pile;
  const double *value; /* of the assumptions */
  const gboolean *is_own;
  const LbCutPlan *plan;
} Cut;

static LbRange
range_of (const Cut *cut, LbFigureId id)
{
  return cut->plan->figures[id].range;
}

static double
likely (const Cut *cut, LbFigureId id)
{
  return range_of (cut, id).likely;
}

/* --- The bars ----------------------------------------------------------------------------- */

/* When their count is not known there are some. */
static gboolean
is_burning (const Cut *cut)
{
  return cut->pile->n_bars == 0 || likely (cut, LB_FIGURE_BARS_LEFT) > 0;
}

static gboolean
is_known_hold (const Cut *cut)
{
  return cut->plan->hold_missing == NULL && cut->plan->hold.n_steps > 0;
}

/* The step before which the hook must hold, when the bars hold until then; else %NULL. */
static const LbBurnStep *
hook_step (const Cut *cut)
{
  const LbBurnOrder *hold = &cut->plan->hold;

  if (!is_known_hold (cut) || !hold->stands || hold->rig_before == 0)
    return NULL;
  return &hold->steps[hold->rig_before - 1];
}

/* Bars left would carry the stub without it: only somebody's wish to keep it puts the hook on. */
static gboolean
is_only_kept (const LbBurnStep *step)
{
  return step->slack.utilisation <= 1;
}

static gboolean
is_hinge (const LbBurnStep *step)
{
  return step->is_hinge && step->n_left > 0;
}

/* --- Dives and gear ----------------------------------------------------------------------- */

static gboolean
is_under_water (const Cut *cut)
{
  return likely (cut, LB_FIGURE_CUT_DEPTH) > 0;
}

static gboolean
is_in_splash_zone (const Cut *cut, const LbAssumptions *assumptions)
{
  const double cut_m = lb_pile_cut_elevation (cut->pile, assumptions);

  return fabs (cut->value[LB_ASSUME_WATER_LEVEL] - cut_m) <= SPLASH_HALF;
}

static gboolean
is_several_dives (const Cut *cut)
{
  return is_burning (cut) && likely (cut, LB_FIGURE_DIVES) > 1;
}

static gboolean
may_be_several_dives (const Cut *cut)
{
  const LbRange dives = range_of (cut, LB_FIGURE_DIVES);

  return is_burning (cut) && dives.likely <= 1 && dives.high > 1;
}

/* The burn is known and the limit too, and still no number of dives does it. */
static gboolean
is_past_limit (const Cut *cut)
{
  return is_burning (cut) && isnan (likely (cut, LB_FIGURE_DIVES)) &&
         !isnan (likely (cut, LB_FIGURE_BURN)) && !isnan (likely (cut, LB_FIGURE_NO_STOP));
}

/* A cut in the dry is not dived for. */
static gboolean
is_current_over (const Cut *cut)
{
  return cut->value[LB_ASSUME_CURRENT] > cut->value[LB_ASSUME_CURRENT_LIMIT] &&
         !(likely (cut, LB_FIGURE_CUT_DEPTH) <= 0);
}

static gboolean
is_residual_low (const Cut *cut)
{
  const LbCylinder cylinder = {
    .content_m3 = cut->value[LB_ASSUME_CYLINDER_CONTENT],
    .full_pa = cut->value[LB_ASSUME_CYLINDER_PRESSURE],
    .residual_pa = cut->value[LB_ASSUME_CYLINDER_RESIDUAL],
  };
  const double setting_pa = likely (cut, LB_FIGURE_REGULATOR);

  return is_burning (cut) && !isnan (setting_pa) &&
         !lb_cylinder_feeds (&cylinder, setting_pa, NULL);
}

/* One leg hangs straight whatever is said of its angle. */
static gboolean
is_sling_flat (const Cut *cut)
{
  return cut->value[LB_ASSUME_SLING_LEGS] > 1 && cut->value[LB_ASSUME_SLING_ANGLE] < SLING_FLAT;
}

/* --- Leads and crane ---------------------------------------------------------------------- */

/* Somebody has said how long they are. */
static gboolean
is_lead_drop_over (const Cut *cut, gboolean is_measured)
{
  return is_burning (cut) && cut->is_own[LB_ASSUME_LEAD_LENGTH] == is_measured &&
         likely (cut, LB_FIGURE_LEAD_DROP) > LB_LEAD_DROP_MOST;
}

/* By the heavy end of the load: once in ten times it is as much. */
static double
crane_share (const Cut *cut)
{
  return range_of (cut, LB_FIGURE_CRANE_SHARE).high;
}

/* Whoever lists too far or reaches too far is told so in other words. */
static gboolean
is_capacity_unknown (const Cut *cut)
{
  const LbCapacityFrom from = cut->plan->crane.from;

  return isnan (crane_share (cut)) && from != LB_CAPACITY_LIST_OVER && from != LB_CAPACITY_BEYOND;
}

/* --- Conditions --------------------------------------------------------------------------- */

gboolean
lb_plan_caution_holds (LbCautionWhen when,
                       const LbPile *pile,
                       const LbAssumptions *assumptions,
                       const LbCutPlan *plan)
{
  g_return_val_if_fail (pile, FALSE);
  g_return_val_if_fail (assumptions, FALSE);
  g_return_val_if_fail (plan, FALSE);

  const Cut cut = {
    .pile = pile,
    .value = assumptions->value,
    .is_own = assumptions->is_own,
    .plan = plan,
  };
  const LbBurnStep *hook = hook_step (&cut);

  switch (when) {
  case LB_WHEN_ALWAYS:
    return TRUE;
  case LB_WHEN_BURNING:
  case LB_WHEN_BREAKING:
    return is_burning (&cut);
  case LB_WHEN_OXYGEN:
    return is_burning (&cut) && !isnan (likely (&cut, LB_FIGURE_REGULATOR));
  case LB_WHEN_UNDER_WATER:
  case LB_WHEN_SUBMERGED_LIFT:
    return is_under_water (&cut);
  case LB_WHEN_SPLASH_ZONE:
    return is_burning (&cut) && is_in_splash_zone (&cut, assumptions);
  case LB_WHEN_BATTERED:
    return plan->is_battered;
  case LB_WHEN_BATTERED_BURN:
    return is_burning (&cut) && plan->is_battered;
  case LB_WHEN_PLUMB_BURN:
    return is_burning (&cut) && plan->is_lean_known && !plan->is_battered;
  case LB_WHEN_LEAN_UNKNOWN:
    return !plan->is_lean_known;
  case LB_WHEN_STRAND:
    return is_burning (&cut) && pile->bar && pile->bar->kind == LB_BAR_STRAND;
  case LB_WHEN_HOLLOW:
    return is_burning (&cut) && pile->outline.void_m > 0;
  case LB_WHEN_BARS_UNKNOWN:
    return is_burning (&cut) && (!pile->bar || pile->n_bars == 0);
  case LB_WHEN_CONCRETE_LEFT:
    return is_burning (&cut) && pile->concrete != LB_CONCRETE_NONE;
  case LB_WHEN_NOT_STANDING:
    return is_known_hold (&cut) && !plan->hold.stands;
  case LB_WHEN_HOLD_KNOWN:
    return hook && !is_only_kept (hook);
  case LB_WHEN_KEPT_BAR:
    return hook && is_only_kept (hook);
  case LB_WHEN_HINGE:
    return hook && is_hinge (hook);
  case LB_WHEN_HOLD_UNKNOWN:
    return is_burning (&cut) && plan->is_battered && !is_known_hold (&cut);
  case LB_WHEN_SEVERAL_DIVES:
    return is_several_dives (&cut);
  case LB_WHEN_DIVES_MAY_GROW:
    return may_be_several_dives (&cut);
  case LB_WHEN_PAST_LIMIT:
    return is_past_limit (&cut);
  case LB_WHEN_LIMIT_UNKNOWN:
    return is_burning (&cut) && isnan (likely (&cut, LB_FIGURE_NO_STOP));
  case LB_WHEN_CURRENT_OVER:
    return is_current_over (&cut);
  case LB_WHEN_LEAD_DROP_OVER:
    return is_lead_drop_over (&cut, TRUE);
  case LB_WHEN_LEADS_ASSUMED:
    return is_lead_drop_over (&cut, FALSE);
  case LB_WHEN_RESIDUAL_LOW:
    return is_residual_low (&cut);
  case LB_WHEN_LOAD_KNOWN:
    return is_under_water (&cut) && !isnan (likely (&cut, LB_FIGURE_HOOK_LOAD));
  case LB_WHEN_LOAD_UNKNOWN:
    return is_under_water (&cut) && isnan (likely (&cut, LB_FIGURE_HOOK_LOAD));
  case LB_WHEN_CAPACITY_UNKNOWN:
    return !isnan (likely (&cut, LB_FIGURE_HOOK_LOAD)) && is_capacity_unknown (&cut);
  case LB_WHEN_CAPACITY_NEAR:
    return crane_share (&cut) >= LB_CRITICAL_SHARE && crane_share (&cut) <= 1;
  case LB_WHEN_CAPACITY_OVER:
    return crane_share (&cut) > 1;
  case LB_WHEN_BEYOND_CHART:
    return plan->crane.from == LB_CAPACITY_BEYOND;
  case LB_WHEN_BARGE_CRANE:
    return cut.value[LB_ASSUME_ON_BARGE] > 0;
  case LB_WHEN_LIST_OVER:
    return plan->crane.from == LB_CAPACITY_LIST_OVER;
  case LB_WHEN_TWO_CRANES:
    return cut.value[LB_ASSUME_CRANES] > 1;
  case LB_WHEN_SLING_FLAT:
    return is_sling_flat (&cut);
  case LB_WHEN_SLING_OVER:
    return range_of (&cut, LB_FIGURE_SLING_SHARE).high > 1;
  case LB_WHEN_WHOLE_PULL:
    return !isnan (likely (&cut, LB_FIGURE_WHOLE_PULL));
  case LB_WHEN_ON_MUD:
    return !isnan (likely (&cut, LB_FIGURE_SUCTION));
  }
  g_return_val_if_reached (FALSE);
}

/* --- Rows --------------------------------------------------------------------------------- */

/* Those of one part and one severity. */
static void
take (const LbCautionRow *rows,
      gsize n_rows,
      gboolean is_ordinary,
      LbSeverity severity,
      const gboolean holds[LB_N_CAUTION_WHENS],
      LbCutPlan *plan)
{
  for (gsize i = 0; i < n_rows; i++)
    if (rows[i].severity == severity && holds[rows[i].when] &&
        lb_caution_when_is_ordinary (rows[i].when) == is_ordinary)
      plan->cautions[plan->n_cautions++] = &rows[i];
}

static void
take_part (const LbCutBasis *basis,
           gboolean is_ordinary,
           const gboolean holds[LB_N_CAUTION_WHENS],
           LbCutPlan *plan)
{
  gsize n_rows;
  const LbCautionRow *rows = lb_caution_rows (&n_rows);

  for (int severity = LB_SEVERITY_DANGER; severity >= LB_SEVERITY_NOTE; severity--) {
    take (rows, n_rows, is_ordinary, (LbSeverity) severity, holds, plan);
    take (basis->crew_rows, basis->n_crew_rows, is_ordinary, (LbSeverity) severity, holds, plan);
  }
}

void
lb_plan_cautions_gather (const LbPile *pile, const LbCutBasis *basis, LbCutPlan *plan)
{
  g_return_if_fail (pile);
  g_return_if_fail (basis && basis->n_crew_rows <= LB_CAUTION_CREW_ROWS_MAX);
  g_return_if_fail (plan);

  gboolean holds[LB_N_CAUTION_WHENS];

  for (guint when = 0; when < LB_N_CAUTION_WHENS; when++)
    holds[when] = lb_plan_caution_holds ((LbCautionWhen) when, pile, basis->assumptions, plan);
  plan->n_cautions = 0;
  take_part (basis, FALSE, holds, plan);
  plan->n_own_cautions = plan->n_cautions;
  take_part (basis, TRUE, holds, plan);
}

guint
lb_plan_hook_bar (const LbCutPlan *plan)
{
  g_return_val_if_fail (plan && plan->hold.rig_before > 0, 0);

  return plan->hold.steps[plan->hold.rig_before - 1].bar;
}

double
lb_plan_longest_dive (const LbCutPlan *plan, const LbAssumptions *assumptions)
{
  g_return_val_if_fail (plan, (double) NAN);
  g_return_val_if_fail (assumptions, (double) NAN);

  const double no_stop_s = plan->figures[LB_FIGURE_NO_STOP].range.likely;
  const double own_s = assumptions->value[LB_ASSUME_DIVE_LIMIT];

  return isnan (no_stop_s) || no_stop_s < own_s ? no_stop_s : own_s;
}
