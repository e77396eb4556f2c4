/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/bottom-time.h"

static void
check_no_stop (LbTrial *trial)
{
  GError *error = NULL;
  LbNoStop limit = { 0 };
  const gboolean is_accepted = lb_no_stop_limit (lb_trial_number (trial, "depth"), &limit, &error);

  lb_trial_expect_if (trial, "row", is_accepted, limit.table_depth_m,
                      error != NULL ? g_error_copy (error) : NULL);
  lb_trial_expect_if (trial, "limit", is_accepted, limit.limit_s, error);
}

static void
check_group (LbTrial *trial)
{
  const char group = lb_repetitive_group (lb_trial_number (trial, "depth"),
                                          lb_trial_number (trial, "bottom time"));
  const char letter[] = { group, '\0' };

  lb_trial_expect_text (trial, "group", group != 0 ? letter : "none");
}

static void
check_pneumo (LbTrial *trial)
{
  GError *error = NULL;
  double depth_m = 0.0;
  const gboolean is_accepted = lb_pneumo_corrected (lb_trial_number (trial, "reading"), &depth_m,
                                                    &error);

  lb_trial_expect_if (trial, "depth", is_accepted, depth_m, error);
}

/* The altitude correction is the supervisor's own; the tool adds that of the pneumofathometer. */
static void
check_pneumo_at_altitude (LbTrial *trial)
{
  GError *error = NULL;
  double depth_m = 0.0;
  const gboolean is_accepted = lb_pneumo_corrected (lb_trial_number (trial, "reading"), &depth_m,
                                                    &error);

  lb_trial_expect_if (trial, "depth", is_accepted, depth_m + lb_trial_number (trial, "altitude"),
                      error);
}

static void
check_helmet_supply (LbTrial *trial)
{
  GError *error = NULL;
  double pressure_pa = 0.0;
  const gboolean is_accepted = lb_helmet_supply_pressure (lb_trial_number (trial, "depth"),
                                                          &pressure_pa, &error);

  lb_trial_expect_if (trial, "pressure", is_accepted, pressure_pa, error);
}

static void
check_ascent (LbTrial *trial)
{
  lb_trial_expect (trial, "time", lb_ascent_time (lb_trial_number (trial, "depth")));
}

const LbCheck LB_CHECKS_DIVING[] = {
  { "no-stop limit",
    check_no_stop,
    { LB_GIVEN ("depth", "length"), LB_EXPECTED ("row", "length"),
      LB_EXPECTED ("limit", "time") } },
  { "repetitive group",
    check_group,
    { LB_GIVEN ("depth", "length"), LB_GIVEN ("bottom time", "time"),
      LB_EXPECTED ("group", "text") } },
  { "pneumofathometer",
    check_pneumo,
    { LB_GIVEN ("reading", "length"), LB_EXPECTED ("depth", "length") } },
  { "pneumofathometer at altitude",
    check_pneumo_at_altitude,
    { LB_GIVEN ("reading", "length"), LB_GIVEN ("altitude", "length"),
      LB_EXPECTED ("depth", "length") } },
  { "helmet supply",
    check_helmet_supply,
    { LB_GIVEN ("depth", "length"), LB_EXPECTED ("pressure", "pressure") } },
  { "ascent", check_ascent, { LB_GIVEN ("depth", "length"), LB_EXPECTED ("time", "time") } },
  { NULL },
};
