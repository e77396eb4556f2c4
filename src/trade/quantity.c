/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Units at the edge of the trade.
 *
 * One row a quantity says how it is shown in each of the two systems and by what its unit is
 * multiplied to make SI; a second table holds the other words a person may type. Both are scanned
 * from the top: a few dozen rows.
 *
 * Invariants:
 * 1. No locale is read: digits are ASCII, and the decimal sign comes from the style alone.
 * 2. What lb_number_to_text() writes with -1 decimals in the plain style reads back as the same
 *    double.
 * 3. A text that could be read two ways a thousand apart ("9,850") is refused where the comma
 *    groups digits (US customary) and read as a decimal sign where it does not (metric).
 */
#include "trade/quantity.h"

#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

/* Exact by the international yard and pound agreement, 1959 (NIST SP 811, appendix B). */
#define FOOT  0.3048
#define INCH  0.0254
#define POUND 0.45359237
/* Standard gravity, exact by definition (NIST SP 811). */
#define GRAVITY 9.80665

#define POUND_FORCE (POUND * GRAVITY)
#define PSI         (POUND_FORCE / (INCH * INCH))
#define CUBIC_FOOT  (FOOT * FOOT * FOOT)
#define DEGREE      (G_PI / 180)
/* A circle of a thousandth of an inch across, by definition. */
#define CIRCULAR_MIL (G_PI_4 * 1e-6 * INCH * INCH)
/* The international nautical mile is 1852 m, exact (NIST SP 811). */
#define KNOT (1852.0 / 3600)

/* More digits after the point than any double of a size met in the trade can use. */
#define DECIMALS_MAX 17

#define MINUS_SIGN    "\xe2\x88\x92"
#define EN_DASH       "\xe2\x80\x93"
#define INFINITY_SIGN "\xe2\x88\x9e"

typedef struct
{
  const char *unit;
  double factor; /* to SI */
  int decimals;
} Unit;

typedef struct
{
  const char *noun; /* in messages */
  Unit units[2];    /* by LbUnits */
} Row;

static const Row rows[LB_N_QUANTITIES] = {
  [LB_QUANTITY_COUNT] = { "a number", { { "", 1, 0 }, { "", 1, 0 } } },
  [LB_QUANTITY_LENGTH] = { "a length", { { "ft", FOOT, 1 }, { "m", 1, 2 } } },
  [LB_QUANTITY_SIZE] = { "a size", { { "in", INCH, 3 }, { "mm", 0.001, 0 } } },
  [LB_QUANTITY_STEEL_AREA] = { "an area of steel",
                               { { "in²", INCH *INCH, 2 }, { "mm²", 1e-6, 0 } } },
  [LB_QUANTITY_TIME] = { "a time", { { "min", 60, 0 }, { "min", 60, 0 } } },
  [LB_QUANTITY_SHORT_TIME] = { "a time", { { "s", 1, 0 }, { "s", 1, 0 } } },
  [LB_QUANTITY_MASS] = { "a weight", { { "lb", POUND, 0 }, { "kg", 1, 0 } } },
  [LB_QUANTITY_FORCE] = { "a force", { { "lb", POUND_FORCE, 0 }, { "kN", 1000, 1 } } },
  [LB_QUANTITY_PRESSURE] = { "a pressure", { { "psi", PSI, 0 }, { "bar", 1e5, 1 } } },
  [LB_QUANTITY_STRESS] = { "a stress", { { "ksi", 1000 * PSI, 1 }, { "MPa", 1e6, 0 } } },
  [LB_QUANTITY_GAS] = { "a volume of gas", { { "cu ft", CUBIC_FOOT, 0 }, { "m³", 1, 1 } } },
  [LB_QUANTITY_GAS_FLOW] = { "a flow of gas",
                             { { "cu ft/min", CUBIC_FOOT / 60, 1 }, { "L/min", 0.001 / 60, 0 } } },
  [LB_QUANTITY_DENSITY] = { "a density",
                            { { "lb/cu ft", POUND / CUBIC_FOOT, 1 }, { "kg/m³", 1, 0 } } },
  [LB_QUANTITY_ANGLE] = { "an angle", { { "°", DEGREE, 1 }, { "°", DEGREE, 1 } } },
  [LB_QUANTITY_SPEED] = { "a speed", { { "kn", KNOT, 1 }, { "m/s", 1, 1 } } },
  [LB_QUANTITY_SHARE] = { "a share", { { "%", 0.01, 0 }, { "%", 0.01, 0 } } },
  [LB_QUANTITY_BURN_RATE] = { "a burning rate",
                              { { "s/in²", 1 / (INCH * INCH), 1 }, { "s/cm²", 1e4, 2 } } },
  [LB_QUANTITY_PRESSURE_PER_LENGTH] = { "a hose loss",
                                        { { "psi/100 ft", PSI / (100 * FOOT), 1 },
                                          { "bar/100 m", 1e3, 2 } } },
  [LB_QUANTITY_RATIO] = { "a number", { { "", 1, 2 }, { "", 1, 2 } } },
  [LB_QUANTITY_CURRENT] = { "a current", { { "A", 1, 0 }, { "A", 1, 0 } } },
  [LB_QUANTITY_VOLTAGE] = { "a voltage", { { "V", 1, 1 }, { "V", 1, 1 } } },
  [LB_QUANTITY_CONDUCTOR] = { "a cable's copper",
                              { { "kcmil", 1000 * CIRCULAR_MIL, 1 }, { "mm²", 1e-6, 1 } } },
};

