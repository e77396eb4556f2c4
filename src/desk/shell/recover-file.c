/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/recover-file.h"

#include "book/recover.h"
#include "desk/shell/copies-window.h"
#include "desk/shell/say.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

typedef struct
{
  GFile *damaged, *file;
  LbRecovery recovery;
} Recovering;

static void
recovering_free (gpointer data)
{
  Recovering *recovering = data;

  g_object_unref (recovering->damaged);
  g_object_unref (recovering->file);
  g_free (recovering);
}

static void
recover_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Recovering *recovering = task_data;
  g_autofree char *from = g_file_get_path (recovering->damaged);
  g_autofree char *to = g_file_get_path (recovering->file);
  GError *error = NULL;

  if (from == NULL || to == NULL)
    g_task_return_new_error (task, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN,
                             _ ("A job can be kept on this computer only."));
  else if (lb_book_recover (from, to, &recovering->recovery, cancellable, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
read_cb (AdwMessageDialog *dialog, const char *response, GFile *file)
{
  lb_copies_open (file);
}

static void
recovered_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GtkWindow) window = GTK_WINDOW (data);
  const Recovering *recovering = g_task_get_task_data (G_TASK (result));
  g_autofree char *text = NULL;
  GError *error = NULL;
  GtkWidget *dialog;

  if (!g_task_propagate_boolean (G_TASK (result), &error)) {
    lb_say_error (GTK_WIDGET (window), _ ("Nothing was recovered"), error);
    return;
  }
  text = lb_recovery_to_text (&recovering->recovery);
  dialog = adw_message_dialog_new (window, _ ("What Was Recovered"), NULL);
  adw_message_dialog_set_body (ADW_MESSAGE_DIALOG (dialog), text);
  adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "open", _ ("_Open It"));
  g_signal_connect_data (dialog, "response", G_CALLBACK (read_cb), g_object_ref (recovering->file),
                         (GClosureNotify) g_object_unref, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
lb_recover_file_to (GtkWindow *window, GFile *damaged, GFile *file)
{
  g_autoptr (GTask) task = NULL;
  Recovering *recovering;

  g_return_if_fail (GTK_IS_WINDOW (window));

  recovering = g_new0 (Recovering, 1);
  recovering->damaged = g_object_ref (damaged);
  recovering->file = g_object_ref (file);
  task = g_task_new (NULL, NULL, recovered_cb, g_object_ref (window));
  g_task_set_source_tag (task, lb_recover_file_to);
  g_task_set_task_data (task, recovering, recovering_free);
  g_task_run_in_thread (task, recover_thread);
}

typedef struct
{
  GtkWindow *window; /* the chooser goes with it */
  GFile *damaged;
} Asking;

static void
asking_free (gpointer data, GClosure *closure)
{
  Asking *asking = data;

  g_object_unref (asking->damaged);
  g_free (asking);
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, gpointer data)
{
  const Asking *asking = data;
  g_autoptr (GtkNativeDialog) own = dialog;
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  if (file != NULL)
    lb_recover_file_to (asking->window, asking->damaged, file);
  gtk_native_dialog_destroy (dialog);
}

void
lb_recover_file (GtkWindow *window, GFile *damaged)
{
  g_autofree char *base = g_file_get_basename (damaged);
  /* Translators: put before a file's name. */
  g_autofree char *name = g_strdup_printf (_ ("Recovered %s"), base);
  g_autoptr (GFile) folder = g_file_get_parent (damaged);
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (
    _ ("Recover Into a New File"), window, GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Recover"), NULL);
  Asking *asking = g_new0 (Asking, 1);

  asking->window = window;
  asking->damaged = g_object_ref (damaged);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  if (folder != NULL)
    gtk_file_chooser_set_current_folder (GTK_FILE_CHOOSER (chooser), folder, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  g_signal_connect_data (chooser, "response", G_CALLBACK (chosen_cb), asking, asking_free, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}
