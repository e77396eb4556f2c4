/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One sentence a finding, which names what it is about, so that it can be read away from the line it
 * stands under. What to do is a sentence of its own: beside an answered finding it is left out. */
#include "draw/finding-words.h"

#include "draw/plan-words.h"
#include "draw/record-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  const LbVoice *voice;
  const LbLedger *ledger;
  const LbFold *fold;
  const LbFinding *finding;
} Told;

static const char *
mark_of (const Told *told)
{
  return told->fold->piles[told->finding->pile].mark;
}

static char *
time_text (const Told *told, double s)
{
  return lb_voice_quantity (told->voice, LB_QUANTITY_TIME, s);
}

static char *
bars_left_text (const Told *told)
{
  const guint n = told->finding->n_bars;

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "%s is said to be severed, but %u bar is left.",
                                       "%s is said to be severed, but %u bars are left.", n),
                          mark_of (told), n);
}

static char *
not_rigged_text (const Told *told)
{
  const guint n = told->finding->n_bars, n_free = told->finding->n_bars_most;
  g_autofree char *burned = g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE, "%s: %u bar burned, and no hook on record by then.",
                 "%s: %u bars burned, and no hook on record by then.", n),
    mark_of (told), n);
  g_autofree char *planned = NULL;

  if (n_free == 0)
    return g_strdup_printf ("%s %s", burned, _ ("The plan asks for it before the first bar."));
  planned = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "The plan asks for it after %u bar.",
                                          "The plan asks for it after %u bars.", n_free),
                             n_free);
  return g_strdup_printf ("%s %s", burned, planned);
}

static char *
more_bars_text (const Told *told)
{
  const guint n = told->finding->n_bars;

  return g_strdup_printf (
    /* Translators: a pile, bars burned, bars it has. */
    g_dngettext (GETTEXT_PACKAGE, "%s: %u bar burned, and it has %u.",
                 "%s: %u bars burned, and it has %u.", n),
    mark_of (told), n, told->finding->n_bars_most);
}

static char *
same_bars_text (const Told *told)
{
  const guint n = lb_bar_set_count (told->finding->bars);
  g_autofree char *numbers = lb_bar_numbers_text (told->finding->bars);

  if (told->finding->kind == LB_FINDING_BARS_TWICE)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "%s: bar %s is burned twice in this shift.",
                                         "%s: bars %s are burned twice in this shift.", n),
                            mark_of (told), numbers);
  return g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE, "%s: bar %s is said to be found gone, and to be burned.",
                 "%s: bars %s are said to be found gone, and to be burned.", n),
    mark_of (told), numbers);
}

static char *
two_crews_text (const Told *told)
{
  const LbFinding *finding = told->finding;
  const LbShift *other = lb_ledger_shift (told->ledger, (guint) finding->entries[0]->shift);
  g_autofree char *shift = lb_shift_text (other);
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *same = NULL;

  for (int step = 0; step < LB_N_STEPS; step++) {
    if (finding->steps & LB_STEP_BIT (step))
      g_ptr_array_add (parts,
                       g_strdup (g_dgettext (GETTEXT_PACKAGE, lb_step_name ((LbStep) step))));
  }
  if (finding->bars != 0) {
    g_autofree char *numbers = lb_bar_numbers_text (finding->bars);

    g_ptr_array_add (parts, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "bar %s", "bars %s",
                                                          lb_bar_set_count (finding->bars)),
                                             numbers));
  }
  if (finding->n_bars > 0)
    g_ptr_array_add (
      parts, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u bar", "%u bars", finding->n_bars),
                              finding->n_bars));
  g_ptr_array_add (parts, NULL);
  same = g_strjoinv (", ", (char **) parts->pdata);
  /* Translators: a pile, another shift, steps and bars: “G7: also on record in the shift of Tue 14 Jul
   * 2026, day: severed, bars 1–3.” */
  return g_strdup_printf (_ ("%s: also on record in the shift of %s: %s."), mark_of (told), shift,
                          same);
}

