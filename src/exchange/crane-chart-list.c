/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A chart that loads are hung by is read whole or not at all. Two columns, each with its unit in the
 * heading: a unit that is guessed is wrong by a factor of two or a thousand. What order the rows must
 * keep is said once, in trade/crane; here each fault gets its place and its words. */
#include "exchange/crane-chart-list.h"

#include "exchange/decimal-sign.h"
#include "exchange/exchange-error.h"
#include "exchange/text-table.h"
#include "trade/quantity.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* NIST SP 811, appendix B. */
#define FOOT    0.3048
#define POUND   0.45359237
#define GRAVITY 9.80665

/* No crane of this trade reaches or carries so much; a wrong unit does. In m and N. */
#define RADIUS_MOST   300.0
#define CAPACITY_MOST (10e6 * GRAVITY)

enum {
  RADIUS,
  CAPACITY,
  N_COLUMNS,
};

typedef struct
{
  const char *word;
  double si;
} Unit;

static const Unit lengths[] = { { "ft", FOOT }, { "m", 1 }, { NULL } };
static const Unit loads[] = {
  { "lb", POUND *GRAVITY },
  { "kip", 1000 * POUND *GRAVITY },
  { "t", 1000 * GRAVITY },
  { "kg", GRAVITY },
  { NULL },
};

static const struct
{
  const char *name;
  const Unit *units;
} columns[N_COLUMNS] = { { "radius", lengths }, { "capacity", loads } };

typedef struct
{
  const LbTextTable *cells;
  const Unit *units[N_COLUMNS];
  LbDecimalSign sign; /* of the whole list: a radius of 9.5 tells that 12,500 is grouped */
  LbCraneChart *chart;
} Reading;

/* Takes @said, what is wrong in the cell. */
static gboolean
refuse (const Reading *reading, gsize row, gsize column, char *said, GError **error)
{
  g_autofree char *reason = said;

  g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE, _ ("Line %u, column %u (%s): %s"),
               (guint) lb_text_table_line (reading->cells, row), (guint) column + 1,
               lb_text_table_cell (reading->cells, 0, column), reason);
  return FALSE;
}

/* "Radius (ft)", "radius_ft" and "RADIUS ft" name the same. */
static const Unit *
unit_of (const char *heading, gsize column)
{
  static const char between[] = " _()[]";
  const char *name = columns[column].name;
  g_autofree char *plain = g_ascii_strdown (heading, -1);

  if (!g_str_has_prefix (plain, name))
    return NULL;

  char *word = plain + strlen (name);

  word += strspn (word, between);
  word[strcspn (word, between)] = '\0';
  for (const Unit *unit = columns[column].units; unit->word != NULL; unit++)
    if (g_str_equal (unit->word, word))
      return unit;
  return NULL;
}

static gboolean
read_heading (Reading *reading, GError **error)
{
  for (gsize column = 0; column < N_COLUMNS; column++)
    reading->units[column] = unit_of (lb_text_table_cell (reading->cells, 0, column), column);

  if (lb_text_table_row_cells (reading->cells, 0) == N_COLUMNS && reading->units[RADIUS] != NULL &&
      reading->units[CAPACITY] != NULL)
    return TRUE;
  g_set_error_literal (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_COLUMN,
                       _ ("The first line must be “radius (ft),capacity (lb)”: the radius in ft or "
                          "m, the capacity in lb, kip, t (1000 kg) or kg"));
  return FALSE;
}

static gboolean
read_number (const Reading *reading, gsize row, gsize column, double *out_si, GError **error)
{
  const char *text = lb_text_table_cell (reading->cells, row, column);
  g_autofree char *plain = lb_decimal_sign_plain (reading->sign, text);
  double value;

  if (plain == NULL)
    return refuse (reading, row, column,
                   g_strdup_printf (_ ("“%s” can be read two ways, because the list has decimal "
                                       "points and decimal commas: write it without grouping"),
                                    text),
                   error);
  if (!lb_quantity_from_text (LB_QUANTITY_COUNT, LB_UNITS_US, plain, &value, NULL))
    return refuse (reading, row, column,
                   g_strdup_printf (_ ("“%s” is no number: write digits without grouping; the unit "
                                       "stands in the first line"),
                                    text),
                   error);
  *out_si = value * reading->units[column]->si;
  return TRUE;
}

