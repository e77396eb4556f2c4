/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/outline.h"

#include <glib.h>

G_BEGIN_DECLS

/* Rakers under piers lean 1:12 to 1:3: common practice. As far as one may whose batter nobody has said. */
#define LB_BATTER_MOST (1.0 / 3)

/* A batter is kept as run per rise (1:6 is 1/6, plumb is 0) with a bearing in radians clockwise
 * from grid north: the way the head is out of plumb from the toe, which is the way it leans. */

double lb_batter_angle (double batter);                      /* rad from the vertical */
double lb_batter_true_length (double batter, double rise_m); /* m along the axis */

/**
 * lb_batter_offset:
 *
 * How far the axis moves in plan over @rise_m of height: x east and y north, m.
 * Going down, subtract it.
 */
LbPoint lb_batter_offset (double batter, double bearing_rad, double rise_m);

/**
 * lb_batter_from_text:
 * @text: "1:6", "6" (a number of 2 or more is the k of 1:k), "9.5°" or "9.5 deg" (from the
 *   vertical), "0", "plumb", "vertical" or ""; a decimal comma is read
 *
 * Refuses what leans more than 1:1 (45°) or cannot be read.
 */
gboolean lb_batter_from_text (const char *text, double *out_batter, GError **error);

/* "1:6", "1:4.5", "plumb" */
char *lb_batter_to_text (double batter);

/**
 * lb_bearing_from_text:
 * @text: degrees ("45", "45.5°", 0 to 360), a quadrant ("N45E", "S 12.5 W"), or a compass point
 *   ("NE", "south", "SSW")
 */
gboolean lb_bearing_from_text (const char *text, double *out_bearing_rad, GError **error);

typedef enum {
  LB_COMPASS_N,
  LB_COMPASS_NE,
  LB_COMPASS_E,
  LB_COMPASS_SE,
  LB_COMPASS_S,
  LB_COMPASS_SW,
  LB_COMPASS_W,
  LB_COMPASS_NW,
} LbCompass;

LbCompass lb_compass_nearest (double bearing_rad);
const char *lb_compass_name (LbCompass compass); /* "north", "north-east" …: msgids */

G_END_DECLS
