/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/burn-history.h"
#include "book/gesture.h"
#include "book/mark-list.h"
#include "tool/record.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>

gboolean
lb_record_step (LbRecord *record, int n_args, char **args, GError **error)
{
  const char *step_name = args[n_args - 1];
  LbStep step;

  if (!lb_step_from_name (step_name, &step)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
                 _ ("“%s” is no step: write cleaned, severed, rigged or pulled"), step_name);
    return FALSE;
  }
  for (int i = 0; i < n_args - 1; i++) {
    g_autoptr (GArray) piles = lb_mark_list_read (record->job->fold, args[i], error);

    if (piles == NULL)
      return FALSE;
    for (guint at = 0; at < piles->len; at++)
      lb_gesture_step (record->drafts, record->job->fold, g_array_index (piles, guint, at), step);
  }

  return lb_record_has_news (record, error);
}

/* "1,2,5-8": bars by their numbers. */
static gboolean
read_bars (const char *text, LbBarSet *out_bars, GError **error)
{
  guint8 bars[LB_BARS_MAX];
  gsize n;

  if (!lb_bar_numbers_from_text (text, bars, &n, error))
    return FALSE;
  *out_bars = 0;
  for (gsize i = 0; i < n; i++)
    *out_bars |= LB_BAR (bars[i]);
  return TRUE;
}

gboolean
lb_record_bars (LbRecord *record, int n_args, char **args, GError **error)
{
  const LbFold *fold = record->job->fold;
  LbBarSet bars = 0;
  int pile;

  if ((n_args == 2) == (record->options->count > 0) || record->options->count < 0) {
    g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE,
                         _ ("Say which bars (1,2,5) or how many (--count 3), and not both"));
    return FALSE;
  }
  pile = lb_tool_find_pile (record->job, args[0], error);
  if (pile < 0 || (n_args == 2 && !read_bars (args[1], &bars, error)))
    return FALSE;
  if (n_args == 2)
    lb_gesture_bars (record->drafts, fold, (guint) pile, bars);
  else
    lb_gesture_bar_count (record->drafts, fold, (guint) pile, (guint) record->options->count);

  return lb_record_has_news (record, error);
}

gboolean
lb_record_gone (LbRecord *record, int n_args, char **args, GError **error)
{
  const int pile = lb_tool_find_pile (record->job, args[0], error);
  LbBarSet bars = 0;

  if (pile < 0 || !read_bars (args[1], &bars, error))
    return FALSE;
  lb_gesture_gone (record->drafts, record->job->fold, (guint) pile, bars);

  return lb_record_has_news (record, error);
}

gboolean
lb_record_burn_time (LbRecord *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = lb_record_add (record, LB_ENTRY_BURN_TIME);

  return lb_record_set_pile (record, draft, args[0], error) &&
         lb_record_read_amount (record, LB_QUANTITY_TIME, args[1], &draft->amount, error);
}

/* @reason NULL to take in again. */
static gboolean
fill_aside (LbRecord *record, const char *reason, GError **error)
{
  const LbLedger *ledger = record->job->ledger;
  const LbFold *fold = record->job->fold;
  g_autoptr (LbBurnHistory) history = lb_burn_history_new (ledger, fold);
  const int pile = record->options->pile != NULL
                     ? lb_tool_find_pile (record->job, record->options->pile, error)
                     : -1;

  if (record->options->pile != NULL && pile < 0)
    return FALSE;
  return lb_burn_history_set_aside (history, ledger, fold, pile, lb_record_shift_index (record),
                                    reason, lb_record_add (record, LB_ENTRY_SET_ASIDE), error);
}

gboolean
lb_record_set_aside (LbRecord *record, int n_args, char **args, GError **error)
{
  return fill_aside (record, args[0], error);
}

gboolean
lb_record_take_in (LbRecord *record, int n_args, char **args, GError **error)
{
  return fill_aside (record, NULL, error);
}

gboolean
lb_record_drawn (LbRecord *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = lb_record_add (record, LB_ENTRY_DRAWN);

  draft->note = n_args > 1 ? args[1] : NULL;
  return lb_record_set_pile (record, draft, args[0], error);
}

gboolean
lb_record_broken (LbRecord *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = lb_record_add (record, LB_ENTRY_BROKEN);

  draft->note = n_args > 1 ? args[1] : NULL;
  return lb_record_set_pile (record, draft, args[0], error) &&
         (record->options->stub == NULL ||
          lb_record_read_amount (record, LB_QUANTITY_LENGTH, record->options->stub, &draft->amount,
                                 error));
}
