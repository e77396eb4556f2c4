/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/demo-job.h"
#include "tool/command.h"

#include <glib/gi18n-lib.h>

static LbExit
run (int n_args, char **args)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_demo_job_create (args[0], &error);

  if (book == NULL)
    return lb_tool_refuse (error);

  g_print (_ ("The demo job is in “%s”.\n"), args[0]);
  return LB_EXIT_DONE;
}

const LbCommand lb_command_demo = {
  .name = "demo",
  .arguments = N_ ("FILE"),
  .summary = N_ ("Make the demo job: an invented wharf with thirty shifts of work"),
  .least = 1,
  .most = 1,
  .run = run,
};
