/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The daily chart: how many piles reached each step a day, as stacked columns, and how many bars
 * were burned, as a line on the right axis.
 *
 * Each series is told by its place in the stack, its colour and its pattern, so that the chart
 * reads the same in black and white: pulled is solid, rigged hatched, severed crossed by level
 * lines, cleaned hollow. Pulled stands on the baseline because it is what is asked for first.
 * Where everything lies comes from daily-chart-layout alone. */
#include "draw/daily-chart-layout.h"
#include "draw/plan-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define HATCH_SPACE  5.0
#define POINT_RADIUS 2.6
#define BOX_PAD      7.0
#define DAYS_AVERAGE 5 /* days worked that the sentence looks back on */

typedef struct
{
  cairo_t *cr;
  const LbPalette *palette;
  const LbVoice *voice;
  const LbDailyChart *chart;
  LbDailyChartLayout at;
} Drawing;

static LbInk
series_ink (LbSeries series)
{
  static const LbInk INKS[LB_N_SERIES] = {
    [LB_SERIES_PULLED] = LB_INK_PULLED,   [LB_SERIES_RIGGED] = LB_INK_RIGGED,
    [LB_SERIES_SEVERED] = LB_INK_SEVERED, [LB_SERIES_CLEANED] = LB_INK_CLEANED,
    [LB_SERIES_BARS] = LB_INK_STEEL,
  };
  return INKS[series];
}