/* What else a person types for a unit; compared without case. */
static const struct
{
  LbQuantity quantity;
  const char *word;
  double factor;
} words[] = {
  { LB_QUANTITY_LENGTH, "'", FOOT },
  { LB_QUANTITY_LENGTH, "′", FOOT },
  { LB_QUANTITY_LENGTH, "’", FOOT },
  { LB_QUANTITY_LENGTH, "foot", FOOT },
  { LB_QUANTITY_LENGTH, "feet", FOOT },
  { LB_QUANTITY_LENGTH, "fsw", FOOT },
  { LB_QUANTITY_LENGTH, "in", INCH },
  { LB_QUANTITY_LENGTH, "inch", INCH },
  { LB_QUANTITY_LENGTH, "inches", INCH },
  { LB_QUANTITY_LENGTH, "\"", INCH },
  { LB_QUANTITY_LENGTH, "″", INCH },
  { LB_QUANTITY_LENGTH, "”", INCH },
  { LB_QUANTITY_LENGTH, "metre", 1 },
  { LB_QUANTITY_LENGTH, "metres", 1 },
  { LB_QUANTITY_LENGTH, "meter", 1 },
  { LB_QUANTITY_LENGTH, "meters", 1 },
  { LB_QUANTITY_LENGTH, "cm", 0.01 },
  { LB_QUANTITY_LENGTH, "mm", 0.001 },
  { LB_QUANTITY_STEEL_AREA, "in2", INCH *INCH },
  { LB_QUANTITY_STEEL_AREA, "sq in", INCH *INCH },
  { LB_QUANTITY_STEEL_AREA, "mm2", 1e-6 },
  { LB_QUANTITY_STEEL_AREA, "cm²", 1e-4 },
  { LB_QUANTITY_STEEL_AREA, "cm2", 1e-4 },
  { LB_QUANTITY_TIME, "mins", 60 },
  { LB_QUANTITY_TIME, "minute", 60 },
  { LB_QUANTITY_TIME, "minutes", 60 },
  { LB_QUANTITY_TIME, "h", 3600 },
  { LB_QUANTITY_TIME, "hr", 3600 },
  { LB_QUANTITY_TIME, "hours", 3600 },
  { LB_QUANTITY_TIME, "s", 1 },
  { LB_QUANTITY_TIME, "sec", 1 },
  { LB_QUANTITY_TIME, "seconds", 1 },
  { LB_QUANTITY_MASS, "lbs", POUND },
  { LB_QUANTITY_MASS, "pounds", POUND },
  { LB_QUANTITY_MASS, "t", 1000 },
  { LB_QUANTITY_MASS, "tonnes", 1000 },
  { LB_QUANTITY_FORCE, "lbs", POUND_FORCE },
  { LB_QUANTITY_FORCE, "lbf", POUND_FORCE },
  { LB_QUANTITY_FORCE, "kip", 1000 * POUND_FORCE },
  { LB_QUANTITY_FORCE, "kips", 1000 * POUND_FORCE },
  { LB_QUANTITY_FORCE, "N", 1 },
  { LB_QUANTITY_PRESSURE, "psig", PSI },
  { LB_QUANTITY_PRESSURE, "kPa", 1e3 },
  { LB_QUANTITY_PRESSURE, "MPa", 1e6 },
  { LB_QUANTITY_STRESS, "psi", PSI },
  { LB_QUANTITY_STRESS, "N/mm²", 1e6 },
  { LB_QUANTITY_GAS, "ft³", CUBIC_FOOT },
  { LB_QUANTITY_GAS, "ft3", CUBIC_FOOT },
  { LB_QUANTITY_GAS, "scf", CUBIC_FOOT },
  { LB_QUANTITY_GAS, "m3", 1 },
  { LB_QUANTITY_GAS, "L", 0.001 },
  { LB_QUANTITY_GAS_FLOW, "cfm", CUBIC_FOOT / 60 },
  { LB_QUANTITY_GAS_FLOW, "scfm", CUBIC_FOOT / 60 },
  { LB_QUANTITY_GAS_FLOW, "ft³/min", CUBIC_FOOT / 60 },
  { LB_QUANTITY_DENSITY, "lb/ft³", POUND / CUBIC_FOOT },
  { LB_QUANTITY_DENSITY, "lb/ft3", POUND / CUBIC_FOOT },
  { LB_QUANTITY_DENSITY, "pcf", POUND / CUBIC_FOOT },
  { LB_QUANTITY_DENSITY, "kg/m3", 1 },
  { LB_QUANTITY_ANGLE, "deg", DEGREE },
  { LB_QUANTITY_ANGLE, "degree", DEGREE },
  { LB_QUANTITY_ANGLE, "degrees", DEGREE },
  { LB_QUANTITY_ANGLE, "rad", 1 },
  { LB_QUANTITY_SPEED, "kt", KNOT },
  { LB_QUANTITY_SPEED, "knot", KNOT },
  { LB_QUANTITY_SPEED, "knots", KNOT },
  { LB_QUANTITY_SHARE, "percent", 0.01 },
  { LB_QUANTITY_BURN_RATE, "s/in2", 1 / (INCH * INCH) },
  { LB_QUANTITY_BURN_RATE, "s/cm2", 1e4 },
};

