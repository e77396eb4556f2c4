/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whether an entry can be true by itself, before the file is asked whether what it names exists.
 *
 * Only what cannot be is refused: a note that is no text, a time before 1900, a step that does
 * not exist. What contradicts the rest of the job (more bars than the pile has, a pile pulled
 * that was never severed) is what somebody says happened: it is stored and the fold flags it. */
#include "book/book-private.h"
#include "book/setting-table.h"

#include "trade/assumption.h"
#include "trade/caution-table.h"
#include "trade/step.h"
#include "trade/visibility.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* A day and night on one dive or burn, a week on one delay: beyond, somebody mistyped. Common
 * sense, no source. */
#define DAY_S  86400.0
#define WEEK_S (7 * DAY_S)

/* Deeper than the deepest table in use, and more than a full trailer of oxygen a day. */
#define DEPTH_MOST_M   300.0
#define OXYGEN_MOST_M3 100000.0
#define RODS_MOST      100000.0
#define STOCK_MOST     1000000.0
#define ELEVATION_MOST 1000.0
#define DIVE_MOST_US   (G_GINT64_CONSTANT (86400) * G_USEC_PER_SEC)
#define BARS_ALL       (((LbBarSet) 1 << LB_BARS_MAX) - 1)

/* What a kind needs and may have. */
typedef struct
{
  gboolean needs_shift, needs_pile, needs_what, needs_note, needs_amount;
  /* Of the amount, where the kind has one. */
  const char *label; /* msgid */
  LbQuantity quantity;
  double least, most;
} KindRule;

static const KindRule rules[LB_N_ENTRY_KINDS] = {
  [LB_ENTRY_STEP] = { .needs_shift = TRUE, .needs_pile = TRUE, .needs_what = TRUE },
  [LB_ENTRY_BARS] = { .needs_shift = TRUE, .needs_pile = TRUE },
  [LB_ENTRY_GONE] = { .needs_shift = TRUE, .needs_pile = TRUE },
  [LB_ENTRY_DRAWN] = { .needs_shift = TRUE, .needs_pile = TRUE },
  [LB_ENTRY_BROKEN] = { .needs_shift = TRUE,
                        .needs_pile = TRUE,
                        .least = -ELEVATION_MOST,
                        .most = ELEVATION_MOST,
                        .label = N_ ("The elevation of the stub"),
                        .quantity = LB_QUANTITY_LENGTH },
  [LB_ENTRY_BURN_TIME] = { .needs_shift = TRUE,
                           .needs_pile = TRUE,
                           .needs_amount = TRUE,
                           .most = DAY_S,
                           .label = N_ ("The trigger time"),
                           .quantity = LB_QUANTITY_TIME },
  [LB_ENTRY_RODS] = { .needs_shift = TRUE,
                      .needs_amount = TRUE,
                      .most = RODS_MOST,
                      .label = N_ ("The number of rods"),
                      .quantity = LB_QUANTITY_COUNT },
  [LB_ENTRY_OXYGEN] = { .needs_shift = TRUE,
                        .needs_amount = TRUE,
                        .most = OXYGEN_MOST_M3,
                        .label = N_ ("The oxygen used"),
                        .quantity = LB_QUANTITY_GAS },
  [LB_ENTRY_DIVE] = { .needs_shift = TRUE,
                      .needs_what = TRUE,
                      .most = DEPTH_MOST_M,
                      .label = N_ ("The depth"),
                      .quantity = LB_QUANTITY_LENGTH },
  [LB_ENTRY_DELAY] = { .needs_shift = TRUE,
                       .needs_what = TRUE,
                       .needs_amount = TRUE,
                       .most = WEEK_S,
                       .label = N_ ("The delay"),
                       .quantity = LB_QUANTITY_TIME },
  [LB_ENTRY_FAULT] = { .needs_shift = TRUE,
                       .needs_what = TRUE,
                       .most = WEEK_S,
                       .label = N_ ("The time lost"),
                       .quantity = LB_QUANTITY_TIME },
  [LB_ENTRY_CONDITION] = { .needs_shift = TRUE, .needs_what = TRUE, .needs_note = TRUE },
  [LB_ENTRY_NOTE] = { .needs_note = TRUE },
  [LB_ENTRY_SET_ASIDE] = { .needs_shift = TRUE, .needs_note = TRUE },
  [LB_ENTRY_TAKE_IN] = { .needs_shift = TRUE },
  [LB_ENTRY_CHECK] = { .needs_shift = TRUE,
                       .needs_pile = TRUE,
                       .needs_what = TRUE,
                       .needs_amount = TRUE,
                       .most = 1,
                       .label = N_ ("The tick"),
                       .quantity = LB_QUANTITY_COUNT },
  [LB_ENTRY_HOURS] = { .needs_shift = TRUE },
  [LB_ENTRY_CREW] = { .needs_shift = TRUE, .needs_what = TRUE },
  [LB_ENTRY_STOCK] = { .needs_shift = TRUE,
                       .needs_what = TRUE,
                       .needs_amount = TRUE,
                       .most = STOCK_MOST,
                       .label = N_ ("The number on hand"),
                       .quantity = LB_QUANTITY_COUNT },
  [LB_ENTRY_DELIVERY] = { .needs_shift = TRUE,
                          .needs_what = TRUE,
                          .needs_amount = TRUE,
                          .most = STOCK_MOST,
                          .label = N_ ("The number that came"),
                          .quantity = LB_QUANTITY_COUNT },
  [LB_ENTRY_DETAIL] = { .needs_shift = TRUE, .needs_what = TRUE, .needs_note = TRUE },
  [LB_ENTRY_ANSWER] = { .needs_what = TRUE, .needs_note = TRUE },
  [LB_ENTRY_CORRECTION] = { .needs_shift = TRUE, .needs_note = TRUE },
  [LB_ENTRY_SEAL] = { .needs_shift = TRUE, .needs_note = TRUE },
  [LB_ENTRY_FACT] = { .needs_pile = TRUE, .needs_what = TRUE },
  [LB_ENTRY_SETTING] = { .needs_what = TRUE },
  [LB_ENTRY_TAKE_BACK] = { 0 },
};

