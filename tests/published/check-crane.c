/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/barge.h"
#include "trade/crane.h"
#include "trade/critical-lift.h"
#include "trade/lift-load.h"
#include "trade/pick.h"

#include <math.h>

static LbPickRule
rule_of (const LbTrial *trial)
{
  return g_str_equal (lb_trial_text (trial, "rule"), "theory") ? LB_PICK_THEORY : LB_PICK_PRINTED;
}

/* Shares of a length of 1. The span of a single pick runs to the end on the ground. */
static void
check_picks (LbTrial *trial)
{
  const guint n_points = lb_trial_count (trial, "points");
  double at_m[LB_PICKS_MAX] = { 0 };
  GError *error = NULL;
  const gboolean is_accepted = lb_pick_points (rule_of (trial), n_points, 1.0, at_m, &error);
  const double next_m = is_accepted && n_points > 1 ? at_m[1] : 1.0;

  lb_trial_expect_if (trial, "end", is_accepted, at_m[0], error);
  if (is_accepted)
    lb_trial_expect (trial, "span", next_m - at_m[0]);
}

/* Of a length of 1 that weighs 1. */
static void
check_pick_moment (LbTrial *trial)
{
  GError *error = NULL;
  double moment_nm = 0.0;
  const gboolean is_accepted = lb_pick_moment (1.0, 1.0, lb_trial_count (trial, "points"),
                                               lb_trial_number (trial, "end"), &moment_nm, &error);

  lb_trial_expect_if (trial, "moment", is_accepted, moment_nm, error);
}

static LbRange
just (double value)
{
  return (LbRange){ value, value, value };
}

static void
check_lift_load (LbTrial *trial)
{
  const LbLift lift = {
    .outline = { .shape = LB_SHAPE_SQUARE,
                 .width_m = lb_trial_number (trial, "square"),
                 .void_m = lb_trial_number (trial, "void") },
    .length_m = lb_trial_number (trial, "length"),
    .concrete_kg_per_m3 = just (lb_trial_number (trial, "concrete")),
    .absorbed = just (lb_trial_number (trial, "absorbed")),
    .water_kg_per_m3 = lb_trial_number (trial, "water"),
    .trapped = just (lb_trial_number (trial, "trapped")),
    .rigging_kg = lb_trial_number (trial, "rigging"),
  };
  g_autoptr (GError) error = NULL;
  LbRange load[LB_N_LIFT_STAGES];

  if (!lb_lift_load (&lift, load, &error)) {
    lb_trial_fail (trial, "it is refused: %s", error->message);
    return;
  }
  lb_trial_expect (trial, "under", load[LB_LIFT_IN_WATER].likely);
  lb_trial_expect (trial, "awash", load[LB_LIFT_AWASH].likely);
  lb_trial_expect (trial, "clear", load[LB_LIFT_IN_AIR].likely);
}

static void
check_crane_list (LbTrial *trial)
{
  const LbCraneStand stand = {
    .radius_m = lb_trial_number (trial, "radius"),
    .tip_height_m = lb_trial_number (trial, "tip"),
    .list_rad = lb_trial_number (trial, "list"),
    .trim_rad = lb_trial_number (trial, "trim"),
    .most_rad = (double) NAN,
  };
  GError *error = NULL;
  double radius_m = 0.0;
  const gboolean is_accepted = lb_crane_radius (&stand, &radius_m, &error);

  lb_trial_expect_if (trial, "growth", is_accepted, radius_m - stand.radius_m, error);
}

static void
check_barge (LbTrial *trial)
{
  const LbBarge barge = {
    .length_m = lb_trial_number (trial, "length"),
    .beam_m = lb_trial_number (trial, "beam"),
    .draft_m = lb_trial_number (trial, "draft"),
    .freeboard_m = lb_trial_number (trial, "freeboard"),
    .gravity_m = lb_trial_number (trial, "gravity"),
    .water_kg_per_m3 = lb_trial_number (trial, "water"),
  };
  g_autoptr (GError) error = NULL;
  LbBargeHeel heel;

  if (!lb_barge_heel (&barge, lb_trial_number (trial, "hook"), lb_trial_number (trial, "arm"),
                      &heel, &error))
  {
    lb_trial_fail (trial, "it is refused: %s", error->message);
    return;
  }
  lb_trial_expect (trial, "displacement", heel.displacement_kg);
  lb_trial_expect (trial, "GM", heel.metacentric_m);
  lb_trial_expect (trial, "rule", heel.rule_moment_nm);
  lb_trial_expect (trial, "heel", heel.heel_rad);
}

