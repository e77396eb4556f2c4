/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A warning with a hole in it, or under a condition that nobody reckons, would never be shown or be
 * shown wrong: a list is read whole or not at all. */
#include "book/caution-text.h"

#include "book/book-error.h"

#include <glib/gi18n-lib.h>
#include <string.h>

enum {
  KEY,
  SEVERITY,
  WHEN,
  WORDS,
  SOURCE,
};

static gboolean
has_key (const LbCautionRow *rows, gsize n_rows, const char *key)
{
  for (gsize i = 0; i < n_rows; i++)
    if (g_str_equal (rows[i].key, key))
      return TRUE;
  return FALSE;
}

static char *
read_condition (const char *when, LbCautionWhen *out_when)
{
  if (lb_caution_when_from_key (when, out_when))
    return NULL;

  g_autoptr (GString) known = g_string_new (NULL);

  for (guint i = 0; i < LB_N_CAUTION_WHENS; i++)
    g_string_append_printf (known, "%s%s", i > 0 ? ", " : "",
                            lb_caution_when_key ((LbCautionWhen) i));
  return g_strdup_printf (_ ("“%s” is no condition that is known here: write one of %s"), when,
                          known->str);
}

static gboolean
is_one_line (const char *text)
{
  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at))
    if (g_unichar_iscntrl (g_utf8_get_char (at)))
      return FALSE;
  return text[0] != '\0' && g_utf8_strlen (text, -1) <= LB_CAUTION_WORDS_MAX;
}

/* What is wrong with the words for that condition. */
static char *
check_words (const char *words, LbCautionWhen when)
{
  g_autofree char *stray = lb_caution_words_stray (when, words);

  return stray == NULL ? NULL
                       : g_strdup_printf (_ ("“%s” is not known when “%s” holds: leave it out"),
                                          stray, lb_caution_when_key (when));
}

char *
lb_caution_row_read (const char *const cells[LB_CAUTION_N_CELLS],
                     const LbCautionRow *before,
                     gsize n_before,
                     const LbCautionRow *taken,
                     gsize n_taken,
                     LbCautionRow *out,
                     guint *out_column)
{
  LbCautionRow row = { .key = cells[KEY], .words = cells[WORDS], .source = cells[SOURCE] };
  char *wrong;

  *out_column = KEY;
  if (!lb_is_caution_key (row.key))
    return g_strdup_printf (_ ("“%s” is no key: write small letters, digits and hyphens, a letter "
                               "first, at most %d"),
                            row.key, LB_CAUTION_KEY_MOST);
  if (has_key (taken, n_taken, row.key))
    return g_strdup_printf (_ ("“%s” is a caution that is built in, and stays as it is: give yours "
                               "another key"),
                            row.key);
  if (has_key (before, n_before, row.key))
    return g_strdup_printf (_ ("“%s” stands on an earlier line: give each its own key"), row.key);
  *out_column = SEVERITY;
  if (!lb_severity_from_key (cells[SEVERITY], &row.severity))
    return g_strdup_printf (_ ("“%s” is no severity: write danger, caution or note"),
                            cells[SEVERITY]);
  *out_column = WHEN;
  if ((wrong = read_condition (cells[WHEN], &row.when)) != NULL)
    return wrong;
  for (*out_column = WORDS; *out_column <= SOURCE; ++*out_column)
    if (!is_one_line (cells[*out_column]))
      return g_strdup_printf (_ ("write one line of 1 to %d characters"), LB_CAUTION_WORDS_MAX);
  *out_column = WORDS;
  if ((wrong = check_words (row.words, row.when)) != NULL)
    return wrong;
  *out = row;
  return NULL;
}

/* Cells of a line of the setting, kept. */
static gboolean
split_line (const char *line, GStringChunk *strings, const char *cells[LB_CAUTION_N_CELLS])
{
  g_auto (GStrv) parts = g_strsplit (line, "\t", LB_CAUTION_N_CELLS + 1);

  if (g_strv_length (parts) != LB_CAUTION_N_CELLS)
    return FALSE;
  for (guint i = 0; i < LB_CAUTION_N_CELLS; i++)
    cells[i] = g_string_chunk_insert (strings, parts[i]);
  return TRUE;
}

gboolean
lb_cautions_from_text (const char *text,
                       GStringChunk *strings,
                       LbCautionRow *out_rows,
                       gsize *out_n,
                       GError **error)
{
  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (strings != NULL && out_rows != NULL && out_n != NULL, FALSE);

  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  LbCautionRow rows[LB_CAUTION_CREW_ROWS_MAX];
  gsize n = 0, n_built_in;
  const LbCautionRow *built_in = lb_caution_rows (&n_built_in);

  for (guint i = 0; lines[i] != NULL; i++) {
    const char *cells[LB_CAUTION_N_CELLS];
    guint column = 0;

    if (*lines[i] == '\0')
      continue;
    if (n == LB_CAUTION_CREW_ROWS_MAX || !split_line (lines[i], strings, cells)) {
      g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                   _ ("Line %u of the cautions is one too many, or has not %d cells with tabs "
                      "between them"),
                   i + 1, LB_CAUTION_N_CELLS);
      return FALSE;
    }

    g_autofree char *wrong = lb_caution_row_read (cells, rows, n, built_in, n_built_in, &rows[n],
                                                  &column);

    if (wrong != NULL) {
      g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, _ ("Line %u, column %u: %s"), i + 1,
                   column + 1, wrong);
      return FALSE;
    }
    n++;
  }
  memcpy (out_rows, rows, n * sizeof rows[0]);
  *out_n = n;
  return TRUE;
}
