/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/ledger.h"
#include "trade/repetitive.h"

#include <glib.h>

G_BEGIN_DECLS

/* One caution as it was gone through before a dive. */
typedef struct
{
  const char *key; /* the caution's, known to this version's table or not */
  gboolean is_ticked;
} LbCheck;

/* A dive on record, and what it is held against: the no-stop limit less what the diver's earlier
 * dives count, and the checks ticked before it. Plain, for the window and the daily report alike. */
typedef struct
{
  const LbEntry *dive;
  double bottom_s; /* NAN when not written down */
  /* What the diver had. Where that cannot be told, the bare limit of the depth if there is one. */
  LbDiveLeft left;
  gboolean has_limit; /* @left and @bottom_s can be compared */
  LbDiveLeftState
    state;        /* why @left is no more than the bare limit, or that this dive is past it */
  GArray *checks; /* LbCheck, in the order they were first said; NULL when not looked up */
} LbDiveAccount;

/* The check of that key; NULL when nothing was said of it. */
static inline const LbCheck *
lb_check_find (const GArray *checks, const char *key)
{
  for (guint i = 0; i < checks->len; i++) {
    const LbCheck *check = &g_array_index (checks, LbCheck, i);

    if (g_str_equal (check->key, key))
      return check;
  }
  return NULL;
}

static inline guint
lb_checks_n_ticked (const GArray *checks)
{
  guint n = 0;

  for (guint i = 0; i < checks->len; i++)
    n += g_array_index (checks, LbCheck, i).is_ticked ? 1 : 0;
  return n;
}

G_END_DECLS
