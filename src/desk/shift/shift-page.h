/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job-page.h"

G_BEGIN_DECLS

/* The sheet of one shift: piles worked, dives, rods and oxygen, time lost, conditions; everything
 * stored as it is entered. Properties "job" (LbJob, nullable) and "selection" (LbSelection). */
#define LB_TYPE_SHIFT_PAGE (lb_shift_page_get_type ())
G_DECLARE_FINAL_TYPE (LbShiftPage, lb_shift_page, LB, SHIFT_PAGE, LbJobPage)

G_END_DECLS
