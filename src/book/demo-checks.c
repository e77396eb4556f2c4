/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/demo-checks.h"

typedef enum {
  ON_ANY_CARD,
  ON_LEANING,
  ON_PLUMB,
} Card;

static const struct
{
  const char *key; /* of trade/caution-table.c */
  Card card;
} checks[] = {
  { "under-lean", ON_LEANING },     { "rig-before", ON_LEANING },
  { "slag-side", ON_LEANING },      { "slag-down", ON_PLUMB },
  { "leak-test", ON_ANY_CARD },     { "bubble-test", ON_ANY_CARD },
  { "switch-open", ON_ANY_CARD },   { "clamp", ON_ANY_CARD },
  { "gloves", ON_ANY_CARD },        { "gas-traps", ON_ANY_CARD },
  { "rod-stub", ON_ANY_CARD },      { "collet-bubbles", ON_ANY_CARD },
  { "oxygen-grease", ON_ANY_CARD }, { "supervisor", ON_ANY_CARD },
};

gboolean
lb_demo_record_checks (LbBook *book,
                       const LbDraft *like,
                       gint64 left_us,
                       gboolean leans,
                       guint left_open,
                       GError **error)
{
  LbDraft drafts[G_N_ELEMENTS (checks)];
  gsize n = 0;

  for (guint i = 0; i < G_N_ELEMENTS (checks); i++) {
    if (checks[i].card == (leans ? ON_PLUMB : ON_LEANING))
      continue;
    drafts[n] = *like;
    drafts[n].what = checks[i].key;
    drafts[n].amount = i == left_open ? 0 : 1;
    drafts[n].start_us = left_us;
    n++;
  }
  return lb_book_record (book, drafts, n, NULL, error);
}
