/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What two crews said differently of one field.
 *
 * Each fact and setting names the act that set its field before, as far as its writer's file knew
 * (`of`). So the acts that set one field are a tree, or several, that grow from the first word said;
 * an act all of whose successors were taken back is still known to them. Those that stand and that no
 * other standing act comes after are the field's heads. One head is agreement. Of several with
 * different values each but the last in time is a difference; to decide is to set the field once for
 * each head in one act, which makes that act the only head.
 *
 * Cost: one look at each entry, and a walk over those of fields that were set more than once. */
#include "book/difference.h"

#include "book/book-private.h"

#include <string.h>

/* One act's word on a field. */
typedef struct
{
  const LbEntry *entry; /* the last one of the act, when it sets the field more than once */
  gboolean stands;
  gboolean is_known; /* to one that stands */
} Word;

typedef struct
{
  int pile;
  const char *name;
  GArray *entries; /* const LbEntry *, in time */
  GArray *words;   /* Word, in time */
} Field;

static guint
field_hash (gconstpointer key)
{
  const Field *field = key;

  return g_str_hash (field->name) * 31 + (guint) field->pile;
}

static gboolean
field_equal (gconstpointer a, gconstpointer b)
{
  const Field *one = a;
  const Field *other = b;

  return one->pile == other->pile && strcmp (one->name, other->name) == 0;
}

static void
field_free (gpointer data)
{
  Field *field = data;

  g_array_unref (field->entries);
  g_array_unref (field->words);
  g_free (field);
}

static void
add_word (Field *field, const LbEntry *entry, gboolean stands)
{
  Word *last = field->words->len > 0 ? &g_array_index (field->words, Word, field->words->len - 1)
                                     : NULL;

  g_array_append_val (field->entries, entry);
  if (last != NULL && last->entry->act == entry->act) {
    last->entry = entry;
  } else {
    const Word word = { .entry = entry, .stands = stands };
    g_array_append_val (field->words, word);
  }
}

static Field *
find_field (GHashTable *fields, const LbEntry *entry)
{
  const Field wanted = { .pile = entry->pile, .name = entry->what };
  Field *field = g_hash_table_lookup (fields, &wanted);

  if (field == NULL) {
    field = g_new (Field, 1);
    field->pile = entry->pile;
    field->name = entry->what;
    field->entries = g_array_new (FALSE, FALSE, sizeof (const LbEntry *));
    field->words = g_array_new (FALSE, FALSE, sizeof (Word));
    g_hash_table_add (fields, field);
  }
  return field;
}

/* Every field that was ever set, with all that was said of it. */
static GHashTable *
gather_fields (const LbLedger *ledger, const LbFold *fold)
{
  GHashTable *fields = g_hash_table_new_full (field_hash, field_equal, NULL, field_free);

  for (gsize i = 0; i < fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, (guint) i);

    if (entry->kind == LB_ENTRY_SETTING || (entry->kind == LB_ENTRY_FACT && entry->pile >= 0))
      add_word (find_field (fields, entry), entry, fold->is_alive[i]);
  }
  return fields;
}

/* Marks what is known to each act that stands. What an act names came before it, so going from the last
 * to the first each is settled when it is come to. */
static void
find_known (Field *field)
{
  g_autoptr (GHashTable) word_of = g_hash_table_new (NULL, NULL); /* act → index + 1 */
  g_autofree guint8 *is_reached = g_new0 (guint8, field->words->len);

  for (guint i = 0; i < field->words->len; i++) {
    const Word *word = &g_array_index (field->words, Word, i);

    g_hash_table_insert (word_of, (gpointer) word->entry->act, GUINT_TO_POINTER (i + 1));
    is_reached[i] = word->stands;
  }
  for (guint i = field->entries->len; i-- > 0;) {
    const LbEntry *entry = g_array_index (field->entries, const LbEntry *, i);
    const guint of = GPOINTER_TO_UINT (g_hash_table_lookup (word_of, entry->of));
    const guint self = GPOINTER_TO_UINT (g_hash_table_lookup (word_of, entry->act));

    if (of != 0 && of != self && is_reached[self - 1]) {
      is_reached[of - 1] = TRUE;
      g_array_index (field->words, Word, of - 1).is_known = TRUE;
    }
  }
}

static gboolean
is_head (const Word *word)
{
  return word->stands && !word->is_known;
}

/* The heads of a field that was set more than once, LbEntry pointers in time. */
static GPtrArray *
find_heads (Field *field)
{
  GPtrArray *heads = g_ptr_array_new ();

  if (field->words->len < 2)
    return heads;
  find_known (field);
  for (guint i = 0; i < field->words->len; i++) {
    const Word *word = &g_array_index (field->words, Word, i);

    if (is_head (word))
      g_ptr_array_add (heads, (gpointer) word->entry);
  }
  return heads;
}

