/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The commands that put a table into the job, or take it out again. They do the same and differ in
 * what they say. */
#include "book/delay-causes.h"
#include "exchange/setting-list.h"
#include "tool/command.h"

#include <glib/gi18n-lib.h>

static gboolean is_cleared;

static void
say_causes (const LbFold *fold)
{
  g_auto (GStrv) causes = lb_delay_causes (fold);
  const guint n = g_strv_length (causes);

  g_print (ngettext ("The job has %u cause of delay of its own.\n",
                     "The job has %u causes of delay of its own.\n", n),
           n);
}

static void
say_taken (const LbFold *fold, LbSettingTable table)
{
  const guint n_dive_rows = (guint) fold->own_table.n_rows, n_rows = fold->chart.n_rows,
              n_layers = fold->ground.n_layers, n_cautions = (guint) fold->n_crew_rows;

  switch (table) {
  case LB_TABLE_DIVE:
    g_print (ngettext ("%u row taken: the job goes by the supervisor’s own table.\n",
                       "%u rows taken: the job goes by the supervisor’s own table.\n", n_dive_rows),
             n_dive_rows);
    return;
  case LB_TABLE_CRANE:
    g_print (ngettext ("%u row taken: the job goes by this chart of the crane.\n",
                       "%u rows taken: the job goes by this chart of the crane.\n", n_rows),
             n_rows);
    return;
  case LB_TABLE_GROUND:
    g_print (ngettext ("%u layer taken: the job goes by this ground.\n",
                       "%u layers taken: the job goes by this ground.\n", n_layers),
             n_layers);
    return;
  case LB_TABLE_CAUTIONS:
    g_print (ngettext ("The job has %u caution of the crew’s own.\n",
                       "The job has %u cautions of the crew’s own.\n", n_cautions),
             n_cautions);
    return;
  case LB_TABLE_DELAYS:
    say_causes (fold);
    return;
  }
  g_assert_not_reached ();
}

static void
say_none (LbSettingTable table, gboolean is_already)
{
  static const char *const already[LB_N_SETTING_TABLES] = {
    [LB_TABLE_DIVE] = N_ ("The job goes by the U.S. Navy’s table already.\n"),
    [LB_TABLE_CRANE] = N_ ("The job has no chart of the crane.\n"),
    [LB_TABLE_GROUND] = N_ ("The job knows no ground.\n"),
    [LB_TABLE_CAUTIONS] = N_ ("The job has no cautions of the crew’s own.\n"),
    [LB_TABLE_DELAYS] = N_ ("The job has the causes of delay that are built in already.\n"),
  };
  static const char *const again[LB_N_SETTING_TABLES] = {
    [LB_TABLE_DIVE] = N_ ("The job goes by the U.S. Navy’s table again.\n"),
    [LB_TABLE_CRANE] = N_ ("The crane’s chart is out of the job.\n"),
    [LB_TABLE_GROUND] = N_ ("The layers of the ground are out of the job.\n"),
    [LB_TABLE_CAUTIONS] = N_ ("The crew’s own cautions are out of the job.\n"),
    [LB_TABLE_DELAYS] = N_ ("The job has the causes of delay that are built in again.\n"),
  };

  g_print ("%s", _ (is_already ? already[table] : again[table]));
}

/* @text "" for none. */
static gboolean
store (LbToolJob *job, LbSettingTable table, const char *text, GError **error)
{
  return lb_tool_store_setting (job, lb_setting_table_key (table), text, error) &&
         lb_tool_job_read (job, error);
}

static LbExit
clear (LbToolJob *job, LbSettingTable table)
{
  g_autoptr (GError) error = NULL;
  const gboolean is_already = *job->fold->tables[table] == '\0';

  if (!is_already && !store (job, table, "", &error))
    return lb_tool_refuse (error);
  say_none (table, is_already);
  return LB_EXIT_DONE;
}

static LbExit
take (LbToolJob *job, LbSettingTable table, const char *list)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (list);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = lb_setting_list_load (table, file, &error);

  if (text == NULL) {
    g_prefix_error (&error, "%s: ", list);
    return lb_tool_refuse (error);
  }
  if (!store (job, table, text, &error))
    return lb_tool_refuse (error);
  say_taken (job->fold, table);
  return LB_EXIT_DONE;
}

static LbExit
run (LbSettingTable table, int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (GError) error = NULL;

  if (is_cleared == (n_args == 2))
    return lb_tool_misuse (_ ("name a list, or write --clear, and not both"));
  if (!lb_tool_job_open (&job, args[0], LB_BOOK_WRITE, &error))
    return lb_tool_refuse (error);
  return is_cleared ? clear (&job, table) : take (&job, table, args[1]);
}

