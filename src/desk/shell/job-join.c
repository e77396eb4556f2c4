/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/job-join.h"

#include "desk/shell/job-private.h"
#include "desk/shell/work-progress.h"

#include <glib/gi18n-lib.h>

/* One errand of a worker; what it has no use for is NULL. */
typedef struct
{
  char *path; /* the job's */
  GFile *file;
  const LbJoinLook *look;
  LbPacketSpan span;
  char *who;
  LbWorkProgress progress;
} Errand;

static void
errand_free (gpointer data)
{
  Errand *errand = data;

  g_free (errand->path);
  g_clear_object (&errand->file);
  g_free (errand->who);
  g_free (errand);
}

static Errand *
errand_new (LbJob *job)
{
  Errand *errand = g_new0 (Errand, 1);

  errand->path = g_file_get_path (lb_job_get_file (job));
  return errand;
}

static void
progress_cb (gsize done, gsize total, gpointer data)
{
  GTask *task = G_TASK (data);
  Errand *errand = g_task_get_task_data (task);

  lb_work_progress_set (&errand->progress, task, done, total);
}

void
lb_join_look_free (LbJoinLook *look)
{
  if (look == NULL)
    return;
  lb_join_preview_free (look->preview);
  lb_packet_free (look->packet);
  g_free (look);
}

static LbJoinLook *
look_at (const Errand *errand, const char *path, GCancellable *cancellable, GError **error)
{
  g_autoptr (LbJoinLook) look = g_new0 (LbJoinLook, 1);
  g_autoptr (LbBook) book = NULL;
  LbLedger *ledger = NULL;

  look->packet = lb_packet_open (path, cancellable, error);
  if (look->packet == NULL)
    return NULL;
  book = lb_book_open_and_read (errand->path, LB_BOOK_READ, cancellable, &ledger, error);
  if (book == NULL)
    return NULL;
  look->preview = lb_join_preview_new (ledger, look->packet->ledger, error);
  return look->preview != NULL ? g_steal_pointer (&look) : NULL;
}

static void
look_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  const Errand *errand = task_data;
  g_autofree char *path = g_file_get_path (errand->file);
  GError *error = NULL;
  LbJoinLook *look;

  if (path == NULL) {
    g_task_return_new_error (task, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN,
                             _ ("It is not on this computer; copy it here first"));
    return;
  }
  look = look_at (errand, path, cancellable, &error);
  if (look != NULL)
    g_task_return_pointer (task, look, (GDestroyNotify) lb_join_look_free);
  else
    g_task_return_error (task, error);
}

void
lb_job_look_async (LbJob *self,
                   GFile *file,
                   GCancellable *cancellable,
                   GAsyncReadyCallback callback,
                   gpointer data)
{
  g_return_if_fail (LB_IS_JOB (self));
  g_return_if_fail (G_IS_FILE (file));

  g_autoptr (GTask) task = g_task_new (self, cancellable, callback, data);
  Errand *errand = errand_new (self);

  errand->file = g_object_ref (file);
  g_task_set_source_tag (task, lb_job_look_async);
  g_task_set_task_data (task, errand, errand_free);
  g_task_run_in_thread (task, look_thread);
}

LbJoinLook *
lb_job_look_finish (LbJob *self, GAsyncResult *result, GError **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), NULL);

  return g_task_propagate_pointer (G_TASK (result), error);
}

static void
join_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  const Errand *errand = task_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (LbLedger) ledger = NULL;
  g_autoptr (LbBook) book = lb_book_open_and_read (errand->path, LB_BOOK_WRITE, cancellable,
                                                   &ledger, &error);

  if (book != NULL && lb_book_join (book, ledger, errand->look->packet, NULL, progress_cb, task,
                                    cancellable, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, g_steal_pointer (&error));
}

