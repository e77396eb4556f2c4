/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/dive-table.h"

#include <glib.h>

G_BEGIN_DECLS

/**
 * lb_dive_table_from_text:
 * @text: UTF-8; lines as "fsw,nostop,A,B" and "40,163,12,20"; msw for metres
 * @out: (out): untouched on failure
 *
 * The supervisor's own table of no-stop limits, as the job file's setting “dive-table” holds it.
 * Depths rise, limits are whole minutes or “unlimited” and never grow with depth. Group columns, a
 * capital letter each and in order, may be left out; their times rise within a row and stay within
 * the limit, empty ones stand first or last, and “*”, any longer time, is the last of a row without
 * limit. Empty lines and blanks about a cell don't count.
 *
 * Returns: %FALSE with %LB_BOOK_ERROR_REFUSED, naming line and column, when any of it is not so: a
 *   table that is wrong in one place is taken in none.
 */
gboolean lb_dive_table_from_text (const char *text, LbDiveTable *out, GError **error);

G_END_DECLS
