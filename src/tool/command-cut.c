/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/input-words.h"
#include "draw/plan-words.h"
#include "tool/cut-basis-text.h"
#include "tool/json-text.h"
#include "trade/cut-plan.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static gboolean as_json;
static char *cautions_option, *explain_option;

static const GOptionEntry options[] = {
  { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_ ("For programs: SI values, units in the names"),
    NULL },
  { "explain", 0, 0, G_OPTION_ARG_STRING, &explain_option,
    N_ ("What one figure is made of: its formula, inputs and source"), N_ ("FIGURE") },
  { "cautions", 0, 0, G_OPTION_ARG_FILENAME, &cautions_option,
    N_ ("Cautions of the crew’s own: a list as cautions.csv"), N_ ("LIST") },
  { NULL },
};

static void
add_figure (JsonBuilder *builder,
            const LbPile *pile,
            const LbFold *fold,
            const LbVoice *voice,
            const LbCutPlan *plan,
            LbFigureId id)
{
  const LbFigure *figure = &plan->figures[id];
  const LbQuantity quantity = lb_figure_quantity (id);
  g_autofree char *key = g_strdelimit (g_strdup (lb_figure_key (id)), "-", '_');
  g_autofree char *tag_name = g_strconcat (key, "_tag", NULL);
  g_autofree char *reason_name = g_strconcat (key, "_reason", NULL);
  g_autofree char *reason = lb_figure_reason_text (voice, pile, &fold->assumptions, plan, id);

  lb_json_add_range (builder, key, quantity, &figure->range);
  lb_json_add_text (builder, tag_name, lb_tag_name (figure->tag));
  lb_json_add_text (builder, reason_name, reason);
}

static void
add_order (JsonBuilder *builder, const LbCutPlan *plan)
{
  json_builder_set_member_name (builder, "burn_order");
  json_builder_begin_array (builder);
  for (gsize i = 0; i < plan->n_order; i++)
    json_builder_add_int_value (builder, plan->order[i] + 1);
  json_builder_end_array (builder);
}

/* What the hold rests on, and what an order that somebody chose costs. */
static void
add_hold (JsonBuilder *builder, const LbCutPlan *plan)
{
  lb_json_add_member (builder, g_strdup ("yield_pa"), plan->yield_pa);
  lb_json_add_member (builder, g_strdup ("yield_high_pa"), plan->yield_most_pa);
  json_builder_set_member_name (builder, "order_price");
  if (!plan->price.is_known) {
    json_builder_add_null_value (builder);
    return;
  }
  json_builder_begin_object (builder);
  json_builder_set_member_name (builder, "fewer_bars_before_hook_count");
  json_builder_add_int_value (builder, plan->price.fewer);
  lb_json_add_member (builder, g_strdup ("share_borne"), plan->price.chosen);
  lb_json_add_member (builder, g_strdup ("share_borne_in_favoured_order"), plan->price.favoured);
  json_builder_end_object (builder);
}

/* What the figures of the lift rest on beyond their numbers. */
static void
add_lift (JsonBuilder *builder, const LbCutPlan *plan)
{
  const gboolean is_by_chart = plan->crane.from == LB_CAPACITY_CHART;
  const double unknown = (double) NAN;

  lb_json_add_member (builder, g_strdup ("crane_capacity_n"), plan->crane.capacity_n);
  lb_json_add_member (builder, g_strdup ("crane_radius_m"),
                      is_by_chart ? plan->crane.radius_m : unknown);
  lb_json_add_member (builder, g_strdup ("crane_chart_row_m"),
                      is_by_chart ? plan->crane.row_m : unknown);
  lb_json_add_member (builder, g_strdup ("ground_grip_n"), plan->whole.grip_n.likely);
  lb_json_add_member (builder, g_strdup ("ground_grip_low_n"), plan->whole.grip_n.low);
  lb_json_add_member (builder, g_strdup ("ground_grip_high_n"), plan->whole.grip_n.high);
  json_builder_set_member_name (builder, "picks_m");
  json_builder_begin_array (builder);
  for (guint i = 0; i < plan->n_picks && !isnan (plan->pick_at_m[0]); i++)
    lb_json_add_number (builder, plan->pick_at_m[i]);
  json_builder_end_array (builder);

  json_builder_set_member_name (builder, "critical_lift");
  json_builder_begin_array (builder);
  for (int i = 0; i < LB_N_CRITICAL_TRIGGERS; i++) {
    const LbCriticalTrigger trigger = (LbCriticalTrigger) i;

    if (!lb_critical_set_has (plan->critical, trigger))
      continue;
    json_builder_begin_object (builder);
    lb_json_add_text (builder, "text", lb_critical_words (trigger));
    lb_json_add_text (builder, "source", lb_critical_source (trigger));
    json_builder_end_object (builder);
  }
  json_builder_end_array (builder);
}

