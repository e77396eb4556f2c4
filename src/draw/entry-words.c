/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One ledger entry in words, for a pile's history and the daily report.
 *
 * An entry comes from a file that may have been written elsewhere: every name in it may be
 * unknown, every number missing. What is not understood is shown as it stands, never dropped. */
#include "draw/check-words.h"
#include "draw/plan-words.h"
#include "draw/record-words.h"
#include "draw/voice-text.h"
#include "trade/bottom-time.h"
#include "trade/visibility.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* As many bars in a row as are worth a dash: "4–8", but "4, 5". */
#define RUN_LEAST 3

char *
lb_bar_numbers_text (LbBarSet bars)
{
  GString *const text = g_string_new (NULL);
  guint i = 0;
  while (i < LB_BARS_MAX) {
    if (!(bars & LB_BAR (i))) {
      i++;
      continue;
    }
    guint end = i + 1;
    while (end < LB_BARS_MAX && (bars & LB_BAR (end)))
      end++;
    /* Bars are numbered from 1 for people. */
    if (end - i >= RUN_LEAST) {
      g_string_append_printf (text, "%s%u–%u", text->len > 0 ? ", " : "", i + 1, end);
      i = end;
    } else {
      g_string_append_printf (text, "%s%u", text->len > 0 ? ", " : "", i + 1);
      i++;
    }
  }
  return g_string_free (text, FALSE);
}

static char *
step_text (const LbEntry *entry)
{
  LbStep step;
  if (!lb_step_from_name (entry->what, &step))
    return g_strdup_printf (_ ("Step “%s”, which this version does not know"), entry->what);
  switch (step) {
  case LB_STEP_STANDING:
    return g_strdup (C_ ("entry", "Standing"));
  case LB_STEP_CLEANED:
    return g_strdup (C_ ("entry", "Cleaned"));
  case LB_STEP_SEVERED:
    return g_strdup (C_ ("entry", "Severed"));
  case LB_STEP_RIGGED:
    return g_strdup (C_ ("entry", "Rigged"));
  case LB_STEP_PULLED:
    return g_strdup (C_ ("entry", "Pulled"));
  }
  g_assert_not_reached ();
}

static char *
bars_text (const LbEntry *entry)
{
  const guint n_named = lb_bar_set_count (entry->bars);
  if (n_named > 0) {
    g_autofree char *numbers = lb_bar_numbers_text (entry->bars);
    return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "Bar %s burned", "Bars %s burned", n_named), numbers);
  }
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u bar burned, not said which",
                                       "%u bars burned, not said which", entry->count),
                          entry->count);
}

static char *
gone_text (const LbEntry *entry)
{
  g_autofree char *numbers = lb_bar_numbers_text (entry->bars);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Bar %s found gone", "Bars %s found gone",
                                       lb_bar_set_count (entry->bars)),
                          numbers);
}

static char *
broken_text (const LbVoice *voice, const LbEntry *entry)
{
  if (isnan (entry->amount))
    return g_strdup (_ ("Broke: a stub is left"));
  g_autofree char *head = lb_voice_elevation (voice, entry->amount);
  return g_strdup_printf (_ ("Broke: a stub is left with its head at %s"), head);
}

static char *
rods_text (const LbVoice *voice, const LbEntry *entry)
{
  g_autofree char *rods = lb_voice_number (voice, entry->amount, 1);
  const gulong n = isfinite (entry->amount) ? (gulong) ceil (fabs (entry->amount)) : 0;
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s rod used", "%s rods used", n), rods);
}

double
lb_dive_bottom_time (const LbEntry *dive)
{
  return lb_bottom_time (dive->start_us, dive->end_us);
}

static char *
dive_text (const LbVoice *voice, const LbEntry *entry)
{
  const double bottom_s = lb_dive_bottom_time (entry);
  g_autofree char *depth = isnan (entry->amount)
                             ? g_strdup (_ ("depth not said"))
                             : lb_voice_quantity (voice, LB_QUANTITY_LENGTH, entry->amount);
  const char *const diver = entry->what[0] != '\0' ? entry->what : _ ("diver not said");
  if (isnan (bottom_s))
    return g_strdup_printf (_ ("Dive, %s: %s, bottom time not said"), diver, depth);
  g_autofree char *bottom = lb_voice_quantity (voice, LB_QUANTITY_TIME, bottom_s);
  return g_strdup_printf (_ ("Dive, %s: %s, bottom time %s"), diver, depth, bottom);
}

