/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Recording from a shell. Each kind of entry is one row of a table: its word, what it wants, and a
 * function that fills the drafts; all drafts of a command are one act.
 *
 * Invariants: a shift is only opened once the whole command line has been read; what is said on
 * stdout is what the file holds, read back. */
#include "tool/command.h"

#include "book/burn-history.h"
#include "book/clock-text.h"
#include "book/gesture.h"
#include "book/mark-list.h"
#include "draw/plan-words.h"
#include "tool/record-checks.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *day_option, *watch_option, *who_option, *pile_option;
static char *depth_option, *left_surface_option, *left_bottom_option, *reached_option;
static char *stub_option;
static int count_option;

static const GOptionEntry options[] = {
  { "day", 0, 0, G_OPTION_ARG_STRING, &day_option, N_ ("The shift’s day; today when not given"),
    N_ ("DATE") },
  { "watch", 0, 0, G_OPTION_ARG_STRING, &watch_option, N_ ("The shift’s watch; day when not given"),
    "day|night" },
  { "who", 0, 0, G_OPTION_ARG_STRING, &who_option, N_ ("Who says so: a role or initials"),
    N_ ("TEXT") },
  { "pile", 0, 0, G_OPTION_ARG_STRING, &pile_option,
    N_ ("The pile that a dive, note or set-aside is about"), N_ ("PILE") },
  { "count", 0, 0, G_OPTION_ARG_INT, &count_option,
    N_ ("How many bars, when it is not known which"), N_ ("N") },
  { "depth", 0, 0, G_OPTION_ARG_STRING, &depth_option, N_ ("A dive’s pneumo depth"),
    N_ ("LENGTH") },
  { "left-surface", 0, 0, G_OPTION_ARG_STRING, &left_surface_option, N_ ("Time, as 07:10"),
    N_ ("TIME") },
  { "left-bottom", 0, 0, G_OPTION_ARG_STRING, &left_bottom_option, N_ ("Time, as 08:02"),
    N_ ("TIME") },
  { "reached-surface", 0, 0, G_OPTION_ARG_STRING, &reached_option, N_ ("Time, as 08:04"),
    N_ ("TIME") },
  { "stub", 0, 0, G_OPTION_ARG_STRING, &stub_option, N_ ("Elevation of a broken pile’s stub"),
    N_ ("LENGTH") },
  { NULL },
};

typedef struct
{
  const LbToolJob *job;
  const LbShift *shift;
  GArray *drafts; /* LbDraft */
  GStringChunk *strings;
} Record;

static LbDraft *
add_draft (Record *record, LbEntryKind kind)
{
  const LbDraft draft = LB_DRAFT_INIT (kind);

  g_array_append_val (record->drafts, draft);
  return &g_array_index (record->drafts, LbDraft, record->drafts->len - 1);
}

static gboolean
set_pile (const Record *record, LbDraft *draft, const char *mark, GError **error)
{
  const int pile = lb_tool_find_pile (record->job, mark, error);

  if (pile < 0)
    return FALSE;

  draft->pile_id = record->job->fold->piles[pile].id;
  return TRUE;
}

static gboolean
set_pile_option (const Record *record, LbDraft *draft, GError **error)
{
  return pile_option == NULL || set_pile (record, draft, pile_option, error);
}

static gboolean
set_amount (const Record *record,
            LbDraft *draft,
            LbQuantity quantity,
            const char *text,
            GError **error)
{
  return lb_quantity_from_text (quantity, record->job->fold->units, text, &draft->amount, error);
}

/* --- One function a kind ------------------------------------------------------------------ */

/* What a gesture says may be on record already. */
static gboolean
has_news (const Record *record, GError **error)
{
  if (record->drafts->len > 0)
    return TRUE;
  g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                       _ ("All of that is on record already; nothing was stored"));
  return FALSE;
}

