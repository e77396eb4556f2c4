/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What happens to a pile, in the order of work left. Rigged may come before severed. */
typedef enum {
  LB_STEP_STANDING,
  LB_STEP_CLEANED,
  LB_STEP_SEVERED,
  LB_STEP_RIGGED,
  LB_STEP_PULLED,
} LbStep;

#define LB_N_STEPS (LB_STEP_PULLED + 1)

/* A set of steps that have been done; bit LB_STEP_… each. */
typedef guint8 LbStepSet;

#define LB_STEP_BIT(step) ((LbStepSet) (1u << (step)))

const char *lb_step_name (LbStep step); /* "standing", "cleaned" …: key in files, msgid */
gboolean lb_step_from_name (const char *name, LbStep *out_step); /* also "s", "c", any case */

/* The step a pile is shown at: the furthest of @done; LB_STEP_STANDING for none. */
LbStep lb_step_furthest (LbStepSet done);

G_END_DECLS
