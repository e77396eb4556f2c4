/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Times the frames of a window that is realized: from the frame clock's "before-paint" to its
 * "after-paint" and until the display has done what it was sent. */
typedef struct _FrameWatch FrameWatch;

FrameWatch *frame_watch_new (GtkWidget *window);
void frame_watch_free (FrameWatch *self);

/* Waits for the next frame and returns what it took, µs. */
gint64 frame_watch_next (FrameWatch *self);

G_END_DECLS
