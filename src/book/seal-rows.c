/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The canonical form of a row. Each field is LENGTH:BYTES, so that no two rows read the same; the
 * first says of which table it is. Whole numbers and moments are decimal. Other numbers are the
 * sixteen hexadecimal digits of their IEEE 754 double, which say exactly what the file holds; one
 * that is not known is empty.
 *
 * Cost: some 0.7 µs a row, so that 200,000 of them are hashed in a quarter of a second. */
#include "book/seal-rows.h"

#include <math.h>
#include <string.h>

gboolean
lb_row_name_read (const char *id, LbRowName *out_name)
{
  const char *hyphen = strrchr (id, '-');
  guint64 number = 0;

  if (hyphen == NULL || hyphen == id || hyphen[1] == '\0' || strlen (hyphen) > 19 ||
      (hyphen[1] == '0' && hyphen[2] != '\0'))
    return FALSE;
  for (const char *at = id; at < hyphen; at++) {
    if (!g_ascii_islower (*at) && !g_ascii_isdigit (*at))
      return FALSE;
  }
  for (const char *at = hyphen + 1; *at != '\0'; at++) {
    if (!g_ascii_isdigit (*at))
      return FALSE;
    number = number * 10 + (guint64) (*at - '0');
  }
  *out_name = (LbRowName){ .tag = id, .tag_length = (gsize) (hyphen - id), .number = number };
  return TRUE;
}

int
lb_row_name_compare (const LbRowName *one, const LbRowName *other)
{
  const int by_tag = memcmp (one->tag, other->tag, MIN (one->tag_length, other->tag_length));

  if (by_tag != 0)
    return by_tag;
  if (one->tag_length != other->tag_length)
    return one->tag_length < other->tag_length ? -1 : 1;
  return one->number < other->number ? -1 : one->number > other->number;
}

static int
compare_rows (gconstpointer a, gconstpointer b)
{
  return lb_row_name_compare (&((const LbRow *) a)->name, &((const LbRow *) b)->name);
}

static void
add_row (GArray *rows, const char *id, LbRowKind kind, guint index)
{
  LbRow row = { .kind = kind, .index = index };

  if (lb_row_name_read (id, &row.name))
    g_array_append_val (rows, row);
}

GArray *
lb_rows_new (const LbLedger *ledger)
{
  GArray *rows = g_array_sized_new (
    FALSE, FALSE, sizeof (LbRow), ledger->piles->len + ledger->shifts->len + ledger->entries->len);

  for (guint i = 0; i < ledger->piles->len; i++)
    add_row (rows, lb_ledger_pile (ledger, i)->id, LB_ROW_PILE, i);
  for (guint i = 0; i < ledger->shifts->len; i++)
    add_row (rows, lb_ledger_shift (ledger, i)->id, LB_ROW_SHIFT, i);
  for (guint i = 0; i < ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (entry->kind != LB_ENTRY_SEAL)
      add_row (rows, entry->id, LB_ROW_ENTRY, i);
  }
  g_array_sort (rows, compare_rows);
  return rows;
}

const char *
lb_row_id (const LbLedger *ledger, const LbRow *row)
{
  if (row->kind == LB_ROW_PILE)
    return lb_ledger_pile (ledger, row->index)->id;
  if (row->kind == LB_ROW_SHIFT)
    return lb_ledger_shift (ledger, row->index)->id;
  return lb_ledger_entry (ledger, row->index)->id;
}

guint
lb_rows_find (const GArray *rows, const LbRowName *name)
{
  guint low = 0, high = rows->len;

  while (low < high) {
    const guint middle = low + (high - low) / 2;

    if (lb_row_name_compare (&g_array_index (rows, LbRow, middle).name, name) < 0)
      low = middle + 1;
    else
      high = middle;
  }
  return low;
}

/* The decimal digits of @number into the end of @room; where they begin. */
static char *
digits_of (guint64 number, char room[24])
{
  char *at = room + 23;

  *at = '\0';
  do {
    *--at = (char) ('0' + number % 10);
    number /= 10;
  } while (number != 0);
  return at;
}

