/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tool/command.h"
#include "trade/quantity.h"
#include "trade/range.h"

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* JSON for programs: SI values, each member named with its unit ("hook_load_n"); what is not known
 * is null. */

/* "hook-load" and a force: "hook_load_n"; @part ("low", NULL for none) stands before the unit. To
 * be freed. */
char *lb_json_name (const char *key, const char *part, LbQuantity quantity);

/* A number, null unless finite; inside an object, after its name, or in an array. */
void lb_json_add_number (JsonBuilder *builder, double value);

/* Adds a named member; @name is taken. */
void lb_json_add_member (JsonBuilder *builder, char *name, double value);
/* Three of them: "burn_s", "burn_low_s", "burn_high_s". */
void lb_json_add_range (JsonBuilder *builder,
                        const char *key,
                        LbQuantity quantity,
                        const LbRange *range);
void lb_json_add_count (JsonBuilder *builder, const char *name, gint64 count);
void lb_json_add_text (JsonBuilder *builder, const char *name, const char *text);

/* The facts of a pile and where it stands in the work, as members of the object begun. */
void lb_json_add_pile (JsonBuilder *builder, const LbFold *fold, guint pile);

/* Puts what @builder holds on stdout. */
LbExit lb_json_put (JsonBuilder *builder);

G_END_DECLS
