/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "frame-watch.h"

#define WAIT_MOST_S 20

struct _FrameWatch
{
  GtkWidget *window;
  gulong before_id, after_id;
  gint64 began_us;
  gint64 took_us;
  gboolean has_frame;
};

static void
before_paint_cb (FrameWatch *self)
{
  self->began_us = g_get_monotonic_time ();
}

static void
after_paint_cb (FrameWatch *self)
{
  gdk_display_sync (gtk_widget_get_display (self->window));
  self->took_us = g_get_monotonic_time () - self->began_us;
  self->has_frame = TRUE;
}

FrameWatch *
frame_watch_new (GtkWidget *window)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (window);
  FrameWatch *self = g_new0 (FrameWatch, 1);

  self->window = window;
  self->before_id = g_signal_connect_swapped (clock, "before-paint", G_CALLBACK (before_paint_cb),
                                              self);
  self->after_id = g_signal_connect_swapped (clock, "after-paint", G_CALLBACK (after_paint_cb),
                                             self);
  return self;
}

void
frame_watch_free (FrameWatch *self)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (self->window);

  g_signal_handler_disconnect (clock, self->before_id);
  g_signal_handler_disconnect (clock, self->after_id);
  g_free (self);
}

static gboolean
too_late_cb (gpointer data)
{
  g_error ("no frame within %d s", WAIT_MOST_S);
  return G_SOURCE_REMOVE;
}

gint64
frame_watch_next (FrameWatch *self)
{
  const guint limit = g_timeout_add_seconds (WAIT_MOST_S, too_late_cb, NULL);

  self->has_frame = FALSE;
  while (!self->has_frame)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (limit);
  return self->took_us;
}
