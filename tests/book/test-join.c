/* SPDX-License-Identifier: GPL-3.0-or-later */
/* That joining ledgers is a union: in whatever order, however often, nothing lost and nothing told
 * apart. Ledgers are random parts of jobs that two crews wrote, each in a copy of its own, taking
 * back and changing facts as they went, with clocks that disagree. */
#include "book-fixture.h"

#include "book/act-links.h"
#include "book/join-private.h"

#include <locale.h>
#include <string.h>

#define N_JOBS       100
#define PAIRS_A_JOB  100
#define ACTS_A_CREW  24
#define N_PILES      4
#define HOUR_US      (G_GINT64_CONSTANT (3600) * G_USEC_PER_SEC)
#define N_TEXT_FACTS 3

/* One random act of a crew that sees its own file alone. */
static void
record_at_random (LbBook *book, GRand *chance, LbLedger *ledger, const char *shift)
{
  static const char *const facts[N_TEXT_FACTS] = { "mudline", "bent", "mark" };
  static const LbEntryKind kinds[] = { LB_ENTRY_STEP,   LB_ENTRY_BARS,     LB_ENTRY_RODS,
                                       LB_ENTRY_BROKEN, LB_ENTRY_FACT,     LB_ENTRY_SETTING,
                                       LB_ENTRY_NOTE,   LB_ENTRY_TAKE_BACK };
  const guint pile = (guint) g_rand_int_range (chance, 0, N_PILES);
  const int number = g_rand_int_range (chance, 1, 9);
  g_autofree char *text = g_strdup_printf ("%d", -number);
  LbDraft draft = LB_DRAFT_INIT (kinds[g_rand_int_range (chance, 0, G_N_ELEMENTS (kinds))]);
  g_autoptr (GError) error = NULL;

  draft.shift_id = draft.kind == LB_ENTRY_FACT || draft.kind == LB_ENTRY_SETTING ? NULL : shift;
  draft.pile_id = draft.kind == LB_ENTRY_SETTING || draft.kind == LB_ENTRY_TAKE_BACK
                    ? NULL
                    : lb_ledger_pile (ledger, pile)->id;
  draft.note = draft.kind == LB_ENTRY_NOTE ? "seen" : "";
  if (draft.kind == LB_ENTRY_STEP)
    draft.what = lb_step_name ((LbStep) g_rand_int_range (chance, 0, LB_N_STEPS));
  else if (draft.kind == LB_ENTRY_BARS)
    draft.bars = LB_BAR (number - 1);
  else if (draft.kind == LB_ENTRY_RODS)
    draft.amount = number;
  else if (draft.kind == LB_ENTRY_BROKEN)
    draft.amount = -number;
  else if (draft.kind == LB_ENTRY_SETTING) {
    draft.what = "place";
    draft.note = text;
  } else if (draft.kind == LB_ENTRY_FACT) {
    draft.what = facts[g_rand_int_range (chance, 0, N_TEXT_FACTS)];
    draft.note = text;
  } else if (draft.kind == LB_ENTRY_TAKE_BACK) {
    const gint64 seq = g_rand_int_range (chance, 1, (int) ledger->entries->len + 1);
    draft.of = lb_ledger_entry_of_seq (ledger, seq)->act;
  }
  /* Two piles with one mark are refused within one file; then nothing was recorded. */
  if (!lb_book_record (book, &draft, 1, NULL, &error))
    g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_true (lb_book_read_on (book, ledger, NULL, &error));
}

