/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A window: header, pages, and what stands in their place while there is no job.
 *
 * The stack shows one of: "empty" (how to begin), "loading", "failed" (why, and the ways out),
 * "job" (the pages). The window owns the job and the selection and gives both to every page; it
 * keeps nothing of the job itself but what the header says, which is set anew at each "changed".
 *
 * Each page stands in a bin of the page stack that is empty until somebody looks: to make a page
 * and to fill it takes as long as all the rest of the window.
 */
#include "desk/shell/window.h"

#include "book/backup.h"
#include "book/demo-job.h"
#include "desk/shell/copy-keeper.h"
#include "desk/shell/error-words.h"
#include "desk/shell/pages.h"
#include "desk/shell/preferences.h"
#include "desk/shell/turn-page.h"
#include "desk/shell/window-actions.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

/* A job that is read sooner is shown without saying first that it is being read: about as long
 * as an answer still passes for immediate (from memory, literature on response times). */
#define PATIENCE_MS 300

struct _LbWindow
{
  AdwApplicationWindow parent_instance;

  /* Template widgets */
  GtkWidget *copies_button;
  GtkLabel *demo_label;
  AdwStatusPage *failed_page;
  GtkBox *job_box;
  GtkLabel *job_label;
  AdwViewStack *page_stack;
  GtkInfoBar *read_only_bar;
  GtkWidget *recover_button;
  GtkLabel *shift_label;
  GtkStack *state_stack;
  AdwViewSwitcherBar *switcher_bar;
  AdwViewSwitcherTitle *switcher_title;
  GtkInfoBar *trouble_bar;
  GtkLabel *trouble_label;

  /* Owned */
  LbJob *job;
  LbSelection *selection;
  GSignalGroup *job_signals;
  GCancellable *opening;
  GFile *file;

  /* State */
  guint patience_id; /* of the timeout after which it is said that the job is being read */
};

G_DEFINE_FINAL_TYPE (LbWindow, lb_window, ADW_TYPE_APPLICATION_WINDOW)

/* "Shift 31 · Tue 14 Jul 2026 · day" */
static char *
shift_words (LbJob *job)
{
  const LbLedger *ledger = lb_job_get_ledger (job);
  const int i = lb_job_get_shift (job);
  const LbShift *shift;
  g_autofree char *day = NULL;

  if (i < 0)
    return g_strdup (_ ("No shift today yet"));
  shift = lb_ledger_shift (ledger, (guint) i);
  day = lb_day_text (shift->day);
  /* Translators: number of the shift, its day, its watch. */
  return g_strdup_printf (_ ("Shift %d · %s · %s"), i + 1, day,
                          g_str_equal (shift->watch, "night") ? C_ ("watch", "night")
                                                              : C_ ("watch", "day"));
}

static void
update_header (LbWindow *self)
{
  const LbFold *fold = self->job != NULL ? lb_job_get_fold (self->job) : NULL;
  const char *name = fold != NULL && fold->name != NULL ? fold->name : "";
  const gboolean is_demo = g_str_equal (name, LB_DEMO_NAME);
  g_autofree char *shift = self->job != NULL ? shift_words (self->job) : NULL;
  g_autofree char *short_name = NULL;

  /* The demo's name says so itself; beside the chip that would be said twice. */
  short_name = is_demo ? g_strndup (name, (gsize) (strrchr (name, '(') - name)) : g_strdup (name);
  g_strchomp (short_name);

  gtk_label_set_label (self->job_label, short_name);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->job_label), name);
  gtk_widget_set_visible (GTK_WIDGET (self->demo_label), is_demo);
  gtk_widget_set_visible (GTK_WIDGET (self->job_box), self->job != NULL);
  gtk_label_set_label (self->shift_label, shift != NULL ? shift : "");
  gtk_widget_set_visible (GTK_WIDGET (self->shift_label), self->job != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->switcher_title), self->job != NULL);
  gtk_window_set_title (GTK_WINDOW (self), *name != '\0' ? name : _ ("Lastbent"));
  adw_view_switcher_title_set_title (self->switcher_title, name);
}

static void
job_changed_cb (LbWindow *self)
{
  const char *trouble = lb_job_get_trouble (self->job);

  update_header (self);
  lb_window_actions_update (self);
  gtk_info_bar_set_revealed (self->read_only_bar, lb_job_is_read_only (self->job));
  gtk_label_set_label (self->trouble_label, trouble != NULL ? trouble : "");
  gtk_info_bar_set_revealed (self->trouble_bar, trouble != NULL);
}

static AdwBin *
page_bin (LbWindow *self, const char *name)
{
  return ADW_BIN (adw_view_stack_get_child_by_name (self->page_stack, name));
}

