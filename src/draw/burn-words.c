/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/burn-words.h"

#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>

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
