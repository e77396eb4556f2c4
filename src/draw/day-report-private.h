/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/day-account.h"
#include "draw/day-work.h"
#include "draw/page-flow.h"

G_BEGIN_DECLS

/* What the files of the daily report share. */
typedef struct
{
  LbPageFlow flow;
  const LbDayAccount *account;
  const LbLedger *ledger; /* the account's, as are the next three */
  const LbFold *fold;
  const GArray *dives; /* LbDiveAccount */
  guint32 day;
  const LbDayWork *work;
} LbReport;

#define LB_REPORT_PLAIN ((LbPageStyle){ .size = 9, .ink = LB_INK_TEXT })

/* Cells are collected row by row and shown at once. @text is taken. */
void lb_report_take_cell (GPtrArray *cells, char *text);
void lb_report_table (LbReport *report,
                      const LbPageColumn *columns,
                      gsize n_columns,
                      double width,
                      GPtrArray *cells);
void lb_report_line (LbReport *report, const char *text);
void lb_report_none (LbReport *report);
double lb_report_width (const LbReport *report);
char *lb_report_say (const LbReport *report, LbQuantity quantity, double si);

/* day-report-shifts.c: the day's shifts, their hours, crews and signatures; what is on hand; what does
 * not fit together. */
void lb_report_shifts (LbReport *report);
void lb_report_stocks (LbReport *report);
void lb_report_findings (LbReport *report);

/* day-report-work.c: what was done, pile by pile, dive by dive, and what was lost. */
void lb_report_work (LbReport *report);

G_END_DECLS