/* A page gets the job when it is first looked at, and keeps it from then on. */
static void
give_page_job (LbWindow *self)
{
  const char *name = adw_view_stack_get_visible_child_name (self->page_stack);

  if (self->job != NULL && name != NULL)
    g_object_set (lb_window_get_page (self, name), "job", self->job, NULL);
}

static void
set_job (LbWindow *self, LbJob *job)
{
  gsize n;
  const LbPageKind *kinds = lb_page_kinds (&n);

  g_set_object (&self->job, job);
  lb_selection_set_current (self->selection, -1);
  g_signal_group_set_target (self->job_signals, job);
  for (gsize i = 0; i < n; i++) {
    GtkWidget *page = adw_bin_get_child (page_bin (self, kinds[i].name));

    if (page != NULL)
      g_object_set (page, "job", NULL, NULL);
  }
  give_page_job (self);
  if (job != NULL) {
    job_changed_cb (self);
  } else {
    update_header (self);
    lb_window_actions_update (self);
  }
}

/* A window that has waited for what it is to show comes up. */
static void
show_state (LbWindow *self, const char *state)
{
  g_clear_handle_id (&self->patience_id, g_source_remove);
  lb_turn_page (self->state_stack, state);
  if (!gtk_widget_get_visible (GTK_WIDGET (self)))
    gtk_window_present (GTK_WINDOW (self));
}

static void
remember_file (LbWindow *self)
{
  GSettings *preferences = lb_preferences ();
  g_autofree char *uri = g_file_get_uri (self->file);
  g_autofree char *path = g_file_get_path (self->file);
  g_autofree char *copies = lb_backup_folder ();

  /* A copy is looked at, and not what one goes on with. */
  if (preferences != NULL && !lb_backup_is_kept_in (copies, path))
    g_settings_set_string (preferences, "last-file", uri);
}

/* The ways back from a file that cannot be opened: a file that bytes were lost of may no longer say
 * that it is ours. */
static void
offer_ways_back (LbWindow *self, const GError *error)
{
  g_autofree char *path = g_file_get_path (self->file);
  g_autofree char *folder = lb_backup_folder ();
  g_autoptr (GPtrArray) copies = lb_backup_list (folder, path != NULL ? path : "");
  const gboolean has_copy = copies->len > 0;
  const gboolean is_damaged = g_error_matches (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED);
  const gboolean is_foreign = g_error_matches (error, LB_BOOK_ERROR, LB_BOOK_ERROR_FOREIGN);
  const gboolean is_gone = g_error_matches (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN);

  gtk_widget_set_visible (self->copies_button, has_copy && (is_damaged || is_foreign || is_gone));
  gtk_widget_set_visible (self->recover_button, is_damaged || (is_foreign && has_copy));
}

static void
show_failure (LbWindow *self, const GError *error)
{
  g_autofree char *words = lb_error_words (error);
  g_autofree char *escaped = g_markup_escape_text (words, -1);

  adw_status_page_set_title (self->failed_page, lb_error_heading (error));
  adw_status_page_set_description (self->failed_page, escaped);
  offer_ways_back (self, error);
  show_state (self, "failed");
}

static void
opened_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (LbWindow) self = LB_WINDOW (data);
  g_autoptr (GError) error = NULL;
  g_autoptr (LbJob) job = lb_job_open_finish (result, &error);

  if (g_cancellable_is_cancelled (g_task_get_cancellable (G_TASK (result))))
    return;
  if (job == NULL) {
    show_failure (self, error);
    return;
  }
  set_job (self, job);
  show_state (self, "job");
  remember_file (self);
  lb_copy_keeper_begin (job);
}

static void
patience_ended_cb (gpointer data)
{
  LbWindow *self = LB_WINDOW (data);

  self->patience_id = 0;
  show_state (self, "loading");
}

/* A window that is new comes up with the job in it, unless that takes long: then it says so. Until
 * then the page is made, and all of the window styled and measured. */
static void
wait_for_job (LbWindow *self)
{
  g_clear_handle_id (&self->patience_id, g_source_remove);
  self->patience_id = g_timeout_add_once (PATIENCE_MS, patience_ended_cb, self);
  lb_window_get_page (self, adw_view_stack_get_visible_child_name (self->page_stack));
  lb_turn_page (self->state_stack, "job");
  gtk_widget_realize (GTK_WIDGET (self));
  gtk_widget_measure (GTK_WIDGET (self), GTK_ORIENTATION_HORIZONTAL, -1, NULL, NULL, NULL, NULL);
}

static void
stop_opening (LbWindow *self)
{
  if (self->opening != NULL)
    g_cancellable_cancel (self->opening);
  g_clear_object (&self->opening);
}

static void
add_bins (LbWindow *self)
{
  gsize n;
  const LbPageKind *kinds = lb_page_kinds (&n);

  for (gsize i = 0; i < n; i++) {
    AdwViewStackPage *stacked = adw_view_stack_add_titled_with_icon (
      self->page_stack, adw_bin_new (), kinds[i].name, _ (kinds[i].title), kinds[i].icon);

    adw_view_stack_page_set_use_underline (stacked, TRUE);
  }
}

