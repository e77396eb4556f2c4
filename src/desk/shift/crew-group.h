/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shift/shift-group.h"

G_BEGIN_DECLS

/* From when to when the shift worked, and who had a charge in it. */
#define LB_TYPE_CREW_GROUP (lb_crew_group_get_type ())
G_DECLARE_FINAL_TYPE (LbCrewGroup, lb_crew_group, LB, CREW_GROUP, LbShiftGroup)

G_END_DECLS
