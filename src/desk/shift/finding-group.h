/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shift/shift-group.h"

G_BEGIN_DECLS

/* What does not fit together in the shift as a whole, and in the job; hidden while there is nothing. */
#define LB_TYPE_FINDING_GROUP (lb_finding_group_get_type ())
G_DECLARE_FINAL_TYPE (LbFindingGroup, lb_finding_group, LB, FINDING_GROUP, LbShiftGroup)

G_END_DECLS
