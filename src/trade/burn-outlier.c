/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/burn-rate-private.h"

#include "trade/gamma-range.h"

#include <math.h>

/* Beyond so many standard deviations, either way, lies one in some 700 (normal distribution). */
#define OUTLIER_SCORE 3.2

/* Times as slow, or as quick, as the middle of the job: more than black water, bar size and a bad
 * day together. Judgement. It is what finds a slip of the pen in a short record, where one odd
 * sample makes all of them look as if they varied that much. */
#define FAR_RATIO 4.0
/* From so many samples on their middle stands for the job; before, the stated range does. */
#define MIDDLE_SAMPLES 5

#define HALVINGS 50

static double
rate_seen (const LbBurnSample *sample)
{
  return sample->trigger_s / sample->steel_m2;
}

static guint
count_up_to (const LbBurnSample *samples, gsize n, double rate)
{
  guint count = 0;

  for (gsize i = 0; i < n; i++)
    count += lb_burn_sample_is_used (&samples[i]) && rate_seen (&samples[i]) <= rate ? 1 : 0;
  return count;
}

/* The median by halving, which needs no copy of the samples to sort. */
static double
find_median (const LbBurnSample *samples, gsize n, guint n_used)
{
  double low = INFINITY, high = 0;

  for (gsize i = 0; i < n; i++) {
    if (lb_burn_sample_is_used (&samples[i])) {
      low = MIN (low, rate_seen (&samples[i]));
      high = MAX (high, rate_seen (&samples[i]));
    }
  }
  for (int i = 0; i < HALVINGS; i++) {
    const double middle = sqrt (low * high);

    if (2 * count_up_to (samples, n, middle) < n_used)
      low = middle;
    else
      high = middle;
  }
  return high;
}

void
lb_burn_find_middle (const LbBurnSample *samples, gsize n, LbBurnModel *model)
{
  model->middle = model->stated;
  if (model->n_samples >= MIDDLE_SAMPLES) {
    const double median = find_median (samples, n, model->n_samples);

    model->middle = (LbRange){ .likely = median, .low = median, .high = median };
  }
}

gboolean
lb_burn_model_is_outlier (const LbBurnModel *model, const LbBurnSample *sample)
{
  g_return_val_if_fail (model, FALSE);
  g_return_val_if_fail (sample, FALSE);

  if (model->n_samples == 0 || !lb_burn_sample_is_used (sample))
    return FALSE;

  const double seen = rate_seen (sample);
  const guint row = lb_burn_size_row (model, sample->bar);
  const LbBurnRate *rate = &model->rates[row][sample->visibility];
  const double score = lb_gamma_ratio_score (seen / rate->mean,
                                             lb_burn_shape (model, sample->n_bars), rate->shape);

  return fabs (score) > OUTLIER_SCORE || seen > model->middle.high * FAR_RATIO ||
         seen < model->middle.low / FAR_RATIO;
}
