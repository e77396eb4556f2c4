/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/record-words.h"

#include "draw/plan-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

const char *
lb_condition_name (const char *what)
{
  if (g_str_equal (what, "wind"))
    return C_ ("condition", "Wind");
  if (g_str_equal (what, "sea"))
    return C_ ("condition", "Sea");
  if (g_str_equal (what, "current"))
    return C_ ("condition", "Current");
  if (g_str_equal (what, "visibility"))
    return C_ ("condition", "Visibility");
  if (g_str_equal (what, "water temperature"))
    return C_ ("condition", "Water temperature");
  if (g_str_equal (what, "tide"))
    return C_ ("condition", "Tide");
  return what;
}

typedef struct
{
  const char *key;
  const char *name; /* msgid */
} Name;

static const Name charges[] = {
  { LB_CHARGE_SUPERVISOR, N_ ("Diving supervisor") },
  { LB_CHARGE_IN_CHARGE, N_ ("Person in charge") },
  { LB_CHARGE_CRANE, N_ ("Crane operator") },
  { LB_CHARGE_TENDERS, N_ ("Tenders") },
  { LB_CHARGE_STANDBY, N_ ("Standby diver") },
};

static const Name details[] = {
  { LB_DETAIL_MODE, N_ ("Diving mode") },    { LB_DETAIL_VISIBILITY, N_ ("Visibility at the cut") },
  { LB_DETAIL_WORK, N_ ("Nature of work") }, { LB_DETAIL_BORNE_BY, N_ ("Borne by") },
  { LB_DETAIL_DONE, N_ ("What was done") },  { LB_DETAIL_ALSO_AT, N_ ("Also at") },
};

static const char *
find_name (const Name *names, gsize n, const char *key)
{
  for (gsize i = 0; i < n; i++) {
    if (g_str_equal (names[i].key, key))
      return _ (names[i].name);
  }
  return key;
}

const char *
lb_charge_name (const char *what)
{
  g_return_val_if_fail (what != NULL, NULL);

  return find_name (charges, G_N_ELEMENTS (charges), what);
}

const char *
lb_detail_name (const char *what)
{
  g_return_val_if_fail (what != NULL, NULL);

  return find_name (details, G_N_ELEMENTS (details), what);
}

const char *
lb_shift_word_name (LbShiftWords kind, const char *word)
{
  g_return_val_if_fail (word != NULL, NULL);

  return lb_is_shift_word (kind, word) ? g_dgettext (GETTEXT_PACKAGE, word) : word;
}

const char *
lb_shift_word_from_text (LbShiftWords kind, const char *text)
{
  g_autofree char *typed = NULL;

  g_return_val_if_fail (text != NULL, NULL);

  typed = g_utf8_casefold (text, -1);
  for (const char *const *word = lb_shift_words (kind); *word != NULL; word++) {
    g_autofree char *name = g_utf8_casefold (g_dgettext (GETTEXT_PACKAGE, *word), -1);

    if (g_str_equal (typed, name))
      return *word;
  }
  return text;
}

const char *
lb_detail_value (const char *which, const char *said)
{
  g_return_val_if_fail (which != NULL && said != NULL, NULL);

  if (g_str_equal (which, LB_DETAIL_MODE))
    return lb_shift_word_name (LB_WORDS_DIVE_MODE, said);
  if (g_str_equal (which, LB_DETAIL_BORNE_BY))
    return lb_shift_word_name (LB_WORDS_BEARER, said);
  return said;
}

/* They follow their entry in its act. */
char *
lb_details_text (const LbLedger *ledger, const LbEntry *entry)
{
  g_return_val_if_fail (ledger != NULL && entry != NULL, NULL);

  GString *text = g_string_new (NULL);
  for (gint64 seq = entry->seq + 1; seq <= ledger->entries->len; seq++) {
    const LbEntry *detail = lb_ledger_entry_of_seq (ledger, seq);

    if (detail->kind != LB_ENTRY_DETAIL || !g_str_equal (detail->act, entry->act))
      break;
    g_string_append_printf (text, "%s%s: %s", text->len > 0 ? " · " : "",
                            lb_detail_name (detail->what),
                            lb_detail_value (detail->what, detail->note));
  }
  return g_string_free (text, text->len == 0);
}

