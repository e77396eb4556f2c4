/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/figure-why.h"

G_BEGIN_DECLS

/* What figure-words says of the figures of the lift. Returned strings are to be freed. */

/* "yes, by 2 rules" */
char *lb_critical_text (const LbCutPlan *plan);

/* The reason of one that is known. */
char *lb_lift_why (const LbWhy *why, LbFigureId id);

/* Why one is not known; %NULL when it is not of the lift, or nothing of the lift is the reason. */
char *lb_lift_why_not (const LbWhy *why, LbFigureId id);

G_END_DECLS
