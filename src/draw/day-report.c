/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The daily production report: what the superintendent signs and the owner reads.
 *
 * It is one content that runs down as many pages as it needs (page-flow): counting pages and
 * drawing one of them run through the same code. Only the day's own entries are in it, without
 * those taken back; a section that nobody wrote in says so, since an empty one could also mean
 * that a page was lost. Bottom times are compared with the no-stop limit and nothing more. */
#include "draw/check-words.h"
#include "draw/day-work.h"
#include "draw/dive-words.h"
#include "draw/page-flow.h"
#include "draw/page.h"
#include "draw/plan-words.h"
#include "draw/plan.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MARGIN        36.0
#define FOOT          16.0 /* for the page's number */
#define TOTALS_SHARE  0.5
#define PLAN_GAP      14.0
#define PLAN_SCALE    0.65 /* of its words */
#define PLAN_MARGIN   18.0 /* for the names of bents and rows */
#define GUIDES_HEIGHT 34.0
#define TITLE_LEAST   8.0

typedef struct
{
  LbPageFlow flow;
  const LbLedger *ledger;
  const LbFold *fold;
  const LbDayWork *work;
  const GArray *dives; /* LbDiveAccount */
  guint32 day;
} Report;

static const LbPageStyle PLAIN = { .size = 9, .ink = LB_INK_TEXT };

/* Cells are collected row by row and shown at once. */
static void
take_cell (GPtrArray *cells, char *text)
{
  g_ptr_array_add (cells, text);
}

static void
show_table (Report *report,
            const LbPageColumn *columns,
            gsize n_columns,
            double width,
            GPtrArray *cells)
{
  lb_page_flow_table (&report->flow, columns, n_columns, width, (const char *const *) cells->pdata,
                      cells->len / n_columns);
}

static void
show_none (Report *report)
{
  lb_page_flow_text (&report->flow, &PLAIN, _ ("None recorded."));
}

static double
width_of (const Report *report)
{
  return report->flow.right - report->flow.left;
}

static char *
say (const Report *report, LbQuantity quantity, double si)
{
  return lb_voice_quantity (&report->flow.pen.voice, quantity, si);
}

/* Empty for nothing: a table of zeros hides what was done. */
static char *
say_some (const Report *report, LbQuantity quantity, double si)
{
  return si > 0 ? say (report, quantity, si) : g_strdup ("");
}

static char *
count (guint n)
{
  return g_strdup_printf ("%u", n);
}

static void
show_shifts (Report *report)
{
  gboolean any = FALSE;
  for (guint i = 0; i < report->ledger->shifts->len; i++) {
    const LbShift *const shift = lb_ledger_shift (report->ledger, i);
    if (shift->day != report->day)
      continue;
    any = TRUE;
    const char *const watch = g_str_equal (shift->watch, "night") ? _ ("Night shift")
                              : g_str_equal (shift->watch, "day") ? _ ("Day shift")
                                                                  : shift->watch;
    g_autofree char *line = shift->who[0] != '\0'
                              ? g_strdup_printf (_ ("%s, opened by %s"), watch, shift->who)
                              : g_strdup (watch);
    lb_page_flow_text (&report->flow, &PLAIN, line);
  }
  if (!any)
    lb_page_flow_text (&report->flow, &PLAIN, _ ("No shift on this day."));
}

static void
show_title (Report *report)
{
  LbPageFlow *const flow = &report->flow;
  const LbPageStyle label = { .size = 10, .is_bold = TRUE, .ink = LB_INK_TEXT };
  LbPageStyle job = { .size = 18, .is_bold = TRUE, .ink = LB_INK_TEXT };
  const LbPageStyle day_style = { .size = 13, .is_bold = TRUE, .ink = LB_INK_TEXT };
  g_autofree char *day = lb_day_text (report->day);
  const double width = width_of (report);

  flow->y += lb_page_pen_text (&flow->pen, &label, LB_ALIGN_START, flow->left, flow->y, width,
                               _ ("DAILY PRODUCTION REPORT"));
  job.size = lb_page_pen_fit (&flow->pen, &job, TITLE_LEAST, width, report->fold->name);
  flow->y += lb_page_pen_text (&flow->pen, &job, LB_ALIGN_START, flow->left, flow->y, width,
                               report->fold->name);
  if (report->fold->place[0] != '\0')
    lb_page_flow_text (flow, &PLAIN, report->fold->place);
  flow->y += lb_page_pen_text (&flow->pen, &day_style, LB_ALIGN_START, flow->left, flow->y, width,
                               day);
  show_shifts (report);
}

