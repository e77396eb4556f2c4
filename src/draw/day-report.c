/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The daily production report: what the superintendent signs and the owner reads.
 *
 * It is one content that runs down as many pages as it needs (page-flow): counting pages and
 * drawing one of them run through the same code. Only the day's own entries are in it, without
 * those taken back. */
#include "draw/day-report-private.h"
#include "draw/page.h"
#include "draw/plan-words.h"
#include "draw/plan.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MARGIN        36.0
#define FOOT          16.0 /* for the page's number */
#define TOTALS_SHARE  0.6
#define PLAN_GAP      14.0
#define PLAN_SCALE    0.65 /* of its words */
#define PLAN_MARGIN   18.0 /* for the names of bents and rows */
#define GUIDES_HEIGHT 34.0
#define TITLE_LEAST   8.0

static const LbPageStyle plain = { .size = 9, .ink = LB_INK_TEXT };

void
lb_report_take_cell (GPtrArray *cells, char *text)
{
  g_ptr_array_add (cells, text);
}

void
lb_report_table (LbReport *report,
                 const LbPageColumn *columns,
                 gsize n_columns,
                 double width,
                 GPtrArray *cells)
{
  lb_page_flow_table (&report->flow, columns, n_columns, width, (const char *const *) cells->pdata,
                      cells->len / n_columns);
}

void
lb_report_line (LbReport *report, const char *text)
{
  lb_page_flow_text (&report->flow, &plain, text);
}

void
lb_report_none (LbReport *report)
{
  lb_report_line (report, _ ("None recorded."));
}

double
lb_report_width (const LbReport *report)
{
  return report->flow.right - report->flow.left;
}

char *
lb_report_say (const LbReport *report, LbQuantity quantity, double si)
{
  return lb_voice_quantity (&report->flow.pen.voice, quantity, si);
}

static void
show_title (LbReport *report)
{
  LbPageFlow *const flow = &report->flow;
  const LbPageStyle label = { .size = 10, .is_bold = TRUE, .ink = LB_INK_TEXT };
  LbPageStyle job = { .size = 18, .is_bold = TRUE, .ink = LB_INK_TEXT };
  const LbPageStyle day_style = { .size = 13, .is_bold = TRUE, .ink = LB_INK_TEXT };
  g_autofree char *day = lb_day_text (report->day);
  const double width = lb_report_width (report);

  flow->y += lb_page_pen_text (&flow->pen, &label, LB_ALIGN_START, flow->left, flow->y, width,
                               _ ("DAILY PRODUCTION REPORT"));
  job.size = lb_page_pen_fit (&flow->pen, &job, TITLE_LEAST, width, report->fold->name);
  flow->y += lb_page_pen_text (&flow->pen, &job, LB_ALIGN_START, flow->left, flow->y, width,
                               report->fold->name);
  if (report->fold->place[0] != '\0')
    lb_report_line (report, report->fold->place);
  flow->y += lb_page_pen_text (&flow->pen, &day_style, LB_ALIGN_START, flow->left, flow->y, width,
                               day);
  lb_report_shifts (report);
}

static void
add_total (const LbReport *report,
           GPtrArray *cells,
           const char *name,
           LbQuantity quantity,
           double today,
           double to_date,
           double of_job)
{
  lb_report_take_cell (cells, g_strdup (name));
  lb_report_take_cell (cells, lb_report_say (report, quantity, today));
  lb_report_take_cell (cells, lb_report_say (report, quantity, to_date));
  lb_report_take_cell (cells, of_job > 0 ? g_strdup_printf (_ ("%.0f %% of %.0f"),
                                                            100 * MIN (to_date / of_job, 1), of_job)
                                         : g_strdup (""));
}

static double
all_bars (const LbFold *fold)
{
  double n = 0;
  for (guint i = 0; i < fold->n_piles; i++)
    n += fold->piles[i].n_bars;
  return n;
}

