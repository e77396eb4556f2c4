/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a job does away from the main thread: opening, taking many piles, copying.
 *
 * A worker has its own connection to the file (a book is for one thread), except that opening
 * hands the book it opened over to the main thread for good. Results reach the caller on the
 * main thread; a job that has changed says so before the caller's own callback runs.
 */
#include "desk/shell/job-private.h"

#include "book/backup.h"
#include "desk/shell/work-progress.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  LbBook *book;
  LbLedger *ledger;
  LbFold *fold;
  LbPlan *plan;
} Opened;

static void
opened_free (Opened *opened)
{
  g_clear_pointer (&opened->plan, lb_plan_free);
  g_clear_pointer (&opened->fold, lb_fold_free);
  g_clear_pointer (&opened->ledger, lb_ledger_free);
  g_clear_pointer (&opened->book, lb_book_close);
  g_free (opened);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Opened, opened_free)

static char *
local_path (GFile *file, GError **error)
{
  char *path = g_file_get_path (file);

  if (path == NULL) {
    g_autofree char *name = g_file_get_parse_name (file);

    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN,
                 _ ("“%s” is not on this computer; copy it here first"), name);
  }
  return path;
}

/* In the copies that are kept nothing is to be recorded, whatever the disk would allow. */
static LbBookMode
mode_of (const char *path)
{
  g_autofree char *copies = lb_backup_folder ();

  return lb_backup_is_kept_in (copies, path) ? LB_BOOK_READ : LB_BOOK_WRITE;
}

static Opened *
open_job (GFile *file, GCancellable *cancellable, GError **error)
{
  g_autoptr (Opened) opened = g_new0 (Opened, 1);
  g_autofree char *path = local_path (file, error);

  if (path == NULL)
    return NULL;
  opened->book = lb_book_open_and_read (path, mode_of (path), cancellable, &opened->ledger, error);
  if (opened->book == NULL)
    return NULL;
  opened->fold = lb_fold_new (opened->ledger, G_MAXINT64);
  opened->plan = lb_plan_new (opened->fold);
  return g_steal_pointer (&opened);
}

/* An opening that was begun before anyone asked for it: a thread that returns an Ahead, which is
 * itself, when it is done. */
typedef struct
{
  GFile *file;
  GCancellable *cancellable;
  GThread *thread;
  Opened *opened; /* or NULL and why not */
  GError *error;
} Ahead;

/* The one that nobody has asked for yet. Main thread only. */
static Ahead *ahead;

static gpointer
ahead_thread (gpointer data)
{
  Ahead *self = data;

  self->opened = open_job (self->file, self->cancellable, &self->error);
  return self;
}

static Opened *
ahead_finish (Ahead *self, GError **error)
{
  Opened *opened;

  g_thread_join (self->thread);
  opened = self->opened;
  if (opened == NULL)
    g_propagate_error (error, self->error);
  g_object_unref (self->cancellable);
  g_object_unref (self->file);
  g_free (self);
  return opened;
}

void
lb_job_open_ahead (GFile *file)
{
  g_return_if_fail (G_IS_FILE (file));
  g_return_if_fail (ahead == NULL);

  ahead = g_new0 (Ahead, 1);
  ahead->file = g_object_ref (file);
  ahead->cancellable = g_cancellable_new ();
  ahead->thread = g_thread_new ("open", ahead_thread, ahead);
}

void
lb_job_forget_ahead (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Opened) opened = NULL;

  if (ahead == NULL)
    return;
  g_cancellable_cancel (ahead->cancellable);
  opened = ahead_finish (g_steal_pointer (&ahead), &error);
}

typedef struct
{
  GFile *file;
  Ahead *ahead; /* NULL to begin now; gone once waited for */
} Opening;

static void
opening_free (Opening *opening)
{
  g_object_unref (opening->file);
  g_free (opening);
}

static void
open_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Opening *opening = task_data;
  g_autoptr (GError) error = NULL;
  Opened *opened;

  if (opening->ahead != NULL)
    opened = ahead_finish (g_steal_pointer (&opening->ahead), &error);
  else
    opened = open_job (opening->file, cancellable, &error);
  if (opened != NULL)
    g_task_return_pointer (task, opened, (GDestroyNotify) opened_free);
  else
    g_task_return_error (task, g_steal_pointer (&error));
}

void
lb_job_open_async (GFile *file,
                   GCancellable *cancellable,
                   GAsyncReadyCallback callback,
                   gpointer data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);
  Opening *opening;

  g_return_if_fail (G_IS_FILE (file));

  opening = g_new0 (Opening, 1);
  opening->file = g_object_ref (file);
  if (ahead != NULL && g_file_equal (ahead->file, file))
    opening->ahead = g_steal_pointer (&ahead);
  g_task_set_source_tag (task, lb_job_open_async);
  g_task_set_task_data (task, opening, (GDestroyNotify) opening_free);
  g_task_run_in_thread (task, open_thread);
}

LbJob *
lb_job_open_finish (GAsyncResult *result, GError **error)
{
  g_autoptr (Opened) opened = NULL;
  const Opening *opening;

  g_return_val_if_fail (g_task_is_valid (result, NULL), NULL);

  opened = g_task_propagate_pointer (G_TASK (result), error);
  if (opened == NULL)
    return NULL;
  opening = g_task_get_task_data (G_TASK (result));

  LbJob *self = lb_job_new_taking (
    opening->file, g_steal_pointer (&opened->book), g_steal_pointer (&opened->ledger),
    g_steal_pointer (&opened->fold), g_steal_pointer (&opened->plan));
  lb_job_prove_signatures (self);
  return self;
}

