/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Piles into the file, and what keeps their marks apart.
 *
 * A mark may differ in case and spaces from another only if it differs otherwise too
 * (lb_mark_key()): new piles from all first and present marks, so that old paper still leads to one
 * pile, and renamed ones from all present marks, both by a fold inside the transaction that would
 * change them. Renames are rare, so that may cost what reading the file costs. Only a join can bring
 * two piles with one mark, which is shown until somebody renames one.
 *
 * A few facts that most piles lack have no column: they are stored with the pile as entries. */
#include "book/book-private.h"

#include "book/fold.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define ROWS_BETWEEN_LOOKS 256

/* Wider than lb_pile_set() allows; what lies outside is no pile and would upset drawing. */
#define PLACE_MOST_M     1e8
#define ELEVATION_MOST_M 1e4
#define SIZE_MOST_M      100.0
#define ANGLE_MOST       10.0

static gboolean
is_within (double value, double least, double most)
{
  return isnan (value) || (value >= least && value <= most);
}

static gboolean
is_elevation (double value)
{
  return is_within (value, -ELEVATION_MOST_M, ELEVATION_MOST_M);
}

gboolean
lb_pile_check_ranges (const LbPile *pile, GError **error)
{
  const LbOutline *outline = &pile->outline;

  if (!isfinite (pile->x_m) || !isfinite (pile->y_m)) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("Pile “%s” has no place on the job's grid; give it an east and a north"),
                 pile->mark);
    return FALSE;
  }
  if (is_within (pile->x_m, -PLACE_MOST_M, PLACE_MOST_M) &&
      is_within (pile->y_m, -PLACE_MOST_M, PLACE_MOST_M) && (guint) outline->shape < LB_N_SHAPES &&
      is_within (outline->width_m, 0, SIZE_MOST_M) && is_within (outline->void_m, 0, SIZE_MOST_M) &&
      pile->n_bars <= LB_BARS_MAX && is_within (pile->bar_inset_m, 0, SIZE_MOST_M) &&
      is_within (pile->batter, 0, ANGLE_MOST) &&
      is_within (pile->bearing_rad, -ANGLE_MOST, ANGLE_MOST) && is_elevation (pile->head_m) &&
      is_elevation (pile->cut_m) && is_elevation (pile->mudline_m) && is_elevation (pile->toe_m))
    return TRUE;
  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
               _ ("Pile “%s” has a place, size or elevation that no pile has"), pile->mark);
  return FALSE;
}

static gboolean
check_pile (const LbPile *pile, GError **error)
{
  if (!lb_text_check (pile->mark, LB_SHORT_MAX, _ ("A mark"), error) ||
      !lb_text_check (pile->bent, LB_SHORT_MAX, _ ("A bent"), error) ||
      !lb_text_check (pile->row, LB_SHORT_MAX, _ ("A row"), error) ||
      !lb_text_check (pile->note, LB_NOTE_MAX, _ ("A pile's note"), error))
    return FALSE;
  return lb_pile_check_ranges (pile, error);
}

static gboolean
fail_twice (const char *mark, GError **error)
{
  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
               _ ("Two piles would be called “%s”; marks must differ"), mark);
  return FALSE;
}

/* Adds @mark's key to those taken. */
static gboolean
claim_mark (GHashTable *taken, const char *mark, GError **error)
{
  g_autofree char *key = lb_mark_key (mark);

  if (*key == '\0') {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, _ ("A pile has no mark"));
    return FALSE;
  }
  if (g_hash_table_add (taken, g_steal_pointer (&key)))
    return TRUE;
  return fail_twice (mark, error);
}

/* The act in hand is the last one. Two piles that already had one mark, as a join can bring them, keep
 * nobody from renaming others. */
gboolean
lb_book_check_marks (LbBook *book, GError **error)
{
  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, error);

  if (ledger == NULL)
    return FALSE;

  g_autoptr (LbFold) before = lb_fold_new (ledger, ledger->latest_us - 1);
  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  g_autoptr (GHashTable) taken = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint i = 0; i < fold->n_piles; i++) {
    if (strcmp (before->piles[i].mark, fold->piles[i].mark) == 0)
      g_hash_table_add (taken, lb_mark_key (fold->piles[i].mark));
  }
  for (guint i = 0; i < fold->n_piles; i++) {
    if (strcmp (before->piles[i].mark, fold->piles[i].mark) != 0 &&
        !claim_mark (taken, fold->piles[i].mark, error))
      return FALSE;
  }
  return TRUE;
}

/* Every mark that the job has or had at first. */
static GHashTable *
taken_marks (LbBook *book, GError **error)
{
  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, error);

  if (ledger == NULL)
    return NULL;

  g_autoptr (LbFold) fold = lb_fold_new (ledger, G_MAXINT64);
  GHashTable *taken = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint i = 0; i < fold->n_piles; i++) {
    g_hash_table_add (taken, lb_mark_key (fold->piles[i].mark));
    g_hash_table_add (taken, lb_mark_key (lb_ledger_pile (ledger, i)->mark));
  }
  return taken;
}

static void
bind_number (sqlite3_stmt *row, int at, double value)
{
  if (isnan (value))
    sqlite3_bind_null (row, at);
  else
    sqlite3_bind_double (row, at, value);
}

static gboolean
is_said (const LbPile *pile, LbFact fact)
{
  return (pile->unsaid & (1u << fact)) == 0;
}

