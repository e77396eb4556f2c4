/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/plan-words.h"
#include "exchange/csv-text.h"
#include "tool/json-text.h"

#include <glib/gi18n-lib.h>

static gboolean as_json, as_csv;

static const GOptionEntry options[] = {
  { "csv", 0, 0, G_OPTION_ARG_NONE, &as_csv, N_ ("One row a day, the last day last"), NULL },
  { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_ ("For programs: SI values, units in the names"),
    NULL },
  { NULL },
};

/* The sums one by one, with the names that programs know them by. */
typedef struct
{
  const char *name;
  double value;
} Sum;

#define N_SUMS 12

static void
list_sums (const LbTotals *totals, Sum sums[N_SUMS])
{
  const Sum listed[N_SUMS] = {
    { "cleaned_count", totals->steps[LB_STEP_CLEANED] },
    { "severed_count", totals->steps[LB_STEP_SEVERED] },
    { "rigged_count", totals->steps[LB_STEP_RIGGED] },
    { "pulled_count", totals->steps[LB_STEP_PULLED] },
    { "bars_count", totals->bars },
    { "rods_count", totals->rods },
    { "oxygen_m3", totals->oxygen_m3 },
    { "trigger_s", totals->trigger_s },
    { "dives_count", totals->n_dives },
    { "bottom_s", totals->bottom_s },
    { "delay_s", totals->delay_s },
    { "fault_s", totals->fault_s },
  };

  memcpy (sums, listed, sizeof listed);
}

static void
add_sums (JsonBuilder *builder, const LbTotals *totals)
{
  Sum sums[N_SUMS];

  list_sums (totals, sums);
  for (gsize i = 0; i < N_SUMS; i++)
    lb_json_add_member (builder, g_strdup (sums[i].name), sums[i].value);
}

/* The burning that is to come, at piles neither severed nor out. */
static void
add_left (JsonBuilder *builder, const LbFold *fold)
{
  LbBurnLeft left;
  LbBurnNeed need;

  lb_fold_burn_left (fold, &left);
  lb_burn_left_predict (&left, lb_fold_basis (fold), &need);
  json_builder_set_member_name (builder, "left");
  json_builder_begin_object (builder);
  lb_json_add_member (builder, g_strdup ("piles_count"), left.n_piles);
  lb_json_add_member (builder, g_strdup ("unknown_piles_count"), left.n_unknown);
  lb_json_add_member (builder, g_strdup ("bars_count"), left.sum.n_bars);
  lb_json_add_member (builder, g_strdup ("steel_m2"), left.sum.steel_m2);
  lb_json_add_range (builder, "trigger", LB_QUANTITY_TIME, &need.burn.trigger_s);
  lb_json_add_range (builder, "burn", LB_QUANTITY_TIME, &need.burn.wall_s);
  lb_json_add_range (builder, "rods", LB_QUANTITY_COUNT, &need.burn.rods);
  lb_json_add_range (builder, "oxygen", LB_QUANTITY_GAS, &need.oxygen_m3);
  lb_json_add_range (builder, "cylinders", LB_QUANTITY_COUNT, &need.cylinders);
  json_builder_end_object (builder);
}

static LbExit
put_json (const LbFold *fold)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_object (builder);
  lb_json_add_text (builder, "name", fold->name);
  json_builder_set_member_name (builder, "piles");
  json_builder_begin_object (builder);
  for (LbStep step = 0; step < LB_N_STEPS; step++)
    lb_json_add_member (builder, g_strconcat (lb_step_name (step), "_count", NULL),
                        fold->n_by_step[step]);
  json_builder_end_object (builder);
  json_builder_set_member_name (builder, "job");
  json_builder_begin_object (builder);
  add_sums (builder, &fold->job);
  json_builder_end_object (builder);

  add_left (builder, fold);

  json_builder_set_member_name (builder, "days");
  json_builder_begin_array (builder);
  for (gsize i = 0; i < fold->n_days; i++) {
    g_autofree char *day = lb_day_iso (fold->days[i].day);

    json_builder_begin_object (builder);
    lb_json_add_text (builder, "day", day);
    add_sums (builder, &fold->days[i].totals);
    lb_json_add_member (builder, g_strdup ("pulled_so_far_count"), fold->days[i].pulled_so_far);
    json_builder_end_object (builder);
  }
  json_builder_end_array (builder);
  json_builder_end_object (builder);

  return lb_json_put (builder);
}

static LbExit
put_csv (const LbFold *fold)
{
  g_autoptr (GString) csv = g_string_new (NULL);
  Sum sums[N_SUMS];

  lb_csv_add_text (csv, "day");
  list_sums (&fold->job, sums);
  for (gsize i = 0; i < N_SUMS; i++)
    lb_csv_add_text (csv, sums[i].name);
  lb_csv_add_text (csv, "pulled_so_far_count");
  lb_csv_end_row (csv);
  for (gsize i = 0; i < fold->n_days; i++) {
    g_autofree char *day = lb_day_iso (fold->days[i].day);

    lb_csv_add_text (csv, day);
    list_sums (&fold->days[i].totals, sums);
    for (gsize k = 0; k < N_SUMS; k++)
      lb_csv_add_number (csv, sums[k].value);
    lb_csv_add_number (csv, fold->days[i].pulled_so_far);
    lb_csv_end_row (csv);
  }

  return lb_tool_put (csv->str);
}

static void
append_line (GString *text, const char *label, const LbTotals *totals)
{
  g_string_append_printf (text, "%-11s %8u %8u %7u %7u %6u %6.0f %6u\n", label,
                          totals->steps[LB_STEP_CLEANED], totals->steps[LB_STEP_SEVERED],
                          totals->steps[LB_STEP_RIGGED], totals->steps[LB_STEP_PULLED],
                          totals->bars, totals->rods, totals->n_dives);
}

static LbExit
put_text (const LbFold *fold)
{
  g_autoptr (GString) text = g_string_new (NULL);

  g_string_append_printf (text, "%-11s %8s %8s %7s %7s %6s %6s %6s\n", _ ("day"), _ ("cleaned"),
                          _ ("severed"), _ ("rigged"), _ ("pulled"), _ ("bars"), _ ("rods"),
                          _ ("dives"));
  for (gsize i = 0; i < fold->n_days; i++) {
    g_autofree char *day = lb_day_iso (fold->days[i].day);

    append_line (text, day, &fold->days[i].totals);
  }
  append_line (text, _ ("job"), &fold->job);

  return lb_tool_put (text->str);
}

static LbExit
run (int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (GError) error = NULL;

  if (as_csv && as_json)
    return lb_tool_misuse (_ ("--csv and --json exclude each other"));
  if (!lb_tool_job_open (&job, args[0], LB_BOOK_READ, &error))
    return lb_tool_refuse (error);

  return as_json ? put_json (job.fold) : as_csv ? put_csv (job.fold) : put_text (job.fold);
}

const LbCommand lb_command_totals = {
  .name = "totals",
  .arguments = N_ ("FILE"),
  .summary = N_ ("What was done, day by day and in all"),
  .options = options,
  .least = 1,
  .most = 1,
  .run = run,
};
