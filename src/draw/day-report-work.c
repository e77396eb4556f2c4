/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What was done on the day: pile by pile, dive by dive, and the time that was lost. A section that
 * nobody wrote in says so, since an empty one could also mean that a page was lost. Bottom times are
 * compared with the no-stop limit and nothing more. */
#include "draw/day-report-private.h"

#include "draw/check-words.h"
#include "draw/dive-words.h"
#include "draw/plan-words.h"
#include "draw/record-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Empty for nothing: a table of zeros hides what was done. */
static char *
say_some (const LbReport *report, LbQuantity quantity, double si)
{
  return si > 0 ? lb_report_say (report, quantity, si) : g_strdup ("");
}

static char *
count (guint n)
{
  return g_strdup_printf ("%u", n);
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
show_piles (LbReport *report)
{
  const LbPageColumn columns[] = {
    { _ ("Pile"), 0.1, LB_ALIGN_START },         { _ ("Done"), 0.29, LB_ALIGN_START },
    { _ ("Bars burned"), 0.16, LB_ALIGN_START }, { _ ("Trigger"), 0.09, LB_ALIGN_END },
    { _ ("Rods"), 0.07, LB_ALIGN_END },          { _ ("Oxygen"), 0.1, LB_ALIGN_END },
    { _ ("Notes"), 0.19, LB_ALIGN_START },
  };
  lb_page_flow_section (&report->flow, _ ("Work by pile"));
  if (report->work->piles->len == 0) {
    lb_report_none (report);
    return;
  }
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < report->work->piles->len; i++) {
    const LbPileWork *const at = &g_array_index (report->work->piles, LbPileWork, i);
    lb_report_take_cell (
      cells, g_strdup (at->pile >= 0 ? report->fold->piles[at->pile].mark : _ ("no pile")));
    lb_report_take_cell (cells, done_text (at));
    lb_report_take_cell (cells, burned_text (at));
    lb_report_take_cell (cells, say_some (report, LB_QUANTITY_TIME, at->trigger_s));
    lb_report_take_cell (cells, say_some (report, LB_QUANTITY_COUNT, at->rods));
    lb_report_take_cell (cells, say_some (report, LB_QUANTITY_GAS, at->oxygen_m3));
    lb_report_take_cell (cells, g_strdup (at->notes->str));
  }
  lb_report_table (report, columns, G_N_ELEMENTS (columns), lb_report_width (report), cells);
}

/* Of the limit; alone where there is none to compare it with. */
static char *
bottom_time_text (const LbReport *report, const LbDiveAccount *account)
{
  g_autofree char *compared = lb_dive_compared_text (account);
  if (lb_dive_is_compared (account) || isnan (account->bottom_s))
    return g_steal_pointer (&compared);
  g_autofree char *bottom = lb_report_say (report, LB_QUANTITY_TIME, account->bottom_s);
  return g_strdup_printf ("%s, %s", bottom, compared);
}

static void
add_part (GString *text, const char *part)
{
  if (part != NULL && *part != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? "; " : "", part);
}

/* The note that was written to it, what else was said of it, and what its comparison leaves open. */
static char *
dive_note_text (const LbReport *report, const LbDiveAccount *account)
{
  g_autofree char *details = lb_details_text (report->ledger, account->dive);
  GString *text = g_string_new (NULL);

  add_part (text, account->dive->note);
  add_part (text, details);
  add_part (text, lb_dive_compared_note (account));
  return g_string_free (text, FALSE);
}

static void
add_dive (const LbReport *report, GPtrArray *cells, const LbDiveAccount *account)
{
  const LbEntry *const dive = account->dive;
  lb_report_take_cell (cells, g_strdup (dive->what));
  lb_report_take_cell (cells,
                       g_strdup (dive->pile >= 0 ? report->fold->piles[dive->pile].mark : ""));
  lb_report_take_cell (cells, lb_report_say (report, LB_QUANTITY_LENGTH, dive->amount));
  lb_report_take_cell (cells, lb_clock_text (dive->start_us));
  lb_report_take_cell (cells, lb_clock_text (dive->end_us));
  lb_report_take_cell (cells, lb_clock_text (dive->up_us));
  lb_report_take_cell (cells, bottom_time_text (report, account));
  lb_report_take_cell (cells, dive_note_text (report, account));
}

