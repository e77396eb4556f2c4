/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Turns a closed job file into one of format 1, as versions before signatures wrote it: the same
 * rows in the tables of that time, as far as it had kinds for them. */
void format_1_make (const char *path);

G_END_DECLS
