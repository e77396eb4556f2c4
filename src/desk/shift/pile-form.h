/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shift/shift-group.h"

G_BEGIN_DECLS

/* The line in which a pile's work is typed: recorded at Enter, and with Ctrl+Enter the same again of the
 * next pile in the bent. */
#define LB_TYPE_PILE_FORM (lb_pile_form_get_type ())
G_DECLARE_FINAL_TYPE (LbPileForm, lb_pile_form, LB, PILE_FORM, GtkBox)

/* The job or its record are others now. Borrows @group. */
void lb_pile_form_update (LbPileForm *self, LbShiftGroup *group);

/* Piles picked elsewhere stand in the line, as many as a person may have meant to type. */
void lb_pile_form_pick (LbPileForm *self, const guint *piles, gsize n);

G_END_DECLS