/* Gaps before each dive, as they stand; a day on which nobody ticked anything is one line. */
static void
show_checks (LbReport *report)
{
  gboolean has_any = FALSE;
  for (guint i = 0; i < report->dives->len; i++)
    has_any = has_any || g_array_index (report->dives, LbDiveAccount, i).checks->len > 0;
  report->flow.y += 4;
  if (!has_any) {
    lb_report_line (report, _ ("No checks were ticked before the dives of this day."));
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
    lb_report_line (report, line);
  }
}

static void
show_dives (LbReport *report)
{
  const LbPageColumn columns[] = {
    { _ ("Diver"), 0.12, LB_ALIGN_START },       { _ ("Pile"), 0.09, LB_ALIGN_START },
    { _ ("Depth"), 0.08, LB_ALIGN_END },         { _ ("Left surface"), 0.09, LB_ALIGN_START },
    { _ ("Left bottom"), 0.09, LB_ALIGN_START }, { _ ("At surface"), 0.09, LB_ALIGN_START },
    { _ ("Bottom time"), 0.22, LB_ALIGN_START }, { _ ("Notes"), 0.22, LB_ALIGN_START },
  };
  lb_page_flow_section (&report->flow, _ ("Dives"));
  if (report->dives->len == 0) {
    lb_report_none (report);
    return;
  }
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < report->dives->len; i++)
    add_dive (report, cells, &g_array_index (report->dives, LbDiveAccount, i));
  lb_report_table (report, columns, G_N_ELEMENTS (columns), lb_report_width (report), cells);
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
show_lost (LbReport *report, const char *section, const char *what_title, GArray *all)
{
  const LbPageColumn columns[] = {
    { what_title, 0.3, LB_ALIGN_START },
    { _ ("Times"), 0.08, LB_ALIGN_END },
    { _ ("Time lost"), 0.14, LB_ALIGN_END },
    { _ ("Notes"), 0.48, LB_ALIGN_START },
  };
  lb_page_flow_section (&report->flow, section);
  if (all->len == 0) {
    lb_report_none (report);
    return;
  }
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < all->len; i++) {
    const LbLost *const lost = &g_array_index (all, LbLost, i);
    lb_report_take_cell (cells, g_strdup (lost->what[0] != '\0' ? lost->what : _ ("not said")));
    lb_report_take_cell (cells, count (lost->n_times));
    lb_report_take_cell (cells, lb_report_say (report, LB_QUANTITY_TIME, lost->lost_s));
    lb_report_take_cell (cells, g_strdup (lost->notes->str));
  }
  lb_report_table (report, columns, G_N_ELEMENTS (columns), lb_report_width (report), cells);
}

/* One line an entry, in its own words. */
static void
show_lines (LbReport *report, const char *section, GPtrArray *entries)
{
  lb_page_flow_section (&report->flow, section);
  if (entries->len == 0)
    lb_report_none (report);
  for (guint i = 0; i < entries->len; i++) {
    g_autofree char *text = lb_entry_text (&report->flow.pen.voice, report->ledger, report->fold,
                                           g_ptr_array_index (entries, i));
    lb_report_line (report, text);
  }
}

/* One paragraph: they are short, and the page is. */
static void
show_conditions (LbReport *report)
{
  const GPtrArray *entries = report->work->conditions;
  g_autoptr (GString) line = g_string_new (NULL);

  lb_page_flow_section (&report->flow, _ ("Conditions"));
  if (entries->len == 0)
    lb_report_none (report);
  for (guint i = 0; i < entries->len; i++) {
    g_autofree char *text = lb_entry_text (&report->flow.pen.voice, report->ledger, report->fold,
                                           entries->pdata[i]);
    g_string_append_printf (line, "%s%s", i > 0 ? " · " : "", text);
  }
  if (line->len > 0)
    lb_report_line (report, line->str);
}

void
lb_report_work (LbReport *report)
{
  show_piles (report);
  show_dives (report);
  show_lost (report, _ ("Delays"), _ ("Cause"), report->work->delays);
  show_lost (report, _ ("Gear faults"), _ ("Part"), report->work->faults);
  show_conditions (report);
  show_lines (report, _ ("Notes"), report->work->notes);
}
