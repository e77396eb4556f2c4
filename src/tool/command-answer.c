/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/finding.h"
#include "book/gesture.h"
#include "tool/command.h"

#include <glib/gi18n-lib.h>

static char *by_option;
static gboolean is_take_back;

static const GOptionEntry options[] = {
  { "by", 'b', 0, G_OPTION_ARG_STRING, &by_option, N_ ("Who says so: a role or initials"),
    N_ ("WHO") },
  { "take-back", 0, 0, G_OPTION_ARG_NONE, &is_take_back, N_ ("Take the last answer back"), NULL },
  { NULL },
};

static gboolean
answer (const LbToolJob *job, const LbFinding *finding, const char *reason, GError **error)
{
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));

  lb_gesture_answer (drafts, job->ledger, finding, reason);
  if (drafts->len == 0)
    return TRUE; /* said already */

  LbDraft *draft = &g_array_index (drafts, LbDraft, 0);

  draft->who = by_option;
  return lb_book_record (job->book, draft, 1, NULL, error);
}

static gboolean
take_back (const LbToolJob *job, const LbFinding *finding, GError **error)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_TAKE_BACK);

  if (finding->answer == NULL) {
    g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                         _ ("Nobody has answered this finding"));
    return FALSE;
  }
  draft.of = finding->answer->act;
  draft.who = by_option;
  if (finding->answer->shift >= 0)
    draft.shift_id = lb_ledger_shift (job->ledger, (guint) finding->answer->shift)->id;
  return lb_book_record (job->book, &draft, 1, NULL, error);
}

static LbExit
run (int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (GError) error = NULL;

  if (n_args != (is_take_back ? 2 : 3))
    return lb_tool_misuse (_ ("expected: %s"),
                           is_take_back ? _ ("FILE KEY --take-back") : _ ("FILE KEY REASON"));
  if (!lb_tool_job_open (&job, args[0], LB_BOOK_WRITE, &error))
    return lb_tool_refuse (error);

  g_autoptr (GArray) findings = lb_findings_new (job.ledger, job.fold);
  const LbFinding *finding = lb_findings_find (findings, args[1]);

  if (finding == NULL)
    g_set_error (&error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("There is no finding “%.200s”; “findings” lists them with their keys"),
                 args[1]);
  if (finding == NULL ||
      !(is_take_back ? take_back (&job, finding, &error) : answer (&job, finding, args[2], &error)))
    return lb_tool_refuse (error);
  g_print (is_take_back ? _ ("The answer is taken back.\n") : _ ("Answered.\n"));
  return LB_EXIT_DONE;
}

const LbCommand lb_command_answer = {
  .name = "answer",
  .arguments = N_ ("FILE KEY REASON"),
  .summary = N_ ("Say why a finding is as it is"),
  .more = N_ ("The reason is kept in the job; the finding stays, and is open no more."),
  .options = options,
  .least = 2,
  .most = 3,
  .run = run,
};
