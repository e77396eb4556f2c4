/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/setting-table.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/**
 * lb_setting_list_from_csv:
 * @text: a table as book/setting-table holds it, with any delimiter of a list, and where it has
 *   decimals, with a decimal comma or grouping
 * @length: in bytes
 *
 * Returns: (nullable): the same as the job's setting holds it, to be freed; %NULL with an error that
 *   names line and column when any of it is wrong: then it is taken in no part.
 */
char *lb_setting_list_from_csv (LbSettingTable table,
                                const char *text,
                                gsize length,
                                GError **error);

/* The same of a file. */
char *lb_setting_list_load (LbSettingTable table, GFile *file, GError **error);

G_END_DECLS
