/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

/* FALSE for what is no day. */
static gboolean
day_parts (guint32 julian_day, GDateYear *out_year, GDateMonth *out_month, GDateDay *out_day)
{
  if (!g_date_valid_julian (julian_day))
    return FALSE;
  GDate date;
  g_date_clear (&date, 1);
  g_date_set_julian (&date, julian_day);
  *out_year = g_date_get_year (&date);
  *out_month = g_date_get_month (&date);
  *out_day = g_date_get_day (&date);
  return TRUE;
}

char *
lb_day_text (guint32 julian_day)
{
  GDateYear year;
  GDateMonth month;
  GDateDay day;
  if (!day_parts (julian_day, &year, &month, &day))
    return g_strdup ("–");
  /* Noon: no time zone's clock change can move it to another day. */
  g_autoptr (GDateTime) noon = g_date_time_new_utc (year, (int) month, day, 12, 0, 0);
  if (noon == NULL)
    return g_strdup ("–");
  /* Translators: weekday, day, month and year, as g_date_time_format() reads it:
   * “Tue 14 Jul 2026”. */
  return g_date_time_format (noon, C_ ("day", "%a %-d %b %Y"));
}

char *
lb_day_iso (guint32 julian_day)
{
  GDateYear year;
  GDateMonth month;
  GDateDay day;
  if (!day_parts (julian_day, &year, &month, &day))
    return g_strdup ("–");
  return g_strdup_printf ("%04u-%02u-%02u", year, (guint) month, day);
}