static void
let_crew_write (LbBook *book, GRand *chance, gint64 clock_us)
{
  g_autoptr (LbLedger) ledger = fixture_read (book);
  char *shifts[3];

  g_assert_true (lb_book_begin (book, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (shifts); i++)
    shifts[i] = fixture_shift (book, i);
  g_assert_true (lb_book_read_on (book, ledger, NULL, NULL));
  for (int i = 0; i < ACTS_A_CREW; i++) {
    clock_us += g_rand_int_range (chance, 0, 1000) * (HOUR_US / 1000);
    lb_book_set_now (book, clock_us);
    record_at_random (book, chance, ledger, shifts[g_rand_int_range (chance, 0, 3)]);
  }
  g_assert_true (lb_book_commit (book, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (shifts); i++)
    g_free (shifts[i]);
}

/* A job that two crews wrote apart and that was joined. */
static LbLedger *
make_job (GRand *chance)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = fixture_path (folder, "one");
  g_autofree char *other = fixture_path (folder, "other");
  g_autoptr (GError) error = NULL;
  LbBook *book = fixture_book (path);

  fixture_add_piles (book, N_PILES, 8);
  g_assert_true (lb_book_copy_to (book, other, &error));
  LbBook *copy = lb_book_open (other, LB_BOOK_WRITE, &error);
  g_assert_no_error (error);
  let_crew_write (book, chance, FIXTURE_US);
  let_crew_write (copy, chance, FIXTURE_US + g_rand_int_range (chance, -6, 6) * HOUR_US);
  lb_book_close (copy);

  LbLedger *ledger = fixture_read (book);
  LbPacket *packet = lb_packet_open (other, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (lb_book_join (book, ledger, packet, NULL, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  g_assert_true (lb_book_read_on (book, ledger, NULL, &error));
  lb_packet_free (packet);
  lb_book_close (book);
  fixture_remove (folder);
  return ledger;
}

static LbLedger *
join (const LbLedger *one, const LbLedger *other)
{
  const LbLedger *parts[] = { one, other };
  LbLedger *joined = lb_ledger_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (LbJoinPlan) plan = lb_join_plan (joined, parts[i], &error);

    g_assert_no_error (error);
    lb_ledger_join (joined, plan);
  }
  return joined;
}

/* Some acts of a job and what they name, and some shifts. */
static LbLedger *
take_part (const LbLedger *job, GRand *chance)
{
  const guint n = job->entries->len;
  g_auto (LbActLinks) links = { NULL };
  g_autofree guint8 *shifts = g_new0 (guint8, job->shifts->len);
  g_autofree guint8 *entries = g_new0 (guint8, n);
  const double share = g_rand_double (chance);

  lb_act_links_init (&links, job);
  for (guint i = 0; i < n; i++) {
    if (links.act[i] == i)
      entries[i] = g_rand_double (chance) < share;
  }
  for (guint i = n; i-- > 0;) {
    entries[i] = entries[links.act[i]];
    if (entries[i] && links.of[i] != 0)
      entries[links.of[i] - 1] = TRUE;
  }
  for (guint i = 0; i < n; i++) {
    const int shift = lb_ledger_entry_of_seq (job, i + 1)->shift;
    entries[i] = entries[links.act[i]];
    if (shift >= 0 && entries[i])
      shifts[shift] = TRUE;
  }

  const LbJoinChoice choice = { .shifts = shifts, .entries = entries };
  g_autoptr (LbLedger) empty = lb_ledger_new ();
  g_autoptr (LbJoinPlan) plan = lb_join_plan_chosen (empty, job, &choice, NULL);
  LbLedger *part = lb_ledger_new ();
  lb_ledger_join (part, plan);
  return part;
}

static int
compare_lines (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

/* A line a row of the ledger, in whatever order; references by id. */
static GPtrArray *
rows_of (const LbLedger *ledger)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < ledger->piles->len; i++) {
    const LbPile *pile = lb_ledger_pile (ledger, i);
    g_ptr_array_add (lines, g_strdup_printf ("pile %s %s", pile->id, pile->mark));
  }
  for (guint i = 0; i < ledger->shifts->len; i++) {
    const LbShift *shift = lb_ledger_shift (ledger, i);
    g_ptr_array_add (lines, g_strdup_printf ("shift %s %u %s %" G_GINT64_FORMAT, shift->id,
                                             shift->day, shift->watch, shift->opened_us));
  }
  for (guint i = 0; i < ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry_of_seq (ledger, i + 1);
    g_ptr_array_add (
      lines, g_strdup_printf (
               "entry %s %s %" G_GINT64_FORMAT " %s %s %s %s %" G_GUINT64_FORMAT " %g “%s” %s",
               entry->id, entry->act, entry->at_us,
               entry->shift >= 0 ? lb_ledger_shift (ledger, (guint) entry->shift)->id : "-",
               lb_entry_kind_name (entry->kind),
               entry->pile >= 0 ? lb_ledger_pile (ledger, (guint) entry->pile)->id : "-",
               entry->what, (guint64) entry->bars, entry->amount, entry->note, entry->of));
  }
  g_ptr_array_sort (lines, compare_lines);
  return lines;
}

static void
add_totals (GPtrArray *lines, const char *of, const LbTotals *totals)
{
  g_autoptr (GString) line = g_string_new (of);

  for (int step = 0; step < LB_N_STEPS; step++)
    g_string_append_printf (line, " %u", totals->steps[step]);
  g_string_append_printf (line, " %u %a %a %a", totals->bars, totals->rods, totals->delay_s,
                          totals->fault_s);
  g_ptr_array_add (lines, g_strdup (line->str));
}

/* A line for all that the fold makes of a pile, by its id, and for each sum. */
static GPtrArray *
conclusions_of (const LbLedger *ledger)
{
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < fold->n_piles; i++) {
    const LbPileState *state = &fold->states[i];
    g_autofree char *head = lb_pile_get (&fold->piles[i], LB_FACT_HEAD, LB_UNITS_METRIC);
    g_autofree char *mudline = lb_pile_get (&fold->piles[i], LB_FACT_MUDLINE, LB_UNITS_METRIC);
    const int called = lb_fold_find_mark (fold, fold->piles[i].mark);

    g_ptr_array_add (
      lines, g_strdup_printf ("%s %s=%s %s %s %s %x %d %" G_GUINT64_FORMAT " %u %u %x %d",
                              fold->piles[i].id, fold->piles[i].mark, fold->piles[called].id,
                              fold->piles[i].bent, head, mudline, state->done, state->step,
                              (guint64) state->burned, state->n_unplaced, state->n_left,
                              state->flags, state->step_shift[LB_STEP_PULLED]));
  }
  for (guint i = 0; i < fold->n_shifts; i++)
    add_totals (lines, lb_ledger_shift (ledger, i)->id, &fold->shifts[i]);
  for (gsize i = 0; i < fold->n_days; i++)
    add_totals (lines, "day", &fold->days[i].totals);
  add_totals (lines, fold->place, &fold->job);
  g_ptr_array_sort (lines, compare_lines);
  return lines;
}

static void
assert_same_lines (const GPtrArray *one, const GPtrArray *other)
{
  g_assert_cmpuint (one->len, ==, other->len);
  for (guint i = 0; i < one->len; i++)
    g_assert_cmpstr (one->pdata[i], ==, other->pdata[i]);
}

static void
assert_same_job (const LbLedger *one, const LbLedger *other)
{
  g_autoptr (GPtrArray) rows = rows_of (one);
  g_autoptr (GPtrArray) other_rows = rows_of (other);
  g_autoptr (GPtrArray) conclusions = conclusions_of (one);
  g_autoptr (GPtrArray) other_conclusions = conclusions_of (other);

  assert_same_lines (rows, other_rows);
  assert_same_lines (conclusions, other_conclusions);
}

/* Every row of the parts is in the whole, and no other is. */
static void
assert_nothing_lost (const LbLedger *whole, const LbLedger *one, const LbLedger *other)
{
  g_autoptr (GPtrArray) rows = rows_of (whole);
  g_autoptr (GPtrArray) of_one = rows_of (one);
  g_autoptr (GPtrArray) of_other = rows_of (other);
  g_autoptr (GHashTable) parts = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < of_one->len; i++)
    g_hash_table_add (parts, of_one->pdata[i]);
  for (guint i = 0; i < of_other->len; i++)
    g_hash_table_add (parts, of_other->pdata[i]);
  g_assert_cmpuint (rows->len, ==, g_hash_table_size (parts));
  for (guint i = 0; i < rows->len; i++)
    g_assert_true (g_hash_table_contains (parts, rows->pdata[i]));
}

