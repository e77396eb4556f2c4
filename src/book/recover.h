/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"

G_BEGIN_DECLS

/* What came of a recovery. Rows that are not there at the end of a table are not known to have been,
 * so that the lost ones are “at least”. */
typedef struct
{
  guint n_piles, n_shifts, n_entries; /* kept */
  guint n_lost_piles, n_lost_shifts, n_lost_entries;
  /* Of the lost entries, those that could be read: */
  guint n_orphans;        /* about a pile, in a shift or of an act that is lost */
  guint n_torn;           /* of an act of which another part is lost */
  guint n_open_acts;      /* kept, with a gap right after them: they may lack their end */
  guint n_seals;          /* kept; they may no longer prove */
  guint64 n_unread_bytes; /* that the disk did not give, or beyond the end of a file that was cut */
  gboolean is_other_job;  /* the job's identity was lost too: the new file got one of its own */
} LbRecovery;

/**
 * lb_book_recover:
 * @damaged: is never changed; its journal, if there is one, neither
 * @path: must not exist
 *
 * Makes a new job file at @path of all that can be read of @damaged: whole acts, whose piles and
 * shifts are there, with their ids and moments, numbered anew. Takes its time; for any thread.
 *
 * Returns: %FALSE with %LB_BOOK_ERROR_DAMAGED when there is nothing of a job to be read
 */
gboolean lb_book_recover (const char *damaged,
                          const char *path,
                          LbRecovery *out_recovery,
                          GCancellable *cancellable,
                          GError **error);

/* Whether all that was ever recorded is there, as far as can be told. */
gboolean lb_recovery_is_whole (const LbRecovery *recovery);

/* What was kept, what was not and what that means, a sentence a line; to be freed. */
char *lb_recovery_to_text (const LbRecovery *recovery);

G_END_DECLS
