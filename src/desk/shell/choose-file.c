/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/choose-file.h"

#include <glib/gi18n-lib.h>

static void
response_cb (GtkNativeDialog *dialog, int response, gpointer data)
{
  g_autoptr (GtkNativeDialog) own = dialog;
  g_autoptr (GFile) file = NULL;
  const LbFileChosen chosen = (LbFileChosen) g_object_get_data (G_OBJECT (dialog), "lb-chosen");

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  gtk_native_dialog_destroy (dialog);
  if (file != NULL)
    chosen (file, data);
}

static void
add_filters (GtkFileChooser *chooser, const LbChooseFile *what)
{
  g_autoptr (GtkFileFilter) wanted = gtk_file_filter_new ();
  g_autoptr (GtkFileFilter) all = gtk_file_filter_new ();
  g_auto (GStrv) endings = g_strsplit (what->endings, " ", -1);

  gtk_file_filter_set_name (wanted, what->files);
  for (char **ending = endings; *ending != NULL; ending++)
    gtk_file_filter_add_suffix (wanted, *ending);
  gtk_file_filter_set_name (all, _ ("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (chooser, wanted);
  gtk_file_chooser_add_filter (chooser, all);
}

void
lb_choose_file (const LbChooseFile *what, LbFileChosen chosen, GObject *data)
{
  g_return_if_fail (what != NULL);
  g_return_if_fail (G_IS_OBJECT (data));

  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (
    what->title, what->parent,
    what->name != NULL ? GTK_FILE_CHOOSER_ACTION_SAVE : GTK_FILE_CHOOSER_ACTION_OPEN, what->accept,
    NULL);

  if (what->files != NULL)
    add_filters (GTK_FILE_CHOOSER (chooser), what);
  if (what->name != NULL)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), what->name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  g_object_set_data (G_OBJECT (chooser), "lb-chosen", (gpointer) chosen);
  g_signal_connect_object (chooser, "response", G_CALLBACK (response_cb), data, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

void
lb_choose_list (GtkWindow *parent,
                const char *title,
                const char *accept,
                LbFileChosen chosen,
                GObject *data)
{
  const LbChooseFile what = {
    .parent = parent,
    .title = title,
    .accept = accept,
    .files = _ ("Lists (csv, tsv, txt)"),
    .endings = "csv tsv txt",
  };

  lb_choose_file (&what, chosen, data);
}
