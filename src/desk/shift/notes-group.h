/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shift/shift-group.h"

G_BEGIN_DECLS

/* Conditions of the shift, and notes that belong to no pile. */
#define LB_TYPE_NOTES_GROUP (lb_notes_group_get_type ())
G_DECLARE_FINAL_TYPE (LbNotesGroup, lb_notes_group, LB, NOTES_GROUP, LbShiftGroup)

G_END_DECLS