static gboolean
fill_step (Record *record, int n_args, char **args, GError **error)
{
  const char *step_name = args[n_args - 1];
  LbStep step;

  if (!lb_step_from_name (step_name, &step)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
                 _ ("“%s” is no step: write cleaned, severed, rigged or pulled"), step_name);
    return FALSE;
  }
  for (int i = 0; i < n_args - 1; i++) {
    g_autoptr (GArray) piles = lb_mark_list_read (record->job->fold, args[i], error);

    if (piles == NULL)
      return FALSE;
    for (guint at = 0; at < piles->len; at++)
      lb_gesture_step (record->drafts, record->job->fold, g_array_index (piles, guint, at), step);
  }

  return has_news (record, error);
}

/* "1,2,5-8": bars by their numbers. */
static gboolean
read_bars (const char *text, LbBarSet *out_bars, GError **error)
{
  guint8 bars[LB_BARS_MAX];
  gsize n;

  if (!lb_bar_numbers_from_text (text, bars, &n, error))
    return FALSE;
  *out_bars = 0;
  for (gsize i = 0; i < n; i++)
    *out_bars |= LB_BAR (bars[i]);
  return TRUE;
}

static gboolean
fill_bars (Record *record, int n_args, char **args, GError **error)
{
  const LbFold *fold = record->job->fold;
  LbBarSet bars = 0;
  int pile;

  if ((n_args == 2) == (count_option > 0) || count_option < 0) {
    g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE,
                         _ ("Say which bars (1,2,5) or how many (--count 3), and not both"));
    return FALSE;
  }
  pile = lb_tool_find_pile (record->job, args[0], error);
  if (pile < 0 || (n_args == 2 && !read_bars (args[1], &bars, error)))
    return FALSE;
  if (n_args == 2)
    lb_gesture_bars (record->drafts, fold, (guint) pile, bars);
  else
    lb_gesture_bar_count (record->drafts, fold, (guint) pile, (guint) count_option);

  return has_news (record, error);
}

static gboolean
fill_gone (Record *record, int n_args, char **args, GError **error)
{
  const int pile = lb_tool_find_pile (record->job, args[0], error);
  LbBarSet bars = 0;

  if (pile < 0 || !read_bars (args[1], &bars, error))
    return FALSE;
  lb_gesture_gone (record->drafts, record->job->fold, (guint) pile, bars);

  return has_news (record, error);
}

static gboolean
fill_amount (Record *record,
             LbEntryKind kind,
             LbQuantity quantity,
             int n_args,
             char **args,
             GError **error)
{
  LbDraft *draft = add_draft (record, kind);

  return set_amount (record, draft, quantity, args[0], error) &&
         (n_args < 2 || set_pile (record, draft, args[1], error)) &&
         set_pile_option (record, draft, error);
}

static gboolean
fill_rods (Record *record, int n_args, char **args, GError **error)
{
  return fill_amount (record, LB_ENTRY_RODS, LB_QUANTITY_COUNT, n_args, args, error);
}

static gboolean
fill_oxygen (Record *record, int n_args, char **args, GError **error)
{
  return fill_amount (record, LB_ENTRY_OXYGEN, LB_QUANTITY_GAS, n_args, args, error);
}

static gboolean
fill_burn_time (Record *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = add_draft (record, LB_ENTRY_BURN_TIME);

  return set_pile (record, draft, args[0], error) &&
         set_amount (record, draft, LB_QUANTITY_TIME, args[1], error);
}

static gboolean
fill_loss (Record *record, LbEntryKind kind, int n_args, char **args, GError **error)
{
  LbDraft *draft = add_draft (record, kind);

  draft->what = args[0];
  return n_args < 2 || set_amount (record, draft, LB_QUANTITY_TIME, args[1], error);
}

static gboolean
fill_delay (Record *record, int n_args, char **args, GError **error)
{
  return fill_loss (record, LB_ENTRY_DELAY, n_args, args, error);
}