static void
joined_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  LbJob *self = LB_JOB (source);
  g_autoptr (GTask) outer = G_TASK (data);
  GError *error = NULL;

  lb_job_release_watch (self);
  if (!g_task_propagate_boolean (G_TASK (result), &error) || !lb_job_read_on (self, &error)) {
    g_task_return_error (outer, error);
    return;
  }
  lb_job_prove_signatures (self);
  g_task_return_boolean (outer, TRUE);
}

void
lb_job_join_async (LbJob *self,
                   const LbJoinLook *look,
                   LbProgress progress,
                   gpointer progress_data,
                   GCancellable *cancellable,
                   GAsyncReadyCallback callback,
                   gpointer data)
{
  g_return_if_fail (LB_IS_JOB (self));
  g_return_if_fail (look != NULL);

  /* The outer task ignores the cancellable: a cancel that came too late has still joined. */
  GTask *outer = g_task_new (self, NULL, callback, data);
  g_autoptr (GTask) inner = g_task_new (self, cancellable, joined_cb, outer);
  Errand *errand = errand_new (self);

  errand->look = look;
  errand->progress = (LbWorkProgress){ .tell = progress, .data = progress_data };
  g_task_set_source_tag (outer, lb_job_join_async);
  g_task_set_source_tag (inner, lb_job_join_async);
  g_task_set_check_cancellable (inner, FALSE);
  g_task_set_task_data (inner, errand, errand_free);
  lb_job_hold_watch (self);
  g_task_run_in_thread (inner, join_thread);
}

gboolean
lb_job_join_finish (LbJob *self, GAsyncResult *result, GError **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), FALSE);

  return g_task_propagate_boolean (G_TASK (result), error);
}

/* A packet is written only where nothing is; one that takes another's place is made beside it and
 * moved over, so that there is never half of one under that name. */
static gboolean
send (GTask *task, const Errand *errand, GCancellable *cancellable, GError **error)
{
  g_autofree char *path = g_file_get_path (errand->file);
  g_autofree char *beside = g_strdup_printf ("%s.%08x", path != NULL ? path : "", g_random_int ());
  g_autoptr (GFile) beside_file = g_file_new_for_path (beside);
  g_autoptr (LbBook) book = NULL;

  if (path == NULL) {
    g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN,
                         _ ("A packet can be written on this computer only; copy it from there"));
    return FALSE;
  }
  book = lb_book_open (errand->path, LB_BOOK_READ, error);
  if (book == NULL || !lb_packet_write (book, &errand->span, errand->who, beside, NULL, progress_cb,
                                        task, cancellable, error))
    return FALSE;
  if (g_file_move (beside_file, errand->file, G_FILE_COPY_OVERWRITE, NULL, NULL, NULL, error))
    return TRUE;
  g_file_delete (beside_file, NULL, NULL);
  return FALSE;
}

static void
send_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  GError *error = NULL;

  if (send (task, task_data, cancellable, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

void
lb_job_send_async (LbJob *self,
                   const LbPacketSpan *span,
                   const char *who,
                   GFile *file,
                   LbProgress progress,
                   gpointer progress_data,
                   GCancellable *cancellable,
                   GAsyncReadyCallback callback,
                   gpointer data)
{
  g_return_if_fail (LB_IS_JOB (self));
  g_return_if_fail (span != NULL && who != NULL);
  g_return_if_fail (G_IS_FILE (file));

  g_autoptr (GTask) task = g_task_new (self, cancellable, callback, data);
  Errand *errand = errand_new (self);

  errand->span = *span;
  if (span->watch != NULL)
    errand->span.watch = g_str_equal (span->watch, "night") ? "night" : "day";
  errand->who = g_strdup (who);
  errand->file = g_object_ref (file);
  errand->progress = (LbWorkProgress){ .tell = progress, .data = progress_data };
  g_task_set_source_tag (task, lb_job_send_async);
  g_task_set_check_cancellable (task, FALSE);
  g_task_set_task_data (task, errand, errand_free);
  g_task_run_in_thread (task, send_thread);
}

gboolean
lb_job_send_finish (LbJob *self, GAsyncResult *result, GError **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), FALSE);

  return g_task_propagate_boolean (G_TASK (result), error);
}
