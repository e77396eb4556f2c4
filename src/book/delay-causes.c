/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/delay-causes.h"

#include "book/book-private.h"
#include "book/table-text.h"
#include "trade/shift-words.h"

#include <glib/gi18n-lib.h>

static gboolean
read_heading (const LbTableLine *at, gpointer data, GError **error)
{
  if (at->n_columns == 1 && g_ascii_strcasecmp (at->heading[0], "cause") == 0)
    return TRUE;
  return lb_table_line_refuse_all (at, _ ("the first line must be “cause”"), error);
}

static gboolean
has_cause (const GPtrArray *causes, const char *cause)
{
  g_autofree char *key = g_utf8_casefold (cause, -1);

  for (guint i = 0; i < causes->len; i++) {
    g_autofree char *other = g_utf8_casefold (g_ptr_array_index (causes, i), -1);

    if (g_str_equal (key, other))
      return TRUE;
  }
  return FALSE;
}

static gboolean
read_row (const LbTableLine *at, gpointer data, GError **error)
{
  GPtrArray *causes = data;
  const char *cause = at->cells[0];

  if (!g_utf8_validate (cause, -1, NULL) || g_utf8_strlen (cause, -1) > LB_SHORT_MAX)
    return lb_table_line_refuse_all (at, _ ("the cause is too long, or no readable text"), error);
  if (has_cause (causes, cause))
    return lb_table_line_refuse (
      at, 0, g_strdup_printf (_ ("“%s” stands in the list already"), cause), error);
  g_ptr_array_add (causes, g_strdup (cause));
  return TRUE;
}

char **
lb_delay_causes_from_text (const char *text, GError **error)
{
  static const LbTableForm form = {
    .rows_most = LB_DELAY_CAUSES_MAX,
    .read_heading = read_heading,
    .read_row = read_row,
  };
  g_autoptr (GPtrArray) causes = g_ptr_array_new_with_free_func (g_free);

  g_return_val_if_fail (text != NULL, NULL);

  if (!lb_table_text_read (text, &form, causes, error))
    return NULL;
  g_ptr_array_add (causes, NULL);
  return (char **) g_ptr_array_free (g_steal_pointer (&causes), FALSE);
}

char **
lb_delay_causes (const LbFold *fold)
{
  g_return_val_if_fail (fold != NULL, NULL);

  if (*fold->tables[LB_TABLE_DELAYS] != '\0')
    return lb_delay_causes_from_text (fold->tables[LB_TABLE_DELAYS], NULL);
  return g_strdupv ((char **) lb_shift_words (LB_WORDS_DELAY));
}
