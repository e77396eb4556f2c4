/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/dive-said.h"
#include "tool/record.h"

#include <glib/gi18n-lib.h>

static gboolean
fill_used (LbRecord *record,
           LbEntryKind kind,
           LbQuantity quantity,
           int n_args,
           char **args,
           GError **error)
{
  LbDraft *draft = lb_record_add (record, kind);

  return lb_record_read_amount (record, quantity, args[0], &draft->amount, error) &&
         (n_args < 2 || lb_record_set_pile (record, draft, args[1], error)) &&
         lb_record_set_pile_option (record, draft, error);
}

gboolean
lb_record_rods (LbRecord *record, int n_args, char **args, GError **error)
{
  return fill_used (record, LB_ENTRY_RODS, LB_QUANTITY_COUNT, n_args, args, error);
}

gboolean
lb_record_oxygen (LbRecord *record, int n_args, char **args, GError **error)
{
  return fill_used (record, LB_ENTRY_OXYGEN, LB_QUANTITY_GAS, n_args, args, error);
}

static gboolean
fill_counted (LbRecord *record, LbEntryKind kind, char **args, GError **error)
{
  LbDraft *draft = lb_record_add (record, kind);

  draft->what = args[0];
  return lb_record_read_amount (record, LB_QUANTITY_COUNT, args[1], &draft->amount, error);
}

gboolean
lb_record_stock (LbRecord *record, int n_args, char **args, GError **error)
{
  return fill_counted (record, LB_ENTRY_STOCK, args, error);
}

gboolean
lb_record_delivery (LbRecord *record, int n_args, char **args, GError **error)
{
  return fill_counted (record, LB_ENTRY_DELIVERY, args, error);
}

static gboolean
fill_lost (LbRecord *record, LbEntryKind kind, int n_args, char **args, GError **error)
{
  LbDraft *draft = lb_record_add (record, kind);

  draft->what = args[0];
  draft->note = record->options->note;
  return n_args < 2 ||
         lb_record_read_amount (record, LB_QUANTITY_TIME, args[1], &draft->amount, error);
}

gboolean
lb_record_delay (LbRecord *record, int n_args, char **args, GError **error)
{
  if (!fill_lost (record, LB_ENTRY_DELAY, n_args, args, error))
    return FALSE;
  lb_gesture_detail (record->drafts, LB_DETAIL_BORNE_BY, record->options->borne_by);
  return TRUE;
}

gboolean
lb_record_fault (LbRecord *record, int n_args, char **args, GError **error)
{
  if (!fill_lost (record, LB_ENTRY_FAULT, n_args, args, error))
    return FALSE;
  lb_gesture_detail (record->drafts, LB_DETAIL_DONE, record->options->done);
  return TRUE;
}

gboolean
lb_record_condition (LbRecord *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = lb_record_add (record, LB_ENTRY_CONDITION);

  draft->what = args[0];
  draft->note = args[1];
  return TRUE;
}

gboolean
lb_record_hours (LbRecord *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = lb_record_add (record, LB_ENTRY_HOURS);

  return lb_record_read_time (record, args[0], &draft->start_us, error) &&
         lb_record_read_time (record, args[1], &draft->end_us, error);
}

gboolean
lb_record_crew (LbRecord *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = lb_record_add (record, LB_ENTRY_CREW);

  draft->what = args[0];
  draft->note = args[1];
  return TRUE;
}

gboolean
lb_record_note (LbRecord *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = lb_record_add (record, LB_ENTRY_NOTE);

  draft->note = args[0];
  return lb_record_set_pile_option (record, draft, error);
}