static void
add_total (const Report *report,
           GPtrArray *cells,
           const char *name,
           LbQuantity quantity,
           double today,
           double to_date)
{
  take_cell (cells, g_strdup (name));
  take_cell (cells, say (report, quantity, today));
  take_cell (cells, say (report, quantity, to_date));
}

static void
add_totals (const Report *report, GPtrArray *cells)
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
               b->steps[STEPS[i].step]);
  add_total (report, cells, _ ("Bars burned"), LB_QUANTITY_COUNT, a->bars, b->bars);
  add_total (report, cells, _ ("Trigger time"), LB_QUANTITY_TIME, a->trigger_s, b->trigger_s);
  add_total (report, cells, _ ("Rods used"), LB_QUANTITY_COUNT, a->rods, b->rods);
  add_total (report, cells, _ ("Oxygen used"), LB_QUANTITY_GAS, a->oxygen_m3, b->oxygen_m3);
  add_total (report, cells, _ ("Dives"), LB_QUANTITY_COUNT, a->n_dives, b->n_dives);
  add_total (report, cells, _ ("Bottom time"), LB_QUANTITY_TIME, a->bottom_s, b->bottom_s);
  add_total (report, cells, _ ("Delays"), LB_QUANTITY_TIME, a->delay_s, b->delay_s);
  add_total (report, cells, _ ("Lost to gear faults"), LB_QUANTITY_TIME, a->fault_s, b->fault_s);
}

static gboolean
is_worked (const Report *report, gsize pile)
{
  for (guint i = 0; i < report->work->piles->len; i++) {
    if (g_array_index (report->work->piles, LbPileWork, i).pile == (int) pile)
      return TRUE;
  }
  return FALSE;
}

/* A pile's name beside it, where it stands clear of the day's other piles and names. */
static void
name_plan_pile (const Report *report, const char *label, LbPoint place, GArray *taken)
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
show_plan_pile (const Report *report,
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
show_plan (const Report *report, double x, double y, double width, double height)
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
show_totals (Report *report)
{
  LbPageFlow *const flow = &report->flow;
  const LbPageColumn columns[] = {
    { _ ("Totals"), 0.46, LB_ALIGN_START },
    { _ ("This day"), 0.26, LB_ALIGN_END },
    { _ ("To date"), 0.28, LB_ALIGN_END },
  };
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);
  const double width = TOTALS_SHARE * width_of (report);
  add_totals (report, cells);
  flow->y += 6;
  const double start = flow->y;
  show_table (report, columns, G_N_ELEMENTS (columns), width, cells);
  /* On the first page nothing can have broken off: a title and thirteen rows fit any sheet. */
  show_plan (report, flow->left + width + PLAN_GAP, start, width_of (report) - width - PLAN_GAP,
             flow->y - start);
  g_autofree char *out = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u of %u pile is out.",
                                                       "%u of %u piles are out.",
                                                       report->fold->n_piles),
                                          report->work->pulled_so_far, report->fold->n_piles);
  flow->y += 3;
  lb_page_flow_text (flow, &PLAIN, out);
}

static char *
done_text (const LbPileWork *at)
{
  GString *const text = g_string_new (NULL);
  for (LbStep step = 0; step < LB_N_STEPS; step++) {
    if (!(at->steps & LB_STEP_BIT (step)))
      continue;
    g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "",
                            g_dgettext (GETTEXT_PACKAGE, lb_step_name (step)));
  }
  if (at->is_drawn)
    g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", _ ("drawn whole"));
  if (at->is_broken)
    g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", _ ("broke: stub left"));
  return g_string_free (text, FALSE);
}

static char *
burned_text (const LbPileWork *at)
{
  if (at->n_bars == 0)
    return g_strdup ("");
  if (at->bars == 0)
    return count (at->n_bars);
  g_autofree char *numbers = lb_bar_numbers_text (at->bars);
  /* Translators: how many bars were burned, and which: “3 (1, 2, 5)”. */
  return g_strdup_printf (C_ ("bars burned", "%u (%s)"), at->n_bars, numbers);
}

static void
show_piles (Report *report)
{
  const LbPageColumn columns[] = {
    { _ ("Pile"), 0.1, LB_ALIGN_START },         { _ ("Done"), 0.29, LB_ALIGN_START },
    { _ ("Bars burned"), 0.16, LB_ALIGN_START }, { _ ("Trigger"), 0.09, LB_ALIGN_END },
    { _ ("Rods"), 0.07, LB_ALIGN_END },          { _ ("Oxygen"), 0.1, LB_ALIGN_END },
    { _ ("Notes"), 0.19, LB_ALIGN_START },
  };
  lb_page_flow_section (&report->flow, _ ("Work by pile"));
  if (report->work->piles->len == 0) {
    show_none (report);
    return;
  }
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < report->work->piles->len; i++) {
    const LbPileWork *const at = &g_array_index (report->work->piles, LbPileWork, i);
    take_cell (cells,
               g_strdup (at->pile >= 0 ? report->fold->piles[at->pile].mark : _ ("no pile")));
    take_cell (cells, done_text (at));
    take_cell (cells, burned_text (at));
    take_cell (cells, say_some (report, LB_QUANTITY_TIME, at->trigger_s));
    take_cell (cells, say_some (report, LB_QUANTITY_COUNT, at->rods));
    take_cell (cells, say_some (report, LB_QUANTITY_GAS, at->oxygen_m3));
    take_cell (cells, g_strdup (at->notes->str));
  }
  show_table (report, columns, G_N_ELEMENTS (columns), width_of (report), cells);
}

