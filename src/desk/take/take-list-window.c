/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The way of a pile list: loaded once on a worker; read again on a worker whenever a column, the
 * units or a default changes (an earlier reading is cancelled); shown; and only when "Take" is
 * pressed handed to the job, in one transaction.
 *
 * 1. The window keeps itself alive while a worker runs, because the worker reads @table.
 * 2. @rows is what the person sees; what is taken is exactly @rows, never read again.
 * 3. "Take" can be pressed only while no reading is under way. */
#include "desk/take/take-list-window.h"

#include "desk/shell/say.h"
#include "desk/take/list-columns.h"
#include "desk/take/list-reading.h"
#include "desk/take/pile-kind-group.h"
#include "exchange/exchange-error.h"

#include <glib/gi18n-lib.h>

#define ROWS_SHOWN   50
#define FAULTS_SHOWN 500

struct _LbTakeListWindow
{
  AdwWindow parent_instance;

  /* Template widgets */
  GtkButton *cancel_button;
  AdwPreferencesGroup *columns_group;
  GtkWidget *faults_box;
  GtkListView *faults_view;
  LbPileKindGroup *kind_group;
  GtkCheckButton *leave_out_check;
  GtkProgressBar *progress_bar;
  AdwStatusPage *refused_page;
  GtkColumnView *rows_view;
  GtkStack *stack;
  GtkWidget *take_button;
  AdwComboRow *units_row;
  GtkLabel *verdict_label;
  AdwWindowTitle *window_title;
  GtkLabel *working_label;

  /* Owned */
  LbJob *job;
  LbTextTable *table;
  LbPileListRows *rows;
  GCancellable *cancellable;

  /* State */
  AdwComboRow *column_rows[LB_N_FACTS];
  LbPileListMap map;
  gboolean is_setting_up;
  gboolean is_taking;
};

G_DEFINE_FINAL_TYPE (LbTakeListWindow, lb_take_list_window, ADW_TYPE_WINDOW)

static void
refuse (LbTakeListWindow *self, const GError *error)
{
  g_autofree char *escaped = g_markup_escape_text (error->message, -1);

  adw_status_page_set_description (self->refused_page, escaped);
  gtk_stack_set_visible_child_name (self->stack, "refused");
}

static GCancellable *
start_anew (LbTakeListWindow *self)
{
  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  self->cancellable = g_cancellable_new ();
  gtk_widget_set_sensitive (self->take_button, FALSE);

  return self->cancellable;
}

static gboolean
leaves_out (LbTakeListWindow *self)
{
  return gtk_check_button_get_active (self->leave_out_check);
}

static void
update_verdict (LbTakeListWindow *self)
{
  if (self->rows == NULL)
    return;

  const guint n_good = self->rows->piles->len;
  const guint n_bad = self->rows->faults->len;
  g_autofree char *good = g_strdup_printf (
    ngettext ("%u pile can be taken", "%u piles can be taken", n_good), n_good);
  g_autofree char *bad = g_strdup_printf (ngettext ("%u row is wrong", "%u rows are wrong", n_bad),
                                          n_bad);
  g_autofree char *verdict = n_bad == 0
                               ? g_strdup_printf ("%s.", good)
                               /* Translators: “197 piles can be taken; 3 rows are wrong.” */
                               : g_strdup_printf (_ ("%s; %s."), good, bad);

  gtk_label_set_text (self->verdict_label, verdict);
  gtk_widget_set_visible (self->faults_box, n_bad > 0);
  gtk_widget_set_sensitive (self->take_button, n_good > 0 && (n_bad == 0 || leaves_out (self)));
}

static void
show_rows (LbTakeListWindow *self)
{
  g_autoptr (GtkStringList) faults = gtk_string_list_new (NULL);

  for (guint i = 0; i < MIN (self->rows->faults->len, FAULTS_SHOWN); i++) {
    const LbPileListFault *fault = g_ptr_array_index (self->rows->faults, i);
    g_autofree char *line =
      /* Translators: where in a list something is wrong, and what. */
      g_strdup_printf (_ ("Line %u, %s: %s"), (guint) fault->line, fault->column, fault->reason);
    gtk_string_list_append (faults, line);
  }
  if (self->rows->faults->len > FAULTS_SHOWN) {
    const guint n_more = self->rows->faults->len - FAULTS_SHOWN;
    g_autofree char *more = g_strdup_printf (
      ngettext ("… and %u row more", "… and %u rows more", n_more), n_more);
    gtk_string_list_append (faults, more);
  }

  g_autoptr (GtkNoSelection) model = gtk_no_selection_new (
    G_LIST_MODEL (g_steal_pointer (&faults)));
  gtk_list_view_set_model (self->faults_view, GTK_SELECTION_MODEL (model));
  lb_list_columns_show (self->rows_view, self->rows->piles, lb_job_get_voice (self->job)->units,
                        ROWS_SHOWN);
  update_verdict (self);
  gtk_stack_set_visible_child_name (self->stack, "preview");
}

