/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"
#include "book/finding.h"
#include "book/fold.h"
#include "draw/picture-text.h"
#include "draw/plan.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* The open job as the window sees it: the book, what it says, and what follows from it.
 * Main thread only; loading runs on a worker. It looks for other programs' entries twice a second
 * and says so by the same signal as for its own.
 *
 * Signal "changed": ledger, fold and plan are new; pointers got before are gone afterwards. */
#define LB_TYPE_JOB (lb_job_get_type ())
G_DECLARE_FINAL_TYPE (LbJob, lb_job, LB, JOB, GObject)

/* Begins to open a file before the window is there, so that reading and building go on side by
 * side; the next lb_job_open_async() of that file takes it over. Once in a program. */
void lb_job_open_ahead (GFile *file);

/* Gives up an opening that nobody took over: another window of the program, in another process,
 * shows the file, or none could be shown. */
void lb_job_forget_ahead (void);

void lb_job_open_async (GFile *file,
                        GCancellable *cancellable,
                        GAsyncReadyCallback callback,
                        gpointer data);
LbJob *lb_job_open_finish (GAsyncResult *result, GError **error); /* (transfer full) */

GFile *lb_job_get_file (LbJob *self);
const LbLedger *lb_job_get_ledger (LbJob *self);
const LbFold *lb_job_get_fold (LbJob *self);
const LbPlan *lb_job_get_plan (LbJob *self); /* of the fold */
gboolean lb_job_is_read_only (LbJob *self);
const LbVoice *lb_job_get_voice (LbJob *self); /* the job's units, the locale's numbers, UI font */

/* What does not fit together in the present shift and in the job (LbFinding): found when first asked
 * for, gone with the next change. */
const GArray *lb_job_get_findings (LbJob *self);

/* Why the file cannot be followed just now (gone, damaged, …), NULL when all is well. */
const char *lb_job_get_trouble (LbJob *self);

/* Today's shift (or the one picked on the Shift page): index in the ledger, -1 for none yet.
 * Recording opens it. */
int lb_job_get_shift (LbJob *self);
int lb_job_get_shift_of_today (LbJob *self);     /* whatever is picked */
void lb_job_pick_shift (LbJob *self, int shift); /* -1: today's again */
gboolean lb_job_open_shift (LbJob *self, guint32 day, const char *watch, GError **error);

/* The day (Julian) and watch that work recorded now belongs to: the small hours are still
 * yesterday's night. */
guint32 lb_job_present_day (const char **out_watch);

/* Stores at once, in the present shift unless a draft names one; refolds; emits "changed". */
gboolean lb_job_record (LbJob *self, const LbDraft *drafts, gsize n_drafts, GError **error);

/* Signs the present shift: it is sealed (book/seal.h), and takes only corrections from then on. */
gboolean lb_job_sign (LbJob *self, const char *who, GError **error);

/* The present shift's signature, NULL while it has none; gone with the next change. */
const LbSignature *lb_job_get_signature (LbJob *self);

/* Why the present shift, which is signed, is being corrected; NULL when it is not. While it is, all
 * that is recorded in it goes in as a correction that says so. Picking a shift ends it. */
void lb_job_set_correction (LbJob *self, const char *reason);
const char *lb_job_get_correction (LbJob *self);

gboolean lb_job_can_take_back (LbJob *self);
gboolean lb_job_can_redo (LbJob *self);
gboolean lb_job_take_back (LbJob *self, GError **error);
gboolean lb_job_redo (LbJob *self, GError **error);

/* Piles in bulk, on a worker with a connection of its own; "changed" follows. @piles and the
 * strings they borrow must live until it has finished: @keep is freed then by @free_keep. */
void lb_job_add_piles_async (LbJob *self,
                             const LbPile *piles,
                             gsize n_piles,
                             gpointer keep,
                             GDestroyNotify free_keep,
                             void (*progress) (gsize done,
                                               gsize total,
                                               gpointer data), /* main thread */
                             gpointer progress_data,
                             GCancellable *cancellable,
                             GAsyncReadyCallback callback,
                             gpointer data);
gboolean lb_job_add_piles_finish (LbJob *self, GAsyncResult *result, GError **error);

/* A whole copy at @file, made on a worker; takes the place of what is there, never of the job's
 * own file. */
void lb_job_copy_async (LbJob *self,
                        GFile *file,
                        GCancellable *cancellable,
                        GAsyncReadyCallback callback,
                        gpointer data);
gboolean lb_job_copy_finish (LbJob *self, GAsyncResult *result, GError **error);

/* Records that piles reached @step, with what goes with it (book/gesture.h), as one act. */
gboolean lb_job_mark_step (LbJob *self, const guint *piles, gsize n, LbStep step, GError **error);

/* Records what somebody says to a finding. */
gboolean lb_job_answer (LbJob *self, const LbFinding *finding, const char *reason, GError **error);

/* Records bars of one pile as burned. */
gboolean lb_job_burn_bars (LbJob *self, guint pile, LbBarSet bars, GError **error);

/* The same for bars of which only the count is known. */
gboolean lb_job_find_gone (LbJob *self, guint pile, LbBarSet bars, GError **error);
gboolean lb_job_burn_count (LbJob *self, guint pile, guint count, GError **error);

G_END_DECLS
