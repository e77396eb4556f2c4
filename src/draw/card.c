/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cut card: all of one pile's cut on one sheet for a wet clipboard.
 *
 * From the top: job and mark; side view, section and the order to burn; the boxes of figures; the
 * cautions; what is signed. The footer is fixed to the foot of the sheet. All sizes above it share
 * one scale, the largest at which everything fits: a pile with few cautions gets larger type, one
 * with sixty bars smaller, and nothing is ever left out. Text stays at 8 pt or more down to
 * SCALE_LEGIBLE; under it, which takes a pile with more bars and cautions than any real one, it
 * gives way rather than be lost. Whatever height is over goes to the pictures.
 *
 * Every part is one function that returns the height it takes, drawn or only measured by its pen
 * (page-pen), so that what is measured is what is drawn. */
#include "draw/card-private.h"
#include "draw/page.h"
#include "draw/plan-words.h"
#include "draw/section.h"
#include "draw/side.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MARGIN         24.0
#define SCALE_LEAST    0.4
#define SCALE_LEGIBLE  0.62
#define SCALE_MOST     1.3
#define SCALE_HALVINGS 8
#define SIZE_LEAST     8.0   /* pt: read at arm's length on wet paper (common practice) */
#define MAIN_LEAST     11.0  /* of what is looked for first (common practice) */
#define PICTURES_LEAST 190.0 /* height, at scale 1 */
#define MARK_SIZE      46.0
#define MARK_SHARE     0.4
#define MARK_LEAST     18.0 /* then it wraps */

static LbPageStyle
style_at_least (const LbCard *card, double size, double least, gboolean is_bold, LbInk ink)
{
  const double allowed = least * MIN (card->scale / SCALE_LEGIBLE, 1);
  return (LbPageStyle){ .size = MAX (size * card->scale, allowed), .is_bold = is_bold, .ink = ink };
}

LbPageStyle
lb_card_style (const LbCard *card, double size, gboolean is_bold, LbInk ink)
{
  return style_at_least (card, size, SIZE_LEAST, is_bold, ink);
}

LbPageStyle
lb_card_main_style (const LbCard *card, double size, gboolean is_bold, LbInk ink)
{
  return style_at_least (card, size, MAIN_LEAST, is_bold, ink);
}

static double
show_header (const LbCard *card, double y)
{
  const double width = card->right - card->left;
  const double start = y;
  const LbPageStyle small = lb_card_style (card, 9, FALSE, LB_INK_TEXT);
  const LbPageStyle title = lb_card_style (card, 11, TRUE, LB_INK_TEXT);
  const LbPageStyle what = lb_card_style (card, 12, FALSE, LB_INK_TEXT);
  const double title_w = 0.25 * width;

  const double name = lb_page_pen_text (&card->pen, &small, LB_ALIGN_START, card->left, y,
                                        width - title_w - LB_CARD_GAP, card->fold->name);
  const double label = lb_page_pen_text (&card->pen, &title, LB_ALIGN_END, card->right, y, 0,
                                         _ ("CUT CARD"));
  y += MAX (name, label) + 1;
  lb_page_pen_rule (&card->pen, LB_INK_LINE, 1.2, card->left, y, card->right);
  y += 2;

  /* The mark is read from across the deck; a long one shrinks before it takes the whole width. */
  LbPageStyle mark = lb_card_style (card, MARK_SIZE, TRUE, LB_INK_TEXT);
  mark.size = lb_page_pen_fit (&card->pen, &mark, MARK_LEAST * card->scale, MARK_SHARE * width,
                               card->pile->mark);
  const double mark_h = lb_page_pen_text (&card->pen, &mark, LB_ALIGN_START, card->left, y,
                                          MARK_SHARE * width, card->pile->mark);
  const double mark_w = MIN (lb_page_pen_width (&card->pen, &mark, card->pile->mark),
                             MARK_SHARE * width);

  const double x = card->left + mark_w + LB_CARD_GAP;
  g_autofree char *pile = lb_pile_text (&card->pen.voice, card->pile);
  g_autofree char *state = lb_pile_state_text (card->pile, card->state);
  double right_h = 4 * card->scale;
  right_h += lb_page_pen_text (&card->pen, &what, LB_ALIGN_START, x, y + right_h, card->right - x,
                               pile);
  right_h += lb_page_pen_text (&card->pen, &title, LB_ALIGN_START, x, y + right_h, card->right - x,
                               state);
  if (card->pile->note[0] != '\0')
    right_h += lb_page_pen_text (&card->pen, &small, LB_ALIGN_START, x, y + right_h,
                                 card->right - x, card->pile->note);
  return y + MAX (mark_h, right_h) + 3 - start;
}

