/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/join-words.h"

#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

/* More than any time zone or a clock that nobody set for a season explains. Common sense, no source. */
#define AHEAD_MOST_US (G_GINT64_CONSTANT (86400) * G_USEC_PER_SEC)

static char *
how_many (guint n, const char *text)
{
  return n > 0 ? g_strdup_printf ("%u %s", n, text) : NULL;
}

char *
lb_join_news_text (const LbJoinPreview *preview)
{
  g_return_val_if_fail (preview != NULL, NULL);

  const guint n_shifts = preview->n_shifts, n_work = preview->n_work;
  const guint n_facts = preview->n_facts, n_piles = preview->n_piles;
  char *const counted[] = {
    how_many (n_shifts, g_dngettext (GETTEXT_PACKAGE, "shift", "shifts", n_shifts)),
    how_many (n_work, g_dngettext (GETTEXT_PACKAGE, "entry", "entries", n_work)),
    how_many (n_facts,
              g_dngettext (GETTEXT_PACKAGE, "fact or setting", "facts and settings", n_facts)),
    how_many (n_piles, g_dngettext (GETTEXT_PACKAGE, "pile", "piles", n_piles)),
  };
  g_autoptr (GString) list = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (counted); i++) {
    if (counted[i] != NULL)
      g_string_append_printf (list, "%s%s", list->len > 0 ? ", " : "", counted[i]);
    g_free (counted[i]);
  }
  if (list->len == 0)
    return g_strdup (_ ("Nothing in it is new."));
  /* Translators: a list, as “2 shifts, 34 entries”. */
  return g_strdup_printf (_ ("New: %s."), list->str);
}

char *
lb_join_shift_text (const LbJoinPreview *preview, guint shift)
{
  g_return_val_if_fail (preview != NULL && shift < preview->joined->shifts->len, NULL);

  const guint n = preview->n_by_shift[shift];
  g_autofree char *name = lb_shift_text (lb_ledger_shift (preview->joined, shift));

  /* Translators: a shift, and how many entries of it are new. */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s: %u entry", "%s: %u entries", n), name,
                          n);
}

char *
lb_join_ahead_text (const LbJoinPreview *preview, gint64 now_us)
{
  g_return_val_if_fail (preview != NULL, NULL);

  const gint64 ahead_us = preview->latest_us == G_MININT64 ? 0 : preview->latest_us - now_us;
  if (ahead_us <= AHEAD_MOST_US)
    return NULL;

  const guint days = (guint) (ahead_us / AHEAD_MOST_US);
  return g_strdup_printf (
    g_dngettext (
      GETTEXT_PACKAGE,
      "The clock of the computer it comes from was ahead by %u day or more: what it says "
      "counts as later than what is recorded here.",
      "The clock of the computer it comes from was ahead by %u days or more: what it says "
      "counts as later than what is recorded here.",
      days),
    days);
}