static void
add_cautions (JsonBuilder *builder,
              const LbPile *pile,
              const LbAssumptions *assumptions,
              const LbVoice *voice,
              const LbCutPlan *plan)
{
  json_builder_set_member_name (builder, "cautions");
  json_builder_begin_array (builder);
  for (gsize i = 0; i < plan->n_cautions; i++) {
    const LbCautionRow *row = plan->cautions[i];
    g_autofree char *text = lb_caution_text (voice, pile, assumptions, plan, i);

    json_builder_begin_object (builder);
    lb_json_add_text (builder, "key", row->key);
    lb_json_add_text (builder, "severity", lb_severity_key (row->severity));
    lb_json_add_text (builder, "text", text);
    lb_json_add_text (builder, "source", row->source);
    json_builder_set_member_name (builder, "is_of_this_pile");
    json_builder_add_boolean_value (builder, i < plan->n_own_cautions);
    json_builder_end_object (builder);
  }
  json_builder_end_array (builder);
}

static LbExit
put_json (const LbToolJob *job, guint pile, const LbVoice *voice, const LbCutPlan *plan)
{
  const LbPile *facts = &job->fold->piles[pile];
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_object (builder);
  json_builder_set_member_name (builder, "pile");
  json_builder_begin_object (builder);
  lb_json_add_pile (builder, job->fold, pile);
  json_builder_end_object (builder);

  json_builder_set_member_name (builder, "figures");
  json_builder_begin_object (builder);
  for (LbFigureId id = 0; id < LB_N_FIGURES; id++)
    add_figure (builder, facts, job->fold, voice, plan, id);
  json_builder_set_member_name (builder, "no_stop_is_unlimited");
  json_builder_add_boolean_value (builder,
                                  isinf (plan->figures[LB_FIGURE_NO_STOP].range.likely) != 0);
  json_builder_end_object (builder);

  lb_json_add_text (builder, "visibility", lb_visibility_key (plan->visibility));
  lb_json_add_member (builder, g_strdup ("table_depth_m"), plan->table_depth_m);
  lb_json_add_text (builder, "slag_side",
                    plan->is_battered ? lb_compass_name (plan->slag_side) : NULL);
  lb_json_add_text (builder, "lead_side",
                    plan->is_battered ? lb_compass_name (plan->lead_side) : NULL);
  add_order (builder, plan);
  add_hold (builder, plan);
  add_lift (builder, plan);
  add_cautions (builder, facts, &job->fold->assumptions, voice, plan);
  lb_json_add_basis (builder, facts, &job->fold->assumptions);
  lb_json_add_text (builder, "stands_above",
                    "The diving supervisor, a competent rigger, a licensed engineer and the local "
                    "code stand above every figure here.");
  json_builder_end_object (builder);

  return lb_json_put (builder);
}

