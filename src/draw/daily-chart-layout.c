/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the daily chart puts things. Pure: text is measured, nothing is drawn.
 *
 * Invariants:
 * 1. Both axes have the same number of grid lines, so that one grid serves both; their steps are
 *    whole numbers of the kind 1, 2, 5 × 10^k.
 * 2. Days follow each other without gaps: only days with a shift are there. A change of month
 *    is said under the axis.
 * 3. Labels of a row never overlap; they are thinned instead. */
#include "draw/daily-chart-layout.h"

#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define FONT_SIZE      11.0
#define FONT_GROWTH    1.4 /* at most, on a large picture */
#define USUAL_WIDTH    900.0
#define USUAL_HEIGHT   500.0
#define MARGIN         8.0
#define GAP            6.0
#define PITCH_MOST     72.0
#define COLUMN_SHARE   0.68 /* of the pitch */
#define TICK_SPACE     2.2  /* lines between two grid lines, at least */
#define INTERVALS_MOST 10
#define LABEL_GAP      0.6 /* lines between two labels */

const char *
lb_series_name (LbSeries series)
{
  switch (series) {
  case LB_SERIES_PULLED:
    return C_ ("chart", "pulled");
  case LB_SERIES_RIGGED:
    return C_ ("chart", "rigged");
  case LB_SERIES_SEVERED:
    return C_ ("chart", "severed");
  case LB_SERIES_CLEANED:
    return C_ ("chart", "cleaned");
  case LB_SERIES_BARS:
    return C_ ("chart", "bars burned");
  }
  g_assert_not_reached ();
}

guint
lb_series_piles (LbSeries series, const LbDay *day)
{
  static const LbStep STEPS[LB_N_STACKED] = {
    [LB_SERIES_PULLED] = LB_STEP_PULLED,
    [LB_SERIES_RIGGED] = LB_STEP_RIGGED,
    [LB_SERIES_SEVERED] = LB_STEP_SEVERED,
    [LB_SERIES_CLEANED] = LB_STEP_CLEANED,
  };
  g_return_val_if_fail (series < LB_N_STACKED, 0);
  return day->totals.steps[STEPS[series]];
}

guint
lb_tick_step (double least)
{
  guint decade = 1;
  for (;;) {
    static const guint MANTISSAS[] = { 1, 2, 5 };
    for (gsize i = 0; i < G_N_ELEMENTS (MANTISSAS); i++) {
      const guint step = MANTISSAS[i] * decade;
      if ((double) step >= least || decade >= 100000000)
        return step;
    }
    decade *= 10;
  }
}

/* The number of intervals that leaves the least air over the tallest column and point. */
static void
choose_ticks (LbDailyChartLayout *layout, guint most_piles, guint most_bars)
{
  const double room = layout->bottom - layout->top;
  const double fit = CLAMP (floor (room / (TICK_SPACE * layout->line)), 1, INTERVALS_MOST);
  const double piles = MAX (most_piles, 1);
  const double bars = MAX (most_bars, 1);
  double best = INFINITY;

  for (guint n = MIN (2, (guint) fit); n <= (guint) fit; n++) {
    const guint piles_step = lb_tick_step (piles / n);
    const guint bars_step = lb_tick_step (bars / n);
    const double air = n * piles_step / piles + n * bars_step / bars;
    if (air < best) {
      best = air;
      layout->n_intervals = n;
      layout->piles_step = piles_step;
      layout->bars_step = bars_step;
    }
  }
}

static void
find_most (const LbDailyChart *chart, guint *out_piles, guint *out_bars)
{
  *out_piles = 0;
  *out_bars = 0;
  for (gsize i = 0; i < chart->n_days; i++) {
    guint piles = 0;
    for (LbSeries series = 0; series < LB_N_STACKED; series++)
      piles += lb_series_piles (series, &chart->days[i]);
    *out_piles = MAX (*out_piles, piles);
    *out_bars = MAX (*out_bars, chart->days[i].totals.bars);
  }
}

static double
text_width (cairo_t *cr, const LbVoice *voice, const char *text, double size)
{
  double width, height;
  lb_text_measure (cr, voice, text, size, FALSE, 0, &width, &height);
  return width;
}

/* Entries side by side, as many a row as fit. Returns the height of it all. */
static double
place_legend (cairo_t *cr, const LbVoice *voice, LbDailyChartLayout *layout)
{
  double x = MARGIN;
  double y = MARGIN;
  for (LbSeries series = 0; series < LB_N_SERIES; series++) {
    const double swatch = 2 * layout->line + GAP;
    const double name = text_width (cr, voice, lb_series_name (series), layout->size);
    if (x > MARGIN && x + swatch + name > layout->width - MARGIN) {
      x = MARGIN;
      y += 1.3 * layout->line;
    }
    layout->legend[series] = (LbPoint){ .x = x, .y = y };
    x += swatch + name + 2 * GAP;
  }
  return y + layout->line - MARGIN;
}

static const char *
weekday_format (void)
{
  /* Translators: weekday and day of the month under a chart, as g_date_time_format() reads it. */
  return C_ ("chart day", "%a %-d");
}

