/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/fold-private.h"
#include "book/seal-text.h"

#include <string.h>

/* Of two seals of one shift, which two crews may have set without knowing of each other, the first
 * one counts. */
static void
take_seal (LbSignature *signature, const LbEntry *seal)
{
  g_autoptr (LbSealText) text = NULL;

  if (signature->at_us != 0)
    return;
  text = lb_seal_text_read (seal->note);
  signature->at_us = seal->at_us;
  signature->who = seal->who;
  /* The hash is the end of the note. */
  signature->hash = text != NULL ? seal->note + strlen (seal->note) - LB_SHA256_HEX : "";
  signature->n_rows = text != NULL ? text->count : 0;
}

void
lb_fold_find_signatures (LbFold *fold, const LbLedger *ledger, gint64 until_us)
{
  for (guint i = 0; i < ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (entry->shift < 0 || entry->at_us > until_us)
      continue;
    if (entry->kind == LB_ENTRY_SEAL)
      take_seal (&fold->signatures[entry->shift], entry);
    else if (fold->signatures[entry->shift].at_us != 0)
      fold->signatures[entry->shift].n_since++;
  }
}
