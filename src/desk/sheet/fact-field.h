/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/sheet/checked-row.h"
#include "desk/shell/job.h"

G_BEGIN_DECLS

/* One fact of a pile, typed in the job's unit. What cannot be true is refused; what disagrees with
 * the other facts is stored and said. */
#define LB_TYPE_FACT_FIELD (lb_fact_field_get_type ())
G_DECLARE_FINAL_TYPE (LbFactField, lb_fact_field, LB, FACT_FIELD, LbCheckedRow)

LbFactField *lb_fact_field_new (LbFact fact);

/* To be called again when the job has changed. What is being typed for the same pile is left
 * alone; for another one it must have been stored before, or is forgotten. */
void lb_fact_field_show (LbFactField *self, LbJob *job, guint pile);

/* Records one fact of a pile from a text in @units. */
gboolean lb_fact_record (LbJob *job,
                         guint pile,
                         LbFact fact,
                         const char *text,
                         LbUnits units,
                         GError **error);

G_END_DECLS
