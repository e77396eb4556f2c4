/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

G_BEGIN_DECLS

/* What job.c and job-work.c say to each other. */

/* Takes over all but @file. */
LbJob *lb_job_new_taking (GFile *file, LbBook *book, LbLedger *ledger, LbFold *fold, LbPlan *plan);

/* Reads what has been stored since, folds it, and emits "changed" when there was anything. */
gboolean lb_job_read_on (LbJob *self, GError **error);

/* Proves every signature away from the main thread; what does not hold is told as trouble. */
void lb_job_prove_signatures (LbJob *self);

/* What lb_job_get_trouble() says while there is no other trouble; NULL for that every seal holds. */
void lb_job_set_broken_seal (LbJob *self, const char *what);

/* While held, the job does not look for other programs' entries: a worker of its own writes, and
 * waiting for it would freeze the window. */
void lb_job_hold_watch (LbJob *self);
void lb_job_release_watch (LbJob *self);

G_END_DECLS