static char *
delay_text (const LbVoice *voice, const LbEntry *entry)
{
  const char *const cause = entry->what[0] != '\0'
                              ? lb_shift_word_name (LB_WORDS_DELAY, entry->what)
                              : _ ("cause not said");
  if (isnan (entry->amount))
    return g_strdup_printf (_ ("Delay, %s"), cause);
  g_autofree char *lost = lb_voice_quantity (voice, LB_QUANTITY_TIME, entry->amount);
  return g_strdup_printf (_ ("Delay, %s: %s"), cause, lost);
}

static char *
fault_text (const LbVoice *voice, const LbEntry *entry)
{
  const char *const part = entry->what[0] != '\0' ? lb_shift_word_name (LB_WORDS_FAULT, entry->what)
                                                  : _ ("part not said");
  if (isnan (entry->amount))
    return g_strdup_printf (_ ("Gear fault, %s"), part);
  g_autofree char *lost = lb_voice_quantity (voice, LB_QUANTITY_TIME, entry->amount);
  return g_strdup_printf (_ ("Gear fault, %s: %s lost"), part, lost);
}

/* Values are kept in metric; shown in the voice's units where they can be read. */
static char *
value_text (const LbVoice *voice, LbQuantity quantity, const char *kept)
{
  double si;
  if (kept[0] == '\0')
    return g_strdup (_ ("not known"));
  if (quantity == LB_QUANTITY_COUNT ||
      !lb_quantity_from_text (quantity, LB_UNITS_METRIC, kept, &si, NULL))
    return g_strdup (kept);
  return lb_voice_quantity (voice, quantity, si);
}

char *
lb_fact_value_text (const LbVoice *voice, LbFact fact, const char *kept)
{
  LbBarLayout layout;
  if (fact == LB_FACT_BAR_PLACES && lb_bar_layout_from_text (kept, LB_UNITS_METRIC, &layout, NULL))
    return lb_bar_layout_words (voice, &layout);
  if ((fact == LB_FACT_SHAPE || fact == LB_FACT_REMOVAL) && kept[0] != '\0')
    return g_strdup (g_dgettext (GETTEXT_PACKAGE, kept));
  /* A batter is said as 1:k, which is no quantity. */
  return value_text (voice, fact == LB_FACT_BATTER ? LB_QUANTITY_COUNT : lb_fact_quantity (fact),
                     kept);
}

static char *
fact_text (const LbVoice *voice, const LbEntry *entry)
{
  LbFact fact;
  if (!lb_fact_from_name (entry->what, &fact))
    return g_strdup_printf (_ ("“%s” set to “%s”, which this version does not know"), entry->what,
                            entry->note);
  g_autofree char *value = lb_fact_value_text (voice, fact, entry->note);
  return g_strdup_printf (_ ("%s set to %s"), g_dgettext (GETTEXT_PACKAGE, lb_fact_title (fact)),
                          value);
}

/* A number the cut plan rests on: kept in SI, "" for the default again. */
static char *
assumption_text (const LbVoice *voice, LbAssumptionId id, const char *kept)
{
  const char *const title = g_dgettext (GETTEXT_PACKAGE, lb_assumption (id)->title);
  char *end;
  const double si = g_ascii_strtod (kept, &end);
  if (kept[0] == '\0')
    return g_strdup_printf (_ ("%s set back to the default"), title);
  g_autofree char *value = *end == '\0' ? lb_assumed_text (voice, id, si) : g_strdup (kept);
  return g_strdup_printf (_ ("%s set to %s"), title, value);
}

static char *
visibility_text (const char *key)
{
  LbVisibility visibility;

  if (!lb_visibility_from_key (key, &visibility))
    return g_strdup (_ ("Planned for the visibility that was said last"));
  return g_strdup_printf (_ ("Planned for %s"),
                          g_dgettext (GETTEXT_PACKAGE, lb_visibility_name (visibility)));
}

static char *
setting_text (const LbVoice *voice, const LbEntry *entry)
{
  static const char PREFIX[] = "assume.";
  LbAssumptionId id;
  if (g_str_has_prefix (entry->what, PREFIX) &&
      lb_assumption_find (entry->what + strlen (PREFIX), &id))
    return assumption_text (voice, id, entry->note);
  const gboolean is_none = entry->note[0] == '\0';
  if (g_str_equal (entry->what, LB_SETTING_DIVE_TABLE))
    return g_strdup (is_none ? _ ("No-stop table: the U.S. Navy’s")
                             : _ ("No-stop table: the supervisor’s own"));
  if (g_str_equal (entry->what, LB_SETTING_CRANE_CHART))
    return g_strdup (is_none ? _ ("The crane’s chart taken out of the job")
                             : _ ("The crane’s chart entered"));
  if (g_str_equal (entry->what, LB_SETTING_GROUND))
    return g_strdup (is_none ? _ ("The layers of the ground taken out of the job")
                             : _ ("The layers of the ground entered"));
  if (g_str_equal (entry->what, LB_SETTING_VISIBILITY))
    return visibility_text (entry->note);
  if (g_str_equal (entry->what, LB_SETTING_CAUTIONS))
    return g_strdup (entry->note[0] != '\0' ? _ ("Cautions of the crew’s own taken")
                                            : _ ("Cautions of the crew’s own put away"));
  if (g_str_equal (entry->what, LB_SETTING_DELAY_CAUSES))
    return g_strdup (is_none ? _ ("Causes of delay: those built in")
                             : _ ("Causes of delay: the job’s own list"));
  return g_strdup_printf (_ ("Job’s %s set to %s"), entry->what, entry->note);
}

