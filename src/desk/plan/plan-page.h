/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job-page.h"

G_BEGIN_DECLS

/* The pier: plan or list of piles, legend, step tools, and the sheet of the current pile beside
 * it. Properties "job" (LbJob, nullable) and "selection" (LbSelection).
 *
 * Actions "plan.…": find, fit, zoom-in, zoom-out, show-list, open-sheet, mark (step name). */
#define LB_TYPE_PLAN_PAGE (lb_plan_page_get_type ())
G_DECLARE_FINAL_TYPE (LbPlanPage, lb_plan_page, LB, PLAN_PAGE, LbJobPage)

G_END_DECLS
