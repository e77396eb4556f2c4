/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What the oxygen hose takes between regulator and torch. Smooth pipe at 70 °F: fittings, valves and
 * kinks come on top. Flows are of free gas (70 °F, 1 atm), pressures gauge. */
typedef struct
{
  double length_m;
  double bore_m;        /* inside diameter */
  double flat_pa_per_m; /* an allowance taken in place of the formula; NAN to go by the flow */
} LbHose;

/**
 * lb_hose_loss:
 * @flow_m3_s: 0 or more
 * @outlet_pa: what must stand at the torch end: over-bottom and bottom pressure
 * @out_loss_pa: (out): for lb_regulator_setting(); untouched on failure
 *
 * Refuses a negative length, a bore or flow that makes no sense, and a flow that the hose cannot
 * pass at that pressure (it would leave faster than sound).
 */
gboolean lb_hose_loss (const LbHose *hose,
                       double flow_m3_s,
                       double outlet_pa,
                       double *out_loss_pa,
                       GError **error);

G_END_DECLS
