/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/shift-words.h"

#include "trade/msgid.h"

/* Common practice: what a crew that burns and pulls piles waits for. */
static const char *const delays[] = {
  N_ ("current"),          N_ ("weather"),          N_ ("visibility"),  N_ ("vessel traffic"),
  N_ ("waiting on crane"), N_ ("waiting on owner"), N_ ("other delay"), NULL,
};

/* The parts of an oxygen-arc outfit that wear out or come loose. */
static const char *const faults[] = {
  N_ ("leak at the collet"),
  N_ ("worn O-ring"),
  N_ ("bad clamp"),
  N_ ("dead switch"),
  N_ ("cable"),
  N_ ("oxygen hose"),
  N_ ("other gear"),
  NULL,
};

static const char *const bearers[] = {
  N_ ("owner"), N_ ("contractor"), N_ ("weather"), N_ ("not settled"), NULL,
};

/* 29 CFR 1910.424 to 427. */
static const char *const modes[] = {
  N_ ("surface-supplied air"), N_ ("scuba"), N_ ("mixed gas"), N_ ("liveboating"), NULL,
};

static const char *const *const lists[LB_N_SHIFT_WORDS] = {
  [LB_WORDS_DELAY] = delays,
  [LB_WORDS_FAULT] = faults,
  [LB_WORDS_BEARER] = bearers,
  [LB_WORDS_DIVE_MODE] = modes,
};

const char *const *
lb_shift_words (LbShiftWords kind)
{
  g_return_val_if_fail (kind < LB_N_SHIFT_WORDS, NULL);

  return lists[kind];
}

gboolean
lb_is_shift_word (LbShiftWords kind, const char *word)
{
  g_return_val_if_fail (kind < LB_N_SHIFT_WORDS, FALSE);
  g_return_val_if_fail (word != NULL, FALSE);

  return g_strv_contains (lists[kind], word);
}
