/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Where two lists of rows differ, rows being told apart by a text each: from @at on, @n_old rows
 * of the one give way to @n_new of the other; what stands before and after is the same. */
typedef struct
{
  guint at, n_old, n_new;
} LbChangedSpan;

LbChangedSpan lb_changed_span (const GPtrArray *old_keys, const GPtrArray *new_keys);

G_END_DECLS
