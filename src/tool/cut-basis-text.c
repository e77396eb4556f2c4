/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tool/cut-basis-text.h"

#include "draw/input-words.h"
#include "draw/plan-words.h"
#include "tool/json-text.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const char *
translated (const char *msgid)
{
  return g_dgettext (GETTEXT_PACKAGE, msgid);
}

/* --- For people --------------------------------------------------------------------------- */

static void
append_head (GString *text,
             const LbVoice *voice,
             const LbPile *pile,
             const LbCutPlan *plan,
             const LbAssumptions *assumptions,
             LbFigureId id)
{
  g_autofree char *value = lb_figure_text (voice, plan, id);
  g_autofree char *range = lb_figure_range_text (voice, plan, id);
  g_autofree char *reason = lb_figure_reason_text (voice, pile, assumptions, plan, id);
  const char *tag = translated (lb_tag_name (plan->figures[id].tag));

  g_string_append_printf (text, "%s, %s: %s", pile->mark, translated (lb_figure_title (id)), value);
  if (range != NULL)
    g_string_append_printf (text, " (%s)", range);
  if (!isnan (plan->figures[id].range.likely))
    g_string_append_printf (text, " · %s", tag);
  g_string_append_printf (text, "\n    %s\n\n", reason);
}

/* What to type for what is missing. */
static void
append_missing (GString *text, const char *file, const LbPile *pile, LbFigureId id)
{
  g_autofree char *quoted_file = g_shell_quote (file);
  g_autofree char *quoted_mark = g_shell_quote (pile->mark);

  const char *missing = lb_figure_missing (id, pile);

  g_string_append_c (text, '\n');
  if (missing != NULL)
    g_string_append_printf (text, "%s\n", translated (missing));
  for (LbFact fact = 0; fact < LB_N_FACTS; fact++) {
    if (lb_figure_lacks (id, fact, pile) || lb_figure_widens (id, fact, pile))
      g_string_append_printf (text, "  lastbent-tool record %s fact %s '%s' …\n", quoted_file,
                              quoted_mark, lb_fact_name (fact));
  }
}

static void
append_inputs (GString *text,
               const LbVoice *voice,
               const LbPile *pile,
               const LbCutBasis *basis,
               const LbCutPlan *plan,
               LbFigureId id)
{
  LbInput inputs[LB_INPUTS_MAX];
  const gsize n = lb_figure_inputs_in_play (id, pile, basis->assumptions, inputs);

  g_string_append_printf (text, "%s\n", _ ("It rests on"));
  for (gsize i = 0; i < n; i++) {
    g_auto (LbInputWords) words = { 0 };

    lb_input_words (voice, pile, basis, plan, id, &inputs[i], &words);
    g_string_append_printf (text, "  %s: %s · %s\n", words.title, words.value, words.note);
  }
}

void
lb_tool_explain (GString *text,
                 const LbToolJob *job,
                 const char *file,
                 guint pile,
                 const LbCutBasis *basis,
                 const LbCutPlan *plan,
                 LbFigureId id)
{
  const LbVoice voice = lb_tool_voice (job);
  const LbPile *facts = &job->fold->piles[pile];

  append_head (text, &voice, facts, plan, basis->assumptions, id);
  g_string_append_printf (text, _ ("Formula: %s\n"), translated (lb_figure_formula (id)));
  g_string_append_printf (text, _ ("Source: %s\n"), translated (lb_figure_source (id)));
  g_string_append_printf (text, _ ("More: docs/methods.md, “%s”\n\n"), lb_figure_section (id));
  append_inputs (text, &voice, facts, basis, plan, id);
  append_missing (text, file, facts, id);
}

/* --- For programs ------------------------------------------------------------------------- */

