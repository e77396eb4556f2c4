/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/burn-words.h"

#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

char *
lb_burn_rate_text (const LbVoice *voice, const LbRange *rate)
{
  g_autofree char *likely = lb_voice_quantity (voice, LB_QUANTITY_BURN_RATE, rate->likely);
  g_autofree char *low = lb_voice_quantity_number (voice, LB_QUANTITY_BURN_RATE, rate->low);
  g_autofree char *high = lb_voice_quantity_number (voice, LB_QUANTITY_BURN_RATE, rate->high);

  if (g_str_equal (low, high))
    return g_steal_pointer (&likely);
  return g_strdup_printf ("%s (%s–%s)", likely, low, high);
}

char *
lb_burn_basis_text (const LbBurnBasis *basis)
{
  GString *text = g_string_new (NULL);

  if (basis->is_default) {
    g_string_append (text, _ ("the stated default: no burning with its time is on record yet"));
  } else {
    g_string_append_printf (text, g_dngettext (GETTEXT_PACKAGE, "%u bar", "%u bars", basis->n_bars),
                            basis->n_bars);
    g_string_append_c (text, ' ');
    /* Translators: after “214 bars”: how many times bars were burned at a pile in a shift. */
    g_string_append_printf (
      text, g_dngettext (GETTEXT_PACKAGE, "in %u sample", "in %u samples", basis->n_samples),
      basis->n_samples);
  }
  if (basis->n_outliers > 0)
    g_string_append_printf (text, _ ("; far from the rest: %u"), basis->n_outliers);
  if (basis->n_faults > 0)
    g_string_append_printf (text, _ ("; for half, since gear failed: %u"), basis->n_faults);
  if (basis->n_set_aside > 0)
    g_string_append_printf (text, _ ("; set aside: %u"), basis->n_set_aside);
  if (basis->n_unusable > 0)
    g_string_append_printf (text, _ ("; not usable: %u"), basis->n_unusable);
  return g_string_free (text, FALSE);
}

char *
lb_burn_sample_remark (const LbBurnModel *model, const LbBurnSample *sample)
{
  if (sample->is_set_aside)
    return g_strdup_printf (_ ("set aside: %s"), sample->reason);
  if (!lb_burn_sample_is_used (sample))
    return g_strdup (sample->n_bars == 0   ? _ ("not used: no bar is on record")
                     : sample->bar == NULL ? _ ("not used: the bar size is not known")
                                           : _ ("not used: the trigger time is not known"));

  const char *fault = sample->has_fault ? _ ("gear fault in that shift: counts for half") : NULL;
  const char *odd = lb_burn_model_is_outlier (model, sample) ? _ ("far from the rest") : NULL;

  if (fault != NULL && odd != NULL)
    return g_strdup_printf ("%s; %s", odd, fault);
  return g_strdup (fault != NULL ? fault : odd != NULL ? odd : "");
}

/* "62 (51–76)" */
static char *
spread_text (const LbVoice *voice, const LbRange *range, double unit)
{
  g_autofree char *likely = lb_voice_number (voice, range->likely / unit, 0);
  g_autofree char *low = lb_voice_number (voice, range->low / unit, 0);
  g_autofree char *high = lb_voice_number (voice, range->high / unit, 0);

  if (g_str_equal (low, high))
    return g_steal_pointer (&likely);
  return g_strdup_printf ("%s (%s–%s)", likely, low, high);
}

/* "14,300 cu ft (11,900–17,200)" */
static char *
gas_text (const LbVoice *voice, const LbRange *range)
{
  g_autofree char *likely = lb_voice_quantity (voice, LB_QUANTITY_GAS, range->likely);
  g_autofree char *low = lb_voice_quantity_number (voice, LB_QUANTITY_GAS, range->low);
  g_autofree char *high = lb_voice_quantity_number (voice, LB_QUANTITY_GAS, range->high);

  return g_strdup_printf ("%s (%s–%s)", likely, low, high);
}

static void
append_not_in_it (GString *text, const LbBurnLeft *left)
{
  if (left->n_unknown > 0)
    g_string_append_printf (
      text,
      g_dngettext (GETTEXT_PACKAGE, "; %u pile not counted: its bars are not known",
                   "; %u piles not counted: their bars are not known", left->n_unknown),
      left->n_unknown);
  if (left->n_no_depth > 0)
    g_string_append_printf (
      text,
      g_dngettext (GETTEXT_PACKAGE, "; %u pile of unknown depth, taken as deep as the others",
                   "; %u piles of unknown depth, taken as deep as the others", left->n_no_depth),
      left->n_no_depth);
}

char *
lb_burn_left_text (const LbVoice *voice, const LbBurnLeft *left, const LbBurnNeed *need)
{
  GString *text = g_string_new (NULL);

  if (left->n_piles == 0) {
    g_string_append (text, _ ("Left to burn: nothing that is known"));
    append_not_in_it (text, left);
    return g_string_free (text, FALSE);
  }

  g_autofree char *hours = spread_text (voice, &need->burn.wall_s, 3600);
  g_autofree char *rods = spread_text (voice, &need->burn.rods, 1);
  g_autofree char *oxygen = gas_text (voice, &need->oxygen_m3);

  g_string_append_printf (text,
                          g_dngettext (GETTEXT_PACKAGE, "Left to burn: %u bar at %u piles",
                                       "Left to burn: %u bars at %u piles", left->sum.n_bars),
                          left->sum.n_bars, left->n_piles);
  /* Translators: hours, rods and gas, each with its P10 and P90. */
  g_string_append_printf (text, _ (" · hours at the piles: %s · rods: %s · oxygen: %s"), hours,
                          rods, oxygen);
  if (!isnan (need->cylinders.likely)) {
    g_autofree char *cylinders = spread_text (voice, &need->cylinders, 1);

    g_string_append_printf (text, _ (" · cylinders: %s"), cylinders);
  }
  append_not_in_it (text, left);
  return g_string_free (text, FALSE);
}
