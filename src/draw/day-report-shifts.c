/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands about the day's shifts on the daily report: who was in charge, when they worked, who
 * signed and under which seal, what is on hand, and what does not fit together.
 *
 * The seal is printed whole: the paper is what proves that a file was not made anew. */
#include "draw/day-report-private.h"

#include "book/finding.h"
#include "draw/finding-words.h"
#include "draw/plan-words.h"
#include "draw/record-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

static char *
shift_name (const LbShift *shift)
{
  const char *const watch = g_str_equal (shift->watch, "night") ? _ ("Night shift")
                            : g_str_equal (shift->watch, "day") ? _ ("Day shift")
                                                                : shift->watch;

  return shift->who[0] != '\0' ? g_strdup_printf (_ ("%s, opened by %s"), watch, shift->who)
                               : g_strdup (watch);
}

/* Hours and charges, as said last, after the shift's name. */
static void
show_crew (LbReport *report, guint shift)
{
  g_autofree char *name = shift_name (lb_ledger_shift (report->ledger, shift));
  g_autoptr (GString) line = g_string_new (name);
  g_autoptr (GPtrArray) charges = g_ptr_array_new ();
  const LbEntry *hours = NULL;

  for (guint i = 0; i < report->ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (report->ledger, i);

    if (entry->shift != (int) shift || !report->fold->is_alive[i])
      continue;
    if (entry->kind == LB_ENTRY_HOURS)
      hours = entry;
    if (entry->kind != LB_ENTRY_CREW)
      continue;
    for (guint at = 0; at < charges->len; at++) {
      if (g_str_equal (((const LbEntry *) charges->pdata[at])->what, entry->what))
        g_ptr_array_remove_index (charges, at--);
    }
    g_ptr_array_add (charges, (gpointer) entry);
  }
  if (hours != NULL) {
    g_autofree char *from = lb_clock_text (hours->start_us);
    g_autofree char *to = lb_clock_text (hours->end_us);
    g_string_append_printf (line, ", %s–%s", from, to);
  }
  for (guint i = 0; i < charges->len; i++) {
    const LbEntry *charge = charges->pdata[i];

    if (charge->note[0] != '\0')
      g_string_append_printf (line, " · %s: %s", lb_charge_name (charge->what), charge->note);
  }
  lb_report_line (report, line->str);
}

static void
show_signature (LbReport *report, guint shift)
{
  const LbSignature *signature = &report->fold->signatures[shift];
  const LbPageStyle small = { .size = 7.5, .ink = LB_INK_TEXT };

  if (signature->at_us == 0) {
    lb_report_line (report, _ ("Not signed: this is a draft."));
    return;
  }

  g_autofree char *moment = lb_moment_text (signature->at_us);
  g_autofree char *line = g_strdup_printf (_ ("Signed by %s, %s."), signature->who, moment);
  lb_report_line (report, line);

  g_autofree char *rows = lb_report_say (report, LB_QUANTITY_COUNT, (double) signature->n_rows);
  /* Translators: how many rows, and the seal’s 64 digits. */
  g_autofree char *seal = g_strdup_printf (_ ("Seal over %s rows: %.64s"), rows, signature->hash);
  lb_page_flow_text (&report->flow, &small, seal);
}

/* What was corrected after the signature, each with its reason. */
static void
show_corrections (LbReport *report, guint shift)
{
  for (guint i = 0; i < report->ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (report->ledger, i);

    if (entry->kind != LB_ENTRY_CORRECTION || entry->shift != (int) shift ||
        !report->fold->is_alive[i])
      continue;
    g_autofree char *text = lb_entry_text (&report->flow.pen.voice, report->ledger, report->fold,
                                           entry);
    lb_report_line (report, text);
  }
}

void
lb_report_shifts (LbReport *report)
{
  gboolean has_any = FALSE;

  for (guint i = 0; i < report->ledger->shifts->len; i++) {
    if (lb_ledger_shift (report->ledger, i)->day != report->day)
      continue;
    has_any = TRUE;
    show_crew (report, i);
    show_signature (report, i);
    show_corrections (report, i);
  }
  if (!has_any)
    lb_report_line (report, _ ("No shift on this day."));
}

void
lb_report_stocks (LbReport *report)
{
  const LbVoice *voice = &report->flow.pen.voice;
  g_autofree char *rods = lb_stock_text (voice, LB_STOCK_RODS, &report->account->rods);
  g_autofree char *cylinders = lb_stock_text (voice, LB_STOCK_CYLINDERS,
                                              &report->account->cylinders);

  g_autofree char *line = g_strdup_printf ("%s · %s", rods, cylinders);
  lb_report_line (report, line);
}

/* Whether a finding belongs on this day's paper: in a shift of it, or the job's and open. */
static gboolean
is_of_day (const LbReport *report, const LbFinding *finding)
{
  if (finding->shift >= 0)
    return lb_ledger_shift (report->ledger, (guint) finding->shift)->day == report->day;
  return finding->answer == NULL;
}

void
lb_report_findings (LbReport *report)
{
  gboolean has_any = FALSE;

  for (guint i = 0; i < report->account->findings->len; i++) {
    const LbFinding *finding = &g_array_index (report->account->findings, LbFinding, i);

    if (!is_of_day (report, finding))
      continue;
    if (!has_any)
      lb_page_flow_section (&report->flow, _ ("What does not fit together"));
    has_any = TRUE;

    g_autofree char *text = lb_finding_text (&report->flow.pen.voice, report->ledger, report->fold,
                                             finding);
    g_autofree char *answer = lb_finding_answer_text (finding);
    g_autofree char *line = g_strdup_printf ("%s %s", text,
                                             answer != NULL ? answer : _ ("Not answered."));
    lb_report_line (report, line);
  }
}
