/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "find-widget.h"

#include "desk/shift/field.h"

#include <adwaita.h>

static const char *
text_of (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget))
    return gtk_label_get_text (GTK_LABEL (widget));
  if (GTK_IS_BUTTON (widget))
    return gtk_button_get_label (GTK_BUTTON (widget));
  if (LB_IS_FIELD (widget))
    return lb_field_get_caption (LB_FIELD (widget));
  if (ADW_IS_PREFERENCES_ROW (widget))
    return adw_preferences_row_get_title (ADW_PREFERENCES_ROW (widget));
  return NULL;
}

GtkWidget *
find_widget (GtkWidget *parent, GType type, const char *text)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (parent, type) &&
      (text == NULL || g_strcmp0 (text_of (parent), text) == 0))
    return parent;
  for (GtkWidget *child = gtk_widget_get_first_child (parent); child != NULL;
       child = gtk_widget_get_next_sibling (child))
  {
    GtkWidget *found = find_widget (child, type, text);

    if (found != NULL)
      return found;
  }
  return NULL;
}
