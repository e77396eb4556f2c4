/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading is strict by writing again: what was read must give, to the byte, the text it was read
 * from, so that one seal has one form. */
#include "book/seal-text.h"

#include <string.h>

#define FIRST_LINE "lastbent seal 1"

static void
clear_link (gpointer link)
{
  g_free (((LbSealLink *) link)->id);
}

static void
clear_span (gpointer span)
{
  g_free (((LbSealSpan *) span)->tag);
}

LbSealText *
lb_seal_text_new (void)
{
  LbSealText *seal = g_new0 (LbSealText, 1);

  seal->after = g_array_new (FALSE, FALSE, sizeof (LbSealLink));
  seal->spans = g_array_new (FALSE, FALSE, sizeof (LbSealSpan));
  seal->checks = g_string_new (NULL);
  g_array_set_clear_func (seal->after, clear_link);
  g_array_set_clear_func (seal->spans, clear_span);
  return seal;
}

void
lb_seal_text_free (LbSealText *seal)
{
  if (seal == NULL)
    return;
  g_array_unref (seal->after);
  g_array_unref (seal->spans);
  g_string_free (seal->checks, TRUE);
  g_free (seal);
}

void
lb_seal_text_add_link (LbSealText *seal, const char *id, const char *hash)
{
  LbSealLink link = { .id = g_strdup (id) };

  g_strlcpy (link.hash, hash, sizeof link.hash);
  g_array_append_val (seal->after, link);
}

void
lb_seal_text_add_span (LbSealText *seal, const char *tag, guint64 from, guint64 to)
{
  const LbSealSpan span = { .tag = g_strdup (tag), .from = from, .to = to };

  g_array_append_val (seal->spans, span);
}

char *
lb_seal_text_head (const LbSealText *seal)
{
  GString *text = g_string_new (FIRST_LINE "\n");

  g_string_append_printf (text, "count %" G_GUINT64_FORMAT "\n", seal->count);
  for (guint i = 0; i < seal->after->len; i++) {
    const LbSealLink *link = &g_array_index (seal->after, LbSealLink, i);
    g_string_append_printf (text, "after %s %s\n", link->id, link->hash);
  }
  for (guint i = 0; i < seal->spans->len; i++) {
    const LbSealSpan *span = &g_array_index (seal->spans, LbSealSpan, i);
    g_string_append_printf (text, "rows %s %" G_GUINT64_FORMAT " %" G_GUINT64_FORMAT "\n",
                            span->tag, span->from, span->to);
  }
  if (seal->checks->len > 0)
    g_string_append_printf (text, "checks %s\n", seal->checks->str);
  return g_string_free (text, FALSE);
}

static gboolean
read_line (LbSealText *seal, const char *line)
{
  g_auto (GStrv) words = g_strsplit (line, " ", 5);
  const guint n = g_strv_length (words);

  if (n == 2 && strcmp (words[0], "count") == 0)
    seal->count = g_ascii_strtoull (words[1], NULL, 10);
  else if (n == 3 && strcmp (words[0], "after") == 0 && strlen (words[2]) == LB_SHA256_HEX)
    lb_seal_text_add_link (seal, words[1], words[2]);
  else if (n == 4 && strcmp (words[0], "rows") == 0)
    lb_seal_text_add_span (seal, words[1], g_ascii_strtoull (words[2], NULL, 10),
                           g_ascii_strtoull (words[3], NULL, 10));
  else if (n == 2 && strcmp (words[0], "checks") == 0)
    g_string_assign (seal->checks, words[1]);
  else if (n == 2 && strcmp (words[0], "sha256") == 0)
    g_strlcpy (seal->hash, words[1], sizeof seal->hash);
  else
    return FALSE;
  return TRUE;
}

LbSealText *
lb_seal_text_read (const char *note)
{
  g_autoptr (LbSealText) seal = lb_seal_text_new ();
  g_auto (GStrv) lines = g_strsplit (note, "\n", -1);

  if (lines[0] == NULL || strcmp (lines[0], FIRST_LINE) != 0)
    return NULL;
  for (char **line = lines + 1; *line != NULL; line++) {
    if (!read_line (seal, *line))
      return NULL;
  }

  g_autofree char *head = lb_seal_text_head (seal);
  const gsize length = strlen (head);
  if (strncmp (note, head, length) != 0 || !g_str_has_prefix (note + length, "sha256 ") ||
      strcmp (note + length + strlen ("sha256 "), seal->hash) != 0 ||
      strlen (seal->hash) != LB_SHA256_HEX)
    return NULL;
  return g_steal_pointer (&seal);
}
