/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/copies-window.h"

#include "book/backup.h"

#include <glib/gi18n-lib.h>

#define WIDTH  480
#define HEIGHT 520

void
lb_copies_open (GFile *file)
{
  g_return_if_fail (G_IS_FILE (file));

  g_application_open (g_application_get_default (), &file, 1, "");
}

static void
activated_cb (AdwActionRow *row, GFile *file)
{
  lb_copies_open (file);
  gtk_window_close (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (row))));
}

static GtkWidget *
row_of (const LbBackup *backup)
{
  GtkWidget *row = adw_action_row_new ();
  GFile *file = g_file_new_for_path (backup->path);
  g_autoptr (GDateTime) made = g_date_time_new_from_unix_local (backup->made_us / G_USEC_PER_SEC);
  /* Translators: day and time of a copy, as g_date_time_format() reads it. */
  g_autofree char *moment = g_date_time_format (made, C_ ("copy", "%a %-d %b %Y, %H:%M"));
  g_autofree char *size = g_format_size ((guint64) backup->size);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), moment);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), size);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row),
                             gtk_image_new_from_icon_name ("go-next-symbolic"));
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  g_signal_connect_data (row, "activated", G_CALLBACK (activated_cb), file,
                         (GClosureNotify) g_object_unref, 0);
  return row;
}

static GtkWidget *
list_of (GPtrArray *backups)
{
  GtkWidget *page = adw_preferences_page_new ();
  GtkWidget *group = adw_preferences_group_new ();

  adw_preferences_group_set_description (
    ADW_PREFERENCES_GROUP (group),
    _ ("Made by itself when the job was opened. A copy opens for reading; “Save a Copy…” there "
       "makes a job to go on with."));
  for (guint i = 0; i < backups->len; i++)
    adw_preferences_group_add (ADW_PREFERENCES_GROUP (group),
                               row_of (g_ptr_array_index (backups, i)));
  adw_preferences_page_add (ADW_PREFERENCES_PAGE (page), ADW_PREFERENCES_GROUP (group));
  return page;
}

static GtkWidget *
none_yet (void)
{
  GtkWidget *page = adw_status_page_new ();

  adw_status_page_set_title (ADW_STATUS_PAGE (page), _ ("No Copy Yet"));
  adw_status_page_set_description (
    ADW_STATUS_PAGE (page),
    _ ("One is kept when a job is opened for writing and something was recorded since the last "
       "time. None is kept of the demo."));
  return page;
}

GtkWindow *
lb_copies_window_new (GtkWindow *parent, GFile *file)
{
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *folder = lb_backup_folder ();
  g_autoptr (GPtrArray) backups = lb_backup_list (folder, path != NULL ? path : "");
  GtkWidget *window = g_object_new (ADW_TYPE_WINDOW, "transient-for", parent, "modal", TRUE,
                                    "title", _ ("Copies"), "default-width", WIDTH, "default-height",
                                    HEIGHT, NULL);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *content = backups->len > 0 ? list_of (backups) : none_yet ();

  gtk_widget_set_vexpand (content, TRUE);
  gtk_box_append (GTK_BOX (box), adw_header_bar_new ());
  gtk_box_append (GTK_BOX (box), content);
  adw_window_set_content (ADW_WINDOW (window), box);
  return GTK_WINDOW (window);
}
