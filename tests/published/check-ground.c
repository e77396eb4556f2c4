/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/breakout.h"
#include "trade/grip.h"

static void
check_clay_friction (LbTrial *trial)
{
  lb_trial_expect (
    trial, "friction",
    lb_clay_friction (lb_trial_number (trial, "strength"), lb_trial_number (trial, "overburden")));
}

static LbSand
sand_of (LbTrial *trial)
{
  LbSand sand = LB_SAND_MEDIUM;
  const char *name = lb_trial_text (trial, "ground");

  if (!lb_sand_from_name (name, &sand))
    lb_trial_fail (trial, "there is no sand “%s”", name);
  return sand;
}

static void
check_sand_friction (LbTrial *trial)
{
  lb_trial_expect (trial, "friction",
                   lb_sand_friction (sand_of (trial), lb_trial_number (trial, "overburden")));
}

/* Layers of one thickness and kind, a clay growing stronger by a step a layer. */
static void
check_grip (LbTrial *trial)
{
  const guint n_layers = lb_trial_count (trial, "layers");
  const double thickness_m = lb_trial_number (trial, "thickness");
  const gboolean is_clay = g_str_equal (lb_trial_text (trial, "ground"), "clay");
  LbSoilLayer layers[LB_SOIL_LAYERS_MAX] = { 0 };

  g_assert_cmpuint (n_layers, <=, LB_SOIL_LAYERS_MAX);
  for (guint i = 0; i < n_layers; i++)
    layers[i] = (LbSoilLayer){
      .from_m = i * thickness_m,
      .to_m = (i + 1) * thickness_m,
      .soil = is_clay ? LB_SOIL_CLAY : LB_SOIL_SAND,
      .sand = is_clay ? LB_SAND_MEDIUM : sand_of (trial),
      .strength_pa = lb_trial_number (trial, "strength") + i * lb_trial_number (trial, "step"),
      .buoyant_kg_per_m3 = lb_trial_number (trial, "in water"),
    };

  const LbRoot root = {
    .perimeter_m = lb_trial_number (trial, "perimeter"),
    .depth_m = n_layers * thickness_m,
    .layers = layers,
    .n_layers = n_layers,
    .sand_pull = LB_SAND_PULL_USUAL,
    .low_factor = LB_GRIP_LOW_FACTOR,
    .high_factor = LB_GRIP_HIGH_FACTOR,
  };
  g_autoptr (GError) error = NULL;
  LbGrip grip;

  if (!lb_grip_reckon (&root, &grip, &error)) {
    lb_trial_fail (trial, "it is refused: %s", error->message);
    return;
  }
  lb_trial_expect (trial, "first", grip.layer_n[0]);
  lb_trial_expect (trial, "last", grip.layer_n[n_layers - 1]);
  lb_trial_expect (trial, "all", grip.total_n.likely);
}

static void
check_suction (LbTrial *trial)
{
  const gboolean is_soft = g_str_equal (lb_trial_text (trial, "bed"), "soft clay");
  g_autoptr (GError) error = NULL;
  LbRange suction;

  if (!lb_breakout_suction (is_soft ? LB_BED_SOFT_CLAY : LB_BED_MUD,
                            lb_trial_number (trial, "weight"), &suction, &error))
  {
    lb_trial_fail (trial, "it is refused: %s", error->message);
    return;
  }
  lb_trial_expect (trial, "low", suction.low);
  lb_trial_expect (trial, "high", suction.high);
}

static void
check_breakout (LbTrial *trial)
{
  GError *error = NULL;
  LbRange hold = { 0 };
  const gboolean is_accepted = lb_breakout_hold (
    lb_trial_number (trial, "hold"), lb_trial_number (trial, "pull"),
    lb_trial_number (trial, "in the bed"), &hold, &error);

  lb_trial_expect_if (trial, "force", is_accepted, hold.likely, error);
}

const LbCheck LB_CHECKS_GROUND[] = {
  { "clay friction",
    check_clay_friction,
    { LB_GIVEN ("strength", "pressure"), LB_GIVEN ("overburden", "pressure"),
      LB_EXPECTED ("friction", "pressure") } },
  { "sand friction",
    check_sand_friction,
    { LB_GIVEN ("ground", "text"), LB_GIVEN ("overburden", "pressure"),
      LB_EXPECTED ("friction", "pressure") } },
  { "grip",
    check_grip,
    { LB_GIVEN ("ground", "text"), LB_GIVEN ("perimeter", "length"), LB_GIVEN ("layers", "number"),
      LB_GIVEN ("thickness", "length"), LB_GIVEN ("strength", "pressure"),
      LB_GIVEN ("step", "pressure"), LB_GIVEN ("in water", "density"),
      LB_EXPECTED ("first", "force"), LB_EXPECTED ("last", "force"),
      LB_EXPECTED ("all", "force") } },
  { "suction",
    check_suction,
    { LB_GIVEN ("bed", "text"), LB_GIVEN ("weight", "force"), LB_EXPECTED ("low", "force"),
      LB_EXPECTED ("high", "force") } },
  { "breakout",
    check_breakout,
    { LB_GIVEN ("hold", "force"), LB_GIVEN ("pull", "time"), LB_GIVEN ("in the bed", "time"),
      LB_EXPECTED ("force", "force") } },
  { NULL },
};
