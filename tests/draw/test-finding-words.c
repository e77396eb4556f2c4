/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What does not fit together, in words. */
#include "draw/finding-words.h"
#include "sample-job.h"

#include <locale.h>
#include <string.h>

#define MINUTE 60.0

typedef struct
{
  LbLedger *ledger;
  LbFold *fold;
  const LbEntry *dives[2];
} Sample;

static void
begin (Sample *sample)
{
  LbEntry dive = { SAMPLE_ENTRY (LB_ENTRY_DIVE, 1), .what = "diver 1", .amount = 9,
                   .start_us = sample_time_us (1, 9, 30) };

  sample->ledger = sample_job_new (2);
  sample_job_add (sample->ledger, &dive);
  dive.start_us = sample_time_us (1, 10, 5);
  sample_job_add (sample->ledger, &dive);
  sample->fold = lb_fold_new (sample->ledger, G_MAXINT64);
  for (guint i = 0; i < 2; i++)
    sample->dives[i] = lb_ledger_entry (sample->ledger, sample->ledger->entries->len - 2 + i);
}

static void
end (Sample *sample)
{
  lb_fold_free (sample->fold);
  lb_ledger_free (sample->ledger);
}

static void
assert_text (const Sample *sample, const LbFinding *finding, const char *expected)
{
  g_autofree char *mark = g_strdup (sample->fold->piles[0].mark);
  g_autofree char *text = lb_finding_text (&LB_VOICE_PLAIN, sample->ledger, sample->fold, finding);
  g_autofree char *whole = g_strconcat (finding->pile >= 0 ? mark : "", expected, NULL);

  g_assert_cmpstr (text, ==, whole);
}

static void
test_piles (void)
{
  const LbEntry mudlines[] = {
    { .kind = LB_ENTRY_FACT, .shift = -1, .what = "mudline", .note = "-9", .who = "crew 1" },
    { .kind = LB_ENTRY_FACT, .shift = -1, .what = "mudline", .note = "-9.5", .who = "" },
  };
  Sample sample;

  begin (&sample);
  assert_text (&sample, &(LbFinding){ .kind = LB_FINDING_BARS_LEFT, .n_bars = 3 },
               " is said to be severed, but 3 bars are left.");
  assert_text (
    &sample,
    &(LbFinding){ .kind = LB_FINDING_SAID_OTHERWISE, .entries = { &mudlines[0], &mudlines[1] } },
    ": two crews said “Mudline elevation set to -29.5 ft” (crew 1) and “Mudline elevation set to -31.2 ft” without knowing "
    "of each other. The last one counts.");
  assert_text (&sample, &(LbFinding){ .kind = LB_FINDING_PULLED_UNCUT },
               " was pulled, but neither severed nor drawn whole.");
  assert_text (&sample,
               &(LbFinding){ .kind = LB_FINDING_NOT_RIGGED, .n_bars = 5, .n_bars_most = 4 },
               ": 5 bars burned, and no hook on record by then. The plan asks for it "
               "after 4 bars.");
  assert_text (&sample, &(LbFinding){ .kind = LB_FINDING_NOT_RIGGED, .n_bars = 1 },
               ": 1 bar burned, and no hook on record by then. The plan asks for it "
               "before the first bar.");
  assert_text (&sample,
               &(LbFinding){ .kind = LB_FINDING_MORE_BARS, .n_bars = 10, .n_bars_most = 8 },
               ": 10 bars burned, and it has 8.");
  assert_text (&sample, &(LbFinding){ .kind = LB_FINDING_BARS_TWICE, .bars = 0x17 },
               ": bars 1–3, 5 are burned twice in this shift.");
  assert_text (&sample, &(LbFinding){ .kind = LB_FINDING_GONE_AND_BURNED, .bars = 0x01 },
               ": bar 1 is said to be found gone, and to be burned.");
  assert_text (&sample,
               &(LbFinding){ .kind = LB_FINDING_TWO_CREWS,
                             .entries = { sample.dives[0], sample.dives[1] },
                             .steps = LB_STEP_BIT (LB_STEP_SEVERED),
                             .bars = 0x07 },
               ": also on record in the shift of Wed 15 Jul 2026, day: severed, bars 1–3.");
  end (&sample);
}

static void
test_dives (void)
{
  Sample sample;
  LbFinding finding = { .pile = -1, .time_s = 12 * MINUTE, .most_s = 10 * MINUTE };

  begin (&sample);
  finding.entries[0] = sample.dives[0];
  finding.entries[1] = sample.dives[1];
  finding.kind = LB_FINDING_DIVES_OVERLAP;
  assert_text (&sample, &finding,
               "diver 1 is on two dives at once: those of 09:30 and 10:05 overlap by 12 min.");
  finding.kind = LB_FINDING_PAST_LIMIT;
  assert_text (&sample, &finding,
               "diver 1, 09:30: bottom time 12 min, and 10 min were open without stops.");
  finding.kind = LB_FINDING_OUTSIDE_HOURS;
  assert_text (&sample, &finding,
               "diver 1, 09:30: the dive lies outside the shift’s hours by 12 min.");
  end (&sample);
}

static void
test_shifts (void)
{
  Sample sample;
  LbFinding finding = { .pile = -1, .time_s = 12 * MINUTE, .most_s = 10 * MINUTE };

  begin (&sample);
  finding.kind = LB_FINDING_NO_DIVE;
  assert_text (&sample, &finding, "12 min of burning under water, and no dive.");
  finding.kind = LB_FINDING_BURNED_LONGER;
  assert_text (&sample, &finding, "12 min of burning under water, and only 10 min of bottom time.");
  finding.kind = LB_FINDING_NO_HOURS;
  assert_text (&sample, &finding, "12 min lost, and the shift’s hours are not said.");
  finding.kind = LB_FINDING_LOST_LONGER;
  assert_text (&sample, &finding, "12 min lost, and the shift was 10 min long.");
  end (&sample);
}

/* Every kind says something, and what to do. */
static void
test_all (void)
{
  Sample sample;

  begin (&sample);
  for (int kind = 0; kind < LB_N_FINDING_KINDS; kind++) {
    const LbFinding finding = { .kind = (LbFindingKind) kind,
                                .entries = { sample.dives[0], sample.dives[1] },
                                .gaps = 1 << LB_GAP_WEATHER };
    g_autofree char *text = lb_finding_text (&LB_VOICE_PLAIN, sample.ledger, sample.fold, &finding);

    g_assert_cmpuint (strlen (text), >, 10);
    g_assert_cmpuint (strlen (lb_finding_advice (finding.kind)), >, 10);
  }
  end (&sample);
}

static void
test_answers (void)
{
  const LbEntry by_nobody = { .note = "it was dark", .who = "" };
  const LbEntry by_one = { .note = "it was dark", .who = "DS" };
  LbFinding finding = { .kind = LB_FINDING_NO_DIVE };

  g_assert_null (lb_finding_answer_text (&finding));
  finding.answer = &by_nobody;
  g_autofree char *said = lb_finding_answer_text (&finding);
  g_assert_cmpstr (said, ==, "Answered: it was dark");
  finding.answer = &by_one;
  g_autofree char *said_by = lb_finding_answer_text (&finding);
  g_assert_cmpstr (said_by, ==, "Answered by DS: it was dark");
}

int
main (int argc, char *argv[])
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/finding-words/piles", test_piles);
  g_test_add_func ("/finding-words/dives", test_dives);
  g_test_add_func ("/finding-words/shifts", test_shifts);
  g_test_add_func ("/finding-words/all", test_all);
  g_test_add_func ("/finding-words/answers", test_answers);
  return g_test_run ();
}
