/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/finding.h"
#include "book/fold.h"
#include "book/ledger.h"

#include <glib.h>

G_BEGIN_DECLS

/* What a join would bring, told before anything is stored. */
typedef struct
{
  guint n_piles, n_shifts; /* new to the job */
  guint n_work, n_facts;   /* new entries: of shifts; facts and settings */
  guint n_known;           /* entries that come and are known */
  gint64 latest_us;        /* the latest moment of the new entries, G_MININT64 for none */
  LbLedger *joined;        /* what the job would be */
  LbFold *fold;            /* of it */
  guint *n_by_shift;       /* new entries by shift of @joined */
  guint8 *is_new_shift;    /* by shift of @joined */
  GArray *findings;        /* LbFinding of @joined that neither side has by itself: what both say
                              does not fit together */
} LbJoinPreview;

/**
 * lb_join_preview_new:
 * @into: (transfer full): becomes what the job would be
 *
 * Refuses what lb_join_plan() refuses.
 */
LbJoinPreview *lb_join_preview_new (LbLedger *into, const LbLedger *from, GError **error);
void lb_join_preview_free (LbJoinPreview *preview);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbJoinPreview, lb_join_preview_free)

gboolean lb_join_preview_is_empty (const LbJoinPreview *preview);

G_END_DECLS