const LbNumberStyle LB_NUMBER_PLAIN = { .decimal_point = ".", .thousands = "" };

static const Unit *
unit_of (LbQuantity quantity, LbUnits units)
{
  return &rows[quantity].units[units == LB_UNITS_METRIC];
}

double
lb_quantity_from_si (LbQuantity quantity, LbUnits units, double si)
{
  g_return_val_if_fail (quantity < LB_N_QUANTITIES, (double) NAN);

  return si / unit_of (quantity, units)->factor;
}

double
lb_quantity_to_si (LbQuantity quantity, LbUnits units, double shown)
{
  g_return_val_if_fail (quantity < LB_N_QUANTITIES, (double) NAN);

  return shown * unit_of (quantity, units)->factor;
}

const char *
lb_quantity_unit (LbQuantity quantity, LbUnits units)
{
  g_return_val_if_fail (quantity < LB_N_QUANTITIES, "");

  return unit_of (quantity, units)->unit;
}

int
lb_quantity_decimals (LbQuantity quantity, LbUnits units)
{
  g_return_val_if_fail (quantity < LB_N_QUANTITIES, 0);

  return unit_of (quantity, units)->decimals;
}

/* The magnitude in ASCII with "." and without grouping or an exponent. */
static char *
magnitude_to_ascii (double magnitude, int decimals)
{
  /* 309 digits of the largest double, the point, the decimals, the end. */
  char text[309 + 1 + DECIMALS_MAX + 1];
  char format[8];

  if (decimals >= 0) {
    g_snprintf (format, sizeof format, "%%.%df", MIN (decimals, DECIMALS_MAX));
    g_ascii_formatd (text, sizeof text, format, magnitude);
  } else {
    gboolean is_same = FALSE;

    for (int tried = 0; tried <= DECIMALS_MAX && !is_same; tried++) {
      g_snprintf (format, sizeof format, "%%.%df", tried);
      g_ascii_formatd (text, sizeof text, format, magnitude);
      is_same = g_ascii_strtod (text, NULL) == magnitude;
    }
    /* Smaller than the decimals reach: only an exponent tells it apart from its neighbours. */
    if (!is_same)
      g_ascii_dtostr (text, sizeof text, magnitude);
  }

  if (strchr (text, '.') && !strchr (text, 'e')) {
    char *end = text + strlen (text);

    while (end[-1] == '0')
      *--end = '\0';
    if (end[-1] == '.')
      *--end = '\0';
  }

  return g_strdup (text);
}

