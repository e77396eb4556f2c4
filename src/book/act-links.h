/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/ledger.h"

#include <glib.h>

G_BEGIN_DECLS

/* What the entries of a ledger say of each other, by number instead of by id: entry n of the file is
 * at n - 1. */
typedef struct
{
  guint32 *act; /* the first entry of its act, from 0 */
  guint32 *of;  /* the first entry of the act it names, plus one; 0 for none */
} LbActLinks;

void lb_act_links_init (LbActLinks *links, const LbLedger *ledger);
void lb_act_links_clear (LbActLinks *links);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LbActLinks, lb_act_links_clear)

G_END_DECLS
