/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/work-progress.h"

typedef struct
{
  LbWorkProgress *progress;
  GTask *task;
} Look;

static void
look_free (gpointer data)
{
  Look *look = data;

  g_object_unref (look->task);
  g_free (look);
}

static gboolean
look_cb (gpointer data)
{
  const Look *look = data;
  LbWorkProgress *self = look->progress;

  g_atomic_int_set (&self->is_told, FALSE);
  if (!g_task_get_completed (look->task))
    self->tell ((gsize) g_atomic_int_get (&self->n_done), (gsize) g_atomic_int_get (&self->n_total),
                self->data);
  return G_SOURCE_REMOVE;
}

void
lb_work_progress_set (LbWorkProgress *self, GTask *task, gsize done, gsize total)
{
  g_return_if_fail (self != NULL);
  g_return_if_fail (G_IS_TASK (task));

  g_atomic_int_set (&self->n_done, (gint) done);
  g_atomic_int_set (&self->n_total, (gint) total);
  if (self->tell == NULL || !g_atomic_int_compare_and_exchange (&self->is_told, FALSE, TRUE))
    return;

  Look *look = g_new (Look, 1);
  *look = (Look){ .progress = self, .task = g_object_ref (task) };
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, look_cb, look, look_free);
}