static gboolean
fill_fault (Record *record, int n_args, char **args, GError **error)
{
  return fill_loss (record, LB_ENTRY_FAULT, n_args, args, error);
}

static gboolean
set_time (const Record *record, const char *text, gint64 *out_us, GError **error)
{
  return text == NULL || lb_clock_from_text (record->shift, text, out_us, error);
}

static gboolean
fill_dive (Record *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = add_draft (record, LB_ENTRY_DIVE);

  draft->what = args[0];
  return (depth_option == NULL ||
          set_amount (record, draft, LB_QUANTITY_LENGTH, depth_option, error)) &&
         set_time (record, left_surface_option, &draft->start_us, error) &&
         set_time (record, left_bottom_option, &draft->end_us, error) &&
         set_time (record, reached_option, &draft->up_us, error) &&
         set_pile_option (record, draft, error);
}

static gboolean
fill_condition (Record *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = add_draft (record, LB_ENTRY_CONDITION);

  draft->what = args[0];
  draft->note = args[1];
  return TRUE;
}

static gboolean
fill_note (Record *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = add_draft (record, LB_ENTRY_NOTE);

  draft->note = args[0];
  return set_pile_option (record, draft, error);
}

/* -1 for one that is opened with what is recorded. */
static int
index_of_shift (const Record *record)
{
  const LbLedger *ledger = record->job->ledger;

  for (guint i = 0; i < ledger->shifts->len; i++)
    if (lb_ledger_shift (ledger, i) == record->shift)
      return (int) i;
  return -1;
}

/* @reason NULL to take in again. */
static gboolean
fill_aside (Record *record, const char *reason, GError **error)
{
  const LbLedger *ledger = record->job->ledger;
  const LbFold *fold = record->job->fold;
  g_autoptr (LbBurnHistory) history = lb_burn_history_new (ledger, fold);
  const int pile = pile_option != NULL ? lb_tool_find_pile (record->job, pile_option, error) : -1;

  if (pile_option != NULL && pile < 0)
    return FALSE;
  return lb_burn_history_set_aside (history, ledger, fold, pile, index_of_shift (record), reason,
                                    add_draft (record, LB_ENTRY_SET_ASIDE), error);
}

static gboolean
fill_set_aside (Record *record, int n_args, char **args, GError **error)
{
  return fill_aside (record, args[0], error);
}

static gboolean
fill_take_in (Record *record, int n_args, char **args, GError **error)
{
  return fill_aside (record, NULL, error);
}

static gboolean
fill_drawn (Record *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = add_draft (record, LB_ENTRY_DRAWN);

  draft->note = n_args > 1 ? args[1] : NULL;
  return set_pile (record, draft, args[0], error);
}

static gboolean
fill_broken (Record *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = add_draft (record, LB_ENTRY_BROKEN);

  draft->note = n_args > 1 ? args[1] : NULL;
  return set_pile (record, draft, args[0], error) &&
         (stub_option == NULL ||
          set_amount (record, draft, LB_QUANTITY_LENGTH, stub_option, error));
}

/* A shift of the day before may still be at work in the small hours. */
static gboolean
may_have_next_dive (const Record *record)
{
  return record->shift->day + 1 >= lb_clock_today ();
}

static gboolean
fill_check (Record *record, int n_args, char **args, GError **error)
{
  const int pile = lb_tool_find_pile (record->job, args[0], error);
  gint64 dive_us = 0;

  if (pile < 0 || !set_time (record, left_surface_option, &dive_us, error))
    return FALSE;
  if (dive_us == 0 && !may_have_next_dive (record)) {
    g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE,
                         _ ("The shift is over and has no next dive: say with --left-surface which "
                            "dive the checks were before"));
    return FALSE;
  }
  return lb_record_checks (record->drafts, record->job, index_of_shift (record), (guint) pile,
                           dive_us, n_args - 1, args + 1, error) &&
         has_news (record, error);
}

