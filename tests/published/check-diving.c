/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/bottom-time.h"
#include "trade/repetitive.h"

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

static void
check_surface_interval (LbTrial *trial)
{
  LbInterval interval = { 0 };
  char letter[] = { 0, '\0' };
  const char *said = letter;

  g_assert_true (lb_surface_interval (lb_trial_text (trial, "group")[0],
                                      lb_trial_number (trial, "interval"), &interval, NULL));
  switch (interval.kind) {
  case LB_INTERVAL_ONE_DIVE:
    said = "one dive";
    break;
  case LB_INTERVAL_OVER:
    said = "none";
    break;
  case LB_INTERVAL_GROUP:
    letter[0] = interval.group;
    break;
  }
  lb_trial_expect_text (trial, "new group", said);
}

static void
check_residual (LbTrial *trial)
{
  GError *error = NULL;
  double residual_s = 0;
  const gboolean is_accepted = lb_residual_time (
    lb_trial_number (trial, "depth"), lb_trial_text (trial, "group")[0], &residual_s, &error);

  lb_trial_expect_if (trial, "residual", is_accepted, residual_s, error);
}

static void
expect_left (LbTrial *trial, const char *column, const LbDiveLeft *left, double actual)
{
  const char *reason = lb_dive_left_reason (left->state);

  lb_trial_expect_if (trial, column, left->state == LB_DIVE_LEFT_KNOWN, actual,
                      reason[0] != '\0' ? g_error_new_literal (G_OPTION_ERROR, 0, reason) : NULL);
}

static void
check_dive_again (LbTrial *trial)
{
  const gint64 morning = G_GINT64_CONSTANT (28800) * G_USEC_PER_SEC;
  const gint64 first_us = (gint64) (lb_trial_number (trial, "first time") * G_USEC_PER_SEC);
  const gint64 interval_us = (gint64) (lb_trial_number (trial, "interval") * G_USEC_PER_SEC);
  const LbDive first = { .left_surface_us = morning,
                         .left_bottom_us = morning + first_us,
                         .reached_surface_us = morning + first_us + G_USEC_PER_SEC * 80,
                         .depth_m = lb_trial_number (trial, "first reading") };
  const LbDiveLeft left = lb_dive_left (NULL, &first, 1, lb_trial_number (trial, "reading"),
                                        first.reached_surface_us + interval_us);
  const char letter[] = { left.group, '\0' };

  lb_trial_expect_text (trial, "group", left.group != 0 ? letter : "none");
  expect_left (trial, "residual", &left, left.residual_s);
  expect_left (trial, "left", &left, left.open_s);
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
  { "surface interval",
    check_surface_interval,
    { LB_GIVEN ("group", "text"), LB_GIVEN ("interval", "time"),
      LB_EXPECTED ("new group", "text") } },
  { "residual nitrogen time",
    check_residual,
    { LB_GIVEN ("depth", "length"), LB_GIVEN ("group", "text"),
      LB_EXPECTED ("residual", "time") } },
  { "dive again",
    check_dive_again,
    { LB_GIVEN ("first reading", "length"), LB_GIVEN ("first time", "time"),
      LB_GIVEN ("interval", "time"), LB_GIVEN ("reading", "length"), LB_EXPECTED ("group", "text"),
      LB_EXPECTED ("residual", "time"), LB_EXPECTED ("left", "time") } },
  { NULL },
};
