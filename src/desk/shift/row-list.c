/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shift/row-list.h"

#include "desk/shell/changed-span.h"

static GtkWidget *
row_at (GtkListBox *list, guint index)
{
  return GTK_WIDGET (gtk_list_box_get_row_at_index (list, (int) index));
}

static gboolean
has_focus_in (GtkWidget *widget)
{
  GtkRoot *root = gtk_widget_get_root (widget);
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  return focus != NULL && (focus == widget || gtk_widget_is_ancestor (focus, widget));
}

gboolean
lb_row_list_show (GtkListBox *list,
                  GPtrArray **shown,
                  GPtrArray *keys,
                  LbRowMake make,
                  gpointer data)
{
  const LbChangedSpan span = lb_changed_span (*shown, keys);
  gboolean had_focus = FALSE;

  for (guint i = 0; i < span.n_old; i++) {
    GtkWidget *row = row_at (list, span.at);

    had_focus = had_focus || has_focus_in (row);
    gtk_list_box_remove (list, row);
  }
  for (guint i = span.at; i < span.at + span.n_new; i++)
    gtk_list_box_insert (list, make (i, data), (int) i);
  g_ptr_array_unref (*shown);
  *shown = keys;

  if (!had_focus)
    return TRUE;
  if (keys->len == 0)
    return FALSE;
  gtk_widget_grab_focus (row_at (list, MIN (span.at, keys->len - 1)));
  return TRUE;
}
