/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* The facts of one pile, to be read and corrected. */
#define LB_TYPE_FACT_GROUP (lb_fact_group_get_type ())
G_DECLARE_FINAL_TYPE (LbFactGroup, lb_fact_group, LB, FACT_GROUP, AdwExpanderRow)

/* To be called again when the job has changed; @job NULL for nothing. */
void lb_fact_group_show (LbFactGroup *self, LbJob *job, guint pile);

/* Stores what stands typed; to be called before another pile is shown. */
void lb_fact_group_commit (LbFactGroup *self);

/* Opens and puts the focus where the fact is given. */
void lb_fact_group_ask (LbFactGroup *self, LbFact fact);

G_END_DECLS
