/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/cut-basis.h"
#include "trade/cut-plan.h"

#include <glib.h>

G_BEGIN_DECLS

/* The order to burn as a timetable: each bar's minutes, what has run up, which dive and which
 * cylinder it is burned from (docs/methods.md, "Steps of the cut"). */
typedef struct
{
  guint8 bar;
  double takes_s;            /* at the pile, its share of the whole; NAN when not known */
  double total_s;            /* from the first bar to the end of this one */
  guint dive;                /* from 1; 0 when no dive is needed or no limit is known */
  guint cylinder;            /* the one on line when it is through, from 1; 0 when not known */
  gboolean starts_dive;      /* the diver comes up before this bar */
  gboolean changes_cylinder; /* before it is through */
  gboolean needs_hook;       /* hook tension on before this bar: the first that needs it */
} LbCutStep;

typedef struct
{
  LbCutStep steps[LB_BARS_MAX];
  gsize n_steps;
  guint n_dives; /* of whole bars: one is never left half burned; 0 when not known or dry */
} LbCutSteps;

/**
 * lb_cut_steps_reckon:
 *
 * Returns: %FALSE with no steps when there is no order to burn: bars not known or none left, strand,
 *   or bars burned of which only the count is known
 */
gboolean lb_cut_steps_reckon (const LbPile *pile,
                              const LbCutBasis *basis,
                              const LbCutPlan *plan,
                              LbCutSteps *out_steps);

G_END_DECLS
