/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/copy-keeper.h"

#include "book/backup.h"
#include "book/demo-job.h"

/* The window is shown first, and what is left of the start is over. */
#define WAIT_MS 1500

static void
keep_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  g_autofree char *folder = lb_backup_folder ();
  GError *error = NULL;

  if (lb_backup_keep (folder, task_data, g_get_real_time (), NULL, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
kept_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;

  if (!g_task_propagate_boolean (G_TASK (result), &error))
    g_message ("No copy was kept: %s", error->message);
  if (g_application_get_default () != NULL)
    g_application_release (g_application_get_default ());
}

static gboolean
wait_ended_cb (gpointer data)
{
  g_autoptr (LbJob) job = g_weak_ref_get (data);
  g_autoptr (GTask) task = NULL;

  if (job == NULL)
    return G_SOURCE_REMOVE;
  task = g_task_new (NULL, NULL, kept_cb, NULL);
  g_task_set_source_tag (task, lb_copy_keeper_begin);
  g_task_set_task_data (task, g_file_get_path (lb_job_get_file (job)), g_free);
  if (g_application_get_default () != NULL)
    g_application_hold (g_application_get_default ());
  g_task_run_in_thread (task, keep_thread);
  return G_SOURCE_REMOVE;
}

static void
weak_ref_free (gpointer data)
{
  g_weak_ref_clear (data);
  g_free (data);
}

void
lb_copy_keeper_begin (LbJob *job)
{
  GWeakRef *weak;

  g_return_if_fail (LB_IS_JOB (job));

  if (lb_job_is_read_only (job) || g_strcmp0 (lb_job_get_fold (job)->name, LB_DEMO_NAME) == 0)
    return;
  weak = g_new0 (GWeakRef, 1);
  g_weak_ref_init (weak, job);
  g_timeout_add_full (G_PRIORITY_LOW, WAIT_MS, wait_ended_cb, weak, weak_ref_free);
}
