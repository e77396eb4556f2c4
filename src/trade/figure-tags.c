/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/figure-basis.h"

typedef struct
{
  const LbPile *pile;
  const LbAssumptions *assumptions;
  guint64 done; /* LbFigureIds, a bit each */
  LbCutPlan *plan;
} Tagging;

/* How weak a tag is: what the job's own people set counts as what is reckoned. */
static LbTag
weaker (LbTag a, LbTag b)
{
  static const int weakness[LB_N_TAGS] = {
    [LB_TAG_STANDARD] = 0,        [LB_TAG_COMPUTED] = 1, [LB_TAG_JOB] = 1,
    [LB_TAG_COMMON_PRACTICE] = 2, [LB_TAG_MEMORY] = 3,
  };

  return weakness[b] > weakness[a] ? b : a;
}

gboolean
lb_assumption_is_learned (const LbCutPlan *plan, LbAssumptionId id)
{
  g_return_val_if_fail (plan, FALSE);

  if (id >= LB_ASSUME_BURN_RATE && id <= LB_ASSUME_BURN_RATE_HIGH)
    return !plan->burn_basis.is_default;
  if (id >= LB_ASSUME_RESTRIKE && id <= LB_ASSUME_RESTRIKE_HIGH)
    return plan->has_learned_restrike;
  if (id >= LB_ASSUME_ROD_TIME && id <= LB_ASSUME_ROD_WASTE_HIGH)
    return plan->has_learned_rods;
  return id == LB_ASSUME_OXYGEN_FLOW && plan->has_learned_oxygen;
}

static void tag_figure (Tagging *tagging, LbFigureId id);

static LbTag
tag_of (Tagging *tagging, LbFigureId id, const LbInput *input)
{
  const LbBar *bar = tagging->pile->bar;

  switch (input->kind) {
  case LB_INPUT_FIGURE:
    tag_figure (tagging, (LbFigureId) input->id);
    return tagging->plan->figures[input->id].tag;
  case LB_INPUT_ASSUMPTION:
    return lb_assumption_is_learned (tagging->plan, (LbAssumptionId) input->id)
             ? LB_TAG_JOB
             : lb_assumptions_tag (tagging->assumptions, (LbAssumptionId) input->id);
  case LB_INPUT_FACT:
    if (lb_figure_widens (id, (LbFact) input->id, tagging->pile))
      return LB_TAG_COMMON_PRACTICE; /* what it may well be */
    return input->id == LB_FACT_BAR && bar != NULL ? bar->tag : LB_TAG_COMPUTED;
  case LB_INPUT_BURNED:
  case LB_INPUT_LESSON:
  case LB_INPUT_VISIBILITY:
  case LB_INPUT_DIVE_TABLE:
  case LB_INPUT_CRANE_CHART:
  case LB_INPUT_GROUND:
  default:
    return LB_TAG_COMPUTED;
  }
}

static void
tag_figure (Tagging *tagging, LbFigureId id)
{
  LbInput inputs[LB_INPUTS_MAX];
  /* Every figure is reckoned from the pile's facts, so none is better than computed. */
  LbTag tag = weaker (LB_TAG_COMPUTED, lb_figure_rule_tag (id));

  if ((tagging->done >> id) & 1)
    return;
  tagging->done |= G_GUINT64_CONSTANT (1) << id;

  const gsize n = lb_figure_inputs_in_play (id, tagging->pile, tagging->assumptions, inputs);

  for (gsize i = 0; i < n; i++)
    tag = weaker (tag, tag_of (tagging, id, &inputs[i]));
  tagging->plan->figures[id].tag = tag;
}

void
lb_figure_tags (const LbPile *pile, const LbAssumptions *assumptions, LbCutPlan *plan)
{
  g_return_if_fail (pile);
  g_return_if_fail (assumptions);
  g_return_if_fail (plan);

  Tagging tagging = { .pile = pile, .assumptions = assumptions, .plan = plan };

  for (int id = 0; id < LB_N_FIGURES; id++)
    tag_figure (&tagging, (LbFigureId) id);
}
