/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shift/shift-group.h"

G_BEGIN_DECLS

/* Time lost in the shift: delays by cause, and gear faults by part. */
#define LB_TYPE_LOST_GROUP (lb_lost_group_get_type ())
G_DECLARE_FINAL_TYPE (LbLostGroup, lb_lost_group, LB, LOST_GROUP, LbShiftGroup)

G_END_DECLS
