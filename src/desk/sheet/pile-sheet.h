/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job-page.h"

G_BEGIN_DECLS

/* The sheet of the pile that is picked: how it stands, what its cut takes, what to beware of, its
 * facts and history, and the ways to record. Several piles picked are summed up instead. */
#define LB_TYPE_PILE_SHEET (lb_pile_sheet_get_type ())
G_DECLARE_FINAL_TYPE (LbPileSheet, lb_pile_sheet, LB, PILE_SHEET, LbJobPage)

/* Goes to the checks before the dive of that entry's id, which must be at the pile shown. */
void lb_pile_sheet_show_checks (LbPileSheet *self, const char *dive_id);

G_END_DECLS