static void
hatch (cairo_t *cr, LbSeries series, double x, double y, double width, double height)
{
  cairo_save (cr);
  cairo_rectangle (cr, x, y, width, height);
  cairo_clip (cr);
  cairo_set_line_width (cr, 1.4);
  if (series == LB_SERIES_RIGGED) {
    /* From the page's own origin, so that neighbours' hatches run on. */
    const double first = floor ((x - y - height) / HATCH_SPACE) * HATCH_SPACE;
    for (double d = first; d < x + width - y; d += HATCH_SPACE) {
      cairo_move_to (cr, d + y, y);
      cairo_line_to (cr, d + y + height, y + height);
    }
  } else {
    for (double line = ceil (y / HATCH_SPACE) * HATCH_SPACE; line < y + height; line += HATCH_SPACE)
    {
      cairo_move_to (cr, x, line);
      cairo_line_to (cr, x + width, line);
    }
  }
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_block (const Drawing *d, LbSeries series, double x, double y, double width, double height)
{
  cairo_t *const cr = d->cr;
  lb_ink_set (cr, d->palette, series == LB_SERIES_PULLED ? LB_INK_PULLED : LB_INK_PAPER);
  cairo_rectangle (cr, x, y, width, height);
  cairo_fill (cr);
  lb_ink_set (cr, d->palette, series_ink (series));
  if (series == LB_SERIES_RIGGED || series == LB_SERIES_SEVERED)
    hatch (cr, series, x, y, width, height);
  /* Inside the block, so that the stack's outlines lie side by side. */
  const double line = MIN (1.2, width / 3);
  cairo_set_line_width (cr, line);
  cairo_rectangle (cr, x + line / 2, y + line / 2, MAX (width - line, 0), MAX (height - line, 0));
  cairo_stroke (cr);
}

static void
draw_point (const Drawing *d, double x, double y, double radius)
{
  cairo_new_sub_path (d->cr);
  cairo_arc (d->cr, x, y, radius, 0, 2 * G_PI);
  lb_ink_set (d->cr, d->palette, LB_INK_PAPER);
  cairo_fill_preserve (d->cr);
  lb_ink_set (d->cr, d->palette, series_ink (LB_SERIES_BARS));
  cairo_set_line_width (d->cr, 1.6);
  cairo_stroke (d->cr);
}

static void
draw_legend (const Drawing *d)
{
  const double side = d->at.line;
  for (LbSeries series = 0; series < LB_N_SERIES; series++) {
    const LbPoint place = d->at.legend[series];
    if (series == LB_SERIES_BARS) {
      lb_ink_set (d->cr, d->palette, series_ink (series));
      cairo_set_line_width (d->cr, 2);
      cairo_move_to (d->cr, place.x, place.y + side / 2);
      cairo_line_to (d->cr, place.x + 2 * side, place.y + side / 2);
      cairo_stroke (d->cr);
      draw_point (d, place.x + side, place.y + side / 2, POINT_RADIUS);
    } else {
      draw_block (d, series, place.x, place.y + 0.1 * side, 2 * side, 0.8 * side);
    }
    lb_ink_set (d->cr, d->palette, LB_INK_TEXT);
    lb_text_show (d->cr, d->voice, lb_series_name (series), d->at.size, FALSE, LB_ALIGN_START,
                  place.x + 2.4 * side, place.y, 0);
  }
}

static void
draw_tick (const Drawing *d, guint value, LbAlign align, double x, double y)
{
  g_autofree char *text = lb_voice_number (d->voice, value, 0);
  lb_text_show (d->cr, d->voice, text, d->at.size, FALSE, align, x, y - d->at.line / 2, 0);
}

static void
draw_axes (const Drawing *d)
{
  const LbDailyChartLayout *const at = &d->at;
  for (guint i = 0; i <= at->n_intervals; i++) {
    const double y = at->bottom - (at->bottom - at->top) * i / at->n_intervals;
    lb_ink_set (d->cr, d->palette, i == 0 ? LB_INK_LINE : LB_INK_HAIR);
    cairo_set_line_width (d->cr, 1);
    cairo_move_to (d->cr, at->left, y);
    cairo_line_to (d->cr, at->right, y);
    cairo_stroke (d->cr);
    lb_ink_set (d->cr, d->palette, LB_INK_DIM_TEXT);
    draw_tick (d, i * at->piles_step, LB_ALIGN_END, at->left - 6, y);
    draw_tick (d, i * at->bars_step, LB_ALIGN_START, at->right + 6, y);
  }
  const double title_y = at->top - 1.6 * at->line;
  lb_ink_set (d->cr, d->palette, LB_INK_DIM_TEXT);
  lb_text_show (d->cr, d->voice, _ ("piles a day"), at->size, TRUE, LB_ALIGN_START, 8, title_y, 0);
  lb_text_show (d->cr, d->voice, _ ("bars burned a day"), at->size, TRUE, LB_ALIGN_END,
                at->width - 8, title_y, 0);
}

static void
draw_labels (const Drawing *d)
{
  const LbDailyChartLayout *const at = &d->at;
  g_autoptr (GArray) labels = lb_daily_chart_labels (d->chart, d->voice, at);
  for (guint i = 0; i < labels->len; i++) {
    const LbDailyChartLabel *const label = &g_array_index (labels, LbDailyChartLabel, i);
    lb_ink_set (d->cr, d->palette, label->is_month ? LB_INK_TEXT : LB_INK_DIM_TEXT);
    lb_text_show (d->cr, d->voice, label->text, at->size, FALSE, LB_ALIGN_MIDDLE, label->x,
                  at->bottom + 6 + (label->is_month ? at->line + 3 : 0), 0);
    if (label->is_month) {
      const double x = label->x - label->width / 2;
      if (x <= at->left)
        continue;
      lb_ink_set (d->cr, d->palette, LB_INK_FAINT);
      cairo_set_line_width (d->cr, 1);
      cairo_move_to (d->cr, x, at->top);
      cairo_line_to (d->cr, x, at->bottom);
      cairo_stroke (d->cr);
    }
  }
}

static double
piles_height (const LbDailyChartLayout *at, guint piles)
{
  return (at->bottom - at->top) * piles / ((double) at->n_intervals * at->piles_step);
}

static double
bars_y (const LbDailyChartLayout *at, guint bars)
{
  return at->bottom - (at->bottom - at->top) * bars / ((double) at->n_intervals * at->bars_step);
}

static void
draw_columns (const Drawing *d)
{
  for (gsize i = 0; i < d->chart->n_days; i++) {
    const double x = lb_daily_chart_day_x (&d->at, i) - d->at.column / 2;
    double y = d->at.bottom;
    for (LbSeries series = 0; series < LB_N_STACKED; series++) {
      const guint piles = lb_series_piles (series, &d->chart->days[i]);
      if (piles == 0)
        continue;
      const double height = piles_height (&d->at, piles);
      y -= height;
      draw_block (d, series, x, y, d->at.column, height);
    }
  }
}

static void
trace_bars (const Drawing *d)
{
  for (gsize i = 0; i < d->chart->n_days; i++)
    cairo_line_to (d->cr, lb_daily_chart_day_x (&d->at, i),
                   bars_y (&d->at, d->chart->days[i].totals.bars));
}

static void
draw_bars (const Drawing *d)
{
  cairo_t *const cr = d->cr;
  cairo_save (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  trace_bars (d);
  /* A margin of paper keeps the line apart from the columns it crosses. */
  cairo_set_line_width (cr, 4.5);
  lb_ink_set (cr, d->palette, LB_INK_PAPER);
  cairo_stroke_preserve (cr);
  cairo_set_line_width (cr, 2);
  lb_ink_set (cr, d->palette, series_ink (LB_SERIES_BARS));
  cairo_stroke (cr);
  cairo_restore (cr);
  if (d->at.pitch < 2.5 * POINT_RADIUS)
    return; /* they would run into one another: the line says it all */
  for (gsize i = 0; i < d->chart->n_days; i++)
    draw_point (d, lb_daily_chart_day_x (&d->at, i), bars_y (&d->at, d->chart->days[i].totals.bars),
                (int) i == d->chart->focus ? 1.7 * POINT_RADIUS : POINT_RADIUS);
}

static void
draw_focus_band (const Drawing *d)
{
  const double pitch = MAX (d->at.pitch, 3);
  const double x = lb_daily_chart_day_x (&d->at, (gsize) d->chart->focus) - pitch / 2;
  cairo_rectangle (d->cr, x, d->at.top, pitch, d->at.bottom - d->at.top);
  lb_ink_set_alpha (d->cr, d->palette, LB_INK_SELECT, 0.18);
  cairo_fill_preserve (d->cr);
  lb_ink_set (d->cr, d->palette, LB_INK_SELECT);
  cairo_set_line_width (d->cr, 1);
  cairo_stroke (d->cr);
}

/* The day's figures, one a line. */
static char *
focus_text (const LbDailyChart *chart)
{
  const LbDay *const day = &chart->days[chart->focus];
  GString *const text = g_string_new (NULL);
  for (LbSeries series = LB_N_STACKED; series-- > 0;)
    g_string_append_printf (text, "%s: %u\n", lb_series_name (series),
                            lb_series_piles (series, day));
  g_string_append_printf (text, "%s: %u\n", lb_series_name (LB_SERIES_BARS), day->totals.bars);
  g_string_append_printf (text, _ ("out to date: %u"), day->pulled_so_far);
  return g_string_free (text, FALSE);
}

static void
draw_focus_box (const Drawing *d)
{
  const LbDailyChartLayout *const at = &d->at;
  g_autofree char *title = lb_day_text (d->chart->days[d->chart->focus].day);
  g_autofree char *figures = focus_text (d->chart);
  double title_w, title_h, figures_w, figures_h;
  lb_text_measure (d->cr, d->voice, title, at->size, TRUE, 0, &title_w, &title_h);
  lb_text_measure (d->cr, d->voice, figures, at->size, FALSE, 0, &figures_w, &figures_h);

  const double width = MAX (title_w, figures_w) + 2 * BOX_PAD;
  const double height = title_h + figures_h + 2 * BOX_PAD + 2;
  const double middle = lb_daily_chart_day_x (at, (gsize) d->chart->focus);
  const double beside = MAX (at->pitch, 8) / 2 + 6;
  double x = middle + beside;
  if (x + width > at->width - 2)
    x = middle - beside - width;
  x = CLAMP (x, 2, MAX (2, at->width - 2 - width));
  const double y = CLAMP (at->top + 4, 2, MAX (2, at->height - 2 - height));

  cairo_rectangle (d->cr, x + 0.5, y + 0.5, width - 1, height - 1);
  lb_ink_set (d->cr, d->palette, LB_INK_PAPER);
  cairo_fill_preserve (d->cr);
  lb_ink_set (d->cr, d->palette, LB_INK_LINE);
  cairo_set_line_width (d->cr, 1);
  cairo_stroke (d->cr);
  lb_ink_set (d->cr, d->palette, LB_INK_TEXT);
  lb_text_show (d->cr, d->voice, title, at->size, TRUE, LB_ALIGN_START, x + BOX_PAD, y + BOX_PAD,
                0);
  lb_text_show (d->cr, d->voice, figures, at->size, FALSE, LB_ALIGN_START, x + BOX_PAD,
                y + BOX_PAD + title_h + 2, 0);
}

static void
draw_empty (const Drawing *d)
{
  const double room = MAX (d->at.width - 48, 1);
  const char *const words = _ ("No shift is on record yet. The first day’s work will stand here.");
  double width, height;
  lb_text_measure (d->cr, d->voice, words, 13, FALSE, room, &width, &height);
  lb_ink_set (d->cr, d->palette, LB_INK_DIM_TEXT);
  lb_text_show (d->cr, d->voice, words, 13, FALSE, LB_ALIGN_MIDDLE, d->at.width / 2,
                (d->at.height - height) / 2, room);
}

void
lb_daily_chart_draw (cairo_t *cr,
                     const LbPalette *palette,
                     const LbVoice *voice,
                     const LbDailyChart *chart,
                     double width,
                     double height)
{
  Drawing d = {
    .cr = cr,
    .palette = palette,
    .voice = voice,
    .chart = chart,
  };
  const gboolean has_focus = chart->focus >= 0 && (gsize) chart->focus < chart->n_days;

  lb_daily_chart_lay_out (chart, voice, width, height, &d.at);
  lb_ink_set (cr, palette, LB_INK_PAPER);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_fill (cr);
  if (chart->n_days == 0) {
    draw_empty (&d);
    return;
  }
  draw_legend (&d);
  draw_axes (&d);
  draw_labels (&d);
  if (has_focus)
    draw_focus_band (&d);
  draw_columns (&d);
  draw_bars (&d);
  if (has_focus)
    draw_focus_box (&d);
}

static char *
piles_out_text (const LbDailyChart *chart, guint out)
{
  if (out == 0)
    return g_strdup (_ ("No pile is out yet"));
  if (chart->n_piles == 0)
    return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "%u pile is out", "%u piles are out", out), out);
  if (out >= chart->n_piles)
    return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "The %u pile is out", "All %u piles are out", out), out);
  return g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE, "%u of %u piles is out", "%u of %u piles are out", out), out,
    chart->n_piles);
}