static void
append_figure (GString *text,
               const LbToolJob *job,
               const LbPile *pile,
               const LbVoice *voice,
               const LbCutPlan *plan,
               LbFigureId id)
{
  g_autofree char *value = lb_figure_text (voice, plan, id);
  g_autofree char *range = lb_figure_range_text (voice, plan, id);
  g_autofree char *reason = lb_figure_reason_text (voice, pile, &job->fold->assumptions, plan, id);
  const char *title = g_dgettext (GETTEXT_PACKAGE, lb_figure_title (id));
  const char *tag = g_dgettext (GETTEXT_PACKAGE, lb_tag_name (plan->figures[id].tag));

  g_string_append_printf (text, "%s: %s", title, value);
  if (range != NULL)
    g_string_append_printf (text, " (%s)", range);
  if (!isnan (plan->figures[id].range.likely))
    g_string_append_printf (text, " · %s", tag);
  if (reason != NULL && *reason != '\0')
    g_string_append_printf (text, "\n    %s", reason);
  g_string_append_c (text, '\n');
}

static LbExit
put_text (const LbToolJob *job, guint pile, const LbVoice *voice, const LbCutPlan *plan)
{
  const LbPile *facts = &job->fold->piles[pile];
  g_autofree char *lacks = lb_pile_lacks_text (facts);
  g_autofree char *pile_text = lb_pile_text (voice, facts);
  g_autofree char *state_text = lb_pile_state_text (facts, &job->fold->states[pile]);
  g_autoptr (GString) text = g_string_new (NULL);

  g_string_append_printf (text, "%s: %s\n%s\n", facts->mark, pile_text, state_text);
  if (lacks != NULL)
    g_string_append_printf (text, _ ("To be found out: %s\n"), lacks);
  g_string_append_c (text, '\n');
  for (LbFigureId id = 0; id < LB_N_FIGURES; id++)
    if (lb_cut_plan_tells (plan, id))
      append_figure (text, job, facts, voice, plan, id);
  g_string_append_c (text, '\n');
  for (gsize i = 0; i < plan->n_cautions; i++) {
    g_autofree char *caution = lb_caution_text (voice, facts, &job->fold->assumptions, plan, i);

    if (i == plan->n_own_cautions)
      g_string_append_printf (text, "\n%s\n", _ ("At every cut"));
    g_string_append_printf (text, "! %s\n", caution);
  }

  return lb_tool_put (text->str);
}

static LbExit
run (int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (GError) error = NULL;
  LbFigureId explained = LB_FIGURE_TRUE_LENGTH;
  LbCutPlan plan;

  if (explain_option != NULL && as_json)
    return lb_tool_misuse (_ ("--explain and --json exclude each other: the JSON has every basis"));
  if (explain_option != NULL && !lb_tool_find_figure (explain_option, &explained, &error))
    return lb_tool_misuse ("%s", error->message);
  if (!lb_tool_job_open (&job, args[0], LB_BOOK_READ, &error))
    return lb_tool_refuse (error);

  const int pile = lb_tool_find_pile (&job, args[1], &error);

  if (pile < 0 || !lb_tool_job_add_cautions (&job, cautions_option, &error))
    return lb_tool_refuse (error);

  const LbPileState *state = &job.fold->states[pile];
  const LbVoice voice = lb_tool_voice (&job);
  const LbCutBasis basis = lb_tool_job_basis (&job);

  lb_cut_plan_reckon (&job.fold->piles[pile], state->burned, state->gone, state->n_unplaced, &basis,
                      &plan);
  if (explain_option != NULL) {
    g_autoptr (GString) text = g_string_new (NULL);

    lb_tool_explain (text, &job, args[0], (guint) pile, &basis, &plan, explained);
    return lb_tool_put (text->str);
  }
  return as_json ? put_json (&job, (guint) pile, &voice, &plan)
                 : put_text (&job, (guint) pile, &voice, &plan);
}

const LbCommand lb_command_cut = {
  .name = "cut",
  .arguments = N_ ("FILE PILE"),
  .summary = N_ ("The cut plan of a pile: every figure, its range and its reason"),
  .more = N_ ("The diving supervisor, a competent rigger, a licensed engineer and the local code "
              "stand above every figure."),
  .options = options,
  .least = 2,
  .most = 2,
  .run = run,
};