static gboolean
insert_pile (LbBook *book, const LbPile *pile, char id[LB_ID_MAX], GError **error)
{
  g_autofree char *key = lb_mark_key (pile->mark);
  sqlite3_stmt *row = lb_book_sql (book, LB_SQL_INSERT_PILE, error);

  if (row == NULL)
    return FALSE;
  lb_book_next_id (book, id);
  lb_bind_text (row, 1, id);
  lb_bind_text (row, 2, pile->mark);
  lb_bind_text (row, 3, key);
  lb_bind_text (row, 4, pile->bent);
  lb_bind_text (row, 5, pile->row);
  lb_bind_text (row, 6, pile->note);
  bind_number (row, 7, pile->x_m);
  bind_number (row, 8, pile->y_m);
  lb_bind_text (row, 9, lb_shape_name (pile->outline.shape));
  bind_number (row, 10, pile->outline.width_m > 0 ? pile->outline.width_m : (double) NAN);
  bind_number (row, 11, pile->outline.void_m > 0 ? pile->outline.void_m : 0);
  sqlite3_bind_text (row, 12, pile->bar != NULL ? pile->bar->name : NULL, -1, SQLITE_STATIC);
  if (pile->n_bars > 0)
    sqlite3_bind_int64 (row, 13, pile->n_bars);
  else
    sqlite3_bind_null (row, 13);
  bind_number (row, 14, pile->bar_inset_m);
  bind_number (row, 15, is_said (pile, LB_FACT_BATTER) ? pile->batter : (double) NAN);
  bind_number (row, 16, is_said (pile, LB_FACT_BEARING) ? pile->bearing_rad : (double) NAN);
  bind_number (row, 17, pile->head_m);
  bind_number (row, 18, pile->cut_m);
  bind_number (row, 19, pile->mudline_m);
  bind_number (row, 20, pile->toe_m);

  const int rc = sqlite3_step (row);
  if (rc != SQLITE_DONE)
    lb_connection_fail (book->db, rc, book->name, error);
  sqlite3_reset (row);
  return rc == SQLITE_DONE;
}

static void
add_fact (GArray *drafts, GStringChunk *strings, const char *id, LbFact fact, const char *value)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_FACT);

  draft.pile_id = g_string_chunk_insert (strings, id);
  draft.what = lb_fact_name (fact);
  draft.note = g_string_chunk_insert_const (strings, value);
  g_array_append_val (drafts, draft);
}

/* The facts that have no column, as drafts; texts are kept in @strings. The column of the shape has a
 * word in it always. */
static void
add_other_facts (GArray *drafts, GStringChunk *strings, const LbPile *pile, const char *id)
{
  static const LbFact facts[] = { LB_FACT_TIP_WIDTH, LB_FACT_BAR_PLACES, LB_FACT_CONCRETE,
                                  LB_FACT_PINNED,    LB_FACT_ORDER,      LB_FACT_REMOVAL };
  LbPile empty;

  lb_pile_init (&empty);
  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++) {
    g_autofree char *value = lb_pile_get (pile, facts[i], LB_UNITS_METRIC);
    g_autofree char *none = lb_pile_get (&empty, facts[i], LB_UNITS_METRIC);

    if (!g_str_equal (value, none))
      add_fact (drafts, strings, id, facts[i], value);
  }
  if (!is_said (pile, LB_FACT_SHAPE))
    add_fact (drafts, strings, id, LB_FACT_SHAPE, "");
}

static gboolean
store_other_facts (LbBook *book, GArray *drafts, GError **error)
{
  char act[LB_ID_MAX];

  for (guint i = 0; i < drafts->len; i++) {
    if (!lb_draft_check (&g_array_index (drafts, LbDraft, i), error))
      return FALSE;
  }
  return drafts->len == 0 ||
         lb_book_store_act (book, &g_array_index (drafts, LbDraft, 0), drafts->len, act, error);
}

typedef struct
{
  void (*tell) (gsize done, gsize total, gpointer data);
  gpointer data;
  GCancellable *cancellable;
} Watch;

static gboolean
watch_progress (const Watch *watch, gsize done, gsize total, GError **error)
{
  if (g_cancellable_is_cancelled (watch->cancellable)) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_CANCELLED,
                 _ ("Taking the piles was cancelled; none was taken"));
    return FALSE;
  }
  if (watch->tell != NULL)
    watch->tell (done, total, watch->data);
  return TRUE;
}

static gboolean
insert_piles (LbBook *book, const LbPile *piles, gsize n_piles, const Watch *watch, GError **error)
{
  g_autoptr (GHashTable) taken = taken_marks (book, error);
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));
  g_autoptr (GStringChunk) strings = g_string_chunk_new (4096);
  char id[LB_ID_MAX];

  if (taken == NULL)
    return FALSE;
  for (gsize i = 0; i < n_piles; i++) {
    if (i % ROWS_BETWEEN_LOOKS == 0 && !watch_progress (watch, i, n_piles, error))
      return FALSE;
    if (!check_pile (&piles[i], error) || !claim_mark (taken, piles[i].mark, error) ||
        !insert_pile (book, &piles[i], id, error))
      return FALSE;
    add_other_facts (drafts, strings, &piles[i], id);
  }
  return store_other_facts (book, drafts, error) && watch_progress (watch, n_piles, n_piles, error);
}

gboolean
lb_book_add_piles (LbBook *book,
                   const LbPile *piles,
                   gsize n_piles,
                   void (*progress) (gsize done, gsize total, gpointer data),
                   gpointer data,
                   GCancellable *cancellable,
                   GError **error)
{
  g_return_val_if_fail (book != NULL, FALSE);
  g_return_val_if_fail (piles != NULL || n_piles == 0, FALSE);

  const Watch watch = { .tell = progress, .data = data, .cancellable = cancellable };
  if (!lb_book_begin_act (book, error))
    return FALSE;
  const gboolean is_stored = insert_piles (book, piles, n_piles, &watch, error);
  return lb_book_end_act (book, is_stored, is_stored ? error : NULL);
}
