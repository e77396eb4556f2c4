/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/book-private.h"

#include <string.h>

static const char *const kind_names[LB_N_ENTRY_KINDS] = {
  [LB_ENTRY_STEP] = "step",
  [LB_ENTRY_BARS] = "bars",
  [LB_ENTRY_GONE] = "gone",
  [LB_ENTRY_DRAWN] = "drawn",
  [LB_ENTRY_BROKEN] = "broken",
  [LB_ENTRY_BURN_TIME] = "burn-time",
  [LB_ENTRY_RODS] = "rods",
  [LB_ENTRY_OXYGEN] = "oxygen",
  [LB_ENTRY_DIVE] = "dive",
  [LB_ENTRY_DELAY] = "delay",
  [LB_ENTRY_FAULT] = "fault",
  [LB_ENTRY_CONDITION] = "condition",
  [LB_ENTRY_NOTE] = "note",
  [LB_ENTRY_SET_ASIDE] = "set-aside",
  [LB_ENTRY_TAKE_IN] = "take-in",
  [LB_ENTRY_CHECK] = "check",
  [LB_ENTRY_HOURS] = "hours",
  [LB_ENTRY_CREW] = "crew",
  [LB_ENTRY_STOCK] = "stock",
  [LB_ENTRY_DELIVERY] = "delivery",
  [LB_ENTRY_DETAIL] = "detail",
  [LB_ENTRY_ANSWER] = "answer",
  [LB_ENTRY_CORRECTION] = "correction",
  [LB_ENTRY_SEAL] = "seal",
  [LB_ENTRY_FACT] = "fact",
  [LB_ENTRY_SETTING] = "setting",
  [LB_ENTRY_TAKE_BACK] = "take-back",
};

const char *
lb_entry_kind_name (LbEntryKind kind)
{
  g_return_val_if_fail (kind < LB_N_ENTRY_KINDS, NULL);

  return kind_names[kind];
}

gboolean
lb_entry_kind_from_name (const char *name, gsize n, LbEntryKind *out_kind)
{
  for (LbEntryKind kind = 0; kind < LB_N_ENTRY_KINDS; kind++) {
    if (strncmp (name, kind_names[kind], n) == 0 && kind_names[kind][n] == '\0') {
      *out_kind = kind;
      return TRUE;
    }
  }
  return FALSE;
}

LbLedger *
lb_ledger_new (void)
{
  LbLedger *ledger = g_new0 (LbLedger, 1);

  ledger->piles = g_array_new (FALSE, FALSE, sizeof (LbPile));
  ledger->shifts = g_array_new (FALSE, FALSE, sizeof (LbShift));
  ledger->entries = g_array_new (FALSE, FALSE, sizeof (LbEntry));
  ledger->pile_by_id = g_hash_table_new (g_str_hash, g_str_equal);
  ledger->strings = lb_text_pool_new ();
  ledger->job_id = ledger->job_made = "";
  ledger->latest_us = G_MININT64;
  return ledger;
}

void
lb_ledger_free (LbLedger *ledger)
{
  if (ledger == NULL)
    return;
  g_array_unref (ledger->piles);
  g_array_unref (ledger->shifts);
  g_array_unref (ledger->entries);
  g_free (ledger->order);
  g_hash_table_unref (ledger->pile_by_id);
  lb_text_pool_free (ledger->strings);
  g_free (ledger);
}

/* Ids are all different, so that the table has as many as were put into it. */
int
lb_ledger_find_pile (const LbLedger *ledger, const char *id)
{
  g_return_val_if_fail (ledger != NULL, -1);
  g_return_val_if_fail (id != NULL, -1);

  for (guint i = g_hash_table_size (ledger->pile_by_id); i < ledger->piles->len; i++)
    g_hash_table_insert (ledger->pile_by_id, (gpointer) lb_ledger_pile (ledger, i)->id,
                         GUINT_TO_POINTER (i + 1));
  return GPOINTER_TO_INT (g_hash_table_lookup (ledger->pile_by_id, id)) - 1;
}

char *
lb_mark_key (const char *mark)
{
  char *key = g_str_is_ascii (mark) ? g_ascii_strdown (mark, -1) : g_utf8_casefold (mark, -1);
  char *to = key;

  for (const char *from = key; *from != '\0'; from++) {
    if (!g_ascii_isspace (*from))
      *to++ = *from;
  }
  *to = '\0';
  return key;
}

int
lb_ledger_find_mark (const LbLedger *ledger, const char *mark)
{
  g_return_val_if_fail (ledger != NULL, -1);
  g_return_val_if_fail (mark != NULL, -1);

  g_autofree char *key = lb_mark_key (mark);
  for (guint i = 0; i < ledger->piles->len; i++) {
    g_autofree char *other = lb_mark_key (lb_ledger_pile (ledger, i)->mark);

    if (g_str_equal (other, key))
      return (int) i;
  }
  return -1;
}

const char *
lb_ledger_keep (LbLedger *ledger, const char *text)
{
  return *text == '\0' ? "" : lb_text_pool_add_once (ledger->strings, text);
}

