/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Recording from a shell. Each kind of entry is one row of a table: its word, what it wants, and a
 * function of tool/record.h that fills the drafts; all drafts of a command are one act.
 *
 * Invariants: a shift is only opened once the whole command line has been read; what is said on
 * stdout is what the file holds, read back. */
#include "book/clock-text.h"
#include "book/difference.h"
#include "draw/plan-words.h"
#include "tool/command.h"
#include "tool/record.h"

#include <glib/gi18n-lib.h>

static LbRecordOptions said;

static const GOptionEntry options[] = {
  { "day", 0, 0, G_OPTION_ARG_STRING, &said.day, N_ ("The shift’s day; today when not given"),
    N_ ("DATE") },
  { "watch", 0, 0, G_OPTION_ARG_STRING, &said.watch, N_ ("The shift’s watch; day when not given"),
    "day|night" },
  { "who", 0, 0, G_OPTION_ARG_STRING, &said.who, N_ ("Who says so: a role or initials"),
    N_ ("TEXT") },
  { "pile", 0, 0, G_OPTION_ARG_STRING, &said.pile,
    N_ ("The pile that a dive, note or set-aside is about"), N_ ("PILE") },
  { "count", 0, 0, G_OPTION_ARG_INT, &said.count, N_ ("How many bars, when it is not known which"),
    N_ ("N") },
  { "depth", 0, 0, G_OPTION_ARG_STRING, &said.depth, N_ ("A dive’s pneumo depth"), N_ ("LENGTH") },
  { "left-surface", 0, 0, G_OPTION_ARG_STRING, &said.left_surface, N_ ("Time, as 07:10"),
    N_ ("TIME") },
  { "left-bottom", 0, 0, G_OPTION_ARG_STRING, &said.left_bottom, N_ ("Time, as 08:02"),
    N_ ("TIME") },
  { "reached-surface", 0, 0, G_OPTION_ARG_STRING, &said.reached_surface, N_ ("Time, as 08:04"),
    N_ ("TIME") },
  { "mode", 0, 0, G_OPTION_ARG_STRING, &said.mode, N_ ("A dive’s mode, as “surface-supplied air”"),
    N_ ("TEXT") },
  { "visibility", 0, 0, G_OPTION_ARG_STRING, &said.visibility, N_ ("The visibility on a dive"),
    N_ ("TEXT") },
  { "work", 0, 0, G_OPTION_ARG_STRING, &said.work, N_ ("The nature of a dive’s work"),
    N_ ("TEXT") },
  { "rods", 0, 0, G_OPTION_ARG_STRING, &said.rods, N_ ("Rods that a dive used"), N_ ("NUMBER") },
  { "oxygen", 0, 0, G_OPTION_ARG_STRING, &said.oxygen, N_ ("Oxygen that a dive used"),
    N_ ("VOLUME") },
  { "borne-by", 0, 0, G_OPTION_ARG_STRING, &said.borne_by, N_ ("Who bears a delay"), N_ ("TEXT") },
  { "done", 0, 0, G_OPTION_ARG_STRING, &said.done, N_ ("What was done about a gear fault"),
    N_ ("TEXT") },
  { "note", 0, 0, G_OPTION_ARG_STRING, &said.note, N_ ("A remark on a delay or gear fault"),
    N_ ("TEXT") },
  { "stub", 0, 0, G_OPTION_ARG_STRING, &said.stub, N_ ("Elevation of a broken pile’s stub"),
    N_ ("LENGTH") },
  { "correct", 0, 0, G_OPTION_ARG_STRING, &said.correct,
    N_ ("Why a signed shift is changed by this"), N_ ("TEXT") },
  { NULL },
};

typedef struct
{
  const char *word;
  const char *arguments;
  int least, most; /* -1 for any number */
  LbRecordFill fill;
  gboolean is_of_job;    /* belongs to no shift */
  gboolean is_afterward; /* about a shift that is on record */
} Kind;

