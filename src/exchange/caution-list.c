/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A warning with a hole in it, or under a condition that nobody reckons, would never be shown or be
 * shown wrong: a list is read whole or not at all. The rows' texts are those of the text table, which
 * the list keeps. */
#include "exchange/caution-list.h"

#include "exchange/exchange-error.h"
#include "exchange/text-table.h"

#include <glib/gi18n-lib.h>

enum {
  KEY,
  SEVERITY,
  WHEN,
  WORDS,
  SOURCE,
  N_COLUMNS,
};

static const char *const headings[N_COLUMNS] = { "key", "severity", "when", "words", "source" };

struct _LbCautionList
{
  LbTextTable *cells;
  gsize n_rows;
  LbCautionRow rows[LB_CAUTION_LIST_ROWS_MAX];
};

typedef struct
{
  LbCautionList *list;
  gsize row; /* of the cells */
  const LbCautionRow *taken;
  gsize n_taken;
} Reading;

void
lb_caution_list_free (LbCautionList *list)
{
  if (list == NULL)
    return;

  g_clear_pointer (&list->cells, lb_text_table_free);
  g_free (list);
}

static const char *
cell_of (const Reading *reading, gsize column)
{
  return lb_text_table_cell (reading->list->cells, reading->row, column);
}

/* Takes @said, what is wrong in the cell. */
static gboolean
refuse (const Reading *reading, gsize column, char *said, GError **error)
{
  g_autofree char *reason = said;

  g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE, _ ("Line %u, column %u (%s): %s"),
               (guint) lb_text_table_line (reading->list->cells, reading->row), (guint) column + 1,
               headings[column], reason);
  return FALSE;
}

static gboolean
check_heading (const LbTextTable *cells, GError **error)
{
  gboolean is_met = lb_text_table_row_cells (cells, 0) == N_COLUMNS;

  for (gsize column = 0; column < N_COLUMNS; column++)
    is_met = is_met &&
             g_ascii_strcasecmp (lb_text_table_cell (cells, 0, column), headings[column]) == 0;
  if (!is_met)
    g_set_error_literal (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_COLUMN,
                         _ ("The first line must be “key,severity,when,words,source”"));
  return is_met;
}

static gboolean
has_key (const LbCautionRow *rows, gsize n_rows, const char *key)
{
  for (gsize i = 0; i < n_rows; i++)
    if (g_str_equal (rows[i].key, key))
      return TRUE;
  return FALSE;
}

static gboolean
read_key (const Reading *reading, const char **out_key, GError **error)
{
  const char *key = cell_of (reading, KEY);

  if (!lb_is_caution_key (key))
    return refuse (reading, KEY,
                   g_strdup_printf (_ ("“%s” is no key: write small letters, digits and hyphens, a "
                                       "letter first, at most %d"),
                                    key, LB_CAUTION_KEY_MOST),
                   error);
  if (has_key (reading->taken, reading->n_taken, key))
    return refuse (reading, KEY,
                   g_strdup_printf (_ ("“%s” is a caution that is built in, and stays as it is: "
                                       "give yours another key"),
                                    key),
                   error);
  if (has_key (reading->list->rows, reading->list->n_rows, key))
    return refuse (
      reading, KEY,
      g_strdup_printf (_ ("“%s” stands on an earlier line: give each its own key"), key), error);
  *out_key = key;
  return TRUE;
}

static gboolean
read_condition (const Reading *reading, LbCautionWhen *out_when, GError **error)
{
  const char *when = cell_of (reading, WHEN);

  if (lb_caution_when_from_key (when, out_when))
    return TRUE;

  g_autoptr (GString) known = g_string_new (NULL);

  for (guint i = 0; i < LB_N_CAUTION_WHENS; i++)
    g_string_append_printf (known, "%s%s", i > 0 ? ", " : "",
                            lb_caution_when_key ((LbCautionWhen) i));
  return refuse (reading, WHEN,
                 g_strdup_printf (_ ("“%s” is no condition that is known here: write one of %s"),
                                  when, known->str),
                 error);
}