char *
lb_number_to_text (double value, int decimals, const LbNumberStyle *style)
{
  g_return_val_if_fail (style, NULL);

  if (isnan (value))
    return g_strdup (EN_DASH);

  const gboolean is_plain = g_str_equal (style->decimal_point, LB_NUMBER_PLAIN.decimal_point) &&
                            g_str_equal (style->thousands, LB_NUMBER_PLAIN.thousands);
  const char *minus = is_plain ? "-" : MINUS_SIGN;

  if (isinf (value))
    return g_strconcat (value < 0 ? minus : "", INFINITY_SIGN, NULL);

  g_autofree char *ascii = magnitude_to_ascii (fabs (value), decimals);
  const gsize n_whole = strspn (ascii, "0123456789");
  GString *text = g_string_new (value < 0 && !g_str_equal (ascii, "0") ? minus : "");

  for (gsize i = 0; i < n_whole; i++) {
    if (i > 0 && (n_whole - i) % 3 == 0)
      g_string_append (text, style->thousands);
    g_string_append_c (text, ascii[i]);
  }
  if (ascii[n_whole] == '.') {
    g_string_append (text, style->decimal_point);
    g_string_append (text, ascii + n_whole + 1);
  } else {
    g_string_append (text, ascii + n_whole);
  }

  return g_string_free (text, FALSE);
}

char *
lb_quantity_to_text (LbQuantity quantity, LbUnits units, double si, const LbNumberStyle *style)
{
  g_return_val_if_fail (quantity < LB_N_QUANTITIES, NULL);
  g_return_val_if_fail (style, NULL);

  const Unit *unit = unit_of (quantity, units);
  g_autofree char *number = lb_number_to_text (si / unit->factor, unit->decimals, style);

  if (isnan (si) || unit->unit[0] == '\0')
    return g_steal_pointer (&number);

  /* Signs stand close to their number, words apart from it. */
  const gboolean is_sign = g_str_equal (unit->unit, "°") || g_str_equal (unit->unit, "%");

  return g_strconcat (number, is_sign ? "" : " ", unit->unit, NULL);
}

/* --- Reading ------------------------------------------------------------------------------ */

static const char *
skip_spaces (const char *at)
{
  for (;;) {
    if (g_ascii_isspace (*at))
      at++;
    else if (g_str_has_prefix (at, "\xc2\xa0")) /* no-break space */
      at += 2;
    else
      return at;
  }
}

/* A space that stands between groups of digits in print: no-break, thin, narrow no-break. */
static gsize
grouping_space (const char *at)
{
  if (g_str_has_prefix (at, "\xc2\xa0"))
    return 2;
  if (g_str_has_prefix (at, "\xe2\x80\x89") || g_str_has_prefix (at, "\xe2\x80\xaf"))
    return 3;
  return 0;
}

/* Whether exactly three digits stand at @at. */
static gboolean
is_group (const char *at)
{
  return strspn (at, "0123456789") == 3;
}

/* Copies the number at *@at to @ascii with "." for the decimal sign and no grouping. Which of "."
 * and "," is the decimal sign: with both, the last; with one that is repeated, none; with a lone
 * one, that one, save for the comma that groups in US customary text. */
