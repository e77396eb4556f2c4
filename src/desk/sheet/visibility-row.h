/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* For which visibility the cuts are planned: the one said last, or one that is chosen. */
#define LB_TYPE_VISIBILITY_ROW (lb_visibility_row_get_type ())
G_DECLARE_FINAL_TYPE (LbVisibilityRow, lb_visibility_row, LB, VISIBILITY_ROW, AdwComboRow)

LbVisibilityRow *lb_visibility_row_new (void);

/* @job NULL for nothing; to be called again when the job has changed. */
void lb_visibility_row_show (LbVisibilityRow *self, LbJob *job);

G_END_DECLS