static const char *
keep_text (gpointer pool, const char *text)
{
  return g_string_chunk_insert (pool, text);
}

static gboolean
is_same_fact (const char *name, const char *one, const char *other)
{
  g_autoptr (GStringChunk) texts = g_string_chunk_new (256);
  const char *const values[] = { one, other };
  char *shown[2] = { NULL, NULL };
  LbFact fact;

  if (!lb_fact_from_name (name, &fact))
    return FALSE;
  for (int i = 0; i < 2; i++) {
    LbPile pile;

    lb_pile_init (&pile);
    if (lb_pile_set (&pile, fact, values[i], LB_UNITS_METRIC, keep_text, texts, NULL))
      shown[i] = lb_pile_get (&pile, fact, LB_UNITS_METRIC);
  }

  const gboolean is_same = shown[0] != NULL && g_strcmp0 (shown[0], shown[1]) == 0;
  g_free (shown[0]);
  g_free (shown[1]);
  return is_same;
}

/* Whether two values of a field come to the same, however they are written; @pile -1 for a setting. */
static gboolean
is_same_field (int pile, const char *field, const char *one, const char *other)
{
  double value, other_value;

  if (strcmp (one, other) == 0)
    return TRUE;
  if (pile >= 0)
    return is_same_fact (field, one, other);
  return lb_number_from_setting (one, &value) && lb_number_from_setting (other, &other_value) &&
         !islessgreater (value, other_value);
}

static int
compare_differences (gconstpointer a, gconstpointer b)
{
  const LbDifference *one = a;
  const LbDifference *other = b;
  const int order = lb_entry_compare (one->last, other->last);

  return order != 0 ? order : lb_entry_compare (one->other, other->other);
}

GArray *
lb_differences_new (const LbLedger *ledger, const LbFold *fold)
{
  g_return_val_if_fail (ledger != NULL, NULL);
  g_return_val_if_fail (fold != NULL, NULL);

  GArray *differences = g_array_new (FALSE, FALSE, sizeof (LbDifference));
  g_autoptr (GHashTable) fields = gather_fields (ledger, fold);
  GHashTableIter each;
  gpointer at;

  g_hash_table_iter_init (&each, fields);
  while (g_hash_table_iter_next (&each, &at, NULL)) {
    Field *field = at;
    g_autoptr (GPtrArray) heads = find_heads (field);

    for (guint i = 0; i + 1 < heads->len; i++) {
      const LbDifference difference = {
        .pile = field->pile,
        .field = field->name,
        .other = heads->pdata[i],
        .last = heads->pdata[heads->len - 1],
      };

      if (!is_same_field (field->pile, field->name, difference.other->note, difference.last->note))
        g_array_append_val (differences, difference);
    }
  }
  g_array_sort (differences, compare_differences);
  return differences;
}

/* A draft that sets a field again for each of its heads. */
static void
know_heads (GArray *drafts, guint at, const GPtrArray *heads)
{
  for (guint i = 0; i < heads->len; i++) {
    LbDraft draft = g_array_index (drafts, LbDraft, at);

    draft.of = ((const LbEntry *) heads->pdata[i])->act;
    if (i == 0)
      g_array_index (drafts, LbDraft, at).of = draft.of;
    else
      g_array_append_val (drafts, draft);
  }
}

void
lb_drafts_know (GArray *drafts, const LbLedger *ledger, const LbFold *fold)
{
  g_return_if_fail (drafts != NULL);
  g_return_if_fail (ledger != NULL);
  g_return_if_fail (fold != NULL);

  g_autoptr (GHashTable) fields = NULL;
  const guint n_drafts = drafts->len;
  for (guint i = 0; i < n_drafts; i++) {
    const LbDraft *draft = &g_array_index (drafts, LbDraft, i);

    if (draft->kind != LB_ENTRY_FACT && draft->kind != LB_ENTRY_SETTING)
      continue;
    if (fields == NULL)
      fields = gather_fields (ledger, fold);

    const Field wanted = {
      .pile = draft->pile_id != NULL ? lb_ledger_find_pile (ledger, draft->pile_id) : -1,
      .name = lb_draft_what (draft),
    };
    Field *field = g_hash_table_lookup (fields, &wanted);
    if (field == NULL)
      continue;

    g_autoptr (GPtrArray) heads = find_heads (field);
    know_heads (drafts, i, heads);
  }
}
