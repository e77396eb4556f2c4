/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"

G_BEGIN_DECLS

/* Copies of jobs that the program keeps by itself, each in one folder for them all, the last few of
 * each file. They are whole job files, marked read-only. */

#define LB_BACKUPS_KEPT 10

typedef struct
{
  char *path;
  gint64 made_us; /* UTC, by its name */
  goffset size;
} LbBackup;

void lb_backup_free (LbBackup *backup);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbBackup, lb_backup_free)

/* Where this user's copies are kept; to be freed. */
char *lb_backup_folder (void);

/**
 * lb_backup_list:
 * @folder: where all copies are kept; need not be there
 * @job_path: the job file they were made of; it need not be there nor whole
 *
 * Returns: (transfer full) (element-type LbBackup): the newest first
 */
GPtrArray *lb_backup_list (const char *folder, const char *job_path);

/**
 * lb_backup_keep:
 * @now_us: UTC, for the copy's name
 * @out_path: (out) (nullable): the copy, to be freed; %NULL when the newest copy says the same
 *
 * Copies the job file at @job_path into @folder, which is made when it is not there, unless nothing
 * was added since the newest copy; then removes all copies of that file but the newest
 * %LB_BACKUPS_KEPT. Opens the file by a connection of its own, for any thread; changes nothing of
 * the job.
 */
gboolean lb_backup_keep (const char *folder,
                         const char *job_path,
                         gint64 now_us,
                         char **out_path,
                         GError **error);

/* Whether the file at @path is kept in @folder, so that nothing should be recorded in it. */
gboolean lb_backup_is_kept_in (const char *folder, const char *path);

G_END_DECLS