/* Refuses with a sentence. */
static gboolean refuse (GError **error, const char *format, ...) G_GNUC_PRINTF (2, 3);

static gboolean
refuse (GError **error, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_autofree char *sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, sentence);
  return FALSE;
}

/* Whether UTF-8 text is free of control characters, which could make a terminal or a page do what
 * nobody asked for; those that part lines and columns are text. */
gboolean
lb_text_is_plain (const char *text)
{
  for (; *text != '\0'; text = g_utf8_next_char (text)) {
    const gunichar character = g_utf8_get_char (text);

    if (g_unichar_iscntrl (character) && strchr ("\t\n\r", (int) character) == NULL)
      return FALSE;
  }
  return TRUE;
}

/* A text that can be stored: UTF-8, at most @most characters; %NULL counts as "". */
gboolean
lb_text_check (const char *text, glong most, const char *label, GError **error)
{
  if (text == NULL)
    return TRUE;
  if (!g_utf8_validate (text, -1, NULL))
    return refuse (error, _ ("%s is not readable text (it is not UTF-8)"), label);
  if (!lb_text_is_plain (text))
    return refuse (error, _ ("%s has control characters in it; take them out"), label);

  const glong length = g_utf8_strlen (text, -1);
  if (length > most)
    return refuse (error, _ ("%s is too long: %ld characters, at most %ld can be kept"), label,
                   length, most);
  return TRUE;
}

/* The number of a setting: plain digits with a point, nothing after it. */
gboolean
lb_number_from_setting (const char *text, double *out_value)
{
  char *end = NULL;

  errno = 0;
  const double value = g_ascii_strtod (text, &end);
  if (end == text || *end != '\0' || errno != 0 || !isfinite (value))
    return FALSE;
  *out_value = value;
  return TRUE;
}