static gboolean
take_digits (const char **at, LbUnits units, GString *ascii)
{
  const char *start = *at;
  const char *last_point = NULL, *last_comma = NULL;
  int n_points = 0, n_commas = 0;
  const char *end = start;

  for (;; end++) {
    if (*end == '.') {
      last_point = end;
      n_points++;
    } else if (*end == ',') {
      last_comma = end;
      n_commas++;
    } else if (grouping_space (end) > 0 && is_group (end + grouping_space (end))) {
      end += grouping_space (end) - 1;
    } else if (!g_ascii_isdigit (*end)) {
      break;
    }
  }

  const char *decimal = NULL;

  if (n_points > 0 && n_commas > 0)
    decimal = MAX (last_point, last_comma);
  else if (n_points == 1)
    decimal = last_point;
  else if (n_commas == 1)
    decimal = last_comma;

  if (decimal && strspn (decimal + 1, "0123456789") != (gsize) (end - decimal - 1))
    return FALSE;
  if (decimal == last_comma && n_commas == 1 && n_points == 0 && units == LB_UNITS_US &&
      is_group (decimal + 1) && decimal > start && *start != '0')
    return FALSE;

  gsize n_digits = 0;

  for (const char *from = start; from < end; from++) {
    if (g_ascii_isdigit (*from)) {
      g_string_append_c (ascii, *from);
      n_digits++;
    } else if (from == decimal) {
      g_string_append_c (ascii, '.');
    } else if (*from == '.' || *from == ',') {
      if (n_digits == 0 || !is_group (from + 1))
        return FALSE;
    }
  }
  if (n_digits == 0)
    return FALSE;

  /* An exponent, as lb_number_to_text() writes for what is very small. */
  if ((*end == 'e' || *end == 'E') &&
      (g_ascii_isdigit (end[1]) || ((end[1] == '-' || end[1] == '+') && g_ascii_isdigit (end[2]))))
  {
    const gsize n = 2 + strspn (end + 2, "0123456789");

    g_string_append_len (ascii, end, (gssize) n);
    end += n;
  }

  *at = end;
  return TRUE;
}

/* A fraction of an inch as it stands on a tape: "1/2", or behind a whole number "-1/2", " 1/2". */
static gboolean
take_fraction (const char **at, double *value)
{
  const char *from = *at;
  const gsize n_top = strspn (from, "0123456789");
  const gsize n_bottom = from[n_top] == '/' ? strspn (from + n_top + 1, "0123456789") : 0;

  /* Tapes are not divided finer than three digits below the stroke. */
  if (n_top == 0 || n_top > 3 || n_bottom == 0 || n_bottom > 3)
    return FALSE;

  const double bottom = g_ascii_strtod (from + n_top + 1, NULL);

  if (bottom <= 0)
    return FALSE;

  *value += g_ascii_strtod (from, NULL) / bottom;
  *at = from + n_top + 1 + n_bottom;
  return TRUE;
}

/* A number without a sign. */
static gboolean
take_number (const char **at, LbUnits units, gboolean with_fractions, double *out_value)
{
  g_autoptr (GString) ascii = g_string_new (NULL);
  double value = 0;

  if (with_fractions && take_fraction (at, &value)) {
    *out_value = value;
    return TRUE;
  }
  if (!take_digits (at, units, ascii))
    return FALSE;

  value = g_ascii_strtod (ascii->str, NULL);
  if (with_fractions && strspn (ascii->str, "0123456789") == ascii->len &&
      (**at == ' ' || **at == '-'))
  {
    const char *fraction = *at + 1;

    if (take_fraction (&fraction, &value))
      *at = fraction;
  }
  if (!isfinite (value))
    return FALSE;

  *out_value = value;
  return TRUE;
}

/* The factor of the unit word, 0 when it is none of the quantity's. */
static double
factor_of_word (LbQuantity quantity, const char *word, gsize length)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rows[quantity].units); i++) {
    const Unit *unit = &rows[quantity].units[i];

    if (strlen (unit->unit) == length && g_ascii_strncasecmp (unit->unit, word, length) == 0)
      return unit->factor;
  }

  /* Sizes and lengths, and the two kinds of time, share their words. */
  LbQuantity like = quantity;

  if (quantity == LB_QUANTITY_SIZE)
    like = LB_QUANTITY_LENGTH;
  else if (quantity == LB_QUANTITY_SHORT_TIME)
    like = LB_QUANTITY_TIME;

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++) {
    if (words[i].quantity == like && strlen (words[i].word) == length &&
        g_ascii_strncasecmp (words[i].word, word, length) == 0)
      return words[i].factor;
  }

  return like == quantity ? 0 : factor_of_word (like, word, length);
}

