/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/angle-form.h"

#include "trade/quantity.h"

#include <string.h>

/* What stands between degrees, minutes and seconds, and after them; surveyors write any of these. */
static gsize
skip_marks (const char *at)
{
  static const char *const marks[] = {
    " ", "-", "'", "\"", "°", "′", "″", "’", "”", "d", "m", "s"
  };
  gsize length = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (marks);) {
    if (g_str_has_prefix (at + length, marks[i])) {
      length += strlen (marks[i]);
      i = 0;
    } else {
      i++;
    }
  }

  return length;
}

/* Whole digits, and for the last part decimals. */
static gsize
number_length (const char *at)
{
  const gsize n_whole = strspn (at, "0123456789");

  return n_whole > 0 && at[n_whole] == '.' ? n_whole + 1 + strspn (at + n_whole + 1, "0123456789")
                                           : n_whole;
}

char *
lb_angle_form_plain (const char *text)
{
  g_return_val_if_fail (text != NULL, NULL);

  const gsize n_head = strcspn (text, "0123456789");
  const char *at = text + n_head;
  double parts[3] = { 0 };
  gsize n_parts = 0;

  while (n_parts < G_N_ELEMENTS (parts) && g_ascii_isdigit (*at)) {
    parts[n_parts++] = g_ascii_strtod (at, NULL);
    at += number_length (at);
    at += skip_marks (at);
  }
  /* What is left may only be the quadrant's second letter. */
  if (n_parts < 2 || parts[1] >= 60 || parts[2] >= 60 || strpbrk (at, "0123456789") != NULL)
    return g_strdup (text);

  g_autofree char *head = g_strndup (text, n_head);
  g_autofree char *degrees = lb_number_to_text (parts[0] + parts[1] / 60 + parts[2] / 3600, 10,
                                                &LB_NUMBER_PLAIN);

  return g_strconcat (head, degrees, at, NULL);
}
