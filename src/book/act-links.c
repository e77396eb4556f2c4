/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/act-links.h"

/* Acts are named by the very string that is the id of their first entry, so addresses will do. */
void
lb_act_links_init (LbActLinks *links, const LbLedger *ledger)
{
  const guint n = ledger->entries->len;
  g_autoptr (GHashTable) acts = g_hash_table_new (NULL, NULL);
  guint32 first = 0;

  links->act = g_new (guint32, n + 1);
  links->of = g_new0 (guint32, n + 1);
  for (guint i = 0; i < n; i++) {
    const LbEntry *entry = lb_ledger_entry_of_seq (ledger, (gint64) i + 1);

    if (entry->act == entry->id) {
      first = i;
      g_hash_table_insert (acts, (gpointer) entry->id, GUINT_TO_POINTER (i + 1));
    }
    links->act[i] = first;
    if (*entry->of != '\0')
      links->of[i] = GPOINTER_TO_UINT (g_hash_table_lookup (acts, entry->of));
  }
}

void
lb_act_links_clear (LbActLinks *links)
{
  g_clear_pointer (&links->act, g_free);
  g_clear_pointer (&links->of, g_free);
}