static char *
overlap_text (const Told *told)
{
  const LbEntry *const *dives = told->finding->entries;
  g_autofree char *both = time_text (told, told->finding->time_s);
  g_autofree char *first = lb_clock_text (dives[0]->start_us);
  g_autofree char *second = lb_clock_text (dives[1]->start_us);

  /* Translators: a diver, when two dives began, how long they overlap. */
  return g_strdup_printf (_ ("%s is on two dives at once: those of %s and %s overlap by %s."),
                          dives[1]->what, first, second, both);
}

static char *
past_limit_text (const Told *told)
{
  const LbEntry *dive = told->finding->entries[0];
  g_autofree char *left = lb_clock_text (dive->start_us);
  g_autofree char *bottom = time_text (told, told->finding->time_s);
  g_autofree char *open = time_text (told, told->finding->most_s);

  /* Translators: a diver, when the dive began, its bottom time, the bottom time that was open. */
  return g_strdup_printf (_ ("%s, %s: bottom time %s, and %s were open without stops."), dive->what,
                          left, bottom, open);
}

static char *
outside_hours_text (const Told *told)
{
  const LbEntry *dive = told->finding->entries[0];
  g_autofree char *left = lb_clock_text (dive->start_us);
  g_autofree char *outside = time_text (told, told->finding->time_s);

  /* Translators: a diver, when the dive began, how long. */
  return g_strdup_printf (_ ("%s, %s: the dive lies outside the shift’s hours by %s."), dive->what,
                          left, outside);
}

static char *
burned_longer_text (const Told *told)
{
  g_autofree char *burned = time_text (told, told->finding->time_s);
  g_autofree char *bottom = time_text (told, told->finding->most_s);

  if (told->finding->kind == LB_FINDING_NO_DIVE)
    return g_strdup_printf (_ ("%s of burning under water, and no dive."), burned);
  return g_strdup_printf (_ ("%s of burning under water, and only %s of bottom time."), burned,
                          bottom);
}

static char *
lost_longer_text (const Told *told)
{
  g_autofree char *lost = time_text (told, told->finding->time_s);
  g_autofree char *hours = time_text (told, told->finding->most_s);

  if (told->finding->kind == LB_FINDING_NO_HOURS)
    return g_strdup_printf (_ ("%s lost, and the shift’s hours are not said."), lost);
  return g_strdup_printf (_ ("%s lost, and the shift was %s long."), lost, hours);
}

static char *
record_gaps_text (const LbFinding *finding)
{
  g_autoptr (GArray) gaps = g_array_new (FALSE, FALSE, sizeof (LbRecordGap));

  for (int kind = 0; kind < LB_N_RECORD_GAPS; kind++) {
    const LbRecordGap gap = { .kind = (LbRecordGapKind) kind };

    if (finding->gaps & 1u << kind)
      g_array_append_val (gaps, gap);
  }
  return lb_record_gaps_text (gaps, NULL);
}

static char *
after_signing_text (const Told *told)
{
  g_autofree char *entry = lb_entry_text (told->voice, told->ledger, told->fold,
                                          told->finding->entries[0]);

  return g_strdup_printf (_ ("“%s” came into the shift after it was signed."), entry);
}

/* What an entry says, and who said it. */
static char *
said_text (const Told *told, const LbEntry *entry)
{
  g_autofree char *text = lb_entry_text (told->voice, told->ledger, told->fold, entry);

  return *entry->who != '\0' ? g_strdup_printf ("“%s” (%s)", text, entry->who)
                             : g_strdup_printf ("“%s”", text);
}

static char *
otherwise_text (const Told *told)
{
  g_autofree char *other = said_text (told, told->finding->entries[0]);
  g_autofree char *last = said_text (told, told->finding->entries[1]);
  g_autofree char *both = g_strdup_printf (
    /* Translators: what each of them said, in quotation marks. */
    _ ("two crews said %s and %s without knowing of each other. The last one counts."), other,
    last);

  return g_strdup_printf ("%s: %s", told->finding->pile >= 0 ? mark_of (told) : _ ("The job"),
                          both);
}

