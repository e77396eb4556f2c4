/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/selection.h"
#include "desk/shift/shift-group.h"

G_BEGIN_DECLS

/* One line a pile worked in the shift, and a line to type the next one in. */
#define LB_TYPE_PILE_LINES (lb_pile_lines_get_type ())
G_DECLARE_FINAL_TYPE (LbPileLines, lb_pile_lines, LB, PILE_LINES, LbShiftGroup)

/* The piles picked on another page stand in the line to type in; pressing a line picks its pile. */
void lb_pile_lines_set_selection (LbPileLines *self, LbSelection *selection);

G_END_DECLS
