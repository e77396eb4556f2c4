/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include <math.h>

/* What converting a figure to SI and back may cost; the tolerance is never taken as less. */
#define ROUNDING 1e-12

void
lb_trial_fail (const LbTrial *trial, const char *format, ...)
{
  va_list args;

  va_start (args, format);
  g_autofree char *said = g_strdup_vprintf (format, args);
  va_end (args);
  g_test_message ("%s: %s (%s)", lb_table_row_place (trial->row), said,
                  lb_table_row_source (trial->row));
  g_test_fail ();
}

double
lb_trial_number (const LbTrial *trial, const char *column)
{
  return lb_table_row_cell (trial->row, column)->value;
}

guint
lb_trial_count (const LbTrial *trial, const char *column)
{
  const double value = lb_trial_number (trial, column);

  g_assert_cmpfloat (value, ==, floor (value));
  g_assert_cmpfloat (value, >=, 0.0);
  return (guint) value;
}

const char *
lb_trial_text (const LbTrial *trial, const char *column)
{
  return lb_table_row_cell (trial->row, column)->text;
}

static void
compare (const LbTrial *trial, const char *column, const LbTableCell *cell, double actual)
{
  const gboolean is_met = isinf (cell->value) ? actual == cell->value
                                              : fabs (actual - cell->value) <=
                                                  cell->tolerance + ROUNDING * fabs (cell->value);

  if (!is_met)
    lb_trial_fail (trial, "%s is %.10g %s, not %s", column, actual / cell->unit_si, cell->unit,
                   cell->text);
}

void
lb_trial_expect (LbTrial *trial, const char *column, double actual)
{
  lb_trial_expect_if (trial, column, TRUE, actual, NULL);
}

void
lb_trial_expect_if (LbTrial *trial,
                    const char *column,
                    gboolean is_accepted,
                    double actual,
                    GError *error)
{
  g_autoptr (GError) refusal = error;
  const LbTableCell *cell = lb_table_row_cell (trial->row, column);

  trial->n_answered++;
  if (cell->is_refused && is_accepted)
    lb_trial_fail (trial, "%s is %.10g in SI and should be refused", column, actual);
  else if (cell->is_refused && refusal == NULL)
    lb_trial_fail (trial, "%s is refused without a reason", column);
  else if (!cell->is_refused && !is_accepted)
    lb_trial_fail (trial, "%s is refused: %s", column,
                   refusal != NULL ? refusal->message : "no reason");
  else if (!cell->is_refused)
    compare (trial, column, cell, actual);
}

void
lb_trial_expect_text (LbTrial *trial, const char *column, const char *actual)
{
  const LbTableCell *cell = lb_table_row_cell (trial->row, column);

  trial->n_answered++;
  if (g_strcmp0 (cell->text, actual) != 0)
    lb_trial_fail (trial, "%s is %s, not %s", column, actual != NULL ? actual : "none", cell->text);
}
