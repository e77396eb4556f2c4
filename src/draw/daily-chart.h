/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"
#include "draw/palette.h"
#include "draw/picture-text.h"

G_BEGIN_DECLS

/* Piles by step a day as stacked columns, bars burned as a line on an axis of its own. */
typedef struct
{
  const LbDay *days;
  gsize n_days;
  int focus;     /* day under the pointer or keyboard, -1 for none */
  guint n_piles; /* of the job, for the sentence; 0 when not known */
} LbDailyChart;

void lb_daily_chart_draw (cairo_t *cr,
                          const LbPalette *palette,
                          const LbVoice *voice,
                          const LbDailyChart *chart,
                          double width,
                          double height);

/* The day whose column stands at @x, -1 outside the plot. */
int lb_daily_chart_day_at (const LbDailyChart *chart,
                           const LbVoice *voice,
                           double width,
                           double height,
                           double x);

/* One sentence that says what the chart shows, translated; to be freed. */
char *lb_daily_chart_sentence (const LbDailyChart *chart);

G_END_DECLS
