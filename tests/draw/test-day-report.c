/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The daily report on paper: all that must be said can be read out of the PDF, nothing is drawn off
 * the sheet, and it is all grey. Worst case on purpose: a day on which every pile was worked. */
#include "book/day-accounts.h"
#include "draw/plan-words.h"
#include "draw/voice-text.h"
#include "page-reader.h"
#include "sample-job.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#define FOOT 0.3048

typedef struct
{
  LbVoice voice;
  const LbLedger *ledger;
  const LbFold *fold;
  guint32 day;
} Sheet;

static void
draw_report (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  const Sheet *const sheet = data;
  g_autoptr (LbDayAccount) account = lb_day_account_new (sheet->ledger, sheet->fold, sheet->day);
  lb_day_report_draw (cr, &sheet->voice, account, page, width, height);
}

static gsize
n_pages_of (const Sheet *sheet, LbPaper paper)
{
  double width, height;
  lb_paper_size (paper, &width, &height);
  g_autoptr (LbDayAccount) account = lb_day_account_new (sheet->ledger, sheet->fold, sheet->day);
  return lb_day_report_n_pages (&sheet->voice, account, width, height);
}

static void
assert_report_on_sheets (Sheet *sheet)
{
  for (LbPaper paper = LB_PAPER_LETTER; paper <= LB_PAPER_A4; paper++) {
    const gsize n_pages = n_pages_of (sheet, paper);
    for (gsize page = 0; page < n_pages; page++) {
      page_assert_on_sheet (draw_report, page, paper, sheet);
      page_assert_grey (draw_report, page, paper, sheet);
    }
  }
}

static void
test_report (void)
{
  g_autoptr (LbLedger) ledger = sample_job_new (3);
  const int shift = 2;
  const LbEntry slip = {
    SAMPLE_ENTRY (LB_ENTRY_NOTE, shift),
    .note = "Written into the wrong shift.",
  };
  LbEntry back = { SAMPLE_ENTRY (LB_ENTRY_TAKE_BACK, shift) };
  back.of = sample_job_add (ledger, &slip);
  sample_job_add (ledger, &back);
  const LbEntry broke = {
    .kind = LB_ENTRY_BROKEN,
    .shift = shift,
    .pile = 9,
    .amount = -6,
  };
  sample_job_add (ledger, &broke);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  Sheet sheet = {
    .voice = LB_VOICE_PLAIN,
    .ledger = ledger,
    .fold = fold,
    .day = lb_ledger_shift (ledger, (guint) shift)->day,
  };
  assert_report_on_sheets (&sheet);
  const gsize n_pages = n_pages_of (&sheet, LB_PAPER_LETTER);
  g_assert_cmpuint (n_pages, <=, 2);
  g_autofree char *text = page_read (draw_report, LB_PAPER_LETTER, n_pages, &sheet);
  if (text == NULL)
    return;

  page_assert_has (text, "Sample Wharf");
  page_assert_has (text, "Thu 16 Jul 2026");
  page_assert_has (text, "2026-07-16");
  page_assert_has (text, "Day shift, opened by superintendent");
  /* The third day's two piles are the fifth and sixth: E1, A2. */
  page_assert_has (text, "E1 cleaned, severed, rigged, pulled 8 (1–8) 9 min");
  page_assert_has (text, "A2 cleaned, severed, rigged, pulled 8 (1–8) 9 min");
  page_assert_has (text, "E2 broke: stub left");
  page_assert_has (text, "Broke: a stub is left with its head at -19.7 ft");
  /* 31 ft: 232 min at 35 ft; 44 ft: 125 min at 45 ft, overrun by ten. */
  page_assert_has (text, "diver 1 31 ft 07:10 08:32 08:34 82 of 232 min");
  page_assert_has (text, "diver 2 44 ft 09:05 11:20 11:22 135 min: PAST the limit of 125");
  page_assert_has (text, "No checks were ticked before the dives of this day.");
  page_assert_has (text, "current 1 45 min waited for slack");
  page_assert_has (text, "collet 1 10 min leak at the O-ring, changed");
  page_assert_has (text, "Wind: 12 kn from the south-west");
  page_assert_has (text, "Barge moved to the next bent at noon.");
  /* Two a day, three days; sixteen bars a day and three of the next. */
  page_assert_has (text, "Piles pulled 2 6");
  page_assert_has (text, "6 of 40 piles are out.");
  page_assert_has (text, "Diving supervisor");
  page_assert_has (text, "Not signed: this is a draft.");
  /* The overrun stands among what does not fit together, and nobody has answered it. */
  page_assert_has (text, "What does not fit together");
  page_assert_has (text, "Not answered.");
  g_assert_false (page_has (text, "wrong shift"));
  g_assert_cmpuint (page_count (text, "None recorded."), ==, 0);
}

/* A dive from two hours up is held against what the first one left, 163 - 85 = 78 min (U.S. Navy
 * Diving Manual, revision 7), and the gaps of each are named. */
