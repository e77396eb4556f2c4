/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Proving the signatures of a job that was opened. A worker reads the file by itself, so that the
 * window waits for nothing; what it finds is told as trouble. */
#include "desk/shell/job-private.h"

#include "book/seal.h"

#include <glib/gi18n-lib.h>

/* The first fault's sentence, NULL when every seal holds; freed by the task. */
static void
prove_thread (GTask *task, gpointer source, gpointer path, GCancellable *cancellable)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_READ, &error);
  g_autoptr (LbLedger) ledger = book != NULL ? lb_book_read (book, cancellable, &error) : NULL;
  g_auto (LbSealReport) report = { 0 };

  if (ledger == NULL) {
    g_task_return_error (task, g_steal_pointer (&error));
    return;
  }
  lb_seals_check (ledger, &report);
  if (report.faults->len == 0) {
    g_task_return_pointer (task, NULL, NULL);
    return;
  }

  g_autofree char *first = lb_seal_fault_text (ledger,
                                               &g_array_index (report.faults, LbSealFault, 0));
  g_task_return_pointer (
    task,
    /* Translators: a sentence without its full stop, as “Signature of the shift of …: row … was
     * changed after it was signed”. */
    g_strdup_printf (_ ("%s. Compare it with the printed report, and with a copy."), first),
    g_free);
}

static void
proved_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *fault = g_task_propagate_pointer (G_TASK (result), &error);

  /* A file that cannot be read just now is told by whoever reads it next. */
  if (fault != NULL)
    lb_job_set_broken_seal (LB_JOB (source), fault);
}

void
lb_job_prove_signatures (LbJob *self)
{
  const LbFold *fold = lb_job_get_fold (self);
  gboolean has_any = lb_job_get_ledger (self)->n_seals_noted > 0;

  for (gsize i = 0; i < fold->n_shifts; i++)
    has_any = has_any || fold->signatures[i].at_us != 0;
  if (!has_any)
    return;

  g_autoptr (GTask) task = g_task_new (self, NULL, proved_cb, NULL);
  g_task_set_source_tag (task, lb_job_prove_signatures);
  g_task_set_task_data (task, g_file_get_path (lb_job_get_file (self)), g_free);
  g_task_run_in_thread (task, prove_thread);
}
