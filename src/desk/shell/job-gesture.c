/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a touch says, recorded: the rule of what goes with it is book/gesture.h. */
#include "desk/shell/job.h"

#include "book/gesture.h"

/* Records what one gesture says; nothing when it says nothing new. */
static gboolean
record_gesture (LbJob *self, GArray *drafts, GError **error)
{
  return drafts->len == 0 ||
         lb_job_record (self, (const LbDraft *) (gpointer) drafts->data, drafts->len, error);
}

gboolean
lb_job_mark_step (LbJob *self, const guint *piles, gsize n, LbStep step, GError **error)
{
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));

  g_return_val_if_fail (LB_IS_JOB (self), FALSE);

  for (gsize i = 0; i < n; i++)
    lb_gesture_step (drafts, lb_job_get_fold (self), piles[i], step);
  return record_gesture (self, drafts, error);
}

gboolean
lb_job_answer (LbJob *self, const LbFinding *finding, const char *reason, GError **error)
{
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));

  g_return_val_if_fail (LB_IS_JOB (self), FALSE);
  g_return_val_if_fail (finding != NULL && reason != NULL, FALSE);

  lb_gesture_answer (drafts, lb_job_get_ledger (self), finding, reason);
  return record_gesture (self, drafts, error);
}

gboolean
lb_job_burn_bars (LbJob *self, guint pile, LbBarSet bars, GError **error)
{
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));

  g_return_val_if_fail (LB_IS_JOB (self), FALSE);

  lb_gesture_bars (drafts, lb_job_get_fold (self), pile, bars);
  return record_gesture (self, drafts, error);
}

gboolean
lb_job_find_gone (LbJob *self, guint pile, LbBarSet bars, GError **error)
{
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));

  g_return_val_if_fail (LB_IS_JOB (self), FALSE);

  lb_gesture_gone (drafts, lb_job_get_fold (self), pile, bars);
  return record_gesture (self, drafts, error);
}

gboolean
lb_job_burn_count (LbJob *self, guint pile, guint count, GError **error)
{
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));

  g_return_val_if_fail (LB_IS_JOB (self), FALSE);

  lb_gesture_bar_count (drafts, lb_job_get_fold (self), pile, count);
  return record_gesture (self, drafts, error);
}
