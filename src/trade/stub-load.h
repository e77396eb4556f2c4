/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/outline.h"
#include "trade/tag.h"

#include <glib.h>

G_BEGIN_DECLS

/* The part of a pile above the cut, and what pulls at it. */
typedef struct
{
  LbOutline outline;  /* at the head */
  double cut_width_m; /* at the cut of a tapered pile; 0 for the same */
  double length_m;    /* along the axis, from the cut to the head */
  double lean_rad;    /* of the axis from the vertical */
  double submerged_m; /* of the length, from the cut up; the rest is in air */
  double concrete_kg_per_m3;
  double water_kg_per_m3;
  double growth_m; /* thickness all round, 0 for none */
  double growth_kg_per_m3;
  double current_m_s;      /* across the pile, the same at every depth */
  double drag_coefficient; /* see lb_drag_coefficient() */
  double hook_share;       /* 0 to 1 of the apparent weight, held straight up at the head */
} LbStub;

/* What the cut must carry. The section's +y is the way the pile leans. */
typedef struct
{
  double axial_n;   /* compression is positive */
  double shear_n;   /* of weight and hook, toward +y */
  double moment_nm; /* of weight and hook; positive presses the +y side */
  double drag_n;    /* the current's push, at any bearing */
  double drag_nm;   /* its moment, at any bearing */
} LbStubLoad;

typedef struct
{
  double value; /* on the width across the flats */
  LbTag tag;
  const char *source; /* msgid */
} LbDragCoefficient;

const LbDragCoefficient *lb_drag_coefficient (LbShape shape);

/* kg apparent: the submerged part buoyed, growth counted; a hollow pile is flooded. */
double lb_stub_apparent_mass (const LbStub *stub);

/**
 * lb_stub_load_reckon:
 * @out_load: (out): untouched on failure
 *
 * Forces and moments at the cut by statics (docs/methods.md, "Hold"). Weight acts in two parts,
 * in air and in water, each at its own middle; drag on the submerged length alone. Of a tapered stub
 * each at its own centroid, and drag on the width there is.
 *
 * Returns: %FALSE with %LB_TRADE_ERROR_INCOMPLETE when a number is not known (NAN), with
 *   %LB_TRADE_ERROR_DOMAIN when one makes no sense
 */
gboolean lb_stub_load_reckon (const LbStub *stub, LbStubLoad *out_load, GError **error);

G_END_DECLS
