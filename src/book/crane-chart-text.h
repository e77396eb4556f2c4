/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/crane.h"

#include <glib.h>

G_BEGIN_DECLS

/**
 * lb_crane_chart_from_text:
 * @text: lines as "radius ft,capacity lb" and "30,42000"
 * @out_chart: (out): a sound chart; untouched on failure
 *
 * The crane's own chart, as the job file's setting “crane-chart” holds it. Radii are in ft or m,
 * capacities in lb, kip, t (1000 kg) or kg, as the first line says; rows go from the shortest radius to
 * the longest.
 *
 * Returns: %FALSE with %LB_BOOK_ERROR_REFUSED, naming line and column, when any of it is not so: a
 *   chart that is wrong in one place is taken in none.
 */
gboolean lb_crane_chart_from_text (const char *text, LbCraneChart *out_chart, GError **error);

G_END_DECLS
