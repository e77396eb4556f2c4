/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Which of "." and "," is the decimal sign of a list. A lone "1,234" can be read two ways a
 * thousand apart; the list's other numbers tell which is meant. */
typedef enum {
  LB_DECIMAL_UNTOLD, /* no number in the list tells */
  LB_DECIMAL_POINT,
  LB_DECIMAL_COMMA,
  LB_DECIMAL_MIXED, /* numbers of both kinds: a doubtful one cannot be read */
} LbDecimalSign;

/* What @sign is after @text, a cell that should hold a number, has been looked at too. */
LbDecimalSign lb_decimal_sign_look (LbDecimalSign sign, const char *text);

/**
 * lb_decimal_sign_plain:
 *
 * Returns: (transfer full) (nullable): @text with its number as the trade reads it without doubt;
 *   %NULL when two readings are possible and the list says neither
 */
char *lb_decimal_sign_plain (LbDecimalSign sign, const char *text);

G_END_DECLS