static gboolean
add_take_back (Record *record, const char *act, const char *nothing, GError **error)
{
  if (act == NULL) {
    g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, nothing);
    return FALSE;
  }

  add_draft (record, LB_ENTRY_TAKE_BACK)->of = act;
  return TRUE;
}

static gboolean
fill_take_back (Record *record, int n_args, char **args, GError **error)
{
  const char *act = lb_fold_next_take_back (record->job->fold, record->job->ledger,
                                            index_of_shift (record));

  return add_take_back (record, act, _ ("The shift has nothing that could be taken back"), error);
}

static gboolean
fill_redo (Record *record, int n_args, char **args, GError **error)
{
  const char *act = lb_fold_next_redo (record->job->fold, record->job->ledger,
                                       index_of_shift (record));

  return add_take_back (record, act, _ ("Nothing was taken back last, so nothing can be redone"),
                        error);
}

static const char *
keep_text (gpointer pool, const char *text)
{
  return g_string_chunk_insert_const (pool, text);
}

/* The file keeps facts in metric, as lb_pile_get() writes them. */
static gboolean
fill_fact (Record *record, int n_args, char **args, GError **error)
{
  LbDraft *draft = add_draft (record, LB_ENTRY_FACT);
  LbFact fact;
  LbPile pile;

  if (!set_pile (record, draft, args[0], error))
    return FALSE;
  if (!lb_fact_from_name (args[1], &fact)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
                 _ ("Piles have no fact called “%s”"), args[1]);
    return FALSE;
  }
  lb_pile_init (&pile);
  if (!lb_pile_set (&pile, fact, args[2], record->job->fold->units, keep_text, record->strings,
                    error))
    return FALSE;

  g_autofree char *metric = lb_pile_get (&pile, fact, LB_UNITS_METRIC);

  draft->what = lb_fact_name (fact);
  draft->note = keep_text (record->strings, metric);
  return TRUE;
}

/* name, place, datum, units and visibility as they are; assumptions in the job's units, kept in SI. */
static gboolean
fill_setting (Record *record, int n_args, char **args, GError **error)
{
  static const char *const texts[] = { "name", "place", "datum", "units", LB_SETTING_VISIBILITY,
                                       NULL };
  LbDraft *draft = add_draft (record, LB_ENTRY_SETTING);
  LbSettingTable table = LB_TABLE_DIVE;
  LbAssumptionId id;
  double si;

  draft->what = args[0];
  draft->note = args[1];
  if (g_strv_contains (texts, args[0]))
    return TRUE;
  if (lb_setting_table_find (args[0], &table)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
                 _ ("“%s” is taken from a file: write “lastbent-tool %s”"), args[0],
                 lb_tool_take_command (table)->name);
    return FALSE;
  }
  if (!lb_assumption_find (args[0], &id)) {
    g_set_error (
      error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
      _ ("“%s” is no setting: it is name, place, datum, units, visibility or an assumption "
         "such as water-level"),
      args[0]);
    return FALSE;
  }

  g_autofree char *key = g_strconcat ("assume.", lb_assumption (id)->key, NULL);

  draft->what = keep_text (record->strings, key);
  if (*args[1] == '\0')
    return TRUE;
  if (!lb_assumption_from_text (id, record->job->fold->units, args[1], &si, error))
    return FALSE;

  g_autofree char *value = lb_number_to_text (si, -1, &LB_NUMBER_PLAIN);

  draft->note = keep_text (record->strings, value);
  return TRUE;
}

typedef struct
{
  const char *word;
  const char *arguments;
  int least, most; /* -1 for any number */
  gboolean (*fill) (Record *record, int n_args, char **args, GError **error);
  gboolean is_of_job;    /* belongs to no shift */
  gboolean is_afterward; /* about a shift that is on record */
} Kind;

