/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* Which table of one kind the job goes by, with buttons to read one from a list, to type it where it is
 * short, and to go back to none. */
#define LB_TYPE_TABLE_ROW (lb_table_row_get_type ())
G_DECLARE_FINAL_TYPE (LbTableRow, lb_table_row, LB, TABLE_ROW, AdwActionRow)

LbTableRow *lb_table_row_new (LbSettingTable table);

/* @job NULL for nothing; to be called again when the job has changed. */
void lb_table_row_show (LbTableRow *self, LbJob *job);

/* Takes the table in @file for the job; says itself what is wrong with it. */
void lb_table_row_take (LbTableRow *self, GFile *file);

G_END_DECLS
