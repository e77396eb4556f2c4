/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/pile.h"

#include <glib.h>

G_BEGIN_DECLS

/* The demo's piles: a wharf of twelve bents and two dolphins off its outer end. */

/* Returns: (element-type LbPile): strings from @strings */
GArray *lb_demo_pier_piles (GStringChunk *strings);

G_END_DECLS