static const Kind kinds[] = {
  { "step", N_ ("PILE…|\"C3 to C9\" cleaned|severed|rigged|pulled"), 2, -1, fill_step },
  { "bars", N_ ("PILE 1,2,5  or  PILE --count N"), 1, 2, fill_bars },
  { "gone", N_ ("PILE 1,2,5"), 2, 2, fill_gone },
  { "rods", N_ ("NUMBER [PILE]"), 1, 2, fill_rods },
  { "oxygen", N_ ("VOLUME [PILE]"), 1, 2, fill_oxygen },
  { "burn-time", N_ ("PILE MINUTES"), 2, 2, fill_burn_time },
  { "delay", N_ ("CAUSE MINUTES"), 2, 2, fill_delay },
  { "fault", N_ ("PART [MINUTES]"), 1, 2, fill_fault },
  { "dive", N_ ("DIVER --depth … --left-surface … --left-bottom … --reached-surface …"), 1, 1,
    fill_dive },
  { "condition", N_ ("wind|sea|current|visibility TEXT"), 2, 2, fill_condition },
  { "note", N_ ("TEXT"), 1, 1, fill_note },
  { "check", N_ ("PILE KEY…|all"), 2, -1, fill_check },
  { "drawn", N_ ("PILE [NOTE]"), 1, 2, fill_drawn },
  { "broken", N_ ("PILE [NOTE] --stub ELEVATION"), 1, 2, fill_broken },
  { "set-aside", N_ ("REASON [--pile PILE]"), 1, 1, fill_set_aside, .is_afterward = TRUE },
  { "take-in", N_ ("[--pile PILE]"), 0, 0, fill_take_in, .is_afterward = TRUE },
  { "take-back", "", 0, 0, fill_take_back, .is_afterward = TRUE },
  { "redo", "", 0, 0, fill_redo, .is_afterward = TRUE },
  { "fact", N_ ("PILE FACT VALUE"), 3, 3, fill_fact, TRUE },
  { "setting", N_ ("KEY VALUE"), 2, 2, fill_setting, TRUE },
};

static const Kind *
find_kind (const char *word)
{
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++) {
    if (g_str_equal (kinds[i].word, word))
      return &kinds[i];
  }

  return NULL;
}

static LbExit
misuse_kind (const char *word)
{
  g_autoptr (GString) known = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    g_string_append_printf (known, "%s%s", i > 0 ? ", " : "", kinds[i].word);
  return lb_tool_misuse (_ ("“%s” cannot be recorded: it is one of %s"), word, known->str);
}

/* --- The act ------------------------------------------------------------------------------ */

/* Finds the shift among those known, for reading times and taking back, without opening it. */
static const LbShift *
find_shift (const LbLedger *ledger, guint32 day, const char *watch)
{
  for (guint i = 0; i < ledger->shifts->len; i++) {
    const LbShift *shift = lb_ledger_shift (ledger, i);

    if (shift->day == day && g_str_equal (shift->watch, watch))
      return shift;
  }

  return NULL;
}

/* What the act says now that it is stored: one line an entry. */
static void
say_last_act (const LbToolJob *job, const char *act)
{
  const LbVoice voice = lb_tool_voice (job);

  for (guint i = 0; i < job->ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (job->ledger, i);

    if (!g_str_equal (entry->act, act) || lb_entry_is_told_before (entry))
      continue;

    g_autofree char *text = lb_entry_text (&voice, job->ledger, job->fold, entry);
    const char *mark = entry->pile >= 0 ? job->fold->piles[entry->pile].mark : NULL;

    if (mark != NULL)
      g_print ("%s: %s\n", mark, text);
    else
      g_print ("%s\n", text);
  }
}

