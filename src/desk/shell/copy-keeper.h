/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

G_BEGIN_DECLS

/**
 * lb_copy_keeper_begin:
 *
 * Has a copy of the job's file kept (book/backup.h), a little later and on a worker, if anything
 * was recorded since the last one. Not of a job that is open for reading, nor of the demo. A
 * failure is a line in the log and stops nothing.
 */
void lb_copy_keeper_begin (LbJob *job);

G_END_DECLS
