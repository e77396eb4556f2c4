/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/seal.h"
#include "tool/command.h"

#include <glib/gi18n-lib.h>

static char *by_option, *watch_option;

static const GOptionEntry options[] = {
  { "by", 'b', 0, G_OPTION_ARG_STRING, &by_option, N_ ("Who signs: a role or initials; needed"),
    N_ ("WHO") },
  { "watch", 0, 0, G_OPTION_ARG_STRING, &watch_option, N_ ("The shift’s watch; day when not given"),
    "day|night" },
  { NULL },
};

/* The id of the first shift of the day and watch, NULL with @error when there is none. */
static const char *
find_shift (const LbLedger *ledger, const char *day_text, GError **error)
{
  const char *watch = watch_option != NULL ? watch_option : "day";
  guint32 day;

  if (!lb_tool_read_day (day_text, &day, error))
    return NULL;

  const int shift = lb_ledger_find_shift_of_day (ledger, day, watch);
  if (shift >= 0)
    return lb_ledger_shift (ledger, (guint) shift)->id;
  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
               _ ("The job has no shift on %s with the watch “%s”"), day_text, watch);
  return NULL;
}

static LbExit
run (int n_args, char **args)
{
  g_autoptr (GError) error = NULL;
  g_auto (LbToolJob) job = { NULL };

  if (by_option == NULL)
    return lb_tool_misuse (_ ("Say who signs, with --by"));
  if (!lb_tool_job_open (&job, args[0], LB_BOOK_WRITE, &error))
    return lb_tool_refuse (error);

  const char *shift_id = find_shift (job.ledger, args[1], &error);
  if (shift_id == NULL || !lb_book_sign (job.book, job.ledger, shift_id, by_option, &error) ||
      !lb_tool_job_read (&job, &error))
    return lb_tool_refuse (error);

  g_auto (LbSealReport) report;
  lb_seals_check (job.ledger, &report);

  g_autofree char *hash = lb_seal_hash (report.head);
  g_print (_ ("Signed by %s. Rows under a signature: %u.\n%s\n"), by_option, report.n_rows, hash);
  return LB_EXIT_DONE;
}

const LbCommand lb_command_sign = {
  .name = "sign",
  .arguments = N_ ("FILE DAY"),
  .summary = N_ ("Sign a shift, so that every later change shows"),
  .more = N_ (
    "DAY is as 2026-07-14. From then on the shift is changed only by corrections that say "
    "why (“record --correct”). The last line printed is the seal, which stands on the "
    "daily report too: keep the paper, and nobody can change both."),
  .options = options,
  .least = 2,
  .most = 2,
  .run = run,
};
