/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tool/record-checks.h"

#include "book/check-log.h"
#include "book/gesture.h"
#include "trade/cut-plan.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>

/* Whether the cut of the plan raises the caution, or any table has it. */
static gboolean
has_caution (const LbCutPlan *plan, const LbFold *fold, const char *key)
{
  gsize n_rows;
  const LbCautionRow *rows = lb_caution_rows (&n_rows);

  for (gsize i = 0; i < plan->n_cautions; i++)
    if (g_str_equal (plan->cautions[i]->key, key))
      return TRUE;
  for (gsize i = 0; i < n_rows; i++)
    if (g_str_equal (rows[i].key, key))
      return TRUE;
  for (gsize i = 0; i < fold->n_crew_rows; i++)
    if (g_str_equal (fold->crew_rows[i].key, key))
      return TRUE;
  return FALSE;
}

static void
add_said (GArray *said, const char *key, gboolean is_ticked)
{
  const LbCheck check = { .key = key, .is_ticked = is_ticked };

  g_array_append_val (said, check);
}

static gboolean
refuse_caution (const LbCutPlan *plan, const char *key, GError **error)
{
  g_autoptr (GString) raised = g_string_new (NULL);

  for (gsize i = 0; i < plan->n_cautions; i++)
    g_string_append_printf (raised, "%s%s", i > 0 ? ", " : "", plan->cautions[i]->key);
  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
               _ ("There is no caution “%s”: this cut has %s; or write all"), key, raised->str);
  return FALSE;
}

/* What is said of each caution: the named ones are ticked, the others of the cut as they were. */
static gboolean
read_said (const LbCutPlan *plan,
           const LbFold *fold,
           const GArray *known,
           int n_keys,
           char **keys,
           GArray *said,
           GError **error)
{
  const gboolean all = n_keys == 1 && g_str_equal (keys[0], "all");

  for (int i = 0; i < n_keys && !all; i++) {
    if (!has_caution (plan, fold, keys[i]))
      return refuse_caution (plan, keys[i], error);
    if (lb_check_find (said, keys[i]) == NULL)
      add_said (said, keys[i], TRUE);
  }
  for (gsize i = 0; i < plan->n_cautions; i++) {
    const char *key = plan->cautions[i]->key;
    const LbCheck *before = lb_check_find (known, key);

    if (lb_check_find (said, key) == NULL)
      add_said (said, key, all || (before != NULL && before->is_ticked));
  }
  return TRUE;
}

gboolean
lb_record_checks (GArray *drafts,
                  const LbToolJob *job,
                  int shift,
                  guint pile,
                  gint64 dive_us,
                  int n_keys,
                  char **keys,
                  GError **error)
{
  const LbFold *fold = job->fold;
  const LbPileState *state = &fold->states[pile];
  g_autoptr (LbCheckLog) log = lb_check_log_new (job->ledger, fold, shift);
  g_autoptr (GArray) known = lb_check_log_at (log, (int) pile, dive_us);
  g_autoptr (GArray) said = g_array_new (FALSE, FALSE, sizeof (LbCheck));
  LbCutPlan plan;

  lb_cut_plan_reckon (&fold->piles[pile], state->burned, state->gone, state->n_unplaced,
                      lb_fold_basis (fold), &plan);
  if (!read_said (&plan, fold, known, n_keys, keys, said, error))
    return FALSE;
  lb_gesture_checks (drafts, fold, pile, (const LbCheck *) (gpointer) said->data, said->len, known,
                     dive_us);
  return TRUE;
}
