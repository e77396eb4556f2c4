/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/assumption.h"
#include "trade/burn-rate.h"
#include "trade/caution-table.h"
#include "trade/crane-here.h"
#include "trade/dive-table.h"
#include "trade/grip.h"
#include "trade/steel.h"
#include "trade/visibility.h"

#include <glib.h>

G_BEGIN_DECLS

/* What the plans of all the piles of one job rest on: its assumptions, and what follows from them
 * whatever the pile, worked out once. Borrows @assumptions, @burn, @table, @ground,
 * @chart and @crew_rows. */
typedef struct
{
  const LbAssumptions *assumptions;
  const LbBurnModel *burn;       /* what the job's own dives teach; NULL before there are any */
  LbVisibility visibility;       /* to plan for */
  gboolean is_visibility_chosen; /* by a person, not the one said last */
  const LbDiveTable *table;      /* the supervisor's own of no-stop limits; NULL for the Navy's */
  const LbGround *ground;        /* NULL where it is not known */
  const LbCraneChart *chart;     /* the crane's; NULL for none */
  LbCraneHere crane;             /* as it is with the barge as the job says that it lies */
  double cylinder_gas_m3;        /* usable of a full cylinder; NAN when its numbers make no sense */
  double yield_pa;               /* of the bars; where nobody says of what time, of the weakest */
  double yield_most_pa; /* of the strongest that they may well be; the same where it is known */
  LbTag yield_tag;
  const LbBar *least_bar, *most_bar; /* what bars of a size that is not known may well be */
  gboolean are_bars_own;             /* the sizes of this job, not those of common practice */
  const LbCautionRow *crew_rows;     /* cautions of the crew's own, beside those built in */
  gsize n_crew_rows;                 /* at most %LB_CAUTION_CREW_ROWS_MAX */
} LbCutBasis;

/* With the Navy's table, without a crane's chart, and no rows of the crew's. */
LbCutBasis lb_cut_basis (const LbAssumptions *assumptions);

/* The least and the largest bars of the job's piles; %NULL twice when none is known. One size alone says
 * little of the others: the usual ones stay beside it. */
void lb_cut_basis_take_bars (LbCutBasis *basis, const LbBar *least, const LbBar *most);

G_END_DECLS
