/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/sling.h"

#include <math.h>

static void
check_sling_factor (LbTrial *trial)
{
  GError *error = NULL;
  double factor = 0.0;
  const gboolean is_accepted = lb_sling_factor (lb_trial_number (trial, "angle"), &factor, &error);

  lb_trial_expect_if (trial, "factor", is_accepted, factor, error);
}

/* The angle of a leg from what a tape measures: the height of the hook over the pick points, and
 * the length of the leg. */
static double
leg_angle (const LbTrial *trial)
{
  return asin (lb_trial_number (trial, "height") / lb_trial_number (trial, "leg"));
}

static void
check_sling_tension (LbTrial *trial)
{
  GError *error = NULL;
  double tension_n = 0.0;
  const gboolean is_accepted = lb_sling_tension (lb_trial_number (trial, "load"),
                                                 lb_trial_count (trial, "legs"), leg_angle (trial),
                                                 &tension_n, &error);

  lb_trial_expect_if (trial, "tension", is_accepted, tension_n, error);
}

static void
check_sling_capacity (LbTrial *trial)
{
  GError *error = NULL;
  double load_n = 0.0;
  const gboolean is_accepted = lb_sling_capacity (lb_trial_number (trial, "rating"), 1,
                                                  leg_angle (trial), &load_n, &error);

  lb_trial_expect_if (trial, "capacity", is_accepted, load_n, error);
}

static void
check_choked_legs (LbTrial *trial)
{
  GError *error = NULL;
  double load_n = 0.0;
  const gboolean is_accepted = lb_choker_capacity (
    lb_trial_number (trial, "rating"), lb_trial_number (trial, "choke"),
    lb_trial_count (trial, "legs"), lb_trial_number (trial, "angle"), &load_n, &error);

  lb_trial_expect_if (trial, "capacity", is_accepted, load_n, error);
}

static void
check_choker (LbTrial *trial)
{
  lb_trial_expect (trial, "share", lb_choker_share (lb_trial_number (trial, "angle")));
}

const LbCheck LB_CHECKS_LIFTING[] = {
  { "sling factor",
    check_sling_factor,
    { LB_GIVEN ("angle", "angle"), LB_EXPECTED ("factor", "number") } },
  { "sling tension",
    check_sling_tension,
    { LB_GIVEN ("load", "force"), LB_GIVEN ("legs", "number"), LB_GIVEN ("leg", "length"),
      LB_GIVEN ("height", "length"), LB_EXPECTED ("tension", "force") } },
  { "sling capacity",
    check_sling_capacity,
    { LB_GIVEN ("rating", "force"), LB_GIVEN ("leg", "length"), LB_GIVEN ("height", "length"),
      LB_EXPECTED ("capacity", "force") } },
  { "choker", check_choker, { LB_GIVEN ("angle", "angle"), LB_EXPECTED ("share", "number") } },
  { "choked legs",
    check_choked_legs,
    { LB_GIVEN ("rating", "force"), LB_GIVEN ("choke", "angle"), LB_GIVEN ("legs", "number"),
      LB_GIVEN ("angle", "angle"), LB_EXPECTED ("capacity", "force") } },
  { NULL },
};
