/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A chart that loads are hung by is read whole or not at all. Two columns, each with its unit in the
 * heading: a unit that is guessed is wrong by a factor of two or a thousand. What order the rows must
 * keep is said once, in trade/crane; here each fault gets its place and its words. */
#include "book/crane-chart-text.h"

#include "book/book-error.h"
#include "book/table-text.h"

#include <glib/gi18n-lib.h>

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

static const LbTableUnit lengths[] = { { "ft", FOOT }, { "m", 1 }, { NULL, 0 } };
static const LbTableUnit loads[] = {
  { "lb", POUND *GRAVITY },
  { "kip", 1000 * POUND *GRAVITY },
  { "t", 1000 * GRAVITY },
  { "kg", GRAVITY },
  { NULL, 0 },
};

typedef struct
{
  const LbTableUnit *units[N_COLUMNS];
  LbCraneChart chart;
} Reading;

static gboolean
read_heading (const LbTableLine *at, gpointer data, GError **error)
{
  Reading *reading = data;

  if (at->n_columns == N_COLUMNS) {
    reading->units[RADIUS] = lb_table_heading_unit (at->cells[RADIUS], "radius", lengths);
    reading->units[CAPACITY] = lb_table_heading_unit (at->cells[CAPACITY], "capacity", loads);
  }
  if (reading->units[RADIUS] != NULL && reading->units[CAPACITY] != NULL)
    return TRUE;
  g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                       _ ("The first line must be “radius (ft),capacity (lb)”: the radius in ft or "
                          "m, the capacity in lb, kip, t (1000 kg) or kg"));
  return FALSE;
}

/* Of the row just put at the chart's end: those before it are sound. */
static gboolean
check_row (const LbTableLine *at, const LbCraneChart *chart, GError **error)
{
  guint row;

  switch (lb_crane_chart_fault (chart, &row)) {
  case LB_CRANE_CHART_SOUND:
    return TRUE;
  case LB_CRANE_CHART_RADIUS:
    return lb_table_line_refuse (at, RADIUS, g_strdup (_ ("the radius must be more than 0")),
                                 error);
  case LB_CRANE_CHART_CAPACITY:
    return lb_table_line_refuse (at, CAPACITY, g_strdup (_ ("the capacity must be more than 0")),
                                 error);
  case LB_CRANE_CHART_RADIUS_ORDER:
    return lb_table_line_refuse (
      at, RADIUS,
      g_strdup (_ ("the radius is not larger than on the line before: put the rows from the "
                   "shortest to the longest, each once")),
      error);
  case LB_CRANE_CHART_CAPACITY_ORDER:
    return lb_table_line_refuse (
      at, CAPACITY,
      g_strdup (_ ("the capacity is more than at the shorter radius before: compare both with the "
                   "crane’s own chart")),
      error);
  case LB_CRANE_CHART_EMPTY:
    break;
  }
  g_assert_not_reached ();
}

static gboolean
read_row (const LbTableLine *at, gpointer data, GError **error)
{
  Reading *reading = data;
  LbCraneRow *row = &reading->chart.rows[reading->chart.n_rows];

  if (!lb_table_line_number (at, RADIUS, &row->radius_m, error) ||
      !lb_table_line_number (at, CAPACITY, &row->capacity_n, error))
    return FALSE;
  row->radius_m *= reading->units[RADIUS]->si;
  row->capacity_n *= reading->units[CAPACITY]->si;
  if (row->radius_m > RADIUS_MOST || row->capacity_n > CAPACITY_MOST)
    return lb_table_line_refuse (
      at, row->radius_m > RADIUS_MOST ? RADIUS : CAPACITY,
      g_strdup (_ ("more than any crane has: look whether the first line names the right unit")),
      error);
  reading->chart.n_rows++;
  return check_row (at, &reading->chart, error);
}

gboolean
lb_crane_chart_from_text (const char *text, LbCraneChart *out_chart, GError **error)
{
  static const LbTableForm form = {
    .rows_most = LB_CRANE_ROWS_MAX,
    .read_heading = read_heading,
    .read_row = read_row,
  };

  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (out_chart != NULL, FALSE);

  g_autofree Reading *reading = g_new0 (Reading, 1);

  if (!lb_table_text_read (text, &form, reading, error))
    return FALSE;
  *out_chart = reading->chart;
  return TRUE;
}
