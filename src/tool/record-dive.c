/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/clock-text.h"
#include "book/dive-said.h"
#include "book/mark-list.h"
#include "tool/record-checks.h"
#include "tool/record.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* What the options say of the dive beside its piles. */
static gboolean
read_options (const LbRecord *record, LbDiveSaid *said, GError **error)
{
  const LbRecordOptions *options = record->options;

  said->mode = options->mode;
  said->visibility = options->visibility;
  said->work = options->work;
  if (options->count < 0) {
    g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                         _ ("Fewer than no bars cannot be burned"));
    return FALSE;
  }
  said->n_bars = (guint) options->count;
  return (options->depth == NULL ||
          lb_record_read_amount (record, LB_QUANTITY_LENGTH, options->depth, &said->depth_m,
                                 error)) &&
         (options->rods == NULL ||
          lb_record_read_amount (record, LB_QUANTITY_COUNT, options->rods, &said->rods, error)) &&
         (options->oxygen == NULL ||
          lb_record_read_amount (record, LB_QUANTITY_GAS, options->oxygen, &said->oxygen_m3,
                                 error)) &&
         lb_record_read_time (record, options->left_surface, &said->left_surface_us, error) &&
         lb_record_read_time (record, options->left_bottom, &said->left_bottom_us, error) &&
         lb_record_read_time (record, options->reached_surface, &said->reached_us, error);
}

gboolean
lb_record_dive (LbRecord *record, int n_args, char **args, GError **error)
{
  LbDiveSaid said = { .diver = args[0], .depth_m = (double) NAN };
  g_autoptr (GArray) piles = NULL;

  if (record->options->pile != NULL) {
    piles = lb_mark_list_read (record->job->fold, record->options->pile, error);
    if (piles == NULL)
      return FALSE;
    said.piles = &g_array_index (piles, guint, 0);
    said.n_piles = piles->len;
  }
  return read_options (record, &said, error) &&
         lb_gesture_dive (record->drafts, record->job->fold, &said, record->strings, error);
}

/* A shift of the day before may still be at work in the small hours. */
static gboolean
may_have_next_dive (const LbRecord *record)
{
  return record->shift->day + 1 >= lb_clock_today ();
}

gboolean
lb_record_check (LbRecord *record, int n_args, char **args, GError **error)
{
  const int pile = lb_tool_find_pile (record->job, args[0], error);
  gint64 dive_us = 0;

  if (pile < 0 || !lb_record_read_time (record, record->options->left_surface, &dive_us, error))
    return FALSE;
  if (dive_us == 0 && !may_have_next_dive (record)) {
    g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE,
                         _ ("The shift is over and has no next dive: say with --left-surface which "
                            "dive the checks were before"));
    return FALSE;
  }
  return lb_record_checks (record->drafts, record->job, lb_record_shift_index (record),
                           (guint) pile, dive_us, n_args - 1, args + 1, error) &&
         lb_record_has_news (record, error);
}