static void
put_bytes (GString *text, const char *bytes, gsize length)
{
  char room[24];

  g_string_append (text, digits_of (length, room));
  g_string_append_c (text, ':');
  g_string_append_len (text, bytes, (gssize) length);
}

void
lb_put_text (GString *text, const char *field)
{
  put_bytes (text, field != NULL ? field : "", field != NULL ? strlen (field) : 0);
}

void
lb_put_number (GString *text, gint64 number)
{
  char room[24];
  char *at = digits_of (number < 0 ? 0 - (guint64) number : (guint64) number, room);

  if (number < 0)
    *--at = '-';
  lb_put_text (text, at);
}

static void
put_double (GString *text, double value)
{
  static const char digits[] = "0123456789abcdef";
  char room[16];
  guint64 bits;

  if (isnan (value)) {
    lb_put_text (text, "");
    return;
  }
  memcpy (&bits, &value, sizeof bits);
  for (int i = 15; i >= 0; i--) {
    room[i] = digits[bits & 0xf];
    bits >>= 4;
  }
  put_bytes (text, room, sizeof room);
}

/* Whether the file says it, even if it says nothing that needs saying. */
static gboolean
is_said (const LbPile *pile, LbFact fact)
{
  return (pile->unsaid & (1u << fact)) == 0;
}

static void
put_pile (GString *text, const LbPile *pile)
{
  lb_put_text (text, "pile");
  lb_put_text (text, pile->id);
  lb_put_text (text, pile->mark);
  lb_put_text (text, pile->bent);
  lb_put_text (text, pile->row);
  lb_put_text (text, pile->note);
  put_double (text, pile->x_m);
  put_double (text, pile->y_m);
  lb_put_text (text, lb_shape_name (pile->outline.shape));
  put_double (text, pile->outline.width_m);
  put_double (text, pile->outline.void_m);
  lb_put_text (text, pile->bar != NULL ? pile->bar->name : "");
  lb_put_number (text, pile->n_bars);
  put_double (text, pile->bar_inset_m);
  put_double (text, is_said (pile, LB_FACT_BATTER) ? pile->batter : (double) NAN);
  put_double (text, is_said (pile, LB_FACT_BEARING) ? pile->bearing_rad : (double) NAN);
  put_double (text, pile->head_m);
  put_double (text, pile->cut_m);
  put_double (text, pile->mudline_m);
  put_double (text, pile->toe_m);
}

static void
put_shift (GString *text, const LbShift *shift)
{
  lb_put_text (text, "shift");
  lb_put_text (text, shift->id);
  lb_put_number (text, shift->day);
  lb_put_text (text, shift->watch);
  lb_put_number (text, shift->opened_us);
  lb_put_text (text, shift->who);
}

static void
put_entry (GString *text, const LbLedger *ledger, const LbEntry *entry)
{
  lb_put_text (text, "entry");
  lb_put_text (text, entry->id);
  lb_put_text (text, entry->act);
  lb_put_number (text, entry->at_us);
  lb_put_text (text, entry->who);
  lb_put_text (text, entry->shift >= 0 ? lb_ledger_shift (ledger, (guint) entry->shift)->id : "");
  lb_put_text (text, lb_entry_kind_name (entry->kind));
  lb_put_text (text, entry->pile >= 0 ? lb_ledger_pile (ledger, (guint) entry->pile)->id : "");
  lb_put_text (text, entry->what);
  lb_put_number (text, (gint64) entry->bars);
  lb_put_number (text, entry->count);
  put_double (text, entry->amount);
  lb_put_number (text, entry->start_us);
  lb_put_number (text, entry->end_us);
  lb_put_number (text, entry->up_us);
  lb_put_text (text, entry->note);
  lb_put_text (text, entry->of);
}

void
lb_row_put (GString *text, const LbLedger *ledger, const LbRow *row)
{
  if (row->kind == LB_ROW_PILE)
    put_pile (text, lb_ledger_pile (ledger, row->index));
  else if (row->kind == LB_ROW_SHIFT)
    put_shift (text, lb_ledger_shift (ledger, row->index));
  else
    put_entry (text, ledger, lb_ledger_entry (ledger, row->index));
}
