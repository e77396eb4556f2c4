/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lean and bearing: the geometry of a raked pile, and the ways people write it.
 *
 * A batter is run per rise, so offsets are products and the true length is a root; angles are
 * made only to be shown. Texts are read without a locale; both decimal signs are taken.
 *
 * Invariants:
 * 1. A batter that was read lies in 0 to 1, a bearing in 0 to 2π, the full turn left out.
 * 2. Nothing is written to an out-value on failure.
 */
#include "trade/batter.h"

#include "trade/msgid.h"
#include "trade/quantity.h"
#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

#define FULL_TURN (2 * G_PI)
/* tan 45° is a hair under 1 in doubles, and 1:1 is allowed. */
#define STEEPEST (1 + 1e-9)
#define N_POINTS 16

double
lb_batter_angle (double batter)
{
  return atan (batter);
}

double
lb_batter_true_length (double batter, double rise_m)
{
  return rise_m * sqrt (1 + batter * batter);
}

LbPoint
lb_batter_offset (double batter, double bearing_rad, double rise_m)
{
  const double run = batter * rise_m;

  return (LbPoint){ .x = run * sin (bearing_rad), .y = run * cos (bearing_rad) };
}

/* A plain number of either decimal sign; metric, where a comma never groups. */
static gboolean
read_number (const char *text, double *out_value)
{
  return lb_quantity_from_text (LB_QUANTITY_COUNT, LB_UNITS_METRIC, text, out_value, NULL);
}

static gboolean
is_degrees (const char *text)
{
  return g_str_has_suffix (text, "°") || g_str_has_suffix (text, "deg") ||
         g_str_has_suffix (text, "degrees");
}

static gboolean
read_batter (const char *text, double *out_batter)
{
  const char *colon = strchr (text, ':');
  double value;

  if (text[0] == '\0' || g_str_equal (text, "plumb") || g_str_equal (text, "vertical")) {
    *out_batter = 0;
    return TRUE;
  }

  if (colon) {
    g_autofree char *run_text = g_strndup (text, (gsize) (colon - text));
    double run, rise;

    if (!read_number (run_text, &run) || !read_number (colon + 1, &rise) || rise <= 0)
      return FALSE;
    *out_batter = run / rise;
    return TRUE;
  }

  if (is_degrees (text)) {
    if (!lb_quantity_from_text (LB_QUANTITY_ANGLE, LB_UNITS_METRIC, text, &value, NULL) ||
        fabs (value) >= G_PI_2)
      return FALSE;
    *out_batter = tan (value);
    return TRUE;
  }

  if (!read_number (text, &value))
    return FALSE;
  /* Between 0 and 2 it could be a run, a rise or degrees: it has to say which. */
  if (fabs (value) > 0 && value < 2)
    return FALSE;
  *out_batter = value > 0 ? 1 / value : 0;
  return TRUE;
}

gboolean
lb_batter_from_text (const char *text, double *out_batter, GError **error)
{
  g_return_val_if_fail (text, FALSE);
  g_return_val_if_fail (out_batter, FALSE);

  g_autofree char *lower = g_ascii_strdown (text, -1);
  double batter;

  g_strstrip (lower);
  if (!read_batter (lower, &batter)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "“%s” is not a batter: write it as 1:6, 9.5° or plumb", text);
    return FALSE;
  }
  if (!(batter >= 0 && batter <= STEEPEST)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "The batter “%s” leans more than 1:1 or the wrong way: "
                 "write it from the vertical, between plumb and 1:1",
                 text);
    return FALSE;
  }

  *out_batter = batter;
  return TRUE;
}

char *
lb_batter_to_text (double batter)
{
  if (isnan (batter))
    return lb_number_to_text (batter, 0, &LB_NUMBER_PLAIN);
  if (!(batter > 0))
    return g_strdup ("plumb");

  /* A tenth of a percent of the rise is finer than a batter board is set. */
  g_autofree char *rise = lb_number_to_text (1 / batter, 3, &LB_NUMBER_PLAIN);

  return g_strconcat ("1:", rise, NULL);
}

/* The points of the compass, an eighth of a right angle apart in pairs. */
static const char *const points[N_POINTS] = { "N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE",
                                              "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW" };

