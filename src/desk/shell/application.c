/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The program. A file that is open already is brought to the front rather than opened twice; a
 * second window on it is asked for by "New Window". The demo is made, once, in the folder for the
 * program's own data, and is an ordinary job file from then on. */
#include "desk/shell/application.h"

#include "book/packet.h"
#include "desk/shell/choose-file.h"
#include "desk/shell/demo-file.h"
#include "desk/shell/preferences.h"
#include "desk/shell/say.h"
#include "desk/shell/window-actions.h"
#include "desk/shell/window.h"

#include <glib/gi18n-lib.h>

struct _LbApplication
{
  AdwApplication parent_instance;
};

G_DEFINE_FINAL_TYPE (LbApplication, lb_application, ADW_TYPE_APPLICATION)

static LbWindow *
find_window (LbApplication *self, GFile *file)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next) {
    GFile *shown = LB_IS_WINDOW (l->data) ? lb_window_get_file (LB_WINDOW (l->data)) : NULL;

    if (shown != NULL && file != NULL && g_file_equal (shown, file))
      return LB_WINDOW (l->data);
  }
  return NULL;
}

/* The window in front, when it has no job yet. */
static LbWindow *
find_idle_window (LbApplication *self)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));

  if (LB_IS_WINDOW (active) && lb_window_get_job (LB_WINDOW (active)) == NULL)
    return LB_WINDOW (active);
  return NULL;
}

/* A packet that is opened from outside is meant for the job in front. */
static gboolean
join_packet (LbApplication *self, GFile *file)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));
  g_autofree char *name = g_file_get_basename (file);

  if (name == NULL || !g_str_has_suffix (name, LB_PACKET_SUFFIX) || !LB_IS_WINDOW (active) ||
      lb_window_get_job (LB_WINDOW (active)) == NULL)
    return FALSE;
  lb_window_join (LB_WINDOW (active), file);
  return TRUE;
}

static void
show_file (LbApplication *self, GFile *file)
{
  LbWindow *window = find_window (self, file);

  if (join_packet (self, file))
    return;
  if (window == NULL || lb_window_get_job (window) == NULL) {
    if (window == NULL)
      window = find_idle_window (self);
    if (window == NULL)
      window = lb_window_new (GTK_APPLICATION (self));
    lb_window_open (window, file);
    return;
  }
  gtk_window_present (GTK_WINDOW (window));
}

static GtkWindow *
window_in_front (LbApplication *self)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (self));

  if (window == NULL) {
    window = GTK_WINDOW (lb_window_new (GTK_APPLICATION (self)));
    gtk_window_present (window);
  }
  return window;
}

/* @name proposes one for a new job; NULL to open one. */
static void
choose_job (LbApplication *self,
            const char *title,
            const char *accept,
            const char *name,
            LbFileChosen chosen)
{
  const LbChooseFile what = {
    .parent = window_in_front (self),
    .title = title,
    .accept = accept,
    .name = name,
    .files = _ ("Job files"),
    .endings = LB_BOOK_SUFFIX + 1,
  };

  lb_choose_file (&what, chosen, G_OBJECT (self));
}

static void
open_chosen_cb (GFile *file, gpointer data)
{
  show_file (LB_APPLICATION (data), file);
}

static void
open_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  choose_job (LB_APPLICATION (data), _ ("Open a Job"), _ ("_Open"), NULL, open_chosen_cb);
}

static gboolean
create_job (GFile *file, GError **error)
{
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *name = g_file_get_basename (file);
  g_autoptr (LbBook) book = NULL;

  if (g_str_has_suffix (name, LB_BOOK_SUFFIX))
    name[strlen (name) - strlen (LB_BOOK_SUFFIX)] = '\0';
  if (path == NULL || g_file_test (path, G_FILE_TEST_EXISTS)) {
    g_set_error (error, G_IO_ERROR, G_IO_ERROR_EXISTS,
                 path == NULL ? _ ("A job can be kept on this computer only.")
                              : _ ("“%s” is there already, and a job is never overwritten. Give "
                                   "the new one another name."),
                 name);
    return FALSE;
  }
  book = lb_book_create (path, name, error);
  return book != NULL;
}

