/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <glib-object.h>

G_BEGIN_DECLS

/* One line of a pile's history, as words, so that it outlives the ledger's next change. */
#define LB_TYPE_HISTORY_ENTRY (lb_history_entry_get_type ())
G_DECLARE_FINAL_TYPE (LbHistoryEntry, lb_history_entry, LB, HISTORY_ENTRY, GObject)

/* @i: index in the ledger. */
LbHistoryEntry *lb_history_entry_new (LbJob *job, guint i);

const char *lb_history_entry_get_text (LbHistoryEntry *self);
const char *lb_history_entry_get_when (LbHistoryEntry *self); /* and who */
const char *lb_history_entry_get_act (LbHistoryEntry *self);
gboolean lb_history_entry_get_is_alive (LbHistoryEntry *self); /* not taken back */

/* Whether both say the same of the same entry. */
gboolean lb_history_entry_equal (LbHistoryEntry *one, LbHistoryEntry *other);

G_END_DECLS