static gboolean
read_row (Reading *reading, gsize row, GError **error)
{
  const gsize n_cells = lb_text_table_row_cells (reading->cells, row);
  LbCraneRow read;

  if (n_cells != N_COLUMNS) {
    g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE,
                 _ ("Line %u has %u cells: give it a radius and a capacity"),
                 (guint) lb_text_table_line (reading->cells, row), (guint) n_cells);
    return FALSE;
  }
  if (!read_number (reading, row, RADIUS, &read.radius_m, error) ||
      !read_number (reading, row, CAPACITY, &read.capacity_n, error))
    return FALSE;
  if (read.radius_m > RADIUS_MOST || read.capacity_n > CAPACITY_MOST)
    return refuse (reading, row, read.radius_m > RADIUS_MOST ? RADIUS : CAPACITY,
                   g_strdup (_ ("more than any crane has: look whether the first line names the "
                                "right unit")),
                   error);

  reading->chart->rows[reading->chart->n_rows++] = read;
  return TRUE;
}

/* Rows of the chart stand one line below those of the list, which has its heading first. */
static gboolean
check_chart (const Reading *reading, GError **error)
{
  guint row;

  switch (lb_crane_chart_fault (reading->chart, &row)) {
  case LB_CRANE_CHART_SOUND:
    return TRUE;
  case LB_CRANE_CHART_EMPTY:
    break;
  case LB_CRANE_CHART_RADIUS:
    return refuse (reading, row + 1, RADIUS, g_strdup (_ ("the radius must be more than 0")),
                   error);
  case LB_CRANE_CHART_CAPACITY:
    return refuse (reading, row + 1, CAPACITY, g_strdup (_ ("the capacity must be more than 0")),
                   error);
  case LB_CRANE_CHART_RADIUS_ORDER:
    return refuse (reading, row + 1, RADIUS,
                   g_strdup (_ ("the radius is not larger than on the line before: put the rows "
                                "from the shortest to the longest, each once")),
                   error);
  case LB_CRANE_CHART_CAPACITY_ORDER:
    return refuse (reading, row + 1, CAPACITY,
                   g_strdup (_ ("the capacity is more than at the shorter radius before: compare "
                                "both with the crane’s own chart")),
                   error);
  }
  g_assert_not_reached ();
}

gboolean
lb_crane_chart_from_csv (const char *text, gsize length, LbCraneChart *out_chart, GError **error)
{
  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (out_chart != NULL, FALSE);

  g_autoptr (GBytes) bytes = g_bytes_new_static (text, length);
  g_autoptr (LbTextTable) cells = lb_text_table_parse (bytes, NULL, error);

  if (cells == NULL)
    return FALSE;

  g_autofree LbCraneChart *chart = g_new0 (LbCraneChart, 1);
  Reading reading = { .cells = cells, .chart = chart };
  const gsize n_rows = lb_text_table_get_shape (cells).n_rows;

  if (!read_heading (&reading, error))
    return FALSE;
  if (n_rows < 2 || n_rows - 1 > LB_CRANE_ROWS_MAX) {
    g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_LARGE,
                 _ ("The chart has %u lines of radii: it must have 1 to %d"), (guint) n_rows - 1,
                 LB_CRANE_ROWS_MAX);
    return FALSE;
  }
  for (gsize row = 1; row < n_rows; row++)
    for (gsize column = 0; column < N_COLUMNS; column++)
      reading.sign = lb_decimal_sign_look (reading.sign, lb_text_table_cell (cells, row, column));
  for (gsize row = 1; row < n_rows; row++)
    if (!read_row (&reading, row, error))
      return FALSE;
  if (!check_chart (&reading, error))
    return FALSE;

  *out_chart = *chart;
  return TRUE;
}