/* The file with the ending of a job file. */
static GFile *
with_suffix (GFile *file)
{
  g_autofree char *uri = g_file_get_uri (file);
  g_autofree char *full = NULL;

  if (g_str_has_suffix (uri, LB_BOOK_SUFFIX))
    return g_object_ref (file);
  full = g_strconcat (uri, LB_BOOK_SUFFIX, NULL);
  return g_file_new_for_uri (full);
}

static void
new_chosen_cb (GFile *chosen, gpointer data)
{
  LbApplication *self = LB_APPLICATION (data);
  g_autoptr (GFile) file = with_suffix (chosen);
  GError *error = NULL;

  if (create_job (file, &error))
    show_file (self, file);
  else
    lb_say_error (GTK_WIDGET (window_in_front (self)), _ ("The job was not made"), error);
}

static void
new_job_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  /* Translators: the last is a file's name before anyone gave one. */
  choose_job (LB_APPLICATION (data), _ ("Begin a New Job"), _ ("_Begin"), _ ("New job.lastbent"),
              new_chosen_cb);
}

/* What the worker found besides the file, read by the main thread when it is done. */
typedef struct
{
  gboolean is_second;
} Demo;

static void
make_demo_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Demo *demo = task_data;
  g_autofree char *folder = g_build_filename (g_get_user_data_dir (), "lastbent", NULL);
  GError *error = NULL;
  GFile *file = lb_demo_file_ready (folder, &demo->is_second, &error);

  if (file != NULL)
    g_task_return_pointer (task, file, g_object_unref);
  else
    g_task_return_error (task, error);
}

static void
made_demo_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  LbApplication *self = LB_APPLICATION (source);
  const Demo *demo = g_task_get_task_data (G_TASK (result));
  GError *error = NULL;
  g_autoptr (GFile) file = g_task_propagate_pointer (G_TASK (result), &error);

  g_application_release (G_APPLICATION (self));
  if (file == NULL) {
    lb_say_error (GTK_WIDGET (window_in_front (self)), _ ("The demo was not made"), error);
    return;
  }
  show_file (self, file);
  if (demo->is_second)
    lb_say (GTK_WIDGET (window_in_front (self)),
            _ ("The demo kept here could not be opened. It was left as it is; this is a new one."),
            FALSE);
}

static void
demo_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  g_autoptr (GTask) task = g_task_new (data, NULL, made_demo_cb, NULL);

  g_task_set_source_tag (task, demo_cb);
  g_task_set_task_data (task, g_new0 (Demo, 1), g_free);
  g_application_hold (G_APPLICATION (data));
  g_task_run_in_thread (task, make_demo_thread);
}

static void
new_window_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (data));
  GFile *file = LB_IS_WINDOW (active) ? lb_window_get_file (LB_WINDOW (active)) : NULL;
  LbWindow *window = lb_window_new (GTK_APPLICATION (data));

  if (file != NULL)
    lb_window_open (window, file);
  gtk_window_present (GTK_WINDOW (window));
}

static void
about_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  adw_show_about_window (
    window_in_front (LB_APPLICATION (data)), "application-name", _ ("Lastbent"), "application-icon",
    LB_APP_ID, "version", LB_VERSION, "license-type", GTK_LICENSE_GPL_3_0, "comments",
    _ ("Plans and records the removal of old concrete piles. Its figures are for planning: the "
       "diving supervisor, the competent rigger, the licensed engineer and the local code decide."),
    NULL);
}

static void
quit_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GList *windows = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (data)));

  /* Closing, not quitting: a window has its size to remember. */
  g_list_foreach (windows, (GFunc) gtk_window_close, NULL);
  g_list_free (windows);
}

