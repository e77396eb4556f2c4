/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/sheet/section-view.h"

G_BEGIN_DECLS

/* What steps the section through the order to burn: back, play, forward, what each step means in
 * words, and the legend. Play stops where the hook must hold. Where nothing can be said, the reason
 * stands instead. Records nothing. */
#define LB_TYPE_SECTION_STEPS (lb_section_steps_get_type ())
G_DECLARE_FINAL_TYPE (LbSectionSteps, lb_section_steps, LB, SECTION_STEPS, GtkBox)

/* To be called again, after the section's own, when the job has changed; @job NULL for nothing. */
void lb_section_steps_show (LbSectionSteps *self, LbSectionView *section, LbJob *job, guint pile);

G_END_DECLS
