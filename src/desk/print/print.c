/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/print/print.h"

#include "desk/print/print-operation.h"
#include "desk/print/printout.h"
#include "desk/shell/say.h"
#include "draw/picture.h"

#include <glib/gi18n-lib.h>

static void
printed_cb (GtkPrintOperation *operation, GtkPrintOperationResult result, GtkWindow *parent)
{
  GError *error = NULL;

  if (result != GTK_PRINT_OPERATION_RESULT_ERROR)
    return;
  gtk_print_operation_get_error (operation, &error);
  lb_say_error (GTK_WIDGET (parent), _ ("Nothing was printed"), error);
}

static void
print (GtkWindow *parent, LbPrintout *printout)
{
  /* Kept until it is done, which may be after this function. */
  GtkPrintOperation *operation = lb_print_operation_new (printout);

  g_signal_connect_object (operation, "done", G_CALLBACK (printed_cb), parent, 0);
  g_signal_connect_after (operation, "done", G_CALLBACK (g_object_unref), NULL);
  /* "done" comes in any case, with the error if there was one. */
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, parent, NULL);
}

static void
draw_page_cb (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  lb_printout_draw (data, cr, page);
}

static gboolean
write_file (LbPrintout *printout, const char *path, GError **error)
{
  double width, height;

  lb_paper_size (lb_printout_get_paper (printout), &width, &height);

  return lb_picture_write (path, width, height, lb_printout_lay (printout, width, height),
                           lb_printout_get_title (printout), draw_page_cb, printout, error);
}

/* Where @file is, with the ending that says what is written. The dialog asks before a file is
 * replaced, but only about the name as it was typed. */
static char *
path_of (GFile *file, GError **error)
{
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *lower = NULL;
  g_autofree char *ended = NULL;

  if (path == NULL) {
    g_autofree char *name = g_file_get_parse_name (file);

    g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_SUPPORTED,
                 _ ("“%s” is not in a folder of this computer: save it here, and copy it there"),
                 name);
    return NULL;
  }
  lower = g_ascii_strdown (path, -1);
  if (g_str_has_suffix (lower, ".pdf"))
    return g_steal_pointer (&path);
  ended = g_strconcat (path, ".pdf", NULL);
  if (g_file_test (ended, G_FILE_TEST_EXISTS)) {
    g_set_error (error, G_IO_ERROR, G_IO_ERROR_EXISTS,
                 _ ("“%s” is there already: choose another name, or that very file"), ended);
    return NULL;
  }
  return g_steal_pointer (&ended);
}

static void
save (GtkWindow *parent, LbPrintout *printout, GFile *file)
{
  GError *error = NULL;
  g_autofree char *path = path_of (file, &error);
  g_autofree char *said = NULL;

  if (path == NULL || !write_file (printout, path, &error)) {
    lb_say_error (GTK_WIDGET (parent), _ ("The PDF was not saved"), error);
    return;
  }
  said = g_strdup_printf (_ ("Saved as %s"), path);
  lb_say (GTK_WIDGET (parent), said, FALSE);
}

static void
save_chosen_cb (GtkNativeDialog *chooser, int response, GtkWindow *parent)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
  gtk_native_dialog_hide (chooser);
  if (file != NULL)
    save (parent, g_object_get_data (G_OBJECT (chooser), "printout"), file);
}

static void
ask_where (GtkWindow *parent, LbPrintout *printout)
{
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (
    _ ("Save as PDF"), parent, GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), NULL);
  g_autofree char *name = lb_printout_dup_file_name (printout);

  g_object_set_data_full (G_OBJECT (chooser), "printout", printout,
                          (GDestroyNotify) lb_printout_free);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  g_signal_connect_object (chooser, "response", G_CALLBACK (save_chosen_cb), parent, 0);
  /* It is no widget: this keeps it until it has answered. */
  g_signal_connect_after (chooser, "response", G_CALLBACK (g_object_unref), NULL);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

void
lb_print_cards (GtkWindow *parent, LbJob *job, const guint *piles, gsize n)
{
  g_return_if_fail (GTK_IS_WINDOW (parent));

  print (parent, lb_printout_new_cards (job, piles, n));
}

void
lb_print_day (GtkWindow *parent, LbJob *job, guint32 day)
{
  g_return_if_fail (GTK_IS_WINDOW (parent));

  print (parent, lb_printout_new_day (job, day));
}

void
lb_save_cards (GtkWindow *parent, LbJob *job, const guint *piles, gsize n)
{
  g_return_if_fail (GTK_IS_WINDOW (parent));

  ask_where (parent, lb_printout_new_cards (job, piles, n));
}

void
lb_save_day (GtkWindow *parent, LbJob *job, guint32 day)
{
  g_return_if_fail (GTK_IS_WINDOW (parent));

  ask_where (parent, lb_printout_new_day (job, day));
}

gboolean
lb_print_cards_to_file (LbJob *job, const guint *piles, gsize n, const char *path, GError **error)
{
  g_autoptr (LbPrintout) printout = lb_printout_new_cards (job, piles, n);

  g_return_val_if_fail (printout != NULL, FALSE);

  return write_file (printout, path, error);
}

gboolean
lb_print_day_to_file (LbJob *job, guint32 day, const char *path, GError **error)
{
  g_autoptr (LbPrintout) printout = lb_printout_new_day (job, day);

  g_return_val_if_fail (printout != NULL, FALSE);

  return write_file (printout, path, error);
}
