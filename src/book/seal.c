/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Signing a shift, and proving what was signed.
 *
 * What is hashed, by SHA-256: the job's id and moment, the seal's own id, moment, writer and shift,
 * the lines of the seal but the last, and every covered row in its canonical form (seal-rows.c), by
 * name. The lines name the seals it comes after with their hashes, so that each seal rests on all
 * before it. Two crews' seals can come after the same one; the next seal comes after both.
 *
 * A seal says by name which rows it covers, not by time or number: rows that come from another
 * crew's file later are not taken for forged ones, and stand under the seal after them. Rows of
 * shifts that nobody signed are left to their own seal.
 *
 * The characters under “checks” are a short sum of each row, no proof, by which the first row that
 * breaks a seal is named.
 *
 * Invariants: a row is covered by every seal that names it and by one at least once its shift was
 * signed; a seal is never covered as a row, only by the chain. */
#include "book/seal.h"

#include "book/book-private.h"
#include "book/seal-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* A seal of more rows than that names no row, so that its text stays within what the file takes. */
#define CHECKED_ROWS_MOST 200000

#define HASHED_AT_ONCE 65536

/* Crews that sign side by side cover some rows twice; a file whose seals cover each row more often
 * than that was made to keep us busy. */
#define TIMES_COVERED_MOST 8

static gboolean
is_seal (const LbEntry *entry)
{
  return entry->kind == LB_ENTRY_SEAL;
}

/* Three characters from 18 bits of a sum (Fowler, Noll and Vo, 1a, 64 bits) of the row's text. */
static void
sum_row (const char *text, gsize length, char check[LB_CHECK_SIZE])
{
  static const char characters[] =
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
  guint64 sum = G_GUINT64_CONSTANT (0xcbf29ce484222325);

  for (gsize i = 0; i < length; i++)
    sum = (sum ^ (guint8) text[i]) * G_GUINT64_CONSTANT (0x100000001b3);
  sum ^= sum >> 32;
  for (int i = 0; i < LB_CHECK_SIZE; i++) {
    check[i] = characters[sum & 63];
    sum >>= 6;
  }
}

/* The rows of a seal in its order, through @look; FALSE with the name of the first that is not
 * there. */
typedef gboolean (*RowFunc) (guint row, gpointer data);

static gboolean
walk_rows (const GArray *rows,
           const LbSealText *seal,
           RowFunc look,
           gpointer data,
           char **out_missing)
{
  for (guint i = 0; i < seal->spans->len; i++) {
    const LbSealSpan *span = &g_array_index (seal->spans, LbSealSpan, i);
    LbRowName name = { .tag = span->tag, .tag_length = strlen (span->tag), .number = span->from };
    guint at = lb_rows_find (rows, &name);

    for (; name.number <= span->to; name.number++, at++) {
      if (at == rows->len ||
          lb_row_name_compare (&g_array_index (rows, LbRow, at).name, &name) != 0) {
        if (out_missing != NULL)
          *out_missing = g_strdup_printf ("%s-%" G_GUINT64_FORMAT, span->tag, name.number);
        return FALSE;
      }
      if (!look (at, data))
        return FALSE;
    }
  }
  return TRUE;
}

/* --- Hashing ------------------------------------------------------------------------------- */

typedef struct
{
  const LbLedger *ledger;
  const GArray *rows;
  GChecksum *sum;
  GString *text;      /* not hashed yet */
  GString *checks;    /* of the rows so far */
  const char *stated; /* the seal's own, NULL while it is made */
  gsize n_stated;
  int first_changed; /* row, -1 for none */
} Hashing;

static gboolean
hash_row (guint at, gpointer data)
{
  Hashing *hashing = data;
  const gsize begin = hashing->text->len;
  char check[LB_CHECK_SIZE];

  lb_row_put (hashing->text, hashing->ledger, &g_array_index (hashing->rows, LbRow, at));
  sum_row (hashing->text->str + begin, hashing->text->len - begin, check);
  if (hashing->first_changed < 0 && hashing->n_stated >= hashing->checks->len + LB_CHECK_SIZE &&
      memcmp (hashing->stated + hashing->checks->len, check, LB_CHECK_SIZE) != 0)
    hashing->first_changed = (int) at;
  g_string_append_len (hashing->checks, check, LB_CHECK_SIZE);
  if (hashing->text->len > HASHED_AT_ONCE) {
    g_checksum_update (hashing->sum, (const guchar *) hashing->text->str,
                       (gssize) hashing->text->len);
    g_string_truncate (hashing->text, 0);
  }
  return TRUE;
}