static const Kind kinds[] = {
  { "step", N_ ("PILE…|\"C3 to C9\" cleaned|severed|rigged|pulled"), 2, -1, lb_record_step },
  { "bars", N_ ("PILE 1,2,5  or  PILE --count N"), 1, 2, lb_record_bars },
  { "gone", N_ ("PILE 1,2,5"), 2, 2, lb_record_gone },
  { "rods", N_ ("NUMBER [PILE]"), 1, 2, lb_record_rods },
  { "oxygen", N_ ("VOLUME [PILE]"), 1, 2, lb_record_oxygen },
  { "burn-time", N_ ("PILE MINUTES"), 2, 2, lb_record_burn_time },
  { "delay", N_ ("CAUSE MINUTES [--borne-by WHO]"), 2, 2, lb_record_delay },
  { "fault", N_ ("PART [MINUTES] [--done TEXT]"), 1, 2, lb_record_fault },
  { "dive",
    N_ (
      "DIVER --depth … --left-surface … --left-bottom … --reached-surface … [--pile PILE] [--mode …] "
      "[--visibility …] [--work …] [--count BARS] [--rods …] [--oxygen …]"),
    1, 1, lb_record_dive },
  { "condition", N_ ("wind|sea|current|visibility|\"water temperature\"|tide TEXT"), 2, 2,
    lb_record_condition },
  { "hours", N_ ("FROM TO"), 2, 2, lb_record_hours },
  { "crew",
    N_ (
      "\"diving supervisor\"|\"person in charge\"|\"crane operator\"|tenders|\"standby diver\" WHO"),
    2, 2, lb_record_crew },
  { "stock", N_ ("rods|cylinders NUMBER"), 2, 2, lb_record_stock },
  { "delivery", N_ ("rods|cylinders NUMBER"), 2, 2, lb_record_delivery },
  { "note", N_ ("TEXT"), 1, 1, lb_record_note },
  { "check", N_ ("PILE KEY…|all"), 2, -1, lb_record_check },
  { "drawn", N_ ("PILE [NOTE]"), 1, 2, lb_record_drawn },
  { "broken", N_ ("PILE [NOTE] --stub ELEVATION"), 1, 2, lb_record_broken },
  { "set-aside", N_ ("REASON [--pile PILE]"), 1, 1, lb_record_set_aside, .is_afterward = TRUE },
  { "take-in", N_ ("[--pile PILE]"), 0, 0, lb_record_take_in, .is_afterward = TRUE },
  { "take-back", "", 0, 0, lb_record_take_back, .is_afterward = TRUE },
  { "redo", "", 0, 0, lb_record_redo, .is_afterward = TRUE },
  { "fact", N_ ("PILE FACT VALUE"), 3, 3, lb_record_fact, TRUE },
  { "setting", N_ ("KEY VALUE"), 2, 2, lb_record_setting, TRUE },
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
  if (lb_book_open_shift (job->book, shift->day, shift->watch, said.who, &shift_id, error)) {
    for (guint i = 0; i < drafts->len; i++)
      g_array_index (drafts, LbDraft, i).shift_id = shift_id;
    if (lb_book_record (job->book, &g_array_index (drafts, LbDraft, 0), drafts->len, out_act,
                        error))
      return lb_book_commit (job->book, error);
  }

  lb_book_roll_back (job->book);
  return FALSE;
}

/* Before what is recorded, why a signed shift is changed. */
static void
add_correction (GArray *drafts)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_CORRECTION);

  draft.who = said.who;
  draft.note = said.correct;
  g_array_prepend_val (drafts, draft);
}

static gboolean
store (const LbRecord *record, const Kind *kind, char **out_act, GError **error)
{
  if (said.correct != NULL && !kind->is_of_job)
    add_correction (record->drafts);
  if (!kind->is_of_job)
    return store_in_shift (record->job, record->drafts, record->shift, out_act, error);
  lb_drafts_know (record->drafts, record->job->ledger, record->job->fold);
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
  const char *watch = said.watch != NULL ? said.watch : "day";
  /* Among those known, for reading times and taking back, without opening it. */
  const int shift = lb_ledger_find_shift_of_day (job->ledger, day, watch);
  const LbShift *known = shift >= 0 ? lb_ledger_shift (job->ledger, (guint) shift) : NULL;
  const LbShift to_open = { .id = "", .day = day, .watch = watch };
  LbRecord record = { .job = job,
                      .options = &said,
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
    g_array_index (drafts, LbDraft, i).who = said.who;
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
  if (said.day != NULL && !lb_tool_read_day (said.day, &day, &error))
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
    "oxygen VOLUME [PILE]; burn-time PILE MINUTES; delay CAUSE MINUTES; fault PART [MINUTES]; dive "
    "DIVER; check PILE KEY…|all [--left-surface TIME]; condition wind|sea|current|visibility|\"water "
    "temperature\"|tide TEXT; hours FROM TO; crew CHARGE WHO; stock rods|cylinders NUMBER; delivery "
    "rods|cylinders NUMBER; note TEXT; drawn PILE [NOTE]; broken PILE [NOTE]; fact PILE FACT VALUE; "
    "setting KEY VALUE; set-aside REASON; take-in; take-back; redo. A count of the stock is of the end "
    "of its shift. Numbers without a unit are in the job’s units."),
  .options = options,
  .least = 2,
  .most = -1,
  .run = run,
};
