/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job-page.h"

G_BEGIN_DECLS

/* How the job goes: the daily chart, the same as a table, and both as files.
 * Properties "job" (LbJob, nullable) and "selection" (LbSelection). */
#define LB_TYPE_PRODUCTION_PAGE (lb_production_page_get_type ())
G_DECLARE_FINAL_TYPE (LbProductionPage, lb_production_page, LB, PRODUCTION_PAGE, LbJobPage)

G_END_DECLS