/* The shift is opened in the same transaction, so that a refused entry opens none. */
static gboolean
store_in_shift (const LbToolJob *job,
                GArray *drafts,
                const LbShift *shift,
                char **out_act,
                GError **error)
{
  g_autofree char *shift_id = NULL;

  if (!lb_book_begin (job->book, error))
    return FALSE;
  if (lb_book_open_shift (job->book, shift->day, shift->watch, who_option, &shift_id, error)) {
    for (guint i = 0; i < drafts->len; i++)
      g_array_index (drafts, LbDraft, i).shift_id = shift_id;
    if (lb_book_record (job->book, &g_array_index (drafts, LbDraft, 0), drafts->len, out_act,
                        error))
      return lb_book_commit (job->book, error);
  }

  lb_book_roll_back (job->book);
  return FALSE;
}

static gboolean
store (const Record *record, const Kind *kind, char **out_act, GError **error)
{
  if (!kind->is_of_job)
    return store_in_shift (record->job, record->drafts, record->shift, out_act, error);

  return lb_book_record (record->job->book, &g_array_index (record->drafts, LbDraft, 0),
                         record->drafts->len, out_act, error);
}

static LbExit
record_entry (LbToolJob *job, const Kind *kind, guint32 day, int n_args, char **args)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));
  g_autoptr (GStringChunk) strings = g_string_chunk_new (256);
  g_autofree char *act = NULL;
  const char *watch = watch_option != NULL ? watch_option : "day";
  const LbShift *known = find_shift (job->ledger, day, watch);
  const LbShift to_open = { .id = "", .day = day, .watch = watch };
  Record record = { .job = job,
                    .shift = known != NULL ? known : &to_open,
                    .drafts = drafts,
                    .strings = strings };

  if (known == NULL && kind->is_afterward) {
    g_set_error_literal (&error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                         _ ("There is no such shift yet"));
    return lb_tool_refuse (error);
  }
  if (!kind->fill (&record, n_args, args, &error))
    return lb_tool_refuse (error);
  for (guint i = 0; i < drafts->len; i++)
    g_array_index (drafts, LbDraft, i).who = who_option;
  if (!store (&record, kind, &act, &error) || !lb_tool_job_read (job, &error))
    return lb_tool_refuse (error);

  say_last_act (job, act);
  return LB_EXIT_DONE;
}

static LbExit
run (int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (GError) error = NULL;
  const Kind *kind = find_kind (args[1]);
  guint32 day = lb_clock_today ();

  if (kind == NULL)
    return misuse_kind (args[1]);
  if (n_args - 2 < kind->least || (kind->most >= 0 && n_args - 2 > kind->most))
    return lb_tool_misuse (_ ("expected: FILE %s %s"), kind->word,
                           *kind->arguments != '\0' ? _ (kind->arguments) : "");
  if (day_option != NULL && !lb_tool_read_day (day_option, &day, &error))
    return lb_tool_misuse ("%s", error->message);
  if (!lb_tool_job_open (&job, args[0], LB_BOOK_WRITE, &error))
    return lb_tool_refuse (error);

  return record_entry (&job, kind, day, n_args - 2, args + 2);
}

const LbCommand lb_command_record = {
  .name = "record",
  .arguments = N_ ("FILE KIND …"),
  .summary = N_ ("Record what a shift did: steps, bars, rods, dives, delays …"),
  .more = N_ (
    "step PILE… cleaned|severed|rigged|pulled; bars PILE 1,2,5; gone PILE 1,2,5; rods NUMBER [PILE]; "
    "oxygen VOLUME [PILE]; burn-time PILE MINUTES; delay CAUSE MINUTES; fault PART "
    "[MINUTES]; dive DIVER; check PILE KEY…|all [--left-surface TIME]; condition wind|sea|current|visibility TEXT; note TEXT; drawn "
    "PILE [NOTE]; broken PILE [NOTE]; fact PILE FACT VALUE; setting KEY VALUE; set-aside REASON; take-in; take-back; redo. Numbers without a unit are in the "
    "job’s units."),
  .options = options,
  .least = 2,
  .most = -1,
  .run = run,
};