static char *
pace_text (const LbDailyChart *chart)
{
  const gsize n = MIN (chart->n_days, DAYS_AVERAGE);
  guint pulled = 0;
  for (gsize i = chart->n_days - n; i < chart->n_days; i++)
    pulled += lb_series_piles (LB_SERIES_PULLED, &chart->days[i]);
  if (pulled == 0 && n > 1)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "none was pulled on the last %u day worked",
                                         "none was pulled on the last %u days worked", n),
                            (guint) n);
  if (n == 1)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "one day has been worked, with %u pulled",
                                         "one day has been worked, with %u pulled", pulled),
                            pulled);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "the last %u day worked averaged %.1f pulled a day",
                                       "the last %u days worked averaged %.1f pulled a day", n),
                          (guint) n, (double) pulled / (double) n);
}

char *
lb_daily_chart_sentence (const LbDailyChart *chart)
{
  if (chart->n_days == 0)
    return g_strdup (_ ("No shift is on record yet."));
  g_autofree char *piles = piles_out_text (chart, chart->days[chart->n_days - 1].pulled_so_far);
  g_autofree char *pace = pace_text (chart);
  /* Translators: two halves of the sentence over the chart: “84 of 198 piles are out; the last
   * 5 days worked averaged 3.4 pulled a day.” */
  return g_strdup_printf (_ ("%s; %s."), piles, pace);
}
