/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/assumption.h"
#include "trade/range.h"

#include <glib.h>

G_BEGIN_DECLS

/* What burning through some steel takes (docs/methods.md, "Burning"). */
typedef struct
{
  LbRange trigger_s; /* oxygen flowing */
  LbRange wall_s;    /* with strikes and rod changes */
  LbRange rods;      /* whole rods, waste counted */
} LbBurn;

/**
 * lb_burn_reckon:
 * @steel_m2: area of the bars to burn, together
 * @n_bars: how many they are
 *
 * trigger = rate × area; rods = trigger / (rod time × (1 − waste)), rounded up;
 * wall = trigger + restrike × (bars + rods). Zero for no bars.
 */
void lb_burn_reckon (const LbAssumptions *assumptions,
                     double steel_m2,
                     guint n_bars,
                     LbBurn *out_burn);

/* Free gas as at the surface that goes with a trigger time: flow / (1 − waste), since what is wasted
 * of a rod burns oxygen too. The ends go together. */
LbRange lb_burn_stated_oxygen (const LbAssumptions *assumptions, const LbRange *trigger_s);

G_END_DECLS