/* --- What is missing ---------------------------------------------------------------------- */

static const char *const gaps_names[LB_N_RECORD_GAPS] = {
  [LB_GAP_SUPERVISOR] = N_ ("who was the diving supervisor"),
  [LB_GAP_IN_CHARGE] = N_ ("who was the person in charge"),
  [LB_GAP_TEAM] = N_ ("who tended or stood by"),
  [LB_GAP_WEATHER] = N_ ("wind or sea"),
  [LB_GAP_WATER_TEMPERATURE] = N_ ("water temperature"),
  [LB_GAP_CURRENT] = N_ ("the current"),
  [LB_GAP_MODE] = N_ ("diving mode"),
  [LB_GAP_WORK] = N_ ("nature of work"),
  [LB_GAP_VISIBILITY] = N_ ("the visibility"),
  [LB_GAP_DEPTH] = N_ ("depth"),
  [LB_GAP_TIME] = N_ ("time"),
  [LB_GAP_BOTTOM_TIME] = N_ ("bottom time"),
};

char *
lb_record_gaps_text (const GArray *gaps, const LbEntry *dive)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  g_return_val_if_fail (gaps != NULL, NULL);

  for (guint i = 0; i < gaps->len; i++) {
    const LbRecordGap *gap = &g_array_index (gaps, LbRecordGap, i);

    if (gap->dive == dive)
      g_ptr_array_add (names, (gpointer) g_dgettext (GETTEXT_PACKAGE, gaps_names[gap->kind]));
  }
  if (names->len == 0)
    return NULL;
  g_ptr_array_add (names, NULL);

  g_autofree char *list = g_strjoinv (", ", (char **) names->pdata);

  if (dive != NULL)
    /* Translators: what a dive's record does not say: “depth, nature of work”. */
    return g_strdup_printf (_ ("Not said: %s"), list);
  /* Translators: what a shift's record does not say: “who was the diving supervisor, …”. */
  return g_strdup_printf (
    _ ("The record of a dive must also say: %s (29 CFR 1910.423(d), 46 CFR 197.482)"), list);
}

/* --- What is left ------------------------------------------------------------------------- */

static char *
left_text (const LbVoice *voice, gboolean is_rods, double left)
{
  g_autofree char *number = lb_voice_number (voice, floor (left), 0);
  const gulong n = (gulong) MIN (floor (left), 1e9);

  if (is_rods)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s rod left", "%s rods left", n),
                            number);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s cylinder left", "%s cylinders left", n),
                          number);
}

char *
lb_stock_text (const LbVoice *voice, const char *what, const LbStock *stock)
{
  g_return_val_if_fail (voice != NULL && what != NULL && stock != NULL, NULL);

  const gboolean is_rods = g_str_equal (what, LB_STOCK_RODS);

  if (stock->counted_shift < 0)
    return g_strdup (is_rods ? _ ("Rods were never counted: what is left is not known")
                             : _ ("Cylinders were never counted: what is left is not known"));
  if (isnan (stock->left))
    return g_strdup (_ ("What a cylinder gives is not known: see Rates and Defaults"));
  if (stock->left < 0)
    return g_strdup (is_rods ? _ ("More rods were used than were on hand: count them again")
                             : _ ("More cylinders were used than were on hand: count them again"));

  g_autofree char *left = left_text (voice, is_rods, stock->left);

  if (isnan (stock->shifts_left))
    return g_strdup_printf (_ ("%s; none used yet, so for how long is not known"), left);

  g_autofree char *mean = lb_voice_number (voice, stock->mean, is_rods ? 0 : 1);
  g_autofree char *shifts = lb_voice_number (voice, stock->shifts_left, 1);

  /* Translators: “150 rods left: 4.7 shifts at 32 a shift, the mean of the last 5”. */
  return g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE, "%s: %s shifts at %s a shift, the mean of the last %u",
                 "%s: %s shifts at %s a shift, the mean of the last %u", stock->n_mean),
    left, shifts, mean, stock->n_mean);
}
