/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/cut-plan.h"

#include <glib.h>

G_BEGIN_DECLS

/* What each figure of a cut plan is made of: formula, inputs, source. The tags of the figures and
 * what is missing for them are told from the same table, and a test turns every input to see that
 * the figure follows it, and nothing that is not named moves it. */

typedef enum {
  LB_INPUT_FACT,       /* of the pile: an LbFact */
  LB_INPUT_BURNED,     /* bars burned so far */
  LB_INPUT_ASSUMPTION, /* an LbAssumptionId */
  LB_INPUT_FIGURE,     /* an LbFigureId */
  LB_INPUT_LESSON,     /* what the job's own dives teach: an LbLesson */
  LB_INPUT_VISIBILITY, /* to plan for */
  LB_INPUT_DIVE_TABLE, /* of no-stop limits */
  LB_INPUT_CRANE_CHART,
  LB_INPUT_GROUND, /* its layers */
} LbInputKind;

typedef enum {
  LB_LESSON_TRIGGER, /* trigger time by area of steel */
  LB_LESSON_RODS,
  LB_LESSON_OXYGEN,
  LB_LESSON_RESTRIKE,
} LbLesson;

#define LB_N_LESSONS (LB_LESSON_RESTRIKE + 1)

typedef struct
{
  LbInputKind kind;
  int id; /* by the kind; 0 where there is but one */
} LbInput;

/* More than any figure has. */
#define LB_INPUTS_MAX 32

const char *lb_figure_formula (LbFigureId id); /* msgid: one plain line */
const char *lb_figure_source (LbFigureId id);  /* msgid: whose rule it is */
const char *lb_figure_section (LbFigureId id); /* the heading of docs/methods.md */
LbTag lb_figure_rule_tag (LbFigureId id);      /* of the formula itself, beside its inputs */

/* What the figure rests on by itself, as it would for any pile. */
gsize lb_figure_inputs (LbFigureId id, LbInput out_inputs[LB_INPUTS_MAX]);

/* The same without what this pile and these assumptions put out of play: the height above the
 * mudline of a pile with a cut elevation of its own, the density of growth where there is none. */
gsize lb_figure_inputs_in_play (LbFigureId id,
                                const LbPile *pile,
                                const LbAssumptions *assumptions,
                                LbInput out_inputs[LB_INPUTS_MAX]);

/* The assumptions that it rests on, itself or through other figures, for any pile; a bit each. */
guint64 lb_figure_assumptions (LbFigureId id);

/* Whether the fact is among those that it cannot do without and the pile lacks it. */
gboolean lb_figure_lacks (LbFigureId id, LbFact fact, const LbPile *pile);

/* Whether the fact is among those that it does without, by spanning what they may well be, and the pile
 * lacks it. */
gboolean lb_figure_widens (LbFigureId id, LbFact fact, const LbPile *pile);

/* The facts that the pile lacks for its cut, or for being drawn whole where that is meant, a bit of
 * 1 << LbFact each. */
guint32 lb_pile_lacks (const LbPile *pile);

/* Whether the job's own record has taken the assumption's place in @plan; it is then no more than
 * where the learning began. */
gboolean lb_assumption_is_learned (const LbCutPlan *plan, LbAssumptionId id);

/* How far each figure of @plan can be trusted: no further than the weakest of what it rests on. */
void lb_figure_tags (const LbPile *pile, const LbAssumptions *assumptions, LbCutPlan *plan);

G_END_DECLS
