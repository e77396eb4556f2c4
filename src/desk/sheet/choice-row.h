/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* One thing the cut plan takes for granted that is chosen from a few words; the line under it says how
 * far it can be trusted and why, as with LbAssumptionRow. */
#define LB_TYPE_CHOICE_ROW (lb_choice_row_get_type ())
G_DECLARE_FINAL_TYPE (LbChoiceRow, lb_choice_row, LB, CHOICE_ROW, AdwComboRow)

LbChoiceRow *lb_choice_row_new (LbAssumptionId id);

/* @job NULL for nothing; to be called again when the job has changed. */
void lb_choice_row_show (LbChoiceRow *self, LbJob *job);

G_END_DECLS
