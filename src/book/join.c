/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a join adds, worked out before anything is written.
 *
 * Rows are the same when they have the same id, and then they must say the same: rows are never
 * changed, so one that says otherwise was changed by somebody's hand. A known entry is found by
 * where it stands in time (lb_entry_compare()) in as many looks as the ledger has digits in binary,
 * not by an index of all ids, which would cost more than the join. One whose time was changed is
 * therefore not found: so the ids of all entries that seem new are looked for once among the known.
 *
 * Invariants of a plan:
 *   1. Added rows get the next numbers, in the order of the file they come from. So whatever a row
 *      refers to is before it, and the entries of an act follow each other.
 *   2. An act is added whole or is known whole.
 *   3. Every row that an added row refers to is known or added. */
#include "book/act-links.h"
#include "book/book-private.h"
#include "book/fold.h"
#include "book/join-private.h"
#include "book/seal-rows.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

typedef struct
{
  LbJoinPlan *plan;
  const LbLedger *into;
  const LbLedger *from;
  const LbJoinChoice *choice; /* NULL for all */
  LbActLinks links;
  GError **error;
} Planning;

static gboolean refuse (Planning *planning, const char *format, ...) G_GNUC_PRINTF (2, 3);

static gboolean
refuse (Planning *planning, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_autofree char *sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error_literal (planning->error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED, sentence);
  return FALSE;
}

static gboolean
fail_otherwise (Planning *planning, const char *table, const char *id)
{
  return refuse (planning,
                 /* Translators: a table's name and a row's id. */
                 _ ("What comes says otherwise than this job under one id (%s %.60s): one of the "
                    "two was changed by hand. Nothing was joined"),
                 table, id);
}

static gboolean
check_id (Planning *planning, const char *id)
{
  LbRowName name;

  return lb_row_name_read (id, &name) ||
         refuse (planning, _ ("“%.60s” is no id that this program would give; nothing was joined"),
                 id);
}

static gboolean
is_same_number (double one, double other)
{
  return isnan (one) || isnan (other) ? isnan (one) && isnan (other) : !islessgreater (one, other);
}

static gboolean
is_same_pile (const LbPile *one, const LbPile *other)
{
  return strcmp (one->mark, other->mark) == 0 && strcmp (one->bent, other->bent) == 0 &&
         strcmp (one->row, other->row) == 0 && strcmp (one->note, other->note) == 0 &&
         is_same_number (one->x_m, other->x_m) && is_same_number (one->y_m, other->y_m) &&
         one->outline.shape == other->outline.shape &&
         is_same_number (one->outline.width_m, other->outline.width_m) &&
         is_same_number (one->outline.void_m, other->outline.void_m) && one->bar == other->bar &&
         one->n_bars == other->n_bars && is_same_number (one->bar_inset_m, other->bar_inset_m) &&
         is_same_number (one->batter, other->batter) &&
         is_same_number (one->bearing_rad, other->bearing_rad) &&
         is_same_number (one->head_m, other->head_m) && is_same_number (one->cut_m, other->cut_m) &&
         is_same_number (one->mudline_m, other->mudline_m) &&
         is_same_number (one->toe_m, other->toe_m);
}

static gboolean
is_same_shift (const LbShift *one, const LbShift *other)
{
  return one->day == other->day && strcmp (one->watch, other->watch) == 0 &&
         one->opened_us == other->opened_us && strcmp (one->who, other->who) == 0;
}

static const char *
pile_id (const LbLedger *ledger, const LbEntry *entry)
{
  return entry->pile >= 0 ? lb_ledger_pile (ledger, (guint) entry->pile)->id : "";
}

static const char *
shift_id (const LbLedger *ledger, const LbEntry *entry)
{
  return entry->shift >= 0 ? lb_ledger_shift (ledger, (guint) entry->shift)->id : "";
}

static gboolean
is_same_entry (const Planning *planning, const LbEntry *known, const LbEntry *entry)
{
  return strcmp (known->id, entry->id) == 0 && strcmp (known->act, entry->act) == 0 &&
         known->at_us == entry->at_us && strcmp (known->who, entry->who) == 0 &&
         known->kind == entry->kind && strcmp (known->what, entry->what) == 0 &&
         known->bars == entry->bars && known->count == entry->count &&
         is_same_number (known->amount, entry->amount) && known->start_us == entry->start_us &&
         known->end_us == entry->end_us && known->up_us == entry->up_us &&
         strcmp (known->note, entry->note) == 0 && strcmp (known->of, entry->of) == 0 &&
         strcmp (pile_id (planning->into, known), pile_id (planning->from, entry)) == 0 &&
         strcmp (shift_id (planning->into, known), shift_id (planning->from, entry)) == 0;
}

