/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/clock-text.h"
#include "tool/record.h"

#include <glib/gi18n-lib.h>

LbDraft *
lb_record_add (LbRecord *record, LbEntryKind kind)
{
  const LbDraft draft = LB_DRAFT_INIT (kind);

  g_array_append_val (record->drafts, draft);
  return &g_array_index (record->drafts, LbDraft, record->drafts->len - 1);
}

gboolean
lb_record_set_pile (const LbRecord *record, LbDraft *draft, const char *mark, GError **error)
{
  const int pile = lb_tool_find_pile (record->job, mark, error);

  if (pile < 0)
    return FALSE;

  draft->pile_id = record->job->fold->piles[pile].id;
  return TRUE;
}

gboolean
lb_record_set_pile_option (const LbRecord *record, LbDraft *draft, GError **error)
{
  return record->options->pile == NULL ||
         lb_record_set_pile (record, draft, record->options->pile, error);
}

gboolean
lb_record_read_amount (const LbRecord *record,
                       LbQuantity quantity,
                       const char *text,
                       double *out_si,
                       GError **error)
{
  return lb_quantity_from_text (quantity, record->job->fold->units, text, out_si, error);
}

gboolean
lb_record_read_time (const LbRecord *record, const char *text, gint64 *out_us, GError **error)
{
  return text == NULL || lb_clock_from_text (record->shift, text, out_us, error);
}

int
lb_record_shift_index (const LbRecord *record)
{
  const LbLedger *ledger = record->job->ledger;

  for (guint i = 0; i < ledger->shifts->len; i++)
    if (lb_ledger_shift (ledger, i) == record->shift)
      return (int) i;
  return -1;
}

gboolean
lb_record_has_news (const LbRecord *record, GError **error)
{
  if (record->drafts->len > 0)
    return TRUE;
  g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                       _ ("All of that is on record already; nothing was stored"));
  return FALSE;
}
