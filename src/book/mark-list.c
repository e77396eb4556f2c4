/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lists and ranges of marks.
 *
 * A mark is compared by its key (lb_mark_key()), cut into runs of digits and single other bytes: "c12"
 * is c, 12. Two marks make a range when they have as many parts and differ in one, which is a number
 * in both or an ASCII letter in both. A whole item that is itself a mark is that pile and no range,
 * so that a pile may be called "A to B". */
#include "book/mark-list.h"

#include "book/book-error.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include <string.h>

#define PARTS_MAX 32

typedef struct
{
  guint64 value; /* of a run of digits, or the byte */
  gboolean is_number;
} Part;

typedef struct
{
  gsize n;
  Part parts[PARTS_MAX];
} Parts;

/* %FALSE for a mark too odd to count in. */
static gboolean
cut (const char *mark, Parts *out)
{
  g_autofree char *key = lb_mark_key (mark);

  out->n = 0;
  for (const char *at = key; *at != '\0';) {
    if (out->n == PARTS_MAX)
      return FALSE;

    Part *part = &out->parts[out->n++];
    char *end = NULL;
    part->is_number = g_ascii_isdigit (*at);
    part->value = part->is_number ? g_ascii_strtoull (at, &end, 10) : (guchar) *at;
    at = part->is_number ? end : at + 1;
  }
  return out->n > 0;
}

static gboolean
is_same (const Part *one, const Part *other)
{
  return one->is_number == other->is_number && one->value == other->value;
}

/* The one part in which two marks differ; %FALSE when it is not one, or nothing that can be counted
 * through. */
static gboolean
find_counted (const Parts *first, const Parts *last, gsize *out_at)
{
  gsize n_differ = 0;

  *out_at = 0;
  if (first->n != last->n)
    return FALSE;
  for (gsize i = 0; i < first->n; i++) {
    if (is_same (&first->parts[i], &last->parts[i]))
      continue;
    *out_at = i;
    n_differ++;
  }
  if (n_differ != 1)
    return FALSE;

  const Part *from = &first->parts[*out_at];
  const Part *to = &last->parts[*out_at];
  return from->is_number == to->is_number &&
         (from->is_number || (from->value < 128 && g_ascii_isalpha ((char) from->value) &&
                              to->value < 128 && g_ascii_isalpha ((char) to->value)));
}

static gboolean
is_between (const Parts *mark, const Parts *first, const Parts *last, gsize at)
{
  const guint64 from = first->parts[at].value;
  const guint64 to = last->parts[at].value;
  const guint64 value = mark->parts[at].value;

  if (mark->n != first->n || mark->parts[at].is_number != first->parts[at].is_number)
    return FALSE;
  for (gsize i = 0; i < mark->n; i++) {
    if (i != at && !is_same (&mark->parts[i], &first->parts[i]))
      return FALSE;
  }
  return value >= MIN (from, to) && value <= MAX (from, to);
}

static void
take (GArray *piles, guint pile)
{
  for (guint i = 0; i < piles->len; i++) {
    if (g_array_index (piles, guint, i) == pile)
      return;
  }
  g_array_append_val (piles, pile);
}

typedef struct
{
  guint64 value;
  guint pile;
} Member;

static int
compare_members (gconstpointer a, gconstpointer b)
{
  const guint64 one = ((const Member *) a)->value;
  const guint64 other = ((const Member *) b)->value;

  return one < other ? -1 : one > other;
}

static void
take_range (GArray *piles, const LbFold *fold, const Parts *first, const Parts *last, gsize at)
{
  g_autoptr (GArray) members = g_array_new (FALSE, FALSE, sizeof (Member));
  const gboolean is_falling = first->parts[at].value > last->parts[at].value;

  for (guint i = 0; i < fold->n_piles; i++) {
    Parts mark;

    if (cut (fold->piles[i].mark, &mark) && is_between (&mark, first, last, at)) {
      const Member member = { mark.parts[at].value, i };
      g_array_append_val (members, member);
    }
  }
  g_array_sort (members, compare_members);
  for (guint i = 0; i < members->len; i++) {
    const guint from_end = members->len - 1 - i;
    take (piles, g_array_index (members, Member, is_falling ? from_end : i).pile);
  }
}

