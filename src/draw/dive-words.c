/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dive-words.h"

#include "draw/plan-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* What the diver brings to the dive. */
static char *
group_text (const LbDiveLeft *left, const char *clock)
{
  if (left->is_one_dive)
    /* Translators: a time of day; the diver was up for less than ten minutes. */
    return g_strdup_printf (_ ("still the same dive at %s"), clock);
  if (left->group == 0)
    return g_strdup_printf (_ ("in no group at %s"), clock);
  /* Translators: letter of the repetitive group, time of day. */
  return g_strdup_printf (_ ("group %c at %s"), left->group, clock);
}

static char *
open_text (const LbVoice *voice, const LbDiveLeft *left, double depth_m)
{
  g_autofree char *depth = lb_voice_quantity (voice, LB_QUANTITY_LENGTH, depth_m);

  if (isinf (left->open_s))
    return g_strdup_printf (_ ("no limit at %s"), depth);
  if (left->open_s <= 0)
    return g_strdup_printf (_ ("nothing open without stops at %s"), depth);

  g_autofree char *open = lb_voice_quantity (voice, LB_QUANTITY_TIME, left->open_s);

  /* Translators: bottom time, depth as it will be read on the pneumofathometer. */
  return g_strdup_printf (_ ("open without stops: %s at %s"), open, depth);
}

char *
lb_dive_left_text (const LbVoice *voice, const LbDiveLeft *left, double depth_m, gint64 at_us)
{
  g_return_val_if_fail (voice != NULL, NULL);
  g_return_val_if_fail (left != NULL, NULL);

  if (left->state != LB_DIVE_LEFT_KNOWN)
    return g_strdup (g_dgettext (GETTEXT_PACKAGE, lb_dive_left_reason (left->state)));

  g_autofree char *clock = lb_clock_text (at_us);
  g_autofree char *group = group_text (left, clock);
  g_autofree char *open = open_text (voice, left, depth_m);

  return g_strdup_printf ("%s · %s", group, open);
}

char *
lb_bottom_time_text (const LbDiveLeft *left, double bottom_s)
{
  g_return_val_if_fail (left != NULL && left->state == LB_DIVE_LEFT_KNOWN, NULL);

  const double earlier_s = left->residual_s + left->spent_s;
  g_autofree char *spent = earlier_s > 0
                             ? g_strdup_printf ("%.0f + %.0f", bottom_s / 60, earlier_s / 60)
                             : g_strdup_printf ("%.0f", bottom_s / 60);

  return g_strdup_printf (bottom_s > left->open_s
                            /* Translators: bottom time, with what earlier dives count, and the
                             * no-stop limit, in minutes: “52 + 85”, “163”. */
                            ? _ ("%s min: PAST the limit of %.0f")
                            : _ ("%s of %.0f min"),
                          spent, left->limit_s / 60);
}

gboolean
lb_dive_is_compared (const LbDiveAccount *account)
{
  g_return_val_if_fail (account != NULL, FALSE);

  return account->has_limit && !isnan (account->bottom_s) && isfinite (account->left.limit_s);
}

char *
lb_dive_compared_text (const LbDiveAccount *account)
{
  g_return_val_if_fail (account != NULL, NULL);

  if (lb_dive_is_compared (account))
    return lb_bottom_time_text (&account->left, account->bottom_s);
  if (account->has_limit && isinf (account->left.limit_s))
    return g_strdup (_ ("no limit at this depth"));
  return g_strdup (_ ("no limit to compare with"));
}

const char *
lb_dive_compared_note (const LbDiveAccount *account)
{
  if (!lb_dive_is_compared (account) || account->state == LB_DIVE_LEFT_KNOWN)
    return NULL;
  return g_dgettext (GETTEXT_PACKAGE, lb_dive_left_reason (account->state));
}
