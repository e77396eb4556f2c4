/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The shifts stand in both lists as they were when the window was opened, the last first; what is
 * recorded meanwhile goes along if it belongs to one of them. The window keeps itself alive while the
 * worker writes. */
#include "desk/take/send-window.h"

#include "desk/shell/job-join.h"
#include "desk/shell/say.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

/* A shift as it was when the window was opened. */
typedef struct
{
  guint32 day;
  gboolean is_night;
} Choice;

struct _LbSendWindow
{
  AdwWindow parent_instance;

  /* Template widgets */
  AdwComboRow *first_row;
  AdwComboRow *last_row;
  GtkWidget *page;
  GtkProgressBar *progress_bar;
  GtkWidget *send_button;
  AdwEntryRow *who_row;

  /* Owned */
  LbJob *job;
  GArray *choices; /* Choice, the last shift first */
  GCancellable *cancellable;

  /* State */
  gboolean is_writing;
};

G_DEFINE_FINAL_TYPE (LbSendWindow, lb_send_window, ADW_TYPE_WINDOW)

static const Choice *
choice_of (LbSendWindow *self, AdwComboRow *row)
{
  return &g_array_index (self->choices, Choice, adw_combo_row_get_selected (row));
}

static LbPacketSpan
chosen_span (LbSendWindow *self)
{
  const Choice *first = choice_of (self, self->first_row);
  const Choice *last = choice_of (self, self->last_row);
  LbPacketSpan span = { .first_day = first->day, .last_day = last->day };

  if (adw_combo_row_get_selected (self->first_row) == adw_combo_row_get_selected (self->last_row))
    span.watch = first->is_night ? "night" : "day";
  return span;
}

/* The last is never before the first: what was picked stays, the other follows. */
static void
first_picked_cb (LbSendWindow *self)
{
  const guint first = adw_combo_row_get_selected (self->first_row);

  if (first != GTK_INVALID_LIST_POSITION && adw_combo_row_get_selected (self->last_row) > first)
    adw_combo_row_set_selected (self->last_row, first);
}

static void
last_picked_cb (LbSendWindow *self)
{
  const guint last = adw_combo_row_get_selected (self->last_row);

  if (last != GTK_INVALID_LIST_POSITION && adw_combo_row_get_selected (self->first_row) < last)
    adw_combo_row_set_selected (self->first_row, last);
}

/* "Quay 9 2026-07-14 night.lastpack", "Quay 9 2026-07-01 to 2026-07-14.lastpack". */
static char *
name_packet (LbSendWindow *self)
{
  const LbPacketSpan span = chosen_span (self);
  g_autofree char *first = lb_day_iso (span.first_day);
  g_autofree char *last = lb_day_iso (span.last_day);
  g_autofree char *job = g_strdup (lb_job_get_fold (self->job)->name);

  g_strdelimit (job, "/\\", '-');
  if (span.watch != NULL)
    return g_strdup_printf ("%s %s %s" LB_PACKET_SUFFIX, job, first,
                            g_dgettext (GETTEXT_PACKAGE, span.watch));
  if (span.first_day == span.last_day)
    return g_strdup_printf ("%s %s" LB_PACKET_SUFFIX, job, first);
  /* Translators: a file's name: the job, the first and the last day. */
  return g_strdup_printf (_ ("%s %s to %s.lastpack"), job, first, last);
}

static void
progress_cb (gsize done, gsize total, gpointer data)
{
  LbSendWindow *self = data;

  if (self->job != NULL && total > 0)
    gtk_progress_bar_set_fraction (self->progress_bar, (double) done / (double) total);
}

static void
set_writing (LbSendWindow *self, gboolean is_writing)
{
  self->is_writing = is_writing;
  gtk_widget_set_sensitive (self->page, !is_writing);
  gtk_widget_set_sensitive (self->send_button, !is_writing);
  gtk_widget_set_visible (GTK_WIDGET (self->progress_bar), is_writing);
}

static void
sent_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (LbSendWindow) self = data;
  g_autoptr (GError) error = NULL;
  const gboolean is_sent = lb_job_send_finish (LB_JOB (source), result, &error);

  if (self->job == NULL) /* gone with the program's own window */
    return;
  set_writing (self, FALSE);
  if (is_sent) {
    GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (self));

    if (parent != NULL)
      lb_say (GTK_WIDGET (parent), _ ("The packet is written"), FALSE);
    gtk_window_destroy (GTK_WINDOW (self));
  } else if (!g_error_matches (error, LB_BOOK_ERROR, LB_BOOK_ERROR_CANCELLED)) {
    lb_say_error (GTK_WIDGET (self), _ ("No packet was written"), g_steal_pointer (&error));
  }
}