static void
add_totals (const LbReport *report, GPtrArray *cells)
{
  const LbTotals *const a = &report->work->today;
  const LbTotals *const b = &report->work->to_date;
  const struct
  {
    const char *name;
    LbStep step;
  } STEPS[] = {
    { _ ("Piles cleaned"), LB_STEP_CLEANED },
    { _ ("Piles severed"), LB_STEP_SEVERED },
    { _ ("Piles rigged"), LB_STEP_RIGGED },
    { _ ("Piles pulled"), LB_STEP_PULLED },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (STEPS); i++)
    add_total (report, cells, STEPS[i].name, LB_QUANTITY_COUNT, a->steps[STEPS[i].step],
               b->steps[STEPS[i].step], report->fold->n_piles);
  add_total (report, cells, _ ("Bars burned"), LB_QUANTITY_COUNT, a->bars, b->bars,
             all_bars (report->fold));
  add_total (report, cells, _ ("Trigger time"), LB_QUANTITY_TIME, a->trigger_s, b->trigger_s, 0);
  add_total (report, cells, _ ("Rods used"), LB_QUANTITY_COUNT, a->rods, b->rods, 0);
  add_total (report, cells, _ ("Oxygen used"), LB_QUANTITY_GAS, a->oxygen_m3, b->oxygen_m3, 0);
  add_total (report, cells, _ ("Dives"), LB_QUANTITY_COUNT, a->n_dives, b->n_dives, 0);
  add_total (report, cells, _ ("Bottom time"), LB_QUANTITY_TIME, a->bottom_s, b->bottom_s, 0);
  add_total (report, cells, _ ("Delays"), LB_QUANTITY_TIME, a->delay_s, b->delay_s, 0);
  add_total (report, cells, _ ("Lost to gear faults"), LB_QUANTITY_TIME, a->fault_s, b->fault_s, 0);
}

static gboolean
is_worked (const LbReport *report, gsize pile)
{
  for (guint i = 0; i < report->work->piles->len; i++) {
    if (g_array_index (report->work->piles, LbPileWork, i).pile == (int) pile)
      return TRUE;
  }
  return FALSE;
}

/* A pile's name beside it, where it stands clear of the day's other piles and names. */
static void
name_plan_pile (const LbReport *report, const char *label, LbPoint place, GArray *taken)
{
  const LbPagePen *const pen = &report->flow.pen;
  const LbPageStyle style = { .size = 6.5, .is_bold = TRUE, .ink = LB_INK_TEXT };
  cairo_rectangle_t name = { place.x + 3.5, place.y - 1.3 * style.size, 0, 0 };
  lb_text_measure (pen->cr, &pen->voice, label, style.size, TRUE, 0, &name.width, &name.height);
  for (guint i = 0; i < taken->len; i++) {
    const cairo_rectangle_t *const other = &g_array_index (taken, cairo_rectangle_t, i);
    if (name.x < other->x + other->width && other->x < name.x + name.width &&
        name.y < other->y + other->height && other->y < name.y + name.height)
      return;
  }
  g_array_append_val (taken, name);
  lb_page_pen_text (pen, &style, LB_ALIGN_START, name.x, name.y, 0, label);
}

static void
show_plan_pile (const LbReport *report,
                const LbPlan *plan,
                gsize i,
                LbPoint place,
                double size,
                GArray *taken)
{
  const LbPagePen *const pen = &report->flow.pen;
  const gboolean worked = is_worked (report, i);
  cairo_new_sub_path (pen->cr);
  cairo_arc (pen->cr, place.x, place.y, worked ? MAX (size, 5) / 2 : size / 2, 0, 2 * G_PI);
  cairo_set_line_width (pen->cr, 0.5);
  lb_ink_set (pen->cr, pen->palette, worked ? LB_INK_TEXT : LB_INK_FAINT);
  if (worked)
    cairo_fill (pen->cr);
  else
    cairo_stroke (pen->cr);
  if (worked)
    name_plan_pile (report, plan->piles[i].label, place, taken);
}

