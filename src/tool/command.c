/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tool/command.h"
#include "book/difference.h"

#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

gboolean
lb_tool_job_read (LbToolJob *job, GError **error)
{
  g_clear_pointer (&job->fold, lb_fold_free);
  g_clear_pointer (&job->ledger, lb_ledger_free);
  job->ledger = lb_book_read (job->book, NULL, error);
  if (job->ledger == NULL)
    return FALSE;

  job->fold = lb_fold_new (job->ledger, G_MAXINT64);
  return TRUE;
}

gboolean
lb_tool_job_open (LbToolJob *job, const char *path, LbBookMode mode, GError **error)
{
  job->book = lb_book_open (path, mode, error);

  return job->book != NULL && lb_tool_job_read (job, error);
}

gboolean
lb_tool_job_add_cautions (LbToolJob *job, const char *path, GError **error)
{
  g_autofree char *text = NULL;
  gsize length, n_built_in;
  const LbCautionRow *built_in = lb_caution_rows (&n_built_in);

  if (path == NULL)
    return TRUE;
  if (!g_file_get_contents (path, &text, &length, error))
    return FALSE;
  job->cautions = lb_crew_cautions_from_csv (text, length, built_in, n_built_in, error);
  if (job->cautions == NULL)
    g_prefix_error (error, "%s: ", path);
  return job->cautions != NULL;
}

gboolean
lb_tool_store_setting (const LbToolJob *job, const char *key, const char *text, GError **error)
{
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);

  draft.what = key;
  draft.note = text;
  g_array_append_val (drafts, draft);
  lb_drafts_know (drafts, job->ledger, job->fold);
  return lb_book_record (job->book, &g_array_index (drafts, LbDraft, 0), drafts->len, NULL, error);
}

LbCutBasis
lb_tool_job_basis (const LbToolJob *job)
{
  LbCutBasis basis = *lb_fold_basis (job->fold);

  if (job->cautions != NULL)
    basis.crew_rows = lb_crew_cautions_rows (job->cautions, &basis.n_crew_rows);
  return basis;
}

void
lb_tool_job_clear (LbToolJob *job)
{
  g_clear_pointer (&job->fold, lb_fold_free);
  g_clear_pointer (&job->ledger, lb_ledger_free);
  g_clear_pointer (&job->cautions, lb_crew_cautions_free);
  g_clear_pointer (&job->book, lb_book_close);
}

LbVoice
lb_tool_voice (const LbToolJob *job)
{
  LbVoice voice = LB_VOICE_PLAIN;

  voice.units = job->fold->units;
  return voice;
}

int
lb_tool_find_pile (const LbToolJob *job, const char *mark, GError **error)
{
  const int pile = lb_fold_find_mark (job->fold, mark);

  if (pile < 0)
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("There is no pile “%s” in the job: “lastbent-tool piles” lists them"), mark);
  return pile;
}

gboolean
lb_tool_read_units (const char *text, LbUnits *out_units, GError **error)
{
  if (text == NULL)
    return TRUE;
  if (g_str_equal (text, "us") || g_str_equal (text, "metric")) {
    *out_units = g_str_equal (text, "us") ? LB_UNITS_US : LB_UNITS_METRIC;
    return TRUE;
  }

  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
               _ ("The units are “us” or “metric”, not “%s”"), text);
  return FALSE;
}

gboolean
lb_tool_read_day (const char *text, guint32 *out_day, GError **error)
{
  guint year, month, day;
  char after;

  if (sscanf (text, "%4u-%2u-%2u%c", &year, &month, &day, &after) == 3 &&
      g_date_valid_dmy ((GDateDay) day, (GDateMonth) month, (GDateYear) year))
  {
    GDate date;

    g_date_clear (&date, 1);
    g_date_set_dmy (&date, (GDateDay) day, (GDateMonth) month, (GDateYear) year);
    *out_day = g_date_get_julian (&date);
    return TRUE;
  }

  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
               _ ("“%s” is not a day: write it as 2026-07-11"), text);
  return FALSE;
}

LbExit
lb_tool_refuse (const GError *error)
{
  g_printerr ("%s: %s\n", g_get_prgname (), error->message);

  return LB_EXIT_REFUSED;
}

LbExit
lb_tool_misuse (const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_autofree char *reason = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_printerr ("%s: %s\n", g_get_prgname (), reason);
  g_printerr (_ ("Try “%s --help”.\n"), g_get_prgname ());

  return LB_EXIT_USAGE;
}

LbExit
lb_tool_put (const char *text)
{
  if (fputs (text, stdout) >= 0 && fflush (stdout) == 0)
    return LB_EXIT_DONE;

  g_printerr ("%s: %s\n", g_get_prgname (), _ ("The output cannot be written"));
  return LB_EXIT_REFUSED;
}