static void
send_to (LbSendWindow *self, GFile *file)
{
  const LbPacketSpan span = chosen_span (self);

  g_clear_object (&self->cancellable);
  self->cancellable = g_cancellable_new ();
  set_writing (self, TRUE);
  lb_job_send_async (self->job, &span, gtk_editable_get_text (GTK_EDITABLE (self->who_row)), file,
                     progress_cb, self, self->cancellable, sent_cb, g_object_ref (self));
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, gpointer data)
{
  LbSendWindow *self = LB_SEND_WINDOW (data);
  g_autoptr (GtkNativeDialog) own = dialog;
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT && self->job != NULL) {
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
    send_to (self, file);
  }
  gtk_native_dialog_destroy (dialog);
}

static void
send_clicked_cb (LbSendWindow *self)
{
  g_autofree char *name = name_packet (self);
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (
    _ ("Save the Packet"), GTK_WINDOW (self), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), NULL);

  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  g_signal_connect_object (chooser, "response", G_CALLBACK (chosen_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

/* The shift in hand is the one that is picked. */
static void
set_up_shifts (LbSendWindow *self)
{
  const LbLedger *ledger = lb_job_get_ledger (self->job);
  const guint n = ledger->shifts->len;
  const int present = lb_job_get_shift (self->job);
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  const guint picked = present >= 0 ? n - 1 - (guint) present : 0;

  for (guint i = n; i-- > 0;) {
    const LbShift *shift = lb_ledger_shift (ledger, i);
    const Choice choice = { .day = shift->day, .is_night = g_str_equal (shift->watch, "night") };

    g_array_append_val (self->choices, choice);
    gtk_string_list_take (names, lb_shift_text (shift));
  }
  adw_combo_row_set_model (self->first_row, G_LIST_MODEL (names));
  adw_combo_row_set_model (self->last_row, G_LIST_MODEL (names));
  adw_combo_row_set_selected (self->first_row, picked);
  adw_combo_row_set_selected (self->last_row, picked);
}

/* Closing stops the writing, and then the window stays and says how it ended. */
static gboolean
lb_send_window_close_request (GtkWindow *window)
{
  LbSendWindow *self = LB_SEND_WINDOW (window);

  g_cancellable_cancel (self->cancellable);
  if (self->is_writing)
    return TRUE;

  return GTK_WINDOW_CLASS (lb_send_window_parent_class)->close_request (window);
}

static void
lb_send_window_dispose (GObject *object)
{
  LbSendWindow *self = LB_SEND_WINDOW (object);

  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_SEND_WINDOW);

  G_OBJECT_CLASS (lb_send_window_parent_class)->dispose (object);
}

static void
lb_send_window_finalize (GObject *object)
{
  g_array_unref (LB_SEND_WINDOW (object)->choices);

  G_OBJECT_CLASS (lb_send_window_parent_class)->finalize (object);
}

static void
lb_send_window_class_init (LbSendWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_send_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_send_window_finalize;
  GTK_WINDOW_CLASS (klass)->close_request = lb_send_window_close_request;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/send-window.ui");
  gtk_widget_class_bind_template_child (widget_class, LbSendWindow, first_row);
  gtk_widget_class_bind_template_child (widget_class, LbSendWindow, last_row);
  gtk_widget_class_bind_template_child (widget_class, LbSendWindow, page);
  gtk_widget_class_bind_template_child (widget_class, LbSendWindow, progress_bar);
  gtk_widget_class_bind_template_child (widget_class, LbSendWindow, send_button);
  gtk_widget_class_bind_template_child (widget_class, LbSendWindow, who_row);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_bind_template_callback (widget_class, first_picked_cb);
  gtk_widget_class_bind_template_callback (widget_class, gtk_window_close);
  gtk_widget_class_bind_template_callback (widget_class, last_picked_cb);
  gtk_widget_class_bind_template_callback (widget_class, send_clicked_cb);
}

static void
lb_send_window_init (LbSendWindow *self)
{
  self->choices = g_array_new (FALSE, FALSE, sizeof (Choice));
  gtk_widget_init_template (GTK_WIDGET (self));
}

LbSendWindow *
lb_send_window_new (GtkWindow *parent, LbJob *job)
{
  g_return_val_if_fail (parent == NULL || GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (LB_IS_JOB (job), NULL);
  g_return_val_if_fail (lb_job_get_ledger (job)->shifts->len > 0, NULL);

  LbSendWindow *self = g_object_new (LB_TYPE_SEND_WINDOW, "transient-for", parent, NULL);

  self->job = g_object_ref (job);
  set_up_shifts (self);
  return self;
}
