/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/bar-ring.h"
#include "trade/bar.h"
#include "trade/batter.h"
#include "trade/hold.h"
#include "trade/outline.h"
#include "trade/quantity.h"

#include <glib.h>

G_BEGIN_DECLS

/* What is known of one pile before anybody touches it. Elevations are m above the job's datum,
 * up positive; plan places are m on the job's grid, x east, y north. Strings are borrowed.
 * Unknown numbers are NAN, an unknown bar is NULL, an unknown count is 0; of shape, batter and bearing,
 * which are drawn and reckoned as square, plumb and north until somebody says them, @unsaid tells. */
typedef struct
{
  const char *id;   /* stable name in the job file */
  const char *mark; /* what the crew calls it: "G7" */
  const char *bent; /* "7", "" when none */
  const char *row;  /* "G", "" when none */
  const char *note;
  double x_m, y_m;    /* centre of the head */
  LbOutline outline;  /* at the head */
  double tip_width_m; /* at the toe, where the pile is tapered; NAN where it is not */
  const LbBar *bar;
  guint n_bars;
  double bar_inset_m;     /* face to the centre of the bars; NAN for the usual cover */
  const char *bar_places; /* where they stand, as lb_bar_layout_from_text() in metric; "" usual */
  double batter;          /* run per rise */
  double bearing_rad;
  double head_m; /* top of what stands now: the cut-off, or where it was broken back */
  double cut_m;  /* where it is to be cut; NAN: the job's height above the mudline */
  double mudline_m;
  double toe_m;
  LbConcreteLeft concrete; /* in the cut, when burning begins */
  LbBarSet pinned;         /* bars kept to the end, whatever the figures say */
  const char *order;       /* in which to burn; see LB_ORDER_BEST */
  gboolean is_to_be_drawn; /* out of the ground whole, not cut */
  guint32 unsaid;          /* of LB_FACT_SHAPE, _BATTER and _BEARING, a bit of 1 << LbFact each */
} LbPile;

/* What LbPile.order says: nothing for the order that the figures favour, this word for the high
 * side first, or all the bars by number, "5, 4, 6, …". */
#define LB_ORDER_BEST      ""
#define LB_ORDER_HIGH_SIDE "high side"

/* The facts by name, as in the pile list, the ledger and the fact editor. */
typedef enum {
  LB_FACT_MARK,
  LB_FACT_BENT,
  LB_FACT_ROW,
  LB_FACT_NOTE,
  LB_FACT_X,
  LB_FACT_Y,
  LB_FACT_SHAPE,
  LB_FACT_WIDTH,
  LB_FACT_TIP_WIDTH,
  LB_FACT_VOID,
  LB_FACT_BAR,
  LB_FACT_N_BARS,
  LB_FACT_BAR_INSET,
  LB_FACT_BAR_PLACES,
  LB_FACT_BATTER,
  LB_FACT_BEARING,
  LB_FACT_HEAD,
  LB_FACT_CUT,
  LB_FACT_MUDLINE,
  LB_FACT_TOE,
  LB_FACT_CONCRETE,
  LB_FACT_PINNED,
  LB_FACT_ORDER,
  LB_FACT_REMOVAL,
} LbFact;

#define LB_N_FACTS (LB_FACT_REMOVAL + 1)

const char *lb_fact_name (LbFact fact);  /* key in files: "mark", "x", "bar inset" … */
const char *lb_fact_title (LbFact fact); /* msgid for people: "Bar inset" */
gboolean lb_fact_from_name (const char *name, LbFact *out_fact);
LbQuantity lb_fact_quantity (LbFact fact); /* LB_QUANTITY_COUNT for text and counts */

/* The empty pile: nothing is known of it, strings "". */
void lb_pile_init (LbPile *pile);

/* What becomes of a pile, as LB_FACT_REMOVAL says it: "cut off", "drawn whole"; a msgid. */
const char *lb_removal_name (gboolean is_to_be_drawn);

/* FALSE for a shape, batter or bearing that nobody has said; the bearing of a plumb pile needs no
 * saying. */
gboolean lb_pile_says (const LbPile *pile, LbFact fact);

/**
 * lb_pile_set:
 * @text: as a person types it; "" makes an optional fact unknown. Numbers without a unit are in
 *   @units; "1:6" for the batter; "N45E" for the bearing; bar names as lb_bar_find()
 * @dup: copies a string to keep it as long as the pile lives (a string pool)
 *
 * Sets one fact, checked for its own range: width 4 in to 20 ft, bars 0 to 60, elevations
 * within 1 km of the datum, and so on. The pile is untouched on failure.
 */
gboolean lb_pile_set (LbPile *pile,
                      LbFact fact,
                      const char *text,
                      LbUnits units,
                      const char *(*dup) (gpointer pool, const char *text),
                      gpointer pool,
                      GError **error);

/* One fact as lb_pile_set() reads it back in the same @units; for people, without the unit. */
char *lb_pile_get (const LbPile *pile, LbFact fact, LbUnits units);

/**
 * lb_pile_check:
 *
 * Whether the facts agree with each other: head above cut, cut not above head, mudline above
 * toe, bars fit in the section. Returns %FALSE with a sentence for the first that does not.
 */
gboolean lb_pile_check (const LbPile *pile, GError **error);

/**
 * lb_bar_numbers_from_text:
 * @text: "1, 2, 5-8": numbers from 1, in any order
 * @out_bars: (out): their indices as written, at most %LB_BARS_MAX; untouched on failure
 *
 * Refuses what is no list of bars, and a bar that comes twice.
 */
gboolean lb_bar_numbers_from_text (const char *text,
                                   guint8 out_bars[LB_BARS_MAX],
                                   gsize *out_n,
                                   GError **error);

G_END_DECLS