static void
assert_adds_nothing (const LbLedger *into, const LbLedger *from)
{
  g_autoptr (LbJoinPlan) plan = lb_join_plan (into, from, NULL);

  g_assert_nonnull (plan);
  g_assert_cmpuint (plan->piles->len + plan->shifts->len + plan->entries->len, ==, 0);
}

/* Commutative, associative, idempotent, and nothing lost. */
static void
test_laws (void)
{
  g_autoptr (GRand) chance = g_rand_new_with_seed (41);
  guint n_pairs = 0;

  for (int job = 0; job < N_JOBS; job++) {
    g_autoptr (LbLedger) whole = make_job (chance);

    for (int pair = 0; pair < PAIRS_A_JOB; pair++, n_pairs++) {
      g_autoptr (LbLedger) a = take_part (whole, chance);
      g_autoptr (LbLedger) b = take_part (whole, chance);
      g_autoptr (LbLedger) c = take_part (whole, chance);
      g_autoptr (LbLedger) ab = join (a, b);
      g_autoptr (LbLedger) ba = join (b, a);
      g_autoptr (LbLedger) bc = join (b, c);
      g_autoptr (LbLedger) ab_c = join (ab, c);
      g_autoptr (LbLedger) a_bc = join (a, bc);

      assert_same_job (ab, ba);
      assert_same_job (ab_c, a_bc);
      assert_nothing_lost (ab, a, b);
      assert_adds_nothing (ab, a);
      assert_adds_nothing (ab, b);
      assert_adds_nothing (ab, ab);
      assert_adds_nothing (whole, ab_c);
    }
  }
  g_test_message ("%u pairs of ledgers joined", n_pairs);
  g_assert_cmpuint (n_pairs, ==, 10000);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/join/laws", test_laws);
  return g_test_run ();
}
