/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/daily-chart.h"

G_BEGIN_DECLS

/* What the chart tells apart, from the baseline up, then the line. */
typedef enum {
  LB_SERIES_PULLED,
  LB_SERIES_RIGGED,
  LB_SERIES_SEVERED,
  LB_SERIES_CLEANED,
  LB_SERIES_BARS,
} LbSeries;

#define LB_N_STACKED (LB_SERIES_CLEANED + 1)
#define LB_N_SERIES  (LB_SERIES_BARS + 1)

/* Where everything of the daily chart lies; the same for drawing and for the pointer. */
typedef struct
{
  double width, height;
  double size;                     /* of the font, before the voice's scale */
  double line;                     /* height of one line of it */
  double left, top, right, bottom; /* the plot */
  double pitch, column;            /* from day to day, and a column's own width */
  guint n_intervals;               /* grid lines over the baseline */
  guint piles_step, bars_step;     /* of the ticks, whole numbers */
  gsize label_every;               /* days between two labels */
  gboolean has_weekdays;           /* "Tue 14" has room */
  LbPoint legend[LB_N_SERIES];     /* top left of each entry */
} LbDailyChartLayout;

typedef struct
{
  char *text;
  double x, width; /* its middle, and what it covers */
  gboolean is_month;
} LbDailyChartLabel;

void lb_daily_chart_lay_out (const LbDailyChart *chart,
                             const LbVoice *voice,
                             double width,
                             double height,
                             LbDailyChartLayout *out_layout);

/* The labels under the columns; to be freed by g_array_unref(). No two of a row overlap. */
GArray *lb_daily_chart_labels (const LbDailyChart *chart,
                               const LbVoice *voice,
                               const LbDailyChartLayout *layout);

const char *lb_series_name (LbSeries series); /* translated */

/* Piles of @day in a stacked series. */
guint lb_series_piles (LbSeries series, const LbDay *day);

/* The middle of a day's column. */
double lb_daily_chart_day_x (const LbDailyChartLayout *layout, gsize day);

/* The least of 1, 2, 5, 10, 20, 50 … that is not under @least. */
guint lb_tick_step (double least);

G_END_DECLS
