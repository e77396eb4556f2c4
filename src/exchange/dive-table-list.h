/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/dive-table.h"

#include <glib.h>

G_BEGIN_DECLS

/**
 * lb_dive_table_from_csv:
 * @text: lines as "fsw,nostop,A,B" and "40,163,12,20"; msw for metres; any delimiter of a list
 * @length: in bytes
 * @out: (out): untouched on failure
 *
 * The supervisor's own table of no-stop limits. Depths rise, limits are whole minutes or “unlimited”
 * and never grow with depth. Group columns, a capital letter each and in order, may be left out;
 * their times rise within a row and stay within the limit, empty ones stand first or last, and “*”,
 * any longer time, is the last of a row without limit.
 *
 * Returns: %FALSE with %LB_EXCHANGE_ERROR, naming line and column, when any of it is not so: a table
 *   that is wrong in one place is taken in none.
 */
gboolean lb_dive_table_from_csv (const char *text, gsize length, LbDiveTable *out, GError **error);

G_END_DECLS