typedef struct
{
  char *path;
  const LbPile *piles;
  gsize n_piles;
  gpointer keep;
  GDestroyNotify free_keep;
  LbWorkProgress progress;
} Adding;

static void
adding_free (Adding *adding)
{
  if (adding->free_keep != NULL)
    adding->free_keep (adding->keep);
  g_free (adding->path);
  g_free (adding);
}

static void
progress_cb (gsize done, gsize total, gpointer data)
{
  GTask *task = G_TASK (data);
  Adding *adding = g_task_get_task_data (task);

  lb_work_progress_set (&adding->progress, task, done, total);
}

static void
add_piles_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Adding *adding = task_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (adding->path, LB_BOOK_WRITE, &error);

  if (book != NULL && lb_book_add_piles (book, adding->piles, adding->n_piles, progress_cb, task,
                                         cancellable, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, g_steal_pointer (&error));
}

static void
added_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  LbJob *self = LB_JOB (source);
  g_autoptr (GTask) outer = G_TASK (data);
  g_autoptr (GError) error = NULL;

  lb_job_release_watch (self);
  if (g_task_propagate_boolean (G_TASK (result), &error) && lb_job_read_on (self, &error))
    g_task_return_boolean (outer, TRUE);
  else
    g_task_return_error (outer, g_steal_pointer (&error));
}

void
lb_job_add_piles_async (LbJob *self,
                        const LbPile *piles,
                        gsize n_piles,
                        gpointer keep,
                        GDestroyNotify free_keep,
                        void (*progress) (gsize done, gsize total, gpointer data),
                        gpointer progress_data,
                        GCancellable *cancellable,
                        GAsyncReadyCallback callback,
                        gpointer data)
{
  GTask *outer;
  g_autoptr (GTask) inner = NULL;
  Adding *adding;

  g_return_if_fail (LB_IS_JOB (self));

  outer = g_task_new (self, NULL, callback, data);
  g_task_set_source_tag (outer, lb_job_add_piles_async);
  /* The outer task ignores the cancellable: a cancel that came too late has still added. */
  inner = g_task_new (self, cancellable, added_cb, outer);
  g_task_set_source_tag (inner, lb_job_add_piles_async);
  g_task_set_check_cancellable (inner, FALSE);

  adding = g_new0 (Adding, 1);
  adding->path = g_file_get_path (lb_job_get_file (self));
  adding->piles = piles;
  adding->n_piles = n_piles;
  adding->keep = keep;
  adding->free_keep = free_keep;
  adding->progress = (LbWorkProgress){ .tell = progress, .data = progress_data };
  g_task_set_task_data (inner, adding, (GDestroyNotify) adding_free);

  lb_job_hold_watch (self);
  g_task_run_in_thread (inner, add_piles_thread);
}

gboolean
lb_job_add_piles_finish (LbJob *self, GAsyncResult *result, GError **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), FALSE);

  return g_task_propagate_boolean (G_TASK (result), error);
}

typedef struct
{
  char *from;
  GFile *to;
} Copying;

static void
copying_free (Copying *copying)
{
  g_free (copying->from);
  g_clear_object (&copying->to);
  g_free (copying);
}

/* The book makes copies only where nothing is; one that is to take another's place is made beside
 * it and moved over, so that there is never half a file under that name. */
static void
copy_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  const Copying *copying = task_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = NULL;
  g_autofree char *path = local_path (copying->to, &error);
  g_autofree char *beside = NULL;
  g_autoptr (GFile) beside_file = NULL;

  if (path == NULL) {
    g_task_return_error (task, g_steal_pointer (&error));
    return;
  }
  beside = g_strdup_printf ("%s.%08x", path, g_random_int ());
  beside_file = g_file_new_for_path (beside);
  book = lb_book_open (copying->from, LB_BOOK_READ, &error);
  if (book != NULL && lb_book_copy_to (book, beside, &error) &&
      g_file_move (beside_file, copying->to, G_FILE_COPY_OVERWRITE, cancellable, NULL, NULL,
                   &error))
  {
    g_task_return_boolean (task, TRUE);
    return;
  }
  g_file_delete (beside_file, NULL, NULL);
  g_task_return_error (task, g_steal_pointer (&error));
}

void
lb_job_copy_async (LbJob *self,
                   GFile *file,
                   GCancellable *cancellable,
                   GAsyncReadyCallback callback,
                   gpointer data)
{
  g_autoptr (GTask) task = g_task_new (self, cancellable, callback, data);
  Copying *copying;

  g_return_if_fail (LB_IS_JOB (self));
  g_return_if_fail (G_IS_FILE (file));

  g_task_set_source_tag (task, lb_job_copy_async);
  if (g_file_equal (file, lb_job_get_file (self))) {
    g_task_return_new_error (task, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                             _ ("That is the job itself; give the copy another name"));
    return;
  }
  copying = g_new0 (Copying, 1);
  copying->from = g_file_get_path (lb_job_get_file (self));
  copying->to = g_object_ref (file);
  g_task_set_task_data (task, copying, (GDestroyNotify) copying_free);
  g_task_run_in_thread (task, copy_thread);
}

gboolean
lb_job_copy_finish (LbJob *self, GAsyncResult *result, GError **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), FALSE);

  return g_task_propagate_boolean (G_TASK (result), error);
}
