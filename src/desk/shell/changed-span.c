/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/changed-span.h"

static gboolean
is_same (const GPtrArray *a, guint i, const GPtrArray *b, guint j)
{
  return g_str_equal (g_ptr_array_index (a, i), g_ptr_array_index (b, j));
}

LbChangedSpan
lb_changed_span (const GPtrArray *old_keys, const GPtrArray *new_keys)
{
  const guint n_least = MIN (old_keys->len, new_keys->len);
  guint before = 0, after = 0;

  while (before < n_least && is_same (old_keys, before, new_keys, before))
    before++;
  while (after < n_least - before &&
         is_same (old_keys, old_keys->len - 1 - after, new_keys, new_keys->len - 1 - after))
    after++;

  return (LbChangedSpan){ .at = before,
                          .n_old = old_keys->len - before - after,
                          .n_new = new_keys->len - before - after };
}