char *
lb_finding_text (const LbVoice *voice,
                 const LbLedger *ledger,
                 const LbFold *fold,
                 const LbFinding *finding)
{
  g_return_val_if_fail (voice != NULL && ledger != NULL, NULL);
  g_return_val_if_fail (fold != NULL && finding != NULL, NULL);

  const Told told = { .voice = voice, .ledger = ledger, .fold = fold, .finding = finding };

  switch (finding->kind) {
  case LB_FINDING_BARS_LEFT:
    return bars_left_text (&told);
  case LB_FINDING_PULLED_UNCUT:
    return g_strdup_printf (_ ("%s was pulled, but neither severed nor drawn whole."),
                            mark_of (&told));
  case LB_FINDING_NOT_RIGGED:
    return not_rigged_text (&told);
  case LB_FINDING_MORE_BARS:
    return more_bars_text (&told);
  case LB_FINDING_BARS_TWICE:
  case LB_FINDING_GONE_AND_BURNED:
    return same_bars_text (&told);
  case LB_FINDING_TWO_CREWS:
    return two_crews_text (&told);
  case LB_FINDING_DIVES_OVERLAP:
    return overlap_text (&told);
  case LB_FINDING_PAST_LIMIT:
    return past_limit_text (&told);
  case LB_FINDING_OUTSIDE_HOURS:
    return outside_hours_text (&told);
  case LB_FINDING_NO_DIVE:
  case LB_FINDING_BURNED_LONGER:
    return burned_longer_text (&told);
  case LB_FINDING_LOST_LONGER:
  case LB_FINDING_NO_HOURS:
    return lost_longer_text (&told);
  case LB_FINDING_RECORD_GAPS:
    return record_gaps_text (finding);
  case LB_FINDING_AFTER_SIGNING:
    return after_signing_text (&told);
  case LB_FINDING_SAME_MARK:
    return g_strdup_printf (_ ("Two piles are called %s."), mark_of (&told));
  case LB_FINDING_SAID_OTHERWISE:
    return otherwise_text (&told);
  }
  g_return_val_if_reached (NULL);
}

const char *
lb_finding_advice (LbFindingKind kind)
{
  switch (kind) {
  case LB_FINDING_BARS_LEFT:
    return _ ("Record the bars, or take “severed” back.");
  case LB_FINDING_PULLED_UNCUT:
    return _ ("Record how it came out.");
  case LB_FINDING_NOT_RIGGED:
    return _ ("Record the hook in the shift it went on, or say what held the stub.");
  case LB_FINDING_MORE_BARS:
    return _ ("Correct the count, or the pile’s bars.");
  case LB_FINDING_BARS_TWICE:
  case LB_FINDING_GONE_AND_BURNED:
    return _ ("Take the wrong one back.");
  case LB_FINDING_TWO_CREWS:
    return _ ("Ask both crews, and take back what was said twice.");
  case LB_FINDING_DIVES_OVERLAP:
    return _ ("Correct the times of one of them, or who dived.");
  case LB_FINDING_PAST_LIMIT:
    return _ ("Check the depth and the times; the diving supervisor says what was done.");
  case LB_FINDING_OUTSIDE_HOURS:
    return _ ("Correct the times of the dive, or the shift’s hours.");
  case LB_FINDING_NO_DIVE:
    return _ ("Record the dives.");
  case LB_FINDING_BURNED_LONGER:
    return _ ("Correct the minutes at the piles, or the times of the dives.");
  case LB_FINDING_LOST_LONGER:
    return _ ("Correct the minutes lost, or the shift’s hours.");
  case LB_FINDING_NO_HOURS:
    return _ ("Say when the shift began and when it ended.");
  case LB_FINDING_RECORD_GAPS:
    return _ ("Say it at the dives, the crew and the conditions.");
  case LB_FINDING_AFTER_SIGNING:
    return _ ("Correct the shift with a reason, or say why it stands.");
  case LB_FINDING_SAME_MARK:
    return _ ("Give one of them another mark.");
  case LB_FINDING_SAID_OTHERWISE:
    return _ ("Find out which is right, and say it once more.");
  }
  g_return_val_if_reached (NULL);
}

char *
lb_finding_answer_text (const LbFinding *finding)
{
  g_return_val_if_fail (finding != NULL, NULL);

  if (finding->answer == NULL)
    return NULL;
  if (*finding->answer->who != '\0')
    /* Translators: who answered, and what. */
    return g_strdup_printf (_ ("Answered by %s: %s"), finding->answer->who, finding->answer->note);
  return g_strdup_printf (_ ("Answered: %s"), finding->answer->note);
}
