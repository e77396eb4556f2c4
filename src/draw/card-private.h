/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"
#include "draw/page-pen.h"
#include "trade/cut-steps.h"

G_BEGIN_DECLS

#define LB_CARD_GAP 12.0 /* between columns */

/* One cut card while it is measured or drawn. Every part returns the height it takes, and takes the
 * same whether its pen draws or not. */
typedef struct
{
  LbPagePen pen;
  const LbFold *fold;
  const LbPile *pile;
  const LbPileState *state;
  LbCutPlan plan;
  LbCutSteps steps;
  gboolean has_steps;
  double left, right, top, bottom; /* bottom: over the footer */
  double scale;
} LbCard;

/* At the card's scale, but never under what is read at arm's length, unless all else failed. */
LbPageStyle lb_card_style (const LbCard *card, double size, gboolean is_bold, LbInk ink);

/* The same for what is looked for first: order, hook, the figures that are set. */
LbPageStyle lb_card_main_style (const LbCard *card, double size, gboolean is_bold, LbInk ink);

/* The order to burn as a table with running minutes, or why there is none. */
guint lb_card_n_step_columns (const LbCard *card);
double lb_card_show_steps (const LbCard *card, double x, double y, double width);

/* Gas, bottom time and lift, side by side. */
double lb_card_show_boxes (const LbCard *card, double y);

/* Those that follow from this pile, then the ordinary ones, smaller. */
double lb_card_show_cautions (const LbCard *card, double y);

G_END_DECLS