static gboolean
is_said (const char *text)
{
  if (text == NULL)
    return FALSE;
  for (; *text != '\0'; text = g_utf8_next_char (text)) {
    if (!g_unichar_isspace (g_utf8_get_char (text)))
      return TRUE;
  }
  return FALSE;
}

static const char *
name_of_note (const LbDraft *draft)
{
  LbSettingTable table;

  if (draft->kind == LB_ENTRY_SETTING && draft->what != NULL &&
      lb_setting_table_find (draft->what, &table))
    return _ (lb_setting_table_title (table));
  return _ ("The note");
}

static glong
note_most (const LbDraft *draft)
{
  LbSettingTable table;

  if (draft->kind == LB_ENTRY_SEAL)
    return LB_SEAL_MAX;
  if (draft->kind == LB_ENTRY_SETTING && draft->what != NULL &&
      lb_setting_table_find (draft->what, &table))
    return LB_TABLE_MAX;
  return LB_NOTE_MAX;
}

static gboolean
check_texts (const LbDraft *draft, GError **error)
{
  return lb_text_check (draft->who, LB_SHORT_MAX, _ ("Who says it"), error) &&
         lb_text_check (draft->what, LB_SHORT_MAX, _ ("What it is about"), error) &&
         lb_text_check (draft->note, note_most (draft), name_of_note (draft), error);
}

static gboolean
check_needs (const LbDraft *draft, const KindRule *rule, GError **error)
{
  const char *kind = lb_entry_kind_name (draft->kind);

  if (rule->needs_shift && draft->shift_id == NULL)
    return refuse (error, _ ("“%s” belongs to a shift: open one first"), kind);
  if (rule->needs_pile && draft->pile_id == NULL)
    return refuse (error, _ ("“%s” is about a pile: say which"), kind);
  if (rule->needs_what && !is_said (draft->what))
    return refuse (error, _ ("“%s” does not say what it is about"), kind);
  if (rule->needs_note && !is_said (draft->note))
    return refuse (error, _ ("“%s” has no words in it"), kind);
  return TRUE;
}

static gboolean
check_amount (const LbDraft *draft, const KindRule *rule, GError **error)
{
  if (isnan (draft->amount)) {
    if (rule->needs_amount)
      return refuse (error, _ ("%s is not said"), _ (rule->label));
    return TRUE;
  }
  if (rule->label == NULL)
    return refuse (error, _ ("“%s” takes no amount"), lb_entry_kind_name (draft->kind));
  if (draft->amount < rule->least || draft->amount > rule->most) {
    g_autofree char *amount = lb_quantity_to_both (rule->quantity, draft->amount);
    g_autofree char *least = lb_quantity_to_both (rule->quantity, rule->least);
    g_autofree char *most = lb_quantity_to_both (rule->quantity, rule->most);

    /* Translators: “The depth cannot be 3,000 ft (914 m): it is between …”. */
    return refuse (error, _ ("%s cannot be %s: it is between %s and %s"), _ (rule->label), amount,
                   least, most);
  }
  return TRUE;
}

static gboolean
is_time (gint64 us)
{
  return us >= LB_TIME_LEAST && us <= LB_TIME_MOST;
}

static gboolean
check_times (const LbDraft *draft, GError **error)
{
  const gint64 start = draft->start_us;
  const gint64 end = draft->end_us;
  const gint64 up = draft->up_us;

  if (!is_time (draft->at_us) || !is_time (start) || !is_time (end) || !is_time (up))
    return refuse (error, _ ("A time lies outside the years 1900 to 2200"));
  if (start != 0 && end != 0 && (end < start || end - start > DIVE_MOST_US))
    return refuse (error, _ ("The end does not follow the start within a day"));
  if (up != 0 && ((end != 0 && up < end) || (start != 0 && up < start)))
    return refuse (error, _ ("The surface is reached before the bottom was left"));
  return TRUE;
}