static gboolean
plan_piles (Planning *planning)
{
  LbJoinPlan *plan = planning->plan;
  const LbLedger *into = planning->into;

  for (guint i = 0; i < planning->from->piles->len; i++) {
    const LbPile *pile = lb_ledger_pile (planning->from, i);
    const int known = lb_ledger_find_pile (into, pile->id);

    if (known >= 0) {
      if (!is_same_pile (lb_ledger_pile (into, (guint) known), pile))
        return fail_otherwise (planning, "pile", pile->id);
      plan->pile_rows[i] = known + 1;
      continue;
    }
    if (!check_id (planning, pile->id))
      return FALSE;
    g_array_append_val (plan->piles, i);
    plan->pile_rows[i] = (gint64) plan->n_piles + plan->piles->len;
  }
  return TRUE;
}

/* The shifts of a ledger as its file has them, by index. */
static guint *
shifts_by_row (const LbLedger *ledger)
{
  guint *by_row = g_new (guint, ledger->shifts->len + 1);

  for (guint i = 0; i < ledger->shifts->len; i++)
    by_row[lb_ledger_shift (ledger, i)->seq - 1] = i;
  return by_row;
}

static gboolean
plan_shifts (Planning *planning)
{
  LbJoinPlan *plan = planning->plan;
  const LbLedger *into = planning->into;
  const LbLedger *from = planning->from;
  g_autoptr (GHashTable) known = g_hash_table_new (g_str_hash, g_str_equal);
  g_autofree guint *by_row = shifts_by_row (from);

  for (guint i = 0; i < into->shifts->len; i++) {
    const LbShift *shift = lb_ledger_shift (into, i);
    g_hash_table_insert (known, (gpointer) shift->id, (gpointer) shift);
  }
  for (guint row = 0; row < from->shifts->len; row++) {
    const guint i = by_row[row];
    const LbShift *shift = lb_ledger_shift (from, i);
    const LbShift *here = g_hash_table_lookup (known, shift->id);

    if (here != NULL) {
      if (!is_same_shift (here, shift))
        return fail_otherwise (planning, "shift", shift->id);
      plan->shift_rows[i] = here->seq;
    } else if (planning->choice == NULL || planning->choice->shifts[i]) {
      if (!check_id (planning, shift->id))
        return FALSE;
      g_array_append_val (plan->shifts, i);
      plan->shift_rows[i] = (gint64) plan->n_shifts + plan->shifts->len;
    }
  }
  return TRUE;
}

/* The entry of @ledger that stands where @entry does in time; %NULL for none. */
static const LbEntry *
find_in_time (const LbLedger *ledger, const LbEntry *entry)
{
  guint low = 0;
  guint high = ledger->entries->len;

  while (low < high) {
    const guint middle = low + (high - low) / 2;
    const LbEntry *at = lb_ledger_entry (ledger, middle);
    const int order = lb_entry_compare (at, entry);

    if (order == 0)
      return at;
    if (order < 0)
      low = middle + 1;
    else
      high = middle;
  }
  return NULL;
}

/* A setting or a fact may hold what only a later version knows, which is kept; all else must be what
 * could be recorded today. */
static gboolean
check_entry (Planning *planning, const LbEntry *entry)
{
  g_autoptr (GError) reason = NULL;

  if (!check_id (planning, entry->id))
    return FALSE;
  if (entry->kind == LB_ENTRY_FACT || entry->kind == LB_ENTRY_SETTING)
    return TRUE;

  const LbDraft draft = lb_draft_of (planning->from, entry);
  return lb_draft_check (&draft, &reason) ||
         refuse (planning, _ ("Entry %s cannot be joined: %s. Nothing was joined"), entry->id,
                 reason->message);
}

/* Whether the act that @last ends goes on in @ledger. */
static gboolean
goes_on (const LbLedger *ledger, const LbEntry *last)
{
  return last->seq < (gint64) ledger->entries->len &&
         lb_ledger_entry_of_seq (ledger, last->seq + 1)->act == last->act;
}

