/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/csv-text.h"

#include "trade/quantity.h"

#include <math.h>
#include <string.h>

/* A comma belongs before every cell but a row's first; that one is quoted when it is empty, since a
 * row of it alone would look like a blank line. */
static void
add_cell (GString *csv, const char *text, gboolean needs_quotes)
{
  const gboolean is_first = csv->len == 0 || csv->str[csv->len - 1] == '\n';

  if (!is_first)
    g_string_append_c (csv, ',');
  if (!needs_quotes && (*text != '\0' || !is_first)) {
    g_string_append (csv, text);
    return;
  }

  g_string_append_c (csv, '"');
  for (const char *at = text; *at != '\0'; at++) {
    if (*at == '"')
      g_string_append_c (csv, '"');
    g_string_append_c (csv, *at);
  }
  g_string_append_c (csv, '"');
}

void
lb_csv_add_text (GString *csv, const char *text)
{
  g_return_if_fail (csv != NULL);
  g_return_if_fail (text != NULL);

  const gsize length = strlen (text);
  const gboolean is_guarded = length > 0 && strchr ("=+-@\t\r", text[0]) != NULL;
  g_autofree char *guarded = is_guarded ? g_strconcat ("'", text, NULL) : NULL;
  const gboolean has_outer_blank = length > 0 && (g_ascii_isspace (text[0]) ||
                                                  g_ascii_isspace (text[length - 1]));

  add_cell (csv, is_guarded ? guarded : text,
            has_outer_blank || strpbrk (text, ",;\t\"\r\n") != NULL);
}

void
lb_csv_add_number (GString *csv, double value)
{
  g_return_if_fail (csv != NULL);

  if (!isfinite (value)) {
    add_cell (csv, "", FALSE);
    return;
  }

  g_autofree char *text = lb_number_to_text (value, -1, &LB_NUMBER_PLAIN);

  add_cell (csv, text, FALSE);
}

void
lb_csv_end_row (GString *csv)
{
  g_return_if_fail (csv != NULL);

  g_string_append (csv, "\r\n");
}
