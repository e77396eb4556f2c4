/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/turn-page.h"

void
lb_turn_page (GtkStack *stack, const char *name)
{
  g_return_if_fail (GTK_IS_STACK (stack));

  GtkWidget *before = gtk_stack_get_visible_child (stack);
  GtkWidget *page = gtk_stack_get_child_by_name (stack, name);

  g_return_if_fail (page != NULL);

  if (page == before)
    return;
  gtk_widget_set_visible (page, TRUE);
  gtk_stack_set_visible_child (stack, page);
  if (before != NULL)
    gtk_widget_set_visible (before, FALSE);
}