/* Nothing can be taken just now, and why. */
static void
show_none (LbTakeListWindow *self, const char *why)
{
  g_clear_pointer (&self->rows, lb_pile_list_rows_free);
  gtk_label_set_text (self->verdict_label, why);
  gtk_widget_set_visible (self->faults_box, FALSE);
  gtk_column_view_set_model (self->rows_view, NULL);
  gtk_stack_set_visible_child_name (self->stack, "preview");
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (LbTakeListWindow) self = data;
  g_autoptr (GError) error = NULL;
  LbPileListRows *rows = lb_list_read_finish (result, &error);

  if (self->job == NULL) { /* closed in the meantime */
    lb_pile_list_rows_free (rows);
  } else if (rows != NULL) {
    g_clear_pointer (&self->rows, lb_pile_list_rows_free);
    self->rows = rows;
    show_rows (self);
  } else if (g_error_matches (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_COLUMN)) {
    /* The columns are there to be set right: say what is missing and stay. */
    show_none (self, error->message);
  } else if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED)) {
    refuse (self, error);
  }
}

static void
read_again (LbTakeListWindow *self)
{
  LbPile defaults;
  GCancellable *cancellable;

  if (self->table == NULL || self->is_setting_up)
    return;

  cancellable = start_anew (self);
  if (!lb_pile_kind_group_get (self->kind_group, &defaults)) {
    show_none (self, _ ("One of the rows marked red cannot be read."));
    return;
  }

  for (int fact = 0; fact < LB_N_FACTS; fact++)
    self->map.column_of[fact] = (int) adw_combo_row_get_selected (self->column_rows[fact]) - 1;
  lb_list_read_async (self->table, &self->map, &defaults,
                      lb_fold_taken_marks (lb_job_get_fold (self->job)), cancellable, read_cb,
                      g_object_ref (self));
}

static GtkStringList *
column_names (LbTakeListWindow *self)
{
  const LbTextTableShape shape = lb_text_table_get_shape (self->table);
  GtkStringList *names = gtk_string_list_new (NULL);

  gtk_string_list_append (names, _ ("not in the list"));
  for (gsize column = 0; column < shape.n_columns; column++) {
    const char *heading = lb_text_table_cell (self->table, 0, column);
    g_autofree char *name =
      self->map.has_heading && *heading != '\0'
        ? g_strdup (heading)
        /* Translators: the third column of a list that has no heading, and its first cell. */
        : g_strdup_printf (_ ("column %u (%s)"), (guint) column + 1, heading);
    gtk_string_list_append (names, name);
  }

  return names;
}

static void
set_up_columns (LbTakeListWindow *self)
{
  g_autoptr (GtkStringList) names = column_names (self);

  for (int fact = 0; fact < LB_N_FACTS; fact++) {
    AdwComboRow *row = ADW_COMBO_ROW (adw_combo_row_new ());

    adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row),
                                   g_dgettext (GETTEXT_PACKAGE, lb_fact_title ((LbFact) fact)));
    adw_combo_row_set_model (row, G_LIST_MODEL (names));
    adw_combo_row_set_selected (row, (guint) (self->map.column_of[fact] + 1));
    g_signal_connect_object (row, "notify::selected", G_CALLBACK (read_again), self,
                             G_CONNECT_SWAPPED);
    adw_preferences_group_add (self->columns_group, GTK_WIDGET (row));
    self->column_rows[fact] = row;
  }
}

static LbUnits
chosen_units (LbTakeListWindow *self)
{
  return adw_combo_row_get_selected (self->units_row) == 1 ? LB_UNITS_METRIC : LB_UNITS_US;
}

/* Only the units of columns that don't say their own are guessed anew; the mapping stays. */
static void
units_changed_cb (LbTakeListWindow *self)
{
  LbPileListMap guessed;

  lb_pile_kind_group_set_units (self->kind_group, chosen_units (self));
  if (self->table == NULL || self->is_setting_up)
    return;

  lb_pile_list_guess (self->table, chosen_units (self), &guessed);
  memcpy (self->map.units, guessed.units, sizeof guessed.units);
  read_again (self);
}

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (LbTakeListWindow) self = data;
  g_autoptr (GError) error = NULL;

  self->table = lb_list_load_finish (result, &error);
  if (self->job == NULL) /* closed in the meantime */
    return;
  if (self->table == NULL) {
    if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
      refuse (self, error);
    return;
  }

  lb_pile_list_guess (self->table, chosen_units (self), &self->map);
  self->is_setting_up = TRUE;
  set_up_columns (self);
  self->is_setting_up = FALSE;
  read_again (self);
}

static void
progress_cb (gsize done, gsize total, gpointer data)
{
  LbTakeListWindow *self = data;

  gtk_progress_bar_set_fraction (self->progress_bar,
                                 total > 0 ? (double) done / (double) total : 0);
}

