/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/ledger.h"

#include <glib.h>

G_BEGIN_DECLS

/* Two ledgers of one job become one: the union of their rows by id. So the same packet twice changes
 * nothing, any order gives the same job, and nothing is lost. */

/* What one ledger has that another lacks, and which row everything of it will be there. */
typedef struct
{
  const LbLedger *from;               /* borrowed */
  guint n_piles, n_shifts, n_entries; /* rows of the other when this was planned */
  GArray *piles;                      /* guint: piles of @from to be added, by index */
  GArray *shifts;                     /* guint: shifts of it, by index, as its file has them */
  GArray *entries;                    /* gint64: entries of it, by number, as its file has them */
  gint64 *pile_rows;                  /* by index: the row it has or gets, from 1 */
  gint64 *shift_rows;                 /* the same */
  gint64 *entry_rows;                 /* by number less one */
  gint64 *act_rows;                   /* the same: the row of its act's first entry */
  gint64 *of_rows;                    /* the same: that of the act it names, 0 for none */
} LbJoinPlan;

/**
 * lb_join_plan:
 * @into: not changed; one without a job id takes any job
 * @from: lives as long as the plan
 *
 * What @from would add to @into. Refuses with %LB_BOOK_ERROR_FOREIGN what is of another job, and
 * with %LB_BOOK_ERROR_DAMAGED a row that says otherwise than the one that is known under its id,
 * an id or an entry that no program of ours would have written, and an act of which a part is
 * missing.
 */
LbJoinPlan *lb_join_plan (const LbLedger *into, const LbLedger *from, GError **error);
void lb_join_plan_free (LbJoinPlan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbJoinPlan, lb_join_plan_free)

/* Adds what was planned to the ledger that it was planned for, in memory only. */
void lb_ledger_join (LbLedger *into, const LbJoinPlan *plan);

G_END_DECLS