static Hashing
begin_hash (const LbLedger *ledger, const GArray *rows, const char *stated)
{
  return (Hashing){
    .ledger = ledger,
    .rows = rows,
    .sum = g_checksum_new (G_CHECKSUM_SHA256),
    .text = g_string_new (NULL),
    .checks = g_string_new (NULL),
    .stated = stated,
    .n_stated = stated != NULL ? strlen (stated) : 0,
    .first_changed = -1,
  };
}

static void
put_who_seals (GString *text, const LbLedger *ledger, const LbEntry *seal)
{
  lb_put_text (text, ledger->job_id);
  lb_put_text (text, ledger->job_made);
  lb_put_text (text, seal->id);
  lb_put_number (text, seal->at_us);
  lb_put_text (text, seal->who);
  lb_put_text (text, seal->shift >= 0 ? lb_ledger_shift (ledger, (guint) seal->shift)->id : "");
}

/* Before the rows: who seals, and what the seal says but its last line. */
static void
hash_head (Hashing *hashing, const LbEntry *seal, const char *head)
{
  put_who_seals (hashing->text, hashing->ledger, seal);
  lb_put_text (hashing->text, head);
}

static void
end_hash (Hashing *hashing, char hash[LB_SHA256_HEX + 1])
{
  g_checksum_update (hashing->sum, (const guchar *) hashing->text->str,
                     (gssize) hashing->text->len);
  g_strlcpy (hash, g_checksum_get_string (hashing->sum), LB_SHA256_HEX + 1);
  g_checksum_free (hashing->sum);
  g_string_free (hashing->text, TRUE);
  g_string_free (hashing->checks, TRUE);
}

/* --- Proving ------------------------------------------------------------------------------- */

typedef struct
{
  const LbLedger *ledger;
  GArray *rows;
  guint8 *is_covered;
  GHashTable *hash_of; /* seal id → its stated hash, as far as it was looked at */
  gsize n_left;        /* rows that may still be hashed */
  LbSealReport *report;
} Proving;

static gboolean
mark_row (guint at, gpointer data)
{
  ((guint8 *) data)[at] = 1;
  return TRUE;
}

static void
add_fault (Proving *proving, const LbEntry *seal, LbSealFaultKind kind, char *row_id)
{
  const LbSealFault fault = {
    .kind = kind,
    .shift = seal != NULL ? seal->shift : -1,
    .seal_id = seal != NULL ? seal->id : "",
    .row_id = row_id != NULL ? row_id : g_strdup (""),
  };

  g_array_append_val (proving->report->faults, fault);
}

/* A seal has a shift and a note, and nothing else that an entry may have. */
static gboolean
is_bare (const LbEntry *seal)
{
  return seal->shift >= 0 && seal->pile < 0 && seal->bars == 0 && seal->count == 0 &&
         isnan (seal->amount) && seal->start_us == 0 && seal->end_us == 0 && seal->up_us == 0 &&
         *seal->what == '\0' && *seal->of == '\0' && strcmp (seal->act, seal->id) == 0;
}

/* Whether the seals that @text comes after are those it says. */
static gboolean
is_chained (Proving *proving, const LbSealText *text)
{
  for (guint i = 0; i < text->after->len; i++) {
    const LbSealLink *link = &g_array_index (text->after, LbSealLink, i);
    const char *hash = g_hash_table_lookup (proving->hash_of, link->id);

    if (hash == NULL)
      proving->report->n_absent++;
    else if (strcmp (hash, link->hash) != 0)
      return FALSE;
  }
  return TRUE;
}

static void
prove_rows (Proving *proving, const LbEntry *seal, const LbSealText *text)
{
  Hashing hashing = begin_hash (proving->ledger, proving->rows, text->checks->str);
  g_autofree char *head = lb_seal_text_head (text);
  char *missing = NULL;
  char hash[LB_SHA256_HEX + 1];

  hash_head (&hashing, seal, head);
  walk_rows (proving->rows, text, hash_row, &hashing, &missing);

  const int changed = hashing.first_changed;
  end_hash (&hashing, hash);
  if (missing != NULL)
    add_fault (proving, seal, LB_SEAL_FAULT_MISSING, missing);
  else if (strcmp (hash, text->hash) != 0)
    add_fault (proving, seal, LB_SEAL_FAULT_CHANGED,
               changed >= 0
                 ? g_strdup (lb_row_id (proving->ledger,
                                        &g_array_index (proving->rows, LbRow, (guint) changed)))
                 : NULL);
}

