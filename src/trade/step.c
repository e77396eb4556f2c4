/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/step.h"

#include "trade/msgid.h"

static const char *const names[LB_N_STEPS] = {
  [LB_STEP_STANDING] = N_ ("standing"), [LB_STEP_CLEANED] = N_ ("cleaned"),
  [LB_STEP_SEVERED] = N_ ("severed"),   [LB_STEP_RIGGED] = N_ ("rigged"),
  [LB_STEP_PULLED] = N_ ("pulled"),
};

const char *
lb_step_name (LbStep step)
{
  g_return_val_if_fail (step < LB_N_STEPS, NULL);

  return names[step];
}

gboolean
lb_step_from_name (const char *name, LbStep *out_step)
{
  g_return_val_if_fail (name, FALSE);
  g_return_val_if_fail (out_step, FALSE);

  const gboolean is_letter = name[0] != '\0' && name[1] == '\0';

  for (int step = 0; step < LB_N_STEPS; step++) {
    /* Standing has no letter: it is what a pile is before anything is recorded, and "s" is
     * wanted for severed. */
    const gboolean is_it = is_letter ? step != LB_STEP_STANDING &&
                                         g_ascii_tolower (name[0]) == names[step][0]
                                     : g_ascii_strcasecmp (name, names[step]) == 0;

    if (is_it) {
      *out_step = (LbStep) step;
      return TRUE;
    }
  }
  return FALSE;
}

LbStep
lb_step_furthest (LbStepSet done)
{
  for (int step = LB_STEP_PULLED; step > LB_STEP_STANDING; step--) {
    if (done & LB_STEP_BIT (step))
      return (LbStep) step;
  }
  return LB_STEP_STANDING;
}
