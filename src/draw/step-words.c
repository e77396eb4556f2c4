/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/plan-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>

char *
lb_hold_point_text (const LbCutPlan *plan, gsize n_done)
{
  if (plan->hold_missing != NULL || plan->hold.rig_before == 0 ||
      n_done + 1 != plan->hold.rig_before)
    return NULL;
  g_autofree char *bar = lb_figure_text (&LB_VOICE_PLAIN, plan, LB_FIGURE_RIG_BEFORE);
  /* Translators: “Hook tension on before bar 7, the 4th” */
  return g_strdup_printf (_ ("Hook tension on before %s"), bar);
}

static char *
burned_text (const LbCutPlan *plan, gsize n_done)
{
  const guint n = (guint) plan->n_order;
  if (n_done == 0)
    return g_strdup (_ ("As it stands."));
  return g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE, "%u of %u bar burned.", "%u of %u bars burned.", n),
    (guint) n_done, n);
}

/* What they bear. */
static char *
bear_text (const LbVoice *voice, const LbAssumptions *assumptions, const LbBarShares *shares)
{
  if (shares->left == 0)
    return g_strdup (_ ("Nothing but the hook holds the piece."));
  if (shares->is_hinge)
    return g_strdup (_ ("Those left are a hinge: they hold nothing that can be reckoned."));
  g_autofree char *most = lb_voice_quantity (voice, LB_QUANTITY_SHARE, shares->greatest);
  const guint bar = shares->governing + 1u;
  if (!shares->is_held)
    return g_strdup_printf (_ ("Bar %u bears most: %s of what it may."), bar, most);
  g_autofree char *hook = lb_voice_quantity (voice, LB_QUANTITY_SHARE,
                                             assumptions->value[LB_ASSUME_HOOK_SHARE]);
  /* Translators: share of the weight, number of a bar, share of what it may bear. */
  return g_strdup_printf (_ ("With %s on the hook, bar %u bears most: %s of what it may."), hook,
                          bar, most);
}

char *
lb_step_text (const LbVoice *voice,
              const LbAssumptions *assumptions,
              const LbCutPlan *plan,
              const LbBarShares *shares,
              gsize n_done)
{
  g_autofree char *burned = burned_text (plan, n_done);
  g_autofree char *bear = bear_text (voice, assumptions, shares);
  return g_strdup_printf ("%s %s", burned, bear);
}
