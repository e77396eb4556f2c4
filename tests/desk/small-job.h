/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

G_BEGIN_DECLS

/* Bents of this pier, 3 m apart, and rows A, B, …, 2 m apart. */
#define SMALL_JOB_BENTS 4
#define SMALL_JOB_ROWS  3

/* A job file of 12 piles with 8 bars each in a folder of its own; returns its path, to be freed
 * with small_job_remove(). */
char *small_job_create (void);
void small_job_remove (char *path);

/* Opens it as the window does, waiting for it. */
LbJob *small_job_open (const char *path);

/* The same by somebody who may not write the file, whoever runs the test. */
LbJob *small_job_open_read_only (const char *path);

/* Runs the main loop until *@flag is TRUE; fails the test after ten seconds. */
void small_job_wait (const gboolean *flag);

G_END_DECLS