static const GActionEntry actions[] = {
  { .name = "about", .activate = about_cb },
  { .name = "demo", .activate = demo_cb },
  { .name = "new-job", .activate = new_job_cb },
  { .name = "new-window", .activate = new_window_cb },
  { .name = "open", .activate = open_cb },
  { .name = "quit", .activate = quit_cb },
};

typedef struct
{
  const char *action;
  const char *keys[3];
} Accel;

static const Accel accels[] = {
  { "app.new-job", { "<Control>n" } },
  { "app.new-window", { "<Control><Shift>n" } },
  { "app.open", { "<Control>o" } },
  { "app.quit", { "<Control>q" } },
  { "window.close", { "<Control>w" } },
  { "win.take-back", { "<Control>z" } },
  { "win.redo", { "<Control><Shift>z", "<Control>y" } },
  { "win.find", { "<Control>f" } },
  { "win.print-card", { "<Control>p" } },
  { "win.show-keys", { "<Control>question", "<Control>F1" } },
  { "win.page-plan", { "<Alt>1" } },
  { "win.page-shift", { "<Alt>2" } },
  { "win.page-production", { "<Alt>3" } },
};

/* The job that was shown last, if it is still there. */
static GFile *
last_file (void)
{
  GSettings *preferences = lb_preferences ();
  g_autofree char *uri = NULL;
  g_autoptr (GFile) file = NULL;

  if (preferences != NULL)
    uri = g_settings_get_string (preferences, "last-file");
  if (uri == NULL || *uri == '\0')
    return NULL;
  file = g_file_new_for_uri (uri);
  return g_file_query_exists (file, NULL) ? g_steal_pointer (&file) : NULL;
}

static gboolean
lb_application_local_command_line (GApplication *application, char ***arguments, int *exit_status)
{
  const guint n = g_strv_length (*arguments);
  g_autoptr (GFile) file = NULL;

  if (n <= 1)
    file = last_file ();
  else if (n == 2 && (*arguments)[1][0] != '-')
    file = g_file_new_for_commandline_arg ((*arguments)[1]);
  /* Before all else, so that the file is read while the toolkit starts. */
  if (file != NULL)
    lb_job_open_ahead (file);
  return G_APPLICATION_CLASS (lb_application_parent_class)
    ->local_command_line (application, arguments, exit_status);
}

static void
lb_application_startup (GApplication *application)
{
  G_APPLICATION_CLASS (lb_application_parent_class)->startup (application);

  g_action_map_add_action_entries (G_ACTION_MAP (application), actions, G_N_ELEMENTS (actions),
                                   application);
  for (gsize i = 0; i < G_N_ELEMENTS (accels); i++)
    gtk_application_set_accels_for_action (GTK_APPLICATION (application), accels[i].action,
                                           accels[i].keys);
}

static void
lb_application_activate (GApplication *application)
{
  LbApplication *self = LB_APPLICATION (application);
  g_autoptr (GFile) file = NULL;

  if (gtk_application_get_active_window (GTK_APPLICATION (self)) != NULL) {
    gtk_window_present (window_in_front (self));
    return;
  }
  file = last_file ();
  if (file != NULL)
    show_file (self, file);
  else
    window_in_front (self);
}

static void
lb_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  for (int i = 0; i < n_files; i++)
    show_file (LB_APPLICATION (application), files[i]);
}

static void
lb_application_finalize (GObject *object)
{
  lb_job_forget_ahead ();
  G_OBJECT_CLASS (lb_application_parent_class)->finalize (object);
}

static void
lb_application_class_init (LbApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = lb_application_finalize;
  application_class->local_command_line = lb_application_local_command_line;
  application_class->startup = lb_application_startup;
  application_class->activate = lb_application_activate;
  application_class->open = lb_application_open;
}

static void
lb_application_init (LbApplication *self)
{
}

LbApplication *
lb_application_new (void)
{
  return g_object_new (LB_TYPE_APPLICATION, "application-id", LB_APP_ID, "flags",
                       G_APPLICATION_HANDLES_OPEN, "resource-base-path", "/org/lastbent/Lastbent",
                       NULL);
}
