/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/sheet/checked-row.h"
#include "desk/shell/job.h"

G_BEGIN_DECLS

/* One number the cut plan takes for granted, typed in the job's unit; the line under it says how
 * far it can be trusted and why. A button brings the default back where the crew has set its own. */
#define LB_TYPE_ASSUMPTION_ROW (lb_assumption_row_get_type ())
G_DECLARE_FINAL_TYPE (LbAssumptionRow, lb_assumption_row, LB, ASSUMPTION_ROW, LbCheckedRow)

LbAssumptionRow *lb_assumption_row_new (LbAssumptionId id);

/* @job NULL for nothing; to be called again when the job has changed. */
void lb_assumption_row_show (LbAssumptionRow *self, LbJob *job);

/* Stores @value, SI as the file holds it; "" for the default. */
gboolean lb_assumption_record (LbJob *job, LbAssumptionId id, const char *value, GError **error);

G_END_DECLS