const char *
lb_ledger_keep_new (LbLedger *ledger, const char *text)
{
  return lb_ledger_keep_bytes (ledger, text, strlen (text));
}

const char *
lb_ledger_keep_bytes (LbLedger *ledger, const char *text, gsize n)
{
  return n == 0 ? "" : lb_text_pool_add_bytes (ledger->strings, text, n);
}

int
lb_id_compare (const char *one, const char *other)
{
  const char *one_number = strrchr (one, '-');
  const char *other_number = strrchr (other, '-');

  if (one_number == NULL || other_number == NULL)
    return strcmp (one, other);

  const gsize one_length = (gsize) (one_number - one);
  const gsize other_length = (gsize) (other_number - other);
  const int by_tag = strncmp (one, other, MIN (one_length, other_length));
  if (by_tag != 0 || one_length != other_length)
    return by_tag != 0 ? by_tag : one_length < other_length ? -1 : 1;

  const guint64 n = g_ascii_strtoull (one_number + 1, NULL, 10);
  const guint64 m = g_ascii_strtoull (other_number + 1, NULL, 10);
  return n != m ? (n < m ? -1 : 1) : strcmp (one_number, other_number);
}

int
lb_entry_compare (const LbEntry *one, const LbEntry *other)
{
  if (one->at_us != other->at_us)
    return one->at_us < other->at_us ? -1 : 1;
  return lb_id_compare (one->id, other->id);
}

static int
compare_in_time (gconstpointer a, gconstpointer b, gpointer entries)
{
  return lb_entry_compare (&g_array_index ((GArray *) entries, LbEntry, *(const guint32 *) a),
                           &g_array_index ((GArray *) entries, LbEntry, *(const guint32 *) b));
}

/* Whether each entry from @first on stands after the one before it in the file. */
static gboolean
is_in_time (const LbLedger *ledger, guint first)
{
  for (guint i = MAX (first, 1); i < ledger->entries->len; i++) {
    const LbEntry *entry = &g_array_index (ledger->entries, LbEntry, i);
    const LbEntry *last = entry - 1;

    if (entry->at_us < last->at_us || (entry->at_us == last->at_us && entry->act != last->act &&
                                       lb_id_compare (last->id, entry->id) > 0))
      return FALSE;
  }
  return TRUE;
}

/* After the entries from @first on were added: where they stand in time. */
void
lb_ledger_place_entries (LbLedger *ledger, guint first)
{
  const guint n = ledger->entries->len;

  for (guint i = first; i < n; i++)
    ledger->latest_us = MAX (ledger->latest_us, g_array_index (ledger->entries, LbEntry, i).at_us);
  if (first == n || (ledger->order == NULL && is_in_time (ledger, first)))
    return;
  g_free (ledger->order);
  ledger->order = g_new (guint32, n);
  for (guint i = 0; i < n; i++)
    ledger->order[i] = i;
  g_qsort_with_data (ledger->order, (gint) n, sizeof *ledger->order, compare_in_time,
                     ledger->entries);
}

static int
compare_shifts (gconstpointer a, gconstpointer b)
{
  const LbShift *one = a;
  const LbShift *other = b;

  if (one->day != other->day)
    return one->day < other->day ? -1 : 1;
  if (one->opened_us != other->opened_us)
    return one->opened_us < other->opened_us ? -1 : 1;
  return lb_id_compare (one->id, other->id);
}

/* Puts the shifts, which were appended in file order, by day; entries already read keep pointing
 * at theirs. */
void
lb_ledger_place_shifts (LbLedger *ledger)
{
  const guint n = ledger->shifts->len;
  g_autofree gint64 *seqs = g_new (gint64, n + 1);
  g_autofree int *index_of_seq = g_new (int, n + 1);

  for (guint i = 0; i < n; i++)
    seqs[i] = lb_ledger_shift (ledger, i)->seq;
  g_array_sort (ledger->shifts, compare_shifts);
  for (guint i = 0; i < n; i++)
    index_of_seq[lb_ledger_shift (ledger, i)->seq] = (int) i;

  for (guint i = 0; i < ledger->entries->len; i++) {
    LbEntry *entry = &g_array_index (ledger->entries, LbEntry, i);

    if (entry->shift >= 0)
      entry->shift = index_of_seq[seqs[entry->shift]];
  }
}

int
lb_ledger_find_shift (const LbLedger *ledger, const char *id)
{
  g_return_val_if_fail (ledger != NULL, -1);
  g_return_val_if_fail (id != NULL, -1);

  for (guint i = 0; i < ledger->shifts->len; i++) {
    if (strcmp (lb_ledger_shift (ledger, i)->id, id) == 0)
      return (int) i;
  }
  return -1;
}

int
lb_ledger_find_shift_of_day (const LbLedger *ledger, guint32 day, const char *watch)
{
  g_return_val_if_fail (ledger != NULL, -1);
  g_return_val_if_fail (watch != NULL, -1);

  for (guint i = 0; i < ledger->shifts->len; i++) {
    const LbShift *shift = lb_ledger_shift (ledger, i);

    if (shift->day == day && strcmp (shift->watch, watch) == 0)
      return (int) i;
  }
  return -1;
}
