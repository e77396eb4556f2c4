/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/plan.h"

G_BEGIN_DECLS

/* The plan as pixels, for the screen: what lb_plan_draw() draws, many times as fast. It knows no
 * widget. */
typedef struct _LbPlanImage LbPlanImage;

LbPlanImage *lb_plan_image_new (void);
void lb_plan_image_free (LbPlanImage *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbPlanImage, lb_plan_image_free)

/* To be told whenever the plan is another one, or not the same any more. */
void lb_plan_image_forget_plan (LbPlanImage *self);

/**
 * lb_plan_image_draw:
 * @shown: (nullable): one a pile, %FALSE leaves it out
 * @width: of the page in px; @view is in px too
 * @scale: device pixels to a px, 1 or 2
 *
 * Returns: (transfer none): the page, an ARGB32 image of @width × @scale by @height × @scale. It
 *   is not drawn into again by the next call, but by the one after it.
 */
cairo_surface_t *lb_plan_image_draw (LbPlanImage *self,
                                     const LbPalette *palette,
                                     const LbVoice *voice,
                                     const LbPlan *plan,
                                     const LbPlanView *view,
                                     const gboolean *shown,
                                     int width,
                                     int height,
                                     int scale);

G_END_DECLS
