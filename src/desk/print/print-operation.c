/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/print/print-operation.h"

static void
begin_print_cb (GtkPrintOperation *operation, GtkPrintContext *context, gpointer data)
{
  const gsize n = lb_printout_lay (data, gtk_print_context_get_width (context),
                                   gtk_print_context_get_height (context));

  gtk_print_operation_set_n_pages (operation, (int) n);
}

static void
draw_page_cb (GtkPrintOperation *operation, GtkPrintContext *context, int page, gpointer data)
{
  lb_printout_draw (data, gtk_print_context_get_cairo_context (context), (gsize) page);
}

static GtkPageSetup *
page_setup_for (LbPaper paper)
{
  static const char *const names[] = {
    [LB_PAPER_LETTER] = GTK_PAPER_NAME_LETTER,
    [LB_PAPER_A4] = GTK_PAPER_NAME_A4,
  };
  GtkPageSetup *setup = gtk_page_setup_new ();
  GtkPaperSize *size = gtk_paper_size_new (names[paper]);

  gtk_page_setup_set_paper_size_and_default_margins (setup, size);
  gtk_page_setup_set_orientation (setup, GTK_PAGE_ORIENTATION_PORTRAIT);
  gtk_paper_size_free (size);
  return setup;
}

GtkPrintOperation *
lb_print_operation_new (LbPrintout *printout)
{
  GtkPrintOperation *operation;
  g_autoptr (GtkPageSetup) setup = NULL;

  g_return_val_if_fail (printout != NULL, NULL);

  operation = gtk_print_operation_new ();
  setup = page_setup_for (lb_printout_get_paper (printout));
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  gtk_print_operation_set_job_name (operation, lb_printout_get_title (printout));
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  /* The pages have margins of their own. */
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_allow_async (operation, TRUE);

  g_object_set_data_full (G_OBJECT (operation), "printout", printout,
                          (GDestroyNotify) lb_printout_free);
  g_signal_connect (operation, "begin-print", G_CALLBACK (begin_print_cb), printout);
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_page_cb), printout);
  return operation;
}
