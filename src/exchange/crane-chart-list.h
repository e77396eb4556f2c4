/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/crane.h"

#include <glib.h>

G_BEGIN_DECLS

/**
 * lb_crane_chart_from_csv:
 * @text: a first line as "radius (ft),capacity (lb)", then a line a row; any delimiter of a list
 * @length: in bytes
 * @out_chart: (out): a sound chart; untouched on failure
 *
 * The crane's own chart. Radii are in ft or m, capacities in lb, kip, t (1000 kg) or kg, as the first
 * line says; rows go from the shortest radius to the longest.
 *
 * Returns: %FALSE with %LB_EXCHANGE_ERROR, naming line and column, when any of it is not so: a chart
 *   that is wrong in one place is taken in none.
 */
gboolean lb_crane_chart_from_csv (const char *text,
                                  gsize length,
                                  LbCraneChart *out_chart,
                                  GError **error);

G_END_DECLS
