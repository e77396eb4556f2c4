/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tool/command.h"

#include <glib/gi18n-lib.h>

static gboolean is_cleared;

static const GOptionEntry options[] = {
  { "clear", 0, 0, G_OPTION_ARG_NONE, &is_cleared, N_ ("Put the crew’s own cautions away"), NULL },
  { NULL },
};

/* How many cautions the job has of the crew's own from now on. */
static LbExit
store (LbToolJob *job, const char *text)
{
  g_autoptr (GError) error = NULL;

  if (!lb_tool_store_setting (job, LB_SETTING_CAUTIONS, text, &error) ||
      !lb_tool_job_read (job, &error))
    return lb_tool_refuse (error);
  g_print (ngettext ("The job has %u caution of the crew’s own.\n",
                     "The job has %u cautions of the crew’s own.\n", job->fold->n_crew_rows),
           (guint) job->fold->n_crew_rows);
  return LB_EXIT_DONE;
}

static LbExit
run (int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (LbCrewCautions) list = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  if (is_cleared == (n_args == 2))
    return lb_tool_misuse (_ ("name a list, or write --clear, and not both"));
  if (!lb_tool_job_open (&job, args[0], LB_BOOK_WRITE, &error))
    return lb_tool_refuse (error);
  if (is_cleared)
    return store (&job, "");
  list = lb_tool_read_cautions (args[1], &error);
  if (list == NULL)
    return lb_tool_refuse (error);
  text = lb_crew_cautions_to_text (list);
  return store (&job, text);
}

const LbCommand lb_command_take_cautions = {
  .name = "take-cautions",
  .arguments = N_ ("FILE [LIST]"),
  .summary = N_ ("Keep the crew’s own cautions in the job, beside those built in"),
  .more = N_ ("LIST is delimited text of the form of cautions.csv: key,severity,when,words,source. "
              "What is wrong is said with line and column, and then nothing is taken."),
  .options = options,
  .least = 1,
  .most = 2,
  .run = run,
};
