/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/take-back-button.h"

#include "desk/shell/say.h"

#include <glib/gi18n-lib.h>

static void
clicked_cb (GtkButton *button, LbJob *job)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_TAKE_BACK);
  /* Recording makes the rows again, and this button is gone then. */
  g_autoptr (GtkWidget) root = g_object_ref (
    GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (button))));
  g_autofree char *act = g_strdup (g_object_get_data (G_OBJECT (button), "act"));
  GError *error = NULL;

  draft.of = act;
  if (!lb_job_record (job, &draft, 1, &error))
    lb_say_error (root, _ ("That was not taken back"), error);
}

GtkWidget *
lb_take_back_button_new (LbJob *job, const char *act, const char *what)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("edit-undo-symbolic");
  /* Translators: an entry in words, “Take back: Bar 5 burned”. */
  g_autofree char *name = g_strdup_printf (_ ("Take back: %s"), what);

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_sensitive (button, !lb_job_is_read_only (job));
  gtk_widget_set_tooltip_text (button, _ ("Take this back"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_object_set_data_full (G_OBJECT (button), "act", g_strdup (act), g_free);
  g_signal_connect_object (button, "clicked", G_CALLBACK (clicked_cb), job, 0);

  return button;
}
