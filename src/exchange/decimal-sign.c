/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/decimal-sign.h"

#include <string.h>

typedef struct
{
  gsize n_points, n_commas;
  gsize n_before; /* digits before the first sign */
  gsize n_after;  /* digits after the last */
  char last;      /* "." or ",", 0 for none */
  gboolean starts_with_zero;
} Number;

/* "1 234": a plain space between groups of digits goes; printed ones the trade reads itself. */
static char *
without_grouping_spaces (const char *text)
{
  GString *plain = g_string_new (NULL);

  for (const char *at = text; *at != '\0'; at++) {
    if (*at == ' ' && at > text && g_ascii_isdigit (at[-1]) && strspn (at + 1, "0123456789") == 3 &&
        at[4] != '/')
      continue;
    g_string_append_c (plain, *at);
  }

  return g_string_free (plain, FALSE);
}

/* Where the number in @text begins, at a digit or sign. */
static const char *
look_at_number (const char *text, Number *out)
{
  const char *start = text + strcspn (text, "0123456789.,");
  const gsize length = strspn (start, "0123456789.,");
  Number number = { .starts_with_zero = *start == '0' };

  for (gsize i = 0; i < length; i++) {
    if (g_ascii_isdigit (start[i])) {
      if (number.last == 0)
        number.n_before++;
      number.n_after++;
      continue;
    }
    number.last = start[i];
    number.n_after = 0;
    if (start[i] == '.')
      number.n_points++;
    else
      number.n_commas++;
  }

  *out = number;
  return start;
}

/* One sign where grouping would set one: 1 to 3 digits before it, three after. */
static gboolean
is_doubtful (const Number *number)
{
  return number->n_points + number->n_commas == 1 && number->n_after == 3 &&
         number->n_before >= 1 && number->n_before <= 3 && !number->starts_with_zero;
}

LbDecimalSign
lb_decimal_sign_look (LbDecimalSign sign, const char *text)
{
  g_autofree char *plain = without_grouping_spaces (text);
  Number number;

  look_at_number (plain, &number);
  if (number.last == 0 || is_doubtful (&number))
    return sign;

  /* With both, or with one alone, the last is the decimal sign; what is repeated groups. */
  gboolean is_comma = number.last == ',';

  if ((is_comma ? number.n_commas : number.n_points) > 1)
    is_comma = !is_comma;

  const LbDecimalSign told = is_comma ? LB_DECIMAL_COMMA : LB_DECIMAL_POINT;

  return sign == LB_DECIMAL_UNTOLD || sign == told ? told : LB_DECIMAL_MIXED;
}

char *
lb_decimal_sign_plain (LbDecimalSign sign, const char *text)
{
  g_autofree char *plain = without_grouping_spaces (text);
  Number number;
  char *start = plain + (look_at_number (plain, &number) - plain);

  if (number.n_points + number.n_commas != 1)
    return g_steal_pointer (&plain);

  char *at = start + number.n_before;

  if (!is_doubtful (&number)) {
    *at = '.';
    return g_steal_pointer (&plain);
  }
  if (sign == LB_DECIMAL_MIXED)
    return NULL;
  /* The trade has its own rule for a doubtful number that nothing explains. */
  if (sign == LB_DECIMAL_UNTOLD)
    return g_steal_pointer (&plain);

  const gboolean is_decimal = (*at == ',') == (sign == LB_DECIMAL_COMMA);

  if (is_decimal)
    *at = '.';
  else
    memmove (at, at + 1, strlen (at));
  return g_steal_pointer (&plain);
}
