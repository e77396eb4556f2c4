/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/seal.h"
#include "tool/command.h"

#include <glib/gi18n-lib.h>

/* What stands under signatures, when there are any. */
static gboolean
print_seals (LbBook *book, GError **error)
{
  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, error);
  g_auto (LbSealReport) report = { 0 };

  if (ledger == NULL)
    return FALSE;
  lb_seals_check (ledger, &report);
  if (report.head == NULL)
    return TRUE;

  g_autofree char *hash = lb_seal_hash (report.head);
  g_print (ngettext ("%u shift is signed, every row is as it was signed.\n",
                     "%u shifts are signed, every row is as it was signed.\n", report.n_seals),
           report.n_seals);
  g_print (_ ("Rows under a signature: %u; under none yet: %u.\nLast seal: %s\n"), report.n_rows,
           report.n_open, hash);
  if (report.n_absent > 0)
    g_print (ngettext ("%u earlier seal is not in this file: its shift has not come yet.\n",
                       "%u earlier seals are not in this file: their shifts have not come yet.\n",
                       report.n_absent),
             report.n_absent);
  return TRUE;
}

static LbExit
run (int n_args, char **args)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (args[0], LB_BOOK_READ, &error);
  g_auto (GStrv) findings = NULL;

  if (book == NULL || !lb_book_check (book, &findings, &error))
    return lb_tool_refuse (error);

  const guint n = findings != NULL ? g_strv_length (findings) : 0;

  for (guint i = 0; i < n; i++)
    g_printerr ("%s: %s\n", g_get_prgname (), findings[i]);
  if (n > 0)
    return LB_EXIT_REFUSED;

  g_print (_ ("“%s” is sound.\n"), args[0]);
  if (!print_seals (book, &error))
    return lb_tool_refuse (error);
  return LB_EXIT_DONE;
}

const LbCommand lb_command_check = {
  .name = "check",
  .arguments = N_ ("FILE"),
  .summary = N_ ("Check every part of a job file"),
  .more = N_ ("Proves every signature, and names the first row that breaks one. Each finding is a "
              "line on stderr; nothing is changed."),
  .least = 1,
  .most = 1,
  .run = run,
};
