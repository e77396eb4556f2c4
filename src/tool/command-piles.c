/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/csv-text.h"
#include "tool/json-text.h"

#include <glib/gi18n-lib.h>

static gboolean as_json, as_csv;

static const GOptionEntry options[] = {
  { "csv", 0, 0, G_OPTION_ARG_NONE, &as_csv,
    N_ ("Every fact, in the job’s units; take-piles reads it again"), NULL },
  { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_ ("For programs: SI values, units in the names"),
    NULL },
  { NULL },
};

static LbExit
put_json (const LbFold *fold)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_array (builder);
  for (guint i = 0; i < fold->n_piles; i++) {
    json_builder_begin_object (builder);
    lb_json_add_pile (builder, fold, i);
    json_builder_end_object (builder);
  }
  json_builder_end_array (builder);

  return lb_json_put (builder);
}

/* A heading that the reading of pile lists knows: "x (ft)". */
static void
add_heading (GString *csv, LbFact fact, LbUnits units)
{
  const LbQuantity quantity = lb_fact_quantity (fact);
  const gboolean has_unit = quantity == LB_QUANTITY_LENGTH || quantity == LB_QUANTITY_SIZE;
  g_autofree char *heading = has_unit ? g_strdup_printf ("%s (%s)", lb_fact_name (fact),
                                                         lb_quantity_unit (quantity, units))
                                      : g_strdup (lb_fact_name (fact));

  lb_csv_add_text (csv, heading);
}

static void
add_fact (GString *csv, const LbPile *pile, LbFact fact, LbUnits units)
{
  g_autofree char *value = lb_pile_get (pile, fact, units);

  /* A true number must stay one, though it begins with a minus sign. */
  if (lb_fact_quantity (fact) == LB_QUANTITY_COUNT || *value == '\0')
    lb_csv_add_text (csv, value);
  else
    lb_csv_add_number (csv, g_ascii_strtod (value, NULL));
}

static LbExit
put_csv (const LbFold *fold)
{
  g_autoptr (GString) csv = g_string_new (NULL);

  for (LbFact fact = 0; fact < LB_N_FACTS; fact++)
    add_heading (csv, fact, fold->units);
  lb_csv_add_text (csv, "step");
  lb_csv_add_text (csv, "bars left");
  lb_csv_end_row (csv);
  for (guint i = 0; i < fold->n_piles; i++) {
    for (LbFact fact = 0; fact < LB_N_FACTS; fact++)
      add_fact (csv, &fold->piles[i], fact, fold->units);
    lb_csv_add_text (csv, lb_step_name (fold->states[i].step));
    lb_csv_add_number (csv, fold->states[i].n_left);
    lb_csv_end_row (csv);
  }

  return lb_tool_put (csv->str);
}

static LbExit
put_text (const LbFold *fold)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < fold->n_piles; i++) {
    const LbPileState *state = &fold->states[i];

    g_string_append_printf (text, "%-8s %-9s %u/%u%s\n", fold->piles[i].mark,
                            g_dgettext (GETTEXT_PACKAGE, lb_step_name (state->step)), state->n_left,
                            fold->piles[i].n_bars, state->flags != 0 ? " !" : "");
  }

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

const LbCommand lb_command_piles = {
  .name = "piles",
  .arguments = N_ ("FILE"),
  .summary = N_ ("List the piles: mark, step, bars left of bars"),
  .options = options,
  .least = 1,
  .most = 1,
  .run = run,
};