/* Of the limit; alone where there is none to compare it with. */
static char *
bottom_time_text (const Report *report, const LbDiveAccount *account)
{
  g_autofree char *compared = lb_dive_compared_text (account);
  if (lb_dive_is_compared (account) || isnan (account->bottom_s))
    return g_steal_pointer (&compared);
  g_autofree char *bottom = say (report, LB_QUANTITY_TIME, account->bottom_s);
  return g_strdup_printf ("%s, %s", bottom, compared);
}

/* What the dive is compared with leaves open, after the note that was written to it. */
static char *
dive_note_text (const LbDiveAccount *account)
{
  const char *const more = lb_dive_compared_note (account);
  const char *const note = account->dive->note;

  if (more == NULL)
    return g_strdup (note);
  return note[0] != '\0' ? g_strdup_printf ("%s; %s", note, more) : g_strdup (more);
}

static void
add_dive (const Report *report, GPtrArray *cells, const LbDiveAccount *account)
{
  const LbEntry *const dive = account->dive;
  take_cell (cells, g_strdup (dive->what));
  take_cell (cells, g_strdup (dive->pile >= 0 ? report->fold->piles[dive->pile].mark : ""));
  take_cell (cells, say (report, LB_QUANTITY_LENGTH, dive->amount));
  take_cell (cells, lb_clock_text (dive->start_us));
  take_cell (cells, lb_clock_text (dive->end_us));
  take_cell (cells, lb_clock_text (dive->up_us));
  take_cell (cells, bottom_time_text (report, account));
  take_cell (cells, dive_note_text (account));
}

/* Gaps before each dive, as they stand; a day on which nobody ticked anything is one line. */
static void
show_checks (Report *report)
{
  gboolean has_any = FALSE;
  for (guint i = 0; i < report->dives->len; i++)
    has_any = has_any || g_array_index (report->dives, LbDiveAccount, i).checks->len > 0;
  report->flow.y += 4;
  if (!has_any) {
    lb_page_flow_text (&report->flow, &PLAIN,
                       _ ("No checks were ticked before the dives of this day."));
    return;
  }
  for (guint i = 0; i < report->dives->len; i++) {
    const LbDiveAccount *const account = &g_array_index (report->dives, LbDiveAccount, i);
    const LbEntry *const dive = account->dive;
    g_autofree char *clock = lb_clock_text (dive->start_us);
    g_autofree char *checks = dive->pile >= 0 ? lb_checks_text (report->fold, account->checks, 0)
                                              : g_strdup (_ ("no pile is on record, so no checks"));
    /* Translators: diver, time of day, and what was ticked before that dive. */
    g_autofree char *line = g_strdup_printf (_ ("%s, %s: %s"), dive->what, clock, checks);
    lb_page_flow_text (&report->flow, &PLAIN, line);
  }
}

static void
show_dives (Report *report)
{
  const LbPageColumn columns[] = {
    { _ ("Diver"), 0.12, LB_ALIGN_START },       { _ ("Pile"), 0.09, LB_ALIGN_START },
    { _ ("Depth"), 0.08, LB_ALIGN_END },         { _ ("Left surface"), 0.09, LB_ALIGN_START },
    { _ ("Left bottom"), 0.09, LB_ALIGN_START }, { _ ("At surface"), 0.09, LB_ALIGN_START },
    { _ ("Bottom time"), 0.22, LB_ALIGN_START }, { _ ("Notes"), 0.22, LB_ALIGN_START },
  };
  lb_page_flow_section (&report->flow, _ ("Dives"));
  if (report->dives->len == 0) {
    show_none (report);
    return;
  }
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < report->dives->len; i++)
    add_dive (report, cells, &g_array_index (report->dives, LbDiveAccount, i));
  show_table (report, columns, G_N_ELEMENTS (columns), width_of (report), cells);
  const LbPageStyle small = { .size = 7.5, .ink = LB_INK_DIM_TEXT };
  report->flow.y += 2;
  lb_page_flow_text (&report->flow, &small,
                     report->fold->has_own_table
                       ? _ ("Bottom time, with what earlier dives count, of the limit by the "
                            "supervisor’s own table at the corrected pneumo depth. The diving "
                            "supervisor’s word stands above it.")
                       : _ ("Bottom time, with what earlier dives count, of the limit by the U.S. "
                            "Navy air table at the corrected pneumo depth. The diving supervisor’s "
                            "own table and word stand above it."));
  show_checks (report);
}

