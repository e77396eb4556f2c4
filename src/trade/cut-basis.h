/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/assumption.h"
#include "trade/burn-rate.h"
#include "trade/steel.h"

#include <glib.h>

G_BEGIN_DECLS

/* What the plans of all the piles of one job rest on: its assumptions, and what follows from them
 * whatever the pile, worked out once. Borrows @assumptions and @burn. */
typedef struct
{
  const LbAssumptions *assumptions;
  const LbBurnModel *burn; /* what the job's own dives teach; NULL before there are any */
  double cylinder_gas_m3;  /* usable of a full cylinder; NAN when its numbers make no sense */
  double yield_pa;         /* of the bars */
  LbTag yield_tag;
} LbCutBasis;

LbCutBasis lb_cut_basis (const LbAssumptions *assumptions);

G_END_DECLS
