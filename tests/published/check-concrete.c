/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "trade/batter.h"
#include "trade/outline.h"
#include "trade/weight.h"

#include <math.h>

static LbOutline
outline_of (LbTrial *trial, const char *width)
{
  LbOutline outline = { .width_m = lb_trial_number (trial, width) };
  const char *name = lb_trial_text (trial, "shape");

  if (!lb_shape_from_name (name, &outline.shape))
    lb_trial_fail (trial, "there is no shape “%s”", name);
  return outline;
}

static void
check_section (LbTrial *trial)
{
  LbOutline outline = outline_of (trial, "width");

  outline.void_m = lb_trial_number (trial, "void");
  lb_trial_expect (trial, "area", lb_outline_area (&outline));
  lb_trial_expect (trial, "inertia", lb_outline_inertia (&outline));
  lb_trial_expect (trial, "perimeter", lb_outline_perimeter (&outline));
}

static void
check_weight_per_length (LbTrial *trial)
{
  const LbPiece piece = {
    .outline = outline_of (trial, "width"),
    .length_m = 1.0,
    .concrete_kg_per_m3 = lb_trial_number (trial, "concrete"),
  };

  lb_trial_expect (trial, "weight", lb_piece_mass_in_air (&piece));
}

static LbPiece
piece_of (LbTrial *trial)
{
  return (LbPiece){
    .outline = outline_of (trial, "width"),
    .length_m = lb_trial_number (trial, "length"),
    .concrete_kg_per_m3 = lb_trial_number (trial, "concrete"),
    .water_kg_per_m3 = lb_trial_number (trial, "water"),
  };
}

static void
check_piece (LbTrial *trial)
{
  const LbPiece piece = piece_of (trial);

  lb_trial_expect (trial, "in air", lb_piece_mass_in_air (&piece));
  lb_trial_expect (trial, "in water", lb_piece_mass_in_water (&piece));
}

/* What the growth alone weighs: the piece with it less the piece without. */
static void
check_growth (LbTrial *trial)
{
  const LbPiece bare = piece_of (trial);
  LbPiece grown = bare;

  grown.growth_m = lb_trial_number (trial, "growth");
  grown.growth_kg_per_m3 = lb_trial_number (trial, "growth density");
  lb_trial_expect (trial, "in air", lb_piece_mass_in_air (&grown) - lb_piece_mass_in_air (&bare));
  lb_trial_expect (trial, "in water",
                   lb_piece_mass_in_water (&grown) - lb_piece_mass_in_water (&bare));
}

static void
check_standing (LbTrial *trial)
{
  const LbPiece piece = piece_of (trial);

  lb_trial_expect (trial, "weight",
                   lb_piece_mass_standing (&piece, lb_trial_number (trial, "submerged")));
}

static void
check_frustum (LbTrial *trial)
{
  LbPiece piece = {
    .outline = outline_of (trial, "width"),
    .far_width_m = lb_trial_number (trial, "tip"),
    .length_m = lb_trial_number (trial, "length"),
    .concrete_kg_per_m3 = 1, /* so that its mass is its volume */
  };

  piece.outline.void_m = lb_trial_number (trial, "void");
  lb_trial_expect (trial, "volume", lb_piece_mass_in_air (&piece));
}

static gboolean
batter_of (LbTrial *trial, double *out_batter)
{
  g_autoptr (GError) error = NULL;

  if (lb_batter_from_text (lb_trial_text (trial, "batter"), out_batter, &error))
    return TRUE;
  lb_trial_fail (trial, "the batter is refused: %s", error->message);
  return FALSE;
}

static void
check_batter (LbTrial *trial)
{
  const double rise_m = lb_trial_number (trial, "rise");
  double batter;

  if (!batter_of (trial, &batter))
    return;

  const LbPoint run = lb_batter_offset (batter, 0.0, rise_m);
  const double length_m = lb_batter_true_length (batter, rise_m);

  lb_trial_expect (trial, "angle", lb_batter_angle (batter));
  lb_trial_expect (trial, "length", length_m);
  lb_trial_expect (trial, "run", hypot (run.x, run.y));
  lb_trial_expect (trial, "sine", hypot (run.x, run.y) / length_m);
  lb_trial_expect (trial, "cosine", rise_m / length_m);
}

static void
check_lean (LbTrial *trial)
{
  double batter;

  if (!batter_of (trial, &batter))
    return;

  const LbPoint offset = lb_batter_offset (batter, lb_trial_number (trial, "bearing"),
                                           lb_trial_number (trial, "rise"));

  lb_trial_expect (trial, "east", offset.x);
  lb_trial_expect (trial, "north", offset.y);
}

#define PIECE                                                                              \
  LB_GIVEN ("shape", "text"), LB_GIVEN ("width", "length"), LB_GIVEN ("length", "length"), \
    LB_GIVEN ("concrete", "density"), LB_GIVEN ("water", "density")

const LbCheck LB_CHECKS_CONCRETE[] = {
  { "section",
    check_section,
    { LB_GIVEN ("shape", "text"), LB_GIVEN ("width", "length"), LB_GIVEN ("void", "length"),
      LB_EXPECTED ("area", "area"), LB_EXPECTED ("inertia", "inertia"),
      LB_EXPECTED ("perimeter", "length") } },
  { "weight per length",
    check_weight_per_length,
    { LB_GIVEN ("shape", "text"), LB_GIVEN ("width", "length"), LB_GIVEN ("concrete", "density"),
      LB_EXPECTED ("weight", "mass per length") } },
  { "piece",
    check_piece,
    { PIECE, LB_EXPECTED ("in air", "mass"), LB_EXPECTED ("in water", "mass") } },
  { "growth",
    check_growth,
    { PIECE, LB_GIVEN ("growth", "length"), LB_GIVEN ("growth density", "density"),
      LB_EXPECTED ("in air", "mass"), LB_EXPECTED ("in water", "mass") } },
  { "standing piece",
    check_standing,
    { PIECE, LB_GIVEN ("submerged", "number"), LB_EXPECTED ("weight", "mass") } },
  { "frustum",
    check_frustum,
    { LB_GIVEN ("shape", "text"), LB_GIVEN ("width", "length"), LB_GIVEN ("tip", "length"),
      LB_GIVEN ("void", "length"), LB_GIVEN ("length", "length"),
      LB_EXPECTED ("volume", "volume") } },
  { "batter",
    check_batter,
    { LB_GIVEN ("batter", "text"), LB_GIVEN ("rise", "length"), LB_EXPECTED ("angle", "angle"),
      LB_EXPECTED ("length", "length"), LB_EXPECTED ("run", "length"),
      LB_EXPECTED ("sine", "number"), LB_EXPECTED ("cosine", "number") } },
  { "lean",
    check_lean,
    { LB_GIVEN ("batter", "text"), LB_GIVEN ("bearing", "angle"), LB_GIVEN ("rise", "length"),
      LB_EXPECTED ("east", "length"), LB_EXPECTED ("north", "length") } },
  { NULL },
};
