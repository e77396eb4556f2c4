/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/quantity.h"

#include <glib.h>

G_BEGIN_DECLS

/* How far a diver sees, in classes that a burner would name. The bounds are common practice: under
 * an arm's length the work is by feel, over three arms' lengths the whole pile is seen. */
typedef enum {
  LB_VISIBILITY_UNKNOWN,
  LB_VISIBILITY_NONE, /* black water, by feel */
  LB_VISIBILITY_POOR, /* under 3 ft */
  LB_VISIBILITY_FAIR, /* 3 to 10 ft */
  LB_VISIBILITY_GOOD, /* over 10 ft */
} LbVisibility;

#define LB_N_VISIBILITIES (LB_VISIBILITY_GOOD + 1)

/**
 * lb_visibility_from_text:
 * @text: as said in the shift's record: "none", "black", "5 ft", "0.5-1 m", "poor"; of a range the
 *   lower end counts, and a number without a unit is in @units
 *
 * Returns: the class; unknown for anything that is not understood
 */
LbVisibility lb_visibility_from_text (const char *text, LbUnits units);

/* The classes by name, as in files and commands: "unknown", "none", "poor", "fair", "good". */
const char *lb_visibility_key (LbVisibility visibility);
gboolean lb_visibility_from_key (const char *key, LbVisibility *out_visibility);

const char *lb_visibility_name (LbVisibility visibility); /* msgid: "poor visibility" */

G_END_DECLS