static void
test_second_dive (void)
{
  g_autoptr (LbLedger) ledger = sample_job_new (1);
  const LbEntry entries[] = {
    { .kind = LB_ENTRY_CHECK,
      .pile = 0,
      .what = "gloves",
      .amount = 1,
      .start_us = sample_time_us (0, 12, 0) },
    { .kind = LB_ENTRY_CHECK,
      .pile = 0,
      .what = "rig-before",
      .amount = 0,
      .start_us = sample_time_us (0, 12, 0) },
    { .kind = LB_ENTRY_CHECK,
      .pile = 0,
      .what = "of-a-later-table",
      .amount = 0,
      .start_us = sample_time_us (0, 12, 0) },
    { .kind = LB_ENTRY_DIVE,
      .pile = 0,
      .what = "diver 3",
      .amount = 39 * FOOT,
      .start_us = sample_time_us (0, 12, 0),
      .end_us = sample_time_us (0, 13, 40),
      .up_us = sample_time_us (0, 13, 42) },
    { .kind = LB_ENTRY_DIVE,
      .pile = 0,
      .what = "diver 3",
      .amount = 39 * FOOT,
      .start_us = sample_time_us (0, 15, 42),
      .end_us = sample_time_us (0, 16, 42),
      .up_us = sample_time_us (0, 16, 44) },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++)
    sample_job_add (ledger, &entries[i]);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  Sheet sheet = {
    .voice = LB_VOICE_PLAIN,
    .ledger = ledger,
    .fold = fold,
    .day = sample_job_first_day (),
  };
  g_autofree char *text = page_read (draw_report, LB_PAPER_LETTER,
                                     n_pages_of (&sheet, LB_PAPER_LETTER), &sheet);
  if (text == NULL)
    return;
  page_assert_has (text, "100 of 163 min");
  page_assert_has (text, "60 + 85 of 163 min");
  page_assert_has (text, "diver 3, 12:00: 1 of 3 checks ticked; not: Hook tension on before bar …; "
                         "of-a-later-table");
  page_assert_has (text, "diver 3, 15:42: No checks ticked");
  page_assert_has (text, "diver 1, 07:10: no pile is on record, so no checks");
}

static void
test_empty_report (void)
{
  g_autoptr (LbLedger) ledger = sample_job_new (1);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  Sheet sheet = {
    .voice = LB_VOICE_PLAIN,
    .ledger = ledger,
    .fold = fold,
    .day = sample_job_first_day () + 40,
  };
  assert_report_on_sheets (&sheet);
  g_autofree char *text = page_read (draw_report, LB_PAPER_A4, 1, &sheet);
  if (text == NULL)
    return;
  page_assert_has (text, "No shift on this day.");
  g_assert_cmpuint (page_count (text, "None recorded."), ==, 6);
}

/* Every pile of the pier on one day, with a note that would fill pages by itself. */
static void
test_long_report (void)
{
  g_autoptr (LbLedger) ledger = sample_job_new (1);
  g_autofree char *long_note = g_strnfill (3000, 'x');
  for (guint i = 0; i < ledger->piles->len; i++) {
    const LbEntry note = {
      .kind = LB_ENTRY_NOTE,
      .pile = (int) i,
      .note = i == 7 ? long_note : "slow: hard growth, switch wet, rods short, current early",
    };
    sample_job_add (ledger, &note);
    const LbEntry dive = {
      .kind = LB_ENTRY_DIVE,
      .pile = (int) i,
      .what = "diver 3",
      .amount = NAN,
    };
    sample_job_add (ledger, &dive);
  }
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  Sheet sheet = {
    .voice = LB_VOICE_PLAIN,
    .ledger = ledger,
    .fold = fold,
    .day = sample_job_first_day (),
  };
  assert_report_on_sheets (&sheet);
  const gsize n_pages = n_pages_of (&sheet, LB_PAPER_LETTER);
  g_assert_cmpuint (n_pages, >=, 3);
  g_autofree char *text = page_read (draw_report, LB_PAPER_LETTER, n_pages, &sheet);
  if (text == NULL)
    return;
  for (guint i = 0; i < fold->n_piles; i++)
    page_assert_has (text, fold->piles[i].mark);
  g_assert_cmpuint (page_count (text, "slow: hard growth"), ==, fold->n_piles - 1);
  g_assert_cmpuint (page_count (text, "no limit to compare with"), ==, fold->n_piles);
  g_assert_cmpuint (page_count (text, "daily production report, continued"), ==, n_pages - 1);
  for (gsize page = 1; page <= n_pages; page++) {
    g_autofree char *number = g_strdup_printf ("Page %zu of %zu", page, n_pages);
    g_assert_cmpuint (page_count (text, number), ==, 1);
  }
  page_assert_has (text, "xxx…");
}

static void
test_paper (void)
{
  LbPaper paper = LB_PAPER_LETTER;
  double width, height;
  g_assert_true (lb_paper_from_name ("A4", &paper));
  g_assert_cmpint (paper, ==, LB_PAPER_A4);
  lb_paper_size (paper, &width, &height);
  /* 210 by 297 mm */
  g_assert_cmpfloat_with_epsilon (width / 72 * 25.4, 210, 0.01);
  g_assert_cmpfloat_with_epsilon (height / 72 * 25.4, 297, 0.01);
  g_assert_true (lb_paper_from_name ("letter", &paper));
  lb_paper_size (paper, &width, &height);
  g_assert_cmpfloat (width, ==, 8.5 * 72);
  g_assert_cmpfloat (height, ==, 11.0 * 72);
  g_assert_false (lb_paper_from_name ("foolscap", &paper));
  g_assert_cmpint (paper, ==, LB_PAPER_LETTER);
}

int
main (int argc, char *argv[])
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/day-report/paper", test_paper);
  g_test_add_func ("/draw/day-report/day", test_report);
  g_test_add_func ("/draw/day-report/second-dive", test_second_dive);
  g_test_add_func ("/draw/day-report/empty", test_empty_report);
  g_test_add_func ("/draw/day-report/long", test_long_report);
  return g_test_run ();
}
