/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/grip.h"

#include <glib.h>

G_BEGIN_DECLS

/**
 * lb_ground_from_text:
 * @text: lines as "to ft,soil,strength psf,in water pcf" and "12,clay,400,38"
 * @out_ground: (out): untouched on failure
 *
 * The ground, as the job file's setting “ground” holds it. Each layer begins where the one above ends,
 * the first at the mudline, so that there is no gap; @to is in ft or m below the mudline. The soil is
 * “clay” with its undrained shear strength, a sand of lb_sand_name() without one, or “friction” with
 * the friction that the engineer gives, in psf, ksf or kPa. In water is what the wet ground weighs less
 * the water, in pcf, kg/m3 or kN/m3.
 *
 * Returns: %FALSE with %LB_BOOK_ERROR_REFUSED, naming line and column, when any of it is not so
 */
gboolean lb_ground_from_text (const char *text, LbGround *out_ground, GError **error);

/* The soils as lb_ground_from_text() reads them, msgids: "clay", the sands' names, "friction". */
#define LB_N_SOIL_WORDS (LB_N_SANDS + 2)
const char *lb_soil_word (guint i);

G_END_DECLS
