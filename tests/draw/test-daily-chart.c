/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The daily chart's layout by its own promises, and its drawing by where ink falls. */
#include "draw/daily-chart-layout.h"
#include "sample-job.h"

#include <locale.h>
#include <math.h>
#include <string.h>

static const struct
{
  double width, height;
} SIZES[] = { { 480, 260 }, { 640, 360 }, { 900, 420 }, { 1600, 900 } };

static const gsize COUNTS[] = { 1, 2, 7, 30, 120, 400 };

/* Days in a row, with figures that differ from day to day. */
static LbDay *
make_days (gsize n)
{
  LbDay *const days = g_new0 (LbDay, n + 1);
  guint out = 0;
  for (gsize i = 0; i < n; i++) {
    days[i].day = sample_job_first_day () + (guint32) i;
    days[i].totals.steps[LB_STEP_CLEANED] = (guint) (i % 7);
    days[i].totals.steps[LB_STEP_SEVERED] = (guint) (i % 5);
    days[i].totals.steps[LB_STEP_RIGGED] = (guint) (i % 4);
    days[i].totals.steps[LB_STEP_PULLED] = (guint) (i % 3);
    days[i].totals.bars = (guint) (i * 13 % 61);
    out += (guint) (i % 3);
    days[i].pulled_so_far = out;
  }
  return days;
}

static void
test_tick_steps (void)
{
  static const struct
  {
    double least;
    guint step;
  } CASES[] = { { 0, 1 },  { 0.2, 1 }, { 1, 1 },   { 1.01, 2 }, { 3, 5 },    { 5, 5 },
                { 6, 10 }, { 11, 20 }, { 21, 50 }, { 51, 100 }, { 201, 500 } };
  for (gsize i = 0; i < G_N_ELEMENTS (CASES); i++)
    g_assert_cmpuint (lb_tick_step (CASES[i].least), ==, CASES[i].step);
}

/* Calls @check with every size, number of days and size of words. */
static void
for_all (void (*check) (const LbDailyChart *, const LbVoice *, const LbDailyChartLayout *))
{
  for (gsize s = 0; s < G_N_ELEMENTS (SIZES); s++) {
    for (gsize c = 0; c < G_N_ELEMENTS (COUNTS); c++) {
      for (double scale = 1; scale <= 2; scale += 1) {
        LbVoice voice = LB_VOICE_PLAIN;
        voice.scale = scale;
        g_autofree LbDay *days = make_days (COUNTS[c]);
        const LbDailyChart chart = { .days = days, .n_days = COUNTS[c], .focus = -1 };
        LbDailyChartLayout layout;
        lb_daily_chart_lay_out (&chart, &voice, SIZES[s].width, SIZES[s].height, &layout);
        check (&chart, &voice, &layout);
      }
    }
  }
}

static void
check_day_at (const LbDailyChart *chart, const LbVoice *voice, const LbDailyChartLayout *layout)
{
  const double width = layout->width;
  const double height = layout->height;
  for (gsize i = 0; i < chart->n_days; i++) {
    const double x = lb_daily_chart_day_x (layout, i);
    g_assert_cmpint (lb_daily_chart_day_at (chart, voice, width, height, x), ==, (int) i);
  }
  g_assert_cmpint (lb_daily_chart_day_at (chart, voice, width, height, layout->left - 1), ==, -1);
  const double end = layout->left + (double) chart->n_days * layout->pitch;
  g_assert_cmpint (lb_daily_chart_day_at (chart, voice, width, height, end + 1), ==, -1);
}

static void
test_day_at (void)
{
  for_all (check_day_at);
}

static void
check_labels (const LbDailyChart *chart, const LbVoice *voice, const LbDailyChartLayout *layout)
{
  g_autoptr (GArray) labels = lb_daily_chart_labels (chart, voice, layout);
  double end[2] = { -INFINITY, -INFINITY };
  g_assert_cmpuint (labels->len, >=, 2); /* a day and a month */
  for (guint i = 0; i < labels->len; i++) {
    const LbDailyChartLabel *const label = &g_array_index (labels, LbDailyChartLabel, i);
    const double start = label->x - label->width / 2;
    g_assert_cmpfloat (label->width, >, 0);
    g_assert_cmpfloat (start, >=, end[label->is_month]);
    g_assert_cmpfloat (start + label->width, <=, layout->width);
    g_assert_cmpfloat (start, >=, 0);
    end[label->is_month] = start + label->width;
  }
}

static void
test_labels (void)
{
  for_all (check_labels);
}

static gboolean
is_nice (guint step)
{
  while (step % 10 == 0)
    step /= 10;
  return step == 1 || step == 2 || step == 5;
}

static void
check_axes (const LbDailyChart *chart, const LbVoice *voice, const LbDailyChartLayout *layout)
{
  guint most_bars = 0;
  guint most_piles = 0;
  for (gsize i = 0; i < chart->n_days; i++) {
    guint piles = 0;
    for (LbSeries series = 0; series < LB_N_STACKED; series++)
      piles += lb_series_piles (series, &chart->days[i]);
    most_piles = MAX (most_piles, piles);
    most_bars = MAX (most_bars, chart->days[i].totals.bars);
  }
  g_assert_true (is_nice (layout->piles_step));
  g_assert_true (is_nice (layout->bars_step));
  g_assert_cmpuint (layout->n_intervals * layout->piles_step, >=, most_piles);
  g_assert_cmpuint (layout->n_intervals * layout->bars_step, >=, most_bars);
  g_assert_cmpfloat (layout->left, <, layout->right);
  g_assert_cmpfloat (layout->top, <, layout->bottom);
  g_assert_cmpfloat (layout->bottom, <=, layout->height);
  /* Grid lines stand at least one line of text apart. */
  const double apart = (layout->bottom - layout->top) / layout->n_intervals;
  if (layout->n_intervals > 1)
    g_assert_cmpfloat (apart, >=, layout->line);
}

