/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "table-file.h"

#include <glib.h>

G_BEGIN_DECLS

/* One row put to the program. Each expected cell must be answered once: a column that a check
 * forgets fails the row. */
typedef struct
{
  const LbTableRow *row;
  guint n_answered;
} LbTrial;

typedef void (*LbTrialFunc) (LbTrial *trial);

/* What a table's "check:" line names. */
typedef struct
{
  const char *name;
  LbTrialFunc run;
  LbTableColumn columns[LB_TABLE_FILE_COLUMNS_MAX]; /* ends with a name that is NULL */
} LbCheck;

#define LB_GIVEN(name, dimension) \
  {                               \
    name, dimension, FALSE        \
  }
#define LB_EXPECTED(name, dimension) \
  {                                  \
    name, dimension, TRUE            \
  }

/* A given cell, in SI. */
double lb_trial_number (const LbTrial *trial, const char *column);
guint lb_trial_count (const LbTrial *trial, const char *column);
const char *lb_trial_text (const LbTrial *trial, const char *column);

/* Compares with an expected cell; fails the row with its place and source. */
void lb_trial_expect (LbTrial *trial, const char *column, double actual);
void lb_trial_expect_text (LbTrial *trial, const char *column, const char *actual);

/* As lb_trial_expect(), of a function that may refuse; takes @error. */
void lb_trial_expect_if (LbTrial *trial,
                         const char *column,
                         gboolean is_accepted,
                         double actual,
                         GError *error);

void lb_trial_fail (const LbTrial *trial, const char *format, ...) G_GNUC_PRINTF (2, 3);

extern const LbCheck LB_CHECKS_STEEL[];
extern const LbCheck LB_CHECKS_CONCRETE[];
extern const LbCheck LB_CHECKS_DIVING[];
extern const LbCheck LB_CHECKS_LIFTING[];
extern const LbCheck LB_CHECKS_CRANE[];
extern const LbCheck LB_CHECKS_GROUND[];
extern const LbCheck LB_CHECKS_GAS[];
extern const LbCheck LB_CHECKS_HOLD[];
extern const LbCheck LB_CHECKS_PLAN[];
extern const LbCheck LB_CHECKS_UNITS[];
extern const LbCheck LB_CHECKS_BURN_RATE[];

G_END_DECLS
