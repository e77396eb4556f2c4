/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The ways back in the window: a copy is kept when a job is opened, and is opened for reading; of a
 * file that is damaged, the window offers its copies and what can be read of it. */
#include "book/backup.h"
#include "desk/shell/copies-window.h"
#include "desk/shell/recover-file.h"
#include "desk/shell/window.h"
#include "find-widget.h"
#include "small-job.h"

#include <string.h>

typedef struct
{
  char *path;
  char *copies;
  GFile *file;
  LbWindow *window;
} Desk;

static void
set_up (Desk *desk, gconstpointer data)
{
  desk->path = small_job_create ();
  desk->copies = lb_backup_folder ();
  desk->file = g_file_new_for_path (desk->path);
  desk->window = lb_window_new (NULL);
}

static void
tear_down (Desk *desk, gconstpointer data)
{
  gtk_window_destroy (GTK_WINDOW (desk->window));
  while (g_main_context_iteration (NULL, FALSE))
    ;
  g_object_unref (desk->file);
  g_free (desk->copies);
  small_job_remove (desk->path);
}

static gboolean
ended_cb (gpointer flag)
{
  *(gboolean *) flag = TRUE;
  return G_SOURCE_REMOVE;
}

static guint
count_copies (Desk *desk)
{
  g_autoptr (GPtrArray) backups = lb_backup_list (desk->copies, desk->path);

  return backups->len;
}

/* Runs the loop until there are @n copies, for ten seconds at most. */
static void
wait_for_copies (Desk *desk, guint n)
{
  for (int tries = 0; tries < 200 && count_copies (desk) < n; tries++) {
    gboolean has_ended = FALSE;

    g_timeout_add (50, ended_cb, &has_ended);
    small_job_wait (&has_ended);
  }
  g_assert_cmpuint (count_copies (desk), ==, n);
}

/* The page that says why a file cannot be opened. */
static gboolean
has_failed (Desk *desk)
{
  GtkWidget *page = find_widget (GTK_WIDGET (desk->window), ADW_TYPE_STATUS_PAGE, NULL);

  while (page != NULL && !GTK_IS_STACK (page))
    page = gtk_widget_get_parent (page);
  return g_strcmp0 (gtk_stack_get_visible_child_name (GTK_STACK (page)), "failed") == 0;
}

static void
open_file (Desk *desk)
{
  lb_window_open (desk->window, desk->file);
  while (lb_window_get_job (desk->window) == NULL && !has_failed (desk))
    g_main_context_iteration (NULL, TRUE);
}

static gboolean
offers (Desk *desk, const char *label)
{
  GtkWidget *button = find_widget (GTK_WIDGET (desk->window), GTK_TYPE_BUTTON, label);

  g_assert_nonnull (button);
  return gtk_widget_get_visible (button);
}

static void
cut_in_half (Desk *desk)
{
  g_autofree char *bytes = NULL;
  gsize n = 0;

  g_assert_true (g_file_get_contents (desk->path, &bytes, &n, NULL));
  g_assert_true (g_file_set_contents (desk->path, bytes, (gssize) n / 2, NULL));
}

static void
test_kept (Desk *desk, gconstpointer data)
{
  g_autoptr (GPtrArray) backups = NULL;
  g_autoptr (LbJob) copy = NULL;

  open_file (desk);
  wait_for_copies (desk, 1);
  backups = lb_backup_list (desk->copies, desk->path);
  copy = small_job_open (((LbBackup *) g_ptr_array_index (backups, 0))->path);
  g_assert_true (lb_job_is_read_only (copy));
  g_assert_false (lb_job_is_read_only (lb_window_get_job (desk->window)));
}

static void
test_foreign_offers_nothing (Desk *desk, gconstpointer data)
{
  g_assert_true (g_file_set_contents (desk->path, "not a job", -1, NULL));
  open_file (desk);
  g_assert_true (has_failed (desk));
  g_assert_false (offers (desk, "_Copies…"));
  g_assert_false (offers (desk, "_Recover…"));
}

static void
test_damaged (Desk *desk, gconstpointer data)
{
  GtkWindow *copies;

  open_file (desk);
  wait_for_copies (desk, 1);
  cut_in_half (desk);
  open_file (desk);
  g_assert_true (has_failed (desk));
  g_assert_true (offers (desk, "_Copies…"));
  g_assert_true (offers (desk, "_Recover…"));

  copies = lb_copies_window_new (GTK_WINDOW (desk->window), desk->file);
  gtk_window_present (copies);
  g_assert_nonnull (find_widget (GTK_WIDGET (copies), ADW_TYPE_ACTION_ROW, NULL));
  gtk_window_destroy (copies);
}

static GtkWidget *
find_dialog (void)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++) {
    g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);

    if (ADW_IS_MESSAGE_DIALOG (window))
      return window;
  }
  return NULL;
}

static void
test_recovered (Desk *desk, gconstpointer data)
{
  g_autofree char *path = g_strconcat (desk->path, ".new.lastbent", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (LbJob) job = NULL;
  GtkWidget *dialog;

  cut_in_half (desk);
  lb_recover_file_to (GTK_WINDOW (desk->window), desk->file, file);
  while ((dialog = find_dialog ()) == NULL)
    g_main_context_iteration (NULL, TRUE);
  g_assert_nonnull (strstr (adw_message_dialog_get_body (ADW_MESSAGE_DIALOG (dialog)), "Lost"));
  gtk_window_destroy (GTK_WINDOW (dialog));
  job = small_job_open (path);
  g_assert_false (lb_job_is_read_only (job));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add ("/copies/kept", Desk, NULL, set_up, test_kept, tear_down);
  g_test_add ("/copies/foreign-offers-nothing", Desk, NULL, set_up, test_foreign_offers_nothing,
              tear_down);
  g_test_add ("/copies/damaged", Desk, NULL, set_up, test_damaged, tear_down);
  g_test_add ("/copies/recovered", Desk, NULL, set_up, test_recovered, tear_down);
  return g_test_run ();
}