static gboolean
check_bars (const LbDraft *draft, GError **error)
{
  if (draft->kind != LB_ENTRY_BARS && draft->kind != LB_ENTRY_GONE) {
    if (draft->bars != 0 || draft->count != 0)
      return refuse (error, _ ("“%s” takes no bars"), lb_entry_kind_name (draft->kind));
    return TRUE;
  }
  if (draft->kind == LB_ENTRY_GONE && (draft->bars == 0 || draft->count != 0))
    return refuse (error, _ ("Say which bars were found gone"));
  if ((draft->bars == 0) == (draft->count == 0))
    return refuse (error, _ ("Say which bars were burned, or how many, and not both"));
  if ((draft->bars & ~BARS_ALL) != 0 || draft->count > LB_BARS_MAX)
    return refuse (error, _ ("A pile has %d bars at most"), LB_BARS_MAX);
  return TRUE;
}

static const char *
forget_text (gpointer pool, const char *text)
{
  return "";
}

static gboolean
check_fact (const LbDraft *draft, GError **error)
{
  LbFact fact;
  LbPile pile;

  if (!lb_fact_from_name (draft->what, &fact))
    return refuse (error, _ ("Piles have no fact called “%s”"), draft->what);
  lb_pile_init (&pile);

  g_autoptr (GError) reason = NULL;
  const char *value = draft->note != NULL ? draft->note : "";
  if (!lb_pile_set (&pile, fact, value, LB_UNITS_METRIC, forget_text, NULL, &reason))
    return refuse (error, "%s", reason->message);
  if (fact == LB_FACT_MARK && !is_said (value))
    return refuse (error, _ ("A pile needs a mark"));
  return TRUE;
}

static gboolean
check_assumption (const char *key, const char *value, GError **error)
{
  LbAssumptionId id;
  LbAssumptions assumptions;
  double si = 0;

  if (!lb_assumption_find (key, &id))
    return refuse (error, _ ("There is no assumption called “%s”"), key);
  if (*value == '\0')
    return TRUE; /* back to the default */
  if (!lb_number_from_setting (value, &si))
    return refuse (error, _ ("“%s” is not a number"), value);
  lb_assumptions_init (&assumptions);

  g_autoptr (GError) reason = NULL;
  if (!lb_assumptions_set (&assumptions, id, si, &reason))
    return refuse (error, "%s", reason->message);
  return TRUE;
}

static gboolean
check_setting (const LbDraft *draft, GError **error)
{
  static const char *const texts[] = { "name", "place", "datum", "units", LB_SETTING_VISIBILITY,
                                       NULL };
  LbVisibility visibility;
  const char *value = draft->note != NULL ? draft->note : "";
  LbSettingTable table;

  if (g_str_has_prefix (draft->what, "assume."))
    return check_assumption (draft->what + strlen ("assume."), value, error);
  if (lb_setting_table_find (draft->what, &table))
    return lb_setting_table_check (table, value, error);
  if (!g_strv_contains (texts, draft->what))
    return refuse (error, _ ("There is no setting called “%s”"), draft->what);
  if (strcmp (draft->what, "name") == 0 && !is_said (value))
    return refuse (error, _ ("The job needs a name"));
  if (strcmp (draft->what, "units") == 0 && strcmp (value, "us") != 0 &&
      strcmp (value, "metric") != 0)
    return refuse (error, _ ("The units are “us” or “metric”, not “%s”"), value);
  if (strcmp (draft->what, LB_SETTING_VISIBILITY) == 0 && *value != '\0' &&
      !lb_visibility_from_key (value, &visibility))
    return refuse (error,
                   _ ("The visibility to plan for is unknown, none, poor, fair or good, not “%s”"),
                   value);
  return TRUE;
}

static gboolean
check_condition (const LbDraft *draft, GError **error)
{
  static const char *const conditions[] = {
    "wind", "sea", "current", "visibility", "water temperature", "tide", NULL
  };

  if (!g_strv_contains (conditions, draft->what))
    return refuse (error,
                   _ ("“%s” is not wind, sea, current, visibility, water temperature or tide"),
                   draft->what);
  return TRUE;
}

