/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cautions on the cut card. Those that follow from this pile stand each on lines of its own, in
 * two columns; those that hold at nearly every cut run on one after the other. Each has a box to
 * tick. */
#include "draw/card-private.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

#define TICK_SIZE 8.0

/* U+25A1: an empty square to tick, within running words, and a space that does not break. */
#define SQUARE "□\302\240"

static char *
caution_text (const LbCard *card, gsize i)
{
  return lb_caution_text (&card->pen.voice, card->pile, &card->fold->assumptions, &card->plan, i);
}

static double
show_own (const LbCard *card, gsize i, double x, double y, double width)
{
  const double side = TICK_SIZE * card->scale;
  const double indent = side + 4;
  const LbPageStyle words = lb_card_style (
    card, 9, card->plan.cautions[i]->severity == LB_SEVERITY_DANGER, LB_INK_TEXT);
  g_autofree char *text = caution_text (card, i);
  lb_page_pen_box (&card->pen, x, y + 0.2 * words.size, side);
  return lb_page_pen_text (&card->pen, &words, LB_ALIGN_START, x + indent, y, width - indent,
                           text) +
         1.5;
}

/* Those from @from to before @to, as one text; to be freed. */
static char *
run_on (const LbCard *card, gsize from, gsize to)
{
  g_autoptr (GString) words = g_string_new (NULL);
  for (gsize i = from; i < to; i++) {
    g_autofree char *text = caution_text (card, i);
    g_string_append_printf (words, "%s" SQUARE "%s", i > from ? "  " : "", text);
  }
  return g_string_free (g_steal_pointer (&words), FALSE);
}

/* How @n things of these heights are shared over two columns, the order kept, so that the taller is
 * lowest: how many stand in the left one. */
static gsize
split (const double *heights, gsize n, double *out_height)
{
  double left = 0, right = 0;
  gsize best = 0;
  for (gsize i = 0; i < n; i++)
    right += heights[i];
  *out_height = right;
  for (gsize i = 0; i < n; i++) {
    left += heights[i];
    right -= heights[i];
    if (MAX (left, right) <= *out_height) {
      *out_height = MAX (left, right);
      best = i + 1;
    }
  }
  return best;
}

static double
show_owns (const LbCard *card, double y, double width)
{
  const gsize n = card->plan.n_own_cautions;
  double heights[G_N_ELEMENTS (card->plan.cautions)] = { 0 };
  double height;
  LbCard dry = *card;
  dry.pen.is_drawing = FALSE;
  for (gsize i = 0; i < n; i++)
    heights[i] = show_own (&dry, i, 0, 0, width);
  const gsize n_left = split (heights, n, &height);
  double column_y = y;
  for (gsize i = 0; card->pen.is_drawing && i < n; i++) {
    if (i == n_left)
      column_y = y;
    column_y += show_own (card, i, card->left + (i < n_left ? 0 : width + LB_CARD_GAP), column_y,
                          width);
  }
  return height;
}

static double
show_ordinary (const LbCard *card, double y, double width)
{
  const gsize first = card->plan.n_own_cautions, n = card->plan.n_cautions - first;
  const LbPageStyle words = lb_card_style (card, 8, FALSE, LB_INK_TEXT);
  double lengths[G_N_ELEMENTS (card->plan.cautions)] = { 0 };
  double height;
  if (n == 0)
    return 0;
  for (gsize i = 0; i < n; i++) {
    g_autofree char *text = caution_text (card, first + i);
    lengths[i] = (double) g_utf8_strlen (text, -1);
  }
  const gsize n_left = split (lengths, n, &height);
  g_autofree char *left = run_on (card, first, first + n_left);
  g_autofree char *right = run_on (card, first + n_left, first + n);
  const double left_h = lb_page_pen_text (&card->pen, &words, LB_ALIGN_START, card->left, y, width,
                                          left);
  const double right_h = lb_page_pen_text (&card->pen, &words, LB_ALIGN_START,
                                           card->left + width + LB_CARD_GAP, y, width, right);
  return MAX (left_h, right_h);
}

double
lb_card_show_cautions (const LbCard *card, double y)
{
  const double width = (card->right - card->left - LB_CARD_GAP) / 2;
  const double start = y;
  const LbPageStyle head = lb_card_style (card, 10, TRUE, LB_INK_TEXT);

  y += lb_page_pen_text (&card->pen, &head, LB_ALIGN_START, card->left, y, 0,
                         _ ("Before the cut, gravest first")) +
       1;
  y += show_owns (card, y, width) + 1;
  lb_page_pen_rule (&card->pen, LB_INK_HAIR, 0.7, card->left, y, card->right);
  y += 1.5;
  y += show_ordinary (card, y, width);
  return y - start;
}
