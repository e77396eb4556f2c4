/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/check-words.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Where the order ends and its reason begins: a mark of punctuation with a blank or nothing after. */
static gsize
length_of_order (const char *words)
{
  gsize length = 0;

  for (;;) {
    length += strcspn (words + length, ":;.");
    if (words[length] == '\0' || words[length + 1] == '\0' || words[length + 1] == ' ')
      return length;
    length++;
  }
}

char *
lb_caution_short_text (const LbCautionRow *row)
{
  g_return_val_if_fail (row != NULL, NULL);

  const char *left_out[LB_N_CAUTION_BLANKS];
  const char *const words = g_dgettext (GETTEXT_PACKAGE, row->words);
  g_autofree char *order = g_strndup (words, length_of_order (words));

  for (guint i = 0; i < LB_N_CAUTION_BLANKS; i++)
    left_out[i] = "…";
  return lb_caution_words_fill (order, left_out);
}

static const LbCautionRow *
find_row (const LbCautionRow *rows, gsize n_rows, const char *key)
{
  for (gsize i = 0; i < n_rows; i++) {
    if (g_str_equal (rows[i].key, key))
      return &rows[i];
  }
  return NULL;
}

char *
lb_check_name_text (const LbFold *fold, const char *key)
{
  g_return_val_if_fail (fold != NULL, NULL);
  g_return_val_if_fail (key != NULL, NULL);

  gsize n_rows;
  const LbCautionRow *const rows = lb_caution_rows (&n_rows);
  const LbCautionRow *row = find_row (rows, n_rows, key);

  if (row == NULL)
    row = find_row (fold->crew_rows, fold->n_crew_rows, key);
  return row != NULL ? lb_caution_short_text (row) : g_strdup (key);
}

char *
lb_checks_text (const LbFold *fold, const GArray *checks, guint names_most)
{
  g_return_val_if_fail (fold != NULL, NULL);
  g_return_val_if_fail (checks != NULL, NULL);

  const guint n = checks->len, n_ticked = lb_checks_n_ticked (checks), n_open = n - n_ticked;
  const guint n_names = names_most > 0 ? MIN (names_most, n_open) : n_open;
  g_autoptr (GString) words = g_string_new (NULL);
  guint n_named = 0;

  if (n == 0)
    return g_strdup (_ ("No checks ticked"));
  g_string_printf (
    words, g_dngettext (GETTEXT_PACKAGE, "%u of %u check ticked", "%u of %u checks ticked", n),
    n_ticked, n);
  for (guint i = 0; i < n && n_named < n_names; i++) {
    const LbCheck *const check = &g_array_index (checks, LbCheck, i);

    if (check->is_ticked)
      continue;

    g_autofree char *name = lb_check_name_text (fold, check->key);

    /* Translators: after “12 of 14 checks ticked”: what was left open. */
    g_string_append (words, n_named++ == 0 ? _ ("; not: ") : "; ");
    g_string_append (words, name);
  }
  if (n_open > n_names) {
    g_string_append (words, "; ");
    g_string_append_printf (
      words, g_dngettext (GETTEXT_PACKAGE, "and %u more", "and %u more", n_open - n_names),
      n_open - n_names);
  }
  return g_string_free (g_steal_pointer (&words), FALSE);
}
