/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

char *
lb_voice_quantity (const LbVoice *voice, LbQuantity quantity, double si)
{
  g_autofree char *number = lb_voice_quantity_number (voice, quantity, si);
  /* Something that took a little time took some. */
  if (quantity == LB_QUANTITY_TIME && si > 0 && g_str_equal (number, "0"))
    return g_strdup (_ ("under 1 min"));
  return lb_quantity_to_text (quantity, voice->units, si, &voice->numbers);
}

char *
lb_voice_number (const LbVoice *voice, double value, int decimals)
{
  return lb_number_to_text (value, decimals, &voice->numbers);
}

char *
lb_voice_quantity_number (const LbVoice *voice, LbQuantity quantity, double si)
{
  const int decimals = lb_quantity_decimals (quantity, voice->units);
  return lb_voice_number (voice, lb_quantity_from_si (quantity, voice->units, si), decimals);
}

char *
lb_voice_elevation (const LbVoice *voice, double si)
{
  char *const text = lb_voice_quantity (voice, LB_QUANTITY_LENGTH, si);
  if (!isfinite (si) || si <= 0)
    return text;
  char *const shown = g_strconcat ("+", text, NULL);
  g_free (text);
  return shown;
}
