/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/dive-table-row.h"

#include "desk/shell/say.h"
#include "exchange/dive-table-list.h"

#include <glib/gi18n-lib.h>

struct _LbDiveTableRow
{
  AdwActionRow parent_instance;

  GtkWidget *back_button, *open_button;
  LbJob *job;
};

G_DEFINE_FINAL_TYPE (LbDiveTableRow, lb_dive_table_row, ADW_TYPE_ACTION_ROW)

/* @text "" for the Navy's. */
static gboolean
record (LbDiveTableRow *self, const char *text, GError **error)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);

  draft.what = LB_SETTING_DIVE_TABLE;
  draft.note = text;
  return lb_job_record (self->job, &draft, 1, error);
}

static void
back_clicked_cb (LbDiveTableRow *self)
{
  GError *error = NULL;

  if (!record (self, "", &error))
    lb_say_error (GTK_WIDGET (self), _ ("The Navy’s table was not brought back"), error);
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, gpointer data)
{
  g_autoptr (GtkNativeDialog) own = dialog;
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  gtk_native_dialog_destroy (dialog);
  if (file != NULL)
    lb_dive_table_row_take (LB_DIVE_TABLE_ROW (data), file);
}

static void
open_clicked_cb (LbDiveTableRow *self)
{
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (
    _ ("Open a Table of No-Stop Limits"), GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
    GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"), NULL);
  g_autoptr (GtkFileFilter) lists = gtk_file_filter_new ();

  gtk_file_filter_set_name (lists, _ ("Lists (csv, tsv, txt)"));
  gtk_file_filter_add_suffix (lists, "csv");
  gtk_file_filter_add_suffix (lists, "tsv");
  gtk_file_filter_add_suffix (lists, "txt");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), lists);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  g_signal_connect_object (chooser, "response", G_CALLBACK (chosen_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static GtkWidget *
add_button (LbDiveTableRow *self, const char *label, GCallback clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  adw_action_row_add_suffix (ADW_ACTION_ROW (self), button);
  return button;
}

static void
lb_dive_table_row_dispose (GObject *object)
{
  g_clear_object (&LB_DIVE_TABLE_ROW (object)->job);
  G_OBJECT_CLASS (lb_dive_table_row_parent_class)->dispose (object);
}

static void
lb_dive_table_row_class_init (LbDiveTableRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_dive_table_row_dispose;
}

static void
lb_dive_table_row_init (LbDiveTableRow *self)
{
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), _ ("No-stop table"));
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (self), FALSE);
  self->back_button = add_button (self, _ ("Back to the Navy’s"), G_CALLBACK (back_clicked_cb));
  self->open_button = add_button (self, _ ("Open…"), G_CALLBACK (open_clicked_cb));
}

LbDiveTableRow *
lb_dive_table_row_new (void)
{
  return g_object_new (LB_TYPE_DIVE_TABLE_ROW, NULL);
}

/* The shallowest and the deepest row tell one table from another. */
static char *
own_words (const LbDiveTable *table)
{
  const char *unit = table->is_metric ? "msw" : "fsw";

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "The supervisor’s own, %u row, %g to %g %s",
                                       "The supervisor’s own, %u rows, %g to %g %s", table->n_rows),
                          (guint) table->n_rows, table->rows[0].depth,
                          table->rows[table->n_rows - 1].depth, unit);
}

void
lb_dive_table_row_show (LbDiveTableRow *self, LbJob *job)
{
  const LbFold *fold;
  g_autofree char *words = NULL;

  g_return_if_fail (LB_IS_DIVE_TABLE_ROW (self));

  g_set_object (&self->job, job);
  if (job == NULL)
    return;
  fold = lb_job_get_fold (job);
  words = fold->has_own_table ? own_words (&fold->own_table)
                              : g_strdup (_ ("U.S. Navy Diving Manual, revision 7, table 9-7"));
  adw_action_row_set_subtitle (ADW_ACTION_ROW (self), words);
  gtk_widget_set_visible (self->back_button, fold->has_own_table);
  gtk_widget_set_sensitive (self->back_button, !lb_job_is_read_only (job));
  gtk_widget_set_sensitive (self->open_button, !lb_job_is_read_only (job));
}

void
lb_dive_table_row_take (LbDiveTableRow *self, GFile *file)
{
  g_autofree char *text = NULL;
  GError *error = NULL;
  LbDiveTable table;

  g_return_if_fail (LB_IS_DIVE_TABLE_ROW (self));
  g_return_if_fail (self->job != NULL);

  text = lb_dive_table_load (file, &table, &error);
  if (text == NULL || !record (self, text, &error))
    lb_say_error (GTK_WIDGET (self), _ ("The table was not taken"), error);
}
