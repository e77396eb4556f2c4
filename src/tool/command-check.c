/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tool/command.h"

#include <glib/gi18n-lib.h>

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
  return LB_EXIT_DONE;
}

const LbCommand lb_command_check = {
  .name = "check",
  .arguments = N_ ("FILE"),
  .summary = N_ ("Check every part of a job file"),
  .more = N_ ("Each finding is a line on stderr; nothing is changed."),
  .least = 1,
  .most = 1,
  .run = run,
};