static gboolean
check_hours (const LbDraft *draft, GError **error)
{
  if (draft->start_us == 0 || draft->end_us == 0 || draft->end_us == draft->start_us)
    return refuse (error, _ ("Say when the shift began and when it ended"));
  return TRUE;
}

static gboolean
check_stock (const LbDraft *draft, GError **error)
{
  static const char *const stocks[] = { LB_STOCK_RODS, LB_STOCK_CYLINDERS, NULL };

  if (!g_strv_contains (stocks, draft->what))
    return refuse (error, _ ("“%s” is neither rods nor cylinders"), draft->what);
  return TRUE;
}

/* Any key of the right form: a later version's table has others. */
static gboolean
check_check (const LbDraft *draft, GError **error)
{
  if (!lb_is_caution_key (draft->what))
    return refuse (error, _ ("“%s” is no key of a caution"), draft->what);
  if (draft->amount > 0 && draft->amount < 1)
    return refuse (error, _ ("A check is ticked (1) or left open (0)"));
  return TRUE;
}

static gboolean
check_by_kind (const LbDraft *draft, GError **error)
{
  LbStep step;

  if (draft->kind == LB_ENTRY_STEP && !lb_step_from_name (draft->what, &step))
    return refuse (error, _ ("There is no step called “%s”"), draft->what);
  if (draft->kind == LB_ENTRY_FACT)
    return check_fact (draft, error);
  if (draft->kind == LB_ENTRY_SETTING)
    return check_setting (draft, error);
  if (draft->kind == LB_ENTRY_CONDITION)
    return check_condition (draft, error);
  if (draft->kind == LB_ENTRY_CHECK)
    return check_check (draft, error);
  if (draft->kind == LB_ENTRY_HOURS)
    return check_hours (draft, error);
  if (draft->kind == LB_ENTRY_STOCK || draft->kind == LB_ENTRY_DELIVERY)
    return check_stock (draft, error);
  if ((draft->kind == LB_ENTRY_TAKE_BACK) != (draft->of != NULL && *draft->of != '\0'))
    return refuse (error, _ ("A take-back, and nothing else, names the act it takes back"));
  return TRUE;
}

gboolean
lb_draft_check (const LbDraft *draft, GError **error)
{
  if ((guint) draft->kind >= LB_N_ENTRY_KINDS)
    return refuse (error, _ ("This kind of entry does not exist"));

  const KindRule *rule = &rules[draft->kind];
  return check_texts (draft, error) && check_needs (draft, rule, error) &&
         check_amount (draft, rule, error) && check_times (draft, error) &&
         check_bars (draft, error) && check_by_kind (draft, error);
}

/* The word under which a step or a fact is kept, whatever was typed. */
const char *
lb_draft_what (const LbDraft *draft)
{
  LbStep step;
  LbFact fact;

  if (draft->kind == LB_ENTRY_FACT && lb_fact_from_name (draft->what, &fact))
    return lb_fact_name (fact);
  if (draft->kind == LB_ENTRY_STEP && lb_step_from_name (draft->what, &step))
    return lb_step_name (step);
  return draft->what;
}

LbDraft
lb_draft_of (const LbLedger *ledger, const LbEntry *entry)
{
  return (LbDraft){
    .kind = entry->kind,
    .pile_id = entry->pile >= 0 ? lb_ledger_pile (ledger, (guint) entry->pile)->id : NULL,
    .shift_id = entry->shift >= 0 ? lb_ledger_shift (ledger, (guint) entry->shift)->id : NULL,
    .who = entry->who,
    .what = entry->what,
    .bars = entry->bars,
    .count = entry->count,
    .amount = entry->amount,
    .start_us = entry->start_us,
    .end_us = entry->end_us,
    .up_us = entry->up_us,
    .note = entry->note,
    .of = entry->kind == LB_ENTRY_TAKE_BACK ? entry->of : NULL,
    .at_us = entry->at_us,
  };
}