/* Delays or gear faults: @what_title says what each is put down to. */
static void
show_lost (Report *report, const char *section, const char *what_title, GArray *all)
{
  const LbPageColumn columns[] = {
    { what_title, 0.3, LB_ALIGN_START },
    { _ ("Times"), 0.08, LB_ALIGN_END },
    { _ ("Time lost"), 0.14, LB_ALIGN_END },
    { _ ("Notes"), 0.48, LB_ALIGN_START },
  };
  lb_page_flow_section (&report->flow, section);
  if (all->len == 0) {
    show_none (report);
    return;
  }
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < all->len; i++) {
    const LbLost *const lost = &g_array_index (all, LbLost, i);
    take_cell (cells, g_strdup (lost->what[0] != '\0' ? lost->what : _ ("not said")));
    take_cell (cells, count (lost->n_times));
    take_cell (cells, say (report, LB_QUANTITY_TIME, lost->lost_s));
    take_cell (cells, g_strdup (lost->notes->str));
  }
  show_table (report, columns, G_N_ELEMENTS (columns), width_of (report), cells);
}

/* One line an entry, in its own words. */
static void
show_lines (Report *report, const char *section, GPtrArray *entries)
{
  lb_page_flow_section (&report->flow, section);
  if (entries->len == 0)
    show_none (report);
  for (guint i = 0; i < entries->len; i++) {
    g_autofree char *text = lb_entry_text (&report->flow.pen.voice, report->ledger, report->fold,
                                           g_ptr_array_index (entries, i));
    lb_page_flow_text (&report->flow, &PLAIN, text);
  }
}

static void
show_signatures (Report *report)
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
    const double width = 0.66 * width_of (report);
    lb_page_pen_blank (&flow->pen, flow->left, flow->y, width, who[i]);
    lb_page_pen_blank (&flow->pen, flow->left + width + PLAN_GAP, flow->y,
                       width_of (report) - width - PLAN_GAP, _ ("Date"));
    flow->y += line;
  }
}

/* Runs through all of it; @shown is drawn. Returns the number of pages. */
static gsize
run (Report *report, gsize shown, double width_pt, double height_pt)
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
  show_piles (report);
  show_dives (report);
  show_lost (report, _ ("Delays"), _ ("Cause"), report->work->delays);
  show_lost (report, _ ("Gear faults"), _ ("Part"), report->work->faults);
  show_lines (report, _ ("Conditions"), report->work->conditions);
  show_lines (report, _ ("Notes"), report->work->notes);
  show_signatures (report);
  flow->running = NULL;
  return flow->page + 1;
}

/* A day that runs a few lines over is set a little smaller rather than on one more sheet. Leaves
 * @report's pen at the scale and returns the number of pages. */
static gsize
fit (Report *report, double width_pt, double height_pt)
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

gsize
lb_day_report_n_pages (const LbVoice *voice,
                       const LbLedger *ledger,
                       const LbFold *fold,
                       const GArray *dives,
                       guint32 day,
                       double width_pt,
                       double height_pt)
{
  g_autoptr (LbDayWork) work = lb_day_work_new (voice, ledger, fold, day);
  Report report = { .ledger = ledger, .fold = fold, .work = work, .dives = dives, .day = day };
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
                    const LbLedger *ledger,
                    const LbFold *fold,
                    const GArray *dives,
                    guint32 day,
                    gsize page,
                    double width_pt,
                    double height_pt)
{
  g_autoptr (LbDayWork) work = lb_day_work_new (voice, ledger, fold, day);
  Report report = { .ledger = ledger, .fold = fold, .work = work, .dives = dives, .day = day };
  lb_page_pen_init_drawing (&report.flow.pen, cr, voice);
  lb_ink_set (cr, report.flow.pen.palette, LB_INK_PAPER);
  cairo_rectangle (cr, 0, 0, width_pt, height_pt);
  cairo_fill (cr);
  const gsize n_pages = fit (&report, width_pt, height_pt);
  run (&report, page, width_pt, height_pt);
  report.flow.pen.is_drawing = TRUE;
  show_page_number (&report.flow.pen, day, page, n_pages, width_pt, height_pt);
  lb_page_pen_clear (&report.flow.pen);
}
