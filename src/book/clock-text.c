/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/clock-text.h"

#include "book/book-error.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static gboolean
read_digits (const char *text, gsize n, int most, int *out_value)
{
  int value = 0;

  if (n == 0 || n > 2)
    return FALSE;
  for (gsize i = 0; i < n; i++) {
    if (!g_ascii_isdigit (text[i]))
      return FALSE;
    value = value * 10 + (text[i] - '0');
  }
  *out_value = value;

  return value <= most;
}

static gboolean
read_clock (const char *text, int *out_hour, int *out_minute)
{
  const char *colon = strchr (text, ':');
  const gsize length = strlen (text);

  if (colon != NULL)
    return strlen (colon + 1) == 2 && read_digits (text, (gsize) (colon - text), 23, out_hour) &&
           read_digits (colon + 1, 2, 59, out_minute);

  return (length == 3 || length == 4) && read_digits (text, length - 2, 23, out_hour) &&
         read_digits (text + length - 2, 2, 59, out_minute);
}

gboolean
lb_clock_from_text (const LbShift *shift, const char *text, gint64 *out_us, GError **error)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  g_autoptr (GDateTime) time = NULL;
  GDate date;
  int hour, minute;

  if (!read_clock (stripped, &hour, &minute)) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("“%s” is not a time of day; write it as 07:10"), text);
    return FALSE;
  }

  g_date_clear (&date, 1);
  g_date_set_julian (&date, shift->day);
  if (g_str_equal (shift->watch, "night") && hour < 12)
    g_date_add_days (&date, 1);
  time = g_date_time_new_local (g_date_get_year (&date), g_date_get_month (&date),
                                g_date_get_day (&date), hour, minute, 0);
  if (time == NULL) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, _ ("“%s” does not exist on that day"),
                 text);
    return FALSE;
  }
  *out_us = g_date_time_to_unix (time) * G_USEC_PER_SEC;

  return TRUE;
}

char *
lb_clock_to_text (gint64 us)
{
  g_autoptr (GDateTime) time = NULL;

  if (us == 0)
    return g_strdup ("");
  time = g_date_time_new_from_unix_local (us / G_USEC_PER_SEC);

  return g_date_time_format (time, "%H:%M");
}

guint32
lb_clock_today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_dmy (&date, (GDateDay) g_date_time_get_day_of_month (now),
                  (GDateMonth) g_date_time_get_month (now), (GDateYear) g_date_time_get_year (now));

  return g_date_get_julian (&date);
}
