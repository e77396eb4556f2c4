/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/recover.h"
#include "tool/command.h"

#include <glib/gi18n-lib.h>

static LbExit
run (int n_args, char **args)
{
  g_autoptr (GError) error = NULL;
  LbRecovery recovery;

  if (!lb_book_recover (args[0], args[1], &recovery, NULL, &error))
    return lb_tool_refuse (error);

  g_autofree char *text = lb_recovery_to_text (&recovery);
  g_print ("%s\n", text);
  return LB_EXIT_DONE;
}

const LbCommand lb_command_recover = {
  .name = "recover",
  .arguments = N_ ("DAMAGED NEW"),
  .summary = N_ ("Put what can be read of a damaged job file into a new one"),
  .more = N_ (
    "Says what was kept and what was lost. DAMAGED is never changed; NEW must not exist."),
  .least = 2,
  .most = 2,
  .run = run,
};
