/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shift/shift-group.h"

G_BEGIN_DECLS

/* Rods and oxygen used in the shift. */
#define LB_TYPE_USED_GROUP (lb_used_group_get_type ())
G_DECLARE_FINAL_TYPE (LbUsedGroup, lb_used_group, LB, USED_GROUP, LbShiftGroup)

G_END_DECLS