static gsize
count_rows (const LbSealText *text)
{
  gsize n = 0;

  for (guint i = 0; i < text->spans->len; i++) {
    const LbSealSpan *span = &g_array_index (text->spans, LbSealSpan, i);
    n += span->to >= span->from ? span->to - span->from + 1 : 0;
  }
  return n;
}

static void
prove (Proving *proving, const LbEntry *seal)
{
  g_autoptr (LbSealText) text = lb_seal_text_read (seal->note);

  proving->report->n_seals++;
  proving->report->head = seal;
  if (text == NULL || !is_bare (seal)) {
    g_hash_table_insert (proving->hash_of, (gpointer) seal->id, g_strdup (""));
    add_fault (proving, seal, LB_SEAL_FAULT_TEXT, NULL);
    return;
  }
  g_hash_table_insert (proving->hash_of, (gpointer) seal->id, g_strdup (text->hash));

  const gsize n_rows = count_rows (text);
  if (n_rows > proving->n_left) {
    add_fault (proving, seal, LB_SEAL_FAULT_TEXT, NULL);
    return;
  }
  proving->n_left -= n_rows;
  walk_rows (proving->rows, text, mark_row, proving->is_covered, NULL);
  if (!is_chained (proving, text))
    add_fault (proving, seal, LB_SEAL_FAULT_CHAIN, NULL);
  else
    prove_rows (proving, seal, text);
}

static void
clear_fault (gpointer fault)
{
  g_free (((LbSealFault *) fault)->row_id);
}

void
lb_seals_check (const LbLedger *ledger, LbSealReport *out_report)
{
  g_return_if_fail (ledger != NULL);
  g_return_if_fail (out_report != NULL);

  *out_report = (LbSealReport){ .faults = g_array_new (FALSE, FALSE, sizeof (LbSealFault)) };
  g_array_set_clear_func (out_report->faults, clear_fault);

  g_autoptr (GArray) rows = lb_rows_new (ledger);
  g_autofree guint8 *is_covered = g_new0 (guint8, rows->len + 1);
  g_autoptr (GHashTable) hash_of = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);
  Proving proving = {
    .ledger = ledger,
    .rows = rows,
    .is_covered = is_covered,
    .hash_of = hash_of,
    .n_left = (gsize) TIMES_COVERED_MOST * (rows->len + 1),
    .report = out_report,
  };

  for (guint i = 0; i < ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (is_seal (entry))
      prove (&proving, entry);
  }
  for (guint i = 0; i < rows->len; i++)
    out_report->n_rows += is_covered[i];
  out_report->n_open = ledger->piles->len + ledger->shifts->len + ledger->entries->len -
                       out_report->n_seals - out_report->n_rows;
  if (out_report->n_seals < ledger->n_seals_noted)
    add_fault (&proving, NULL, LB_SEAL_FAULT_GONE, NULL);
}

void
lb_seal_report_clear (LbSealReport *report)
{
  g_clear_pointer (&report->faults, g_array_unref);
}

static char *
shift_name (const LbLedger *ledger, int shift)
{
  GDate date;
  char text[16];

  if (shift < 0)
    return g_strdup (_ ("no shift"));

  const LbShift *signed_shift = lb_ledger_shift (ledger, (guint) shift);
  g_date_clear (&date, 1);
  g_date_set_julian (&date, signed_shift->day);
  g_date_strftime (text, sizeof text, "%Y-%m-%d", &date);
  return strcmp (signed_shift->watch, "night") == 0 ? g_strdup_printf (_ ("%s night"), text)
                                                    : g_strdup (text);
}