/* The checks of an act, told by its first entry: they were gone through together. */
static char *
checks_text (const LbLedger *ledger, const LbFold *fold, const LbEntry *first)
{
  g_autoptr (GArray) checks = g_array_new (FALSE, FALSE, sizeof (LbCheck));

  /* An act's entries follow each other. */
  for (gint64 seq = first->seq; seq <= ledger->entries->len; seq++) {
    const LbEntry *const entry = lb_ledger_entry_of_seq (ledger, seq);
    const LbCheck check = { .key = entry->what, .is_ticked = entry->amount > 0 };

    if (!g_str_equal (entry->act, first->act))
      break;
    if (entry->kind == LB_ENTRY_CHECK)
      g_array_append_val (checks, check);
  }

  g_autofree char *words = lb_checks_text (fold, checks, 0);
  g_autofree char *clock = lb_clock_text (first->start_us);

  if (first->start_us == 0)
    return g_strdup_printf (_ ("Before the dive: %s"), words);
  /* Translators: time of day at which the diver left the surface. */
  return g_strdup_printf (_ ("Before the dive of %s: %s"), clock, words);
}

gboolean
lb_entry_is_told_before (const LbEntry *entry)
{
  g_return_val_if_fail (entry != NULL, FALSE);

  return entry->kind == LB_ENTRY_CHECK && !g_str_equal (entry->id, entry->act);
}

/* The act's first entry, which gives the act its name; NULL when it is not in the ledger. */
static const LbEntry *
find_act (const LbLedger *ledger, const char *act)
{
  for (guint i = ledger->entries->len; i-- > 0;) {
    const LbEntry *const entry = lb_ledger_entry (ledger, i);
    if (g_str_equal (entry->id, act))
      return entry;
  }
  return NULL;
}

static char *
take_back_text (const LbVoice *voice,
                const LbLedger *ledger,
                const LbFold *fold,
                const LbEntry *entry)
{
  const LbEntry *const taken = find_act (ledger, entry->of);
  if (taken == NULL)
    return g_strdup (_ ("Taken back: an entry that is not in this file"));
  if (taken->kind != LB_ENTRY_TAKE_BACK) {
    g_autofree char *what = lb_entry_text (voice, ledger, fold, taken);
    return g_strdup_printf (_ ("Taken back: %s"), what);
  }
  const LbEntry *const first = find_act (ledger, taken->of);
  if (first == NULL || first->kind == LB_ENTRY_TAKE_BACK)
    return g_strdup (_ ("Take-back undone"));
  g_autofree char *what = lb_entry_text (voice, ledger, fold, first);
  return g_strdup_printf (_ ("Put back: %s"), what);
}

static char *
hours_text (const LbEntry *entry)
{
  g_autofree char *from = lb_clock_text (entry->start_us);
  g_autofree char *to = lb_clock_text (entry->end_us);

  /* Translators: times of day at which the shift began and ended. */
  return g_strdup_printf (_ ("Shift from %s to %s"), from, to);
}

static char *
stock_text (const LbVoice *voice, const LbEntry *entry)
{
  g_autofree char *number = lb_voice_quantity (voice, LB_QUANTITY_COUNT, entry->amount);

  return g_str_equal (entry->what, LB_STOCK_RODS)
           ? g_strdup_printf (_ ("Rods on hand: %s"), number)
           : g_strdup_printf (_ ("Full oxygen cylinders on hand: %s"), number);
}

static char *
delivery_text (const LbVoice *voice, const LbEntry *entry)
{
  g_autofree char *number = lb_voice_quantity (voice, LB_QUANTITY_COUNT, entry->amount);

  return g_str_equal (entry->what, LB_STOCK_RODS)
           ? g_strdup_printf (_ ("Rods that came aboard: %s"), number)
           : g_strdup_printf (_ ("Full oxygen cylinders that came aboard: %s"), number);
}