static void
restore_size (LbWindow *self)
{
  GSettings *preferences = lb_preferences ();

  if (preferences == NULL)
    return;
  gtk_window_set_default_size (GTK_WINDOW (self), g_settings_get_int (preferences, "window-width"),
                               g_settings_get_int (preferences, "window-height"));
  if (g_settings_get_boolean (preferences, "window-maximized"))
    gtk_window_maximize (GTK_WINDOW (self));
}

static gboolean
lb_window_close_request (GtkWindow *window)
{
  GSettings *preferences = lb_preferences ();
  int width, height;

  if (preferences != NULL) {
    gtk_window_get_default_size (window, &width, &height);
    if (!gtk_window_is_maximized (window)) {
      g_settings_set_int (preferences, "window-width", width);
      g_settings_set_int (preferences, "window-height", height);
    }
    g_settings_set_boolean (preferences, "window-maximized", gtk_window_is_maximized (window));
  }
  return GTK_WINDOW_CLASS (lb_window_parent_class)->close_request (window);
}

static void
lb_window_dispose (GObject *object)
{
  LbWindow *self = LB_WINDOW (object);

  stop_opening (self);
  g_clear_handle_id (&self->patience_id, g_source_remove);
  if (self->job_signals != NULL)
    g_signal_group_set_target (self->job_signals, NULL);
  g_clear_object (&self->job_signals);
  gtk_widget_dispose_template (GTK_WIDGET (self), LB_TYPE_WINDOW);
  g_clear_object (&self->job);
  g_clear_object (&self->selection);
  g_clear_object (&self->file);
  G_OBJECT_CLASS (lb_window_parent_class)->dispose (object);
}

static void
lb_window_class_init (LbWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = lb_window_close_request;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/lastbent/Lastbent/window.ui");
  gtk_widget_class_bind_template_child (widget_class, LbWindow, copies_button);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, demo_label);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, failed_page);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, job_box);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, job_label);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, page_stack);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, read_only_bar);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, recover_button);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, shift_label);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, state_stack);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, switcher_bar);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, switcher_title);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, trouble_bar);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, trouble_label);
}

static void
lb_window_init (LbWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));

  self->selection = lb_selection_new ();
  self->job_signals = g_signal_group_new (LB_TYPE_JOB);
  g_signal_group_connect_swapped (self->job_signals, "changed", G_CALLBACK (job_changed_cb), self);
  add_bins (self);
  g_signal_connect_object (self->page_stack, "notify::visible-child", G_CALLBACK (give_page_job),
                           self, G_CONNECT_SWAPPED);
  lb_window_actions_add (self);
  restore_size (self);
  set_job (self, NULL);
}

LbWindow *
lb_window_new (GtkApplication *application)
{
  return g_object_new (LB_TYPE_WINDOW, "application", application, NULL);
}

void
lb_window_open (LbWindow *self, GFile *file)
{
  g_return_if_fail (LB_IS_WINDOW (self));
  g_return_if_fail (G_IS_FILE (file));

  stop_opening (self);
  set_job (self, NULL);
  g_set_object (&self->file, file);
  self->opening = g_cancellable_new ();
  lb_job_open_async (file, self->opening, opened_cb, g_object_ref (self));
  if (gtk_widget_get_visible (GTK_WIDGET (self))) {
    show_state (self, "loading");
    gtk_window_present (GTK_WINDOW (self));
  } else {
    wait_for_job (self);
  }
}

GFile *
lb_window_get_file (LbWindow *self)
{
  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);

  return self->file;
}

LbJob *
lb_window_get_job (LbWindow *self)
{
  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);

  return self->job;
}

LbSelection *
lb_window_get_selection (LbWindow *self)
{
  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);

  return self->selection;
}

static GtkWidget *
make_page (LbWindow *self, const char *name)
{
  gsize n;
  const LbPageKind *kinds = lb_page_kinds (&n);

  for (gsize i = 0; i < n; i++)
    if (g_str_equal (kinds[i].name, name))
      return g_object_new (kinds[i].get_type (), "selection", self->selection, NULL);
  g_return_val_if_reached (NULL);
}

GtkWidget *
lb_window_get_page (LbWindow *self, const char *name)
{
  AdwBin *bin;

  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);

  bin = page_bin (self, name);
  if (bin != NULL && adw_bin_get_child (bin) == NULL)
    adw_bin_set_child (bin, make_page (self, name));
  return bin != NULL ? adw_bin_get_child (bin) : NULL;
}

void
lb_window_show_page (LbWindow *self, const char *name)
{
  g_return_if_fail (LB_IS_WINDOW (self));

  if (page_bin (self, name) != NULL)
    adw_view_stack_set_visible_child_name (self->page_stack, name);
}