static gboolean
is_one_line (const char *text)
{
  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at))
    if (g_unichar_iscntrl (g_utf8_get_char (at)))
      return FALSE;
  return text[0] != '\0';
}

static gboolean
read_texts (const Reading *reading, LbCautionRow *row, GError **error)
{
  for (gsize column = WORDS; column <= SOURCE; column++) {
    const char *text = cell_of (reading, column);

    if (!is_one_line (text) || g_utf8_strlen (text, -1) > LB_CAUTION_LIST_WORDS_MAX)
      return refuse (
        reading, column,
        g_strdup_printf (_ ("write one line of 1 to %d characters"), LB_CAUTION_LIST_WORDS_MAX),
        error);
  }

  g_autofree char *stray = lb_caution_words_stray (row->when, cell_of (reading, WORDS));

  if (stray != NULL)
    return refuse (reading, WORDS,
                   g_strdup_printf (_ ("“%s” is not known when “%s” holds: leave it out"), stray,
                                    lb_caution_when_key (row->when)),
                   error);
  row->words = cell_of (reading, WORDS);
  row->source = cell_of (reading, SOURCE);
  return TRUE;
}

static gboolean
read_row (const Reading *reading, GError **error)
{
  LbCautionList *list = reading->list;
  const gsize n_cells = lb_text_table_row_cells (list->cells, reading->row);
  LbCautionRow row = { 0 };

  if (n_cells != N_COLUMNS) {
    g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_VALUE,
                 _ ("Line %u has %u cells and the first line %u: give each line as many"),
                 (guint) lb_text_table_line (list->cells, reading->row), (guint) n_cells,
                 (guint) N_COLUMNS);
    return FALSE;
  }
  if (!read_key (reading, &row.key, error))
    return FALSE;
  if (!lb_severity_from_key (cell_of (reading, SEVERITY), &row.severity))
    return refuse (reading, SEVERITY,
                   g_strdup_printf (_ ("“%s” is no severity: write danger, caution or note"),
                                    cell_of (reading, SEVERITY)),
                   error);
  if (!read_condition (reading, &row.when, error) || !read_texts (reading, &row, error))
    return FALSE;

  list->rows[list->n_rows++] = row;
  return TRUE;
}

LbCautionList *
lb_caution_list_from_csv (const char *text,
                          gsize length,
                          const LbCautionRow *taken,
                          gsize n_taken,
                          GError **error)
{
  g_return_val_if_fail (text != NULL, NULL);
  g_return_val_if_fail (taken != NULL || n_taken == 0, NULL);

  g_autoptr (GBytes) bytes = g_bytes_new_static (text, length);
  g_autoptr (LbTextTable) cells = lb_text_table_parse (bytes, NULL, error);

  if (cells == NULL || !check_heading (cells, error))
    return NULL;

  const gsize n_rows = lb_text_table_get_shape (cells).n_rows;

  if (n_rows < 2 || n_rows - 1 > LB_CAUTION_LIST_ROWS_MAX) {
    g_set_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_LARGE,
                 _ ("The list has %u cautions: it must have 1 to %d"), (guint) n_rows - 1,
                 LB_CAUTION_LIST_ROWS_MAX);
    return NULL;
  }

  g_autoptr (LbCautionList) list = g_new0 (LbCautionList, 1);
  Reading reading = { .list = list, .taken = taken, .n_taken = n_taken };

  list->cells = g_steal_pointer (&cells);
  for (reading.row = 1; reading.row < n_rows; reading.row++)
    if (!read_row (&reading, error))
      return NULL;
  return g_steal_pointer (&list);
}

const LbCautionRow *
lb_caution_list_rows (const LbCautionList *list, gsize *out_n)
{
  g_return_val_if_fail (list && out_n, NULL);

  *out_n = list->n_rows;
  return list->rows;
}