/* Upper case, words made letters, without spaces or hyphens: "north-east" is "NE". */
static char *
bearing_letters (const char *text)
{
  static const struct
  {
    const char *word;
    char letter;
  } words[] = { { "NORTH", 'N' }, { "SOUTH", 'S' }, { "EAST", 'E' }, { "WEST", 'W' } };
  g_autofree char *upper = g_ascii_strup (text, -1);
  GString *letters = g_string_new (NULL);

  for (const char *at = upper; *at != '\0';) {
    gboolean is_word = FALSE;

    for (gsize i = 0; i < G_N_ELEMENTS (words) && !is_word; i++) {
      if (g_str_has_prefix (at, words[i].word)) {
        g_string_append_c (letters, words[i].letter);
        at += strlen (words[i].word);
        is_word = TRUE;
      }
    }
    if (is_word)
      continue;
    if (*at != ' ' && *at != '-')
      g_string_append_c (letters, *at);
    at++;
  }
  return g_string_free (letters, FALSE);
}

static gboolean
read_point (const char *letters, double *out_rad)
{
  for (int i = 0; i < N_POINTS; i++) {
    if (g_str_equal (letters, points[i])) {
      *out_rad = FULL_TURN * i / N_POINTS;
      return TRUE;
    }
  }
  return FALSE;
}

/* "N45E": from north or south, so many degrees toward east or west. */
static gboolean
read_quadrant (const char *letters, double *out_rad)
{
  const gsize length = strlen (letters);

  if (length < 3 || !strchr ("NS", letters[0]) || !strchr ("EW", letters[length - 1]))
    return FALSE;

  g_autofree char *number = g_strndup (letters + 1, length - 2);
  double angle;

  if (!lb_quantity_from_text (LB_QUANTITY_ANGLE, LB_UNITS_METRIC, number, &angle, NULL) ||
      angle < 0 || angle > G_PI_2)
    return FALSE;

  const double toward = letters[length - 1] == 'E' ? angle : -angle;

  *out_rad = letters[0] == 'N' ? toward : G_PI - toward;
  return TRUE;
}

static double
within_turn (double rad)
{
  const double rest = fmod (rad, FULL_TURN);
  const double positive = rest < 0 ? rest + FULL_TURN : rest;

  return positive < FULL_TURN ? positive : 0;
}

gboolean
lb_bearing_from_text (const char *text, double *out_bearing_rad, GError **error)
{
  g_return_val_if_fail (text, FALSE);
  g_return_val_if_fail (out_bearing_rad, FALSE);

  g_autofree char *stripped = g_strstrip (g_strdup (text));
  gboolean is_read;
  double bearing = 0;

  if (g_ascii_isalpha (stripped[0])) {
    g_autofree char *letters = bearing_letters (stripped);

    is_read = read_point (letters, &bearing) || read_quadrant (letters, &bearing);
  } else {
    is_read = lb_quantity_from_text (LB_QUANTITY_ANGLE, LB_UNITS_METRIC, stripped, &bearing,
                                     NULL) &&
              bearing >= 0 && bearing <= FULL_TURN * (1 + 1e-12);
  }

  if (!is_read) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "“%s” is not a bearing: write degrees from 0 to 360, N45E or SW", text);
    return FALSE;
  }

  *out_bearing_rad = within_turn (bearing);
  return TRUE;
}

LbCompass
lb_compass_nearest (double bearing_rad)
{
  if (!isfinite (bearing_rad))
    return LB_COMPASS_N;

  return (LbCompass) ((int) floor (within_turn (bearing_rad) / FULL_TURN * 8 + 0.5) % 8);
}

const char *
lb_compass_name (LbCompass compass)
{
  static const char *const names[] = {
    [LB_COMPASS_N] = N_ ("north"), [LB_COMPASS_NE] = N_ ("north-east"),
    [LB_COMPASS_E] = N_ ("east"),  [LB_COMPASS_SE] = N_ ("south-east"),
    [LB_COMPASS_S] = N_ ("south"), [LB_COMPASS_SW] = N_ ("south-west"),
    [LB_COMPASS_W] = N_ ("west"),  [LB_COMPASS_NW] = N_ ("north-west"),
  };

  g_return_val_if_fail ((gsize) compass < G_N_ELEMENTS (names), NULL);

  return names[compass];
}
