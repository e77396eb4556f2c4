/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The words that a shift's record offers. They stand in the file in English, whatever the screen
 * speaks, and each is a msgid; anybody may say another word instead. */
typedef enum {
  LB_WORDS_DELAY,     /* causes of a delay */
  LB_WORDS_FAULT,     /* gear that fails */
  LB_WORDS_BEARER,    /* who bears a delay */
  LB_WORDS_DIVE_MODE, /* how the diver breathes */
} LbShiftWords;

#define LB_N_SHIFT_WORDS (LB_WORDS_DIVE_MODE + 1)

/* NULL-terminated. */
const char *const *lb_shift_words (LbShiftWords kind);

/* Whether @word is one of them, to be shown translated. */
gboolean lb_is_shift_word (LbShiftWords kind, const char *word);

G_END_DECLS
