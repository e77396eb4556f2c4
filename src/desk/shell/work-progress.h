/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/* How far a worker has come, told on the main thread. Lives in the data of the task it is about. */
typedef struct
{
  void (*tell) (gsize done, gsize total, gpointer data); /* NULL: nobody asks */
  gpointer data;
  /* Written by the worker, read by the main thread: how far it is, and whether a look at it is
   * already on its way. */
  gint n_done, n_total;
  gint is_told;
} LbWorkProgress;

/* On the worker. At most one look is queued, however fast it goes. */
void lb_work_progress_set (LbWorkProgress *self, GTask *task, gsize done, gsize total);

G_END_DECLS