static gboolean
is_yes (const LbTrial *trial, const char *column)
{
  return g_str_equal (lb_trial_text (trial, column), "yes");
}

static void
check_critical_lift (LbTrial *trial)
{
  static const char *const names[LB_N_CRITICAL_TRIGGERS] = {
    [LB_CRITICAL_SUBMERGED] = "submerged",
    [LB_CRITICAL_CAPACITY] = "capacity",
    [LB_CRITICAL_CAPACITY_UNKNOWN] = "capacity unknown",
    [LB_CRITICAL_CRANES] = "cranes",
    [LB_CRITICAL_CENTRE] = "centre",
    [LB_CRITICAL_VIEW] = "view",
  };
  const LbLiftFacts facts = {
    .is_submerged = is_yes (trial, "submerged"),
    .share = lb_trial_number (trial, "share"),
    .n_cranes = lb_trial_count (trial, "cranes"),
    .is_centre_changing = is_yes (trial, "centre moves"),
    .is_out_of_view = is_yes (trial, "out of view"),
  };
  const LbCriticalSet set = lb_critical_lift (&facts);
  g_autoptr (GString) said = g_string_new (set == 0 ? "none" : NULL);

  for (guint i = 0; i < LB_N_CRITICAL_TRIGGERS; i++) {
    if (lb_critical_set_has (set, (LbCriticalTrigger) i))
      g_string_append_printf (said, "%s%s", said->len > 0 ? ", " : "", names[i]);
  }
  lb_trial_expect_text (trial, "triggers", said->str);
}

const LbCheck LB_CHECKS_CRANE[] = {
  { "picks",
    check_picks,
    { LB_GIVEN ("rule", "text"), LB_GIVEN ("points", "number"), LB_EXPECTED ("end", "number"),
      LB_EXPECTED ("span", "number") } },
  { "pick moment",
    check_pick_moment,
    { LB_GIVEN ("points", "number"), LB_GIVEN ("end", "number"),
      LB_EXPECTED ("moment", "number") } },
  { "lift load",
    check_lift_load,
    { LB_GIVEN ("square", "length"), LB_GIVEN ("void", "length"), LB_GIVEN ("length", "length"),
      LB_GIVEN ("concrete", "density"), LB_GIVEN ("absorbed", "number"),
      LB_GIVEN ("water", "density"), LB_GIVEN ("trapped", "number"), LB_GIVEN ("rigging", "mass"),
      LB_EXPECTED ("under", "force"), LB_EXPECTED ("awash", "force"),
      LB_EXPECTED ("clear", "force") } },
  { "crane list",
    check_crane_list,
    { LB_GIVEN ("radius", "length"), LB_GIVEN ("tip", "length"), LB_GIVEN ("list", "angle"),
      LB_GIVEN ("trim", "angle"), LB_EXPECTED ("growth", "length") } },
  { "barge",
    check_barge,
    { LB_GIVEN ("length", "length"), LB_GIVEN ("beam", "length"), LB_GIVEN ("draft", "length"),
      LB_GIVEN ("freeboard", "length"), LB_GIVEN ("gravity", "length"),
      LB_GIVEN ("water", "density"), LB_GIVEN ("hook", "force"), LB_GIVEN ("arm", "length"),
      LB_EXPECTED ("displacement", "mass"), LB_EXPECTED ("GM", "length"),
      LB_EXPECTED ("rule", "moment"), LB_EXPECTED ("heel", "angle") } },
  { "critical lift",
    check_critical_lift,
    { LB_GIVEN ("submerged", "text"), LB_GIVEN ("share", "number"), LB_GIVEN ("cranes", "number"),
      LB_GIVEN ("centre moves", "text"), LB_GIVEN ("out of view", "text"),
      LB_EXPECTED ("triggers", "text") } },
  { NULL },
};