static void
test_axes (void)
{
  for_all (check_axes);
}

/* No ink outside the picture, wherever the focus is. */
static void
test_ink_stays_inside (void)
{
  g_autofree LbDay *days = make_days (30);
  for (gsize s = 0; s < G_N_ELEMENTS (SIZES); s++) {
    for (int focus = -1; focus < 30; focus++) {
      const LbDailyChart chart = { .days = days, .n_days = 30, .focus = focus };
      cairo_surface_t *const ink = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
      cairo_t *const cr = cairo_create (ink);
      double x, y, width, height;
      lb_daily_chart_draw (cr, lb_palette (LB_PALETTE_LIGHT), &LB_VOICE_PLAIN, &chart,
                           SIZES[s].width, SIZES[s].height);
      cairo_recording_surface_ink_extents (ink, &x, &y, &width, &height);
      g_assert_cmpfloat (x, >=, 0);
      g_assert_cmpfloat (y, >=, 0);
      g_assert_cmpfloat (x + width, <=, SIZES[s].width);
      g_assert_cmpfloat (y + height, <=, SIZES[s].height);
      cairo_destroy (cr);
      cairo_surface_destroy (ink);
    }
  }
}

/* On paper every pixel is a grey, and the four steps still differ: pictures of one day on which
 * only that step was reached are not alike. */
static void
test_black_and_white (void)
{
  GChecksum *sums[LB_N_STACKED];
  static const LbStep STEPS[] = { LB_STEP_PULLED, LB_STEP_RIGGED, LB_STEP_SEVERED,
                                  LB_STEP_CLEANED };
  for (gsize i = 0; i < LB_N_STACKED; i++) {
    LbDay day = { .day = sample_job_first_day () };
    day.totals.steps[STEPS[i]] = 5;
    const LbDailyChart chart = { .days = &day, .n_days = 1, .focus = -1 };
    cairo_surface_t *const image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 480, 260);
    cairo_t *const cr = cairo_create (image);
    lb_daily_chart_draw (cr, lb_palette (LB_PALETTE_PRINT), &LB_VOICE_PLAIN, &chart, 480, 260);
    cairo_surface_flush (image);
    const guchar *const data = cairo_image_surface_get_data (image);
    const int stride = cairo_image_surface_get_stride (image);
    for (int y = 0; y < 260; y++) {
      for (int x = 0; x < 480; x++) {
        const guint32 pixel = *(const guint32 *) (gconstpointer) (data + y * stride + 4 * x);
        g_assert_cmpuint (pixel & 0xff, ==, pixel >> 8 & 0xff);
        g_assert_cmpuint (pixel & 0xff, ==, pixel >> 16 & 0xff);
      }
    }
    sums[i] = g_checksum_new (G_CHECKSUM_SHA256);
    g_checksum_update (sums[i], data, 260 * stride);
    for (gsize j = 0; j < i; j++)
      g_assert_cmpstr (g_checksum_get_string (sums[i]), !=, g_checksum_get_string (sums[j]));
    cairo_destroy (cr);
    cairo_surface_destroy (image);
  }
  for (gsize i = 0; i < LB_N_STACKED; i++)
    g_checksum_free (sums[i]);
}

static void
assert_sentence (const LbDay *days, gsize n_days, guint n_piles, const char *expected)
{
  const LbDailyChart chart = { .days = days, .n_days = n_days, .focus = -1, .n_piles = n_piles };
  g_autofree char *sentence = lb_daily_chart_sentence (&chart);
  g_assert_cmpstr (sentence, ==, expected);
}

static void
test_sentence (void)
{
  LbDay days[7] = { { .day = 1 } };
  static const guint PULLED[] = { 80, 9, 3, 4, 3, 4, 3 };
  guint out = 0;
  assert_sentence (NULL, 0, 198, "No shift is on record yet.");
  assert_sentence (days, 1, 198, "No pile is out yet; one day has been worked, with 0 pulled.");
  assert_sentence (days, 6, 198, "No pile is out yet; none was pulled on the last 5 days worked.");
  for (gsize i = 0; i < G_N_ELEMENTS (days); i++) {
    days[i].totals.steps[LB_STEP_PULLED] = PULLED[i];
    out += PULLED[i];
    days[i].pulled_so_far = out;
  }
  /* 3 + 4 + 3 + 4 + 3 = 17 on five days */
  assert_sentence (days, 7, 198,
                   "106 of 198 piles are out; the last 5 days worked averaged 3.4 pulled a day.");
  assert_sentence (days, 7, 0,
                   "106 piles are out; the last 5 days worked averaged 3.4 pulled a day.");
  assert_sentence (days, 7, 106,
                   "All 106 piles are out; the last 5 days worked averaged 3.4 pulled a day.");
  assert_sentence (days, 2, 198,
                   "89 of 198 piles are out; the last 2 days worked averaged 44.5 pulled a day.");
  assert_sentence (days, 1, 198,
                   "80 of 198 piles are out; one day has been worked, with 80 pulled.");
}

int
main (int argc, char *argv[])
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/daily-chart/tick-steps", test_tick_steps);
  g_test_add_func ("/draw/daily-chart/day-at", test_day_at);
  g_test_add_func ("/draw/daily-chart/labels", test_labels);
  g_test_add_func ("/draw/daily-chart/axes", test_axes);
  g_test_add_func ("/draw/daily-chart/ink", test_ink_stays_inside);
  g_test_add_func ("/draw/daily-chart/black-and-white", test_black_and_white);
  g_test_add_func ("/draw/daily-chart/sentence", test_sentence);
  return g_test_run ();
}
