/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

char *
lb_day_format (guint32 julian_day, const char *format)
{
  if (!g_date_valid_julian (julian_day))
    return g_strdup ("–");
  GDate date;
  g_date_clear (&date, 1);
  g_date_set_julian (&date, julian_day);
  /* Noon: no time zone's clock change can move it to another day. */
  g_autoptr (GDateTime) noon = g_date_time_new_utc (
    g_date_get_year (&date), (int) g_date_get_month (&date), g_date_get_day (&date), 12, 0, 0);
  return noon != NULL ? g_date_time_format (noon, format) : g_strdup ("–");
}

char *
lb_day_text (guint32 julian_day)
{
  /* Translators: weekday, day, month and year, as g_date_time_format() reads it:
   * “Tue 14 Jul 2026”. */
  return lb_day_format (julian_day, C_ ("day", "%a %-d %b %Y"));
}

char *
lb_day_iso (guint32 julian_day)
{
  return lb_day_format (julian_day, "%Y-%m-%d");
}

char *
lb_clock_text (gint64 us)
{
  g_autoptr (GDateTime) time = us != 0 ? g_date_time_new_from_unix_local (us / G_USEC_PER_SEC)
                                       : NULL;
  return time != NULL ? g_date_time_format (time, "%H:%M") : g_strdup ("–");
}

char *
lb_moment_text (gint64 us)
{
  g_autoptr (GDateTime) utc = g_date_time_new_from_unix_utc (us / G_USEC_PER_SEC);
  g_autoptr (GDateTime) local = g_date_time_to_local (utc);
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_dmy (&date, (GDateDay) g_date_time_get_day_of_month (local),
                  (GDateMonth) g_date_time_get_month (local),
                  (GDateYear) g_date_time_get_year (local));

  g_autofree char *day = lb_day_text (g_date_get_julian (&date));
  g_autofree char *clock = lb_clock_text (us);
  return g_strdup_printf ("%s, %s", day, clock);
}

char *
lb_shift_text (const LbShift *shift)
{
  g_autofree char *day = lb_day_text (shift->day);

  return g_strdup_printf (g_str_equal (shift->watch, "night")
                            /* Translators: a day; which watch. */
                            ? _ ("%s, night")
                            : _ ("%s, day"),
                          day);
}
