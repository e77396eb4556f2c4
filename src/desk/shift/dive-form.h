/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/dive-log.h"
#include "desk/shift/shift-group.h"

G_BEGIN_DECLS

/* Where a dive is typed, recorded whole at Enter: who, how deep, when, where, and what it burned and
 * used. Under it stands what the typed diver has left.
 *
 * Signal "changed": the dive in the form is another. */
#define LB_TYPE_DIVE_FORM (lb_dive_form_get_type ())
G_DECLARE_FINAL_TYPE (LbDiveForm, lb_dive_form, LB, DIVE_FORM, GtkBox)

/* The job or its record are others now. Borrows both until it is told again. */
void lb_dive_form_update (LbDiveForm *self, LbShiftGroup *group, const LbDiveLog *log);

/* What the typed diver has left, as of now. */
void lb_dive_form_show_left (LbDiveForm *self);

double lb_dive_form_get_depth (LbDiveForm *self); /* NAN while there is none */

G_END_DECLS
