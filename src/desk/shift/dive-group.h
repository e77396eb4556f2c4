/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shift/shift-group.h"

G_BEGIN_DECLS

/* The dives of the shift, each with its bottom time against the no-stop limit. */
#define LB_TYPE_DIVE_GROUP (lb_dive_group_get_type ())
G_DECLARE_FINAL_TYPE (LbDiveGroup, lb_dive_group, LB, DIVE_GROUP, LbShiftGroup)

G_END_DECLS