static void
taken_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (LbTakeListWindow) self = data;
  g_autoptr (GError) error = NULL;
  const gboolean is_taken = lb_job_add_piles_finish (LB_JOB (source), result, &error);

  self->is_taking = FALSE;
  if (self->job == NULL) /* gone with the program's own window */
    return;
  if (is_taken) {
    GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (self));
    const guint n = self->rows->piles->len;
    g_autofree char *said = g_strdup_printf (ngettext ("%u pile taken", "%u piles taken", n), n);

    if (parent != NULL)
      lb_say (GTK_WIDGET (parent), said, FALSE);
    gtk_window_destroy (GTK_WINDOW (self));
    return;
  }

  gtk_stack_set_visible_child_name (self->stack, "preview");
  update_verdict (self);
  if (!g_error_matches (error, LB_BOOK_ERROR, LB_BOOK_ERROR_CANCELLED) &&
      !g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    lb_say_error (GTK_WIDGET (self), _ ("No pile was taken"), g_steal_pointer (&error));
}

static void
take_clicked_cb (LbTakeListWindow *self)
{
  GCancellable *cancellable = start_anew (self);

  self->is_taking = TRUE;
  gtk_label_set_text (self->working_label, _ ("Taking the piles…"));
  gtk_widget_set_visible (GTK_WIDGET (self->progress_bar), TRUE);
  gtk_stack_set_visible_child_name (self->stack, "working");
  lb_job_add_piles_async (self->job, (const LbPile *) (gpointer) self->rows->piles->data,
                          self->rows->piles->len, g_object_ref (self), g_object_unref, progress_cb,
                          self, cancellable, taken_cb, g_object_ref (self));
}

/* Closing stops whatever is under way. While piles are being taken that is all it does: the window
 * stays and says how it ended. */
static gboolean
lb_take_list_window_close_request (GtkWindow *window)
{
  LbTakeListWindow *self = LB_TAKE_LIST_WINDOW (window);

  g_cancellable_cancel (self->cancellable);
  if (self->is_taking)
    return TRUE;

  return GTK_WINDOW_CLASS (lb_take_list_window_parent_class)->close_request (window);
}

static void
lb_take_list_window_dispose (GObject *object)
{
  LbTakeListWindow *self = LB_TAKE_LIST_WINDOW (object);

  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_TAKE_LIST_WINDOW);

  G_OBJECT_CLASS (lb_take_list_window_parent_class)->dispose (object);
}

static void
lb_take_list_window_finalize (GObject *object)
{
  LbTakeListWindow *self = LB_TAKE_LIST_WINDOW (object);

  g_clear_pointer (&self->rows, lb_pile_list_rows_free);
  g_clear_pointer (&self->table, lb_text_table_free);

  G_OBJECT_CLASS (lb_take_list_window_parent_class)->finalize (object);
}

static void
lb_take_list_window_class_init (LbTakeListWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_take_list_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_take_list_window_finalize;
  GTK_WINDOW_CLASS (klass)->close_request = lb_take_list_window_close_request;

  g_type_ensure (LB_TYPE_PILE_KIND_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/take-list-window.ui");
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, cancel_button);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, columns_group);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, faults_box);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, faults_view);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, kind_group);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, leave_out_check);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, progress_bar);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, refused_page);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, rows_view);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, take_button);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, units_row);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, verdict_label);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, window_title);
  gtk_widget_class_bind_template_child (widget_class, LbTakeListWindow, working_label);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_bind_template_callback (widget_class, gtk_window_close);
  gtk_widget_class_bind_template_callback (widget_class, read_again);
  gtk_widget_class_bind_template_callback (widget_class, take_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, units_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, update_verdict);
}

static void
lb_take_list_window_init (LbTakeListWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self->progress_bar), FALSE);
}

LbTakeListWindow *
lb_take_list_window_new (GtkWindow *parent, LbJob *job, GFile *file)
{
  LbTakeListWindow *self;
  g_autofree char *name = NULL;

  g_return_val_if_fail (parent == NULL || GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (LB_IS_JOB (job), NULL);
  g_return_val_if_fail (G_IS_FILE (file), NULL);

  self = g_object_new (LB_TYPE_TAKE_LIST_WINDOW, "transient-for", parent, NULL);
  name = g_file_get_basename (file);
  self->job = g_object_ref (job);
  adw_window_title_set_subtitle (self->window_title, name);
  self->is_setting_up = TRUE;
  adw_combo_row_set_selected (self->units_row,
                              lb_job_get_voice (job)->units == LB_UNITS_METRIC ? 1 : 0);
  self->is_setting_up = FALSE;
  lb_pile_kind_group_set_units (self->kind_group, chosen_units (self));
  lb_list_load_async (file, start_anew (self), loaded_cb, g_object_ref (self));

  return self;
}
