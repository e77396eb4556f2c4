/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/voice-text.h"

#include <math.h>

char *
lb_voice_quantity (const LbVoice *voice, LbQuantity quantity, double si)
{
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
