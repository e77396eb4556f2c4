/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/join-preview.h"
#include "book/packet.h"
#include "desk/shell/job.h"

G_BEGIN_DECLS

/* Sending shifts and joining what comes, on workers with connections of their own. */

/* A packet, or another copy of the job file, and what it would bring. */
typedef struct
{
  LbPacket *packet;
  LbJoinPreview *preview;
} LbJoinLook;

void lb_join_look_free (LbJoinLook *look);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbJoinLook, lb_join_look_free)

/* Changes nothing. */
void lb_job_look_async (LbJob *self,
                        GFile *file,
                        GCancellable *cancellable,
                        GAsyncReadyCallback callback,
                        gpointer data);
LbJoinLook *lb_job_look_finish (LbJob *self, GAsyncResult *result, GError **error);

/* Stores what @look brings; "changed" follows. @look belongs to the worker until it has finished. */
void lb_job_join_async (LbJob *self,
                        const LbJoinLook *look,
                        LbProgress progress,
                        gpointer progress_data,
                        GCancellable *cancellable,
                        GAsyncReadyCallback callback,
                        gpointer data);
gboolean lb_job_join_finish (LbJob *self, GAsyncResult *result, GError **error);

/* Writes a packet to @file, in the place of what may be there. */
void lb_job_send_async (LbJob *self,
                        const LbPacketSpan *span,
                        const char *who,
                        GFile *file,
                        LbProgress progress,
                        gpointer progress_data,
                        GCancellable *cancellable,
                        GAsyncReadyCallback callback,
                        gpointer data);
gboolean lb_job_send_finish (LbJob *self, GAsyncResult *result, GError **error);

G_END_DECLS
