/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/table-text.h"

#include "book/book-error.h"

#include <glib/gi18n-lib.h>
#include <string.h>

gboolean
lb_table_line_refuse (const LbTableLine *at, guint column, char *said, GError **error)
{
  g_autofree char *reason = said;

  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, _ ("Line %u, column %u (%s): %s"),
               at->line, column + 1, at->heading[column], reason);
  return FALSE;
}

gboolean
lb_table_line_refuse_all (const LbTableLine *at, const char *said, GError **error)
{
  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, _ ("Line %u: %s"), at->line, said);
  return FALSE;
}

gboolean
lb_table_line_number (const LbTableLine *at, guint column, double *out, GError **error)
{
  const char *text = at->cells[column];
  char *end = NULL;
  const double value = g_ascii_strtod (text, &end);

  /* strtod() alone would take "nan", "inf" and "0x1p4". */
  if (text[0] == '\0' || strspn (text, "0123456789.") != strlen (text) || *end != '\0')
    return lb_table_line_refuse (
      at, column,
      g_strdup_printf (_ ("“%s” is no number: write digits without grouping, with a point, such as "
                          "40 or 12.5"),
                       text),
      error);
  *out = value;
  return TRUE;
}

const LbTableUnit *
lb_table_heading_unit (const char *heading, const char *name, const LbTableUnit *units)
{
  static const char between[] = " _()[]";
  g_autofree char *plain = g_ascii_strdown (heading, -1);

  if (!g_str_has_prefix (plain, name))
    return NULL;

  char *word = plain + strlen (name);

  word += strspn (word, between);
  word[strcspn (word, between)] = '\0';
  for (const LbTableUnit *unit = units; unit->word != NULL; unit++)
    if (g_str_equal (unit->word, word))
      return unit;
  return NULL;
}

/* How many lines hold something; blanks about them are taken away. */
static guint
count_lines (char **lines)
{
  guint n = 0;

  for (; *lines != NULL; lines++)
    n += *g_strstrip (*lines) != '\0' ? 1 : 0;
  return n;
}

static char **
split_cells (const char *line)
{
  char **cells = g_strsplit (line, ",", -1);

  for (char **cell = cells; *cell != NULL; cell++)
    g_strstrip (*cell);
  return cells;
}

static gboolean
check_count (guint n_rows, guint most, GError **error)
{
  if (n_rows >= 1 && n_rows <= most)
    return TRUE;
  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
               _ ("The table has %u lines after the first: it must have 1 to %u"), n_rows, most);
  return FALSE;
}

static gboolean
read_row (const LbTableForm *form, const LbTableLine *at, gpointer data, GError **error)
{
  const guint n_cells = g_strv_length (at->cells);

  if (n_cells == at->n_columns)
    return form->read_row (at, data, error);
  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
               _ ("Line %u has %u cells and the first line %u: give each line as many"), at->line,
               n_cells, at->n_columns);
  return FALSE;
}

gboolean
lb_table_text_read (const char *text, const LbTableForm *form, gpointer data, GError **error)
{
  g_return_val_if_fail (text != NULL && form != NULL, FALSE);

  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  const guint n_lines = count_lines (lines);
  g_auto (GStrv) heading = NULL;

  for (guint i = 0; lines[i] != NULL; i++) {
    if (*lines[i] == '\0')
      continue;

    g_auto (GStrv) cells = split_cells (lines[i]);
    const LbTableLine at = {
      .heading = heading != NULL ? heading : cells,
      .n_columns = g_strv_length (heading != NULL ? heading : cells),
      .line = i + 1,
      .cells = cells,
    };

    if (heading != NULL) {
      if (!read_row (form, &at, data, error))
        return FALSE;
      continue;
    }
    if (!form->read_heading (&at, data, error) ||
        !check_count (n_lines - 1, form->rows_most, error))
      return FALSE;
    heading = g_steal_pointer (&cells);
  }
  return heading != NULL || check_count (0, form->rows_most, error);
}