char *
lb_seal_fault_text (const LbLedger *ledger, const LbSealFault *fault)
{
  g_return_val_if_fail (ledger != NULL, NULL);
  g_return_val_if_fail (fault != NULL, NULL);

  g_autofree char *shift = shift_name (ledger, fault->shift);

  switch (fault->kind) {
  case LB_SEAL_FAULT_TEXT:
    return g_strdup_printf (_ ("Signature of the shift of %s: the seal %s was changed"), shift,
                            fault->seal_id);
  case LB_SEAL_FAULT_MISSING:
    return g_strdup_printf (_ ("Signature of the shift of %s: row %s was signed and is gone"),
                            shift, fault->row_id);
  case LB_SEAL_FAULT_CHANGED:
    return *fault->row_id != '\0'
             ? g_strdup_printf (_ ("Signature of the shift of %s: row %s was changed after it was "
                                   "signed"),
                                shift, fault->row_id)
             : g_strdup_printf (_ ("Signature of the shift of %s: the seal %s is not of what is on "
                                   "record"),
                                shift, fault->seal_id);
  case LB_SEAL_FAULT_CHAIN:
    return g_strdup_printf (_ ("Signature of the shift of %s: the signature before it is not the "
                               "one it came after"),
                            shift);
  case LB_SEAL_FAULT_GONE:
    return g_strdup (_ ("A signature that was in this file is gone"));
  }
  g_return_val_if_reached (NULL);
}

char *
lb_seal_hash (const LbEntry *seal)
{
  g_return_val_if_fail (seal != NULL, NULL);

  g_autoptr (LbSealText) text = lb_seal_text_read (seal->note);
  return g_strdup (text != NULL ? text->hash : "");
}

void
lb_seal_mark_rows (const GArray *rows, const LbEntry *seal, guint8 *is_covered)
{
  g_return_if_fail (rows != NULL);
  g_return_if_fail (seal != NULL);

  g_autoptr (LbSealText) text = lb_seal_text_read (seal->note);
  if (text != NULL)
    walk_rows (rows, text, mark_row, is_covered, NULL);
}

/* --- Signing ------------------------------------------------------------------------------- */

/* Seals so far: what they cover, and which of them no other comes after. */
typedef struct
{
  guint8 *is_covered; /* by row */
  guint8 *is_signed;  /* by shift */
  GHashTable *open;   /* id → hash, of the seals that no seal comes after */
} Standing;

static void
look_at_seals (const LbLedger *ledger, const GArray *rows, Standing *standing)
{
  for (guint i = 0; i < ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);
    g_autoptr (LbSealText) text = is_seal (entry) ? lb_seal_text_read (entry->note) : NULL;

    if (is_seal (entry) && entry->shift >= 0)
      standing->is_signed[entry->shift] = 1;
    if (text == NULL)
      continue;
    walk_rows (rows, text, mark_row, standing->is_covered, NULL);
    for (guint at = 0; at < text->after->len; at++)
      g_hash_table_remove (standing->open, g_array_index (text->after, LbSealLink, at).id);
    g_hash_table_insert (standing->open, g_strdup (entry->id), g_strdup (text->hash));
  }
}

static gboolean
is_to_cover (const LbLedger *ledger, const LbRow *row, const Standing *standing, int shift)
{
  if (row->kind != LB_ROW_ENTRY)
    return TRUE;

  const int of = lb_ledger_entry (ledger, row->index)->shift;
  return of < 0 || of == shift || standing->is_signed[of];
}

