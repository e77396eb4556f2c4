/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shift/shift-group.h"

G_BEGIN_DECLS

/* Wind, sea, current and the like, each as it was said last in the shift. */
#define LB_TYPE_CONDITIONS_GROUP (lb_conditions_group_get_type ())
G_DECLARE_FINAL_TYPE (LbConditionsGroup, lb_conditions_group, LB, CONDITIONS_GROUP, LbShiftGroup)

G_END_DECLS
