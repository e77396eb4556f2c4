/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/dive-table-list.h"
#include "tool/command.h"

#include <glib/gi18n-lib.h>

static gboolean is_cleared;

static const GOptionEntry options[] = {
  { "clear", 0, 0, G_OPTION_ARG_NONE, &is_cleared, N_ ("Go back to the U.S. Navy’s table"), NULL },
  { NULL },
};

static LbExit
clear (const LbToolJob *job)
{
  g_autoptr (GError) error = NULL;

  if (!job->fold->has_own_table) {
    g_print (_ ("The job goes by the U.S. Navy’s table already.\n"));
    return LB_EXIT_DONE;
  }
  if (!lb_tool_store_setting (job, LB_SETTING_DIVE_TABLE, "", &error))
    return lb_tool_refuse (error);
  g_print (_ ("The job goes by the U.S. Navy’s table again.\n"));
  return LB_EXIT_DONE;
}

static LbExit
take (const LbToolJob *job, const char *list)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (list);
  g_autoptr (GError) error = NULL;
  LbDiveTable table;
  g_autofree char *text = lb_dive_table_load (file, &table, &error);

  if (text == NULL) {
    g_prefix_error (&error, "%s: ", list);
    return lb_tool_refuse (error);
  }
  if (!lb_tool_store_setting (job, LB_SETTING_DIVE_TABLE, text, &error))
    return lb_tool_refuse (error);
  g_print (ngettext ("%u row taken: the job goes by the supervisor’s own table.\n",
                     "%u rows taken: the job goes by the supervisor’s own table.\n", table.n_rows),
           (guint) table.n_rows);
  return LB_EXIT_DONE;
}

static LbExit
run (int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (GError) error = NULL;

  if (is_cleared == (n_args == 2))
    return lb_tool_misuse (_ ("name a table, or write --clear, and not both"));
  if (!lb_tool_job_open (&job, args[0], LB_BOOK_WRITE, &error))
    return lb_tool_refuse (error);
  return is_cleared ? clear (&job) : take (&job, args[1]);
}

const LbCommand lb_command_take_dive_table = {
  .name = "take-dive-table",
  .arguments = N_ ("FILE [TABLE]"),
  .summary = N_ ("Go by the supervisor’s own table of no-stop limits"),
  .more = N_ (
    "TABLE is delimited text: a first line fsw,nostop or msw,nostop, then a line a depth, "
    "shallow to deep, with whole minutes or “unlimited”. What is wrong is said with line "
    "and column, and then nothing is taken."),
  .options = options,
  .least = 1,
  .most = 2,
  .run = run,
};
