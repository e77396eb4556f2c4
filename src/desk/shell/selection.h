/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

G_BEGIN_DECLS

/* Which piles are picked, shared by all pages. One is the current one: the one on the sheet.
 *
 * Signal "changed": either changed. Property "current": index of the pile, -1 for none. */
#define LB_TYPE_SELECTION (lb_selection_get_type ())
G_DECLARE_FINAL_TYPE (LbSelection, lb_selection, LB, SELECTION, GObject)

LbSelection *lb_selection_new (void);

int lb_selection_get_current (LbSelection *self);

/* Picks this pile alone, -1 picks none. */
void lb_selection_set_current (LbSelection *self, int pile);

/* Picked piles in ascending order; the array belongs to the selection until it changes. */
const guint *lb_selection_get_piles (LbSelection *self, gsize *out_n);
gboolean lb_selection_has (LbSelection *self, guint pile);
void lb_selection_toggle (LbSelection *self, guint pile);
void lb_selection_set_piles (LbSelection *self, const guint *piles, gsize n);

G_END_DECLS
