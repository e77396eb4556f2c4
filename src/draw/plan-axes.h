/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/plan.h"

G_BEGIN_DECLS

/* Labels for the bents and rows of @fold, beside the deck: all bents along one side and all rows
 * along another, however the pier is turned. Fills @plan's axes. */
void lb_plan_find_axes (LbPlan *plan, const LbFold *fold);

/* Draws them; those that would run into the one before are left out. */
void lb_plan_draw_axes (cairo_t *cr,
                        const LbPalette *palette,
                        const LbVoice *voice,
                        const LbPlan *plan,
                        const LbPlanView *view,
                        double width,
                        double height);

/* Draws the scale bar in whole steps of the voice's unit, with its left end at @x and its foot
 * at @y, at most @longest long. */
void lb_plan_draw_scale_bar (cairo_t *cr,
                             const LbPalette *palette,
                             const LbVoice *voice,
                             const LbPlanView *view,
                             double x,
                             double y,
                             double longest);

/* Draws the north arrow about (@x, @y), @size tall. */
void lb_plan_draw_north (cairo_t *cr,
                         const LbPalette *palette,
                         const LbVoice *voice,
                         double x,
                         double y,
                         double size);

G_END_DECLS
