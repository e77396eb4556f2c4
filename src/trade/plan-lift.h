/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/cut-plan.h"

G_BEGIN_DECLS

/* Puts what is lifted into a plan that has its shape and depth: the figures from the weight in water
 * on, and @crane, @lengths, @pick_at_m, @whole and @critical. */
void lb_plan_lift_reckon (const LbPile *pile, const LbCutBasis *basis, LbCutPlan *plan);

G_END_DECLS
