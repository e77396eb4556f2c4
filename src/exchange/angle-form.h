/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * lb_angle_form_plain:
 * @text: "N45°30'15\"E", "45-30-15", "N 45 30 15 E", or any other
 *
 * Returns: (transfer full): @text with degrees, minutes and seconds made decimal degrees, as the
 *   trade reads them; a plain copy when it holds no minutes or they are not under 60
 */
char *lb_angle_form_plain (const char *text);

G_END_DECLS
