/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"

G_BEGIN_DECLS

/* What somebody says of a dive, in one line of the record. */
typedef struct
{
  const char *diver;
  double depth_m;                                     /* NAN when not said */
  gint64 left_surface_us, left_bottom_us, reached_us; /* 0 when not said */
  const guint *piles;                                 /* in the order worked; may be none */
  gsize n_piles;
  const char *mode, *visibility, *work; /* NULL or "" when not said */
  guint n_bars;
  double rods, oxygen_m3; /* 0 for none */
} LbDiveSaid;

/**
 * lb_gesture_dive:
 * @strings: keeps the texts of the drafts
 *
 * The dive, more about it, and what it burned and used, for one act. Bars belong to one pile, and what
 * goes with them is lb_gesture_bar_count()'s; rods and oxygen stand at the pile where there was just
 * one, else for the shift.
 *
 * Returns: %FALSE with %LB_BOOK_ERROR_REFUSED when bars are said and not at which one pile
 */
gboolean lb_gesture_dive (GArray *drafts,
                          const LbFold *fold,
                          const LbDiveSaid *said,
                          GStringChunk *strings,
                          GError **error);

/* More about the entry before it; nothing for a text that is NULL or "". */
void lb_gesture_detail (GArray *drafts, const char *which, const char *said);

G_END_DECLS
