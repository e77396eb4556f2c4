/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The way of a packet: opened, checked and compared with the job on a worker; told; and only when
 * “Join” is pressed stored, on a worker, in one transaction.
 *
 * 1. The window keeps itself alive while a worker runs, because the worker reads @look.
 * 2. What is stored is what @look opened, joined to what the file holds by then; a union, so that what
 *    another window recorded meanwhile stays.
 * 3. “Join” can be pressed only while no worker runs and there is something new. */
#include "desk/take/join-window.h"

#include "desk/shell/job-join.h"
#include "desk/shell/say.h"
#include "draw/finding-words.h"
#include "draw/join-words.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

/* A list that nobody reads to its end; the rest is counted. */
#define ROWS_SHOWN 60

struct _LbJoinWindow
{
  AdwWindow parent_instance;

  /* Template widgets */
  AdwActionRow *ahead_row;
  AdwPreferencesGroup *findings_group;
  GtkWidget *join_button;
  AdwActionRow *news_row;
  AdwActionRow *origin_row;
  GtkProgressBar *progress_bar;
  AdwStatusPage *refused_page;
  AdwPreferencesGroup *shifts_group;
  GtkStack *stack;
  AdwWindowTitle *window_title;
  GtkLabel *working_label;

  /* Owned */
  LbJob *job;
  LbJoinLook *look;
  GCancellable *cancellable;

  /* State */
  gboolean is_joining;
};

G_DEFINE_FINAL_TYPE (LbJoinWindow, lb_join_window, ADW_TYPE_WINDOW)

static void
set_title (AdwActionRow *row, const char *title)
{
  g_autofree char *escaped = g_markup_escape_text (title, -1);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), escaped);
}

static void
add_row (AdwPreferencesGroup *group, const char *title, const char *subtitle)
{
  GtkWidget *row = g_object_new (ADW_TYPE_ACTION_ROW, "title-lines", 0, "subtitle-lines", 0, NULL);
  g_autofree char *escaped = g_markup_escape_text (subtitle, -1);

  set_title (ADW_ACTION_ROW (row), title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), escaped);
  adw_preferences_group_add (group, row);
}

static void
add_count_of_rest (AdwPreferencesGroup *group, guint n)
{
  g_autofree char *text = NULL;

  if (n <= ROWS_SHOWN)
    return;
  text = g_strdup_printf (ngettext ("… and %u more", "… and %u more", n - ROWS_SHOWN),
                          n - ROWS_SHOWN);
  add_row (group, text, "");
}

static void
show_origin (LbJoinWindow *self)
{
  const LbPacket *packet = self->look->packet;
  g_autofree char *moment = NULL;
  g_autofree char *title = NULL;

  if (!packet->is_packet) {
    set_title (self->origin_row, _ ("Another copy of this job file"));
    return;
  }
  moment = lb_moment_text (packet->made_us);
  title = *packet->who != '\0' ? g_strdup_printf (_ ("Sent by %s"), packet->who)
                               : g_strdup (_ ("It is not said who sent it"));
  set_title (self->origin_row, title);
  adw_action_row_set_subtitle (self->origin_row, moment);
}

static void
show_news (LbJoinWindow *self)
{
  const LbJoinPreview *preview = self->look->preview;
  g_autofree char *news = lb_join_news_text (preview);
  g_autofree char *ahead = lb_join_ahead_text (preview, g_get_real_time ());

  set_title (self->news_row, news);
  if (preview->n_known > 0) {
    g_autofree char *known = g_strdup_printf (
      ngettext ("%u entry is known already", "%u entries are known already", preview->n_known),
      preview->n_known);
    adw_action_row_set_subtitle (self->news_row, known);
  }
  if (ahead != NULL)
    set_title (self->ahead_row, ahead);
  gtk_widget_set_visible (GTK_WIDGET (self->ahead_row), ahead != NULL);
}

static void
show_findings (LbJoinWindow *self)
{
  const LbJoinPreview *preview = self->look->preview;
  const GArray *findings = preview->findings;

  for (guint i = 0; i < MIN (findings->len, ROWS_SHOWN); i++) {
    const LbFinding *finding = &g_array_index (findings, LbFinding, i);
    g_autofree char *text = lb_finding_text (lb_job_get_voice (self->job), preview->joined,
                                             preview->fold, finding);

    add_row (self->findings_group, text, lb_finding_advice (finding->kind));
  }
  add_count_of_rest (self->findings_group, findings->len);
  gtk_widget_set_visible (GTK_WIDGET (self->findings_group), findings->len > 0);
}

static void
show_shifts (LbJoinWindow *self)
{
  const LbJoinPreview *preview = self->look->preview;
  guint n = 0;

  for (guint i = 0; i < preview->joined->shifts->len; i++) {
    g_autofree char *text = NULL;

    if ((preview->n_by_shift[i] == 0 && !preview->is_new_shift[i]) || ++n > ROWS_SHOWN)
      continue;
    text = lb_join_shift_text (preview, i);
    add_row (self->shifts_group, text,
             preview->is_new_shift[i] ? _ ("A shift that is not on record here yet") : "");
  }
  add_count_of_rest (self->shifts_group, n);
  gtk_widget_set_visible (GTK_WIDGET (self->shifts_group), n > 0);
}

static void
show_preview (LbJoinWindow *self)
{
  gtk_stack_set_visible_child_name (self->stack, "preview");
  gtk_widget_set_sensitive (self->join_button, !lb_join_preview_is_empty (self->look->preview));
}