/* The pier with the day's piles in full ink; north and the scale bar below it. */
static void
show_plan (const LbReport *report, double x, double y, double width, double height)
{
  const LbPagePen *const pen = &report->flow.pen;
  if (!pen->is_drawing || report->fold->n_piles == 0)
    return;
  LbVoice small = pen->voice;
  small.scale = PLAN_SCALE;
  g_autoptr (LbPlan) plan = lb_plan_new (report->fold);
  const double room = height - GUIDES_HEIGHT;
  const LbPlanView view = lb_plan_fit (plan, width, room, PLAN_MARGIN);
  cairo_save (pen->cr);
  cairo_translate (pen->cr, x, y);
  cairo_rectangle (pen->cr, 0, 0, width, height);
  cairo_clip (pen->cr);
  lb_plan_draw_water (pen->cr, pen->palette, &small, plan, &view, width, room);
  lb_plan_draw_guides (pen->cr, pen->palette, &small, &view, width, height);
  g_autoptr (GArray) taken = g_array_new (FALSE, FALSE, sizeof (cairo_rectangle_t));
  for (guint i = 0; i < report->work->piles->len; i++) {
    const int pile = g_array_index (report->work->piles, LbPileWork, i).pile;
    LbPoint place;
    if (pile < 0)
      continue;
    lb_plan_to_page (&view, width, room, plan->piles[pile].x_m, plan->piles[pile].y_m, &place);
    const cairo_rectangle_t mark = { place.x - 2, place.y - 2, 4, 4 };
    g_array_append_val (taken, mark);
  }
  for (gsize i = 0; i < plan->n_piles; i++) {
    LbPoint place;
    lb_plan_to_page (&view, width, room, plan->piles[i].x_m, plan->piles[i].y_m, &place);
    show_plan_pile (report, plan, i, place, lb_plan_mark_size (plan, &view, i), taken);
  }
  cairo_restore (pen->cr);
}

static void
show_totals (LbReport *report)
{
  LbPageFlow *const flow = &report->flow;
  const LbPageColumn columns[] = {
    { _ ("Totals"), 0.34, LB_ALIGN_START },
    { _ ("This day"), 0.2, LB_ALIGN_END },
    { _ ("To date"), 0.22, LB_ALIGN_END },
    { _ ("Of the job"), 0.24, LB_ALIGN_END },
  };
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);
  const double width = TOTALS_SHARE * lb_report_width (report);
  add_totals (report, cells);
  flow->y += 6;
  const double start = flow->y;
  lb_report_table (report, columns, G_N_ELEMENTS (columns), width, cells);
  /* On the first page nothing can have broken off: a title and thirteen rows fit any sheet. */
  show_plan (report, flow->left + width + PLAN_GAP, start,
             lb_report_width (report) - width - PLAN_GAP, flow->y - start);
  g_autofree char *out = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u of %u pile is out.",
                                                       "%u of %u piles are out.",
                                                       report->fold->n_piles),
                                          report->work->pulled_so_far, report->fold->n_piles);
  flow->y += 3;
  lb_report_line (report, out);
  lb_report_stocks (report);
}

static void
show_signatures (LbReport *report)
{
  LbPageFlow *const flow = &report->flow;
  const char *const who[] = {
    _ ("Superintendent"),
    _ ("Diving supervisor"),
    _ ("For the owner"),
  };
  const double line = 22;
  lb_page_flow_need (flow, G_N_ELEMENTS (who) * line + 12);
  flow->y += 16;
  for (gsize i = 0; i < G_N_ELEMENTS (who); i++) {
    const double width = 0.66 * lb_report_width (report);
    lb_page_pen_blank (&flow->pen, flow->left, flow->y, width, who[i]);
    lb_page_pen_blank (&flow->pen, flow->left + width + PLAN_GAP, flow->y,
                       lb_report_width (report) - width - PLAN_GAP, _ ("Date"));
    flow->y += line;
  }
}