static void
add_input (JsonBuilder *builder, const LbAssumptions *assumptions, const LbInput *input)
{
  static const char *const lessons[LB_N_LESSONS] = {
    [LB_LESSON_TRIGGER] = "trigger",
    [LB_LESSON_RODS] = "rods",
    [LB_LESSON_OXYGEN] = "oxygen",
    [LB_LESSON_RESTRIKE] = "restrike",
  };

  json_builder_begin_object (builder);
  switch (input->kind) {
  case LB_INPUT_FACT:
    lb_json_add_text (builder, "kind", "fact");
    lb_json_add_text (builder, "key", lb_fact_name ((LbFact) input->id));
    break;
  case LB_INPUT_FIGURE:
    lb_json_add_text (builder, "kind", "figure");
    lb_json_add_text (builder, "key", lb_figure_key ((LbFigureId) input->id));
    break;
  case LB_INPUT_ASSUMPTION: {
    const LbAssumptionId id = (LbAssumptionId) input->id;

    lb_json_add_text (builder, "kind", "assumption");
    lb_json_add_text (builder, "key", lb_assumption (id)->key);
    lb_json_add_member (builder, lb_json_name ("value", NULL, lb_assumption (id)->quantity),
                        assumptions->value[id]);
    lb_json_add_text (builder, "tag", lb_tag_name (lb_assumptions_tag (assumptions, id)));
    break;
  }
  case LB_INPUT_LESSON:
    lb_json_add_text (builder, "kind", "lesson");
    lb_json_add_text (builder, "key", lessons[input->id]);
    break;
  case LB_INPUT_BURNED:
    lb_json_add_text (builder, "kind", "record");
    lb_json_add_text (builder, "key", "bars-burned");
    break;
  case LB_INPUT_VISIBILITY:
    lb_json_add_text (builder, "kind", "setting");
    lb_json_add_text (builder, "key", "visibility");
    break;
  case LB_INPUT_DIVE_TABLE:
    lb_json_add_text (builder, "kind", "setting");
    lb_json_add_text (builder, "key", LB_SETTING_DIVE_TABLE);
    break;
  case LB_INPUT_CRANE_CHART:
    lb_json_add_text (builder, "kind", "setting");
    lb_json_add_text (builder, "key", LB_SETTING_CRANE_CHART);
    break;
  case LB_INPUT_GROUND:
    lb_json_add_text (builder, "kind", "setting");
    lb_json_add_text (builder, "key", LB_SETTING_GROUND);
    break;
  }
  json_builder_end_object (builder);
}

void
lb_json_add_basis (JsonBuilder *builder, const LbPile *pile, const LbAssumptions *assumptions)
{
  json_builder_set_member_name (builder, "basis");
  json_builder_begin_object (builder);
  for (LbFigureId id = 0; id < LB_N_FIGURES; id++) {
    g_autofree char *key = g_strdelimit (g_strdup (lb_figure_key (id)), "-", '_');
    LbInput inputs[LB_INPUTS_MAX];
    const gsize n = lb_figure_inputs_in_play (id, pile, assumptions, inputs);

    json_builder_set_member_name (builder, key);
    json_builder_begin_object (builder);
    lb_json_add_text (builder, "formula", lb_figure_formula (id));
    lb_json_add_text (builder, "source", lb_figure_source (id));
    lb_json_add_text (builder, "section", lb_figure_section (id));
    lb_json_add_text (builder, "missing", lb_figure_missing (id, pile));
    json_builder_set_member_name (builder, "inputs");
    json_builder_begin_array (builder);
    for (gsize i = 0; i < n; i++)
      add_input (builder, assumptions, &inputs[i]);
    json_builder_end_array (builder);
    json_builder_end_object (builder);
  }
  json_builder_end_object (builder);
}

gboolean
lb_tool_find_figure (const char *key, LbFigureId *out_id, GError **error)
{
  g_autoptr (GString) known = g_string_new (NULL);

  for (LbFigureId id = 0; id < LB_N_FIGURES; id++) {
    if (g_str_equal (key, lb_figure_key (id))) {
      *out_id = id;
      return TRUE;
    }
    g_string_append_printf (known, "%s%s", id > 0 ? ", " : "", lb_figure_key (id));
  }
  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
               _ ("The cut plan has no figure “%.40s”: it is one of %s"), key, known->str);
  return FALSE;
}
