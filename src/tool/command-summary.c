/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/stock.h"
#include "draw/burn-words.h"
#include "draw/plan-words.h"
#include "draw/record-words.h"
#include "tool/command.h"

#include <glib/gi18n-lib.h>

/* The leaning pile nearest to its last bars that is not on the hook: -1 for none. */
static int
next_to_rig (const LbFold *fold)
{
  int found = -1;

  for (guint i = 0; i < fold->n_piles; i++) {
    const LbPileState *state = &fold->states[i];
    const LbStepSet settled = LB_STEP_BIT (LB_STEP_RIGGED) | LB_STEP_BIT (LB_STEP_PULLED);

    if (fold->piles[i].batter > 0 && state->n_left > 0 && state->n_left < fold->piles[i].n_bars &&
        (state->done & settled) == 0 && (found < 0 || state->n_left < fold->states[found].n_left))
      found = (int) i;
  }

  return found;
}

static void
append_hold (GString *text, const LbFold *fold)
{
  const int pile = next_to_rig (fold);

  if (pile < 0) {
    g_string_append (text, _ ("Hold point: no leaning pile stands on part of its bars without the "
                              "hook"));
    return;
  }

  const LbPileState *state = &fold->states[pile];
  g_autofree char *point = NULL;
  LbCutPlan plan;

  lb_cut_plan_reckon (&fold->piles[pile], state->burned, state->gone, state->n_unplaced,
                      lb_fold_basis (fold), &plan);
  if (plan.hold_missing == NULL)
    point = lb_hold_point_text (&plan, plan.hold.rig_before > 0 ? plan.hold.rig_before - 1 : 0);
  g_string_append_printf (text, _ ("Hold point: %s, on %u of its %u bars: %s"),
                          fold->piles[pile].mark, state->n_left, fold->piles[pile].n_bars,
                          point != NULL ? point : _ ("rig it next"));
}

static void
append_day (GString *text, const LbVoice *voice, const LbFold *fold)
{
  if (fold->n_days == 0) {
    g_string_append (text, _ ("No shift yet"));
    g_string_append_c (text, '\n');
    return;
  }

  const LbDay *day = &fold->days[fold->n_days - 1];
  g_autofree char *name = lb_day_iso (day->day);
  g_autofree char *oxygen = lb_quantity_to_text (LB_QUANTITY_GAS, voice->units,
                                                 day->totals.oxygen_m3, &voice->numbers);

  g_string_append_printf (text, _ ("Last shift’s day, %s: bars burned %u, piles pulled %u\n"), name,
                          day->totals.bars, day->totals.steps[LB_STEP_PULLED]);
  g_string_append_printf (text, _ ("Used that day: rods %.0f, oxygen %s, dives %u\n"),
                          day->totals.rods, oxygen, day->totals.n_dives);
}

static void
append_left (GString *text, const LbVoice *voice, const LbFold *fold)
{
  LbBurnLeft left;
  LbBurnNeed need;

  lb_fold_burn_left (fold, &left);
  lb_burn_left_predict (&left, lb_fold_basis (fold), &need);

  g_autofree char *words = lb_burn_left_text (voice, &left, &need);

  g_string_append_printf (text, "%s\n", words);
}

/* What is aboard after the last shift, and for how long. */
static void
append_stock (GString *text, const LbVoice *voice, const LbToolJob *job, const char *what)
{
  LbStock stock;
  g_autofree char *words = NULL;

  lb_stock_at (job->ledger, job->fold, what, (int) job->fold->n_shifts - 1, &stock);
  words = lb_stock_text (voice, what, &stock);
  g_string_append_printf (text, "%s\n", words);
}

static LbExit
run (int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) text = g_string_new (NULL);

  if (!lb_tool_job_open (&job, args[0], LB_BOOK_READ, &error))
    return lb_tool_refuse (error);

  const LbVoice voice = lb_tool_voice (&job);
  guint n_flagged = 0;

  for (guint i = 0; i < job.fold->n_piles; i++)
    n_flagged += job.fold->states[i].flags != 0 ? 1 : 0;

  g_string_append_printf (text, "%s\n", job.fold->name);
  for (LbStep step = 0; step < LB_N_STEPS; step++)
    g_string_append_printf (text, "%s: %u\n", g_dgettext (GETTEXT_PACKAGE, lb_step_name (step)),
                            job.fold->n_by_step[step]);
  append_day (text, &voice, job.fold);
  append_left (text, &voice, job.fold);
  append_stock (text, &voice, &job, LB_STOCK_RODS);
  append_stock (text, &voice, &job, LB_STOCK_CYLINDERS);
  g_string_append_printf (text, _ ("Piles with something to put right: %u\n"), n_flagged);
  append_hold (text, job.fold);
  g_string_append_c (text, '\n');

  return lb_tool_put (text->str);
}

const LbCommand lb_command_summary = {
  .name = "summary",
  .arguments = N_ ("FILE"),
  .summary = N_ ("Where the job stands, in a few lines"),
  .least = 1,
  .most = 1,
  .run = run,
};