/* An act that is known must be known whole, as long and in the same order as it comes. */
static gboolean
plan_entry (Planning *planning, guint i)
{
  LbJoinPlan *plan = planning->plan;
  const LbEntry *entry = lb_ledger_entry_of_seq (planning->from, (gint64) i + 1);
  const LbEntry *known = find_in_time (planning->into, entry);
  const guint32 first = planning->links.act[i];
  const gboolean act_is_known = plan->entry_rows[first] != 0 &&
                                plan->entry_rows[first] <= plan->n_entries;

  if (known != NULL) {
    if (!is_same_entry (planning, known, entry) ||
        goes_on (planning->into, known) != goes_on (planning->from, entry))
      return fail_otherwise (planning, "entry", entry->id);
    plan->entry_rows[i] = known->seq;
  } else {
    if (first != i && act_is_known)
      return fail_otherwise (planning, "entry", entry->id);
    if (!check_entry (planning, entry))
      return FALSE;
    g_array_append_val (plan->entries, entry->seq);
    plan->entry_rows[i] = (gint64) plan->n_entries + plan->entries->len;
  }
  plan->act_rows[i] = plan->entry_rows[first];
  plan->of_rows[i] = planning->links.of[i] != 0 ? plan->entry_rows[planning->links.of[i] - 1] : 0;
  return TRUE;
}

static gboolean
plan_entries (Planning *planning)
{
  for (guint i = 0; i < planning->from->entries->len; i++) {
    if ((planning->choice == NULL || planning->choice->entries[i]) && !plan_entry (planning, i))
      return FALSE;
  }
  return TRUE;
}

/* That no id of an entry that seems new comes twice, or is known with another time. */
static gboolean
check_new_ids (Planning *planning)
{
  const LbJoinPlan *plan = planning->plan;
  g_autoptr (GHashTable) new_ids = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < plan->entries->len; i++) {
    const gint64 seq = g_array_index (plan->entries, gint64, i);
    const LbEntry *entry = lb_ledger_entry_of_seq (planning->from, seq);

    if (!g_hash_table_add (new_ids, (gpointer) entry->id))
      return refuse (planning, _ ("The id “%s” comes twice; nothing was joined"), entry->id);
  }
  for (guint i = 0; plan->entries->len > 0 && i < plan->n_entries; i++) {
    const LbEntry *known = &g_array_index (planning->into->entries, LbEntry, i);

    if (g_hash_table_contains (new_ids, known->id))
      return fail_otherwise (planning, "entry", known->id);
  }
  return TRUE;
}

/* What the job is called, for telling two apart. */
static char *
name_job (const LbLedger *ledger)
{
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);

  return g_strdup (fold->name);
}

static gboolean
check_job (Planning *planning)
{
  const char *here = planning->into->job_id;
  const char *there = planning->from->job_id;

  if (*here == '\0' || strcmp (here, there) == 0)
    return TRUE;

  g_autofree char *name_here = name_job (planning->into);
  g_autofree char *name_there = name_job (planning->from);
  g_set_error (planning->error, LB_BOOK_ERROR, LB_BOOK_ERROR_FOREIGN,
               /* Translators: names of jobs, and in brackets their ids. */
               _ ("What comes belongs to another job, “%s” (%s); this one is “%s” (%s). Nothing "
                  "was joined"),
               name_there, there, name_here, here);
  return FALSE;
}

static LbJoinPlan *
new_plan (const LbLedger *into, const LbLedger *from)
{
  LbJoinPlan *plan = g_new0 (LbJoinPlan, 1);
  const gsize n = from->entries->len;

  plan->from = from;
  plan->n_piles = into->piles->len;
  plan->n_shifts = into->shifts->len;
  plan->n_entries = into->entries->len;
  plan->piles = g_array_new (FALSE, FALSE, sizeof (guint));
  plan->shifts = g_array_new (FALSE, FALSE, sizeof (guint));
  plan->entries = g_array_new (FALSE, FALSE, sizeof (gint64));
  plan->pile_rows = g_new0 (gint64, from->piles->len + 1);
  plan->shift_rows = g_new0 (gint64, from->shifts->len + 1);
  plan->entry_rows = g_new0 (gint64, n + 1);
  plan->act_rows = g_new0 (gint64, n + 1);
  plan->of_rows = g_new0 (gint64, n + 1);
  return plan;
}