/* Runs through all of it; @shown is drawn. Returns the number of pages. */
static gsize
run (LbReport *report, gsize shown, double width_pt, double height_pt)
{
  g_autofree char *day = lb_day_text (report->day);
  g_autofree char *running = g_strdup_printf (_ ("%s · %s · daily production report, continued"),
                                              report->fold->name, day);
  LbPageFlow *const flow = &report->flow;
  flow->left = MARGIN;
  flow->right = width_pt - MARGIN;
  flow->top = MARGIN;
  flow->bottom = height_pt - MARGIN - FOOT;
  flow->y = flow->top;
  flow->page = 0;
  flow->shown = shown;
  flow->running = running;
  flow->pen.is_drawing = shown == 0;

  show_title (report);
  show_totals (report);
  lb_report_work (report);
  lb_report_findings (report);
  show_signatures (report);
  flow->running = NULL;
  return flow->page + 1;
}

/* A day that runs a few lines over is set a little smaller rather than on one more sheet. Leaves
 * @report's pen at the scale and returns the number of pages. */
static gsize
fit (LbReport *report, double width_pt, double height_pt)
{
  static const double SCALES[] = { 1, 0.94, 0.88 };
  double best = SCALES[0];
  gsize least = G_MAXSIZE;
  for (gsize i = 0; i < G_N_ELEMENTS (SCALES) && least > 1; i++) {
    if (i > 0 && least > 2)
      break; /* a long day: another sheet more or less is no matter */
    report->flow.pen.voice.scale = SCALES[i];
    const gsize n_pages = run (report, LB_PAGE_NONE, width_pt, height_pt);
    if (n_pages < least) {
      least = n_pages;
      best = SCALES[i];
    }
  }
  report->flow.pen.voice.scale = best;
  return least;
}

static LbReport
begin (const LbDayAccount *account, const LbDayWork *work)
{
  return (LbReport){
    .account = account,
    .ledger = account->ledger,
    .fold = account->fold,
    .dives = account->dives,
    .day = account->day,
    .work = work,
  };
}

gsize
lb_day_report_n_pages (const LbVoice *voice,
                       const LbDayAccount *account,
                       double width_pt,
                       double height_pt)
{
  g_autoptr (LbDayWork) work = lb_day_work_new (voice, account->ledger, account->fold,
                                                account->day);
  LbReport report = begin (account, work);
  lb_page_pen_init_measuring (&report.flow.pen, voice);
  const gsize n_pages = fit (&report, width_pt, height_pt);
  lb_page_pen_clear (&report.flow.pen);
  return n_pages;
}

static void
show_page_number (const LbPagePen *pen,
                  guint32 day,
                  gsize page,
                  gsize n_pages,
                  double width_pt,
                  double height_pt)
{
  const LbPageStyle style = { .size = 8, .ink = LB_INK_DIM_TEXT };
  const double y = height_pt - MARGIN - 10;
  g_autofree char *iso = lb_day_iso (day);
  g_autofree char *number = g_strdup_printf (_ ("Page %u of %u"), (guint) page + 1,
                                             (guint) n_pages);
  lb_page_pen_text (pen, &style, LB_ALIGN_START, MARGIN, y, 0, iso);
  lb_page_pen_text (pen, &style, LB_ALIGN_END, width_pt - MARGIN, y, 0, number);
}

void
lb_day_report_draw (cairo_t *cr,
                    const LbVoice *voice,
                    const LbDayAccount *account,
                    gsize page,
                    double width_pt,
                    double height_pt)
{
  g_autoptr (LbDayWork) work = lb_day_work_new (voice, account->ledger, account->fold,
                                                account->day);
  LbReport report = begin (account, work);
  lb_page_pen_init_drawing (&report.flow.pen, cr, voice);
  lb_ink_set (cr, report.flow.pen.palette, LB_INK_PAPER);
  cairo_rectangle (cr, 0, 0, width_pt, height_pt);
  cairo_fill (cr);
  const gsize n_pages = fit (&report, width_pt, height_pt);
  run (&report, page, width_pt, height_pt);
  report.flow.pen.is_drawing = TRUE;
  show_page_number (&report.flow.pen, account->day, page, n_pages, width_pt, height_pt);
  lb_page_pen_clear (&report.flow.pen);
}