static void
looked_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (LbJoinWindow) self = data;
  g_autoptr (GError) error = NULL;

  self->look = lb_job_look_finish (LB_JOB (source), result, &error);
  if (self->job == NULL) /* closed in the meantime */
    return;
  if (self->look == NULL) {
    g_autofree char *escaped = g_markup_escape_text (error->message, -1);

    adw_status_page_set_description (self->refused_page, escaped);
    gtk_stack_set_visible_child_name (self->stack, "refused");
    return;
  }
  show_origin (self);
  show_news (self);
  show_findings (self);
  show_shifts (self);
  show_preview (self);
  gtk_widget_grab_focus (self->join_button);
}

static void
progress_cb (gsize done, gsize total, gpointer data)
{
  LbJoinWindow *self = data;

  if (self->job != NULL && total > 0)
    gtk_progress_bar_set_fraction (self->progress_bar, (double) done / (double) total);
}

static void
joined_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (LbJoinWindow) self = data;
  g_autoptr (GError) error = NULL;
  const gboolean is_joined = lb_job_join_finish (LB_JOB (source), result, &error);

  self->is_joining = FALSE;
  if (self->job == NULL) /* gone with the program's own window */
    return;
  if (is_joined) {
    GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (self));

    if (parent != NULL)
      lb_say (GTK_WIDGET (parent), _ ("The packet is joined"), FALSE);
    gtk_window_destroy (GTK_WINDOW (self));
    return;
  }
  show_preview (self);
  if (!g_error_matches (error, LB_BOOK_ERROR, LB_BOOK_ERROR_CANCELLED))
    lb_say_error (GTK_WIDGET (self), _ ("Nothing was joined"), g_steal_pointer (&error));
}

static void
join_clicked_cb (LbJoinWindow *self)
{
  g_clear_object (&self->cancellable);
  self->cancellable = g_cancellable_new ();
  self->is_joining = TRUE;
  gtk_widget_set_sensitive (self->join_button, FALSE);
  gtk_label_set_text (self->working_label, _ ("Joining…"));
  gtk_widget_set_visible (GTK_WIDGET (self->progress_bar), TRUE);
  gtk_stack_set_visible_child_name (self->stack, "working");
  lb_job_join_async (self->job, self->look, progress_cb, self, self->cancellable, joined_cb,
                     g_object_ref (self));
}

/* Closing stops whatever is under way. While it is being joined that is all it does: the window stays
 * and says how it ended. */
static gboolean
lb_join_window_close_request (GtkWindow *window)
{
  LbJoinWindow *self = LB_JOIN_WINDOW (window);

  g_cancellable_cancel (self->cancellable);
  if (self->is_joining)
    return TRUE;

  return GTK_WINDOW_CLASS (lb_join_window_parent_class)->close_request (window);
}

static void
lb_join_window_dispose (GObject *object)
{
  LbJoinWindow *self = LB_JOIN_WINDOW (object);

  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_JOIN_WINDOW);

  G_OBJECT_CLASS (lb_join_window_parent_class)->dispose (object);
}

static void
lb_join_window_finalize (GObject *object)
{
  LbJoinWindow *self = LB_JOIN_WINDOW (object);

  g_clear_pointer (&self->look, lb_join_look_free);

  G_OBJECT_CLASS (lb_join_window_parent_class)->finalize (object);
}

static void
lb_join_window_class_init (LbJoinWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_join_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_join_window_finalize;
  GTK_WINDOW_CLASS (klass)->close_request = lb_join_window_close_request;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/join-window.ui");
  gtk_widget_class_bind_template_child (widget_class, LbJoinWindow, ahead_row);
  gtk_widget_class_bind_template_child (widget_class, LbJoinWindow, findings_group);
  gtk_widget_class_bind_template_child (widget_class, LbJoinWindow, join_button);
  gtk_widget_class_bind_template_child (widget_class, LbJoinWindow, news_row);
  gtk_widget_class_bind_template_child (widget_class, LbJoinWindow, origin_row);
  gtk_widget_class_bind_template_child (widget_class, LbJoinWindow, progress_bar);
  gtk_widget_class_bind_template_child (widget_class, LbJoinWindow, refused_page);
  gtk_widget_class_bind_template_child (widget_class, LbJoinWindow, shifts_group);
  gtk_widget_class_bind_template_child (widget_class, LbJoinWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, LbJoinWindow, window_title);
  gtk_widget_class_bind_template_child (widget_class, LbJoinWindow, working_label);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_bind_template_callback (widget_class, gtk_window_close);
  gtk_widget_class_bind_template_callback (widget_class, join_clicked_cb);
}

static void
lb_join_window_init (LbJoinWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

LbJoinWindow *
lb_join_window_new (GtkWindow *parent, LbJob *job, GFile *file)
{
  g_return_val_if_fail (parent == NULL || GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (LB_IS_JOB (job), NULL);
  g_return_val_if_fail (G_IS_FILE (file), NULL);

  LbJoinWindow *self = g_object_new (LB_TYPE_JOIN_WINDOW, "transient-for", parent, NULL);
  g_autofree char *name = g_file_get_basename (file);

  self->job = g_object_ref (job);
  self->cancellable = g_cancellable_new ();
  adw_window_title_set_subtitle (self->window_title, name);
  lb_job_look_async (job, file, self->cancellable, looked_cb, g_object_ref (self));
  return self;
}
