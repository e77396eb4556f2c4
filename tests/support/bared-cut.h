/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/bar-layout.h"
#include "trade/burn-order.h"

#include <glib.h>

/* A stub on its bars, with all that its cut points to. */
typedef struct
{
  LbPoint places[LB_BARS_MAX];
  LbStub stub;
  LbCut cut;
  LbBurnCase burn;        /* of all bars, begun on the high side, half the weight on the hook */
  LbBarLayoutKind layout; /* how the bars stand */
  gboolean is_balanced;   /* the middle of all bars is the middle of the pile */
} LbBaredCut;

/* 20 ft of stub, submerged, 1:6, in half a metre a second; #@bar bars of 33 ksi in the usual ring. */
void lb_bared_cut_init (LbBaredCut *cut,
                        LbShape shape,
                        double width_m,
                        guint n_bars,
                        const char *bar);

/* Any shape, hollow and tapered or not, any bars standing in any way, 3 to @n_most of them, any stub and gap. */
void lb_bared_cut_chance (LbBaredCut *cut, GRand *rand, guint n_most);

LbStubLoad lb_bared_cut_load (const LbStub *stub, double hook_share);
