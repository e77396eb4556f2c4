/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/bar.h"

static const LbBar *
find_bar (LbTrial *trial, const char *column)
{
  const char *name = lb_trial_text (trial, column);
  const LbBar *bar = lb_bar_find (name);

  if (bar == NULL)
    lb_trial_fail (trial, "there is no bar “%s”", name);
  return bar;
}

static void
check_bar (LbTrial *trial)
{
  const LbBar *bar = find_bar (trial, "bar");

  if (bar == NULL)
    return;
  lb_trial_expect (trial, "diameter", bar->diameter_m);
  lb_trial_expect (trial, "area", bar->area_m2);
  lb_trial_expect (trial, "weight", bar->mass_kg_per_m);
}

static void
check_equal_bars (LbTrial *trial)
{
  const LbBar *old = find_bar (trial, "old");
  const LbBar *modern = find_bar (trial, "modern");

  if (old == NULL || modern == NULL)
    return;
  lb_trial_expect (trial, "area ratio", old->area_m2 / modern->area_m2);
  lb_trial_expect (trial, "weight ratio", old->mass_kg_per_m / modern->mass_kg_per_m);
}

static void
check_strand (LbTrial *trial)
{
  const LbBar *strand = find_bar (trial, "strand");

  if (strand == NULL)
    return;
  lb_trial_expect (trial, "diameter", strand->diameter_m);
  lb_trial_expect (trial, "area", strand->area_m2);
  lb_trial_expect (trial, "weight", strand->mass_kg_per_m);
  lb_trial_expect (trial, "breaks at", strand->break_force_n);
}

const LbCheck LB_CHECKS_STEEL[] = {
  { "bar size",
    check_bar,
    { LB_GIVEN ("bar", "text"), LB_EXPECTED ("diameter", "length"), LB_EXPECTED ("area", "area"),
      LB_EXPECTED ("weight", "mass per length") } },
  { "equal bars",
    check_equal_bars,
    { LB_GIVEN ("old", "text"), LB_GIVEN ("modern", "text"), LB_EXPECTED ("area ratio", "number"),
      LB_EXPECTED ("weight ratio", "number") } },
  { "strand",
    check_strand,
    { LB_GIVEN ("strand", "text"), LB_EXPECTED ("diameter", "length"), LB_EXPECTED ("area", "area"),
      LB_EXPECTED ("weight", "mass per length"), LB_EXPECTED ("breaks at", "force") } },
  { NULL },
};
