/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cautions in words: an order, then why, with the pile's own figures and sides in it. Where a
 * number could be relied on, the sentence names who decides. Which cautions hold for a cut, and
 * how grave each is, is said in trade/caution. */
#include "draw/plan-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const char *
side (LbCompass compass)
{
  return g_dgettext (GETTEXT_PACKAGE, lb_compass_name (compass));
}

static char *
slag_side_text (const LbCutPlan *plan)
{
  if (!plan->is_battered)
    return g_strdup (_ ("Keep umbilical and leads out from under the cut: slag falls straight "
                        "down."));
  return g_strdup_printf (_ ("Umbilical and leads to the %s: slag falls %s, under the lean."),
                          side (plan->lead_side), side (plan->slag_side));
}

/* What the figures say of when; the rigger and the engineer stand above it. */
static char *
hold_text (const LbVoice *voice, const LbCutPlan *plan)
{
  g_autofree char *bar = lb_figure_text (voice, plan, LB_FIGURE_RIG_BEFORE);
  if (!plan->hold.stands)
    return g_strdup (_ ("Hook tension on before the first bar: the bars alone do not hold the stub "
                        "with the factor on them. The licensed engineer and the competent rigger "
                        "decide."));
  /* Translators: “bar 7, the 4th”. */
  return g_strdup_printf (_ ("Hook tension on before %s: the bars left then do not hold the stub "
                             "with the factor on them. The competent rigger decides."),
                          bar);
}

static char *
rig_first_text (const LbVoice *voice, const LbCutPlan *plan)
{
  if (plan->hold_missing == NULL && plan->n_order > 0)
    return hold_text (voice, plan);
  g_autofree char *lean = lb_figure_text (voice, plan, LB_FIGURE_LEAN);
  return g_strdup_printf (_ ("Leans %s to the %s: hook tension on before the last bars. The "
                             "competent rigger says when to burn them."),
                          lean, side (plan->slag_side));
}

static char *
past_limit_text (const LbVoice *voice, const LbCutPlan *plan)
{
  g_autofree char *burn = lb_figure_text (voice, plan, LB_FIGURE_BURN);
  g_autofree char *limit = lb_figure_text (voice, plan, LB_FIGURE_NO_STOP);
  const double n_dives = plan->figures[LB_FIGURE_DIVES].range.likely;
  if (!isfinite (n_dives) || n_dives < 2)
    return g_strdup_printf (_ ("Don’t finish in one dive: %s at the pile against a no-stop limit "
                               "of %s. The diving supervisor sets the bottom time."),
                            burn, limit);
  const gulong n = (gulong) n_dives;
  return g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE,
                 "Plan %lu dive: %s at the pile, no-stop limit %s. The diving supervisor sets "
                 "the bottom time.",
                 "Plan %lu dives: %s at the pile, no-stop limit %s. The diving supervisor sets "
                 "the bottom time of each.",
                 n),
    n, burn, limit);
}

static char *
void_gas_text (const LbVoice *voice, const LbPile *pile)
{
  g_autofree char *hole = lb_voice_quantity (voice, LB_QUANTITY_SIZE, pile->outline.void_m);
  return g_strdup_printf (_ ("Vent the %s void above the cut and let it flood before burning: "
                             "oxygen and hydrogen trapped in it explode."),
                          hole);
}

static char *
strand_text (const LbPile *pile)
{
  if (pile->bar == NULL)
    return g_strdup (_ ("Stand clear of the line of every strand: stressed strand whips when cut. "
                        "A licensed engineer says in what order."));
  return g_strdup_printf (_ ("Stand clear of the line of every strand: stressed %s whips when "
                             "cut. A licensed engineer says in what order."),
                          pile->bar->name);
}

static char *
submerged_lift_text (const LbVoice *voice, const LbCutPlan *plan)
{
  if (isnan (plan->figures[LB_FIGURE_HOOK_LOAD].range.likely))
    return g_strdup (_ ("Lift only on a critical-lift plan: the load is under water and its "
                        "weight is not known. The competent rigger signs it."));
  g_autofree char *load = lb_figure_text (voice, plan, LB_FIGURE_HOOK_LOAD);
  return g_strdup_printf (_ ("Lift only on a critical-lift plan: the load is under water, %s at "
                             "the hook by estimate. The competent rigger signs it."),
                          load);
}

char *
lb_caution_text (const LbVoice *voice, const LbPile *pile, const LbCutPlan *plan, LbCaution caution)
{
  switch (caution) {
  case LB_CAUTION_STRAND:
    return strand_text (pile);
  case LB_CAUTION_BARS_UNKNOWN:
    return g_strdup (_ ("Find and count the bars before burning: none are on record. Tell the "
                        "diving supervisor what is there."));
  case LB_CAUTION_SLAG_SIDE:
    return slag_side_text (plan);
  case LB_CAUTION_UNDER_LEAN:
    return g_strdup_printf (_ ("Stay out from under the lean: never work on the %s side."),
                            side (plan->slag_side));
  case LB_CAUTION_RIG_FIRST:
    return rig_first_text (voice, plan);
  case LB_CAUTION_PAST_LIMIT:
    return past_limit_text (voice, plan);
  case LB_CAUTION_LIMIT_UNKNOWN:
    return g_strdup (_ ("Don’t dive on this card’s times: no no-stop limit can be read for this "
                        "cut. The diving supervisor sets the bottom time."));
  case LB_CAUTION_VOID_GAS:
    return void_gas_text (voice, pile);
  case LB_CAUTION_SWITCH_OPEN:
    return g_strdup (_ ("Switch open except while the diver burns; open it and have it confirmed "
                        "before a rod is changed."));
  case LB_CAUTION_CLAMP:
    return g_strdup (_ ("Clamp on bright steel in front of the diver, and move it along. Never "
                        "get between rod and clamp."));
  case LB_CAUTION_GLOVES:
    return g_strdup (_ ("Rubber gloves whole, dry inside and secured at the wrist before the "
                        "torch is touched."));
  case LB_CAUTION_BUBBLE_TEST:
    return g_strdup (_ ("Prove straight polarity before the dive: in the water, the bubbles must "
                        "come off the rod, not off the clamp."));
  case LB_CAUTION_GAS_TRAPS:
    return g_strdup (_ ("Open every gas trap before burning: loose cover, cracks, growth, under "
                        "the cap. Burn from the highest point down."));
  case LB_CAUTION_SUBMERGED_LIFT:
    return submerged_lift_text (voice, plan);
  case LB_CAUTION_SUPERVISOR:
    return g_strdup (_ ("Follow the diving supervisor: their word and their own table stand above "
                        "every figure here."));
  }
  g_assert_not_reached ();
}
