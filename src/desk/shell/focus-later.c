/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/focus-later.h"

static gboolean
focus_cb (gpointer widget)
{
  if (gtk_widget_get_root (GTK_WIDGET (widget)) != NULL)
    gtk_widget_child_focus (GTK_WIDGET (widget), GTK_DIR_TAB_FORWARD);
  return G_SOURCE_REMOVE;
}

void
lb_focus_later (GtkWidget *widget)
{
  g_return_if_fail (GTK_IS_WIDGET (widget));

  g_idle_add_full (G_PRIORITY_LOW, focus_cb, g_object_ref (widget), g_object_unref);
}