LbJoinPlan *
lb_join_plan_chosen (const LbLedger *into,
                     const LbLedger *from,
                     const LbJoinChoice *choice,
                     GError **error)
{
  g_autoptr (LbJoinPlan) plan = new_plan (into, from);
  Planning planning = {
    .plan = plan,
    .into = into,
    .from = from,
    .choice = choice,
    .error = error,
  };

  if (!check_job (&planning))
    return NULL;
  lb_act_links_init (&planning.links, from);

  const gboolean is_planned = plan_piles (&planning) && plan_shifts (&planning) &&
                              plan_entries (&planning) && check_new_ids (&planning);
  lb_act_links_clear (&planning.links);
  return is_planned ? g_steal_pointer (&plan) : NULL;
}

LbJoinPlan *
lb_join_plan (const LbLedger *into, const LbLedger *from, GError **error)
{
  g_return_val_if_fail (into != NULL, NULL);
  g_return_val_if_fail (from != NULL, NULL);

  return lb_join_plan_chosen (into, from, NULL, error);
}

void
lb_join_plan_free (LbJoinPlan *plan)
{
  if (plan == NULL)
    return;
  g_array_unref (plan->piles);
  g_array_unref (plan->shifts);
  g_array_unref (plan->entries);
  g_free (plan->pile_rows);
  g_free (plan->shift_rows);
  g_free (plan->entry_rows);
  g_free (plan->act_rows);
  g_free (plan->of_rows);
  g_free (plan);
}

static void
add_pile (LbLedger *into, const LbPile *pile)
{
  LbPile copy = *pile;

  copy.id = lb_ledger_keep_new (into, pile->id);
  copy.mark = lb_ledger_keep_new (into, pile->mark);
  copy.bent = lb_ledger_keep (into, pile->bent);
  copy.row = lb_ledger_keep (into, pile->row);
  copy.note = lb_ledger_keep_new (into, pile->note);
  g_array_append_val (into->piles, copy);
}

static void
add_shift (LbLedger *into, const LbShift *shift)
{
  const LbShift copy = {
    .seq = (gint64) into->shifts->len + 1,
    .id = lb_ledger_keep_new (into, shift->id),
    .day = shift->day,
    .watch = lb_ledger_keep (into, shift->watch),
    .opened_us = shift->opened_us,
    .who = lb_ledger_keep (into, shift->who),
  };

  g_array_append_val (into->shifts, copy);
}

/* The act's name is the very string that is its first entry's id. */
static void
add_entry (LbLedger *into, const LbJoinPlan *plan, const guint *shifts, gint64 seq)
{
  const LbEntry *entry = lb_ledger_entry_of_seq (plan->from, seq);
  const gint64 row = (gint64) into->entries->len + 1;
  const gint64 act = plan->act_rows[seq - 1];
  const gint64 of = plan->of_rows[seq - 1];
  LbEntry copy = *entry;

  copy.seq = row;
  copy.id = lb_ledger_keep_new (into, entry->id);
  copy.act = act == row ? copy.id : lb_ledger_entry_of_seq (into, act)->id;
  copy.who = lb_ledger_keep (into, entry->who);
  copy.shift = entry->shift >= 0 ? (int) shifts[plan->shift_rows[entry->shift] - 1] : -1;
  copy.pile = entry->pile >= 0 ? (int) plan->pile_rows[entry->pile] - 1 : -1;
  copy.what = lb_ledger_keep (into, entry->what);
  copy.note = lb_ledger_keep_new (into, entry->note);
  copy.of = of != 0 ? lb_ledger_entry_of_seq (into, of)->id : "";
  g_array_append_val (into->entries, copy);
  into->last_seq = row;
}

void
lb_ledger_join (LbLedger *into, const LbJoinPlan *plan)
{
  g_return_if_fail (into != NULL);
  g_return_if_fail (plan != NULL && plan->n_piles == into->piles->len &&
                    plan->n_shifts == into->shifts->len && plan->n_entries == into->entries->len);

  const LbLedger *from = plan->from;
  if (*into->job_id == '\0')
    into->job_id = lb_ledger_keep_new (into, from->job_id);
  for (guint i = 0; i < plan->piles->len; i++)
    add_pile (into, lb_ledger_pile (from, g_array_index (plan->piles, guint, i)));
  for (guint i = 0; i < plan->shifts->len; i++)
    add_shift (into, lb_ledger_shift (from, g_array_index (plan->shifts, guint, i)));
  if (plan->shifts->len > 0)
    lb_ledger_place_shifts (into);

  g_autofree guint *shifts = shifts_by_row (into);
  for (guint i = 0; i < plan->entries->len; i++)
    add_entry (into, plan, shifts, g_array_index (plan->entries, gint64, i));
  lb_ledger_place_entries (into, plan->n_entries);
}
