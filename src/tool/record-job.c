/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tool/record.h"
#include "trade/assumption.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>

static gboolean
add_take_back (LbRecord *record, const char *act, const char *nothing, GError **error)
{
  if (act == NULL) {
    g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, nothing);
    return FALSE;
  }

  lb_record_add (record, LB_ENTRY_TAKE_BACK)->of = act;
  return TRUE;
}

gboolean
lb_record_take_back (LbRecord *record, int n_args, char **args, GError **error)
{
  const char *act = lb_fold_next_take_back (record->job->fold, record->job->ledger,
                                            lb_record_shift_index (record));

  return add_take_back (record, act, _ ("The shift has nothing that could be taken back"), error);
}

gboolean
lb_record_redo (LbRecord *record, int n_args, char **args, GError **error)
{
  const char *act = lb_fold_next_redo (record->job->fold, record->job->ledger,
                                       lb_record_shift_index (record));

  return add_take_back (record, act, _ ("Nothing was taken back last, so nothing can be redone"),
                        error);
}

static const char *
keep_text (gpointer pool, const char *text)
{
  return g_string_chunk_insert_const (pool, text);
}

/* The file keeps facts in metric, as lb_pile_get() writes them. */
gboolean
lb_record_fact (LbRecord *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = lb_record_add (record, LB_ENTRY_FACT);
  LbFact fact;
  LbPile pile;

  if (!lb_record_set_pile (record, draft, args[0], error))
    return FALSE;
  if (!lb_fact_from_name (args[1], &fact)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
                 _ ("Piles have no fact called “%s”"), args[1]);
    return FALSE;
  }
  lb_pile_init (&pile);
  if (!lb_pile_set (&pile, fact, args[2], record->job->fold->units, keep_text, record->strings,
                    error))
    return FALSE;

  g_autofree char *metric = lb_pile_get (&pile, fact, LB_UNITS_METRIC);

  draft->what = lb_fact_name (fact);
  draft->note = keep_text (record->strings, metric);
  return TRUE;
}

/* name, place, datum, units and visibility as they are; assumptions in the job's units, kept in SI. */
gboolean
lb_record_setting (LbRecord *record, int n_args, char **args, GError **error)
{
  static const char *const texts[] = { "name", "place", "datum", "units", LB_SETTING_VISIBILITY,
                                       NULL };
  LbDraft *draft = lb_record_add (record, LB_ENTRY_SETTING);
  LbSettingTable table = LB_TABLE_DIVE;
  LbAssumptionId id;
  double si;

  draft->what = args[0];
  draft->note = args[1];
  if (g_strv_contains (texts, args[0]))
    return TRUE;
  if (lb_setting_table_find (args[0], &table)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
                 _ ("“%s” is taken from a file: write “lastbent-tool %s”"), args[0],
                 lb_tool_take_command (table)->name);
    return FALSE;
  }
  if (!lb_assumption_find (args[0], &id)) {
    g_set_error (
      error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
      _ ("“%s” is no setting: it is name, place, datum, units, visibility or an assumption "
         "such as water-level"),
      args[0]);
    return FALSE;
  }

  g_autofree char *key = g_strconcat ("assume.", lb_assumption (id)->key, NULL);

  draft->what = keep_text (record->strings, key);
  if (*args[1] == '\0')
    return TRUE;
  if (!lb_assumption_from_text (id, record->job->fold->units, args[1], &si, error))
    return FALSE;

  g_autofree char *value = lb_number_to_text (si, -1, &LB_NUMBER_PLAIN);

  draft->note = keep_text (record->strings, value);
  return TRUE;
}
