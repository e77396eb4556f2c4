/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/pile.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* Rows for the facts that many piles share: shape, width, bars, head and mudline.
 *
 * Signal "changed": one of them is another now. */
#define LB_TYPE_PILE_KIND_GROUP (lb_pile_kind_group_get_type ())
G_DECLARE_FINAL_TYPE (LbPileKindGroup, lb_pile_kind_group, LB, PILE_KIND_GROUP, AdwPreferencesGroup)

void lb_pile_kind_group_set_units (LbPileKindGroup *self, LbUnits units);

/**
 * lb_pile_kind_group_get:
 * @out_pile: (out): a pile with the facts of the rows; its strings are constants
 *
 * Returns: %FALSE while a row holds something that cannot be read; the row says so itself
 */
gboolean lb_pile_kind_group_get (LbPileKindGroup *self, LbPile *out_pile);

G_END_DECLS
