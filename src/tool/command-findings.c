/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What in the record does not fit together, of the job or of one day. */
#include "book/finding.h"
#include "draw/finding-words.h"
#include "draw/plan-words.h"
#include "tool/json-text.h"

#include <glib/gi18n-lib.h>

static char *day_option;
static gboolean as_json, open_only;

static const GOptionEntry options[] = {
  { "day", 0, 0, G_OPTION_ARG_STRING, &day_option, N_ ("Those of this day’s shifts alone"),
    N_ ("DATE") },
  { "open", 0, 0, G_OPTION_ARG_NONE, &open_only, N_ ("Those that nobody has answered"), NULL },
  { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_ ("For programs: SI values, units in the names"),
    NULL },
  { NULL },
};

static gboolean
is_listed (const LbToolJob *job, const LbFinding *finding, guint32 day)
{
  if (open_only && finding->answer != NULL)
    return FALSE;
  return day == 0 ||
         (finding->shift >= 0 && lb_ledger_shift (job->ledger, (guint) finding->shift)->day == day);
}

static void
add_place (GString *text, const LbToolJob *job, const LbFinding *finding)
{
  if (finding->shift < 0) {
    g_string_append (text, _ ("The job"));
    return;
  }

  const LbShift *shift = lb_ledger_shift (job->ledger, (guint) finding->shift);
  g_autofree char *day = lb_day_iso (shift->day);

  g_string_append_printf (text, "%s %s", day, g_dgettext (GETTEXT_PACKAGE, shift->watch));
}

static LbExit
put_text (const LbToolJob *job, const GArray *findings, guint32 day)
{
  const LbVoice voice = lb_tool_voice (job);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < findings->len; i++) {
    const LbFinding *finding = &g_array_index (findings, LbFinding, i);

    if (!is_listed (job, finding, day))
      continue;

    g_autofree char *wrong = lb_finding_text (&voice, job->ledger, job->fold, finding);
    g_autofree char *answer = lb_finding_answer_text (finding);

    add_place (text, job, finding);
    g_string_append_printf (text, ": %s %s\n    %s\n", wrong,
                            answer != NULL ? answer : lb_finding_advice (finding->kind),
                            finding->key);
  }
  if (text->len == 0)
    g_string_append (text, _ ("Nothing was found.\n"));
  return lb_tool_put (text->str);
}

static void
add_entries (JsonBuilder *builder, const LbFinding *finding)
{
  json_builder_set_member_name (builder, "entries");
  json_builder_begin_array (builder);
  for (guint i = 0; i < G_N_ELEMENTS (finding->entries); i++) {
    if (finding->entries[i] != NULL)
      json_builder_add_string_value (builder, finding->entries[i]->id);
  }
  json_builder_end_array (builder);
}

static void
add_finding (JsonBuilder *builder, const LbToolJob *job, const LbFinding *finding)
{
  const LbVoice voice = lb_tool_voice (job);
  const LbShift *shift = finding->shift >= 0 ? lb_ledger_shift (job->ledger, (guint) finding->shift)
                                             : NULL;
  g_autofree char *day = shift != NULL ? lb_day_iso (shift->day) : NULL;
  g_autofree char *wrong = lb_finding_text (&voice, job->ledger, job->fold, finding);

  json_builder_begin_object (builder);
  lb_json_add_text (builder, "key", finding->key);
  lb_json_add_text (builder, "kind", lb_finding_kind_name (finding->kind));
  lb_json_add_text (builder, "day", day);
  lb_json_add_text (builder, "watch", shift != NULL ? shift->watch : NULL);
  lb_json_add_text (builder, "pile",
                    finding->pile >= 0 ? job->fold->piles[finding->pile].mark : NULL);
  lb_json_add_text (builder, "text", wrong);
  lb_json_add_text (builder, "advice", lb_finding_advice (finding->kind));
  add_entries (builder, finding);
  lb_json_add_text (builder, "answer", finding->answer != NULL ? finding->answer->note : NULL);
  json_builder_end_object (builder);
}

static LbExit
put_json (const LbToolJob *job, const GArray *findings, guint32 day)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_array (builder);
  for (guint i = 0; i < findings->len; i++) {
    const LbFinding *finding = &g_array_index (findings, LbFinding, i);

    if (is_listed (job, finding, day))
      add_finding (builder, job, finding);
  }
  json_builder_end_array (builder);
  return lb_json_put (builder);
}

static LbExit
run (int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (GError) error = NULL;
  guint32 day = 0;

  if (day_option != NULL && !lb_tool_read_day (day_option, &day, &error))
    return lb_tool_misuse ("%s", error->message);
  if (!lb_tool_job_open (&job, args[0], LB_BOOK_READ, &error))
    return lb_tool_refuse (error);

  g_autoptr (GArray) findings = lb_findings_new (job.ledger, job.fold);

  return as_json ? put_json (&job, findings, day) : put_text (&job, findings, day);
}

const LbCommand lb_command_findings = {
  .name = "findings",
  .arguments = N_ ("FILE"),
  .summary = N_ ("What in the record does not fit together"),
  .more = N_ ("Each has what is wrong, what to do or how it was answered, and a key for “answer”. "
              "None keeps anything from being recorded."),
  .options = options,
  .least = 1,
  .most = 1,
  .run = run,
};