/* A picture in a box of its own: nothing of it gets out. */
static void
begin_picture (cairo_t *cr, double x, double y, double width, double height)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
}

static void
show_side (const LbCard *card, double x, double y, double width, double height)
{
  const LbSide side = {
    .pile = card->pile,
    .plan = &card->plan,
    .water_m = card->fold->assumptions.value[LB_ASSUME_WATER_LEVEL],
    .cut_m = lb_pile_cut_elevation (card->pile, &card->fold->assumptions),
    .step = card->state->step,
  };
  if (!card->pen.is_drawing)
    return;
  begin_picture (card->pen.cr, x, y, width, height);
  lb_side_draw (card->pen.cr, card->pen.palette, &card->pen.voice, &side, width, height);
  cairo_restore (card->pen.cr);
}

static void
show_section (const LbCard *card, double x, double y, double width, double height)
{
  const LbSection section = {
    .pile = card->pile,
    .plan = &card->plan,
    .burned = card->state->burned,
    .focus = -1,
  };
  if (!card->pen.is_drawing)
    return;
  begin_picture (card->pen.cr, x, y, width, height);
  lb_section_draw (card->pen.cr, card->pen.palette, &card->pen.voice, &section, width, height);
  cairo_restore (card->pen.cr);
}

/* @height: what there is for it when drawing; the least it needs is returned. */
static double
show_body (const LbCard *card, double y, double height)
{
  /* The more columns of steps, the more of the width they take. */
  static const double SIDE_SHARES[] = { 0.29, 0.25, 0.19, 0.19 };
  static const double SECTION_SHARES[] = { 0.32, 0.29, 0.24, 0.27 };
  const guint kind = MIN (lb_card_n_step_columns (card), G_N_ELEMENTS (SIDE_SHARES)) - 1;
  const double width = card->right - card->left;
  const double side_w = SIDE_SHARES[kind] * width, section_w = SECTION_SHARES[kind] * width;
  const double section_x = card->left + side_w + LB_CARD_GAP / 2;
  const double steps_x = section_x + section_w + LB_CARD_GAP;
  const double steps = lb_card_show_steps (card, steps_x, y, card->right - steps_x);
  const double least = MAX (steps, PICTURES_LEAST * card->scale);
  const double pictures = MAX (height, least);

  show_side (card, card->left, y, side_w, pictures);
  show_section (card, section_x, y, section_w, pictures);
  return least;
}

/* What is signed, side by side on two lines. */
static double
show_blanks (const LbCard *card, double y)
{
  static const double LINE = 19;
  const char *const names[] = { _ ("Diving supervisor"), _ ("Rigger"), _ ("Diver"), _ ("Date") };
  const double width = (card->right - card->left - LB_CARD_GAP) / 2;
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    lb_page_pen_blank (&card->pen, card->left + (double) (i % 2) * (width + LB_CARD_GAP),
                       y + (double) (i / 2) * LINE, width, names[i]);
  return LINE + 14;
}

