/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/cut-plan.h"

#include <glib.h>

G_BEGIN_DECLS

/* Whether a condition of the table of cautions holds for this cut. Whenever it does, each figure that
 * lb_caution_when_knows() promises is known. */
gboolean lb_plan_caution_holds (LbCautionWhen when,
                                const LbPile *pile,
                                const LbAssumptions *assumptions,
                                const LbCutPlan *plan);

/**
 * lb_plan_cautions_gather:
 * @plan: (inout): with all its figures; its cautions are put in, see there for their order
 */
void lb_plan_cautions_gather (const LbPile *pile, const LbCutBasis *basis, LbCutPlan *plan);

/* What the words' blanks need beyond the figures. */

/* The bar before which the hook must hold, from 0; one must be reckoned. */
guint lb_plan_hook_bar (const LbCutPlan *plan);

/* The longest dive, s: the no-stop limit or the job's own, whichever is shorter; NAN when no limit can
 * be read. */
double lb_plan_longest_dive (const LbCutPlan *plan, const LbAssumptions *assumptions);

G_END_DECLS