static void
choose_labels (cairo_t *cr,
               const LbDailyChart *chart,
               const LbVoice *voice,
               LbDailyChartLayout *layout)
{
  const double gap = LABEL_GAP * layout->line;
  double widest = 0;
  /* A week's days are enough: the digits are all as wide as "28" in most fonts. */
  for (gsize i = 0; i < chart->n_days; i++) {
    g_autofree char *label = lb_day_format (chart->days[i].day, weekday_format ());
    widest = MAX (widest, text_width (cr, voice, label, layout->size));
    if (widest + gap > layout->pitch)
      break;
  }
  layout->has_weekdays = widest + gap <= layout->pitch;
  if (layout->has_weekdays) {
    layout->label_every = 1;
    return;
  }
  const double digits = text_width (cr, voice, "28", layout->size);
  layout->label_every = (gsize) MAX (1, ceil ((digits + gap) / layout->pitch));
}

void
lb_daily_chart_lay_out (const LbDailyChart *chart,
                        const LbVoice *voice,
                        double width,
                        double height,
                        LbDailyChartLayout *out_layout)
{
  /* A surface of one pixel only to measure on. */
  cairo_surface_t *const scratch = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *const cr = cairo_create (scratch);
  LbDailyChartLayout layout = {
    .width = width,
    .height = height,
    .size = FONT_SIZE *
            CLAMP (sqrt (fmin (width / USUAL_WIDTH, height / USUAL_HEIGHT)), 1, FONT_GROWTH),
    .n_intervals = 1,
    .piles_step = 1,
    .bars_step = 1,
  };
  guint most_piles, most_bars;

  find_most (chart, &most_piles, &most_bars);
  double digit;
  lb_text_measure (cr, voice, "0", layout.size, FALSE, 0, &digit, &layout.line);
  const double legend = place_legend (cr, voice, &layout);
  /* Legend, a line for the axes' titles, the plot, then days and months. */
  layout.top = MARGIN + legend + GAP + 1.6 * layout.line;
  layout.bottom = MAX (layout.top + 1, height - MARGIN - 2 * layout.line - 2 * GAP);
  choose_ticks (&layout, most_piles, most_bars);

  g_autofree char *left_tick = lb_number_to_text (layout.n_intervals * layout.piles_step, 0,
                                                  &voice->numbers);
  g_autofree char *right_tick = lb_number_to_text (layout.n_intervals * layout.bars_step, 0,
                                                   &voice->numbers);
  layout.left = MARGIN + text_width (cr, voice, left_tick, layout.size) + 2 * GAP;
  layout.right = width - MARGIN - text_width (cr, voice, right_tick, layout.size) - 2 * GAP;
  layout.right = MAX (layout.right, layout.left + 1);

  const double room = layout.right - layout.left;
  layout.pitch = chart->n_days == 0
                   ? room
                   : MIN (room / (double) chart->n_days, PITCH_MOST * MAX (voice->scale, 1));
  layout.column = MAX (COLUMN_SHARE * layout.pitch, MIN (1, layout.pitch));
  choose_labels (cr, chart, voice, &layout);
  cairo_destroy (cr);
  cairo_surface_destroy (scratch);
  *out_layout = layout;
}

double
lb_daily_chart_day_x (const LbDailyChartLayout *layout, gsize day)
{
  return layout->left + ((double) day + 0.5) * layout->pitch;
}

int
lb_daily_chart_day_at (const LbDailyChart *chart,
                       const LbVoice *voice,
                       double width,
                       double height,
                       double x)
{
  LbDailyChartLayout layout;
  lb_daily_chart_lay_out (chart, voice, width, height, &layout);
  const double day = floor ((x - layout.left) / layout.pitch);
  return day >= 0 && day < (double) chart->n_days ? (int) day : -1;
}

static void
clear_label (gpointer data)
{
  g_free (((LbDailyChartLabel *) data)->text);
}

static gboolean
is_new_month (const LbDailyChart *chart, gsize i)
{
  if (i == 0)
    return TRUE;
  g_autofree char *before = lb_day_format (chart->days[i - 1].day, "%Y-%m");
  g_autofree char *now = lb_day_format (chart->days[i].day, "%Y-%m");
  return !g_str_equal (before, now);
}

GArray *
lb_daily_chart_labels (const LbDailyChart *chart,
                       const LbVoice *voice,
                       const LbDailyChartLayout *layout)
{
  cairo_surface_t *const scratch = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *const cr = cairo_create (scratch);
  GArray *const labels = g_array_new (FALSE, FALSE, sizeof (LbDailyChartLabel));
  g_array_set_clear_func (labels, clear_label);

  for (gsize i = 0; i < chart->n_days; i += layout->label_every) {
    char *const text = lb_day_format (chart->days[i].day,
                                      layout->has_weekdays ? weekday_format () : "%-d");
    const LbDailyChartLabel label = {
      .text = text,
      .x = lb_daily_chart_day_x (layout, i),
      .width = text_width (cr, voice, text, layout->size),
    };
    g_array_append_val (labels, label);
  }

  double taken = -INFINITY;
  for (gsize i = 0; i < chart->n_days; i++) {
    if (!is_new_month (chart, i))
      continue;
    /* Translators: month and year under a chart, as g_date_time_format() reads it. */
    g_autofree char *text = lb_day_format (chart->days[i].day, C_ ("chart month", "%b %Y"));
    const double text_w = text_width (cr, voice, text, layout->size);
    const double start = layout->left + (double) i * layout->pitch;
    if (start < taken || start + text_w > layout->width)
      continue;
    const LbDailyChartLabel label = {
      .text = g_steal_pointer (&text),
      .x = start + text_w / 2,
      .width = text_w,
      .is_month = TRUE,
    };
    g_array_append_val (labels, label);
    taken = start + text_w + LABEL_GAP * layout->line;
  }
  cairo_destroy (cr);
  cairo_surface_destroy (scratch);
  return labels;
}
