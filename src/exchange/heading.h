/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/pile.h"

#include <glib.h>

G_BEGIN_DECLS

/* What the heading of a column in a survey's list says. */
typedef struct
{
  LbFact fact;
  guint rank;       /* of the name among the fact's names: 0 fits best */
  const char *unit; /* a word that lb_quantity_from_text() reads, "" when not said; static */
  LbUnits units;    /* the system of @unit */
} LbHeading;

/**
 * lb_heading_read:
 * @text: "Northing (ft)", "WIDTH_mm", "No. of bars"
 *
 * Returns: %FALSE when it names no fact known here; @out is then untouched
 */
gboolean lb_heading_read (const char *text, LbHeading *out);

G_END_DECLS
