/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"
#include "desk/shift/row-list.h"

G_BEGIN_DECLS

/* Findings on the shift's sheet, each in a row under the line it is about, with what to do and a
 * button to answer it, or how it was answered and a button that takes that back. */

/* Where on the sheet a finding stands. */
typedef enum {
  LB_FINDING_AT_PILE,  /* under the pile's line */
  LB_FINDING_AT_DIVE,  /* under the dive's: lb_finding_last_entry() */
  LB_FINDING_AT_SHEET, /* among those of the whole shift, and of the job */
} LbFindingPlace;

LbFindingPlace lb_finding_stands_at (const LbFinding *finding);

/* The later of the entries it is about; NULL for none. */
const LbEntry *lb_finding_last_entry (const LbFinding *finding);

/* Whether @finding stands under the line at @index. */
typedef gboolean (*LbFindingIsOf) (const LbFinding *finding, guint index, gpointer data);

/* As lb_row_list_show(), with the findings of the job's present shift among the lines; @data goes to
 * both @make and @is_of. */
gboolean lb_finding_rows_show (LbJob *job,
                               GtkListBox *list,
                               GPtrArray **shown,
                               GPtrArray *keys,
                               LbRowMake make,
                               LbFindingIsOf is_of,
                               gpointer data);

/* The findings of the whole shift and of the job alone; how many there are. */
guint lb_finding_rows_show_sheet (LbJob *job, GtkListBox *list, GPtrArray **shown);

G_END_DECLS