static gboolean
find_pile (const LbFold *fold, const char *mark, guint *out_pile, GError **error)
{
  const int pile = lb_fold_find_mark (fold, mark);

  if (pile < 0) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("There is no pile “%s” in this job"), mark);
    return FALSE;
  }
  *out_pile = (guint) pile;
  return TRUE;
}

/* Cuts an item at the word or sign of a range; %FALSE when there is none. */
static gboolean
split_range (const char *item, char **out_first, char **out_last)
{
  /* Translators: between the two ends of a range of piles, "C3 to C9", blanks included. */
  const char *const signs[] = { C_ ("range of piles", " to "), " to ", "–", ".." };

  for (gsize i = 0; i < G_N_ELEMENTS (signs); i++) {
    const char *found = strstr (item, signs[i]);

    if (found == NULL)
      continue;
    *out_first = g_strstrip (g_strndup (item, (gsize) (found - item)));
    *out_last = g_strstrip (g_strdup (found + strlen (signs[i])));
    return TRUE;
  }
  return FALSE;
}

/* "C3..9" is short for "C3..C9", unless there is a pile 9. */
static char *
whole_end (const LbFold *fold, const char *first, const char *last)
{
  gsize head = strlen (first);

  while (head > 0 && g_ascii_isdigit (first[head - 1]))
    head--;
  if (*last == '\0' || last[strspn (last, "0123456789")] != '\0' ||
      lb_fold_find_mark (fold, last) >= 0)
    return g_strdup (last);
  return g_strdup_printf ("%.*s%s", (int) head, first, last);
}

static gboolean
take_item (GArray *piles, const LbFold *fold, const char *item, GError **error)
{
  g_autofree char *first = NULL;
  g_autofree char *said_last = NULL;
  g_autofree char *last = NULL;
  guint from, to;
  gsize at;
  Parts first_parts, last_parts;

  if (lb_fold_find_mark (fold, item) >= 0 || !split_range (item, &first, &said_last)) {
    if (!find_pile (fold, item, &from, error))
      return FALSE;
    take (piles, from);
    return TRUE;
  }
  last = whole_end (fold, first, said_last);
  if (!find_pile (fold, first, &from, error) || !find_pile (fold, last, &to, error))
    return FALSE;
  if (from == to) {
    take (piles, from);
    return TRUE;
  }
  if (!cut (first, &first_parts) || !cut (last, &last_parts) ||
      !find_counted (&first_parts, &last_parts, &at))
  {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("“%s” and “%s” are no range: the two ends differ in one number or in one "
                    "letter"),
                 first, last);
    return FALSE;
  }
  take_range (piles, fold, &first_parts, &last_parts, at);
  return TRUE;
}

GArray *
lb_mark_list_read (const LbFold *fold, const char *text, GError **error)
{
  g_return_val_if_fail (fold != NULL, NULL);
  g_return_val_if_fail (text != NULL, NULL);

  g_autoptr (GArray) piles = g_array_new (FALSE, FALSE, sizeof (guint));
  g_auto (GStrv) items = g_strsplit_set (text, ",;", -1);

  for (gsize i = 0; items[i] != NULL; i++) {
    const char *item = g_strstrip (items[i]);

    if (*item != '\0' && !take_item (piles, fold, item, error))
      return NULL;
  }
  if (piles->len == 0) {
    g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                         _ ("No pile is named: type a mark as G7, or several as C3 to C9"));
    return NULL;
  }
  return g_steal_pointer (&piles);
}

int
lb_mark_list_next (const LbFold *fold, guint pile)
{
  g_return_val_if_fail (fold != NULL && pile < fold->n_piles, -1);

  for (guint i = pile + 1; i < fold->n_piles; i++) {
    if (g_str_equal (fold->piles[i].bent, fold->piles[pile].bent) &&
        (fold->states[i].done & LB_STEP_BIT (LB_STEP_PULLED)) == 0)
      return (int) i;
  }
  return -1;
}
