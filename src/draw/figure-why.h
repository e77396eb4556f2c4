/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/picture-text.h"
#include "trade/cut-plan.h"

G_BEGIN_DECLS

/* What the reason of a figure is made from. Returned strings are to be freed. */
typedef struct
{
  const LbVoice *voice;
  const LbPile *pile;
  const LbAssumptions *assumptions;
  const LbCutPlan *plan;
} LbWhy;

char *lb_why_say (const LbWhy *why, LbQuantity quantity, double si);
char *lb_why_say_assumed (const LbWhy *why, LbAssumptionId id);
char *lb_why_say_figure (const LbWhy *why, LbFigureId id);

G_END_DECLS