/* How many bytes of unit stand at @at: to the next digit for lengths, where feet may be followed
 * by inches, and to the end for the rest. */
static gsize
word_length (const char *at, gboolean is_length)
{
  gsize length = is_length ? strcspn (at, "0123456789+-") : strlen (at);

  while (length > 0 && (g_ascii_isspace (at[length - 1]) || at[length - 1] == '.'))
    length--;
  return length;
}

/* The inches behind whole feet, in m: "6\"", "-6 in", "6 1/2". */
static gboolean
take_inches (const char *at, LbUnits units, double *out_m)
{
  double inches;

  at = skip_spaces (at);
  if (*at == '-')
    at = skip_spaces (at + 1);
  if (!take_number (&at, units, TRUE, &inches) || inches >= 12)
    return FALSE;

  at = skip_spaces (at);
  const gsize length = word_length (at, FALSE);
  const double factor = length == 0 ? INCH : factor_of_word (LB_QUANTITY_SIZE, at, length);

  if (fabs (factor - INCH) > 1e-9)
    return FALSE;

  *out_m = inches * INCH;
  return TRUE;
}

static gboolean
parse_quantity (LbQuantity quantity, LbUnits units, const char *text, double *out_si)
{
  const gboolean is_length = quantity == LB_QUANTITY_LENGTH || quantity == LB_QUANTITY_SIZE;
  const char *at = skip_spaces (text);
  double sign = 1, value;

  if (*at == '-' || *at == '+') {
    sign = *at == '-' ? -1 : 1;
    at++;
  } else if (g_str_has_prefix (at, MINUS_SIGN)) {
    sign = -1;
    at += strlen (MINUS_SIGN);
  }
  if (!take_number (&at, units, is_length, &value))
    return FALSE;

  at = skip_spaces (at);
  if (*at == '\0') {
    value = lb_quantity_to_si (quantity, units, value);
  } else {
    const gsize length = word_length (at, is_length);
    const double factor = length > 0 ? factor_of_word (quantity, at, length) : 0;
    double inches_m = 0;

    if (factor <= 0)
      return FALSE;
    value *= factor;
    at += length;
    while (*at == '.')
      at++;
    at = skip_spaces (at);
    if (*at != '\0') {
      if (!is_length || fabs (factor - FOOT) > 1e-9 || !take_inches (at, units, &inches_m))
        return FALSE;
      value += inches_m;
    }
  }
  if (!isfinite (value))
    return FALSE;

  *out_si = sign * value;
  return TRUE;
}

char *
lb_quantity_to_both (LbQuantity quantity, double si)
{
  g_autofree char *us = lb_quantity_to_text (quantity, LB_UNITS_US, si, &LB_NUMBER_PLAIN);
  g_autofree char *metric = lb_quantity_to_text (quantity, LB_UNITS_METRIC, si, &LB_NUMBER_PLAIN);

  return strcmp (us, metric) == 0 ? g_steal_pointer (&us) : g_strdup_printf ("%s (%s)", us, metric);
}

gboolean
lb_quantity_from_text (LbQuantity quantity,
                       LbUnits units,
                       const char *text,
                       double *out_si,
                       GError **error)
{
  g_return_val_if_fail (quantity < LB_N_QUANTITIES, FALSE);
  g_return_val_if_fail (text, FALSE);
  g_return_val_if_fail (out_si, FALSE);

  if (parse_quantity (quantity, units, text, out_si))
    return TRUE;

  const char *unit = lb_quantity_unit (quantity, units);

  if (unit[0] == '\0')
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "“%s” is not %s: write digits with at most one decimal sign, without grouping",
                 text, rows[quantity].noun);
  else
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "“%s” is not %s: write a number in %s, without grouping", text,
                 rows[quantity].noun, unit);
  return FALSE;
}
