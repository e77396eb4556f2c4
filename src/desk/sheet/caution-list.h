/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What must be said before the cut: what follows from this pile, then what holds at every cut, gravest
 * first; each with its gravity as a picture and a word, and where the rule comes from as its tooltip. */
#define LB_TYPE_CAUTION_LIST (lb_caution_list_get_type ())
G_DECLARE_FINAL_TYPE (LbCautionList, lb_caution_list, LB, CAUTION_LIST, GtkBox)

/* To be called again when the job has changed; @job NULL for nothing. @checks: LbCheck, those whose
 * boxes are ticked among them. Signal "toggled" (key, whether ticked): a person touched a box. */
void lb_caution_list_show (LbCautionList *self, LbJob *job, guint pile, const GArray *checks);

G_END_DECLS