/* Not scaled: it is written on by hand. */
static double
show_footer (const LbCard *card, double y)
{
  const LbPagePen *const pen = &card->pen;
  const LbPageStyle word = { .size = 9.5, .is_bold = TRUE, .ink = LB_INK_TEXT };
  const LbPageStyle small = { .size = 8, .ink = LB_INK_TEXT };
  const double width = card->right - card->left;
  const double start = y;
  g_autofree char *level = lb_voice_elevation (
    &pen->voice, card->fold->assumptions.value[LB_ASSUME_WATER_LEVEL]);
  g_autofree char *water =
    card->fold->datum[0] != '\0'
      ? g_strdup_printf (_ ("Water level taken at %s above %s. Figures are estimates."), level,
                         card->fold->datum)
      : g_strdup_printf (_ ("Water level taken at %s above the job’s datum. Figures are "
                            "estimates."),
                         level);

  lb_page_pen_rule (pen, LB_INK_LINE, 1.2, card->left, y, card->right);
  y += 3;
  y += lb_page_pen_text (pen, &word, LB_ALIGN_START, card->left, y, width,
                         _ ("The diving supervisor’s word stands above this card."));
  y += lb_page_pen_text (pen, &small, LB_ALIGN_START, card->left, y, width,
                         _ ("The competent rigger decides rigging and lift; a licensed engineer "
                            "what the bars may bear."));
  y += lb_page_pen_text (pen, &small, LB_ALIGN_START, card->left, y, width, water) + 6;
  return y + show_blanks (card, y) - start;
}

/* Everything above the footer at the card's scale. */
static double
show_all (const LbCard *card)
{
  LbCard dry = *card;
  dry.pen.is_drawing = FALSE;
  double y = card->top;
  y += show_header (card, y);
  const double gap = 4;
  const double below = lb_card_show_boxes (&dry, 0) + gap + lb_card_show_cautions (&dry, 0) + gap;
  const double room = card->bottom - below - y;
  const double least = show_body (card, y, room);
  y += MAX (least, room) + gap;
  y += lb_card_show_boxes (card, y) + gap;
  lb_card_show_cautions (card, y);
  return MAX (0, least - room) + card->bottom;
}

/* The largest scale at which everything ends above the footer. */
static void
fit (LbCard *card)
{
  LbCard dry = *card;
  dry.pen.is_drawing = FALSE;
  double fits = SCALE_LEAST;
  double too_large = SCALE_MOST;
  for (guint i = 0; i < SCALE_HALVINGS; i++) {
    dry.scale = (fits + too_large) / 2;
    if (show_all (&dry) <= card->bottom)
      fits = dry.scale;
    else
      too_large = dry.scale;
  }
  card->scale = fits;
}

void
lb_card_draw (cairo_t *cr,
              const LbVoice *voice,
              const LbFold *fold,
              const LbCutBasis *basis,
              guint pile,
              double width_pt,
              double height_pt)
{
  g_return_if_fail (pile < fold->n_piles);
  LbCard card = {
    .fold = fold,
    .pile = &fold->piles[pile],
    .state = &fold->states[pile],
    .left = MARGIN,
    .right = width_pt - MARGIN,
    .top = MARGIN,
    .scale = 1,
  };
  lb_cut_plan_reckon (card.pile, card.state->burned, card.state->gone, card.state->n_unplaced,
                      basis, &card.plan);
  card.has_steps = lb_cut_steps_reckon (card.pile, basis, &card.plan, &card.steps);
  lb_page_pen_init_drawing (&card.pen, cr, voice);
  lb_ink_set (cr, card.pen.palette, LB_INK_PAPER);
  cairo_rectangle (cr, 0, 0, width_pt, height_pt);
  cairo_fill (cr);

  LbCard dry = card;
  dry.pen.is_drawing = FALSE;
  const double foot = height_pt - MARGIN - show_footer (&dry, 0);
  card.bottom = foot - 4;
  fit (&card);
  show_all (&card);
  show_footer (&card, foot);
  lb_page_pen_clear (&card.pen);
}
