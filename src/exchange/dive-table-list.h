/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/dive-table.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/**
 * lb_dive_table_from_csv:
 * @text: a table as lb_dive_table_from_text() takes it, with any delimiter of a list
 * @length: in bytes
 * @out: (out): untouched on failure
 *
 * The supervisor's own table of no-stop limits.
 *
 * Returns: (nullable): the same as the job's setting “dive-table” holds it, to be freed; %NULL with
 *   an error that names line and column when any of it is wrong: then it is taken in no part.
 */
char *lb_dive_table_from_csv (const char *text, gsize length, LbDiveTable *out, GError **error);

/* The same of a file. */
char *lb_dive_table_load (GFile *file, LbDiveTable *out, GError **error);

G_END_DECLS
