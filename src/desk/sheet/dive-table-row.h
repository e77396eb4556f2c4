/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* Which table of no-stop limits the job goes by, with buttons to read the supervisor's own from a
 * list and to go back to the U.S. Navy's. */
#define LB_TYPE_DIVE_TABLE_ROW (lb_dive_table_row_get_type ())
G_DECLARE_FINAL_TYPE (LbDiveTableRow, lb_dive_table_row, LB, DIVE_TABLE_ROW, AdwActionRow)

LbDiveTableRow *lb_dive_table_row_new (void);

/* @job NULL for nothing; to be called again when the job has changed. */
void lb_dive_table_row_show (LbDiveTableRow *self, LbJob *job);

/* Takes the table in @file for the job; says itself what is wrong with it. */
void lb_dive_table_row_take (LbDiveTableRow *self, GFile *file);

G_END_DECLS