static LbExit
run_dive (int n_args, char **args)
{
  return run (LB_TABLE_DIVE, n_args, args);
}

static LbExit
run_crane (int n_args, char **args)
{
  return run (LB_TABLE_CRANE, n_args, args);
}

static LbExit
run_ground (int n_args, char **args)
{
  return run (LB_TABLE_GROUND, n_args, args);
}

static LbExit
run_cautions (int n_args, char **args)
{
  return run (LB_TABLE_CAUTIONS, n_args, args);
}

static LbExit
run_delays (int n_args, char **args)
{
  return run (LB_TABLE_DELAYS, n_args, args);
}

static const GOptionEntry dive_options[] = {
  { "clear", 0, 0, G_OPTION_ARG_NONE, &is_cleared, N_ ("Go back to the U.S. Navy’s table"), NULL },
  { NULL },
};

static const GOptionEntry options[] = {
  { "clear", 0, 0, G_OPTION_ARG_NONE, &is_cleared, N_ ("Take it out of the job again"), NULL },
  { NULL },
};

const LbCommand lb_command_take_dive_table = {
  .name = "take-dive-table",
  .arguments = N_ ("FILE [TABLE]"),
  .summary = N_ ("Go by the supervisor’s own table of no-stop limits"),
  .more = N_ (
    "TABLE is delimited text: a first line fsw,nostop or msw,nostop, then a line a depth, "
    "shallow to deep, with whole minutes or “unlimited”. What is wrong is said with line "
    "and column, and then nothing is taken."),
  .options = dive_options,
  .least = 1,
  .most = 2,
  .run = run_dive,
};

const LbCommand lb_command_take_crane_chart = {
  .name = "take-crane-chart",
  .arguments = N_ ("FILE [LIST]"),
  .summary = N_ ("Put the crane’s own chart into the job"),
  .more = N_ (
    "LIST is delimited text: a first line radius (ft),capacity (lb), then a line a row, from the "
    "shortest radius; the radius in ft or m, the capacity in lb, kip, t or kg. What is wrong is "
    "said with line and column, and then nothing is taken. The settings crane-radius, "
    "crane-on-barge, boom-tip-height, barge-list, barge-trim and list-limit say where it stands."),
  .options = options,
  .least = 1,
  .most = 2,
  .run = run_crane,
};

const LbCommand lb_command_take_soil = {
  .name = "take-soil",
  .arguments = N_ ("FILE [LIST]"),
  .summary = N_ ("Put the layers of the ground into the job, to reckon a whole pull"),
  .more = N_ (
    "LIST is delimited text: a first line to (ft),soil,strength (psf),in water (pcf), then a line "
    "a layer from the mudline down, each from where the one above ends. The soil is clay, "
    "friction, or medium dense, dense or very dense and after it sand or sand-silt, without a "
    "strength. What is wrong is said with line and column, and then nothing is taken."),
  .options = options,
  .least = 1,
  .most = 2,
  .run = run_ground,
};

const LbCommand lb_command_take_cautions = {
  .name = "take-cautions",
  .arguments = N_ ("FILE [LIST]"),
  .summary = N_ ("Keep the crew’s own cautions in the job, beside those built in"),
  .more = N_ ("LIST is delimited text of the form of cautions.csv: key,severity,when,words,source. "
              "What is wrong is said with line and column, and then nothing is taken."),
  .options = options,
  .least = 1,
  .most = 2,
  .run = run_cautions,
};

const LbCommand lb_command_take_delay_causes = {
  .name = "take-delay-causes",
  .arguments = N_ ("FILE [LIST]"),
  .summary = N_ ("Put the job’s own list of causes of delay in the place of those built in"),
  .more = N_ (
    "LIST is text: a first line cause, then a line a cause. What is wrong is said with its "
    "line, and then nothing is taken."),
  .options = options,
  .least = 1,
  .most = 2,
  .run = run_delays,
};

const LbCommand *
lb_tool_take_command (LbSettingTable table)
{
  static const LbCommand *const commands[LB_N_SETTING_TABLES] = {
    [LB_TABLE_DIVE] = &lb_command_take_dive_table,
    [LB_TABLE_CRANE] = &lb_command_take_crane_chart,
    [LB_TABLE_GROUND] = &lb_command_take_soil,
    [LB_TABLE_CAUTIONS] = &lb_command_take_cautions,
    [LB_TABLE_DELAYS] = &lb_command_take_delay_causes,
  };

  g_return_val_if_fail (table < LB_N_SETTING_TABLES, NULL);

  return commands[table];
}