static int
compare_texts (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

static void
add_links (LbSealText *text, GHashTable *open)
{
  guint n;
  g_autofree gpointer *ids = g_hash_table_get_keys_as_array (open, &n);

  qsort (ids, n, sizeof *ids, compare_texts);
  for (guint i = 0; i < n; i++)
    lb_seal_text_add_link (text, ids[i], g_hash_table_lookup (open, ids[i]));
}

/* What the seal of @shift says, but for the checks and the hash. */
static LbSealText *
begin_seal (const LbLedger *ledger, const GArray *rows, const Standing *standing, int shift)
{
  LbSealText *text = lb_seal_text_new ();
  gboolean is_open = FALSE; /* whether the last span can go on */

  add_links (text, standing->open);
  for (guint i = 0; i < rows->len; i++) {
    const LbRow *row = &g_array_index (rows, LbRow, i);
    const gboolean takes = !standing->is_covered[i] && is_to_cover (ledger, row, standing, shift);

    text->count += takes || standing->is_covered[i];
    if (takes) {
      LbSealSpan *last = is_open ? &g_array_index (text->spans, LbSealSpan, text->spans->len - 1)
                                 : NULL;

      if (last != NULL && row->name.number == last->to + 1 &&
          strlen (last->tag) == row->name.tag_length &&
          strncmp (last->tag, row->name.tag, row->name.tag_length) == 0)
      {
        last->to++;
      } else {
        g_autofree char *tag = g_strndup (row->name.tag, row->name.tag_length);
        lb_seal_text_add_span (text, tag, row->name.number, row->name.number);
      }
    }
    is_open = takes;
  }
  return text;
}

/* The checks, which stand in what is hashed, first; then the hash. */
static char *
finish_seal (const LbLedger *ledger, const GArray *rows, const LbEntry *seal, LbSealText *text)
{
  Hashing sums = begin_hash (ledger, rows, NULL);
  char hash[LB_SHA256_HEX + 1];

  walk_rows (rows, text, hash_row, &sums, NULL);
  if (sums.checks->len <= CHECKED_ROWS_MOST * LB_CHECK_SIZE)
    g_string_assign (text->checks, sums.checks->str);
  end_hash (&sums, hash);

  Hashing hashing = begin_hash (ledger, rows, NULL);
  g_autofree char *head = lb_seal_text_head (text);
  hash_head (&hashing, seal, head);
  walk_rows (rows, text, hash_row, &hashing, NULL);
  end_hash (&hashing, hash);
  return g_strdup_printf ("%ssha256 %s", head, hash);
}

/* The note of the seal that the next act will be. */
static char *
make_seal (const LbLedger *ledger, const LbEntry *seal, GError **error)
{
  g_autoptr (GArray) rows = lb_rows_new (ledger);
  g_autofree guint8 *is_covered = g_new0 (guint8, rows->len + 1);
  g_autofree guint8 *is_signed = g_new0 (guint8, ledger->shifts->len + 1);
  g_autoptr (GHashTable) open = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  Standing standing = { .is_covered = is_covered, .is_signed = is_signed, .open = open };

  look_at_seals (ledger, rows, &standing);
  if (is_signed[seal->shift]) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_SIGNED, _ ("This shift is signed already"));
    return NULL;
  }

  g_autoptr (LbSealText) text = begin_seal (ledger, rows, &standing, seal->shift);
  return finish_seal (ledger, rows, seal, text);
}

static gboolean
store_seal (LbBook *book, const LbLedger *ledger, int shift, const char *who, GError **error)
{
  char id[LB_ID_MAX], act[LB_ID_MAX];
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SEAL);
  gint64 seq;

  if (!lb_book_find_next (book, &seq, error))
    return FALSE;
  lb_book_coming_id (book, id);

  const LbEntry seal = {
    .id = id,
    .at_us = lb_book_next_time (book, 0),
    .who = who,
    .shift = shift,
    .kind = LB_ENTRY_SEAL,
  };
  g_autofree char *note = make_seal (ledger, &seal, error);
  if (note == NULL)
    return FALSE;
  draft.shift_id = lb_ledger_shift (ledger, (guint) shift)->id;
  draft.who = who;
  draft.at_us = seal.at_us;
  draft.note = note;
  return lb_draft_check (&draft, error) && lb_book_store_act (book, &draft, 1, act, error) &&
         lb_book_run (book, LB_SQL_NOTE_SEALS, error);
}

gboolean
lb_book_sign (LbBook *book, LbLedger *ledger, const char *shift_id, const char *who, GError **error)
{
  g_return_val_if_fail (book != NULL, FALSE);
  g_return_val_if_fail (ledger != NULL, FALSE);
  g_return_val_if_fail (shift_id != NULL, FALSE);
  g_return_val_if_fail (who != NULL, FALSE);

  if (*who == '\0') {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("Say who signs: a role or initials"));
    return FALSE;
  }
  if (!lb_book_begin_act (book, error))
    return FALSE;

  gboolean is_stored = lb_book_read_on (book, ledger, NULL, error);
  if (is_stored) {
    const int shift = lb_ledger_find_shift (ledger, shift_id);

    if (shift < 0)
      g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                   _ ("The job has no shift with the id “%.60s”"), shift_id);
    is_stored = shift >= 0 && store_seal (book, ledger, shift, who, error);
  }
  return lb_book_end_act (book, is_stored, is_stored ? error : NULL);
}