/* What was corrected is the next entry of its act. */
static char *
correction_text (const LbVoice *voice,
                 const LbLedger *ledger,
                 const LbFold *fold,
                 const LbEntry *entry)
{
  g_autofree char *what = NULL;

  if (entry->seq < ledger->entries->len) {
    const LbEntry *next = lb_ledger_entry_of_seq (ledger, entry->seq + 1);

    if (g_str_equal (next->act, entry->act))
      what = lb_entry_text (voice, ledger, fold, next);
  }
  return g_strdup_printf (_ ("Correction of the signed shift: %s"),
                          what != NULL ? what : _ ("nothing"));
}

/* The kind's own words, without the note. */
static char *
bare_text (const LbVoice *voice, const LbLedger *ledger, const LbFold *fold, const LbEntry *entry)
{
  switch (entry->kind) {
  case LB_ENTRY_STEP:
    return step_text (entry);
  case LB_ENTRY_BARS:
    return bars_text (entry);
  case LB_ENTRY_GONE:
    return gone_text (entry);
  case LB_ENTRY_DRAWN:
    return g_strdup (_ ("Drawn whole, not cut"));
  case LB_ENTRY_BROKEN:
    return broken_text (voice, entry);
  case LB_ENTRY_BURN_TIME: {
    g_autofree char *time = lb_voice_quantity (voice, LB_QUANTITY_TIME, entry->amount);
    return g_strdup_printf (_ ("%s of trigger time"), time);
  }
  case LB_ENTRY_RODS:
    return rods_text (voice, entry);
  case LB_ENTRY_OXYGEN: {
    g_autofree char *gas = lb_voice_quantity (voice, LB_QUANTITY_GAS, entry->amount);
    return g_strdup_printf (_ ("%s of oxygen used"), gas);
  }
  case LB_ENTRY_DIVE:
    return dive_text (voice, entry);
  case LB_ENTRY_DELAY:
    return delay_text (voice, entry);
  case LB_ENTRY_FAULT:
    return fault_text (voice, entry);
  case LB_ENTRY_CONDITION:
    return g_strdup_printf (_ ("%s: %s"), lb_condition_name (entry->what), entry->note);
  case LB_ENTRY_NOTE:
    return g_strdup (entry->note);
  case LB_ENTRY_SET_ASIDE:
    return g_strdup (_ ("Burning set aside from the learned rate"));
  case LB_ENTRY_TAKE_IN:
    return g_strdup (_ ("Burning taken into the learned rate again"));
  case LB_ENTRY_CHECK:
    return checks_text (ledger, fold, entry);
  case LB_ENTRY_HOURS:
    return hours_text (entry);
  case LB_ENTRY_CREW:
    return g_strdup_printf (_ ("%s: %s"), lb_charge_name (entry->what), entry->note);
  case LB_ENTRY_STOCK:
    return stock_text (voice, entry);
  case LB_ENTRY_DELIVERY:
    return delivery_text (voice, entry);
  case LB_ENTRY_DETAIL:
    return g_strdup_printf (_ ("%s: %s"), lb_detail_name (entry->what),
                            lb_detail_value (entry->what, entry->note));
  case LB_ENTRY_ANSWER:
    return g_strdup_printf (_ ("Answered: %s"), entry->note);
  case LB_ENTRY_CORRECTION:
    return correction_text (voice, ledger, fold, entry);
  case LB_ENTRY_SEAL:
    return entry->who[0] != '\0' ? g_strdup_printf (_ ("Shift signed by %s"), entry->who)
                                 : g_strdup (_ ("Shift signed, not said by whom"));
  case LB_ENTRY_FACT:
    return fact_text (voice, entry);
  case LB_ENTRY_SETTING:
    return setting_text (voice, entry);
  case LB_ENTRY_TAKE_BACK:
    return take_back_text (voice, ledger, fold, entry);
  }
  return g_strdup (_ ("An entry of a kind this version does not know"));
}

/* Whether the note is already what bare_text() says. */
static gboolean
note_is_said (LbEntryKind kind)
{
  return kind == LB_ENTRY_CONDITION || kind == LB_ENTRY_NOTE || kind == LB_ENTRY_FACT ||
         kind == LB_ENTRY_SETTING || kind == LB_ENTRY_CREW || kind == LB_ENTRY_DETAIL ||
         kind == LB_ENTRY_ANSWER || kind == LB_ENTRY_SEAL;
}

char *
lb_entry_text (const LbVoice *voice,
               const LbLedger *ledger,
               const LbFold *fold,
               const LbEntry *entry)
{
  char *const bare = bare_text (voice, ledger, fold, entry);
  if (entry->note[0] == '\0' || note_is_said (entry->kind))
    return bare;
  /* Translators: an entry and the note its writer put to it. */
  char *const text = g_strdup_printf (C_ ("entry", "%s (%s)"), bare, entry->note);
  g_free (bare);
  return text;
}
